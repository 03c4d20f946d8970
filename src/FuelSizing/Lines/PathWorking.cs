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
    /// <param name="mark">Of its symbols, for instance <c>1</c> for <c>Δp_1</c>.</param>
    /// <param name="flow">m³/s, not below zero.</param>
    /// <param name="density">kg/m³.</param>
    /// <param name="viscosity">Kinematic, m²/s.</param>
    /// <returns>Pressure lost, height included, Pa.</returns>
    public static Traced Loss(Derivation to, IFlowLoss part, string mark, Traced flow, Traced density, Traced viscosity) => part switch
    {
        Line line => Loss(to, line, mark, flow, density, viscosity),
        Filter filter => Loss(to, filter, mark, flow, density, viscosity),
        _ => to.Table(
            $"pressure loss in {part.Name}",
            $"Δp_{mark}",
            part.LossPascals(flow.Value, density.Value, viscosity.Value) + part.ElevationPascals(density.Value),
            "Pa",
            Lost(to, part.LossPascals(flow.Value, density.Value, viscosity.Value) + part.ElevationPascals(density.Value)),
            $"the law of {part.Name}, at {to.Style.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(flow.Value))}"),
    };

    private static Traced Loss(Derivation to, Line line, string mark, Traced flow, Traced density, Traced viscosity)
    {
        string name = line.Name;
        Traced bore = to.Given($"bore of {name}", $"D_{mark}", line.Bore.Meters, "m", $"{Number(line.Bore.Millimeters)} mm", name);
        Traced length = to.Given($"length of {name}", $"L_{mark}", line.Length.Meters, "m", to.Style.Of(line.Length), name);
        Traced velocity = to.Step(
            $"velocity in {name}", $"V_{mark}", PipeFlow.Velocity(flow, bore), "m/s", Speed(PipeFlow.Velocity(flow, bore).Value), "continuity", intermediate: true);
        Traced reynolds = to.Step(
            $"Reynolds number in {name}", $"Re_{mark}", PipeFlow.Reynolds(velocity, bore, viscosity), "1", Number(PipeFlow.Reynolds(velocity, bore, viscosity).Value), "definition", intermediate: true);
        Traced straight = PipeFlow.StraightLoss(Friction(to, line, mark, reynolds), length, bore, density, viscosity, velocity);
        straight = to.Step($"pressure loss along {name}", $"Δp_f{mark}", straight, "Pa", Lost(to, straight.Value), Darcy, intermediate: true);
        Traced total = straight;
        if (line.LossCoefficient != 0)
        {
            Traced fittings = PipeFlow.FittingsLoss(
                to.Given($"loss coefficient of the fittings of {name}", $"K_{mark}", line.LossCoefficient, "1", Number(line.LossCoefficient), name), density, velocity);
            total += to.Step($"pressure loss in the fittings of {name}", $"Δp_K{mark}", fittings, "Pa", Lost(to, fittings.Value), "definition of the loss coefficient", intermediate: true);
        }

        if (line.Rise.Meters != 0)
        {
            Traced height = PipeFlow.Column(density, to.Given($"rise of {name}", $"h_{mark}", line.Rise.Meters, "m", to.Style.Of(line.Rise), name));
            total += to.Step($"pressure loss over the rise of {name}", $"Δp_h{mark}", height, "Pa", Change(to, height.Value), "hydrostatics", intermediate: true);
        }

        return to.Step($"pressure loss in {name}", $"Δp_{mark}", total, "Pa", Change(to, total.Value), "friction, fittings and rise");
    }

    /// <summary>Friction factor × Reynolds number: laminar, turbulent, or in between.</summary>
    private static Traced Friction(Derivation to, Line line, string mark, Traced reynolds)
    {
        if (reynolds.Value <= PipeFriction.TurbulenceOnset)
        {
            return to.Step(
                $"friction number f · Re of {line.Name}", $"F_{mark}", PipeFriction.LaminarNumber, "1", Number(PipeFriction.LaminarNumber), "laminar flow (Hagen, Poiseuille)", intermediate: true);
        }

        double ratio = line.Roughness / line.Bore;
        Traced roughness = to.Given($"roughness ÷ bore of {line.Name}", $"e_{mark}", ratio, "1", Number(ratio), line.Name);
        double factor = ColebrookWhite.Friction<Real>(reynolds.Value, ratio);
        Traced friction = to.Solved(
            $"turbulent friction factor of {line.Name}", $"f_{mark}", factor, "1", Number(factor), $"Colebrook–White, solved: X_{mark} = Y_{mark}", intermediate: true);
        Traced left = ColebrookWhite.LeftSide(friction);
        to.Step($"left side of that equation for {line.Name}", $"X_{mark}", left, "1", Number(left.Value), "Colebrook–White", intermediate: true);
        Traced right = ColebrookWhite.RightSide(friction, reynolds, roughness);
        to.Step($"right side of that equation for {line.Name}", $"Y_{mark}", right, "1", Number(right.Value), "Colebrook–White", intermediate: true);
        Traced weight = 1;
        if (reynolds.Value < PipeFriction.TurbulenceComplete)
        {
            Traced share = to.Step(
                $"how far the flow in {line.Name} is from laminar to turbulent", $"s_{mark}", PipeFriction.Share(reynolds), "1", Number(PipeFriction.Share(reynolds).Value), "blend of both laws", intermediate: true);
            weight = to.Step(
                $"weight of turbulent friction in {line.Name}", $"w_{mark}", PipeFriction.Weight(share), "1", Number(PipeFriction.Weight(share).Value), "blend of both laws", intermediate: true);
        }

        Traced number = PipeFriction.Blend(weight, friction, reynolds);
        return to.Step($"friction number f · Re of {line.Name}", $"F_{mark}", number, "1", Number(number.Value), "laminar law, turbulent law and their blend", intermediate: true);
    }

    private static Traced Loss(Derivation to, Filter filter, string mark, Traced flow, Traced density, Traced viscosity)
    {
        string name = filter.Name;
        Traced loss = FilterLoss.Loss(
            to.Given($"clogging of {name}", $"c_{mark}", filter.Clogging, "1", Number(filter.Clogging), name),
            to.Given($"rated loss of {name}", $"Δp_r{mark}", filter.RatedLoss.Pascals, "Pa", to.Style.PressureLoss(filter.RatedLoss), name),
            to.Given($"rated flow of {name}", $"Q_r{mark}", filter.RatedFlow.CubicMetersPerSecond, "m³/s", to.Style.PumpFlow(filter.RatedFlow), name),
            to.Given($"viscosity of the liquid on which {name} was rated", $"μ_r{mark}", filter.RatedViscosity.PascalSeconds, "Pa·s", $"{Number(filter.RatedViscosity.MillipascalSeconds)} mPa·s", name),
            flow,
            density,
            viscosity);
        return to.Step($"pressure loss in {name}", $"Δp_{mark}", loss, "Pa", Change(to, loss.Value), "Darcy's law for the medium, from the rated point");
    }

    private static string Speed(double metresPerSecond) => $"{Number(metresPerSecond)} m/s";

    private static string Lost(Derivation to, double pascals) => to.Style.PressureLoss(Pressure.FromPascals(pascals));

    // What descends gains: the sign is shown where there is one.
    private static string Change(Derivation to, double pascals) => pascals < 0 ? to.Style.PressureChange(Pressure.FromPascals(pascals)) : Lost(to, pascals);

    private static string Number(double value) => Term.Text(value);
}
