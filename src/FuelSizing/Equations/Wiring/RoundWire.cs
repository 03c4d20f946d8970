using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Area and diameter of a solid round wire.</summary>
public static class RoundWire
{
    /// <summary>Cross-section of a solid round wire.
    /// <para><c>A = π · d_w²/4</c></para>
    /// </summary>
    /// <param name="diameter"><c>d_w</c> (m): diameter of a solid round wire.</param>
    /// <returns><c>A</c> (m²): cross-section of the conductor.</returns>
    /// <remarks>
    /// <para>Range: any.</para>
    /// <para>Outside: nothing is checked; the formula is evaluated as it is.</para>
    /// <example>
    /// <code>
    /// Real result = RoundWire.Area&lt;Real&gt;(diameter: 2e-3);
    /// // result = 3.141593e-6 m²
    /// </code>
    /// </example>
    /// <para>Source: geometry.</para>
    /// </remarks>
    public static T Area<T>(T diameter)
        where T : struct, IReal<T> => (T)(Math.PI / 4) * diameter * diameter;

    /// <summary>Diameter of a solid round wire; the inverse of Area.
    /// <para><c>d_w = √(4 · A/π)</c></para>
    /// </summary>
    /// <param name="area"><c>A</c> (m²): cross-section of the conductor.</param>
    /// <returns><c>d_w</c> (m): diameter of a solid round wire.</returns>
    /// <remarks>
    /// <para>Range: A of 0 or more.</para>
    /// <para>Outside: nothing is checked; a negative area gives no number.</para>
    /// <example>
    /// <code>
    /// Real result = RoundWire.Diameter&lt;Real&gt;(area: 3e-6);
    /// // result = 1.954410e-3 m
    /// </code>
    /// </example>
    /// <para>Source: geometry.</para>
    /// </remarks>
    public static T Diameter<T>(T area)
        where T : struct, IReal<T> => T.Sqrt((T)(4 / Math.PI) * area);
}
