using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Interactive;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using Microsoft.DotNet.Interactive.Formatting;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Tables and plots of the mixture along a boost line.</summary>
public sealed class MixtureBlockTests
{
    private static readonly BoostLine Line = HeldBoost.Of(Kpa(42), Rpm(3000), Rpm(6500));

    private static readonly MixtureLimits Limits = MixtureLimits.Of(0.9, Kpa(8));

    public MixtureBlockTests() => FuelSizingExtension.Register();

    [Fact]
    public void Pull_HasALineForEachSpeed_WithTheLambdaOfItsResult()
    {
        LineSweepResult pull = Blind.Pull(Line, Rpm(3000), Rpm(6500));

        Table table = MixtureTables.Pull(pull, TextStyle.Metric);

        Assert.Equal(pull.Results.Select(result => $"{result.Point.Speed.RevolutionsPerMinute:N0} rev/min"), table.Rows.Select(row => row[0]));
        Assert.Equal(pull.Results.Select(result => TextStyle.Metric.Number(result.Mixture.Lambda!.Value, "N3")), table.Rows.Select(row => row[5]));
        Assert.Equal(pull.Results.Select(result => result.Mixture.Causes[0].ToString()), table.Rows.Select(row => row[7]));
    }

    [Fact]
    public void Pull_OfAnAssumedController_SaysSoInEachLine()
    {
        Table table = MixtureTables.Pull(Blind.With(IdealController.Instance).Pull(Line, Rpm(3000), Rpm(6500)));

        Assert.All(table.Rows, row => Assert.Contains("assumed to command whatever", row[7], StringComparison.Ordinal));
        Assert.Contains("assumed", table.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void Pull_WherePulsesOpenNoInjector_SaysThatNoFuelIsDelivered_AndThePlotHasAGap()
    {
        LineSweepResult pull = Blind
            .With(RecordedPulseController.BySpeed((Rpm(3000), Duration.FromMilliseconds(0.4)), (Rpm(6500), Duration.FromMilliseconds(6))))
            .Pull(Line, Rpm(3000), Rpm(6500));

        Assert.Equal("no fuel", MixtureTables.Pull(pull).Rows[0][5]);
        Assert.True(double.IsNaN(MixturePlots.Lambda("Lambda", ("pulses", pull)).Lines[0].Y[0]));
    }

    [Fact]
    public void Lambda_IsDrawnWithItsTargetAndTheLeanestAllowed()
    {
        LinePlot plot = MixturePlots.Lambda("Lambda", ("as it is", Blind.Pull(Line, Rpm(3000), Rpm(6500))));

        Assert.Equal([Blind.Demand.Consumption.Lambda, 0.9], plot.Limits.Select(limit => limit.Value));
        Assert.Single(plot.Lines);
    }

    /// <summary>The limit rises to the last boost of its table; under the first it is none.</summary>
    [Fact]
    public void Lambda_WithALimitThatChangesWithBoost_DrawsItAsALine_WithAGapWhereThereIsNone()
    {
        FuelSystem system = Blind.With(Blind.Limits.With(MixtureLimits.ByBoost([(Kpa(20), 0.9), (Kpa(40), 0.84)])));
        BoostLine rising = MeasuredBoost.Of((Rpm(3000), Kpa(10)), (Rpm(6500), Kpa(40)));

        LinePlot plot = MixturePlots.Lambda("Lambda", ("as it is", system.Pull(rising, Rpm(3000), Rpm(6500))));

        PlotLine allowed = plot.Lines[1];
        Assert.Equal("leanest allowed", allowed.Name);
        Assert.True(double.IsNaN(allowed.Y[0]));
        Assert.Equal(0.84, allowed.Y[^1], 1e-9);
        Assert.Single(plot.Limits);
    }

    [Fact]
    public void Lambda_OfPullsWithDifferentLimits_IsRefused()
    {
        LineSweepResult one = Blind.Pull(Line, Rpm(3000), Rpm(6500));
        LineSweepResult other = Blind.With(Blind.Limits.With(MixtureLimits.Of(0.86, Kpa(8)))).Pull(Line, Rpm(3000), Rpm(6500));

        ArgumentException refused = Assert.Throws<ArgumentException>(() => MixturePlots.Lambda("Lambda", ("one", one), ("other", other)));

        Assert.Contains("differ", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void RailPressure_OfAFit_HasWhatTheTargetNeedsBesideWhatIsSet()
    {
        RisingRateFit fit = MixtureSizing.FitRisingRate(
            Blind.With(RecordedPulseController.BySpeed((Rpm(3000), Duration.FromMilliseconds(20)), (Rpm(6500), Duration.FromMilliseconds(18)))),
            Line,
            [Rpm(3000), Rpm(5000), Rpm(6500)],
            Conditions.Default,
            RisingRateBounds.Of(Kpa(300), Kpa(300), maximumOnset: Pressure.Zero));

        LinePlot plot = MixturePlots.RailPressure(fit, TextStyle.Metric);

        Assert.Equal(["rail, needed for the target", "rail, set", "rail, delivered", "boost"], plot.Lines.Select(line => line.Name));
        Assert.Equal(fit.Points.Select(point => point.RequiredRail?.Kilopascals ?? double.NaN), plot.Lines[0].Y);
        Assert.Equal("psi", MixturePlots.RailPressure(fit, TextStyle.UsCustomary).Y.Unit);
    }

    [Fact]
    public void Boost_AndRail_OfAPull_AreThoseOfItsResults()
    {
        LineSweepResult pull = Blind.Pull(Line, Rpm(3000), Rpm(6500));

        Assert.All(MixturePlots.Boost(("held", pull)).Lines[0].Y, boost => Assert.Equal(0.42, boost, 1e-9));
        Assert.Equal(pull.Results.Select(result => result.Mixture.RailGauge.Kilopascals), MixturePlots.RailPressure(pull, TextStyle.Metric).Lines[1].Y);
    }

    [Fact]
    public void Failures_HaveALineEach_AndWhatIsNotKnownSaysSo()
    {
        FuelSystem known = Blind.With(PumpSeries.Of(SeriesBypass.CheckValve, Blind.Pump, Blind.Pump));
        IReadOnlyList<FailureResult> failures = known.WithEachFailure(Line, Rpm(3000), Rpm(6500), Conditions.Default);
        FailureResult unknown = Blind.With(PumpSeries.Of(SeriesBypass.None, Blind.Pump, Blind.Pump))
            .WithEachFailure(Line, Rpm(3000), Rpm(6500), Conditions.Default)[0];

        Table table = MixtureTables.Failures([.. failures, unknown], TextStyle.Metric);

        Assert.Equal(failures.Append(unknown).Select(failure => failure.Failure.ToString()), table.Rows.Select(row => row[0]));
        int first = Enumerable.Range(0, failures.Count).First(at => failures[at] is { NotKnown: 0, Sweep: not null });
        Assert.Equal(TextStyle.Metric.Number(failures[first].Leanest!.Mixture.MaximumLambda!.Value, "N3"), table.Rows[first][1]);
        Assert.Equal("cannot say", table.Rows[^1][1]);
        Assert.Contains("not known", table.Rows[^1][5], StringComparison.Ordinal);
        Assert.Single(MixtureTables.Failures([]).Rows);
    }

    [Fact]
    public void Result_ShowsTheMixtureWithItsCauses()
    {
        OperatingResult result = Blind.Solve(OperatingPoint.At(Rpm(5200), Kpa(42)));

        string text = result.ToDisplayString(PlainTextFormatter.MimeType);

        Assert.Contains("Step by step", text, StringComparison.Ordinal);
        Assert.Contains("Commanded pulse", text, StringComparison.Ordinal);
        Assert.All(result.Mixture.Causes, cause => Assert.Contains(cause.ToString(), text, StringComparison.Ordinal));
        Assert.NotEmpty(result.Mixture.Causes);
    }

    [Fact]
    public void Result_OfAnAssumedController_SaysThatItIsAssumed_AndShowsNoLambdaOfIts()
    {
        string text = Blind.With(IdealController.Instance).Solve(OperatingPoint.At(Rpm(5200), Kpa(42))).ToDisplayString(PlainTextFormatter.MimeType);

        Assert.Contains("the controller is assumed to command whatever pulse is needed", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Commanded pulse", text, StringComparison.Ordinal);
    }

    /// <summary>The limits and the verdict of a pull stand in its table, and a unit that never acts in the notes.</summary>
    [Fact]
    public void Standings_AndRemedies_OfAPull_NameTheMixtureAndAUnitThatNeverActs()
    {
        LineSweepResult pull = Blind.With(RisingRate.From(Kpa(300), 6, Kpa(60))).Pull(Line, Rpm(3000), Rpm(6500));

        Assert.Contains(SizingTables.Standings(pull).Rows, row => row[0] == "mixture" && row[1] == "FAILS");
        Table remedies = SizingCallouts.Remedies(pull);
        Assert.Contains(remedies.Rows, row => row[0] == "mixture");
        Assert.Contains(remedies.Rows, row => row[0] == "note" && row[1].Contains("which no boost here exceeds", StringComparison.Ordinal));
    }

    private static FuelSystem Blind { get; } = SizingSheetTests.Sweep().System
        .With(RecordedPulseController.BySpeed((Rpm(3000), Duration.FromMilliseconds(8.2)), (Rpm(6500), Duration.FromMilliseconds(8.6))))
        .With(RisingRate.From(Kpa(300), 1, Pressure.Zero)) is var system
        ? system.With(system.Limits.With(Limits))
        : throw new InvalidOperationException();

    private static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);

    private static Pressure Kpa(double pressure) => Pressure.FromKilopascals(pressure);
}
