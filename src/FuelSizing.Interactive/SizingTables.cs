using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>Tables of the library's results.</summary>
public static class SizingTables
{
    /// <summary>One operating point, step by step: name, symbol, value and how it comes about.</summary>
    /// <param name="result">The solved point.</param>
    /// <returns>The table, a line a step.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static Table Steps(OperatingResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var demand = result.Demand;
        return new Table(
            $"Step by step at {result.Point}",
            [TableColumn.Text("Quantity"), TableColumn.Text("Symbol"), TableColumn.Number("Value"), TableColumn.Text("From")],
            [
                ["Manifold pressure, absolute", "p", Readable.Of(demand.ManifoldAbsolute), "outside air + boost"],
                ["Compressor outlet", "T₂", Readable.Of(demand.CompressorOutletTemperature), "pressure ratio and efficiency"],
                ["Charge in the manifold", "T₃", Readable.Of(demand.ChargeTemperature), "cooler effectiveness"],
                ["Air", "ṁₐ", Readable.Of(demand.AirMassFlow), "VE · p/(R T₃) · V · n/2"],
                ["Power at the crank", "P", Readable.Of(demand.BrakePower), "measured pull × charge density"],
                ["Fuel from air", "ṁ₁", Readable.Of(demand.FromAir), "ṁₐ/(λ · AFR)"],
                ["Fuel from power", "ṁ₂", Readable.Of(demand.FromPower), "P · BSFC"],
                ["Difference", "", Readable.Change(demand.Difference), "ṁ₂ against ṁ₁"],
                ["Injected", "Q", Readable.PumpFlow(result.InjectedFlow), $"at {Readable.Of(result.FuelDensity)}"],
                ["Rail pressure, gauge", "p_r", Readable.Of(result.RailGauge), result.System.Regulator.Description],
                ["Across the injector", "Δp", Readable.Of(result.InjectorDifferential), "rail + outside air − manifold"],
                ["Static flow of one injector", "Q_s", Readable.InjectorFlow(result.StaticFlow), "rated flow · √(Δp/Δp_r) · √(ρ_r/ρ)"],
                ["Time for a pulse", "T", Readable.Of(result.AvailableTime), "one working cycle"],
                ["Dead time", "t_d", Known(result.DeadTime, Readable.Of), "table at this voltage and pressure"],
                ["Pulse", "t", Known(result.Pulse, Readable.Of), "t_d + fuel per pulse ÷ Q_s"],
                ["Duty cycle", "D", Known(result.DutyCycle, Readable.DutyCycle), "t ÷ T"],
                ["Pump delivers", "Q_p", Known(result.PumpFlow, Readable.PumpFlow), "its curve at the rail pressure"],
                ["Returned", "", Known(result.ReturnedFlow, Readable.PumpFlow), "delivered − injected"],
            ]);
    }

    /// <summary>Fuel demand both ways over the boosts of a sweep, at the speed that asks most.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <returns>The table, a line a boost.</returns>
    /// <exception cref="ArgumentNullException">There is no sweep.</exception>
    public static Table Demand(SweepResult sweep)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        return new Table(
            "Fuel demand both ways, at the speed that asks most",
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
            [.. Rows(sweep).Select(row => row.MaxBy(result => result.InjectedFlow)!).Select(result => (IReadOnlyList<string>)
            [
                Readable.Boost(result.Point.Boost),
                Readable.Of(result.Point.Speed),
                Readable.Of(result.Demand.BrakePower),
                Readable.Of(result.Demand.ChargeTemperature),
                Readable.Of(result.Demand.FromAir),
                Readable.Of(result.Demand.FromPower),
                Readable.Change(result.Demand.Difference),
                Readable.PumpFlow(result.InjectedFlow),
            ])],
            "Power is estimated from the measured pull by charge density; spark retard and exhaust back-pressure are not in it.");
    }

    /// <summary>How each part stands over a sweep, the one that runs out first before the others.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <returns>The table, a line a part.</returns>
    /// <exception cref="ArgumentNullException">There is no sweep.</exception>
    public static Table Standings(SweepResult sweep)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        return new Table(
            "How each part stands",
            [
                TableColumn.Text("Part"),
                TableColumn.Text("Finding"),
                TableColumn.Number("In hand"),
                TableColumn.Text("At its tightest"),
                TableColumn.Text("Runs out at"),
            ],
            [.. sweep.Standings.Select(standing => (IReadOnlyList<string>)
            [
                PartNames.Of(standing.Part),
                Word(standing.Outcome),
                standing.Tightest.Margin.Reserve is { } reserve ? Readable.Change(reserve) : "–",
                $"{standing.Tightest.Margin.Explanation} ({standing.Tightest.Point})",
                standing.RunsOutAt is { } place ? place.ToString() : "not in this range",
            ])],
            "In hand: by what share the demand on the part could still grow. Negative: by what share it falls short.");
    }

    /// <summary>An outcome as tables word it.</summary>
    internal static string Word(Outcome outcome) => outcome switch
    {
        Outcome.Holds => "holds",
        Outcome.Fails => "FAILS",
        _ => "cannot say",
    };

    /// <summary>The results boost by boost.</summary>
    internal static IEnumerable<OperatingResult[]> Rows(SweepResult sweep) => sweep.Results.Chunk(sweep.Speeds.Count);

    private static string Known<T>(T? value, Func<T, string> text)
        where T : struct => value is { } known ? text(known) : "cannot say";
}
