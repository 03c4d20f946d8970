using FuelSizing.Checks;
using FuelSizing.Equations;
using FuelSizing.Lines;
using FuelSizing.Quantities;
using FuelSizing.Workings;

namespace FuelSizing.Interactive;

/// <summary>How lines, fittings, filters and what is lost in them are shown.</summary>
internal static class LineShown
{
    public static void Register()
    {
        Shown.By<Line>(line => new(
            $"Line: {line.Name}",
            [
                new("Bore", "D", PartText.Bore(line.Bore)),
                new("Length", "L", Readable.Of(line.Length)),
                new("Roughness", "ε", PartText.Bore(line.Roughness, 4)),
                new("Loss coefficient", "K", PartText.Number(line.LossCoefficient), line.Fittings.Count == 0 ? "no fittings" : string.Join(", ", line.Fittings.Select(fitting => fitting.Name))),
                new("Rise", "h", Readable.Of(line.Rise), "outlet over inlet"),
            ]));
        Shown.By<Fitting>(fitting => new(
            $"Fitting: {fitting.Name}",
            [new("Loss coefficient", "K", PartText.Number(fitting.LossCoefficientIn(Shown8)), $"in a bore of {PartText.Bore(Shown8)}, on the velocity in it")]));
        Shown.By<Filter>(filter => new(
            $"Filter: {filter.Name}",
            [
                new("Rated loss", "Δp_r", Readable.PressureLoss(filter.RatedLoss)),
                new("At a flow", "Q_r", Readable.PumpFlow(filter.RatedFlow)),
                new("Of a liquid", "μ_r", PartText.Of(filter.RatedViscosity)),
                new("Clogging", "c", PartText.Number(filter.Clogging), "1: new"),
                new("Known up to", "Q_max", Readable.PumpFlow(filter.MaximumFlow)),
            ]));
        Shown.Listed<IFlowLoss>(part => new(part.Name, [Fact.Words("Is a", part is Filter ? "filter" : "line")]));
        Shown.By<LineLoss>(Of);
        Shown.By<SuctionMargin>(suction => new(
            "Pump inlet",
            [
                new("Pressure at the inlet", "p", Readable.Of(suction.InletAbsolute), "absolute"),
                new("Vapour pressure of the fuel", "p_v", Readable.Of(suction.VapourPressure), suction.IsEstimate ? "absolute, an estimate" : "absolute"),
                new("Margin", "Δp_v", Readable.PressureChange(suction.Margin), suction.Boils ? "the fuel boils" : "the fuel does not boil"),
            ]));
    }

    private static Facts Of(LineLoss loss)
    {
        Working working = loss.Working;
        Fact By(string name, string symbol, string figure) => new(name, symbol, figure, WorkingShown.Formula(working, symbol));
        return new(
            "What a line loses",
            [
                new("Flow", "Q", Readable.PumpFlow(loss.Flow)),
                By("Velocity", "V_1", PartText.Of(loss.Velocity)),
                new("Density", "ρ", Readable.Of(loss.Density)),
                new("Kinematic viscosity", "ν", PartText.Of(loss.KinematicViscosity)),
                new("Reynolds number", "Re_1", PartText.Number(loss.ReynoldsNumber, 0), Regime(loss.Regime)),
                new("Friction factor", "f", loss.FrictionFactor is { } factor ? PartText.Number(factor, 4) : "none", "Darcy's"),
                By("Lost in the pipe", "Δp_f1", Readable.PressureLoss(loss.Straight)),
                By("Lost in fittings", "Δp_K1", Readable.PressureLoss(loss.Fittings)),
                By("Taken by height", "Δp_h1", Readable.PressureLoss(loss.Elevation)),
                By("Altogether", "Δp_1", Readable.PressureLoss(loss.Total)),
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
