using FuelSizing.Checks;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Sizing;

/// <summary>
/// The highest drive ratio where it is worked by hand: a compressor's own maximum speed, twice the ratio fitted, 20, or 400 kPa of boost; and injectors that serve a line, by
/// their formula.
/// </summary>
public class BoostByRatioTests
{
    private static readonly RotationalSpeed Slowest = Wren.Rpm(3000);

    private static readonly RotationalSpeed Fastest = Wren.Rpm(6000);

    private static readonly Induction Belt = Induction.BeltDriven(Wren.Percent(66), Wren.Percent(60), Wren.Kpa(4), Wren.Percent(95));

    /// <summary>Parts that stand any boost there is.</summary>
    private static readonly FuelSystem Ample = EqualDeadTimes.Built(ManifoldReferenced.From(Wren.Kpa(300)))
        .With(Wren.Demand(induction: Belt))
        .With(InjectorSet.Of(Wren.InjectorOf(3000), 4));

    private static CentrifugalBoost LineOf(double ratio, double bar) =>
        CentrifugalBoost.From(ratio, Fastest, Pressure.FromBars(bar), Wren.Hill.Atmosphere);

    /// <summary>54,000 rev/min at 6,000 of the crank: a ratio of 9, from 8 a pulley smaller by a ninth.</summary>
    [Fact]
    public void DriveRatio_LimitedByTheCompressorsSpeed_IsMaximumOverCrank()
    {
        BeltDrivenBoost line = LineOf(8, 0.3).WithMaximumCompressorSpeed(Wren.Rpm(54_000));
        MaximumBoostResult most = BoostSizing.MaximumDriveRatio(Ample, line, Slowest, Fastest, Wren.Hill);
        Assert.Equal(9, most.DriveRatio.Value!.Value, 1e-9);
        Assert.Equal(Part.CompressorSpeed, most.DriveRatio.Binding.Part);
        Assert.Equal((8 / 9.0) - 1, most.CompressorPulleyChange!.Value.DecimalFractions, 1e-9);
        Assert.Equal(9, most.Line!.DriveRatio, 1e-9);
        Assert.Same(line, most.Fitted);
        Pressure boost = line.WithDriveRatio(9).At(Fastest, Ample.Demand, Wren.Hill.Atmosphere);
        Assert.Equal(boost.Pascals, most.HighestBoost!.Value.Pascals, 1e-3);
        Assert.Equal(
            $"Compressor pulley −11 %, drive ratio 9.000, up to {TextStyle.Metric.Write(boost, "boost:down")} of boost; then tightest: compressor speed. Not judged: {string.Join(", ", Names(most))}",
            most.ToString());
        Assert.Equal(most.ToString(), most.In(TextStyle.Metric));

        // What is waived is not said to be open.
        FuelSystem waived = Ample.NotJudged.Aggregate(Ample, (system, open) => system.Waive(open.Part, "looked at"));
        Assert.EndsWith("; then tightest: compressor speed", BoostSizing.MaximumDriveRatio(waived, line, Slowest, Fastest, Wren.Hill).ToString(), StringComparison.Ordinal);

        static IEnumerable<string> Names(MaximumBoostResult most) => most.Pull!.System.NotJudged.Where(open => open.Waiver is null).Select(open => open.Part.Name);
    }

    /// <summary>The speed of the compressor is that at the fastest speed of the line: a ninth more at 5,400.</summary>
    [Fact]
    public void DriveRatio_OverAShorterRange_IsHigher()
    {
        BeltDrivenBoost line = LineOf(8, 0.3).WithMaximumCompressorSpeed(Wren.Rpm(54_000));
        Assert.Equal(10, BoostSizing.MaximumDriveRatio(Ample, line, Slowest, Wren.Rpm(5400), Wren.Hill).DriveRatio.Value!.Value, 1e-9);
    }

    [Theory]
    [InlineData(7, 0.12, 14)]
    [InlineData(12, 0.12, 20)]
    public void DriveRatio_WithNothingToLimitIt_IsTwiceTheFittedOrTwenty(double fitted, double bar, double expected)
    {
        MaximumBoostResult most = BoostSizing.MaximumDriveRatio(Ample, LineOf(fitted, bar), Slowest, Fastest, Wren.Hill);
        Assert.Equal(expected, most.DriveRatio.Value!.Value, 1e-12);
        SizingRange<double> range = Assert.Single(most.DriveRatio.Ranges);
        Assert.Equal(fitted, range.Minimum, 1e-12);
    }

    /// <summary>Boost of over 400 kPa is searched by no ratio: from twice the ratio down, a twentieth of what is over the fitted one at a time, until all is within.</summary>
    [Fact]
    public void DriveRatio_ThatWouldGiveMoreBoostThanThereIs_EndsBelowIt()
    {
        BeltDrivenBoost line = LineOf(8, 1.6);
        double top = 16;
        while (line.WithDriveRatio(top).PascalsAt(Fastest.RevolutionsPerSecond, Ample.Demand, Wren.Hill.Atmosphere) > 400e3)
        {
            top = 8 + ((top - 8) * 0.95);
        }

        Assert.InRange(top, 9, 15.7);
        MaximumBoostResult most = BoostSizing.MaximumDriveRatio(Ample, line, Slowest, Fastest, Wren.Hill);
        Assert.True(most.DriveRatio.IsFeasible, most.ToString());
        Assert.Equal(top, most.DriveRatio.Ranges[^1].Maximum, 1e-9);
        Assert.True(most.HighestBoost <= Wren.Kpa(400));
    }

    /// <summary>40,000 rev/min at most, and 48,000 as it is fitted.</summary>
    [Fact]
    public void DriveRatio_OfACarThatFailsAsItIs_IsNoneAndSaysWhy()
    {
        BeltDrivenBoost line = LineOf(8, 0.3).WithMaximumCompressorSpeed(Wren.Rpm(40_000));
        MaximumBoostResult most = BoostSizing.MaximumDriveRatio(Ample, line, Slowest, Fastest, Wren.Hill);
        Assert.Null(most.DriveRatio.Value);
        Assert.Null(most.CompressorPulleyChange);
        Assert.Null(most.Line);
        Assert.Null(most.Pull);
        Assert.Null(most.HighestBoost);
        Assert.Equal(
            "None: it fails with the pulley fitted: compressor speed: the compressor turns at 48,000 rev/min, at most 40,000 rev/min allowed at 6,000 rev/min, 0.30 bar", most.ToString());
    }

    /// <summary>Injectors that limit it where the duty cycle is highest, at whichever speed that is: along the line at the answer none fails, and a millionth more of ratio does.</summary>
    [Fact]
    public void DriveRatio_LimitedByTheInjectors_IsTheLastThatHoldsAlongTheWholeLine()
    {
        FuelSystem small = Ample.With(InjectorSet.Of(Wren.InjectorOf(400), 4)).With(SizingLimits.Default);
        BeltDrivenBoost line = LineOf(8, 0.2);
        MaximumBoostResult most = BoostSizing.MaximumDriveRatio(small, line, Slowest, Fastest, Wren.Hill);
        Assert.Equal(Part.Injectors, most.DriveRatio.Binding.Part);
        Assert.InRange(most.DriveRatio.Value!.Value, 8.1, 15);
        Assert.DoesNotContain(most.Pull!.Standings, standing => standing.Outcome == Outcome.Fails);
        Assert.Contains(
            small.Pull(line.WithDriveRatio(most.DriveRatio.Value.Value * (1 + 1e-6)), Slowest, Fastest, Wren.Hill).Standings,
            standing => standing.Part == Part.Injectors && standing.Outcome == Outcome.Fails);
    }

    /// <summary>
    /// Q = (Q_f/z) · T/(D T − t_d) at 320 kPa, carried back to the rating: the highest along the line, scanned at 301 speeds. The data for the controller are those of that injector.
    /// </summary>
    [Fact]
    public void InjectorsInstead_AreThoseOfTheFormulaAtTheSpeedThatNeedsMost()
    {
        FuelSystem system = Ample.With(RisingRate.From(Wren.Kpa(320), 6, Wren.Kpa(5))).With(InjectorSet.Of(Wren.InjectorOf(300), 4)).With(SizingLimits.Default);
        BeltDrivenBoost line = LineOf(8, 0.4);
        InjectorRequirement answer = BoostSizing.InjectorsInstead(system, line, Slowest, Fastest, Wren.Hill);
        FuelSystem following = system.With(ManifoldReferenced.From(Wren.Kpa(320)));
        OperatingResult[] scan =
        [
            .. Enumerable.Range(0, 301).Select(at => Wren.Rpm(3000 + (10 * at)))
                .Select(speed => following.Solve(OperatingPoint.At(speed, line.At(speed, system.Demand, Wren.Hill.Atmosphere), Wren.Hill))),
        ];
        double density = scan[0].FuelDensity.KilogramsPerCubicMeter;
        double needed = scan.Max(result => result.InjectedFlow.CubicMetersPerSecond / 4 * result.AvailableTime.Seconds
            / ((0.85 * result.AvailableTime.Seconds) - result.DeadTime!.Value.Seconds) / Math.Sqrt(320.0 / 300 * 683.8 / density));
        double flow = answer.StaticFlow.Value!.Value.CubicMetersPerSecond;
        Assert.InRange(flow, needed * (1 - 1e-9), needed * (1 + 1e-4));
        Assert.Equal(Part.Injectors, answer.StaticFlow.Binding.Part);

        Assert.Equal(320, answer.Data!.Differential.Kilopascals, 1e-9);
        Assert.Equal(flow, answer.Data.Injector.StaticFlow.CubicMetersPerSecond, 1e-15);
        Assert.Equal(ManifoldReferenced.From(Wren.Kpa(320)), answer.System!.Regulator);
        Assert.IsType<AirflowMeterController>(answer.System.Controller);
        Assert.Equal(scan[0].DeadTime!.Value.Seconds, answer.DeadTime!.Value.Seconds, 1e-12);
        Assert.Equal(flow * Math.Sqrt(320.0 / 300 * 683.8 / density) * density, answer.StaticMassFlow!.Value.KilogramsPerSecond, 1e-12);
        double absolute = scan.Max(result => result.Point.Boost.Kilopascals) + Wren.Hill.Atmosphere.Pressure.Kilopascals;
        Assert.Equal(absolute, answer.HighestManifoldAbsolute.Kilopascals, 1e-6);
        Assert.Equal(
            $"At least {answer.StaticFlow.Figure} each at 300 kPa; in the controller's data 320 kPa across the injector, dead time {Readable.Of(answer.DeadTime.Value)} there, air up to {Readable.Of(Wren.Kpa(absolute))} absolute in the manifold",
            answer.ToString());
        Assert.Equal(answer.ToString(), answer.In(TextStyle.Metric));

        // Another base, and a controller of one's own.
        InjectorRequirement own = BoostSizing.InjectorsInstead(
            system, line, Slowest, Fastest, Wren.Hill, Wren.Kpa(400), data => RecordedPulseController.BySpeed((Slowest, Wren.Ms(9)), (Fastest, Wren.Ms(9))));
        Assert.Equal(400, own.Data!.Differential.Kilopascals, 1e-9);
        Assert.IsType<RecordedPulseController>(own.System!.Controller);
    }

    [Fact]
    public void InjectorsInstead_WhereNoneServe_HaveNoData()
    {
        InjectorRequirement none = BoostSizing.InjectorsInstead(
            Ample.With(SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(310))), LineOf(8, 0.4), Slowest, Fastest, Wren.Hill);
        Assert.Null(none.StaticFlow.Value);
        Assert.Null(none.System);
        Assert.Null(none.Data);
        Assert.Null(none.DeadTime);
        Assert.Null(none.StaticMassFlow);
        Assert.StartsWith("No injectors serve: Nothing from 20 mL/min to 10,000 mL/min is adequate: at ", none.ToString(), StringComparison.Ordinal);
    }
}
