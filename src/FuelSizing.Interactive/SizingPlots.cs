using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>Plots of the library's results.</summary>
public static class SizingPlots
{
    private static readonly PlotAxis BoostAxis = new("Boost", "bar");

    /// <summary>Rail pressure, manifold pressure and the difference that the injector sees, across boost.</summary>
    /// <param name="sweep">The sweep, of two boosts or more.</param>
    /// <param name="speed">Place in the sweep's speeds, from 0.</param>
    /// <returns>The plot.</returns>
    /// <exception cref="ArgumentNullException">There is no sweep.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not in the sweep.</exception>
    public static LinePlot RailPressure(SweepResult sweep, int speed)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        var column = Column(sweep, speed);
        return new LinePlot(
            $"Rail pressure across boost at {Readable.Of(sweep.Speeds[speed])}",
            BoostAxis,
            new PlotAxis("Pressure", "kPa"),
            [
                Line("rail, gauge", column, result => result.RailGauge.Kilopascals),
                Line("across the injector", column, result => result.InjectorDifferential.Kilopascals),
                Line("boost", column, result => result.Point.Boost.Kilopascals),
            ]);
    }

    /// <summary>Duty cycle over speed and boost, with the limit as a bold contour.</summary>
    /// <param name="sweep">The sweep, of two speeds and two boosts or more.</param>
    /// <returns>The map; hatched where the duty cycle cannot be said.</returns>
    /// <exception cref="ArgumentException">The duty cycle can be said nowhere, or the sweep is a single line.</exception>
    public static MapPlot DutyCycle(SweepResult sweep)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        var duty = new double[sweep.Speeds.Count, sweep.Boosts.Count];
        for (int speed = 0; speed < sweep.Speeds.Count; speed++)
        {
            for (int boost = 0; boost < sweep.Boosts.Count; boost++)
            {
                duty[speed, boost] = sweep.At(speed, boost).DutyCycle?.Percent ?? double.NaN;
            }
        }

        return new MapPlot(
            "Injector duty cycle over speed and boost",
            new PlotAxis("Engine speed", "rev/min"),
            BoostAxis,
            new PlotAxis("Duty cycle", "%"),
            [.. sweep.Speeds.Select(speed => speed.RevolutionsPerMinute)],
            [.. sweep.Boosts.Select(boost => boost.Bars)],
            duty)
            .WithLimit($"limit {Readable.Of(sweep.System.Limits.DutyCycle)}", sweep.System.Limits.DutyCycle.Percent);
    }

    /// <summary>The pump's curve, and what is wanted of it at each boost at the speed that asks most.</summary>
    /// <param name="sweep">The sweep, of two boosts or more.</param>
    /// <returns>The plot: the system keeps up where the demand lies below the curve.</returns>
    /// <exception cref="ArgumentNullException">There is no sweep.</exception>
    public static LinePlot PumpAgainstDemand(SweepResult sweep)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        var supply = sweep.Results[0].Point.Conditions.SupplyVoltage;
        var curve = sweep.System.Pump.CurveAt(supply);
        OperatingResult[] most = [.. SizingTables.Rows(sweep).Select(row => row.MaxBy(result => result.InjectedFlow)!)];
        return new LinePlot(
            "Pump against demand",
            new PlotAxis("Pressure at the pump", "kPa"),
            new PlotAxis("Flow", "L/h"),
            [
                new PlotLine(
                    $"{sweep.System.Pump.Name} on {Readable.Of(supply)}",
                    [.. curve.Select(point => point.PressureRise.Kilopascals)],
                    [.. curve.Select(point => point.Flow.LitersPerHour)]),
                new PlotLine(
                    "injected, at the pressure set",
                    [.. most.Select(result => result.RailSetGauge.Kilopascals)],
                    [.. most.Select(result => result.InjectedFlow.LitersPerHour)]),
            ])
            .WithNote($"Demand is that of the speed that asks most, from {Readable.Boost(sweep.Boosts[0])} to {Readable.Boost(sweep.Boosts[^1])} of boost.");
    }

    private static PlotLine Line(string name, OperatingResult[] column, Func<OperatingResult, double> value) =>
        new(name, [.. column.Select(result => result.Point.Boost.Bars)], [.. column.Select(value)]);

    private static OperatingResult[] Column(SweepResult sweep, int speed) =>
        [.. Enumerable.Range(0, sweep.Boosts.Count).Select(boost => sweep.At(speed, boost))];
}
