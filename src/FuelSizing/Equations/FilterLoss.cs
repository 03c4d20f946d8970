using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What a filter costs in pressure.</summary>
internal static class FilterLoss
{
    /// <summary>
    /// Darcy's law through the medium, against the rated point, Pa: Δp = c Δp_r (Q/Q_r) (ρ ν/μ_r). The pores are so fine
    /// that the flow in them is laminar, so the loss goes with flow and dynamic viscosity and not with density.
    /// </summary>
    /// <param name="clogging">c, 1 for a new filter.</param>
    /// <param name="ratedLoss">Δp_r, Pa.</param>
    /// <param name="ratedFlow">Q_r, m³/s.</param>
    /// <param name="ratedViscosity">μ_r of the liquid at the rated point, Pa·s.</param>
    /// <param name="flow">Q, m³/s.</param>
    /// <param name="density">ρ, kg/m³.</param>
    /// <param name="kinematicViscosity">ν, m²/s.</param>
    public static T Loss<T>(
        T clogging, T ratedLoss, T ratedFlow, T ratedViscosity, T flow, T density, T kinematicViscosity)
        where T : struct, IReal<T> =>
        clogging * ratedLoss * (flow / ratedFlow) * (density * kinematicViscosity / ratedViscosity);
}
