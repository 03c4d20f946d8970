using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Sizing;

/// <summary>The rising-rate unit that makes the mixture right, and what happens when one thing fails: on the car Dunnock.</summary>
public class MixtureSizingTests
{
    private static readonly RotationalSpeed[] Speeds = [.. Enumerable.Range(0, 6).Select(at => Wren.Rpm(2600 + (at * 700)))];

    internal static readonly BeltDrivenBoost Line = Dunnock.Centrifugal;

    private static readonly PumpCurve Curve = CurveOf(1);

    /// <summary>As recorded without boost: the pulse that gave lambda 0.87 at full throttle.</summary>
    private static readonly FuelSystem Car = Of(Pump.From(Curve));

    internal static readonly FuelSystem Boosted = Of(PumpSeries.Of(SeriesBypass.CheckValve, Pump.From(Curve), Pump.From(Curve)));

    [Fact]
    public void Fit_IsBeatenByNoneOfADenseGrid()
    {
        RisingRateBounds bounds = RisingRateBounds.Of(Wren.Kpa(270), Wren.Kpa(330), maximumOnset: Wren.Kpa(30));
        RisingRateFit fit = MixtureSizing.FitRisingRate(Boosted, Line, Speeds, Wren.Hill, bounds);
        Assert.True(fit.Serves, fit.ToString());
        double best = double.PositiveInfinity;
        for (int at = 0; at <= 4; at++)
        {
            for (int gain = 0; gain <= 28; gain++)
            {
                for (int onset = 0; onset <= 3; onset++)
                {
                    FuelSystem system = Boosted.With(RisingRate.From(Wren.Kpa(270 + (at * 15)), 1 + (gain * 0.5), Wren.Kpa(onset * 10)));
                    OperatingResult[] results = [.. Speeds.Select(speed => system.Solve(OperatingPoint.At(speed, Line.At(speed, system.Demand, Wren.Hill.Atmosphere), Wren.Hill)))];
                    if (results.All(result => result.Margins.All(margin => margin.Outcome == Outcome.Holds || margin.Part == Part.Mixture || margin.Part == Part.RichMixture)))
                    {
                        best = Math.Min(best, results.Max(result => Math.Abs((result.Mixture.Lambda!.Value / 0.83) - 1)));
                    }
                }
            }
        }

        Assert.True(fit.LargestDeviation!.Value.DecimalFractions <= best + 1e-6, $"{fit}: the grid has {best}");
        Assert.True(fit.LargestDeviation!.Value.DecimalFractions > best / 2, $"{fit}: the grid has {best}");
    }

    /// <summary>Pulses that are long at the top ask for less pressure there than gain alone gives: a ceiling helps, and none of a grid helps more.</summary>
    [Fact]
    public void Fit_WithACeilingToLookFor_IsBeatenByNoneOfADenseGrid()
    {
        FuelSystem system = Boosted.With(RecordedPulseController.BySpeed(
        [
            .. Enumerable.Range(0, 12).Select(at => Wren.Rpm(900 + (at * 520))).Select(speed => (
                speed, PulseWithoutBoost(speed) * (speed > Wren.Rpm(5000) ? 1.3 : 1))),
        ]));
        RisingRateFit without = MixtureSizing.FitRisingRate(
            system, Line, Speeds, Wren.Hill, RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(300), maximumOnset: Wren.Kpa(20)));
        RisingRateFit fit = MixtureSizing.FitRisingRate(
            system, Line, Speeds, Wren.Hill, RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(300), maximumOnset: Wren.Kpa(20), minimumCeiling: Wren.Kpa(400)));
        Assert.True(fit.Serves, fit.ToString());
        Assert.NotNull(fit.Unit.Ceiling);
        Assert.True(fit.LargestDeviation < without.LargestDeviation * 0.9, $"{fit}; {without}");
        double best = double.PositiveInfinity;
        for (int place = 0; place < 24 * 3 * 9; place++)
        {
            FuelSystem tried = system.With(RisingRate.From(
                Wren.Kpa(300), 1 + (0.5 * (place / 27)), Wren.Kpa(10 * (place / 9 % 3)), Wren.Kpa(400 + (40 * (place % 9)))));
            OperatingResult[] results = [.. Speeds.Select(speed => tried.Solve(OperatingPoint.At(speed, Line.At(speed, tried.Demand, Wren.Hill.Atmosphere), Wren.Hill)))];
            if (results.All(result => result.Margins.All(margin => margin.Outcome == Outcome.Holds || margin.Part == Part.Mixture || margin.Part == Part.RichMixture)))
            {
                best = Math.Min(best, results.Max(result => Math.Abs((result.Mixture.Lambda!.Value / 0.83) - 1)));
            }
        }

        Assert.True(fit.LargestDeviation!.Value.DecimalFractions <= best + 1e-6, $"{fit}: the grid has {best}");
    }

    [Fact]
    public void Bounds_OfACeiling_NameWhatIsOutside() => Assert.Contains(
        "minimumCeiling is 900 kPa; it must be between 320 kPa and 700 kPa",
        Assert.Throws<ArgumentOutOfRangeException>(() => RisingRateBounds.Of(
            Wren.Kpa(300), Wren.Kpa(320), ceiling: Wren.Kpa(700), minimumCeiling: Wren.Kpa(900))).Message,
        StringComparison.Ordinal);

    /// <summary>The fit's working is of the point that its largest deviation is of: what it shows as left over is what the fit states.</summary>
    [Fact]
    public void Working_OfAFit_LeavesItsLargestDeviation()
    {
        RisingRateFit fit = MixtureSizing.FitRisingRate(Boosted, Line, Speeds, Wren.Hill);
        Assert.Equal(fit.LargestDeviation!.Value.DecimalFractions, Math.Abs(AnswerWorking.Of(fit).Find("e_λ")!.Si!.Value), 1e-12);
    }

    [Fact]
    public void Fit_NeedsTheGainThatTheMixtureAsksFor_NotOnlyThePressureThatTheInjectorsNeed()
    {
        // With the duty cycle in order at gain 1, the engine runs lean all the same.
        OperatingResult plain = Boosted.With(RisingRate.From(Wren.Kpa(300), 1, Pressure.Zero)).Solve(At(5800));
        Assert.Equal(Outcome.Holds, plain.Margins.Single(margin => margin.Part == Part.Injectors).Outcome);
        Assert.True(plain.Mixture.Lambda > 1, plain.Mixture.ToString());
        RisingRateFit fit = MixtureSizing.FitRisingRate(Boosted, Line, Speeds, Wren.Hill);
        Assert.True(fit.Serves, fit.ToString());
        Assert.InRange(fit.Unit.Gain, 2, 12);
        Assert.Equal(300, fit.Unit.Base.Kilopascals, 1e-9);
        Assert.All(fit.Points, point => Assert.NotNull(point.RequiredRail));
    }

    [Fact]
    public void Fit_ThatAPumpCannotFeed_SaysWhichCheckBreaks()
    {
        RisingRateFit fit = MixtureSizing.FitRisingRate(Of(Pump.From(CurveOf(0.5))), Line, Speeds, Wren.Hill);
        Assert.False(fit.Serves);
        Assert.Contains("No rising-rate unit does it", fit.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Pulses whose log ends before the line does: every other check holds, and lambda is not known all the same.</summary>
    [Fact]
    public void Fit_WherePulsesEndBeforeTheLine_DoesNotServe()
    {
        FuelSystem system = Boosted.With(RecordedPulseController.BySpeed((Wren.Rpm(900), Wren.Ms(8)), (Wren.Rpm(3000), Wren.Ms(8))));
        RisingRateFit fit = MixtureSizing.FitRisingRate(
            system, Line, [Wren.Rpm(2600), Wren.Rpm(3300)], Wren.Hill, RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(300), maximumOnset: Pressure.Zero));
        Assert.False(fit.Serves, fit.ToString());
        Assert.Null(fit.LargestDeviation);
        Assert.Contains("lambda cannot be said", fit.ToString(), StringComparison.Ordinal);
    }

    /// <summary>A pulse that is not known is not one that holds the injectors open: that would look rich, and so safe.</summary>
    [Fact]
    public void Mixture_BeyondTheRecordedPulses_IsNotKnown()
    {
        OperatingResult result = Boosted.With(RecordedPulseController.BySpeed((Wren.Rpm(900), Wren.Ms(8)), (Wren.Rpm(3000), Wren.Ms(8)))).Solve(At(5800));
        Assert.Equal((null, null, null), (result.Mixture.Lambda, result.Mixture.MaximumLambda, result.Mixture.InjectedFlow));
        Assert.False(result.Mixture.IsHeldOpen);
        Assert.Equal(Outcome.CannotSay, result.Margins.Single(margin => margin.Part == Part.Mixture).Outcome);
    }

    [Fact]
    public void Mixture_WithPulsesShorterThanTheDeadTime_HasNoDeviation_AndNoFigureOfItsCheck()
    {
        OperatingResult result = Boosted.With(RecordedPulseController.BySpeed((Wren.Rpm(900), Wren.Ms(0.2)), (Wren.Rpm(6600), Wren.Ms(0.2)))).Solve(At(5800));
        Assert.Equal(double.PositiveInfinity, result.Mixture.Lambda);
        Assert.Null(result.Mixture.Deviation);
        Margin margin = result.Margins.Single(margin => margin.Part == Part.Mixture);
        Assert.Equal((Outcome.Fails, null), (margin.Outcome, margin.Used));
    }

    /// <summary>Off boost the leanest lambda is not limited, and there is no figure to read.</summary>
    [Fact]
    public void Margin_OfAMixtureOffBoost_AllowsNoFigure()
    {
        OperatingResult result = Boosted.Solve(OperatingPoint.At(Wren.Rpm(5800), Pressure.Zero, Wren.Hill));
        Assert.Null(result.Margins.Single(margin => margin.Part == Part.Mixture).Allowed);
    }

    [Fact]
    public void Fit_OfAnAssumedController_IsRefused() => Assert.Throws<ArgumentException>(
        () => MixtureSizing.FitRisingRate(Boosted.With(IdealController.Instance), Line, Speeds, Wren.Hill));

    [Fact]
    public void RequiredRail_SetByAFixedRegulator_GivesTheTarget()
    {
        RisingRateFit fit = MixtureSizing.FitRisingRate(Boosted, Line, Speeds, Wren.Hill);
        FittedPoint point = fit.Points[^1];
        OperatingResult result = Boosted.With(Fixed.At(point.RequiredRail!.Value)).Solve(point.Result.Point);
        Assert.Equal(0.83, result.Mixture.Lambda!.Value, 1e-9);
    }

    [Fact]
    public void Failures_EachEqualTheSystemWithThatPartChanged()
    {
        FuelSystem system = MixtureSizing.FitRisingRate(Boosted, Line, Speeds, Wren.Hill).System;
        IReadOnlyList<FailureResult> failures = system.WithEachFailure(Line, Wren.Rpm(2600), Wren.Rpm(6100), Wren.Hill);

        Is("dead", system.With(Pump.From(Curve)), Wren.Hill);
        Is("hose off", system.With(Fixed.At(Wren.Kpa(300))), Wren.Hill);
        Is("half blocked", system.With(Plumbing.Of(supply: [FilterOf(2), Hose], returnLine: [Hose])), Wren.Hill);
        Is("alternator off", system, Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(12), Wren.Hill.FuelTemperature));
        Assert.Equal(6, failures.Count);

        // How far a regulator stands open that is stuck so, nobody knows; boost without its pressure is what leans.
        Assert.Null(failures.Single(failure => failure.Failure.Code == "failure.open").Sweep);
        Assert.True(failures.First(failure => failure.NotKnown == 0 && failure.Sweep is not null).Leanest!.Mixture.Lambda > 0.95, string.Join("; ", failures));

        // Stuck shut, the rail is what the pumps give: hoses see it, and what compares with the pressure set is not judged.
        FailureResult shut = failures.Single(failure => failure.Failure.Code == "failure.shut");
        Assert.True(shut.HighestRail!.Mixture.RailGauge > system.Pull(Line, Wren.Rpm(2600), Wren.Rpm(6100), Wren.Hill).Results.Max(result => result.Mixture.RailGauge));
        Assert.DoesNotContain(shut.Sweep!.Standings, standing => standing.Part == Part.Pump || standing.Part == Part.PressureRating);

        void Is(string words, FuelSystem changed, Conditions conditions)
        {
            FailureResult failure = failures.Single(failure => failure.Failure.ToString().Contains(words, StringComparison.Ordinal));
            LineSweepResult expected = changed.Pull(Line, Wren.Rpm(2600), Wren.Rpm(6100), conditions);
            Assert.Equal(expected.Leanest?.Mixture.Lambda, failure.Leanest?.Mixture.Lambda);
            Assert.Equal(expected.Results.Min(result => result.Mixture.RailGauge.Kilopascals), failure.LowestRail!.Mixture.RailGauge.Kilopascals, 1e-9);
        }
    }

    /// <summary>The same description twice is two pumps: one of them dead leaves the other.</summary>
    [Fact]
    public void Failure_OfOneOfTwoPumpsOfOneDescription_LeavesTheOther()
    {
        Pump pump = Pump.From(Curve);
        FailureResult failure = Dead(Of(PumpSeries.Of(SeriesBypass.CheckValve, pump, pump)));
        LineSweepResult alone = Of(pump).Pull(Line, Wren.Rpm(2600), Wren.Rpm(6100), Wren.Hill);
        Assert.Equal(alone.Leanest?.Mixture.Lambda, failure.Leanest?.Mixture.Lambda);

        // Of three in parallel two are left.
        failure = Dead(Of(PumpParallel.Of(pump, pump, pump)));
        Assert.Equal(2, failure.Sweep!.System.Pump.Pumps.Count);

        static FailureResult Dead(FuelSystem system) => system.WithEachFailure(Line, Wren.Rpm(2600), Wren.Rpm(6100), Wren.Hill)
            .Single(failure => failure.Failure.ToString().Contains("dead", StringComparison.Ordinal));
    }

    [Fact]
    public void Failure_OfAPumpInSeriesWithoutABypass_IsNotKnown()
    {
        FuelSystem system = Of(PumpSeries.Of(SeriesBypass.None, Pump.From(Curve), Pump.From(Curve)));
        FailureResult failure = system.WithEachFailure(Line, Wren.Rpm(2600), Wren.Rpm(6100), Wren.Hill)[0];
        Assert.Null(failure.Sweep);
        Assert.Contains("not known", failure.ToString(), StringComparison.Ordinal);
    }

    private static PumpCurve CurveOf(double scale) => PumpCurve.At(
        "pump T",
        Wren.Volt(13.5),
        (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(231 * scale)),
        (Wren.Kpa(400), VolumeFlow.FromLitersPerHour(167 * scale)),
        (Wren.Kpa(800), VolumeFlow.FromLitersPerHour(94 * scale)),
        (Wren.Kpa(1200), VolumeFlow.Zero));

    private static Injector Injector => FuelSizing.Injectors.Injector.Of(
        "injector K",
        VolumeFlow.FromMillilitersPerMinute(287),
        Wren.Kpa(300),
        TestFluid.Heptane,
        DeadTimeTable.Of(
            [Wren.Volt(8), Wren.Volt(11), Wren.Volt(14), Wren.Volt(16)],
            [Wren.Kpa(200), Wren.Kpa(400), Wren.Kpa(900)],
            [[Wren.Ms(2.1), Wren.Ms(1.24), Wren.Ms(0.81), Wren.Ms(0.66)], [Wren.Ms(2.4), Wren.Ms(1.39), Wren.Ms(0.88), Wren.Ms(0.72)], [Wren.Ms(3.3), Wren.Ms(1.8), Wren.Ms(1.09), Wren.Ms(0.88)]]),
        Wren.Ms(1.7),
        Wren.Kpa(900));

    /// <summary>Pulses that end before the line does: what is leanest of the rest is not the leanest, and the failure says so.</summary>
    [Fact]
    public void Failure_WhoseMixtureIsKnownAtSomeSpeedsOnly_SaysSo()
    {
        FuelSystem system = Boosted.With(RecordedPulseController.BySpeed((Wren.Rpm(2000), Wren.Ms(9)), (Wren.Rpm(4000), Wren.Ms(9))));
        FailureResult failure = system.WithEachFailure(Line, Wren.Rpm(2600), Wren.Rpm(6100), Wren.Hill)[0];
        Assert.InRange(failure.NotKnown, 1, 12);
        Assert.Contains("where it may be leaner", failure.ToString(), StringComparison.Ordinal);
    }

    private static FuelSizing.Lines.Line Hose => FuelSizing.Lines.Line.Of("hose", Length.FromMillimeters(8.5), Length.FromMeters(3.2), Roughness.RubberHose);

    private static Filter FilterOf(double clogging) => Filter.Of("filter G", VolumeFlow.FromLitersPerHour(170), Wren.Kpa(11), clogging);

    private static Duration PulseWithoutBoost(RotationalSpeed speed) => Duration.FromSeconds(
        Boosted.Solve(OperatingPoint.At(speed, Pressure.Zero, Wren.Hill)).Mixture.CommandedPulse!.Value.Seconds);

    private static OperatingPoint At(double rpm) =>
        OperatingPoint.At(Wren.Rpm(rpm), Line.At(Wren.Rpm(rpm), Car.Demand, Wren.Hill.Atmosphere), Wren.Hill);

    private static FuelSystem Of(PumpAssembly pump)
    {
        FuelSystem system = FuelSystem.Return(
            Dunnock.Demand(),
            InjectorSet.Of(Injector, 6),
            RisingRate.From(Wren.Kpa(300), 1, Pressure.Zero),
            pump,
            SizingLimits.Of(Wren.Percent(90), Wren.Percent(5)).With(MixtureLimits.Of(0.9, Pressure.FromBars(0.05), 0.7)),
            Plumbing.Of(supply: [FilterOf(1), Hose], returnLine: [Hose]));

        // The pulses that gave lambda 0.87 at full throttle without boost.
        RotationalSpeed[] speeds = [.. Enumerable.Range(0, 12).Select(at => Wren.Rpm(900 + (at * 520)))];
        return system.With(RecordedPulseController.BySpeed(
        [
            .. speeds.Select(speed => (speed, system.With(Dunnock.Demand()).Solve(OperatingPoint.At(speed, Pressure.Zero, Wren.Hill)) is var rest
                ? Duration.FromSeconds(rest.DeadTime!.Value.Seconds + ((rest.Pulse!.Value.Seconds - rest.DeadTime!.Value.Seconds) * 0.83 / 0.87))
                : default)),
        ]));
    }
}
