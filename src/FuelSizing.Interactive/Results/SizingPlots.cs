using FuelSizing.Checks;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Plots of the library's results.</summary>
public static class SizingPlots
{
    private static PlotAxis BoostAxis(DisplayUnit<Pressure> unit) => new("Boost", unit.Unit);

    /// <summary>Boost in the unit of what it is drawn against where that is a pressure too: one plot has one unit of pressure.</summary>
    private static DisplayUnit<Pressure> BoostUnit(string against, TextStyle style) =>
        ((DisplayUnit<Pressure>[])[style.Units.Pressure, style.Units.Boost, FigureUnits.Metric.Pressure, FigureUnits.Metric.Boost, FigureUnits.UsCustomary.Pressure])
        .FirstOrDefault(unit => unit.Unit == against) ?? style.Units.Boost;

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
        DisplayUnit<Pressure> boost = style.Units.Pressure;
        return new LinePlot(
            $"Rail pressure across boost at {style.Of(sweep.Speeds[speed])}",
            BoostAxis(boost),
            new PlotAxis("Pressure", style.Units.Pressure.Unit),
            [
                Line("rail, gauge", column, result => style.Units.Pressure.ValueOf(result.RailGauge), boost),
                Line("across the injector", column, result => style.Units.Pressure.ValueOf(result.InjectorDifferential), boost),
                Line("boost", column, result => style.Units.Pressure.ValueOf(result.Point.Boost), boost),
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
            BoostAxis(style.Units.Boost),
            new PlotAxis("Duty cycle", "%"),
            [.. sweep.Speeds.Select(speed => speed.RevolutionsPerMinute)],
            [.. sweep.Boosts.Select(style.Units.Boost.ValueOf)],
            duty)
            .WithLimit($"limit {style.Of(limits.DutyCycle)}{RuleMark.Of(limits, RuleOfThumb.DutyCycle)}", limits.DutyCycle.Percent)
            .With(style);
        return limits.MarkOf(RuleOfThumb.DutyCycle) is null ? map : map.WithNote(RuleMark.Note);
    }

    /// <summary>The pump's curve, and what is asked of it at each boost, at the speed of peak fuel demand: the flow injected, and the flow by which the pump is judged.</summary>
    /// <param name="sweep">The sweep, of two boosts or more.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot: the system is adequate where what is required lies below the curve.</returns>
    /// <remarks>
    /// Judged is the flow required: injected, with the reserve and the regulator's minimum return flow. Each stands at the rise that it asks of the pumps:
    /// the rail's set pressure and the losses up to it (<see cref="SystemSizing.RequiredPump"/>).
    /// </remarks>
    /// <exception cref="ArgumentNullException">There is no sweep.</exception>
    public static LinePlot PumpAgainstDemand(SweepResult sweep, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        style ??= Units.Current;
        FuelSystem system = sweep.System;
        var supply = sweep.Results[0].Point.Conditions.SupplyVoltage;
        OperatingResult[] maximum = [.. SizingTables.Busiest(sweep)];
        IReadOnlyList<PumpDutyPoint> required = SystemSizing.RequiredPump(system, [.. maximum.Select(result => result.Point)]).Points;
        double RiseOf(OperatingResult result) => result.Circuit.MaximumKnownFlow >= result.InjectedFlow
            ? style.Units.Pressure.ValueOf(result.Circuit.PressureAsked(result.InjectedFlow))
            : double.NaN;
        OperatingResult[] known = [.. maximum.Where(result => double.IsFinite(RiseOf(result)))];
        PumpDutyPoint[] placed = [.. required.Where(point => double.IsFinite(style.Units.Pressure.ValueOf(point.PressureRise)))];
        string mark = RuleMark.Of(system.Limits, RuleOfThumb.PumpReserve);
        string reserve = system.Limits.PumpReserve > Ratio.Zero ? $" with {style.Of(system.Limits.PumpReserve)} in reserve{mark}" : "";
        string returned = system.Regulator.MinimumReturnFlow > VolumeFlow.Zero ? $", {style.PumpFlow(system.Regulator.MinimumReturnFlow)} returned" : "";
        LinePlot plot = new LinePlot(
            "Pump against demand",
            new PlotAxis("Pressure rise", style.Units.Pressure.Unit),
            new PlotAxis("Flow", style.Units.PumpFlow.Unit),
            [
                .. PumpCurves(sweep, supply, style),
                .. placed.Length == 0 ? [] : (PlotLine[])
                [
                    new PlotLine(
                        $"required, by which the pump is judged: injected{reserve}{returned}",
                        [.. placed.Select(point => style.Units.Pressure.ValueOf(point.PressureRise))],
                        [.. placed.Select(point => style.Units.PumpFlow.ValueOf(point.Flow))]),
                ],
                .. known.Length == 0 ? [] : (PlotLine[])
                [
                    new PlotLine("injected", [.. known.Select(RiseOf)], [.. known.Select(result => style.Units.PumpFlow.ValueOf(result.InjectedFlow))]),
                ],
            ])
            .WithNote(
                $"Required and injected at the speed of peak fuel demand, from {style.Of(sweep.Boosts[0])} to {style.Of(sweep.Boosts[^1])} of boost, each at the rise that it asks of the pumps."
                + (mark.Length > 0 ? $" {RuleMark.Note}" : ""))
            .With(style);
        return plot;
    }

    /// <summary>The pumps' curve; of pumps that are switched by boost one for each state that the sweep's boosts find them in.</summary>
    private static IEnumerable<PlotLine> PumpCurves(SweepResult sweep, ElectricPotential supply, TextStyle style)
    {
        const int AtMost = PlotStyle.MaximumLines - 2;
        Temperature temperature = sweep.Results[0].Point.Conditions.FuelTemperature;
        var states = sweep.Boosts
            .Select(boost => (Boost: boost, Curve: sweep.System.Pump.CurveAtBoost(sweep.System.Demand.Consumption.Fuel, temperature, supply, boost)))
            .Aggregate(new List<(Pressure Boost, IReadOnlyList<(Pressure PressureRise, VolumeFlow Flow)> Curve)>(), (kept, one) =>
            {
                if (kept.Count == 0 || !kept[^1].Curve.SequenceEqual(one.Curve))
                {
                    kept.Add(one);
                }

                return kept;
            });
        return states.TakeLast(AtMost).Select(state => new PlotLine(
            $"{sweep.System.Pump.Name} on {style.Of(supply)}{(states.Count > 1 ? $", at {style.Of(state.Boost)} of boost" : "")}",
            [.. state.Curve.Select(point => style.Units.Pressure.ValueOf(point.PressureRise))],
            [.. state.Curve.Select(point => style.Units.PumpFlow.ValueOf(point.Flow))]));
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
        DisplayUnit<Pressure> boost = BoostUnit(check.Figure.Unit(style), style);
        return new LinePlot(
            $"{check.Figure.Title} across boost at {style.Of(sweep.Speeds[speed])}",
            BoostAxis(boost),
            new PlotAxis(check.Figure.Title, check.Figure.Unit(style)),
            [
                Line(part.Name, column, result => Drawn(result, margin => margin.Used), boost),
                Line(check.Figure.Direction == LimitDirection.AtMost ? "at most" : "at least", column, result => Drawn(result, margin => margin.Allowed), boost),
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
        ArgumentNullException.ThrowIfNull(value);
        DisplayUnit<Pressure> boost = BoostUnit(value.Unit, Units.Current);
        return new LinePlot(
            title,
            BoostAxis(boost),
            value,
            [.. cases.Select(one => Line(one.Name, Column(one.Sweep, speed), result => figure(result) ?? double.NaN, boost))]).With(Units.Current);
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
    /// return line where it is higher, and the losses up to the regulator. A point under it is a rail that sags. Where a point lies off a curve drawn, a
    /// note below the plot says by how much and why.
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
    /// return line where it is higher, and the losses up to the regulator. A point under it is a rail that sags. Where a point lies off a curve drawn, a
    /// note below the plot says by how much and why.
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
        LinePlot marked = pictures
            .Where(picture => picture.Point is not null)
            .Aggregate(plot, (marked, picture) => marked.WithPoint(picture.Name, picture.Point!.Value.Flow, picture.Point.Value.Rise))
            .With(style);
        string apart = string.Join(" ", pictures.SelectMany(picture => picture.Apart(maximum)));
        return apart.Length == 0 ? marked : marked.WithNote(apart);
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

    private static PlotLine Line(string name, OperatingResult[] column, Func<OperatingResult, double> value, DisplayUnit<Pressure> boost) =>
        new(name, [.. column.Select(result => boost.ValueOf(result.Point.Boost))], [.. column.Select(value)]);

    private static OperatingResult[] Column(SweepResult sweep, int speed) =>
        [.. Enumerable.Range(0, sweep.Boosts.Count).Select(boost => sweep.At(speed, boost))];
}
