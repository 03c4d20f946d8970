using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Properties of a blend from those of its parts, taken as an ideal mixture (volumes add).</summary>
public static class FuelMixing
{
    /// <summary>Property of a blend that adds by share: with shares by volume density and thermal expansion, by mass elements and
    /// heating value.
    /// <para><c>y = Σ(x_i · y_i)/Σ(x_i)</c></para>
    /// </summary>
    /// <param name="shares"><c>x_i</c> (any): share of a component; in one unit for all.</param>
    /// <param name="values"><c>y_i</c> (any): property of a component.</param>
    /// <returns><c>y</c> (any): property of the blend.</returns>
    /// <remarks>
    /// <para>Range: ideal mixtures, whose volumes add.</para>
    /// <para>Outside: nothing is checked; shares that add up to 0 give no number; more shares than values throw.</para>
    /// <example>
    /// <code>
    /// Real result = FuelMixing.ByShare&lt;Real&gt;(shares: [0.3, 0.9], values: [700, 800]);
    /// // result = 775
    /// </code>
    /// </example>
    /// <para>Source: definition of an ideal mixture.</para>
    /// </remarks>
    public static T ByShare<T>(ReadOnlySpan<T> shares, ReadOnlySpan<T> values)
        where T : struct, IReal<T>
    {
        T weighted = 0;
        T total = 0;
        for (int part = 0; part < shares.Length; part++)
        {
            weighted += shares[part] * values[part];
            total += shares[part];
        }

        return weighted / total;
    }

    /// <summary>Volume share of the first of two fuels in a blend, from a property that adds by mass.
    /// <para><c>x_A = m_A/ρ_A/(m_A/ρ_A + (1 − m_A)/ρ_B) with m_A = (y − y_B)/(y_A − y_B)</c></para>
    /// </summary>
    /// <param name="value"><c>y</c> (any): property of the blend.</param>
    /// <param name="firstValue"><c>y_A</c> (any): property of the first component.</param>
    /// <param name="firstDensity"><c>ρ_A</c> (kg/m³): density of the first component.</param>
    /// <param name="otherValue"><c>y_B</c> (any): property of the second component.</param>
    /// <param name="otherDensity"><c>ρ_B</c> (kg/m³): density of the second component.</param>
    /// <returns><c>x_A</c> (1): volume share of the first component.</returns>
    /// <remarks>
    /// <para>Range: y between y_B and y_A; densities at one temperature.</para>
    /// <para>Outside: nothing is checked; beyond them the share is below 0 or over 1.</para>
    /// <example>
    /// <code>
    /// Real result = FuelMixing.VolumeShare&lt;Real&gt;(value: 40, firstValue: 44, firstDensity: 740, otherValue: 27, otherDensity: 790);
    /// // result = 0.776266
    /// </code>
    /// </example>
    /// <para>Source: derived from conservation of mass.</para>
    /// </remarks>
    public static T VolumeShare<T>(T value, T firstValue, T firstDensity, T otherValue, T otherDensity)
        where T : struct, IReal<T>
    {
        T mass = (value - otherValue) / (firstValue - otherValue);
        T first = mass / firstDensity;
        return first / (first + ((1.0 - mass) / otherDensity));
    }

    /// <summary>Density of a blend of two liquids whose volumes add, from their shares by mass.
    /// <para><c>ρ_x = 1/(m_A/ρ_A + (1 − m_A)/ρ_B)</c></para>
    /// </summary>
    /// <param name="massShare"><c>m_A</c> (1): mass share of the first component.</param>
    /// <param name="firstDensity"><c>ρ_A</c> (kg/m³): density of the first component.</param>
    /// <param name="otherDensity"><c>ρ_B</c> (kg/m³): density of the second component.</param>
    /// <returns><c>ρ_x</c> (kg/m³): density of the blend.</returns>
    /// <remarks>
    /// <para>Range: 0 ≤ m_A ≤ 1; densities at one temperature. Methanol and water contract: 40 % methanol by mass was measured 3.3 % denser at 20 °C.</para>
    /// <para>Outside: nothing is checked; the formula is continued.</para>
    /// <example>
    /// <code>
    /// Real result = FuelMixing.Density&lt;Real&gt;(massShare: 0.5, firstDensity: 800, otherDensity: 1000);
    /// // result = 888.8889 kg/m³
    /// </code>
    /// </example>
    /// <para>Source: definition of an ideal mixture.</para>
    /// </remarks>
    public static T Density<T>(T massShare, T firstDensity, T otherDensity)
        where T : struct, IReal<T> => 1.0 / ((massShare / firstDensity) + ((1.0 - massShare) / otherDensity));

    /// <summary>Mass share of the first of two liquids, from its share by volume before they are mixed.
    /// <para><c>m_A = x_A · ρ_A/(x_A · ρ_A + (1 − x_A) · ρ_B)</c></para>
    /// </summary>
    /// <param name="volumeShare"><c>x_A</c> (1): volume share of the first component.</param>
    /// <param name="firstDensity"><c>ρ_A</c> (kg/m³): density of the first component.</param>
    /// <param name="otherDensity"><c>ρ_B</c> (kg/m³): density of the second component.</param>
    /// <returns><c>m_A</c> (1): mass share of the first component.</returns>
    /// <remarks>
    /// <para>Range: 0 ≤ x_A ≤ 1, of the volumes that are poured together; densities at one temperature.</para>
    /// <para>Outside: nothing is checked; the formula is continued.</para>
    /// <example>
    /// <code>
    /// Real result = FuelMixing.MassShare&lt;Real&gt;(volumeShare: 0.5, firstDensity: 800, otherDensity: 1000);
    /// // result = 0.4444444
    /// </code>
    /// </example>
    /// <para>Source: derived from conservation of mass.</para>
    /// </remarks>
    public static T MassShare<T>(T volumeShare, T firstDensity, T otherDensity)
        where T : struct, IReal<T>
    {
        T first = volumeShare * firstDensity;
        return first / (first + ((1.0 - volumeShare) * otherDensity));
    }
}
