using FuelSizing.Checks;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Plots of the library's results.</summary>
public static class SizingPlots
{
    private static PlotAxis BoostAxis(TextStyle style) => new("Boost", style.Units.Boost.Unit);

    /// <summary>Rail pressure, manifold pressure and the difference that the injector sees, across boost.</summary>
    /// <param name="sweep">The sweep, of two boosts or more.</param>
    /// <param name="speed">Place in the sweep's speeds, from 0.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot.</returns>
    /// <exception cref="ArgumentNullException">There is no sweep.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not in the sweep.</exception>
    public static LinePlot RailPressure(SweepResult sweep, int speed, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        style ??= Units.Current;
        var column = Column(sweep, speed);
        return new LinePlot(
            $"Rail pressure across boost at {style.Of(sweep.Speeds[speed])}",
            BoostAxis(style),
            new PlotAxis("Pressure", style.Units.Pressure.Unit),
            [
                Line("rail, gauge", column, result => style.Units.Pressure.ValueOf(result.RailGauge), style),
                Line("across the injector", column, result => style.Units.Pressure.ValueOf(result.InjectorDifferential), style),
                Line("boost", column, result => style.Units.Pressure.ValueOf(result.Point.Boost), style),
            ]).With(style);
    }

    /// <summary>Duty cycle over speed and boost, with the limit as a bold contour.</summary>
    /// <param name="sweep">The sweep, of two speeds and two boosts or more.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The map; hatched where the duty cycle cannot be said.</returns>
    /// <exception cref="ArgumentException">The duty cycle can be said nowhere, or the sweep is a single line.</exception>
    public static MapPlot DutyCycle(SweepResult sweep, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        style ??= Units.Current;
        var duty = new double[sweep.Speeds.Count, sweep.Boosts.Count];
        for (int speed = 0; speed < sweep.Speeds.Count; speed++)
        {
            for (int boost = 0; boost < sweep.Boosts.Count; boost++)
            {
                duty[speed, boost] = sweep.At(speed, boost).DutyCycle?.Percent ?? double.NaN;
            }
        }

        SizingLimits limits = sweep.System.Limits;
        MapPlot map = new MapPlot(
            "Injector duty cycle over speed and boost",
            new PlotAxis("Engine speed", "rev/min"),
            BoostAxis(style),
            new PlotAxis("Duty cycle", "%"),
            [.. sweep.Speeds.Select(speed => speed.RevolutionsPerMinute)],
            [.. sweep.Boosts.Select(style.Units.Boost.ValueOf)],
            duty)
            .WithLimit($"limit {style.Of(limits.DutyCycle)}{RuleMark.Of(limits, RuleOfThumb.DutyCycle)}", limits.DutyCycle.Percent)
            .With(style);
        return limits.MarkOf(RuleOfThumb.DutyCycle) is null ? map : map.WithNote(RuleMark.Note);
    }

    /// <summary>The pump's curve, and the flow injected at each boost, at the speed of peak fuel demand.</summary>
    /// <param name="sweep">The sweep, of two boosts or more.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot: the system is adequate where the demand lies below the curve.</returns>
    /// <exception cref="ArgumentNullException">There is no sweep.</exception>
    public static LinePlot PumpAgainstDemand(SweepResult sweep, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        style ??= Units.Current;
        var supply = sweep.Results[0].Point.Conditions.SupplyVoltage;
        var curve = sweep.System.Pump.CurveOf(sweep.System.Demand.Consumption.Fuel, sweep.Results[0].Point.Conditions.FuelTemperature, supply);
        OperatingResult[] maximum = [.. SizingTables.Busiest(sweep)];
        return new LinePlot(
            "Pump against demand",
            new PlotAxis("Pressure at the pump", style.Units.Pressure.Unit),
            new PlotAxis("Flow", style.Units.PumpFlow.Unit),
            [
                new PlotLine(
                    $"{sweep.System.Pump.Name} on {style.Of(supply)}",
                    [.. curve.Select(point => style.Units.Pressure.ValueOf(point.PressureRise))],
                    [.. curve.Select(point => style.Units.PumpFlow.ValueOf(point.Flow))]),
                new PlotLine(
                    "injected, at the pressure set",
                    [.. maximum.Select(result => style.Units.Pressure.ValueOf(result.RailSetGauge))],
                    [.. maximum.Select(result => style.Units.PumpFlow.ValueOf(result.InjectedFlow))]),
            ])
            .WithNote($"Demand is that at the speed of peak fuel demand, from {style.Boost(sweep.Boosts[0])} to {style.Boost(sweep.Boosts[^1])} of boost.")
            .With(style);
    }

    /// <summary>What a check finds used and what it allows, across boost: any check of the system, one's own too.</summary>
    /// <param name="sweep">The sweep, of two boosts or more.</param>
    /// <param name="part">What the check judges, for instance <see cref="Part.Injectors"/>.</param>
    /// <param name="speed">Place in the sweep's speeds, from 0.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot: a gap where the figure is not known.</returns>
    /// <exception cref="ArgumentException">The system has no such check, or its figures are known nowhere.</exception>
    /// <exception cref="ArgumentNullException">There is no sweep or no part.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not in the sweep.</exception>
    public static LinePlot Check(SweepResult sweep, Part part, int speed, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        ArgumentNullException.ThrowIfNull(part);
        style ??= Units.Current;
        OperatingResult[] column = Column(sweep, speed);
        if (sweep.System.Checks.FirstOrDefault(check => check.Part == part) is not { } check)
        {
            throw new ArgumentException(
                $"part was {part.Name}, which this system has not; it has {string.Join(", ", sweep.System.Checks.Select(one => one.Part.Name))}.",
                nameof(part));
        }

        double Drawn(OperatingResult result, Func<Margin, IQuantity?> figure) =>
            check.Figure.Drawn(result.Margins.FirstOrDefault(margin => margin.Part == part) is { } margin ? figure(margin) : null, style);
        return new LinePlot(
            $"{check.Figure.Title} across boost at {style.Of(sweep.Speeds[speed])}",
            BoostAxis(style),
            new PlotAxis(check.Figure.Title, check.Figure.Unit(style)),
            [
                Line(part.Name, column, result => Drawn(result, margin => margin.Used), style),
                Line(check.Figure.Direction == LimitDirection.AtMost ? "at most" : "at least", column, result => Drawn(result, margin => margin.Allowed), style),
            ]).With(style);
    }

    /// <summary>One figure across boost for several systems.</summary>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="value">The value axis.</param>
    /// <param name="figure">The figure, in the unit of the value axis; none leaves a gap.</param>
    /// <param name="speed">Place in the sweeps' speeds, from 0.</param>
    /// <param name="cases">Sweeps of two boosts or more, each with its name in the key; 1 to 6.</param>
    /// <returns>The plot.</returns>
    /// <exception cref="ArgumentException">A text or the count of cases is refused, or a sweep has no such figure at all.</exception>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not in a sweep.</exception>
    public static LinePlot AcrossBoost(
        string title,
        PlotAxis value,
        Func<OperatingResult, double?> figure,
        int speed,
        params IReadOnlyList<(string Name, SweepResult Sweep)> cases)
    {
        ArgumentNullException.ThrowIfNull(figure);
        Named.Check(cases, PlotStyle.MaximumLines, nameof(cases));
        return new LinePlot(
            title,
            BoostAxis(Units.Current),
            value,
            [.. cases.Select(one => Line(one.Name, Column(one.Sweep, speed), result => figure(result) ?? double.NaN, Units.Current))]).With(Units.Current);
    }

    /// <summary>One figure across whatever was varied from point to point: a gain, a bore, a length of wire.</summary>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="varied">The axis of what was varied.</param>
    /// <param name="value">The value axis.</param>
    /// <param name="figure">The figure, in the unit of the value axis; none leaves a gap.</param>
    /// <param name="scans">Solved points, each with the value of what was varied, and a name in the key for each scan; 1 to 6.</param>
    /// <returns>The plot.</returns>
    /// <exception cref="ArgumentException">A text or the count of scans is refused, or a scan has no such figure at all.</exception>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">What was varied is not finite somewhere.</exception>
    public static LinePlot Across(
        string title,
        PlotAxis varied,
        PlotAxis value,
        Func<OperatingResult, double?> figure,
        params IReadOnlyList<(string Name, IReadOnlyList<(double Varied, OperatingResult Result)> Scan)> scans)
    {
        ArgumentNullException.ThrowIfNull(figure);
        Named.Check(scans, PlotStyle.MaximumLines, nameof(scans));
        return new LinePlot(
            title,
            varied,
            value,
            [.. scans.Select(scan => new PlotLine(
                scan.Name,
                [.. scan.Scan.Select(step => step.Varied)],
                [.. scan.Scan.Select(step => figure(step.Result) ?? double.NaN)]))]).With(Units.Current);
    }

    /// <summary>Pump curve against system curve: the pump runs where they meet.</summary>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="cases">Solved points, each with the name of its mark; 1 to 3. Curves that are the same are drawn once.</param>
    /// <returns>The plot, flow along, pressure rise up, with each operating point marked.</returns>
    /// <remarks>
    /// The system curve is the rise asked of the pumps with the rail at its set pressure: that pressure, or that of the
    /// return line where it is higher, and the losses up to the regulator. A point under it is a rail that sags.
    /// </remarks>
    /// <exception cref="ArgumentException">A text or the count of cases is refused.</exception>
    /// <exception cref="ArgumentNullException">A result is missing.</exception>
    public static LinePlot SystemCurve(string title, params IReadOnlyList<(string Name, OperatingResult Result)> cases) =>
        SystemCurve(title, Units.Current, cases);

    /// <summary>Pump curve against system curve: the pump runs where they meet.</summary>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="style">Units and culture.</param>
    /// <param name="cases">Solved points, each with the name of its mark; 1 to 3. Curves that are the same are drawn once.</param>
    /// <returns>The plot, flow along, pressure rise up, with each operating point marked.</returns>
    /// <remarks>
    /// The system curve is the rise asked of the pumps with the rail at its set pressure: that pressure, or that of the
    /// return line where it is higher, and the losses up to the regulator. A point under it is a rail that sags.
    /// </remarks>
    /// <exception cref="ArgumentException">A text or the count of cases is refused.</exception>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    public static LinePlot SystemCurve(string title, TextStyle style, params IReadOnlyList<(string Name, OperatingResult Result)> cases)
    {
        ArgumentNullException.ThrowIfNull(style);
        Named.Check(cases, MaximumSystems, nameof(cases));
        SystemPicture[] pictures = [.. cases.Select(one => new SystemPicture(one.Name, one.Result, style))];
        double furthest = pictures.Max(picture => picture.FreeFlow);

        // Pumps in series reach far over any point at which they run; without a cut the marks would crowd.
        double maximum = MaximumOverMarks * pictures.Max(picture => picture.Tallest);
        var plot = new LinePlot(
            title,
            new PlotAxis("Flow through the pumps", style.Units.PumpFlow.Unit),
            new PlotAxis("Pressure rise", style.Units.Pressure.Unit),
            [
                .. Distinct([.. pictures.Select(picture => picture.Pump(maximum))], ""),
                .. Distinct([.. pictures.Select(picture => picture.System(furthest, maximum))], "system curve: "),
            ]);
        return pictures
            .Where(picture => picture.Point is not null)
            .Aggregate(plot, (marked, picture) => marked.WithPoint(picture.Name, picture.Point!.Value.Flow, picture.Point.Value.Rise))
            .With(style);
    }

    private const double MaximumOverMarks = 1.75;

    // A pump curve and a system curve each, as many as can be told apart.
    private const int MaximumSystems = PlotStyle.MaximumLines / 2;

    // One curve under two names would hide one of them.
    private static IEnumerable<PlotLine> Distinct(IReadOnlyList<PlotLine> lines, string before)
    {
        List<PlotLine> kept = [];
        foreach (PlotLine line in lines)
        {
            int same = kept.FindIndex(other => other.X.SequenceEqual(line.X) && other.Y.SequenceEqual(line.Y));
            if (same < 0)
            {
                kept.Add(line);
            }
            else if (kept[same].Name != line.Name)
            {
                kept[same] = new PlotLine($"{kept[same].Name}; {line.Name}", line.X, line.Y);
            }
        }

        return kept.Select(line => new PlotLine(before + line.Name, line.X, line.Y));
    }

    private static PlotLine Line(string name, OperatingResult[] column, Func<OperatingResult, double> value, TextStyle style) =>
        new(name, [.. column.Select(result => style.Units.Boost.ValueOf(result.Point.Boost))], [.. column.Select(value)]);

    private static OperatingResult[] Column(SweepResult sweep, int speed) =>
        [.. Enumerable.Range(0, sweep.Boosts.Count).Select(boost => sweep.At(speed, boost))];
}
