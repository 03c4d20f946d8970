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

    /// <summary>Heat that stays in the tank of a return system: the work on injected fuel leaves with it, all other work becomes
    /// heat in regulator and lines.
    /// <para><c>Φ = max(0; P_e − Δp_p · Q_f)</c></para>
    /// </summary>
    /// <param name="electrical"><c>P_e</c> (W): electrical power of the pump.</param>
    /// <param name="pressureRise"><c>Δp_p</c> (Pa): pressure rise of the pump.</param>
    /// <param name="injected"><c>Q_f</c> (m³/s): fuel flow of the engine.</param>
    /// <returns><c>Φ</c> (W): heat that stays in the tank.</returns>
    /// <remarks>
    /// <para>Range: steady state; no heat lost by the return line.</para>
    /// <para>Outside: nothing is checked; 0 where the work on injected fuel exceeds the electrical power, which no pump does.</para>
    /// <example>
    /// <code>
    /// Real result = PumpHeat.ToTank&lt;Real&gt;(electrical: 108, pressureRise: 400e3, injected: 5e-5);
    /// // result = 88 W
    /// </code>
    /// </example>
    /// <para>Source: derived from conservation of energy.</para>
    /// </remarks>
    public static T ToTank<T>(T electrical, T pressureRise, T injected)
        where T : struct, IReal<T> => T.Max(0, electrical - (pressureRise * injected));
}
