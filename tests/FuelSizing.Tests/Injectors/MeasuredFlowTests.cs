using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Injectors;

/// <summary>
/// Flows measured at several pressures. No published table of a port injector's static flow over pressure was found, so that the figures are worked
/// by hand from the definition.
/// </summary>
public class MeasuredFlowTests
{
    private static readonly Temperature At15 = Temperature.FromDegreesCelsius(15);

    private static Injector Rated { get; } = Injector.Of(
        "injector A",
        Flow(400),
        Wren.Kpa(300),
        TestFluid.Of("petrol", Fuel.Petrol.DensityAt15C),
        Wren.DeadTime,
        Wren.Ms(1.5),
        Wren.Kpa(900));

    private static VolumeFlow Flow(double millilitresPerMinute) => VolumeFlow.FromMillilitersPerMinute(millilitresPerMinute);

    private static double At(Injector injector, double kilopascals) =>
        injector.StaticFlowAt(Wren.Kpa(kilopascals), Fuel.Petrol, At15).MillilitersPerMinute;

    /// <summary>
    /// 400 mL/min at 300 kPa and 500 at 500 kPa, where the root alone gives 516.4. The second point's rating is 500/√(5/3) = 387.298; half-way the rating is
    /// 393.649, and the flow 393.649 · √(4/3) = 454.547. Past 500 kPa the rating stays: at 720 kPa 387.298 · √2.4 = 600.000.
    /// </summary>
    [Theory]
    [InlineData(300, 400)]
    [InlineData(500, 500)]
    [InlineData(400, 454.54691)]
    [InlineData(720, 600)]
    [InlineData(200, 326.59863)]
    public void StaticFlow_OfTwoPoints_IsTheOneWorkedByHand(double kilopascals, double expected) =>
        Assert.Equal(expected, At(Rated.WithMeasuredFlows((Wren.Kpa(500), Flow(500))), kilopascals), 1e-5);

    [Fact]
    public void StaticFlow_OfPointsThatKeepTheLaw_IsThatOfTheRatingAlone() =>
        Gen.Select(Gen.Double[20, 280], Gen.Double[320, 880], Gen.Double[100, 900]).Sample((low, high, at) =>
        {
            Injector measured = Rated.WithMeasuredFlows(
                (Wren.Kpa(low), Flow(400 * Math.Sqrt(low / 300))), (Wren.Kpa(high), Flow(400 * Math.Sqrt(high / 300))));
            return Math.Abs((At(measured, at) / At(Rated, at)) - 1) < 1e-13;
        });

    [Fact]
    public void StaticFlow_AtEveryMeasuredPoint_IsTheOneMeasuredAndRisesBetween() =>
        Gen.Double[0.9, 1.1].Array[3].Sample(share =>
        {
            double[] at = [150, 450, 800];
            Injector injector = Rated.WithMeasuredFlows(
                [.. at.Zip(share, (kilopascals, off) => (Wren.Kpa(kilopascals), Flow(400 * Math.Sqrt(kilopascals / 300) * off)))]);
            double[] flows = [.. Enumerable.Range(0, 751).Select(step => At(injector, 150 + step))];
            return injector.MeasuredFlows.All(point => Math.Abs((At(injector, point.Differential.Kilopascals) / point.Flow.MillilitersPerMinute) - 1) < 1e-13)
                && flows.Zip(flows.Skip(1)).All(pair => pair.First < pair.Second);
        });

    /// <summary>Below the third of the rated pressure that is taken for known, a measured point makes it known.</summary>
    [Fact]
    public void MinimumDifferential_OfALowerPoint_IsThatPoint()
    {
        Injector lower = Rated.WithMeasuredFlows((Wren.Kpa(60), Flow(170)));
        Assert.Equal((60, true), (lower.MinimumDifferential.Kilopascals, lower.IsMinimumDifferentialStated));
        Injector higher = Rated.WithMeasuredFlows((Wren.Kpa(150), Flow(280)));
        Assert.Equal((100, false), (higher.MinimumDifferential.Kilopascals, higher.IsMinimumDifferentialStated));
    }

    [Fact]
    public void WithMeasuredFlows_OfWhatCannotBe_IsRefused()
    {
        Refused.OutOfRange("flows", () => Rated.WithMeasuredFlows());
        Refused.OutOfRange("flows", () => Rated.WithMeasuredFlows(default((Pressure, VolumeFlow))));
        Refused.OutOfRange("flows", () => Rated.WithMeasuredFlows((Wren.Kpa(901), Flow(690))));
        Refused.OutOfRange("flows", () => Rated.WithMeasuredFlows((Wren.Kpa(500), Flow(510)), (Wren.Kpa(400), Flow(460))));

        // Another flow at the rated pressure, and the same one.
        Refused.OutOfRange("flows", () => Rated.WithMeasuredFlows((Wren.Kpa(300), Flow(401))));
        Assert.Equal(2, Rated.WithMeasuredFlows((Wren.Kpa(300), Flow(400)), (Wren.Kpa(500), Flow(510))).MeasuredFlows.Count);

        // L/h taken for mL/min, and a flow that falls although each point is near the law.
        Refused.OutOfRange("flows", () => Rated.WithMeasuredFlows((Wren.Kpa(500), VolumeFlow.FromLitersPerHour(510))));
        Refused.OutOfRange("flows", () => Rated.WithMeasuredFlows((Wren.Kpa(500), Flow(540)), (Wren.Kpa(520), Flow(530))));
    }

    [Fact]
    public void Equality_OfMeasuredFlows_GoesByPressureAndFlow()
    {
        Injector one = Rated.WithMeasuredFlows((Wren.Kpa(500), Flow(510)));
        Assert.Equal(one, Rated.WithMeasuredFlows((Pressure.FromBars(5), VolumeFlow.FromLitersPerMinute(0.51))));
        Assert.NotEqual(one, Rated.WithMeasuredFlows((Wren.Kpa(500), Flow(511))));
        Assert.NotEqual(one, Rated);
    }

    /// <summary>
    /// The same engine at the same rail: what 500 kPa passes is 3.2 % less than the root says, so the time open is that much more (400/387.298 = 1.0328).
    /// </summary>
    [Fact]
    public void DutyCycle_OfAnInjectorThatPassesLess_IsLonger()
    {
        FuelSystem plain = Wren.System(ManifoldReferenced.From(Wren.Kpa(500)), pump: 3).With(InjectorSet.Of(Rated, 4));
        FuelSystem measured = plain.With(InjectorSet.Of(Rated.WithMeasuredFlows((Wren.Kpa(500), Flow(500))), 4));
        OperatingResult one = plain.Solve(Wren.At(5000, 0.3));
        OperatingResult other = measured.Solve(Wren.At(5000, 0.3));
        double Open(OperatingResult result) => result.Actual.Pulse!.Value - result.Actual.DeadTime!.Value;
        Assert.Equal(400 / (500 / Math.Sqrt(5.0 / 3)), Open(other) / Open(one), 1e-12);

        // The injectors' reserve is a share of their flow.
        double Reserve(OperatingResult result) => 1 + ByPart.Find(result, Part.Injectors).Reserve!.Value.DecimalFractions;
        Assert.Equal(500 / Math.Sqrt(5.0 / 3) / 400, Reserve(other) / Reserve(one), 1e-12);
    }

    /// <summary>
    /// A regulator that may hold more than it is set to: the size that is printed against too short a pulse, put back with flows that go with pressure alike, holds at
    /// the highest pressure too.
    /// </summary>
    [Fact]
    public void SmallerInjectors_BehindARegulatorWithHysteresis_PutBack_Hold()
    {
        PressureRegulator regulator = Fixed.At(Wren.Kpa(400)).WithFlow(RegulatorFlow.Constant.WithHysteresis(Wren.Kpa(60)));
        FuelSystem Of(double size) => Wren.System(regulator, pump: 3).With(InjectorSet.Of(
            Injector.Of("injector L", Flow(size), Wren.Kpa(300), TestFluid.Heptane, Wren.DeadTime, Wren.Ms(1.6), Wren.Kpa(900)).WithMeasuredFlows(
                (Wren.Kpa(380), Flow(size * Math.Sqrt(380.0 / 300))), (Wren.Kpa(560), Flow(size * Math.Sqrt(560.0 / 300) * 1.09))),
            4));
        OperatingResult result = Of(7000).Solve(Wren.At(1500, -0.4));
        Margin margin = ByPart.Find(result, Part.MinimumPulse);
        Assert.Equal(Outcome.Fails, margin.Outcome);
        double printed = ((VolumeFlow)margin.Check.RemedyFor(new([result], [result]))!.Needed!).MillilitersPerMinute;
        Assert.Equal(Outcome.Holds, ByPart.Find(Of(printed).Solve(Wren.At(1500, -0.4)), Part.MinimumPulse).Outcome);
        Assert.NotEqual(Outcome.Holds, ByPart.Find(Of(printed * 1.01).Solve(Wren.At(1500, -0.4)), Part.MinimumPulse).Outcome);
    }
}
