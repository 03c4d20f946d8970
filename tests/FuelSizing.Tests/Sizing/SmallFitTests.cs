using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Sizing;

/// <summary>
/// The rising-rate unit for one, two and three points, where it is worked by hand: what each point needs in the rail is a formula, base and gain are a straight line through two of
/// them, and where no line meets all, the best one is off by the same at as many points as it has figures, and one more.
/// </summary>
public class SmallFitTests
{
    /// <summary>Base 300 kPa and no onset: lambda 0.95 with 300 kPa across the injectors asks for 402.7 + 50 in the rail, a gain of (452.7 − 300)/50 = 3.053.</summary>
    [Fact]
    public void Fit_OfOnePointWithTheBaseAsItIs_IsTheGainThatGivesItsPressure()
    {
        RisingRateFit fit = Fit(Fixed300(Pressure.Zero), null, (4000, 0.5, 0.95));
        double rail = EqualDeadTimes.RailFor(50, 0.95);
        Assert.True(fit.Serves);
        Assert.Null(fit.Obstacle);
        Assert.Equal(300, fit.Unit.Base.Kilopascals, 1e-9);
        Assert.Equal(0, fit.Unit.Onset.Pascals);
        Assert.Equal((rail - 300) / 50, fit.Unit.Gain, 1e-5);
        Assert.Equal(0, fit.LargestDeviation!.Value.DecimalFractions, 1e-6);
        FittedPoint point = Assert.Single(fit.Points);
        Assert.Equal(rail, point.RequiredRail!.Value.Kilopascals, 1e-6);
        Assert.Equal(EqualDeadTimes.Target, point.Result.Mixture.Lambda!.Value, 1e-6);
        Assert.Equal("4,000 rev/min, 0.50 bar: rail 453 kPa required, 453 kPa set, lambda 0.820", point.ToString());
        Assert.Equal(fit.Unit, fit.System.Regulator);
        Assert.EndsWith(": lambda within 0 % of its target along the line.", fit.ToString(), StringComparison.Ordinal);
    }

    /// <summary>The working of a fit, and of an answer, is written in the units asked for.</summary>
    [Fact]
    public void Working_InUsCustomaryUnits_HasItsFiguresInThem()
    {
        RisingRateFit fit = Fit(Fixed300(Pressure.Zero), null, (4000, 0.5, 0.95));
        Assert.EndsWith($"with the unit put in: {fit.Unit.Text.In(TextStyle.UsCustomary)}", AnswerWorking.Of(fit, TextStyle.UsCustomary).Subject, StringComparison.Ordinal);
        Assert.Contains(" psi", AnswerWorking.Of(fit, TextStyle.UsCustomary).Subject, StringComparison.Ordinal);
        Assert.Contains(" kPa", AnswerWorking.Of(fit).Subject, StringComparison.Ordinal);

        SizingAnswer<VolumeFlow> answer = SystemSizing.MinimumStaticFlow(fit.System, Wren.At(4000, 0.5));
        Assert.StartsWith(answer.Binding.Point.In(TextStyle.UsCustomary), AnswerWorking.Of(answer, TextStyle.UsCustomary).Subject, StringComparison.Ordinal);
        Assert.Contains(" psi", answer.Binding.Point.In(TextStyle.UsCustomary), StringComparison.Ordinal);
        Assert.EndsWith($"with the answer put in: {answer.Figure!.In(TextStyle.UsCustomary)}", AnswerWorking.Of(answer, TextStyle.UsCustomary).Subject, StringComparison.Ordinal);
        Assert.EndsWith($"with the answer put in: {answer.Figure!.In(TextStyle.Metric)}", AnswerWorking.Of(answer).Subject, StringComparison.Ordinal);
        Refused.Missing("answer", () => AnswerWorking.Of((SizingAnswer<VolumeFlow>)null!));
        Refused.Missing("fit", () => AnswerWorking.Of((RisingRateFit)null!));
    }

    /// <summary>
    /// Two points and both figures free: 410.4 + 30 kPa at 0.30 bar, and 420 + 60 at 0.60: the gain is the slope of the line through both and the base where it starts.
    /// </summary>
    [Fact]
    public void Fit_OfTwoPointsWithBaseAndGainFree_MeetsBoth()
    {
        RisingRateBounds bounds = RisingRateBounds.Of(Wren.Kpa(150), Wren.Kpa(500), maximumOnset: Pressure.Zero);
        RisingRateFit fit = Fit(bounds, null, (3000, 0.3, 0.84), (5000, 0.6, 0.97));
        (double low, double high) = (EqualDeadTimes.RailFor(30, 0.84), EqualDeadTimes.RailFor(60, 0.97));
        double gain = (high - low) / 30;
        Assert.True(fit.Serves, fit.ToString());
        Assert.Equal(gain, fit.Unit.Gain, 1e-3);
        Assert.Equal(low - (gain * 30), fit.Unit.Base.Kilopascals, 0.05);
        Assert.InRange(fit.LargestDeviation!.Value.DecimalFractions, 0, 1e-5);
    }

    /// <summary>
    /// The first of two points lies at the onset or under it, where the rail rises with the boost alone: base 300 kPa and 0.10 bar; the second asks for 452.7 kPa.
    /// </summary>
    [Fact]
    public void Fit_WithAnOnsetToLookFor_HoldsTheFirstPointDown()
    {
        // 300 kPa across the injectors give the target at 0.10 bar, and so do 310 kPa in the rail: an onset of at least that.
        RisingRateFit fit = Fit(Fixed300(Wren.Kpa(20)), null, (3000, 0.1, EqualDeadTimes.Target), (5000, 0.5, 0.95));
        Assert.True(fit.Serves, fit.ToString());
        Assert.InRange(fit.Unit.Onset.Kilopascals, 9.99, 20);
        double rail = EqualDeadTimes.RailFor(50, 0.95);
        Assert.Equal((rail - 300 - fit.Unit.Onset.Kilopascals) / (50 - fit.Unit.Onset.Kilopascals), fit.Unit.Gain, 1e-3);
        Assert.InRange(fit.LargestDeviation!.Value.DecimalFractions, 0, 1e-5);

        // With no onset allowed it cannot: the gain is a compromise, off by as much at both points, lean at one and rich at the other.
        RisingRateFit without = Fit(Fixed300(Pressure.Zero), null, (3000, 0.1, EqualDeadTimes.Target), (5000, 0.5, 0.95));
        double[] off = [.. without.Points.Select(point => RailResponse.DeviationOf(point.Result))];
        Assert.True(off[0] < -0.005 && off[1] > 0.005, string.Join(", ", off));
        Assert.Equal(-off[0], off[1], 1e-6);
        Assert.Equal(off.Max(Math.Abs), without.LargestDeviation!.Value.DecimalFractions, 1e-12);
    }

    /// <summary>Two points under the onset, which then lies at the upper one's boost or over it, well over the boost of the first.</summary>
    [Fact]
    public void Fit_WithAnOnsetToLookFor_LooksUpToTheHighestBoost()
    {
        RisingRateFit fit = Fit(Fixed300(Wren.Kpa(30)), null, (2600, 0.05, EqualDeadTimes.Target), (3000, 0.2, EqualDeadTimes.Target), (5000, 0.5, 0.95));
        Assert.True(fit.Serves, fit.ToString());
        Assert.InRange(fit.Unit.Onset.Kilopascals, 19.9, 30);
        Assert.InRange(fit.LargestDeviation!.Value.DecimalFractions, 0, 1e-4);
    }

    /// <summary>A ceiling of 400 kPa that is given: a gain of 2 meets 360 kPa at 0.30 bar, and 400 at 0.50 and at 0.70, where without the ceiling it would set 440.</summary>
    [Fact]
    public void Fit_UnderACeilingThatIsGiven_CountsWithIt()
    {
        static double For(double rail, double boost) => EqualDeadTimes.Target * Math.Sqrt((rail - boost) / 300);
        RisingRateBounds bounds = RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(300), maximumOnset: Pressure.Zero, ceiling: Wren.Kpa(400));
        RisingRateFit fit = Fit(bounds, null, (3000, 0.3, For(360, 30)), (4500, 0.5, For(400, 50)), (5500, 0.7, For(400, 70)));
        Assert.True(fit.Serves, fit.ToString());
        Assert.Equal(2, fit.Unit.Gain, 1e-3);
        Assert.InRange(fit.LargestDeviation!.Value.DecimalFractions, 0, 1e-4);
    }

    /// <summary>Two points that ask for the same pressure at more boost, and one before them where even the greatest gain sets less: the ceiling is looked for over all three.</summary>
    [Fact]
    public void Fit_WithACeilingToLookFor_LooksUpToWhatTheGreatestGainSets()
    {
        double rail = EqualDeadTimes.RailFor(50, 0.95);
        (double, double, double)[] points =
        [
            (3000, 0.05, EqualDeadTimes.Target * Math.Sqrt((300 + (3.6 * 5) - 5) / 300)), (4500, 0.5, 0.95), (5500, 0.7, EqualDeadTimes.Target * Math.Sqrt((rail - 70) / 300)),
        ];
        RisingRateBounds bounds = RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(300), maximumGain: 12, maximumOnset: Pressure.Zero, minimumCeiling: Wren.Kpa(320));
        RisingRateFit fit = Fit(bounds, null, points);
        Assert.True(fit.Serves, fit.ToString());
        Assert.Equal(rail, fit.Unit.Ceiling!.Value.Kilopascals, 0.1);
        Assert.InRange(fit.LargestDeviation!.Value.DecimalFractions, 0, 1e-4);
    }

    /// <summary>
    /// A third point that asks for no more than the second, at more boost: with a ceiling to look for, gain and ceiling meet all; one that no point reaches is none.
    /// </summary>
    [Fact]
    public void Fit_WithACeilingToLookFor_StopsAtThePressureOfThePointsThatAskForNoMore()
    {
        // 300 · (λ/0.82)² + boost is the same 452.7 kPa at 0.50 and 0.70 bar.
        double rail = EqualDeadTimes.RailFor(50, 0.95);
        double lambda = EqualDeadTimes.Target * Math.Sqrt((rail - 70) / 300);
        (double, double, double)[] points = [(3000, 0.3, EqualDeadTimes.Target * Math.Sqrt((300 + (3.6 * 30) - 30) / 300)), (4500, 0.5, 0.95), (5500, 0.7, lambda)];
        RisingRateBounds bounds = RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(300), maximumOnset: Pressure.Zero, minimumCeiling: Wren.Kpa(320));
        RisingRateFit fit = Fit(bounds, null, points);
        Assert.True(fit.Serves, fit.ToString());
        Assert.Equal(3.6, fit.Unit.Gain, 1e-2);
        Assert.Equal(rail, fit.Unit.Ceiling!.Value.Kilopascals, 0.1);
        Assert.InRange(fit.LargestDeviation!.Value.DecimalFractions, 0, 1e-4);

        // Without one the compromise is over a per cent off.
        Assert.InRange(Fit(Fixed300(Pressure.Zero), null, points).LargestDeviation!.Value.DecimalFractions, 0.02, 0.3);
        Assert.Null(Fit(Fixed300(Pressure.Zero), null, points).Unit.Ceiling);

        // A ceiling that is given stays, and one that is looked for and not needed is none.
        RisingRateFit given = Fit(RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(300), maximumOnset: Pressure.Zero, ceiling: Wren.Kpa(460)), null, points[..1]);
        Assert.Equal(460, given.Unit.Ceiling!.Value.Kilopascals, 1e-9);
        RisingRateBounds far = RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(300), maximumOnset: Pressure.Zero, minimumCeiling: Wren.Kpa(900));
        Assert.Null(Fit(far, null, points[..1]).Unit.Ceiling);
    }

    /// <summary>No unit's neighbour in gain or onset has a smaller largest deviation over four points that no unit meets.</summary>
    [Fact]
    public void Fit_OfFourPoints_IsBeatenByNoneOfItsNeighbours()
    {
        (double, double, double)[] points = [(2600, 0.15, 0.86), (3500, 0.3, 0.84), (4500, 0.45, 0.97), (5600, 0.6, 0.93)];
        RisingRateBounds bounds = RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(300), maximumGain: 9, maximumOnset: Wren.Kpa(30));
        RisingRateFit fit = Fit(bounds, null, points);
        double best = fit.LargestDeviation!.Value.DecimalFractions;
        Assert.InRange(best, 0.001, 0.2);
        foreach ((double gain, double onset) in new (double, double)[] { (0.05, 0), (-0.05, 0), (0, 0.5), (0, -0.5), (0.05, 0.5), (-0.05, -0.5), (0.05, -0.5), (-0.05, 0.5), (2, 0), (-1, 0), (0, 10), (0, -10) })
        {
            double start = fit.Unit.Onset.Kilopascals + onset;
            if (start is >= 0 and <= 30 && fit.Unit.Gain + gain is >= 1 and <= 9)
            {
                FuelSystem system = fit.System.With(RisingRate.From(Wren.Kpa(300), fit.Unit.Gain + gain, Wren.Kpa(start)));
                Assert.True(fit.Points.Max(point => Math.Abs(RailResponse.DeviationOf(system.Solve(point.Result.Point)))) >= best - 1e-7);
            }
        }
    }

    /// <summary>Hoses rated for 420 kPa where the mixture asks for 452.7: the unit stays under the rating, 420 kPa, and the mixture is as lean as that leaves it.</summary>
    [Fact]
    public void Fit_WithinAnotherCheck_GoesNoFurtherThanThatAllows()
    {
        RisingRateFit fit = Fit(Fixed300(Pressure.Zero), SizingLimits.Of(Wren.Percent(99), Wren.Percent(10), Wren.Kpa(420)), (4000, 0.5, 0.95));
        Assert.True(fit.Serves, fit.ToString());
        Assert.Equal(420, fit.Points[0].Result.RailSetGauge.Kilopascals, 1e-3);
        Assert.Equal((0.95 * Math.Sqrt(300 / 370.0) / EqualDeadTimes.Target) - 1, fit.LargestDeviation!.Value.DecimalFractions, 1e-5);

        // At 300 kPa of base nothing keeps a rating of 290: it says which check breaks, and what the nearest mixture would be.
        RisingRateFit none = Fit(Fixed300(Pressure.Zero), SizingLimits.Of(Wren.Percent(99), Wren.Percent(10), Wren.Kpa(290)), (4000, 0.5, 0.95));
        Assert.False(none.Serves);
        Assert.Equal("fit.obstacle", none.Obstacle!.Code);
        Assert.Matches(
            @"^No rising-rate unit does it: hoses, fittings and filter: .*rated for only 290 kPa; the nearest mixture would be 16 % off with .*\.$", none.ToString());

        // Of two that break the one that breaks by more is named: injectors over a duty cycle of 20 %, or hoses under 350 kPa.
        RisingRateFit both = MixtureSizing.FitRisingRate(
            EqualDeadTimes.With(EqualDeadTimes.Built(RisingRate.From(Wren.Kpa(300), 1, Pressure.Zero), SizingLimits.Of(Wren.Percent(20), Wren.Percent(10), Wren.Kpa(330))), (4000, 0.5, 0.95)),
            LineOf([(4000, 0.5, 0.95)]),
            [Wren.Rpm(4000)],
            Wren.Hill,
            Fixed300(Pressure.Zero));
        Margin[] broken = [.. both.Points[0].Result.Margins.Where(margin => margin.Outcome == Outcome.Fails && RailResponse.IsOther(margin))];
        Assert.True(broken.Length > 1);
        Assert.Equal(broken.MinBy(margin => margin.Reserve!.Value.DecimalFractions)!.ToString(), both.Obstacle!.ToString());
        Assert.NotEqual(broken.MaxBy(margin => margin.Reserve!.Value.DecimalFractions)!.ToString(), both.Obstacle.ToString());

        // It breaks it by the least that a unit can: a gain of 1.
        Assert.Equal(350, none.Points[0].Result.RailSetGauge.Kilopascals, 1e-3);
    }

    [Fact]
    public void Fit_WhereLambdaIsNotKnown_SaysWhereAndDoesNotServe()
    {
        FuelSystem system = EqualDeadTimes.Built(RisingRate.From(Wren.Kpa(300), 1, Pressure.Zero))
            .With(FuelSizing.Controllers.RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(8)), (Wren.Rpm(3500), Wren.Ms(8))));
        RisingRateFit fit = MixtureSizing.FitRisingRate(
            system, LineOf([(3000, 0.3, 1), (4000, 0.5, 1)]), [Wren.Rpm(3000), Wren.Rpm(4000)], Wren.Hill, Fixed300(Pressure.Zero));
        Assert.False(fit.Serves);
        Assert.Null(fit.LargestDeviation);
        Assert.Equal(
            "No rising-rate unit does it: lambda cannot be said: data of pump, dead time, injector or pulses ends before this point at 4,000 rev/min, 0.50 bar.", fit.ToString());
    }

    /// <summary>The base stays as it is fitted where no bounds are given, and an onset of 0.50 bar at the most is looked at.</summary>
    [Fact]
    public void Fit_WithoutBounds_KeepsTheBase()
    {
        FuelSystem system = EqualDeadTimes.With(EqualDeadTimes.Built(ManifoldReferenced.From(Wren.Kpa(320))), (3000, 0.3, 0.95), (4000, 0.5, 0.95));
        RisingRateFit fit = MixtureSizing.FitRisingRate(system, LineOf([(3000, 0.3, 1), (4000, 0.5, 1)]), [Wren.Rpm(4000)], Wren.Hill);
        Assert.Equal(320, fit.Unit.Base.Kilopascals, 1e-9);
        Assert.InRange(fit.LargestDeviation!.Value.DecimalFractions, 0, 1e-5);
    }

    [Fact]
    public void Bounds_InWords_NameWhatIsLookedFor()
    {
        Assert.Equal("base 300 kPa to 320 kPa, gain up to 15, onset up to 0.50 bar", RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(320)).ToString());
        Assert.Equal(
            "base 300 kPa to 320 kPa, gain up to 8.5, onset up to 0.20 bar, ceiling 700 kPa",
            RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(320), 8.5, Wren.Kpa(20), Wren.Kpa(700)).ToString());
        Assert.Equal(
            "base 300 kPa to 320 kPa, gain up to 8.5, onset up to 0.20 bar, ceiling from 400 kPa to 700 kPa",
            RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(320), 8.5, Wren.Kpa(20), Wren.Kpa(700), Wren.Kpa(400)).ToString());
        Assert.Equal(
            "base 300 kPa to 320 kPa, gain up to 15, onset up to 0.50 bar, ceiling from 400 kPa",
            RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(320), minimumCeiling: Wren.Kpa(400)).ToString());
    }

    private static RisingRateBounds Fixed300(Pressure onset) => RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(300), maximumOnset: onset);

    private static MeasuredBoost LineOf((double Rpm, double Boost, double Lambda)[] points) => MeasuredBoost.Of(
    [
        .. points.Append((points[^1].Rpm + 200, points[^1].Boost, 0)).Select(point => (Wren.Rpm(point.Item1), Pressure.FromBars(point.Item2))),
    ]);

    private static RisingRateFit Fit(RisingRateBounds bounds, SizingLimits? limits, params (double Rpm, double Boost, double Lambda)[] points) =>
        MixtureSizing.FitRisingRate(
            EqualDeadTimes.With(EqualDeadTimes.Built(RisingRate.From(Wren.Kpa(300), 1, Pressure.Zero), limits), points),
            LineOf(points),
            [.. points.Select(point => Wren.Rpm(point.Rpm))],
            Wren.Hill,
            bounds);
}
