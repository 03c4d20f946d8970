using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The American wire gauge, a geometric progression of diameters (ASTM B258).</summary>
public static class AmericanWireGauge
{
    /// <summary>Diameter of a solid round wire of an AWG size.
    /// <para><c>d_w = 0.000127 · 92^((36 − n_AWG)/39)</c></para>
    /// </summary>
    /// <param name="gauge"><c>n_AWG</c> (1): AWG size; 1/0, 2/0, 3/0 and 4/0 are 0, −1, −2 and −3.</param>
    /// <returns><c>d_w</c> (m): diameter of a solid round wire.</returns>
    /// <remarks>
    /// <para>Range: AWG 36 to 4/0, −3 ≤ n_AWG ≤ 36.</para>
    /// <para>Outside: nothing is checked; the same progression is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = AmericanWireGauge.Diameter&lt;Real&gt;(gauge: 10);
    /// // result = 2.588187e-3 m
    /// </code>
    /// </example>
    /// <para>Source: ASTM B258, standard nominal diameters; from memory.</para>
    /// </remarks>
    public static T Diameter<T>(T gauge)
        where T : struct, IReal<T> => (T)0.127e-3 * T.Power(92, ((T)36 - gauge) / 39);
}
