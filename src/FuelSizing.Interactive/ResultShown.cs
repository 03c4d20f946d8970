using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>How what a system does, and how its parts stand, is shown.</summary>
internal static class ResultShown
{
    public static void Register()
    {
        Shown.As<OperatingResult>(SizingTables.Steps);
        Shown.Listed<OperatingResult>(result => new(
            $"{result.Point}",
            [
                new("Injected", "Q_f", Readable.PumpFlow(result.InjectedFlow)),
                new("Rail pressure", "p_r", Readable.Of(result.RailGauge)),
                new("Across the injector", "Δp", Readable.Of(result.InjectorDifferential)),
                new("Duty cycle", "D", CircuitText.Known(result.DutyCycle, Readable.DutyCycle)),
                Fact.Words("Tightest margin", $"{result.Limiting.Margin}"),
            ]));
        Shown.As<SweepResult>(SizingTables.Standings);
        Shown.As<Verdict>(SizingCallouts.Verdict);
        Shown.By<CircuitResult>(circuit => new("The circuit", Of(circuit)));
        Shown.By<PumpResult>(result => new(
            $"{result.Pump.Name} where it runs",
            [
                new("Flow", "Q_p", Readable.PumpFlow(result.Flow)),
                new("Pressure rise", "Δp_p", Readable.Of(result.PressureRise)),
                new("At its motor", "V_m", Readable.Of(result.Voltage), result.IsEstimate ? "an estimate: scaled curve" : ""),
                new("Lost in its feed", "ΔV", Readable.VoltageDrop(result.FeedDrop)),
                new("Current", "I", CircuitText.Known(result.Current, Readable.Of)),
            ]));
        Shown.By<PathResult>(way => new(
            way.Name,
            [new("Flow", "Q", Readable.PumpFlow(way.Flow)), new("Pressure lost", "Δp", CircuitText.Loss(way.PressureLoss), "height included")]));
        Shown.By<Margin>(margin => new($"How the part stands: {margin.Part.Name}", Of(margin)));
        Shown.By<Limit>(limit => new(
            $"How the part stands: {limit.Part.Name}",
            [.. Of(limit.Margin), Fact.Words("At", $"{limit.Point}")]));
        Shown.By<PartStanding>(standing => new(
            $"How the part stands: {standing.Part.Name}",
            [
                .. Of(standing.Tightest.Margin),
                Fact.Words("At its tightest", $"{standing.Tightest.Point}"),
                Fact.Words("Runs out at", standing.LimitReachedAt is { } place ? $"{place}" : "not in this range"),
            ]));
        Shown.By<Remedy>(remedy => new(
            $"A remedy for: {remedy.Part.Name}",
            [new("Needed", "", remedy.Needed is { } needed ? Of(remedy.Part, needed) : "", remedy.ToString())]));
    }

    private static Fact[] Of(CircuitResult circuit) =>
    [
        new("Injected", "Q_f", Readable.PumpFlow(circuit.InjectedFlow)),
        new("Through the pumps", "Q_p", CircuitText.Known(circuit.PumpFlow, Readable.PumpFlow)),
        new("Back to the tank", "Q_b", CircuitText.Known(circuit.ReturnedFlow, Readable.PumpFlow)),
        new("At the pump's inlet", "p_1", CircuitText.Known(circuit.InletGauge, Readable.Of), "gauge"),
        new("At the pump's outlet", "p_2", CircuitText.Known(circuit.OutletGauge, Readable.Of), "gauge"),
        new("In the rail", "p_r", Readable.Of(circuit.RailGauge), "gauge"),
        new("Return line inlet", "p_3", CircuitText.Known(circuit.ReturnGauge, Readable.Of), "gauge"),
        .. circuit.Pumps.Select(pump => new Fact(pump.Pump.Name, "Δp_p", Readable.Of(pump.PressureRise), $"{Readable.PumpFlow(pump.Flow)}, {CircuitText.Electrical(pump)}")),
        .. circuit.Paths.Select(way => new Fact(way.Name, "Δp", CircuitText.Loss(way.PressureLoss), $"lost at {Readable.PumpFlow(way.Flow)}")),
        new("Heat into the tank", "P_h", CircuitText.Known(circuit.HeatToTank, CircuitText.Heat)),
    ];

    private static Fact[] Of(Margin margin) =>
    [
        Fact.Words("Finding", SizingTables.Word(margin.Outcome)),
        new("Asked of it", "", Of(margin.Part, margin.Used), margin.Explanation),
        new("Limit", "", Of(margin.Part, margin.Allowed)),
        new("Margin", "", margin.Reserve is { } reserve ? OutputFigures.ReserveOf(reserve) : CircuitText.Unknown, "share by which the demand on it could grow"),
    ];

    // A flow that injectors need is told as their sheets tell it, a pump's as pumps' do; a voltage lost is a small one.
    private static string Of(Part part, UnitsNet.IQuantity? quantity) => quantity switch
    {
        UnitsNet.VolumeFlow flow when part == Part.Injectors || part == Part.MinimumPulse => Readable.InjectorFlow(flow),
        UnitsNet.ElectricPotential drop when part == Part.Feed => Readable.VoltageDrop(drop),
        _ => PartText.Of(quantity),
    };
}
