using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What a feed circuit takes of the supply, and the heat it makes of it.</summary>
public static class VoltageDrop
{
    /// <summary>Resistance of a feed circuit: wire and contacts in series.
    /// <para><c>R = R_w + R_c</c></para>
    /// </summary>
    /// <param name="wire"><c>R_w</c> (Ω): resistance of the wire; out and back.</param>
    /// <param name="contacts"><c>R_c</c> (Ω): resistance of the contacts.</param>
    /// <returns><c>R</c> (Ω): resistance of the loop or of a part of it.</returns>
    /// <remarks>
    /// <para>Range: resistances of 0 or more.</para>
    /// <para>Outside: nothing is checked; the sum is taken as it is.</para>
    /// <example>
    /// <code>
    /// Real result = VoltageDrop.Loop&lt;Real&gt;(wire: 0.03, contacts: 0.02);
    /// // result = 0.05 Ω
    /// </code>
    /// </example>
    /// <para>Source: Kirchhoff's voltage law.</para>
    /// </remarks>
    public static T Loop<T>(T wire, T contacts)
        where T : struct, IReal<T> => wire + contacts;

    /// <summary>Voltage drop over a resistance.
    /// <para><c>ΔV = I · R</c></para>
    /// </summary>
    /// <param name="current"><c>I</c> (A): current.</param>
    /// <param name="resistance"><c>R</c> (Ω): resistance of the loop or of a part of it.</param>
    /// <returns><c>ΔV</c> (V): voltage drop.</returns>
    /// <remarks>
    /// <para>Range: direct current.</para>
    /// <para>Outside: nothing is checked; the result is in proportion.</para>
    /// <example>
    /// <code>
    /// Real result = VoltageDrop.Of&lt;Real&gt;(current: 8, resistance: 0.05);
    /// // result = 0.4 V
    /// </code>
    /// </example>
    /// <para>Source: Ohm's law.</para>
    /// </remarks>
    public static T Of<T>(T current, T resistance)
        where T : struct, IReal<T> => current * resistance;

    /// <summary>Voltage that is left at the motor.
    /// <para><c>V_m = V_s − I · R</c></para>
    /// </summary>
    /// <param name="supply"><c>V_s</c> (V): supply voltage; at the battery or alternator.</param>
    /// <param name="current"><c>I</c> (A): current.</param>
    /// <param name="loop"><c>R</c> (Ω): resistance of the loop or of a part of it.</param>
    /// <returns><c>V_m</c> (V): voltage at the motor.</returns>
    /// <remarks>
    /// <para>Range: I below V_s/R.</para>
    /// <para>Outside: nothing is checked; negative where the loop cannot carry that current.</para>
    /// <example>
    /// <code>
    /// Real result = VoltageDrop.AtMotor&lt;Real&gt;(supply: 13.5, current: 8, loop: 0.05);
    /// // result = 13.1 V
    /// </code>
    /// </example>
    /// <para>Source: Ohm's and Kirchhoff's laws.</para>
    /// </remarks>
    public static T AtMotor<T>(T supply, T current, T loop)
        where T : struct, IReal<T> => supply - Of(current, loop);

    /// <summary>Heat in a resistance; with a resistance per length, heat per length.
    /// <para><c>P_R = I² · R</c></para>
    /// </summary>
    /// <param name="current"><c>I</c> (A): current.</param>
    /// <param name="resistance"><c>R</c> (Ω): resistance of the loop or of a part of it.</param>
    /// <returns><c>P_R</c> (W): heat in a resistance.</returns>
    /// <remarks>
    /// <para>Range: direct current.</para>
    /// <para>Outside: nothing is checked; with a pulsed current the mean of I² counts, not the square of the mean.</para>
    /// <example>
    /// <code>
    /// Real result = VoltageDrop.Heat&lt;Real&gt;(current: 8, resistance: 0.05);
    /// // result = 3.2 W
    /// </code>
    /// </example>
    /// <para>Source: Joule's law.</para>
    /// </remarks>
    public static T Heat<T>(T current, T resistance)
        where T : struct, IReal<T> => current * current * resistance;
}
