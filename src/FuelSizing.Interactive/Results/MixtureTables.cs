using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>Tables of the mixture along a boost line.</summary>
public static class MixtureTables
{
    /// <summary>A pull along a boost line, speed by speed: boost, rail, commanded pulse and the mixture that comes of them.</summary>
    /// <param name="pull">The pull.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a speed.</returns>
    /// <exception cref="ArgumentNullException">There is no pull.</exception>
    public static Table Pull(LineSweepResult pull, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(pull);
        style ??= Units.Current;
        return new Table(
            "The pull, speed by speed",
            [
                TableColumn.Number("Speed"),
                TableColumn.Number("Boost"),
                TableColumn.Number("Rail"),
                TableColumn.Number("Pulse"),
                TableColumn.Number("Duty cycle"),
                TableColumn.Number("Lambda"),
                TableColumn.Number("Deviation"),
                TableColumn.Text("Main cause"),
            ],
            [.. pull.Results.Select(result => (IReadOnlyList<string>)
            [
                style.Of(result.Point.Speed),
                style.Boost(result.Point.Boost),
                style.Of(result.Mixture.RailGauge),
                CircuitText.Known(result.Mixture.CommandedPulse, style.Of),
                CircuitText.Known(result.Mixture.CommandedDutyCycle, style.DutyCycle),
                MixtureText.Lambda(result.Mixture.Lambda, style),
                MixtureText.Deviation(result.Mixture.Deviation, style),
                MixtureText.MainCause(result.Mixture, style),
            ])],
            $"Rail, pulse and lambda are those with the flow that is injected: {PartText.Say(pull.System.Controller, style)}. Deviation from the target; positive is lean.");
    }

    /// <summary>Each single failure: the leanest mixture, where, the rail there, the lowest rail, and the verdict along the line.</summary>
    /// <param name="failures">Of <see cref="SingleFailures.WithEachFailure"/>.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a failure.</returns>
    /// <exception cref="ArgumentNullException">There is no list, or it holds nothing at a place.</exception>
    public static Table Failures(IReadOnlyList<FailureResult> failures, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(failures);
        style ??= Units.Current;
        return new Table(
            "If one thing fails",
            [
                TableColumn.Text("Failure"),
                TableColumn.Number("Leanest lambda"),
                TableColumn.Text("At"),
                TableColumn.Number("Rail there"),
                TableColumn.Number("Lowest rail"),
                TableColumn.Text("Verdict"),
            ],
            failures.Count == 0
                ? [["No part whose single failure is known", "–", "–", "–", "–", "–"]]
                : [.. failures.Select(failure => Row(failure ?? throw new ArgumentNullException(nameof(failures)), style))],
            "Failures: each pump of several, each reference hose, a regulator stuck shut or open, each filter half blocked, the alternator. Two at once are not looked at.");
    }

    /// <summary>The worst corner: where lambda is leanest and each margin tightest, and with which inputs.</summary>
    /// <param name="worst">Of <c>FindWorstCorner</c>.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, lambda first, then a line a check.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static Table WorstCorner(WorstCornerResult worst, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(worst);
        style ??= Units.Current;
        WorstPlace[] places = [.. worst.Leanest is { } leanest ? new[] { leanest } : [], .. worst.Checks];
        return new Table(
            "The worst corner of the ranges",
            [
                TableColumn.Text("What"),
                TableColumn.Number("Margin"),
                TableColumn.Number("Lambda"),
                TableColumn.Text("At"),
                TableColumn.Text("With"),
            ],
            [.. places.Select(place => (IReadOnlyList<string>)
            [
                place.Margin is { } margin ? PartText.Say(margin, style) : "leanest lambda",
                place.Margin?.Reserve is { } reserve ? style.Change(reserve) : "–",
                MixtureText.Lambda(place.Result.Mixture.MaximumLambda, style),
                PartText.Say(place.Result.Point, style),
                place.Inputs.Count == 0 ? "–" : string.Join(", ", place.Inputs.Select(input => PartText.Say(input, style))),
            ])],
            $"Found by a search at every corner and inside: {style.Count(worst.PointsSolved)} points solved.{(worst.NotKnown > 0 ? $" Lambda is not known at {style.Count(worst.NotKnown)} of them, where it may be leaner." : "")}");
    }

    private static IReadOnlyList<string> Row(FailureResult failure, TextStyle style) =>
    [
        PartText.Say(failure.Failure, style),
        failure.NotKnown > 0 ? CircuitText.Unknown : MixtureText.Lambda(failure.Leanest?.Mixture.MaximumLambda, style),
        failure.Leanest is { } leanest ? PartText.Say(leanest.Point, style) : CircuitText.Unknown,
        failure.Leanest is { } there ? style.Of(there.Mixture.RailGauge) : CircuitText.Unknown,
        failure.LowestRail is { } lowest ? style.Of(lowest.Mixture.RailGauge) : CircuitText.Unknown,
        failure.Sweep is { } sweep ? PartText.Say(sweep.Verdict, style) : PartText.Say(failure, style),
    ];
}
