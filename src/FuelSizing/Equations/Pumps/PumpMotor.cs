using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>How fast a pump's motor turns at a voltage at which it was not measured.</summary>
public static class PumpMotor
{
    /// <summary>Speed ratio of a direct-current motor at another voltage and the same current, by its back-EMF.
    /// <para><c>s = (V_m/V_0 − k_V)/(1 − k_V)</c></para>
    /// </summary>
    /// <param name="voltage"><c>V_m</c> (V): voltage at the motor.</param>
    /// <param name="measuredVoltage"><c>V_0</c> (V): voltage at which the pump curve was measured.</param>
    /// <param name="resistiveShare"><c>k_V</c> (1): share of the measured voltage that the winding takes.</param>
    /// <returns><c>s</c> (1): speed ratio of the pump.</returns>
    /// <remarks>
    /// <para>Range: 0 ≤ k_V &lt; 1. With k_V = 0 speed goes with voltage, the least change of speed that a motor may show; a pump whose current
    /// rises with speed changes its speed by less than a given k_V says.</para>
    /// <para>Outside: nothing is checked; below V_m/V_0 = k_V the motor would turn backwards.</para>
    /// <example>
    /// <code>
    /// Real result = PumpMotor.SpeedRatio&lt;Real&gt;(voltage: 12, measuredVoltage: 15, resistiveShare: 0.5);
    /// // result = 0.6
    /// </code>
    /// </example>
    /// <para>Source: back-EMF of a motor in proportion to its speed, V − I R = k_e n (any textbook on electrical machines).</para>
    /// </remarks>
    public static T SpeedRatio<T>(T voltage, T measuredVoltage, T resistiveShare)
        where T : struct, IReal<T> => ((voltage / measuredVoltage) - resistiveShare) / (1 - resistiveShare);

    /// <summary>Speed ratio of a direct-current motor at another voltage and another current, by its back-EMF.
    /// <para><c>s = (V_m − U_w)/(V_0 − U_w0)</c></para>
    /// </summary>
    /// <param name="voltage"><c>V_m</c> (V): voltage at the motor.</param>
    /// <param name="windingLoss"><c>U_w</c> (V): voltage that the winding takes at the present current, I · R.</param>
    /// <param name="measuredVoltage"><c>V_0</c> (V): voltage at which the pump curve was measured.</param>
    /// <param name="measuredWindingLoss"><c>U_w0</c> (V): voltage that the winding took when the curve was measured.</param>
    /// <returns><c>s</c> (1): speed ratio of the pump.</returns>
    /// <remarks>
    /// <para>Range: U_w0 below V_0; permanent magnets, brushes counted with the winding.</para>
    /// <para>Outside: nothing is checked; with U_w over V_m the motor would turn backwards.</para>
    /// <example>
    /// <code>
    /// Real result = PumpMotor.SpeedRatioByEmf&lt;Real&gt;(voltage: 11, windingLoss: 1, measuredVoltage: 13.5, measuredWindingLoss: 1);
    /// // result = 0.8
    /// </code>
    /// </example>
    /// <para>Source: back-EMF of a motor in proportion to its speed, V − I R = k_e n (any textbook on electrical machines).</para>
    /// </remarks>
    public static T SpeedRatioByEmf<T>(T voltage, T windingLoss, T measuredVoltage, T measuredWindingLoss)
        where T : struct, IReal<T> => (voltage - windingLoss) / (measuredVoltage - measuredWindingLoss);
}
