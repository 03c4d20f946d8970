using FuelSizing.Circuits;
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
        Shown.Listed<FuelSystem>((system, style) => new($"Fuel system, {Layout(system)}", Of(system, style)));
        Shown.As<FuelSystem>((system, style) => new BlockList(
            [new Facts($"Fuel system, {Layout(system)}", Of(system, style)).Table(), SystemDiagram.Of(system, style)]));
        Shown.By<Setup>((setup, style) => new(
            $"Setup: fuel system, {Layout(setup.System)}",
            [
                .. Of(setup.System, style),
                .. setup.BoostLine is { } line ? [Fact.Words("Boost line", line.In(style))] : Array.Empty<Fact>(),
                .. setup.PullRange is { } pull ? [Fact.Words("Pull", Range(pull, style))] : Array.Empty<Fact>(),
                .. setup.Points.Select(named => Fact.Words(named.Name, PartText.Say(named.Point, style))),
                .. setup.Questions.Select(question => Fact.Words("Question", question.In(style))),
            ]));
        Shown.By<PullRange>((pull, style) => new($"Pull: {Range(pull, style)}", Of(pull.Conditions, style)));
        Shown.By<PlausibleRange>((range, _) => new(
            $"Plausible for {range.Name}",
            [new("Values", "", range.Limits, PlausibleRange.Source), Fact.Words("Inputs", string.Join(", ", range.Inputs))]));
        Shown.By<InputQuestion>((question, _) => new(
            $"Question of {question.Input}",
            [
                new("Value", "", question.Value),
                new("Plausible", "", question.Range.Limits, $"{question.Range.Name}: {PlausibleRange.Source}"),
                Fact.Words("Likely meant", question.Likely.Count > 0 ? string.Join("; or ", question.Likely) : "cannot say"),
            ]));
        Shown.By<NamedPoint>((named, style) => new(named.Name, Of(named.Point, style)));
        Shown.By<OperatingPoint>((point, style) => new($"Operating point: {PartText.Say(point, style)}", Of(point, style)));
        Shown.By<Conditions>((conditions, style) => new("Conditions", Of(conditions, style)));
        Shown.By<SizingLimits>((limits, style) => new(
            "Limits that the parts are judged by",
            [
                new("Duty cycle", "D_max", style.DutyCycle(limits.DutyCycle), $"maximum{limits.MarkOf(RuleOfThumb.DutyCycle)}"),
                new("Pump's reserve", "σ", style.Of(limits.PumpReserve), $"over the demand, minimum{limits.MarkOf(RuleOfThumb.PumpReserve)}"),
                new("Rail pressure", "p_lim", limits.RailCeiling is { } ceiling ? style.Of(ceiling) : "none", "gauge, what hoses, fittings and filter are rated for"),
                new("Voltage drop in the pump's feed", "", style.DutyCycle(limits.FeedDrop), $"maximum{limits.MarkOf(RuleOfThumb.FeedDrop)}"),
                new("Pump inlet over vapour pressure", "NPSP_min", style.Of(limits.SuctionMargin), $"minimum{limits.MarkOf(RuleOfThumb.SuctionMargin)}"),
                .. limits.Mixture is { } mixture ? MixtureShown.Of(mixture, style) : [Fact.Words("Lambda", "none given")],
            ]));
        Shown.By<Plumbing>((plumbing, style) => new(
            "Lines and filters",
            [.. Way("To the pump", plumbing.Suction, style), .. plumbing.ToRegulator.Count > 0 ? Way("To the regulator", plumbing.ToRegulator, style) : [], .. Way("To the rail", plumbing.Supply, style), .. Way("Back to the tank", plumbing.ReturnLine, style)]));
    }

    private static string Range(PullRange pull, TextStyle style) => $"{style.Of(pull.Slowest)} to {style.Of(pull.Fastest)}";

    /// <summary>A system's parts.</summary>
    public static IReadOnlyList<Fact> Of(FuelSystem system, TextStyle style) =>
    [
        .. SheetInputs.Of(system, style).Select(line => Fact.Words(line.Name, line.Text)),
        Fact.Words("Controller", PartText.Say(system.Controller, style)),
    ];

    /// <summary>An operating point and what surrounds it.</summary>
    public static IReadOnlyList<Fact> Of(OperatingPoint point, TextStyle style) =>
    [
        new("Engine speed", "n", style.Of(point.Speed)),
        new("Boost", "p_b", style.Boost(point.Boost), "gauge"),
        .. Of(point.Conditions, style),
    ];

    private static Fact[] Of(Conditions conditions, TextStyle style) =>
    [
        new("Ambient air", "p_0", style.Of(conditions.Atmosphere.Pressure), "absolute"),
        new("Ambient temperature", "T_0", style.Of(conditions.Atmosphere.Temperature)),
        new("Supply voltage", "V_s", style.Of(conditions.SupplyVoltage), "at the injectors and at the source of the pumps' wiring"),
        new("Fuel in the rail", "T", style.Of(conditions.FuelTemperature)),
        Fact.Words("Fuel in the tank, at the pump's inlet", $"{style.Of(conditions.TankTemperature)}, {style.Of(conditions.InletTemperature)}"),
    ];

    private static string Layout(FuelSystem system) => system.Layout == LineLayout.Return ? "with a return line" : "returnless";

    internal static IEnumerable<Fact> Way(string name, IReadOnlyList<IFlowLoss> parts, TextStyle style) => parts.Count == 0
        ? [Fact.Words(name, "nothing described: no pressure is lost")]
        : parts.Select(part => part is Line line
            ? new Fact($"{name}: {line.Name}", "l", style.Of(line.Length), $"line, bore {style.Bore(line.Bore)}")
            : part is Filter filter
                ? new Fact($"{name}: {filter.Name}", "Δp_Fr", style.PressureLoss(filter.RatedLoss), $"filter, at {style.PumpFlow(filter.RatedFlow)}")
                : part is CheckValve valve
                    ? new Fact($"{name}: {valve.Name}", "p_Vo", style.PressureLoss(valve.OpeningPressure), "check valve, opens at")
                    : Fact.Words($"{name}: {part.Name}", "a part of your own"));
}
