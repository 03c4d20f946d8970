using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Systems;

/// <summary>A whole system whose regulator's pressure changes with what returns through it: each check takes its conservative side.</summary>
public class RegulatorFlowTests
{
    private static readonly RegulatorFlow Slope = RegulatorFlow.Rising(Wren.Kpa(30), Litres(100), Litres(60));

    private static readonly Plumbing Lines = Plumbing.Of(
        supply: [Line.Of("supply", Length.FromMillimeters(8), Length.FromMeters(3), Roughness.RubberHose)],
        returnLine: [Line.Of("return", Length.FromMillimeters(7), Length.FromMeters(3), Roughness.RubberHose)]);

    private static ManifoldReferenced Plain => ManifoldReferenced.From(Wren.Kpa(300), Litres(15));

    /// <summary>A slope, a band and a share of nothing leave every figure and every margin as it was, to the last bit.</summary>
    [Fact]
    public void Solve_WithAFlowThatChangesNothing_IsTheSameToTheLastBit() =>
        Gen.Select(Gen.Double[900, 7000], Gen.Double[-0.6, 1], Gen.Double[0, 100]).Sample((rpm, boost, stated) =>
        {
            RegulatorFlow nothing = RegulatorFlow.Rising(Pressure.Zero, Litres(100), Litres(stated)).WithHysteresis(Pressure.Zero).WithOutletShare(0);
            OperatingResult plain = Wren.System(Plain).With(Lines).Solve(Wren.At(rpm, boost));
            OperatingResult with = Wren.System(Plain.WithFlow(nothing)).With(Lines).Solve(Wren.At(rpm, boost));
            Assert.Equal(PointReading.Of(plain), PointReading.Of(with));
            Assert.Equal(plain.Outcome, with.Outcome);
            Assert.Equal(
                plain.Margins.Select(margin => (margin.Part, margin.Outcome, margin.Explanation)),
                with.Margins.Where(margin => margin.Part != Part.Regulator).Select(margin => (margin.Part, margin.Outcome, margin.Explanation)));
        });

    [Fact]
    public void Rail_IsLowerAtFullDemandAndHigherAtIdle()
    {
        FuelSystem system = Wren.System(Plain.WithFlow(Slope)).With(Lines);
        OperatingResult idle = system.Solve(Wren.At(900, -0.6));
        OperatingResult full = system.Solve(Wren.At(6800, 0.4));
        Assert.True(idle.RailGauge > idle.RailSetGauge);
        Assert.True(full.RailGauge - full.RailSetGauge < (idle.RailGauge - idle.RailSetGauge) / 2);
        foreach (OperatingResult result in (OperatingResult[])[idle, full])
        {
            double held = result.RailSetGauge.Kilopascals + (0.3 * (result.ReturnedFlow!.Value.LitersPerHour - 60));
            Assert.Equal(held, result.RailGauge.Kilopascals, 6);
            Assert.Contains("p_held", result.Working.ToString(), StringComparison.Ordinal);
        }
    }

    /// <summary>Lower for duty, lean mixture and supply, higher for ratings, return line and rich mixture.</summary>
    [Fact]
    public void Hysteresis_EachCheckTakesItsSide()
    {
        Pressure band = Wren.Kpa(20);
        SizingLimits limits = SizingLimits.Of(Ratio.FromPercent(85), Ratio.FromPercent(10), Wren.Kpa(900));
        OperatingPoint point = Wren.At(4000, 0.1);
        OperatingResult Of(RegulatorFlow flow, double off) =>
            Wren.System(ManifoldReferenced.From(Wren.Kpa(300 + off)).WithFlow(flow), limits: limits).With(Lines).Solve(point);
        OperatingResult banded = Of(Slope.WithHysteresis(band), 0);
        OperatingResult low = Of(Slope, -20);
        OperatingResult high = Of(Slope, 20);
        Assert.Equal(Find(low, Part.Injectors).Reserve!.Value.DecimalFractions, Find(banded, Part.Injectors).Reserve!.Value.DecimalFractions, 9);
        Assert.Equal(Find(high, Part.PressureRating).Reserve!.Value.DecimalFractions, Find(banded, Part.PressureRating).Reserve!.Value.DecimalFractions, 9);
        Assert.Equal(Find(high, Part.OpeningPressure).Reserve!.Value.DecimalFractions, Find(banded, Part.OpeningPressure).Reserve!.Value.DecimalFractions, 9);
        Assert.Equal(Find(high, Part.Pump).Reserve!.Value.DecimalFractions, Find(banded, Part.Pump).Reserve!.Value.DecimalFractions, 9);
        Assert.Equal(Find(low, Part.ReturnLine).Reserve!.Value.DecimalFractions, Find(banded, Part.ReturnLine).Reserve!.Value.DecimalFractions, 9);
        Assert.Equal(Of(Slope, 0).RailGauge, banded.RailGauge);
    }

    [Fact]
    public void Hysteresis_WithTheLimitInside_CannotSay()
    {
        OperatingPoint point = Wren.At(5000, 0.4);
        FuelSystem system = Wren.System(Plain.WithFlow(RegulatorFlow.Constant.WithHysteresis(Wren.Kpa(20)))).With(Lines);
        Ratio duty = system.Solve(point).DutyCycle!.Value;
        Margin margin = Find(system.With(SizingLimits.Of(duty, Ratio.FromPercent(10))).Solve(point), Part.Injectors);
        Assert.Equal(Outcome.CannotSay, margin.Outcome);
        Assert.Contains("regulator", margin.Explanation, StringComparison.Ordinal);
        Pressure outlet = system.Solve(point).Circuit.OutletGauge!.Value;
        Assert.Equal(Outcome.CannotSay, Find(system.With(SizingLimits.Of(Ratio.FromPercent(85), Ratio.FromPercent(10), outlet + Wren.Kpa(5))).Solve(point), Part.PressureRating).Outcome);
        Assert.Equal(Outcome.Holds, Find(system.With(SizingLimits.Of(Ratio.FromPercent(85), Ratio.FromPercent(10), outlet + Wren.Kpa(25))).Solve(point), Part.PressureRating).Outcome);
    }

    [Fact]
    public void MinimumFlow_IsJudgedWhereItAndTheFlowAreStated()
    {
        OperatingPoint point = Wren.At(6000, 0.5);
        Assert.DoesNotContain(Wren.System(Plain).Solve(point).Margins, margin => margin.Part == Part.Regulator);
        Assert.DoesNotContain(
            Wren.System(ManifoldReferenced.From(Wren.Kpa(300)).WithFlow(Slope)).Solve(point).Margins, margin => margin.Part == Part.Regulator);
        OperatingResult holds = Wren.System(Plain.WithFlow(RegulatorFlow.Constant)).Solve(point);
        double returned = holds.ReturnedFlow!.Value.LitersPerHour;
        Assert.Equal(Outcome.Holds, Find(holds, Part.Regulator).Outcome);
        Assert.Equal((returned / 15) - 1, Find(holds, Part.Regulator).Reserve!.Value.DecimalFractions, 9);
        OperatingResult fails = Wren.System(ManifoldReferenced.From(Wren.Kpa(300), Litres(returned * 1.1)).WithFlow(RegulatorFlow.Constant)).Solve(point);
        Assert.Equal(Outcome.Fails, Find(fails, Part.Regulator).Outcome);
        Assert.Equal((1 / 1.1) - 1, Find(fails, Part.Regulator).Reserve!.Value.DecimalFractions, 9);
    }

    [Fact]
    public void Batch_OfSuchARegulator_SaysThatItDoesNotCarryIt()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() => PointBatch.Of(Wren.System(Plain.WithFlow(Slope)).Parts));
        Assert.Contains("one by one", refused.Message, StringComparison.Ordinal);
        Assert.NotNull(PointBatch.Of(Wren.System(Plain.WithFlow(RegulatorFlow.Constant)).Parts));
    }

    [Fact]
    public void Failures_KeepTheFlowOfTheRegulator()
    {
        FuelSystem system = Wren.System(Plain.WithFlow(Slope));
        IReadOnlyList<FailureResult> failures = system.WithEachFailure(
            HeldBoost.Of(Wren.Kpa(40), Wren.Rpm(2000), Wren.Rpm(6500)), Wren.Rpm(2600), Wren.Rpm(6100), Wren.Hill);
        FailureResult hose = failures.Single(failure => failure.Failure.ToString() == "reference hose off");
        Assert.Equal(Slope, hose.Sweep!.System.Regulator.Flow);
    }

    [Fact]
    public void OtherRegulatorsOfOne_KeepItsFlow()
    {
        PressureRegulator[] regulators =
        [
            Fixed.At(Wren.Kpa(300)).WithFlow(Slope),
            Plain.WithFlow(Slope),
            RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(10)).WithFlow(Slope),
        ];
        Assert.All(regulators, regulator =>
        {
            Assert.Equal(Slope, regulator.WithBase(Wren.Kpa(320)).Flow);
            Assert.Equal(Slope, regulator.Off(1e3).Flow);
            Assert.Equal(Slope, regulator.Found(1e3, 0.1, 1e3).Flow);
            Assert.EndsWith(", rising 30 kPa over 100 L/h more returned, set at 60 L/h", regulator.Description, StringComparison.Ordinal);
        });
        RegulatorSeries pair = RegulatorSeries.Of(regulators[0], (RisingRate)regulators[2]).WithQuotedGain();
        RegulatorSeries found = (RegulatorSeries)pair.Found(1e3, 0, 0);
        Assert.Equal((Slope, Slope, true), (found.BaseRegulator.Flow, found.Unit.Flow, found.IsGainQuoted));
    }

    [Fact]
    public void Measured_WithFallingPressureOrFlow_IsRefused()
    {
        (VolumeFlow, Pressure) Point(double flow, double held) => (Litres(flow), Wren.Kpa(held));
        Assert.Throws<ArgumentOutOfRangeException>(() => RegulatorFlow.Measured(Litres(20), Point(10, 300), Point(50, 299)));
        Assert.Throws<ArgumentOutOfRangeException>(() => RegulatorFlow.Measured(Litres(20), Point(10, 300), Point(10, 301)));
        Assert.Throws<ArgumentOutOfRangeException>(() => RegulatorFlow.Measured(Litres(5), Point(10, 300), Point(50, 301)));
        Assert.Throws<ArgumentException>(() => RegulatorFlow.Measured(Litres(10), Point(10, 300)));
    }

    private static VolumeFlow Litres(double flow) => VolumeFlow.FromLitersPerHour(flow);
}
