using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Lines;

/// <summary>Writes what a flow loses in a line or filter, equation by equation.</summary>
internal static class PathWorking
{
    private const string Darcy = "Darcy–Weisbach";

    /// <summary>One part.</summary>
    /// <param name="to">Where to write.</param>
    /// <param name="part">Which.</param>
    /// <param name="mark">Of its symbols, for instance <c>1</c> for <c>Δp_l,1</c>; empty where there is no other part.</param>
    /// <param name="flow">m³/s, not below zero.</param>
    /// <param name="density">kg/m³.</param>
    /// <param name="viscosity">Kinematic, m²/s.</param>
    /// <returns>Pressure lost, height included, Pa.</returns>
    public static Traced Loss(Derivation to, IFlowLoss part, string mark, Traced flow, Traced density, Traced viscosity) => part switch
    {
        Line line => Loss(to, line, mark, flow, density, viscosity),
        Filter filter => Loss(to, filter, mark, flow, density, viscosity),
        CheckValve valve => Loss(to, valve, mark, flow, density),
        _ => to.Table(
            $"pressure loss in {part.Name}",
            Of("Δp_l", mark),
            part.LossPascals(flow.Value, density.Value, viscosity.Value) + part.ElevationPascals(density.Value),
            "Pa",
            Lost(to, part.LossPascals(flow.Value, density.Value, viscosity.Value) + part.ElevationPascals(density.Value)),
            $"the law of {part.Name}, at {to.Style.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(flow.Value))}"),
    };

    private static Traced Loss(Derivation to, Line line, string mark, Traced flow, Traced density, Traced viscosity)
    {
        string name = line.Name;
        Traced bore = to.Given($"bore of {name}", Of("d", mark), line.Bore.Meters, "m", $"{Number(line.Bore.Millimeters)} mm", name);
        Traced length = to.Given($"length of {name}", Of("l", mark), line.Length.Meters, "m", to.Style.Of(line.Length), name);
        Traced velocity = to.Step(
            $"velocity in {name}", Of("v", mark), PipeFlow.Velocity(flow, bore), "m/s", Speed(PipeFlow.Velocity(flow, bore).Value), "continuity", intermediate: true, law: "PipeFlow.Velocity");
        Traced reynolds = to.Step(
            $"Reynolds number in {name}", Of("Re", mark), PipeFlow.Reynolds(velocity, bore, viscosity), "1", Number(PipeFlow.Reynolds(velocity, bore, viscosity).Value), "definition", intermediate: true, law: "PipeFlow.Reynolds");
        Traced straight = PipeFlow.StraightLoss(Friction(to, line, mark, reynolds), length, bore, density, viscosity, velocity);
        straight = to.Step($"pressure loss along {name}", Of("Δp_f", mark), straight, "Pa", Lost(to, straight.Value), Darcy, intermediate: true, law: "PipeFlow.StraightLoss");
        Traced total = straight;
        if (line.LossCoefficient != 0)
        {
            Traced fittings = PipeFlow.FittingsLoss(
                to.Given($"loss coefficient of the fittings of {name}", Of("K", mark), line.LossCoefficient, "1", Number(line.LossCoefficient), name), density, velocity);
            total += to.Step($"pressure loss in the fittings of {name}", Of("Δp_K", mark), fittings, "Pa", Lost(to, fittings.Value), "definition of the loss coefficient", intermediate: true, law: "PipeFlow.FittingsLoss");
        }

        if (line.Rise.Meters != 0)
        {
            Traced height = PipeFlow.Column(density, to.Given($"rise of {name}", Of("Δh", mark), line.Rise.Meters, "m", to.Style.Of(line.Rise), name));
            total += to.Step($"pressure loss over the rise of {name}", Of("Δp_h", mark), height, "Pa", Change(to, height.Value), "hydrostatics", intermediate: true, law: "PipeFlow.Column");
        }

        return to.Step($"pressure loss in {name}", Of("Δp_l", mark), total, "Pa", Change(to, total.Value), "friction, fittings and rise");
    }

    /// <summary>Friction factor × Reynolds number: laminar, turbulent, or in between.</summary>
    private static Traced Friction(Derivation to, Line line, string mark, Traced reynolds)
    {
        if (reynolds.Value <= PipeFriction.TurbulenceOnset)
        {
            return to.Step(
                $"friction number f · Re of {line.Name}", Of("Po", mark), PipeFriction.LaminarNumber, "1", Number(PipeFriction.LaminarNumber), "laminar flow (Hagen, Poiseuille)", intermediate: true, law: "PipeFriction.Number");
        }

        double ratio = line.Roughness / line.Bore;
        Traced roughness = to.Given($"roughness ÷ bore of {line.Name}", Of("κ", mark), ratio, "1", Number(ratio), line.Name);
        (string left, string right) = (Of("Y_L", mark), Of("Y_R", mark));
        double factor = ColebrookWhite.Friction<Real>(reynolds.Value, ratio);
        Traced friction = to.Solved(
            $"turbulent friction factor of {line.Name}", Of("f", mark), factor, "1", Number(factor), $"Colebrook–White, solved: {left} = {right}", intermediate: true);
        Traced leftSide = ColebrookWhite.LeftSide(friction);
        to.Step($"left side of that equation for {line.Name}", left, leftSide, "1", Number(leftSide.Value), "Colebrook–White", intermediate: true, law: "ColebrookWhite.Friction");
        Traced rightSide = ColebrookWhite.RightSide(friction, reynolds, roughness);
        to.Step($"right side of that equation for {line.Name}", right, rightSide, "1", Number(rightSide.Value), "Colebrook–White", intermediate: true, law: "ColebrookWhite.Friction");
        Traced weight = 1;
        if (reynolds.Value < PipeFriction.TurbulenceComplete)
        {
            Traced share = to.Step(
                $"how far the flow in {line.Name} is from laminar to turbulent", Of("x", mark), PipeFriction.Share(reynolds), "1", Number(PipeFriction.Share(reynolds).Value), "blend of both laws", intermediate: true, law: "PipeFriction.Number");
            weight = to.Step(
                $"weight of turbulent friction in {line.Name}", Of("w", mark), PipeFriction.Weight(share), "1", Number(PipeFriction.Weight(share).Value), "blend of both laws", intermediate: true, law: "PipeFriction.Number");
        }

        Traced number = PipeFriction.Blend(weight, friction, reynolds);
        return to.Step($"friction number f · Re of {line.Name}", Of("Po", mark), number, "1", Number(number.Value), "laminar law, turbulent law and their blend", intermediate: true, law: "PipeFriction.Number");
    }

    private static Traced Loss(Derivation to, Filter filter, string mark, Traced flow, Traced density, Traced viscosity)
    {
        string name = filter.Name;
        Traced loss = FilterLoss.Loss(
            to.Given($"clogging of {name}", Of("c_F", mark), filter.Clogging, "1", Number(filter.Clogging), name),
            to.Given($"rated loss of {name}", Of("Δp_Fr", mark), filter.RatedLoss.Pascals, "Pa", to.Style.PressureLoss(filter.RatedLoss), name),
            to.Given($"rated flow of {name}", Of("Q_Fr", mark), filter.RatedFlow.CubicMetersPerSecond, "m³/s", to.Style.PumpFlow(filter.RatedFlow), name),
            to.Given($"viscosity of the liquid on which {name} was rated", Of("μ_r", mark), filter.RatedViscosity.PascalSeconds, "Pa·s", $"{Number(filter.RatedViscosity.MillipascalSeconds)} mPa·s", name),
            flow,
            density,
            viscosity);
        return to.Step($"pressure loss in {name}", Of("Δp_F", mark), loss, "Pa", Change(to, loss.Value), "Darcy's law for the medium, from the rated point", law: "FilterLoss.Loss");
    }

    private static Traced Loss(Derivation to, CheckValve valve, string mark, Traced flow, Traced density)
    {
        string name = valve.Name;
        Traced opening = to.Given($"opening pressure of {name}", Of("p_Vo", mark), valve.OpeningPressure.Pascals, "Pa", to.Style.PressureLoss(valve.OpeningPressure), name);
        if (valve is not { RatedFlow: { } ratedFlow, RatedLoss: { } ratedLoss, RatedDensity: { } ratedDensity })
        {
            Traced bore = to.Given($"bore of {name}", Of("d", mark), valve.Bore!.Value.Meters, "m", $"{Number(valve.Bore.Value.Millimeters)} mm", name);
            Traced velocity = to.Step(
                $"velocity in {name}", Of("v", mark), PipeFlow.Velocity(flow, bore), "m/s", Speed(PipeFlow.Velocity(flow, bore).Value), "continuity", intermediate: true, law: "PipeFlow.Velocity");
            Traced seat = PipeFlow.FittingsLoss(
                to.Given($"loss coefficient of {name}", Of("K", mark), valve.LossCoefficient!.Value, "1", Number(valve.LossCoefficient.Value), name), density, velocity);
            Traced sum = seat + opening;
            return to.Step($"pressure loss in {name}", Of("Δp_V", mark), sum, "Pa", Change(to, sum.Value), "definition of the loss coefficient, and its opening pressure", law: "PipeFlow.FittingsLoss");
        }

        Traced share = CheckValveLoss.Share(
            flow,
            to.Given($"flow at which {name} was measured", Of("Q_Vr", mark), ratedFlow.CubicMetersPerSecond, "m³/s", to.Style.PumpFlow(ratedFlow), name),
            density,
            to.Given($"density of the liquid with which {name} was measured", Of("ρ_Vr", mark), ratedDensity.KilogramsPerCubicMeter, "kg/m³", to.Style.Of(ratedDensity), name));
        share = to.Step($"flow through {name} by the measured one", Of("ξ_V", mark), share, "1", Number(share.Value), "equal pressure drop", intermediate: true, law: "CheckValveLoss.Share");
        Traced loss = CheckValveLoss.Loss(
            opening, to.Given($"measured drop of {name}", Of("Δp_Vr", mark), ratedLoss.Pascals, "Pa", to.Style.PressureLoss(ratedLoss), name), share);
        return to.Step($"pressure loss in {name}", Of("Δp_V", mark), loss, "Pa", Change(to, loss.Value), "its opening pressure and one measured drop", law: "CheckValveLoss.Loss");
    }

    private static string Speed(double metresPerSecond) => $"{Number(metresPerSecond)} m/s";

    private static string Lost(Derivation to, double pascals) => to.Style.PressureLoss(Pressure.FromPascals(pascals));

    // What descends gains: the sign is shown where there is one.
    private static string Change(Derivation to, double pascals) => pascals < 0 ? to.Style.PressureChange(Pressure.FromPascals(pascals)) : Lost(to, pascals);

    private static string Of(string symbol, string mark) => Derivation.Marked(symbol, mark);

    private static string Number(double value) => Term.Text(value);
}
