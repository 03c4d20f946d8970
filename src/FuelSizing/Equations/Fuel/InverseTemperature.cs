using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The two-parameter law ln y = A + B/T through two points (Andrade for viscosity, Clausius–Clapeyron for vapour).</summary>
public static class InverseTemperature
{
    /// <summary>Slope of ln u against 1/T through two points (Andrade for viscosity, Clausius–Clapeyron for vapour pressure).
    /// <para><c>B_u = ln(u_a/u_b)/(1/T_a − 1/T_b)</c></para>
    /// </summary>
    /// <param name="t1"><c>T_a</c> (K): first temperature of a two-point law.</param>
    /// <param name="y1"><c>u_a</c> (any): property at the first temperature.</param>
    /// <param name="t2"><c>T_b</c> (K): second temperature of a two-point law.</param>
    /// <param name="y2"><c>u_b</c> (any): property at the second temperature.</param>
    /// <returns><c>B_u</c> (K): slope of ln u = A_u + B_u/T.</returns>
    /// <remarks>
    /// <para>Range: u over 0, two different temperatures.</para>
    /// <para>Outside: nothing is checked; one temperature given twice gives no number.</para>
    /// <example>
    /// <code>
    /// Real result = InverseTemperature.Slope&lt;Real&gt;(t1: 300, y1: 4, t2: 320, y2: 2);
    /// // result = 3327.106 K
    /// </code>
    /// </example>
    /// <para>Source: derived; E. N. da C. Andrade, Nature 125 (1930) 309, for viscosity.</para>
    /// </remarks>
    public static T Slope<T>(T t1, T y1, T t2, T y2)
        where T : struct, IReal<T> => T.Log(y1 / y2) / (((T)1 / t1) - ((T)1 / t2));

    /// <summary>Intercept of ln u against 1/T through a point.
    /// <para><c>A_u = ln(u_a) − B_u/T_a</c></para>
    /// </summary>
    /// <param name="t1"><c>T_a</c> (K): first temperature of a two-point law.</param>
    /// <param name="y1"><c>u_a</c> (any): property at the first temperature.</param>
    /// <param name="slope"><c>B_u</c> (K): slope of ln u = A_u + B_u/T.</param>
    /// <returns><c>A_u</c> (ln of the unit): intercept of ln u = A_u + B_u/T.</returns>
    /// <remarks>
    /// <para>Range: u over 0, T over 0.</para>
    /// <para>Outside: nothing is checked; u of 0 or less gives no number.</para>
    /// <example>
    /// <code>
    /// Real result = InverseTemperature.Intercept&lt;Real&gt;(t1: 300, y1: 5, slope: 1200);
    /// // result = -2.390562
    /// </code>
    /// </example>
    /// <para>Source: derived, with Slope.</para>
    /// </remarks>
    public static T Intercept<T>(T t1, T y1, T slope)
        where T : struct, IReal<T> => T.Log(y1) - (slope / t1);
}
