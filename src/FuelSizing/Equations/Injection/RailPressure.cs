using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The pressure a regulator sets in the rail, and what of it the injector sees.</summary>
public static class RailPressure
{
    /// <summary>Rail pressure that a regulator sets. Fixed: G_0 = G = 0; manifold-referenced: G_0 = G = 1; rising rate: G over 1
    /// above its onset.
    /// <para><c>p_s = min(p_max; p_base + G_0 · min(p_b; p_on) + G · max(0; p_b − p_on))</c></para>
    /// </summary>
    /// <param name="baseGauge"><c>p_base</c> (Pa): base pressure of the regulator, gauge; with the manifold at ambient pressure.</param>
    /// <param name="gainBelowOnset"><c>G_0</c> (1): gain below the onset.</param>
    /// <param name="gain"><c>G</c> (1): gain above the onset.</param>
    /// <param name="onset"><c>p_on</c> (Pa): onset of the rising rate, gauge.</param>
    /// <param name="ceiling"><c>p_max</c> (Pa): ceiling of the regulator, gauge.</param>
    /// <param name="boost"><c>p_b</c> (Pa): boost, gauge pressure in the manifold; negative under vacuum.</param>
    /// <returns><c>p_s</c> (Pa): rail pressure that the regulator sets, gauge.</returns>
    /// <remarks>
    /// <para>Range: a regulator that controls: enough flow, no back-pressure in the return line.</para>
    /// <para>Outside: nothing is checked; a sum below 0 is not cut off.</para>
    /// <example>
    /// <code>
    /// Real result = RailPressure.Set&lt;Real&gt;(baseGauge: 300e3, gainBelowOnset: 0, gain: 6, onset: 0, ceiling: 900e3, boost: 55e3);
    /// // result = 630e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: definition of the gain over base pressure; common practice, no source.</para>
    /// </remarks>
    public static T Set<T>(T baseGauge, T gainBelowOnset, T gain, T onset, T ceiling, T boost)
        where T : struct, IReal<T> =>
        T.Min(ceiling, baseGauge + (gainBelowOnset * T.Min(boost, onset)) + (gain * T.Max(0, boost - onset)));

    /// <summary>Rail pressure of two regulators in series on the return line: the higher setting governs.
    /// <para><c>p_s = max(p_s1; p_s2)</c></para>
    /// </summary>
    /// <param name="first"><c>p_s1</c> (Pa): set pressure of the first regulator, gauge.</param>
    /// <param name="second"><c>p_s2</c> (Pa): set pressure of the second regulator, gauge.</param>
    /// <returns><c>p_s</c> (Pa): rail pressure that the regulator sets, gauge.</returns>
    /// <remarks>
    /// <para>Range: both with enough flow to control.</para>
    /// <para>Outside: nothing is checked; the greater is taken.</para>
    /// <example>
    /// <code>
    /// Real result = RailPressure.InSeries&lt;Real&gt;(first: 380e3, second: 480e3);
    /// // result = 480e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: derived: the flow passes both, and each closes until its own setting is reached.</para>
    /// </remarks>
    public static T InSeries<T>(T first, T second)
        where T : struct, IReal<T> => T.Max(first, second);

    /// <summary>How far the pressure that a regulator holds is over its setting, by the flow that returns through it.
    /// <para><c>Δp_flow = m_ret · (Q_ret − Q_set)</c></para>
    /// </summary>
    /// <param name="slope"><c>m_ret</c> (Pa·s/m³): rise of the pressure held for each 1 of returned flow.</param>
    /// <param name="returned"><c>Q_ret</c> (m³/s): flow that returns to the tank.</param>
    /// <param name="statedAt"><c>Q_set</c> (m³/s): returned flow at which the setting was found.</param>
    /// <returns><c>Δp_flow</c> (Pa): pressure held over the setting, by the returned flow.</returns>
    /// <remarks>
    /// <para>Range: a seat that lifts little for its width, as of a spring-loaded valve within its range of flow.</para>
    /// <para>Outside: nothing is checked; negative below the flow at which the setting was found.</para>
    /// <example>
    /// <code>
    /// Real result = RailPressure.FlowRise&lt;Real&gt;(slope: 2e8, returned: 4e-5, statedAt: 1e-5);
    /// // result = 6e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: derived: the spring's force grows in proportion to the lift, and the flow with it.</para>
    /// </remarks>
    public static T FlowRise<T>(T slope, T returned, T statedAt)
        where T : struct, IReal<T> => slope * (returned - statedAt);

    /// <summary>Pressure that a regulator holds: its setting, what the returned flow adds, and what the pressure at its outlet does.
    /// <para><c>p_reg = p_s + Δp_flow + σ_ret · p_ret</c></para>
    /// </summary>
    /// <param name="set"><c>p_s</c> (Pa): rail pressure that the regulator sets, gauge.</param>
    /// <param name="flowRise"><c>Δp_flow</c> (Pa): pressure held over the setting, by the returned flow.</param>
    /// <param name="outletShare"><c>σ_ret</c> (1): rise of the pressure held for each 1 of pressure at the outlet.</param>
    /// <param name="outlet"><c>p_ret</c> (Pa): pressure at the inlet of the return line, gauge.</param>
    /// <returns><c>p_reg</c> (Pa): pressure where the regulator holds it, gauge.</returns>
    /// <remarks>
    /// <para>Range: a regulator that passes fuel; the setting found with the outlet at ambient pressure.</para>
    /// <para>Outside: nothing is checked; the sum is taken as it is, also below the pressure at the outlet.</para>
    /// <example>
    /// <code>
    /// Real result = RailPressure.Held&lt;Real&gt;(set: 300e3, flowRise: 6e3, outletShare: 0.1, outlet: 20e3);
    /// // result = 308e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: derived: balance of forces on the moving part. With the spring's side under the outlet's pressure the share is seat area by diaphragm area; with
    /// a diaphragm that closes the end of the outlet's pipe it is negative, seat area by the rest of the diaphragm. Of relief valves the same two cases, bonnet vented to
    /// the discharge and to the atmosphere: API RP 520, in Ludwig, Applied Process Design, vol. 1, 3rd ed., fig. 7-6.</para>
    /// </remarks>
    public static T Held<T>(T set, T flowRise, T outletShare, T outlet)
        where T : struct, IReal<T> => set + flowRise + (outletShare * outlet);

    /// <summary>Differential pressure across the injector.
    /// <para><c>Δp = p_r + p_0 − p_3</c></para>
    /// </summary>
    /// <param name="railGauge"><c>p_r</c> (Pa): rail pressure, gauge.</param>
    /// <param name="ambient"><c>p_0</c> (Pa): ambient pressure, absolute.</param>
    /// <param name="manifoldAbsolute"><c>p_3</c> (Pa): pressure in the manifold, absolute.</param>
    /// <returns><c>Δp</c> (Pa): differential pressure across the injector.</returns>
    /// <remarks>
    /// <para>Range: any.</para>
    /// <para>Outside: nothing is checked; negative where the manifold pressure is above the rail pressure: no fuel flows.</para>
    /// <example>
    /// <code>
    /// Real result = RailPressure.Differential&lt;Real&gt;(railGauge: 360e3, ambient: 95e3, manifoldAbsolute: 155e3);
    /// // result = 300e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static T Differential<T>(T railGauge, T ambient, T manifoldAbsolute)
        where T : struct, IReal<T> => railGauge + ambient - manifoldAbsolute;
}
