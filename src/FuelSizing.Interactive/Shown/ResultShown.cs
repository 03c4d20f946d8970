using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>How what a system does, and how its parts stand, is shown.</summary>
internal static class ResultShown
{
    public static void Register()
    {
        Shown.As<OperatingResult>((result, style) => new BlockList([SizingTables.Steps(result, style), MixtureShown.Of(result.Mixture, style).Table()]));
        Shown.Listed<OperatingResult>((result, style) => new(
            PartText.Say(result.Point, style),
            [
                new("Injected", "Q_f", style.PumpFlow(result.InjectedFlow)),
                new("Rail pressure", "p_r", style.Of(result.RailGauge)),
                new("Across the injector", "Δp", style.Of(result.InjectorDifferential)),
                new("Duty cycle", "D", CircuitText.Known(result.DutyCycle, style.DutyCycle)),
                .. result.SecondaryInjection is { } secondary ? [Fact.Words("Secondary set", PartText.Say(secondary, style))] : Array.Empty<Fact>(),
                Fact.Words("Tightest margin", PartText.Say(result.Limiting.Margin, style)),
            ]));
        Shown.As<SweepResult>(SizingTables.Standings);
        Shown.As<Verdict>(SizingCallouts.Verdict);
        Shown.By<CircuitResult>((circuit, style) => new("The circuit", Of(circuit, style)));
        Shown.By<PumpResult>((result, style) => new(
            $"{result.Pump.Name} where it runs",
            [
                new("Flow", "Q_p", style.PumpFlow(result.Flow)),
                new("Pressure rise", "Δp_p", style.Of(result.PressureRise)),
                new("At its motor", "V_m", style.Of(result.Voltage), result.IsEstimate ? "an estimate: scaled curve" : ""),
                .. result.Pump.Feed?.Shared is { } shared ? new Fact[] { new("Lost in the shared part", "", style.VoltageDrop(result.SharedDrop), shared.Name) } : [],
                new("Lost in its feed", "ΔV", style.VoltageDrop(result.FeedDrop)),
                new("Current", "I", CircuitText.Known(result.Current, style.Of)),
            ]));
        Shown.By<PathResult>((way, style) => new(
            way.Name,
            [new("Flow", "Q", style.PumpFlow(way.Flow)), new("Pressure loss", "", style.PressureLoss(way.PressureLoss), "height included")]));
        SurgeTankShown.Register();
        SecondStreamShown.Register();
        HeatShown.Register();
        Shown.By<Margin>((margin, style) => new($"How the part stands: {margin.Part.Name}", Of(margin, style)));
        Shown.By<Limit>((limit, style) => new(
            $"How the part stands: {limit.Part.Name}",
            [.. Of(limit.Margin, style), Fact.Words("At", PartText.Say(limit.Point, style))]));
        Shown.By<PartStanding>((standing, style) => new(
            $"How the part stands: {standing.Part.Name}",
            [
                Fact.Words("Over the range", SizingTables.Word(standing.Outcome)),
                .. Of(standing.Tightest.Margin, style),
                Fact.Words("At its tightest", PartText.Say(standing.Tightest.Point, style)),
                Fact.Words("Limit reached at", SizingTables.LimitReachedAt(standing, style)),
            ]));
        Shown.By<ICheck>((check, _) => new(
            $"Check: {check.Part.Name}",
            [Fact.Words("Code", check.Part.Code), Fact.Words("Figure", check.Figure.ToString())]));
        Shown.By<Applicability>((applies, style) => new("What a check has to do with a system", [Fact.Words("Answer", PartText.Say(applies, style))]));
        Shown.By<NotJudged>((open, style) => new(
            $"Not judged: {open.Part.Name}",
            [Fact.Words("Why", PartText.Say(open.Reason, style)), .. open.Waiver is { } waiver ? new[] { Fact.Words("Waived", VisibleText.Of(waiver)) } : []]));
        Shown.By<Waiver>((waiver, _) => new($"Waived: {waiver.Part.Name}", [Fact.Words("Reason", VisibleText.Of(waiver.Reason))]));
        Shown.By<CheckFigure>((figure, _) => new("Figures of a check", [Fact.Words("Used and allowed", figure.ToString())]));
        Shown.By<Remedy>((remedy, style) => new(
            $"A remedy for: {remedy.Part.Name}",
            [new("Needed", "", remedy.NeededIn(style) ?? (remedy.Needed is { } needed ? Of(remedy.Part, needed, style) : ""), PartText.Say(remedy, style))]));
    }

    private static Fact[] Of(CircuitResult circuit, TextStyle style) =>
    [
        new("Injected", "Q_f", style.PumpFlow(circuit.InjectedFlow)),
        new("Through the pumps", "Q_p", CircuitText.Known(circuit.PumpFlow, style.PumpFlow)),
        new("Back to the tank", "Q_ret", CircuitText.Known(circuit.ReturnedFlow, style.PumpFlow)),
        new("At the pump's inlet", "p_pi", CircuitText.Known(circuit.InletGauge, style.Of), "gauge"),
        new("At the pump's outlet", "p_po", CircuitText.Known(circuit.OutletGauge, style.Of), "gauge"),
        new("In the rail", "p_r", style.Of(circuit.RailGauge), "gauge"),
        new("Return line inlet", "p_ret", CircuitText.Known(circuit.ReturnGauge, style.Of), "gauge"),
        .. circuit.Pumps.Select(pump => new Fact(pump.Pump.Name, "Δp_p", style.Of(pump.PressureRise), $"{style.PumpFlow(pump.Flow)}, {CircuitText.Electrical(pump, style)}")),
        .. circuit.Branches.Select(branch => new Fact(
            $"Branch of {branch.Branch.Name}", "", style.PumpFlow(branch.Flow), $"{style.Of(branch.InletGauge)} at its pump's inlet, {style.Of(branch.OutletGauge)} at its outlet{(branch.IsShut ? ", shut" : "")}")),
        .. circuit.Paths.Select(way => new Fact(way.Name, "", style.PressureLoss(way.PressureLoss), $"lost at {style.PumpFlow(way.Flow)}")),
        new("Heat into the tank", "Φ", CircuitText.Known(circuit.HeatToTank, style.Heat)),
    ];

    private static Fact[] Of(Margin margin, TextStyle style) =>
    [
        Fact.Words("Finding", SizingTables.Word(margin.Outcome)),
        new("Asked of it", "", Of(margin.Part, margin.Used, style), SizingTables.Explanation(margin, style)),
        new("Limit", "", Of(margin.Part, margin.Allowed, style)),
        new("Margin", "", margin.Reserve is { } reserve ? OutputFigures.ReserveOf(reserve, style) : CircuitText.Unknown, "share by which the demand on it could grow"),
    ];

    // A flow that injectors need is told as their sheets tell it, a pump's as pumps' do; a voltage lost is a small one.
    private static string Of(Part part, UnitsNet.IQuantity? quantity, TextStyle style) => quantity switch
    {
        UnitsNet.VolumeFlow flow when part == Part.Injectors || part == Part.MinimumPulse || part == Part.SecondaryInjectors || part == Part.SecondaryMinimumPulse => style.InjectorFlow(flow),
        UnitsNet.ElectricPotential drop when part == Part.Feed || part == Part.LiftFeed => style.VoltageDrop(drop),
        _ => PartText.Of(quantity, style),
    };
}
