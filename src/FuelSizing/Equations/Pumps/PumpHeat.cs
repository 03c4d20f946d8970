using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Where the pump's electrical power goes.</summary>
public static class PumpHeat
{
    /// <summary>Electrical power of a pump.
    /// <para><c>P_e = V_m · I</c></para>
    /// </summary>
    /// <param name="voltage"><c>V_m</c> (V): voltage at the motor.</param>
    /// <param name="current"><c>I</c> (A): current.</param>
    /// <returns><c>P_e</c> (W): electrical power of the pump.</returns>
    /// <remarks>
    /// <para>Range: direct current.</para>
    /// <para>Outside: nothing is checked; with a pulsed supply the product of means is not the mean power.</para>
    /// <example>
    /// <code>
    /// Real result = PumpHeat.Electrical&lt;Real&gt;(voltage: 13.5, current: 8);
    /// // result = 108 W
    /// </code>
    /// </example>
    /// <para>Source: definition of electrical power.</para>
    /// </remarks>
    public static T Electrical<T>(T voltage, T current)
        where T : struct, IReal<T> => voltage * current;

    /// <summary>Heat that comes back to the tank: the pumped fuel takes up the pump's losses, the returned fuel its pressure's work too, as heat in
    /// regulator and lines; the injected share of all that goes with the fuel that is burnt.
    /// <para><c>Φ = P_e · Q_ret/Q_p</c></para>
    /// </summary>
    /// <param name="electrical"><c>P_e</c> (W): electrical power of the pump.</param>
    /// <param name="returned"><c>Q_ret</c> (m³/s): flow that returns to the tank.</param>
    /// <param name="pumped"><c>Q_p</c> (m³/s): flow that the pump delivers.</param>
    /// <returns><c>Φ</c> (W): heat that comes back to the tank.</returns>
    /// <remarks>
    /// <para>Range: steady state, 0 ≤ Q_ret ≤ Q_p; all the motor's losses go into the fuel that passes it, none is picked up at the engine and
    /// none is lost by the lines.</para>
    /// <para>Outside: nothing is checked; not a number where nothing is pumped.</para>
    /// <example>
    /// <code>
    /// Real result = PumpHeat.ToTank&lt;Real&gt;(electrical: 108, returned: 1.5e-5, pumped: 6e-5);
    /// // result = 27 W
    /// </code>
    /// </example>
    /// <para>Source: derived from conservation of energy.</para>
    /// </remarks>
    public static T ToTank<T>(T electrical, T returned, T pumped)
        where T : struct, IReal<T> => electrical * returned / pumped;

    /// <summary>Heat that comes back to the tank where the fuel takes up heat at the rail as well.
    /// <para><c>Φ = (P_e + Φ_r) · Q_ret/Q_p</c></para>
    /// </summary>
    /// <param name="electrical"><c>P_e</c> (W): electrical power of the pump.</param>
    /// <param name="pickup"><c>Φ_r</c> (W): heat that the fuel takes up at the rail; 0 where what returns does not pass the rail.</param>
    /// <param name="returned"><c>Q_ret</c> (m³/s): flow that returns to the tank.</param>
    /// <param name="pumped"><c>Q_p</c> (m³/s): flow that the pump delivers.</param>
    /// <returns><c>Φ</c> (W): heat that comes back to the tank.</returns>
    /// <remarks>
    /// <para>Range: steady state, 0 ≤ Q_ret ≤ Q_p; all the motor's losses go into the fuel that passes it, and none is lost by the lines.</para>
    /// <para>Outside: nothing is checked; not a number where nothing is pumped.</para>
    /// <example>
    /// <code>
    /// Real result = PumpHeat.ToTankFromRail&lt;Real&gt;(electrical: 108, pickup: 60, returned: 1.5e-5, pumped: 6e-5);
    /// // result = 42 W
    /// </code>
    /// </example>
    /// <para>Source: derived from conservation of energy.</para>
    /// </remarks>
    public static T ToTankFromRail<T>(T electrical, T pickup, T returned, T pumped)
        where T : struct, IReal<T> => (electrical + pickup) * returned / pumped;

    /// <summary>Heat that comes back to the main tank from a surge tank that overflows: what the lift pump and the main circuit bring into it, by the share of
    /// what is lifted that overflows.
    /// <para><c>Φ = (P_l + Φ_s) · Q_ov/Q_lift</c></para>
    /// </summary>
    /// <param name="lift"><c>P_l</c> (W): electrical power of the lift pump.</param>
    /// <param name="surge"><c>Φ_s</c> (W): heat that the main circuit's return brings into the surge tank.</param>
    /// <param name="overflow"><c>Q_ov</c> (m³/s): flow that overflows, back to the main tank.</param>
    /// <param name="lifted"><c>Q_lift</c> (m³/s): flow that the lift pump delivers into the tank.</param>
    /// <returns><c>Φ</c> (W): heat that comes back to the tank.</returns>
    /// <remarks>
    /// <para>Range: steady state, a surge tank of one temperature; 0 ≤ Q_ov ≤ Q_lift.</para>
    /// <para>Outside: nothing is checked; not a number where nothing is lifted.</para>
    /// <example>
    /// <code>
    /// Real result = PumpHeat.ToTankBySurgeTank&lt;Real&gt;(lift: 40, surge: 60, overflow: 1e-5, lifted: 4e-5);
    /// // result = 25 W
    /// </code>
    /// </example>
    /// <para>Source: derived from conservation of energy.</para>
    /// </remarks>
    public static T ToTankBySurgeTank<T>(T lift, T surge, T overflow, T lifted)
        where T : struct, IReal<T> => (lift + surge) * overflow / lifted;
}
