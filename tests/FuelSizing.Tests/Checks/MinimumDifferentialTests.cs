using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Checks;

/// <summary>
/// The flow of an injector goes with the square root of pressure as far down as it was measured. Below that nothing that rests on it may
/// hold, and it fails only where even the flow at the lowest known pressure is too little.
/// </summary>
public sealed class MinimumDifferentialTests
{
    /// <summary>As Wren's, with a dead time that holds at every pressure: what is not known is the flow alone.</summary>
    private static readonly Injector Steady = Injector.Of(
        "steady",
        VolumeFlow.FromMillilitersPerMinute(1500),
        Wren.Kpa(300),
        TestFluid.Heptane,
        DeadTimeTable.ByVoltage((Wren.Volt(6), Wren.Ms(1)), (Wren.Volt(16), Wren.Ms(1))),
        Wren.Ms(1.6),
        Wren.Kpa(550));

    /// <summary>210 kPa in the rail against 200 in the manifold: 10 kPa across the injector, and by the law a duty cycle within its limit.</summary>
    [Fact]
    public void Injectors_AtTenKilopascals_CannotBeSaidToHold()
    {
        FuelSystem system = Wren.System(Fixed.At(Wren.Kpa(210)), pump: 3).With(InjectorSet.Of(Steady.WithMinimumDifferential(Wren.Kpa(10)), 4));
        OperatingPoint point = Wren.At(1000, 2);
        Assert.Equal(Outcome.Holds, Of(system.Solve(point), Part.Injectors).Outcome);

        OperatingResult result = system.With(InjectorSet.Of(Steady, 4)).Solve(point);
        Assert.Equal(10, result.InjectorDifferential.Kilopascals, 6);
        Assert.Null(result.StaticFlow);
        Assert.Null(result.Pulse);
        Assert.Null(result.DutyCycle);
        foreach (Part part in new[] { Part.Injectors, Part.MinimumPulse })
        {
            Assert.Equal(Outcome.CannotSay, Of(result, part).Outcome);
            Assert.Contains("taken as known from a third of its rated pressure, 100 kPa (common practice, no source), not at ", Of(result, part).Explanation, StringComparison.Ordinal);
        }

        Assert.Equal(Outcome.CannotSay, result.Outcome);
        Assert.Contains("the flow of steady is known from 100 kPa across it, not at ", result.Working.ToString(), StringComparison.Ordinal);
    }

    /// <summary>What the injectors cannot feed at 100 kPa they cannot feed at less: that can be said.</summary>
    [Fact]
    public void Injectors_TooSmallEvenAtTheirMinimum_Fail()
    {
        Injector small = Wren.InjectorOf(200);
        OperatingResult result = Wren.System(Fixed.At(Wren.Kpa(260)), pump: 3).With(InjectorSet.Of(small, 4)).Solve(Wren.At(6000, 2));
        Margin margin = Of(result, Part.Injectors);
        Assert.Equal(Outcome.Fails, margin.Outcome);
        Assert.Contains("no more than at 100 kPa, which is too little", margin.Explanation, StringComparison.Ordinal);
        Assert.Equal(Outcome.CannotSay, Of(result, Part.MinimumPulse).Outcome);
    }

    /// <summary>The less of the law is known, the less is said; and what is still said stays as it was.</summary>
    [Fact]
    public void Outcome_WithAHigherMinimum_IsTheSameOrOpenAndNeverTheOpposite() =>
        Gen.Select(Gen.Double[10, 300], Gen.Double[1000, 7000], Gen.Double[0, 2], Gen.Double[150, 400], Gen.Double[150, 2000]).Sample(
            (minimum, rpm, boost, rail, size) =>
            {
                OperatingResult At(double known) => Wren.System(Fixed.At(Wren.Kpa(rail)), pump: 4)
                    .With(InjectorSet.Of(SizedTo(size).WithMinimumDifferential(Wren.Kpa(known)), 4))
                    .Solve(Wren.At(rpm, boost));
                OperatingResult all = At(10);
                OperatingResult less = At(minimum);
                bool known = less.InjectorDifferential.Kilopascals is not (> 0) || less.InjectorDifferential.Kilopascals > minimum;
                return new[] { Part.Injectors, Part.MinimumPulse }.All(part =>
                    Of(less, part).Outcome == Of(all, part).Outcome || (!known && Of(less, part).Outcome == Outcome.CannotSay));
            });

    /// <summary>Where the flow is not known a batch has no number, and where nothing flows it has none to pass.</summary>
    [Fact]
    public void Batch_BelowTheMinimum_HasNoNumber() =>
        Gen.Select(Gen.Double[10, 300], Gen.Double[-0.5, 2].Select(bar => Math.Abs(bar) < 0.01 ? 0 : bar).Array[1, 20]).Sample((minimum, boosts) =>
        {
            FuelSystem system = Wren.System(Fixed.At(Wren.Kpa(150)), pump: 4)
                .With(InjectorSet.Of(Steady.WithMinimumDifferential(Wren.Kpa(minimum)), 4));
            double[] flow = new double[boosts.Length];
            double[] duty = new double[boosts.Length];
            double[] reserve = new double[boosts.Length];
            PointBatch.Of(system.Parts, Wren.Hill).Evaluate(
                new() { Speed = [.. boosts.Select(_ => 50.0)], Boost = [.. boosts.Select(boost => boost * 1e5)] },
                new() { StaticFlow = flow, DutyCycle = duty, InjectorReserve = reserve });
            for (int at = 0; at < boosts.Length; at++)
            {
                OperatingResult alone = system.Solve(Wren.At(3000, boosts[at]));
                Assert.Equal(alone.StaticFlow?.CubicMetersPerSecond ?? double.NaN, flow[at], 1e-12);
                Assert.Equal(alone.DutyCycle?.DecimalFractions ?? double.NaN, duty[at], 1e-9);
                Assert.Equal(alone.StaticFlow is null, double.IsNaN(reserve[at]));
                Assert.Equal(alone.StaticFlow is null, alone.InjectorDifferential.Kilopascals > 0 && alone.InjectorDifferential.Kilopascals < minimum);
            }
        });

    [Fact]
    public void Minimum_NotStated_IsAThirdOfTheRatedPressureAndScalingKeepsIt()
    {
        Assert.Equal(100, Steady.MinimumDifferential.Kilopascals, 9);
        Assert.False(Steady.IsMinimumDifferentialStated);
        Injector stated = Steady.WithMinimumDifferential(Wren.Kpa(60));
        Assert.True(stated.IsMinimumDifferentialStated);
        Assert.Equal(60, stated.Scaled(1.1).MinimumDifferential.Kilopascals, 9);
        Assert.Equal(60, stated.WithStaticFlow(VolumeFlow.FromMillilitersPerMinute(500)).MinimumDifferential.Kilopascals, 9);
        Assert.NotEqual(Steady, stated);
        Refused.OutOfRange("minimumDifferential", () => Steady.WithMinimumDifferential(Wren.Kpa(9.9)));
        Refused.OutOfRange("minimumDifferential", () => Steady.WithMinimumDifferential(Wren.Kpa(300.1)));
        Refused.OutOfRange("differential", () => stated.StaticFlowAt(Wren.Kpa(59), Fuel.Petrol, Temperature.FromDegreesCelsius(15)));
    }

    private static Injector SizedTo(double millilitres) => Steady.WithStaticFlow(VolumeFlow.FromMillilitersPerMinute(millilitres));

    private static Margin Of(OperatingResult result, Part part) => result.Margins.Single(margin => margin.Part == part);
}
