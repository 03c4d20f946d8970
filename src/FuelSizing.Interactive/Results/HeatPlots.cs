using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Plots of warming fuel against time.</summary>
public static class HeatPlots
{
    private const int Steps = 60;

    /// <summary>Temperature of the main tank against time.</summary>
    /// <param name="runs">Runs and their names; 1 to 6.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot.</returns>
    /// <exception cref="ArgumentException">There are no runs or too many, or the temperature of one is not known.</exception>
    /// <exception cref="ArgumentNullException">There are no runs.</exception>
    public static LinePlot Temperature(IReadOnlyList<(string Name, HeatRun Run)> runs, TextStyle? style = null)
    {
        TextStyle shown = style ?? Units.Current;
        return Plot(
            "Fuel in the tank",
            new PlotAxis("Temperature", shown.Units.Temperature.Unit),
            runs,
            (run, time) => run.TankTemperatureAt(time) is { } temperature ? shown.Units.Temperature.ValueOf(temperature) : double.NaN,
            shown);
    }

    /// <summary>Lowest pressure over the fuel's vapour pressure, of main tank and pump inlets, against time, with the margin that the limits ask for.</summary>
    /// <param name="runs">Runs and their names; 1 to 6.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot; a curve ends where the fuel is warmer than its data reach.</returns>
    /// <exception cref="ArgumentException">There are no runs or too many, or the margin of one is not known.</exception>
    /// <exception cref="ArgumentNullException">There are no runs.</exception>
    public static LinePlot VapourMargin(IReadOnlyList<(string Name, HeatRun Run)> runs, TextStyle? style = null)
    {
        TextStyle shown = style ?? Units.Current;
        LinePlot plot = Plot(
            "Pressure over vapour pressure, at the lowest",
            new PlotAxis("Vapour margin", shown.Units.Pressure.Unit),
            runs,
            (run, time) => run.VapourMarginAt(time) is { } margin ? shown.Units.Pressure.ValueOf(margin) : double.NaN,
            shown);
        Pressure required = runs[0].Run.Result.Parts.Limits.SuctionMargin;
        return plot.WithLimit($"required, {shown.Of(required)}", shown.Units.Pressure.ValueOf(required));
    }

    private static LinePlot Plot(
        string title, PlotAxis axis, IReadOnlyList<(string Name, HeatRun Run)> runs, Func<HeatRun, Duration, double> figure, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(runs);
        return new LinePlot(title, new PlotAxis("Time", "min"), axis, [.. runs.Select(one => Line(one, figure))]).With(style);
    }

    private static PlotLine Line((string Name, HeatRun Run) runs, Func<HeatRun, Duration, double> figure)
    {
        (string name, HeatRun run) = runs;
        ArgumentNullException.ThrowIfNull(run, nameof(runs));
        Duration[] times = [.. Enumerable.Range(0, Steps + 1).Select(step => UnitMath.Min(run.Run, run.Run * step / Steps))];
        double[] figures = [.. times.Select(time => figure(run, time))];
        return figures.Any(double.IsFinite)
            ? new PlotLine(name, [.. times.Select(time => time.Minutes)], figures)
            : throw new ArgumentException($"runs has \"{name}\", of which nothing can be drawn: {run.VapourGap ?? run.Gap}", nameof(runs));
    }
}
