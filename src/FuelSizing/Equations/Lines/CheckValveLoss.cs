using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What a check valve costs in pressure.</summary>
public static class CheckValveLoss
{
    /// <summary>Flow through a check valve as a share of the measured one, at equal pressure drop over the opening pressure.
    /// <para><c>ξ_V = Q/Q_Vr · √(ρ/ρ_Vr)</c></para>
    /// </summary>
    /// <param name="flow"><c>Q</c> (m³/s): flow in the line.</param>
    /// <param name="ratedFlow"><c>Q_Vr</c> (m³/s): flow at which the check valve's drop was measured.</param>
    /// <param name="density"><c>ρ</c> (kg/m³): density of the fuel.</param>
    /// <param name="ratedDensity"><c>ρ_Vr</c> (kg/m³): density of the liquid with which the check valve was measured.</param>
    /// <returns><c>ξ_V</c> (1): flow through the check valve by the measured one, for the density.</returns>
    /// <remarks>
    /// <para>Range: turbulent flow through the seat, at any lift.</para>
    /// <para>Outside: nothing is checked; of a thick liquid more pressure is lost.</para>
    /// <example>
    /// <code>
    /// Real result = CheckValveLoss.Share&lt;Real&gt;(flow: 6e-5, ratedFlow: 4e-5, density: 810, ratedDensity: 1000);
    /// // result = 1.35
    /// </code>
    /// </example>
    /// <para>Source: derived: at a lift the flow goes with the root of pressure drop by density, and the lift follows the pressure drop.</para>
    /// </remarks>
    public static T Share<T>(T flow, T ratedFlow, T density, T ratedDensity)
        where T : struct, IReal<T> => flow / ratedFlow * T.Sqrt(density / ratedDensity);

    /// <summary>Pressure drop of a check valve that passes fuel, from its opening pressure and one measured drop.
    /// <para><c>Δp_V = p_Vo + (Δp_Vr − p_Vo) · max(ξ_V; ξ_V²)</c></para>
    /// </summary>
    /// <param name="opening"><c>p_Vo</c> (Pa): opening (cracking) pressure of the check valve.</param>
    /// <param name="ratedLoss"><c>Δp_Vr</c> (Pa): pressure drop of the check valve at its measured flow, opening pressure included.</param>
    /// <param name="share"><c>ξ_V</c> (1): flow through the check valve by the measured one, for the density.</param>
    /// <returns><c>Δp_V</c> (Pa): pressure drop of the check valve.</returns>
    /// <remarks>
    /// <para>Range: any flow forward; below the measured flow the valve may be partly open, and its drop then is between these two laws at most.</para>
    /// <para>Outside: nothing is checked; at no flow it is the opening pressure, which a shut valve holds back at the least.</para>
    /// <example>
    /// <code>
    /// Real result = CheckValveLoss.Loss&lt;Real&gt;(opening: 8e3, ratedLoss: 20e3, share: 1.5);
    /// // result = 35e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: derived: a valve that opens on along its spring loses about in proportion to its flow, one that stands open with the square of it; the greater
    /// of the two is taken.</para>
    /// </remarks>
    public static T Loss<T>(T opening, T ratedLoss, T share)
        where T : struct, IReal<T> => opening + ((ratedLoss - opening) * T.Max(share, share * share));
}
