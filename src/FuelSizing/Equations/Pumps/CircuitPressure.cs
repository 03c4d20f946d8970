using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Pressures round a fuel circuit: what the pumps must add, and what is left in the rail.</summary>
/// <remarks>Gauge pressures, over the air that the tank breathes. A loss holds friction and height together.</remarks>
public static class CircuitPressure
{
    /// <summary>Pressure at the pump inlet, over that in the tank.
    /// <para><c>p_pi = −Δp_suc</c></para>
    /// </summary>
    /// <param name="suctionLoss"><c>Δp_suc</c> (Pa): pressure drop of the suction line, static head included.</param>
    /// <returns><c>p_pi</c> (Pa): pressure at the pump inlet, gauge.</returns>
    /// <remarks>
    /// <para>Range: any.</para>
    /// <para>Outside: nothing is checked; negative below the pressure in the tank.</para>
    /// <example>
    /// <code>
    /// Real result = CircuitPressure.Inlet&lt;Real&gt;(suctionLoss: 5e3);
    /// // result = -5e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: balance of pressures along the line; definition.</para>
    /// </remarks>
    public static T Inlet<T>(T suctionLoss)
        where T : struct, IReal<T> => (T)0 - suctionLoss;

    /// <summary>Pressure at the pump outlet.
    /// <para><c>p_po = p_reg + Δp_sup</c></para>
    /// </summary>
    /// <param name="regulated"><c>p_reg</c> (Pa): pressure where the regulator holds it, gauge.</param>
    /// <param name="supplyLoss"><c>Δp_sup</c> (Pa): pressure drop of the supply line.</param>
    /// <returns><c>p_po</c> (Pa): pressure at the pump outlet, gauge.</returns>
    /// <remarks>
    /// <para>Range: any.</para>
    /// <para>Outside: nothing is checked; the sum is taken as it is.</para>
    /// <example>
    /// <code>
    /// Real result = CircuitPressure.Outlet&lt;Real&gt;(regulated: 300e3, supplyLoss: 20e3);
    /// // result = 320e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: balance of pressures along the line; definition.</para>
    /// </remarks>
    public static T Outlet<T>(T regulated, T supplyLoss)
        where T : struct, IReal<T> => regulated + supplyLoss;

    /// <summary>Pressure drop from the tank to where the regulator holds the pressure.
    /// <para><c>Δp_cir = Δp_suc + Δp_sup</c></para>
    /// </summary>
    /// <param name="suctionLoss"><c>Δp_suc</c> (Pa): pressure drop of the suction line, static head included.</param>
    /// <param name="supplyLoss"><c>Δp_sup</c> (Pa): pressure drop of the supply line.</param>
    /// <returns><c>Δp_cir</c> (Pa): pressure drop from the tank to the regulator.</returns>
    /// <remarks>
    /// <para>Range: any.</para>
    /// <para>Outside: nothing is checked; the sum is taken as it is.</para>
    /// <example>
    /// <code>
    /// Real result = CircuitPressure.Losses&lt;Real&gt;(suctionLoss: 5e3, supplyLoss: 20e3);
    /// // result = 25e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: balance of pressures along the line; definition.</para>
    /// </remarks>
    public static T Losses<T>(T suctionLoss, T supplyLoss)
        where T : struct, IReal<T> => suctionLoss + supplyLoss;

    /// <summary>Pressure rise by the system curve.
    /// <para><c>Δp_sys = Δp_cir + p_reg</c></para>
    /// </summary>
    /// <param name="losses"><c>Δp_cir</c> (Pa): pressure drop from the tank to the regulator.</param>
    /// <param name="regulated"><c>p_reg</c> (Pa): pressure where the regulator holds it, gauge.</param>
    /// <returns><c>Δp_sys</c> (Pa): pressure rise by the system curve.</returns>
    /// <remarks>
    /// <para>Range: any.</para>
    /// <para>Outside: nothing is checked; the sum is taken as it is.</para>
    /// <example>
    /// <code>
    /// Real result = CircuitPressure.RiseRequired&lt;Real&gt;(losses: 25e3, regulated: 300e3);
    /// // result = 325e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: balance of pressures along the line; definition.</para>
    /// </remarks>
    public static T RiseRequired<T>(T losses, T regulated)
        where T : struct, IReal<T> => losses + regulated;

    /// <summary>Pressure that the pump leaves where the regulator would hold it, but is shut.
    /// <para><c>p_reg = Δp_p − Δp_cir</c></para>
    /// </summary>
    /// <param name="pumpRise"><c>Δp_p</c> (Pa): pressure rise of the pump.</param>
    /// <param name="losses"><c>Δp_cir</c> (Pa): pressure drop from the tank to the regulator.</param>
    /// <returns><c>p_reg</c> (Pa): pressure where the regulator holds it, gauge.</returns>
    /// <remarks>
    /// <para>Range: the pump at the flow that is injected.</para>
    /// <para>Outside: nothing is checked; the sum is taken as it is.</para>
    /// <example>
    /// <code>
    /// Real result = CircuitPressure.Remaining&lt;Real&gt;(pumpRise: 280e3, losses: 25e3);
    /// // result = 255e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: balance of pressures along the line; definition.</para>
    /// </remarks>
    public static T Remaining<T>(T pumpRise, T losses)
        where T : struct, IReal<T> => pumpRise - losses;

    /// <summary>Pressure in a rail beyond a regulator at the tank.
    /// <para><c>p_r = p_reg − Δp_sup</c></para>
    /// </summary>
    /// <param name="regulated"><c>p_reg</c> (Pa): pressure where the regulator holds it, gauge.</param>
    /// <param name="supplyLoss"><c>Δp_sup</c> (Pa): pressure drop of the supply line.</param>
    /// <returns><c>p_r</c> (Pa): rail pressure, gauge.</returns>
    /// <remarks>
    /// <para>Range: any.</para>
    /// <para>Outside: nothing is checked; the sum is taken as it is.</para>
    /// <example>
    /// <code>
    /// Real result = CircuitPressure.RailBeyond&lt;Real&gt;(regulated: 400e3, supplyLoss: 12e3);
    /// // result = 388e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: balance of pressures along the line; definition.</para>
    /// </remarks>
    public static T RailBeyond<T>(T regulated, T supplyLoss)
        where T : struct, IReal<T> => regulated - supplyLoss;
}
