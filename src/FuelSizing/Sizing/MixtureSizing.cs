using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Sizing;

/// <summary>Which rising-rate unit makes the mixture right along a boost line.</summary>
public static class MixtureSizing
{
    /// <summary>Finds base, gain and onset that hold lambda nearest to its target while every other check holds.</summary>
    /// <param name="system">The system, with its controller; its own regulator is exchanged.</param>
    /// <param name="line">The boost at each speed.</param>
    /// <param name="speeds">One or more, rising, that line and tables cover.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature.</param>
    /// <param name="bounds">Within which the unit is looked for; the base stays as fitted if not given.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>The unit and what it leaves, or why none does it.</returns>
    /// <exception cref="ArgumentException">
    /// The controller is assumed to command whatever is needed, so that no unit is better than another; main fuel is taken back for a second stream; or the engine
    /// cannot have such a line.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">Line or tables do not cover a speed.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static RisingRateFit FitRisingRate(
        FuelSystem system, BoostLine line, IReadOnlyList<RotationalSpeed> speeds, Conditions conditions, RisingRateBounds? bounds = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(speeds);
        ArgumentNullException.ThrowIfNull(conditions);
        Guard.Count(speeds.Count, 1, 10_000, "Give at least one speed.", nameof(speeds));
        foreach (RotationalSpeed speed in speeds)
        {
            EngineSpeed.Within(speed, nameof(speeds));
        }

        if (system.Controller.IsIdeal)
        {
            throw new ArgumentException(
                "system has no controller: it is assumed to command whatever pulse is needed, and then any pressure serves. Give it one by FuelSystem.With.",
                nameof(system));
        }

        if (system.SecondStream is { TakesBack: true } stream)
        {
            throw new ArgumentException(
                $"system has main fuel taken back for {stream.Name}, which a unit would be fitted against: the engine would then depend on the second stream. Fit the unit by FuelSystem.WithoutSecondStream, and judge the system with the stream.",
                nameof(system));
        }

        Pressure fitted = Pressure.FromPascals(Math.Clamp(system.Regulator.SetPascals(0), 100e3, 1500e3));
        OperatingPoint[] points = [.. speeds.Select(speed => OperatingPoint.At(speed, line.At(speed, system.Demand, conditions.Atmosphere), conditions))];
        RisingRateSearch search = new(system, points, bounds ?? RisingRateBounds.Of(fitted, fitted), cancellation);
        FuelSystem with = system.With(search.Best());
        OperatingResult[] results = [.. points.Select(with.Solve)];
        return new(
            with,
            (RisingRate)with.Regulator,
            [.. results.Select(result => new FittedPoint(result, MixtureSolver.RailFor(with.Parts, result.SolvedDemand, result.Mixture.TargetLambda)))],
            results.Max(result => Math.Abs(RailResponse.DeviationOf(result))),
            Obstacle(results));
    }

    // What is not known is no mixture within its target, whatever the other checks say.
    private static Statement? Obstacle(OperatingResult[] results) =>
        results.SelectMany(result => result.Margins).Where(margin => RailResponse.IsOther(margin) && margin.Outcome != Outcome.Holds)
            .OrderBy(margin => margin, Urgency.Order).FirstOrDefault() is { } broken
            ? Statement.Of("fit.obstacle", $"{broken}")
        : results.FirstOrDefault(result => result.Mixture.Deviation is null) is { } unknown
            ? Statement.Of("fit.mixture-unknown", $"{unknown.Mixture.Text} at {unknown.Point}")
            : null;
}
