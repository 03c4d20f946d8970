using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What a filter costs in pressure.</summary>
public static class FilterLoss
{
    /// <summary>Pressure drop of a filter from its rated point: the flow in the pores is laminar, so the drop goes with flow and
    /// dynamic viscosity.
    /// <para><c>Δp_F = c_F · Δp_Fr · Q/Q_Fr · ρ · ν/μ_r</c></para>
    /// </summary>
    /// <param name="clogging"><c>c_F</c> (1): clogging factor of the filter; 1 for a new filter.</param>
    /// <param name="ratedLoss"><c>Δp_Fr</c> (Pa): pressure drop of the new filter at its rated point.</param>
    /// <param name="ratedFlow"><c>Q_Fr</c> (m³/s): flow at the rated point of the filter.</param>
    /// <param name="ratedViscosity"><c>μ_r</c> (Pa·s): dynamic viscosity at the rated point of the filter.</param>
    /// <param name="flow"><c>Q</c> (m³/s): flow in the line.</param>
    /// <param name="density"><c>ρ</c> (kg/m³): density of the fuel.</param>
    /// <param name="kinematicViscosity"><c>ν</c> (m²/s): kinematic viscosity of the fuel.</param>
    /// <returns><c>Δp_F</c> (Pa): pressure drop of the filter.</returns>
    /// <remarks>
    /// <para>Range: laminar flow in the medium, up to about twice the rated flow (common practice, no source).</para>
    /// <para>Outside: nothing is checked; the drop of the housing, which goes with the square of the flow, is left out.</para>
    /// <example>
    /// <code>
    /// Real result = FilterLoss.Loss&lt;Real&gt;(clogging: 2, ratedLoss: 8e3, ratedFlow: 1e-4, ratedViscosity: 5e-4, flow: 5e-5, density: 750, kinematicViscosity: 8e-7);
    /// // result = 9600 Pa
    /// </code>
    /// </example>
    /// <para>Source: derived from Darcy's law of flow through a porous medium.</para>
    /// </remarks>
    public static T Loss<T>(
        T clogging, T ratedLoss, T ratedFlow, T ratedViscosity, T flow, T density, T kinematicViscosity)
        where T : struct, IReal<T> =>
        clogging * ratedLoss * (flow / ratedFlow) * (density * kinematicViscosity / ratedViscosity);
}
