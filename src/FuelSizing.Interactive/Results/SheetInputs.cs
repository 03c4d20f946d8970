using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Injectors;
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

    public static IReadOnlyList<IReadOnlyList<string>> Of(SweepResult sweep, TextStyle style)
    {
        Conditions conditions = sweep.Results[0].Point.Conditions;
        return
        [
            .. Of(sweep.System, style).SelectMany(line => line.Name == Fuel
                ? (IReadOnlyList<string>[])
                [
                    [line.Name, $"{line.Text}, at {style.Of(conditions.FuelTemperature)}"],
                    ["Surroundings", $"{style.Of(conditions.Atmosphere.Pressure)}, {style.Of(conditions.Atmosphere.Temperature)}; supply {style.Of(conditions.SupplyVoltage)}"],
                ]
                : [[line.Name, line.Text]]),
        ];
    }

    /// <summary>The parts of a system, in a line each.</summary>
    public static IReadOnlyList<(string Name, string Text)> Of(FuelSystem system, TextStyle style)
    {
        FuelConsumption burning = system.Demand.Consumption;
        Engine engine = system.Demand.Engine;
        return
        [
            ("Engine", $"{engine.Name}: {style.Of(engine.Displacement)}, {style.Count(engine.Cylinders)} cylinders, {(engine.Cycle == EngineCycle.FourStroke ? "four-stroke" : "two-stroke")}, up to {style.Of(engine.SpeedLimit)}; {Charged(system.Demand.Induction, style)}{(system.Demand.AlongSpeed is { } table ? $"; by speed: {EngineShown.Columns(table, style)}" : string.Empty)}"),
            (Fuel, $"{burning.Fuel.Name}, lambda {(system.Demand.AlongSpeed?.Rows[0].Lambda is null ? style.Number(burning.Lambda) : "by speed")}, BSFC {style.Of(burning.BrakeSpecificFuelConsumption)}{(burning.IsConverted ? $" by heating value from {style.Of(burning.StatedConsumption)} on {burning.StatedFuel.Name}" : string.Empty)}"),
            ("Injectors", Set(system.Injectors, style)),
            .. system.StagedInjectors is { } staged
                ? [("Secondary injectors", $"{Set(staged.Secondary, style)}; {PartText.Say(staged.HandOver, style)}")]
                : Array.Empty<(string, string)>(),
            ("Regulator", PartText.Say(system.Regulator, style)),
            ("Pump", $"{system.Pump.Name}{Wiring(system, style)}"),
            ("Lines", Paths(system.Plumbing, style)),
            .. system.SecondStream is { } stream ? [("Second stream", SecondStreamShown.Text(stream, style))] : Array.Empty<(string, string)>(),
            .. Branches(system, style),
            .. system.SurgeTank is { } tank ? [("Surge tank", SurgeTankShown.Text(tank, style))] : Array.Empty<(string, string)>(),
            ("Limits", Limits(system.Limits, style)),
        ];
    }

    public static IReadOnlyList<IReadOnlyList<string>> Busiest(SweepResult sweep, TextStyle style)
    {
        OperatingResult result = sweep.Results.MaxBy(result => result.InjectedFlow)!;
        return
        [
            [PartText.Say(result.Point, style), $"{style.Of(result.Demand.BrakePower)} at the crank (estimated), {style.Of(result.Demand.AirMassFlow)} of air, {style.Of(result.Demand.MassFlow)} or {style.PumpFlow(result.InjectedFlow)} of fuel"],
            ["Rail", $"set {style.Of(result.RailSetGauge)}, has {style.Of(result.RailGauge)}; {style.Of(result.InjectorDifferential)} across the injector, which passes {CircuitText.Known(result.StaticFlow, style.InjectorFlow)}"],
            ["Pulse", $"{CircuitText.Known(result.Pulse, style.Of)} of {style.Of(result.AvailableTime)}, dead time {CircuitText.Known(result.DeadTime, style.Of)}: duty cycle {CircuitText.Known(result.DutyCycle, style.DutyCycle)}"],
            .. result.SecondaryInjection is { } secondary
                ? (IReadOnlyList<string>[])[["Secondary set", PartText.Say(secondary, style)]]
                : [],
            ["Pump", $"delivers {CircuitText.Known(result.PumpFlow, style.PumpFlow)}, returns {CircuitText.Known(result.ReturnedFlow, style.PumpFlow)}"],
        ];
    }

    private static string Set(InjectorSet set, TextStyle style) =>
        $"{style.Count(set.Count)} × {set.Injector.Name}: {style.InjectorFlow(set.Injector.StaticFlow)} at {style.Of(set.Injector.RatedDifferential)} on {set.Injector.TestFluid.Name}, linear from {style.Of(set.Injector.MinimumLinearPulse)}";

    private static string Limits(SizingLimits limits, TextStyle style) =>
        $"duty cycle {style.DutyCycle(limits.DutyCycle)}{RuleMark.Of(limits, RuleOfThumb.DutyCycle)}, pump reserve {style.Of(limits.PumpReserve)}{RuleMark.Of(limits, RuleOfThumb.PumpReserve)}, feed drop {style.Of(limits.FeedDrop)}{RuleMark.Of(limits, RuleOfThumb.FeedDrop)}, {style.Of(limits.SuctionMargin)}{RuleMark.Of(limits, RuleOfThumb.SuctionMargin)} over vapour pressure{(limits.RailCeiling is { } ceiling ? $", rail {style.Of(ceiling)}" : string.Empty)}{(Enum.GetValues<RuleOfThumb>().Any(rule => limits.MarkOf(rule) is not null) ? $" ({RuleMark.Note})" : string.Empty)}";

    private static string Charged(Induction induction, TextStyle style) => induction.Drive switch
    {
        CompressorDrive.None => "no compressor",
        CompressorDrive.Belt => $"belt-driven compressor {style.Of(induction.CompressorEfficiency)}, cooler {style.Of(induction.CoolerEffectiveness)}",
        _ => $"turbocharger {style.Of(induction.CompressorEfficiency)}, cooler {style.Of(induction.CoolerEffectiveness)}",
    };

    private static string Wiring(FuelSystem system, TextStyle style)
    {
        string[] feeds = [.. system.Pump.Pumps.Select(pump => pump.Feed).OfType<Electrical.Feed>().Select(feed => $"{feed.Conductor}, {style.Of(feed.LoopResistance)}").Distinct()];
        return feeds.Length == 0 ? ", fed without loss" : $", fed through {string.Join("; ", feeds)}";
    }

    private static IEnumerable<(string, string)> Branches(FuelSystem system, TextStyle style) => DiagramPumps.BranchesOf(system.Pump).Select(branch => (
        $"Own lines of {branch.Name}",
        string.Join("; ", new[] { Way("to the pump", branch.Suction, style), Way("to the joint", branch.Discharge, style) }.Where(way => way.Length > 0))));

    private static string Way(string name, IReadOnlyList<IFlowLoss> way, TextStyle style) =>
        way.Count == 0 ? string.Empty
        : way.Count > MaximumParts ? $"{name}: {style.Count(way.Count)} parts"
        : $"{name}: {string.Join(", ", way.Select(part => part is Line line ? $"{line.Name} {Bore(line, style)} × {style.Of(line.Length)}" : part.Name))}";

    private static string Paths(Plumbing plumbing, TextStyle style)
    {
        string Way(string name, IReadOnlyList<IFlowLoss> way) => SheetInputs.Way(name, way, style);
        string[] ways = [.. new[] { Way("to the pump", plumbing.Suction), Way("to the regulator", plumbing.ToRegulator), Way("to the rail", plumbing.Supply), Way("back", plumbing.ReturnLine) }.Where(way => way.Length > 0)];
        return ways.Length == 0 ? "none described: pressure at the pump is pressure at the rail" : string.Join("; ", ways);
    }

    private static string Bore(Line line, TextStyle style) =>
        $"{style.Number(style.Units.Bore.ValueOf(line.Bore), "0.#")} {style.Units.Bore.Unit}";
}
