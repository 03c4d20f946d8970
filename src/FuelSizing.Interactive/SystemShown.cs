using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Files;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>How whole systems, their surroundings and their limits are shown.</summary>
internal static class SystemShown
{
    public static void Register()
    {
        Shown.By<FuelSystem>(system => new($"Fuel system, {Layout(system)}", Of(system)));
        Shown.By<Setup>(setup => new(
            $"Setup: fuel system, {Layout(setup.System)}",
            [.. Of(setup.System), .. setup.Points.Select(named => Fact.Words(named.Name, $"{named.Point}"))]));
        Shown.By<NamedPoint>(named => new(named.Name, Of(named.Point)));
        Shown.By<OperatingPoint>(point => new($"Operating point: {point}", Of(point)));
        Shown.By<Conditions>(conditions => new("Conditions", Of(conditions)));
        Shown.By<SizingLimits>(limits => new(
            "Limits that the parts are judged by",
            [
                new("Duty cycle", "D", Readable.DutyCycle(limits.DutyCycle), "at the most"),
                new("Pump's reserve", "", Readable.Of(limits.PumpReserve), "over the demand, at the least"),
                new("Rail pressure", "p_max", limits.RailCeiling is { } ceiling ? Readable.Of(ceiling) : "none", "gauge, what hoses, fittings and filter are rated for"),
                new("Lost in the pump's feed", "", Readable.DutyCycle(limits.FeedDrop), "at the most"),
                new("Pump inlet over vapour pressure", "Δp_v", Readable.Of(limits.SuctionMargin), "at the least"),
            ]));
        Shown.By<Plumbing>(plumbing => new(
            "Lines and filters",
            [.. Way("To the pump", plumbing.Suction), .. Way("To the rail", plumbing.Supply), .. Way("Back to the tank", plumbing.ReturnLine)]));
    }

    /// <summary>A system's parts.</summary>
    public static IReadOnlyList<Fact> Of(FuelSystem system) => [.. SheetInputs.Of(system).Select(line => Fact.Words(line.Name, line.Text))];

    /// <summary>An operating point and what surrounds it.</summary>
    public static IReadOnlyList<Fact> Of(OperatingPoint point) =>
    [
        new("Engine speed", "n", Readable.Of(point.Speed)),
        new("Boost", "p_b", Readable.Boost(point.Boost), "gauge"),
        .. Of(point.Conditions),
    ];

    private static Fact[] Of(Conditions conditions) =>
    [
        new("Ambient air", "p_0", Readable.Of(conditions.Atmosphere.Pressure), "absolute"),
        new("Ambient temperature", "T_0", Readable.Of(conditions.Atmosphere.Temperature)),
        new("Supply voltage", "V", Readable.Of(conditions.SupplyVoltage), "at the injectors and at the source of the pumps' wiring"),
        new("Fuel in the rail", "T_f", Readable.Of(conditions.FuelTemperature)),
    ];

    private static string Layout(FuelSystem system) => system.Layout == LineLayout.Return ? "with a return line" : "returnless";

    private static IEnumerable<Fact> Way(string name, IReadOnlyList<IFlowLoss> parts) => parts.Count == 0
        ? [Fact.Words(name, "nothing described: no pressure is lost")]
        : parts.Select(part => part is Line line
            ? new Fact($"{name}: {line.Name}", "L", Readable.Of(line.Length), $"line, bore {PartText.Bore(line.Bore)}")
            : part is Filter filter
                ? new Fact($"{name}: {filter.Name}", "Δp_r", Readable.PressureLoss(filter.RatedLoss), $"filter, at {Readable.PumpFlow(filter.RatedFlow)}")
                : Fact.Words($"{name}: {part.Name}", "a part of your own"));
}
