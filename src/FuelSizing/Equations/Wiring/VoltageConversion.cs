using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What a voltage converter draws through its feed for the power that it gives to a motor.</summary>
public static class VoltageConversion
{
    /// <summary>Voltage at the converter's input: of the two at which the feed passes that power, the higher.
    /// <para><c>V_i = V_s/2 + √(max(0; V_s²/4 − R · P_o/η_k))</c></para>
    /// </summary>
    /// <param name="supply"><c>V_s</c> (V): supply voltage; at the battery or alternator.</param>
    /// <param name="outputPower"><c>P_o</c> (W): electrical power at the converter's output.</param>
    /// <param name="efficiency"><c>η_k</c> (1): efficiency of the converter, output ÷ input power.</param>
    /// <param name="loop"><c>R</c> (Ω): resistance of the loop or of a part of it.</param>
    /// <returns><c>V_i</c> (V): voltage at the converter's input.</returns>
    /// <remarks>
    /// <para>Range: R · P_o/η_k up to V_s²/4, which is the most that the loop passes on. Follows from V_i = V_s − I · R and η_k · V_i · I = P_o.</para>
    /// <para>Outside: nothing is checked; half of the supply voltage, at which the loop passes as much as it can, which is less than P_o/η_k.</para>
    /// <example>
    /// <code>
    /// Real result = VoltageConversion.InputVoltage&lt;Real&gt;(supply: 13, outputPower: 108, efficiency: 0.9, loop: 0.1);
    /// // result = 12 V
    /// </code>
    /// </example>
    /// <para>Source: conservation of energy and Ohm's law.</para>
    /// </remarks>
    public static T InputVoltage<T>(T supply, T outputPower, T efficiency, T loop)
        where T : struct, IReal<T> =>
        (supply / 2) + T.Sqrt(T.Max(0, (supply * supply / 4) - (loop * outputPower / efficiency)));

    /// <summary>Current that a converter draws.
    /// <para><c>I_i = P_o/(η_k · V_i)</c></para>
    /// </summary>
    /// <param name="outputPower"><c>P_o</c> (W): electrical power at the converter's output.</param>
    /// <param name="efficiency"><c>η_k</c> (1): efficiency of the converter, output ÷ input power.</param>
    /// <param name="inputVoltage"><c>V_i</c> (V): voltage at the converter's input.</param>
    /// <returns><c>I_i</c> (A): current at the converter's input.</returns>
    /// <remarks>
    /// <para>Range: η_k over 0 up to 1; V_i over 0.</para>
    /// <para>Outside: nothing is checked; infinite without an input voltage.</para>
    /// <example>
    /// <code>
    /// Real result = VoltageConversion.InputCurrent&lt;Real&gt;(outputPower: 108, efficiency: 0.9, inputVoltage: 12);
    /// // result = 10 A
    /// </code>
    /// </example>
    /// <para>Source: conservation of energy.</para>
    /// </remarks>
    public static T InputCurrent<T>(T outputPower, T efficiency, T inputVoltage)
        where T : struct, IReal<T> => outputPower / (efficiency * inputVoltage);

    /// <summary>The most power that a converter can give through a feed.
    /// <para><c>P_max = η_k · V_s²/(4 · R)</c></para>
    /// </summary>
    /// <param name="supply"><c>V_s</c> (V): supply voltage; at the battery or alternator.</param>
    /// <param name="efficiency"><c>η_k</c> (1): efficiency of the converter, output ÷ input power.</param>
    /// <param name="loop"><c>R</c> (Ω): resistance of the loop or of a part of it.</param>
    /// <returns><c>P_max</c> (W): the most power at the converter's output.</returns>
    /// <remarks>
    /// <para>Range: R over 0. Reached where the feed takes half of the supply voltage.</para>
    /// <para>Outside: nothing is checked; infinite without resistance.</para>
    /// <example>
    /// <code>
    /// Real result = VoltageConversion.MaximumPower&lt;Real&gt;(supply: 12, efficiency: 0.9, loop: 0.1);
    /// // result = 324 W
    /// </code>
    /// </example>
    /// <para>Source: conservation of energy and Ohm's law; the largest power at which the root in V_i is real.</para>
    /// </remarks>
    public static T MaximumPower<T>(T supply, T efficiency, T loop)
        where T : struct, IReal<T> => efficiency * supply * supply / (4 * loop);
}
