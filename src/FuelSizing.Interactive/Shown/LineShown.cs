using FuelSizing.Lines;
using FuelSizing.Quantities;
using FuelSizing.Workings;

namespace FuelSizing.Interactive;

/// <summary>How lines, fittings, filters and what is lost in them are shown.</summary>
internal static class LineShown
{
    public static void Register()
    {
        Shown.By<Line>((line, style) => new(
            $"Line: {line.Name}",
            [
                new("Bore", "d", style.Bore(line.Bore)),
                new("Length", "l", style.Of(line.Length)),
                new("Roughness", "k_R", PartText.Bore(line.Roughness, 4, style)),
                new("Loss coefficient", "K", style.Number(line.LossCoefficient), line.Fittings.Count == 0 ? "no fittings" : string.Join(", ", line.Fittings.Select(fitting => fitting.Name))),
                new("Rise", "Δh", style.Of(line.Rise), "outlet over inlet"),
            ]));
        Shown.By<Fitting>((fitting, style) => new(
            $"Fitting: {fitting.Name}",
            [new("Loss coefficient", "K", style.Number(fitting.LossCoefficientIn(Shown8)), $"in a bore of {style.Bore(Shown8)}, on the velocity in it")]));
        Shown.By<Filter>((filter, style) => new(
            $"Filter: {filter.Name}",
            [
                new("Rated loss", "Δp_Fr", style.PressureLoss(filter.RatedLoss)),
                new("At a flow", "Q_Fr", style.PumpFlow(filter.RatedFlow)),
                new("Of a liquid", "μ_r", style.Of(filter.RatedViscosity)),
                new("Clogging", "c_F", style.Number(filter.Clogging), "1: new"),
                new("Known up to", "Q_Fmax", style.PumpFlow(filter.MaximumFlow)),
            ]));
        Shown.By<CheckValve>((valve, style) => new(
            $"Check valve: {valve.Name}",
            [
                new("Opening pressure", "p_Vo", style.PressureLoss(valve.OpeningPressure), "over that behind it"),
                .. valve.RatedFlow is { } flow
                    ? (Fact[])
                    [
                        new("Measured drop", "Δp_Vr", style.PressureLoss(valve.RatedLoss!.Value), "the opening pressure included"),
                        new("At a flow", "Q_Vr", style.PumpFlow(flow)),
                        new("Of a liquid", "ρ_Vr", style.Of(valve.RatedDensity!.Value)),
                    ]
                    : [new("Loss coefficient", "K", style.Number(valve.LossCoefficient!.Value), $"of the open valve, in a bore of {style.Bore(valve.Bore!.Value)}")],
            ]));
        Shown.By<CustomLoss>((part, style) => new(
            $"Part by a law of your own: {part.Name}",
            [new("Known up to", "Q_Fmax", style.PumpFlow(part.MaximumFlow))]));
        Shown.Listed<IFlowLoss>((part, style) => new(
            part.Name, [Fact.Words("Is a", part is Filter ? "filter" : part is CheckValve ? "check valve" : part is CustomLoss ? "part of your own" : "line")]));
        Shown.By<LineLoss>(Of);
        Shown.By<SuctionMargin>((suction, style) => new(
            "Pump inlet",
            [
                new("Pressure at the inlet", "p_in", style.Of(suction.InletAbsolute), "absolute"),
                new("Vapour pressure of the fuel", "p_vp", style.Of(suction.VapourPressure), suction.IsEstimate ? "absolute, an estimate" : "absolute"),
                new("Margin", "NPSP", style.PressureChange(suction.Margin), suction.Boils ? "the fuel boils" : "the fuel does not boil"),
            ]));
    }

    private static Facts Of(LineLoss loss, TextStyle style)
    {
        Working working = loss.WorkingIn(style);
        Fact By(string name, string symbol, string figure) => new(name, symbol, figure, WorkingShown.Formula(working, symbol));
        return new(
            "What a line loses",
            [
                new("Flow", "Q", style.PumpFlow(loss.Flow)),
                By("Velocity", "v", style.Of(loss.Velocity)),
                new("Density", "ρ", style.Of(loss.Density)),
                new("Kinematic viscosity", "ν", style.Of(loss.KinematicViscosity)),
                new("Reynolds number", "Re", style.Number(loss.ReynoldsNumber, "N0"), Regime(loss.Regime)),
                new("Friction factor", "f", loss.FrictionFactor is { } factor ? style.Number(factor, "N4") : "none", "Darcy's"),
                By("Lost in the pipe", "Δp_f", style.PressureLoss(loss.Straight)),
                By("Lost in fittings", "Δp_K", style.PressureLoss(loss.Fittings)),
                By("Taken by height", "Δp_h", style.PressureLoss(loss.Elevation)),
                By("Altogether", "Δp_l", style.PressureLoss(loss.Total)),
            ]);
    }

    // What a fitting loses depends a little on the bore; a usual one stands for all.
    private static UnitsNet.Length Shown8 => UnitsNet.Length.FromMillimeters(8);

    private static string Regime(FlowRegime regime) => regime switch
    {
        FlowRegime.Still => "still",
        FlowRegime.Laminar => "laminar",
        FlowRegime.Transitional => "in between: laminar and turbulent blended",
        _ => "turbulent",
    };
}
