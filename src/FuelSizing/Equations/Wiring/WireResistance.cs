using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Resistance of a conductor to direct current.</summary>
public static class WireResistance
{
    /// <summary><c>θ_20</c> (°C): temperature at which resistivities are stated. IEC 60028.</summary>
    public const double ReferenceCelsius = 20;

    /// <summary>Resistance of a length of wire.
    /// <para><c>R_w = R′ · l_w</c></para>
    /// </summary>
    /// <param name="perLength"><c>R′</c> (Ω/m): resistance per length.</param>
    /// <param name="length"><c>l_w</c> (m): length of the conductor, out and back.</param>
    /// <returns><c>R_w</c> (Ω): resistance of the wire.</returns>
    /// <remarks>
    /// <para>Range: any.</para>
    /// <para>Outside: nothing is checked; the result is in proportion.</para>
    /// <example>
    /// <code>
    /// Real result = WireResistance.Of&lt;Real&gt;(perLength: 5.85e-3, length: 4);
    /// // result = 0.0234 Ω
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static T Of<T>(T perLength, T length)
        where T : struct, IReal<T> => perLength * length;

    /// <summary>Resistance per length of a stranded conductor.
    /// <para><c>R′ = ρ_e · (1 + k_l)/A</c></para>
    /// </summary>
    /// <param name="resistivity"><c>ρ_e</c> (Ω·m): resistivity of the conductor.</param>
    /// <param name="lay"><c>k_l</c> (1): lay, share by which strands are longer than the cable; 0 for solid wire.</param>
    /// <param name="area"><c>A</c> (m²): cross-section of the conductor.</param>
    /// <returns><c>R′</c> (Ω/m): resistance per length.</returns>
    /// <remarks>
    /// <para>Range: direct current; A over 0.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = WireResistance.PerLength&lt;Real&gt;(resistivity: 1.7241e-8, lay: 0.02, area: 3e-6);
    /// // result = 5.86194e-3 Ω/m
    /// </code>
    /// </example>
    /// <para>Source: definition of resistivity.</para>
    /// </remarks>
    public static T PerLength<T>(T resistivity, T lay, T area)
        where T : struct, IReal<T> => resistivity * ((T)1 + lay) / area;

    /// <summary>Resistivity or resistance away from 20 °C.
    /// <para><c>X = X_20 · (1 + α_e · (θ − θ_20))</c></para>
    /// </summary>
    /// <param name="at20"><c>X_20</c> (any): resistivity or resistance at 20 °C.</param>
    /// <param name="coefficient"><c>α_e</c> (1/K): temperature coefficient of resistance.</param>
    /// <param name="celsius"><c>θ</c> (°C): temperature of the conductor.</param>
    /// <returns><c>X</c> (any): resistivity or resistance at a temperature.</returns>
    /// <remarks>
    /// <para>Range: −40 to 150 °C for copper, where the line holds within 1 %.</para>
    /// <para>Outside: nothing is checked; the line is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = WireResistance.AtTemperature&lt;Real&gt;(at20: 0.01, coefficient: 0.00393, celsius: 60);
    /// // result = 0.011572
    /// </code>
    /// </example>
    /// <para>Source: IEC 60028 (annealed copper: 0.00393 1/K).</para>
    /// </remarks>
    public static T AtTemperature<T>(T at20, T coefficient, T celsius)
        where T : struct, IReal<T> => at20 * ((T)1 + (coefficient * (celsius - ReferenceCelsius)));

    /// <summary>Smallest cross-section that keeps a voltage drop.
    /// <para><c>A = ρ_e · (1 + k_l) · l_w · I/(ΔV − I · R_c)</c></para>
    /// </summary>
    /// <param name="resistivity"><c>ρ_e</c> (Ω·m): resistivity of the conductor; at its temperature.</param>
    /// <param name="lay"><c>k_l</c> (1): lay, share by which strands are longer than the cable.</param>
    /// <param name="length"><c>l_w</c> (m): length of the conductor, out and back.</param>
    /// <param name="current"><c>I</c> (A): current.</param>
    /// <param name="allowedDrop"><c>ΔV</c> (V): voltage drop; allowed over wire and contacts.</param>
    /// <param name="contacts"><c>R_c</c> (Ω): resistance of the contacts.</param>
    /// <returns><c>A</c> (m²): cross-section of the conductor.</returns>
    /// <remarks>
    /// <para>Range: ΔV over I · R_c.</para>
    /// <para>Outside: nothing is checked; infinite or negative where the contacts alone take the drop.</para>
    /// <example>
    /// <code>
    /// Real result = WireResistance.SmallestArea&lt;Real&gt;(resistivity: 1.7241e-8, lay: 0.02, length: 6, current: 12, allowedDrop: 0.5, contacts: 0.01);
    /// // result = 3.332050e-6 m²
    /// </code>
    /// </example>
    /// <para>Source: derived from Ohm's law.</para>
    /// </remarks>
    public static T SmallestArea<T>(T resistivity, T lay, T length, T current, T allowedDrop, T contacts)
        where T : struct, IReal<T> =>
        PerLength(resistivity, lay, 1) * length * current / (allowedDrop - VoltageDrop.Of(current, contacts));
}
