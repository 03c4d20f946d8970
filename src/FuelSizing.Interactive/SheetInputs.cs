using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>What went into a sweep, and its busiest point, in a few lines.</summary>
internal static class SheetInputs
{
    // A way of more parts is told by their number.
    private const int MaximumParts = 4;

    private const string Fuel = "Fuel";

    public static IReadOnlyList<IReadOnlyList<string>> Of(SweepResult sweep)
    {
        Conditions conditions = sweep.Results[0].Point.Conditions;
        return
        [
            .. Of(sweep.System).SelectMany(line => line.Name == Fuel
                ? (IReadOnlyList<string>[])
                [
                    [line.Name, $"{line.Text}, at {Readable.Of(conditions.FuelTemperature)}"],
                    ["Surroundings", $"{Readable.Of(conditions.Atmosphere.Pressure)}, {Readable.Of(conditions.Atmosphere.Temperature)}; supply {Readable.Of(conditions.SupplyVoltage)}"],
                ]
                : [[line.Name, line.Text]]),
        ];
    }

    /// <summary>The parts of a system, in a line each.</summary>
    public static IReadOnlyList<(string Name, string Text)> Of(FuelSystem system)
    {
        FuelConsumption burning = system.Demand.Consumption;
        Injectors.Injector injector = system.Injectors.Injector;
        Engine engine = system.Demand.Engine;
        return
        [
            ("Engine", $"{engine.Name}: {Invariant($"{engine.Displacement.Liters:0.00} L, {engine.Cylinders} cylinders")}, {(engine.Cycle == EngineCycle.FourStroke ? "four-stroke" : "two-stroke")}, up to {Readable.Of(engine.SpeedLimit)}; {Charged(system.Demand.Induction)}"),
            (Fuel, $"{burning.Fuel.Name}, lambda {Invariant($"{burning.Lambda:0.00}")}, BSFC {Readable.Of(burning.BrakeSpecificFuelConsumption)}"),
            ("Injectors", $"{Invariant($"{system.Injectors.Count}")} of {injector.Name}: {Readable.InjectorFlow(injector.StaticFlow)} at {Readable.Of(injector.RatedDifferential)} on {injector.TestFluid.Name}, linear from {Readable.Of(injector.MinimumLinearPulse)}"),
            ("Regulator", system.Regulator.Description),
            ("Pump", $"{system.Pump.Name}{Wiring(system)}"),
            ("Lines", Paths(system.Plumbing)),
            ("Limits", Limits(system.Limits)),
        ];
    }

    public static IReadOnlyList<IReadOnlyList<string>> Busiest(SweepResult sweep)
    {
        OperatingResult result = sweep.Results.MaxBy(result => result.InjectedFlow)!;
        return
        [
            [$"{result.Point}", $"{Readable.Of(result.Demand.BrakePower)} at the crank (estimated), {Readable.Of(result.Demand.AirMassFlow)} of air, {Readable.Of(result.Demand.MassFlow)} or {Readable.PumpFlow(result.InjectedFlow)} of fuel"],
            ["Rail", $"set {Readable.Of(result.RailSetGauge)}, has {Readable.Of(result.RailGauge)}; {Readable.Of(result.InjectorDifferential)} across the injector, which passes {Readable.InjectorFlow(result.StaticFlow)}"],
            ["Pulse", $"{CircuitText.Known(result.Pulse, Readable.Of)} of {Readable.Of(result.AvailableTime)}, dead time {CircuitText.Known(result.DeadTime, Readable.Of)}: duty cycle {CircuitText.Known(result.DutyCycle, Readable.DutyCycle)}"],
            ["Pump", $"delivers {CircuitText.Known(result.PumpFlow, Readable.PumpFlow)}, returns {CircuitText.Known(result.ReturnedFlow, Readable.PumpFlow)}"],
        ];
    }

    private static string Limits(SizingLimits limits) =>
        $"duty cycle {Readable.DutyCycle(limits.DutyCycle)}, pump reserve {Readable.Of(limits.PumpReserve)}, feed drop {Readable.Of(limits.FeedDrop)}, {Readable.Of(limits.SuctionMargin)} over vapour pressure{(limits.RailCeiling is { } ceiling ? $", rail {Readable.Of(ceiling)}" : string.Empty)}";

    private static string Charged(Induction induction) => induction.Drive switch
    {
        CompressorDrive.None => "no compressor",
        CompressorDrive.Belt => $"belt-driven compressor {Readable.Of(induction.CompressorEfficiency)}, cooler {Readable.Of(induction.CoolerEffectiveness)}",
        _ => $"turbocharger {Readable.Of(induction.CompressorEfficiency)}, cooler {Readable.Of(induction.CoolerEffectiveness)}",
    };

    private static string Wiring(FuelSystem system)
    {
        string[] feeds = [.. system.Pump.Pumps.Select(pump => pump.Feed).OfType<Electrical.Feed>().Select(feed => $"{feed.Conductor}, {Readable.Of(feed.LoopResistance)}").Distinct()];
        return feeds.Length == 0 ? ", fed without loss" : $", fed through {string.Join("; ", feeds)}";
    }

    private static string Paths(Plumbing plumbing)
    {
        string Way(string name, IReadOnlyList<IFlowLoss> way) =>
            way.Count == 0 ? string.Empty
            : way.Count > MaximumParts ? Invariant($"{name}: {way.Count} parts")
            : $"{name}: {string.Join(", ", way.Select(part => part is Line line ? $"{line.Name} {Invariant($"{line.Bore.Millimeters:0.#} mm × ")}{Readable.Of(line.Length)}" : part.Name))}";
        string[] ways = [.. new[] { Way("to the pump", plumbing.Suction), Way("to the rail", plumbing.Supply), Way("back", plumbing.ReturnLine) }.Where(way => way.Length > 0)];
        return ways.Length == 0 ? "none described: pressure at the pump is pressure at the rail" : string.Join("; ", ways);
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
