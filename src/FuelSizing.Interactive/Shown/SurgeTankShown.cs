using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>How a surge tank, its lift circuit, and what it carries of an uncovered pickup are shown.</summary>
internal static class SurgeTankShown
{
    public static void Register()
    {
        Shown.By<SurgeTank>((tank, style) => new("Surge tank", Of(tank, style), TakenForGranted(tank)));
        Shown.By<SurgeTankResult>((result, style) => new(
            "Surge tank and lift circuit",
            [
                new("Lifted", "Q_lift", CircuitText.Known(result.Lifted, style.PumpFlow), result.IsFull ? "the tank stays full" : "the tank does not stay full"),
                new("Net draw", "Q_net", CircuitText.Known(result.NetDraw, style.PumpFlow), result.Tank.ReturnsTo == ReturnDestination.SurgeTank ? "what is injected" : "all that the main pumps pass"),
                new("Overflow", "", CircuitText.Known(result.Overflow, style.PumpFlow), "back to the main tank"),
                new("In the surge tank", "", CircuitText.Known(result.TankGauge, style.Of), "gauge"),
                new("At the lift pump's inlet", "", CircuitText.Known(result.LiftInletGauge, style.Of), "gauge"),
                new("At the lift pump's outlet", "", CircuitText.Known(result.LiftOutletGauge, style.Of), "gauge"),
                .. result.Pumps.Select(pump => new Fact(pump.Pump.Name, "Δp_p", style.Of(pump.PressureRise), $"{style.PumpFlow(pump.Flow)}, {CircuitText.Electrical(pump, style)}")),
                .. result.Paths.Select(way => new Fact(way.Name, "", style.PressureLoss(way.PressureLoss), $"lost at {style.PumpFlow(way.Flow)}")),
            ]));
        Shown.By<UncoveredPickupResult>((result, style) => new($"Uncovered pickup at {PartText.Say(result.Point, style)}", Of(result, style), TakenForGranted(result.Result.Parts.SurgeTank!)));
        Shown.By<UncoveredPickupAlongLine>((line, style) => new(
            "Uncovered pickup along the line, at its worst",
            [
                Fact.Words("Shortest at", PartText.Say(line.Shortest.Point, style)),
                .. Of(line.Shortest, style).Take(1),
                Fact.Words("Slowest to refill at", PartText.Say(line.SlowestRefill.Point, style)),
                .. Of(line.SlowestRefill, style).Skip(1),
            ],
            TakenForGranted(line.Shortest.Result.Parts.SurgeTank!)));
        Shown.By<PickupPattern>((pattern, style) => new(
            "Pattern of corners",
            [
                new("Uncovered for", "t_x", style.Time(pattern.UncoveredFor), PartText.Say(pattern.Uncovered, style)),
                new("Covered for", "t_x", style.Time(pattern.CoveredFor), PartText.Say(pattern.Covered, style)),
                new("Times", "", style.Count(pattern.Times)),
            ]));
        Shown.By<PickupPatternResult>((result, style) => new(
            "Surge tank through a pattern of corners",
            [
                Fact.Words("Answer", PartText.Say(result.Text, style)),
                new("Lowest, at the least", "", CircuitText.Known(result.MinimumLowest, style.Of), $"of {style.Of(result.Tank.UsableVolume)}"),
                new("Lowest, at the most", "", CircuitText.Known(result.MaximumLowest, style.Of)),
                new("At the end, at the least", "", CircuitText.Known(result.MinimumAtEnd, style.Of)),
            ],
            TakenForGranted(result.Tank)));
    }

    /// <summary>A tank in one line.</summary>
    public static string Text(SurgeTank tank, TextStyle style) =>
        $"{style.Of(tank.UsableVolume)} usable, {tank.LiftPump.Name}, return to the {(tank.ReturnsTo == ReturnDestination.SurgeTank ? "surge" : "main")} tank";

    private static Fact[] Of(SurgeTank tank, TextStyle style) =>
    [
        new("Usable volume", "V_st", style.Of(tank.UsableVolume)),
        Fact.Words("Lift pump", tank.LiftPump.Name),
        Fact.Words("Return of the main circuit", tank.ReturnsTo == ReturnDestination.SurgeTank ? "to the surge tank" : "to the main tank"),
        Fact.Words("To the lift pump", Way(tank.Suction)),
        Fact.Words("To the surge tank", Way(tank.LiftLine)),
        Fact.Words("Overflow", Way(tank.Overflow)),
        new("Stands", "", tank.MaximumPressure is { } most ? style.Of(most) : "not given", "gauge, the weakest of tank and lift hoses"),
        new("Priming time", "", style.Time(tank.PrimingTime), "from a pickup that is covered again until the lift pump delivers"),
    ];

    private static Fact[] Of(UncoveredPickupResult result, TextStyle style) =>
    [
        new("Carries", "t_e", CircuitText.Known(result.MinimumCarried, style.Time), $"of uncovered pickup{(result.MaximumCarried is { } most && result.MinimumCarried is { } least && most.Seconds > least.Seconds * (1 + 1e-9) ? $", at the most {style.Time(most)}" : string.Empty)}"),
        result.Refill == RefillAnswer.Refills
            ? new("Refills in", "t_fill", style.Time(result.MaximumRefill!.Value), "from empty, the engine drawing on")
            : Fact.Words("Refills", PartText.Say(result.Text, style)),
    ];

    private static string TakenForGranted(SurgeTank tank) =>
        $"Taken for granted: full and free of air at the start, no slosh in it; a partly uncovered pickup counts as uncovered{(tank.PrimingTime.Seconds > 0 ? string.Empty : "; the lift pump delivers as soon as its pickup is covered")}.";

    private static string Way(IReadOnlyList<IFlowLoss> parts) =>
        parts.Count == 0 ? "nothing described: no pressure is lost" : string.Join(", ", parts.Select(part => part.Name));
}
