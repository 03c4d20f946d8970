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
}
