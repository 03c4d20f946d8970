using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>A displacement pump's flow carried from the voltage at which it was measured to another, against the same rise.</summary>
/// <remarks>
/// Displaced flow goes with speed; what leaks back goes with pressure and not with speed. The torque of such a pump, and so its current, goes with
/// pressure: against the same rise it stays the same, and the back-EMF changes by all that the voltage changes by.
/// </remarks>
public static class DisplacementPumpFlow
{
    /// <summary>Flow of a displacement pump at another voltage.
    /// <para><c>Q_p = max(0; Q_0 + Q_00 · (V_m − V_0)/(V_0 − U_w00))</c></para>
    /// </summary>
    /// <param name="measured"><c>Q_0</c> (m³/s): measured flow against this rise.</param>
    /// <param name="free"><c>Q_00</c> (m³/s): measured flow against no rise, where nothing leaks.</param>
    /// <param name="voltage"><c>V_m</c> (V): voltage at the motor.</param>
    /// <param name="measuredVoltage"><c>V_0</c> (V): voltage at which the pump curve was measured.</param>
    /// <param name="freeWindingLoss"><c>U_w00</c> (V): voltage that the winding took against no rise, I · R.</param>
    /// <returns><c>Q_p</c> (m³/s): flow that the pump delivers.</returns>
    /// <remarks>
    /// <para>Range: positive displacement (roller, gear, gerotor), U_w00 below V_0; leakage that goes with pressure alone.</para>
    /// <para>Outside: nothing is checked; 0 where all that is displaced leaks back.</para>
    /// <example>
    /// <code>
    /// Real result = DisplacementPumpFlow.AtVoltage&lt;Real&gt;(measured: 4e-5, free: 6e-5, voltage: 11, measuredVoltage: 13.5, freeWindingLoss: 1);
    /// // result = 2.8e-5 m³/s
    /// </code>
    /// </example>
    /// <para>Source: derived from displaced flow less leakage, Q = D n − Q_l(Δp), and V − I R = k_e n (any textbooks on fluid power and on
    /// electrical machines).</para>
    /// </remarks>
    public static T AtVoltage<T>(T measured, T free, T voltage, T measuredVoltage, T freeWindingLoss)
        where T : struct, IReal<T> => T.Max(0, measured + (free * (voltage - measuredVoltage) / (measuredVoltage - freeWindingLoss)));
}
