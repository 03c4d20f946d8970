using FuelSizing.Checks;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Plots along a boost line, engine speed along: boost, rail pressure, lambda.</summary>
public static class MixturePlots
{
    /// <summary>Boost against engine speed.</summary>
    /// <param name="pulls">Pulls, each with its name in the key; 1 to 6.</param>
    /// <returns>The plot.</returns>
    /// <exception cref="ArgumentException">A text or the count of pulls is refused.</exception>
    /// <exception cref="ArgumentNullException">A pull is missing.</exception>
    public static LinePlot Boost(params IReadOnlyList<(string Name, LineSweepResult Pull)> pulls) => AcrossSpeed(
        "Boost along the line",
        new PlotAxis("Boost", Units.Current.Units.Boost.Unit),
        result => Units.Current.Units.Boost.ValueOf(result.Point.Boost),
        pulls);

    /// <summary>Lambda against engine speed, with its target and the leanest that is allowed as lines across.</summary>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="pulls">
    /// Pulls of the same target and the same limits, each with its name in the key; 1 to 6, or 1 to 3 where the leanest lambda changes with boost.
    /// </param>
    /// <returns>The plot: a gap where lambda is not known, or nothing is delivered.</returns>
    /// <exception cref="ArgumentException">
    /// A text or the count of pulls is refused, targets or limits differ, or lambda is known nowhere along a pull.
    /// </exception>
    /// <exception cref="ArgumentNullException">A pull is missing.</exception>
    public static LinePlot Lambda(string title, params IReadOnlyList<(string Name, LineSweepResult Pull)> pulls)
    {
        Named.Check(pulls, PlotStyle.MaximumLines, nameof(pulls));
        TextStyle style = Units.Current;
        FuelSystem first = pulls[0].Pull.System;
        MixtureLimits? limits = first.Limits.Mixture;
        if (pulls.Any(one => !one.Pull.System.Demand.Consumption.Lambda.Equals(first.Demand.Consumption.Lambda) || !Equals(one.Pull.System.Demand.AlongSpeed, first.Demand.AlongSpeed) || !Equals(one.Pull.System.Limits.Mixture, limits)))
        {
            throw new ArgumentException(
                "pulls differ in target lambda or in the lambda allowed, so one limit line would be wrong for some. Give each a plot of its own.", nameof(pulls));
        }

        // A limit that changes with boost stands elsewhere for each pull.
        return WithFixedLimits(new LinePlot(
            title,
            SpeedAxis(style),
            new PlotAxis("Lambda", "1"),
            [
                .. pulls.Select(one => Line(one.Name, one.Pull.Results, result => result.Mixture.Lambda, style)),
                .. pulls.SelectMany(one => LeanestAllowed(
                    pulls.Count == 1 ? "leanest allowed" : $"leanest allowed, {one.Name}", one.Pull.System, one.Pull.Results, style)),
                .. Target(first, pulls[0].Pull.Results, style),
            ]), first, style);
    }

    /// <summary>The target as a line, where it changes with speed.</summary>
    internal static IEnumerable<PlotLine> Target(FuelSystem system, IReadOnlyList<OperatingResult> results, TextStyle style) => HasTargetLine(system)
        ? [Line("target", results, result => result.Mixture.TargetLambda, style)]
        : [];

    /// <summary>The leanest lambda allowed as a line, where it changes with boost.</summary>
    internal static IEnumerable<PlotLine> LeanestAllowed(string name, FuelSystem system, IReadOnlyList<OperatingResult> results, TextStyle style) =>
        system.Limits.Mixture is { Leanest.Count: > 1 } && results.Any(result => LeanestAllowed(result) is not null)
            ? [Line(name, results, LeanestAllowed, style)]
            : [];

    /// <summary>Target and leanest lambda allowed as limit lines, where they are the same everywhere.</summary>
    internal static LinePlot WithFixedLimits(LinePlot plot, FuelSystem system, TextStyle style)
    {
        double target = system.Demand.Consumption.Lambda;
        plot = plot.With(style);
        plot = HasTargetLine(system) ? plot : plot.WithReference($"target {style.Number(target, "N3")}", target);
        return system.Limits.Mixture is { Leanest: [(var boost, var leanest)] }
            ? plot.WithLimit($"leanest allowed, from {style.Boost(boost)}", leanest)
            : plot;
    }

    private static bool HasTargetLine(FuelSystem system) => system.Demand.AlongSpeed?.Rows[0].Lambda is not null;

    /// <summary>Rail pressure as set and as delivered with the flow that is injected, and the boost, against engine speed.</summary>
    /// <param name="pull">The pull.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot.</returns>
    /// <exception cref="ArgumentNullException">There is no pull.</exception>
    public static LinePlot RailPressure(LineSweepResult pull, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(pull);
        return RailPressure(pull.Results, _ => null, style ?? Units.Current);
    }

    /// <summary>Rail pressure that the target lambda needs, and that which a fitted unit sets and the pumps deliver, against engine speed.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot: a gap where no rail pressure gives the target.</returns>
    /// <exception cref="ArgumentNullException">There is no fit.</exception>
    public static LinePlot RailPressure(RisingRateFit fit, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(fit);
        Dictionary<OperatingResult, Pressure?> required = fit.Points.ToDictionary(point => point.Result, point => point.RequiredRail);
        return RailPressure([.. fit.Points.Select(point => point.Result)], result => required[result], style ?? Units.Current);
    }

    /// <summary>One figure against engine speed for several pulls.</summary>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="value">The value axis.</param>
    /// <param name="figure">The figure, in the unit of the value axis; none leaves a gap.</param>
    /// <param name="pulls">Pulls, each with its name in the key; 1 to 6.</param>
    /// <returns>The plot.</returns>
    /// <exception cref="ArgumentException">A text or the count of pulls is refused, or a pull has no such figure at all.</exception>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    public static LinePlot AcrossSpeed(
        string title,
        PlotAxis value,
        Func<OperatingResult, double?> figure,
        params IReadOnlyList<(string Name, LineSweepResult Pull)> pulls)
    {
        ArgumentNullException.ThrowIfNull(figure);
        Named.Check(pulls, PlotStyle.MaximumLines, nameof(pulls));
        TextStyle style = Units.Current;
        return new LinePlot(title, SpeedAxis(style), value, [.. pulls.Select(one => Line(one.Name, one.Pull.Results, figure, style))]).With(style);
    }

    private static PlotAxis SpeedAxis(TextStyle style) => new("Engine speed", style.Units.Speed.Unit);

    private static LinePlot RailPressure(IReadOnlyList<OperatingResult> results, Func<OperatingResult, Pressure?> required, TextStyle style)
    {
        double? Value(Pressure? pressure) => pressure is { } known ? style.Units.Pressure.ValueOf(known) : null;
        return new LinePlot(
            "Rail pressure along the line",
            SpeedAxis(style),
            new PlotAxis("Pressure, gauge", style.Units.Pressure.Unit),
            [
                .. results.Any(result => required(result) is not null)
                    ? (PlotLine[])[Line("rail, needed for the target", results, result => Value(required(result)), style)]
                    : [],
                Line("rail, set", results, result => Value(result.RailSetGauge), style),
                Line("rail, delivered", results, result => Value(result.Mixture.RailGauge), style),
                Line("boost", results, result => Value(result.Point.Boost), style),
            ]).With(style);
    }

    private static double? LeanestAllowed(OperatingResult result) =>
        result.Margins.FirstOrDefault(margin => margin.Part == Part.Mixture)?.Allowed is Ratio allowed ? allowed.DecimalFractions : null;

    // Where nothing is delivered lambda is infinite, which no axis holds.
    private static PlotLine Line(string name, IReadOnlyList<OperatingResult> results, Func<OperatingResult, double?> figure, TextStyle style) => new(
        name,
        [.. results.Select(result => style.Units.Speed.ValueOf(result.Point.Speed))],
        [.. results.Select(result => figure(result) is { } known && double.IsFinite(known) ? known : double.NaN)]);
}
