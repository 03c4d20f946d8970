using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The affinity laws: a pump's curve carried from the voltage at which it was measured to another.</summary>
/// <remarks>
/// Speed is taken as proportional to voltage; flow goes with speed, pressure and torque (and so current) with its square.
/// An estimate: friction and leakage do not scale so.
/// </remarks>
public static class PumpScaling
{
    /// <summary>Speed ratio of a pump at another voltage, speed taken as proportional to voltage.
    /// <para><c>s = V_m/V_0</c></para>
    /// </summary>
    /// <param name="voltage"><c>V_m</c> (V): voltage at the motor.</param>
    /// <param name="measuredVoltage"><c>V_0</c> (V): voltage at which the pump curve was measured.</param>
    /// <returns><c>s</c> (1): speed ratio of the pump.</returns>
    /// <remarks>
    /// <para>Range: near the voltage of the measured curve, 0.8 to 1.2; an estimate, since friction and winding resistance do not
    /// scale so.</para>
    /// <para>Outside: nothing is checked; the proportion is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = PumpScaling.SpeedRatio&lt;Real&gt;(voltage: 12, measuredVoltage: 15);
    /// // result = 0.8
    /// </code>
    /// </example>
    /// <para>Source: common practice, no source.</para>
    /// </remarks>
    public static T SpeedRatio<T>(T voltage, T measuredVoltage)
        where T : struct, IReal<T> => voltage / measuredVoltage;

    /// <summary>Pressure rise of the measured curve that answers to one at another speed; the inverse of Pressure.
    /// <para><c>Δp_p0 = Δp_p/s²</c></para>
    /// </summary>
    /// <param name="pressure"><c>Δp_p</c> (Pa): pressure rise of the pump.</param>
    /// <param name="speedRatio"><c>s</c> (1): speed ratio of the pump.</param>
    /// <returns><c>Δp_p0</c> (Pa): pressure rise of the measured pump curve.</returns>
    /// <remarks>
    /// <para>Range: s over 0, 0.8 to 1.2.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = PumpScaling.MeasuredPressure&lt;Real&gt;(pressure: 320e3, speedRatio: 0.8);
    /// // result = 500e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: affinity laws.</para>
    /// </remarks>
    public static T MeasuredPressure<T>(T pressure, T speedRatio)
        where T : struct, IReal<T> => pressure / (speedRatio * speedRatio);

    /// <summary>Pressure rise at another speed.
    /// <para><c>Δp_p = Δp_p0 · s²</c></para>
    /// </summary>
    /// <param name="measuredPressure"><c>Δp_p0</c> (Pa): pressure rise of the measured pump curve.</param>
    /// <param name="speedRatio"><c>s</c> (1): speed ratio of the pump.</param>
    /// <returns><c>Δp_p</c> (Pa): pressure rise of the pump.</returns>
    /// <remarks>
    /// <para>Range: s 0.8 to 1.2; an estimate, since leakage does not scale so.</para>
    /// <para>Outside: nothing is checked; the law is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = PumpScaling.Pressure&lt;Real&gt;(measuredPressure: 500e3, speedRatio: 0.8);
    /// // result = 320e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: affinity laws.</para>
    /// </remarks>
    public static T Pressure<T>(T measuredPressure, T speedRatio)
        where T : struct, IReal<T> => measuredPressure * speedRatio * speedRatio;

    /// <summary>Flow at another speed.
    /// <para><c>Q_p = Q_p0 · s</c></para>
    /// </summary>
    /// <param name="measuredFlow"><c>Q_p0</c> (m³/s): flow of the measured pump curve.</param>
    /// <param name="speedRatio"><c>s</c> (1): speed ratio of the pump.</param>
    /// <returns><c>Q_p</c> (m³/s): flow that the pump delivers.</returns>
    /// <remarks>
    /// <para>Range: s 0.8 to 1.2; an estimate, since leakage does not scale so.</para>
    /// <para>Outside: nothing is checked; the law is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = PumpScaling.Flow&lt;Real&gt;(measuredFlow: 5e-5, speedRatio: 0.8);
    /// // result = 4e-5 m³/s
    /// </code>
    /// </example>
    /// <para>Source: affinity laws.</para>
    /// </remarks>
    public static T Flow<T>(T measuredFlow, T speedRatio)
        where T : struct, IReal<T> => measuredFlow * speedRatio;

    /// <summary>Current at another speed, torque and so current with the square of speed.
    /// <para><c>I = I_0 · s²</c></para>
    /// </summary>
    /// <param name="measuredCurrent"><c>I_0</c> (A): current of the measured pump curve.</param>
    /// <param name="speedRatio"><c>s</c> (1): speed ratio of the pump.</param>
    /// <returns><c>I</c> (A): current.</returns>
    /// <remarks>
    /// <para>Range: s 0.8 to 1.2; an estimate, since friction does not scale so.</para>
    /// <para>Outside: nothing is checked; the law is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = PumpScaling.Current&lt;Real&gt;(measuredCurrent: 10, speedRatio: 0.8);
    /// // result = 6.4 A
    /// </code>
    /// </example>
    /// <para>Source: affinity laws.</para>
    /// </remarks>
    public static T Current<T>(T measuredCurrent, T speedRatio)
        where T : struct, IReal<T> => measuredCurrent * speedRatio * speedRatio;
}
