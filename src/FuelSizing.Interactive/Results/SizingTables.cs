using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using FuelSizing.Workings;

namespace FuelSizing.Interactive;

/// <summary>Tables of the library's results.</summary>
public static class SizingTables
{
    // What a step is written with at every point, and what is read at a glance: the rest of what is given stands in the working.
    private static readonly string[] GivenInSteps = ["n", "k", "i", "N", "p_b", "p_0", "x_s", "N_2", "i_2"];

    /// <summary>
    /// One operating point, step by step: name, symbol, value, unit, and the equation as the working of the point writes it, or
    /// the table that the value was read from.
    /// </summary>
    /// <param name="result">The solved point.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a step; the working of the point has more lines, and the numbers that were put in.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static Table Steps(OperatingResult result, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        style ??= Units.Current;
        Working working = result.WorkingIn(style);
        return new Facts(
            $"Step by step at {PartText.Say(result.Point, style)}",
            [
                .. working.Given.Where(given => GivenInSteps.Contains(given.Symbol)).Select(WorkingShown.Line),
                .. working.Steps.Where(step => !step.IsIntermediate).Select(WorkingShown.Line),
            ],
            "Each formula is written by the equation that calculated the value; the working shows the numbers put in.").Table();
    }

    /// <summary>The working of one operating point: each equation, the numbers put in, what comes out, and the source.</summary>
    /// <param name="result">The solved point.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The lines that matter most, and all of them folded away.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static WorkingBlock Working(OperatingResult result, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        return Working(result.WorkingIn(style ?? Units.Current), style);
    }

    /// <summary>A working: each equation, the numbers put in, what comes out, and the source.</summary>
    /// <param name="working">The working.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The lines that matter most, and all of them folded away.</returns>
    /// <exception cref="ArgumentNullException">There is no working.</exception>
    public static WorkingBlock Working(Working working, TextStyle? style = null) => new(working, style);

    /// <summary>Fuel demand both ways over the boosts of a sweep, at the speed of peak fuel demand.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a boost.</returns>
    /// <exception cref="ArgumentNullException">There is no sweep.</exception>
    public static Table Demand(SweepResult sweep, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        style ??= Units.Current;
        return new Table(
            "Fuel demand from air and from power, at the speed of peak demand",
            [
                TableColumn.Number("Boost"),
                TableColumn.Number("Speed"),
                TableColumn.Number("Power, crank"),
                TableColumn.Number("Charge"),
                TableColumn.Number("Fuel from air"),
                TableColumn.Number("Fuel from power"),
                TableColumn.Number("Difference"),
                TableColumn.Number("Sized for"),
            ],
            [.. Busiest(sweep).Select(result => (IReadOnlyList<string>)
            [
                style.Boost(result.Point.Boost),
                style.Of(result.Point.Speed),
                style.Of(result.Demand.BrakePower),
                style.Of(result.Demand.ChargeTemperature),
                style.Of(result.Demand.FromAir),
                style.Of(result.Demand.FromPower),
                style.Change(result.Demand.Difference),
                style.PumpFlow(result.InjectedFlow),
            ])],
            "Power is estimated from the measured pull by charge density; spark retard and exhaust back-pressure are not in it.");
    }

    /// <summary>How each part stands over a sweep, the limiting component first.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a part.</returns>
    /// <exception cref="ArgumentNullException">There is no sweep.</exception>
    public static Table Standings(SweepResult sweep, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        return Standings("How each part stands", sweep.Standings, sweep.System, style ?? Units.Current);
    }

    /// <summary>How each part stands along a boost line, the first limit reached as speed rises before the others.</summary>
    /// <param name="pull">The pull.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a part.</returns>
    /// <exception cref="ArgumentNullException">There is no pull.</exception>
    public static Table Standings(LineSweepResult pull, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(pull);
        return Standings("How each part stands along the line", pull.Standings, pull.System, style ?? Units.Current);
    }

    /// <summary>The circuit at one point, from the tank round to the tank: every flow, pressure, loss, voltage and current.</summary>
    /// <param name="result">The solved point.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a place or part, in the order of flow.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static Table Circuit(OperatingResult result, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        style ??= Units.Current;
        return new CircuitWalk(result, style).Table();
    }

    /// <summary>Several circuits compared: rail, injectors, pump, returned flow, heat, and the limiting component.</summary>
    /// <param name="title">What is compared; not empty.</param>
    /// <param name="cases">Solved points, each with the name of its column; 1 to 6.</param>
    /// <returns>The table, a line a figure and a column a case.</returns>
    /// <exception cref="ArgumentException">A text is empty, too long, or cannot be written as XML; or there are too few or too many cases.</exception>
    /// <exception cref="ArgumentNullException">A result is missing.</exception>
    public static Table Circuits(string title, params IReadOnlyList<(string Name, OperatingResult Result)> cases) =>
        Circuits(title, Units.Current, cases);

    /// <summary>Several circuits compared: rail, injectors, pump, returned flow, heat, and the limiting component.</summary>
    /// <param name="title">What is compared; not empty.</param>
    /// <param name="style">Units and culture.</param>
    /// <param name="cases">Solved points, each with the name of its column; 1 to 6.</param>
    /// <returns>The table, a line a figure and a column a case.</returns>
    /// <exception cref="ArgumentException">A text is empty, too long, or cannot be written as XML; or there are too few or too many cases.</exception>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    public static Table Circuits(string title, TextStyle style, params IReadOnlyList<(string Name, OperatingResult Result)> cases)
    {
        ArgumentNullException.ThrowIfNull(style);
        Named.Check(cases, Named.MaximumColumns, nameof(cases));
        (OperatingResult Result, CircuitResult Circuit)[] solved = [.. cases.Select(one => (one.Result, one.Result.Circuit))];
        IReadOnlyList<string> Row(string figure, Func<OperatingResult, CircuitResult, string> text) =>
            [figure, .. solved.Select(one => text(one.Result, one.Circuit))];
        return new Table(
            title,
            [TableColumn.Text("Figure"), .. cases.Select(one => TableColumn.Text(one.Name))],
            [
                Row("Rail, set", (result, _) => style.Of(result.RailSetGauge)),
                Row("Rail, gauge", (result, _) => style.Of(result.RailGauge)),
                Row("Governed by", (result, _) => CircuitText.Governs(result)),
                Row("Across the injector", (result, _) => style.Of(result.InjectorDifferential)),
                Row("Duty cycle", (result, _) => CircuitText.Known(result.DutyCycle, style.DutyCycle)),
                .. solved.Any(one => one.Result.SecondaryInjection is not null)
                    ?
                    [
                        Row("Carried by the secondary set", (result, _) => SecondaryText.Share(result, style)),
                        Row("Duty cycle of the secondary set", (result, _) => SecondaryText.Duty(result, style)),
                    ]
                    : Array.Empty<IReadOnlyList<string>>(),
                Row("Injected", (result, _) => style.PumpFlow(result.InjectedFlow)),
                Row("Pump delivers", (result, _) => CircuitText.Known(result.PumpFlow, style.PumpFlow)),
                Row("Returned to the tank", (result, _) => CircuitText.Known(result.ReturnedFlow, style.PumpFlow)),
                Row("Rise over the pumps", (_, circuit) => CircuitText.Known(circuit.OutletGauge - circuit.InletGauge, style.Of)),
                Row("At each motor", (_, circuit) => circuit.Pumps.Count == 0 ? CircuitText.Unknown : string.Join("; ", circuit.Pumps.Select(pump => MotorFigures(pump, style)).Distinct())),
                Row("Heat into the tank", (_, circuit) => CircuitText.Known(circuit.HeatToTank, style.Heat)),
                Row("Tightest margin", (result, _) => PartText.Say(result.Limiting.Margin, style)),
            ]);
    }

    /// <summary>The wiring of each fed pump: wire, resistance, current, and where its voltage and heat go.</summary>
    /// <param name="title">What is compared; not empty.</param>
    /// <param name="cases">Solved points, each with the name of its column; 1 to 6.</param>
    /// <returns>The table, a line a figure and a column a pump that has a feed.</returns>
    /// <exception cref="ArgumentException">No pump has a feed, or a text or the count of cases is refused.</exception>
    /// <exception cref="ArgumentNullException">A result is missing.</exception>
    public static Table Wiring(string title, params IReadOnlyList<(string Name, OperatingResult Result)> cases) =>
        Wiring(title, Units.Current, cases);

    /// <summary>The wiring of each fed pump: wire, resistance, current, and where its voltage and heat go.</summary>
    /// <param name="title">What is compared; not empty.</param>
    /// <param name="style">Units and culture.</param>
    /// <param name="cases">Solved points, each with the name of its column; 1 to 6.</param>
    /// <returns>The table, a line a figure and a column a pump that has a feed.</returns>
    /// <exception cref="ArgumentException">No pump has a feed, or a text or the count of cases is refused.</exception>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    public static Table Wiring(string title, TextStyle style, params IReadOnlyList<(string Name, OperatingResult Result)> cases)
    {
        ArgumentNullException.ThrowIfNull(style);
        Named.Check(cases, Named.MaximumColumns, nameof(cases));
        WiredPump[] wired = [.. cases.SelectMany(one => WiredPump.Of(one.Name, one.Result))];
        if (wired.Length == 0)
        {
            throw new ArgumentException(
                "cases holds no pump with a feed, so there is no wiring to show. Give a pump its feed with Pump.WithFeed.", nameof(cases));
        }

        IReadOnlyList<string> Row(string figure, Func<WiredPump, string> text) => [figure, .. wired.Select(text)];
        return new Table(
            title,
            [TableColumn.Text("Figure"), .. wired.Select(pump => TableColumn.Text(pump.Column))],
            [
                Row("Wire", pump => $"{pump.Feed.Conductor} ({style.Of(pump.Feed.Conductor.Area)})"),
                Row("Length, out and back", pump => style.Of(pump.Feed.OutwardLength + pump.Feed.ReturnLength)),
                Row("Resistance of the loop", pump => style.Of(pump.Feed.LoopResistance)),
                .. wired.Any(pump => pump.Feed.Shared is not null) ? [Row("Lost in the shared part", pump => style.VoltageDrop(pump.Result.SharedDrop))] : Array.Empty<IReadOnlyList<string>>(),
                Row("Voltage at the source", pump => style.Of(pump.Source)),
                Row("Current", pump => CircuitText.Known(pump.Result.FeedCurrent, style.Of)),
                Row("Lost in the wire", pump => pump.Loss(loss => style.VoltageDrop(loss.DropInWire))),
                Row("Lost in the contacts", pump => pump.Loss(loss => style.VoltageDrop(loss.DropInContacts))),
                Row("Voltage at the motor", pump => style.Of(pump.Result.Voltage)),
                Row("Lost, share of the source", pump => pump.Loss(loss => style.DutyCycle(loss.ShareOfSupply))),
                Row("Heat in the wire", pump => pump.Loss(loss => style.WireHeat(loss.HeatInWire))),
                Row("Heat in each metre", pump => pump.Loss(loss => style.Of(loss.HeatOfWirePerLength))),
            ]);
    }

    private static Table Standings(string title, IReadOnlyList<PartStanding> standings, FuelSystem system, TextStyle style) => new(
        title,
        [
            TableColumn.Text("Part"),
            TableColumn.Text("Finding"),
            TableColumn.Number("Margin"),
            TableColumn.Text("At its tightest"),
            TableColumn.Text("Limit reached at"),
        ],
        [.. standings.Select(standing => (IReadOnlyList<string>)
        [
            standing.Part.Name,
            Word(standing.Outcome),
            standing.Tightest.Margin.Reserve is { } reserve ? style.Change(reserve) : "–",
            Tightest(standing, style),
            LimitReachedAt(standing, style),
        ]),
        .. system.NotJudged.Select(open => (IReadOnlyList<string>)
        [
            open.Part.Name,
            open.Waiver is null ? "not judged" : "waived",
            "–",
            open.Waiver ?? open.Reason.In(style),
            "–",
        ])],
        "Margin: the share by which the demand on the component could still grow. Negative: the shortfall.");

    /// <summary>Where a limit is reached; where that cannot be said, no place is no assurance that there is none.</summary>
    internal static string LimitReachedAt(PartStanding standing, TextStyle style) =>
        standing.LimitReachedAt is { } place ? PartText.Say(place, style)
        : standing.Outcome == Outcome.CannotSay ? "not known"
        : "not in this range";

    /// <summary>The finding where it is tightest, and the place.</summary>
    internal static string Tightest(PartStanding standing, TextStyle style) => Finding(standing.Tightest, style);

    /// <summary>A finding without the part's name, and the place.</summary>
    internal static string Finding(Limit limit, TextStyle style) =>
        $"{Explanation(limit.Margin, style)} ({PartText.Say(limit.Point, style)})";

    /// <summary>A finding without the part's name.</summary>
    internal static string Explanation(Margin margin, TextStyle style) => margin.Finding.In(style);

    /// <summary>An outcome as tables word it.</summary>
    internal static string Word(Outcome outcome) => outcome switch
    {
        Outcome.Holds => "holds",
        Outcome.HoldsAsFarAsJudged => "holds as far as judged",
        Outcome.Fails => "FAILS",
        _ => CircuitText.Unknown,
    };

    /// <summary>At each boost the result of the speed of peak fuel demand.</summary>
    internal static IEnumerable<OperatingResult> Busiest(SweepResult sweep) =>
        sweep.Results.Chunk(sweep.Speeds.Count).Select(row => row.MaxBy(result => result.InjectedFlow)!);

    private static string MotorFigures(PumpResult pump, TextStyle style) =>
        pump.Current is { } current
            ? $"{style.Of(pump.Voltage)}, {style.Of(current)}"
            : style.Of(pump.Voltage);
}
