using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>
/// Darcy friction factor of turbulent flow: the Colebrook–White equation
/// 1/√f = −2 log10(κ/3.7 + 2.51/(Re √f)).
/// </summary>
/// <remarks>
/// Solved by two fixed steps to machine precision (Clamond, Ind. Eng. Chem. Res. 48 (2009) 3665,
/// doi 10.1021/ie801626g), so that a batch needs no loop of its own length for each lane.
/// </remarks>
public static class ColebrookWhite
{
    private const double Ln10 = 2.302585092994045684;

    /// <summary>Darcy friction factor of turbulent flow in a rough pipe.
    /// <para><c>1/√f = −2 · log10(κ/3.7 + 2.51/(Re · √f))</c></para>
    /// </summary>
    /// <param name="reynolds"><c>Re</c> (1): Reynolds number.</param>
    /// <param name="relativeRoughness"><c>κ</c> (1): relative roughness, roughness ÷ bore.</param>
    /// <returns><c>f</c> (1): Darcy friction factor.</returns>
    /// <remarks>
    /// <para>Range: 4000 ≤ Re ≤ 1e8, 0 ≤ κ ≤ 0.05.</para>
    /// <para>Outside: nothing is checked; below Re 4000 it gives the turbulent branch although the flow may be laminar; at Re 0 it
    /// is not a number.</para>
    /// <example>
    /// <code>
    /// Real result = ColebrookWhite.Friction&lt;Real&gt;(reynolds: 1e5, relativeRoughness: 1e-4);
    /// // result = 0.0185139
    /// </code>
    /// </example>
    /// <para>Source: C. F. Colebrook, Journal of the Institution of Civil Engineers 11 (1939) 133; solved in two fixed steps after
    /// D. Clamond, Industrial &amp; Engineering Chemistry Research 48 (2009) 3665, doi 10.1021/ie801626g.</para>
    /// </remarks>
    public static T Friction<T>(T reynolds, T relativeRoughness)
        where T : struct, IReal<T>
    {
        // With F = ln 10/(2 √f) the equation reads F + ln(k + F) = r.
        T k = relativeRoughness * reynolds * (Ln10 / (2 * 3.7 * 2.51));
        T r = T.Log(reynolds * (Ln10 / (2 * 2.51)));
        T guess = Nearer(k, r, Nearer(k, r, r - 0.2));
        T root = (Ln10 / 2) / guess;
        return root * root;
    }

    /// <summary>Left side of the equation: 1/√f.</summary>
    /// <param name="friction">f.</param>
    internal static T LeftSide<T>(T friction)
        where T : struct, IReal<T> => (T)1 / T.Sqrt(friction);

    /// <summary>Right side of the equation: −2 log10(κ/3.7 + 2.51/(Re √f)), with log10 x = ln x/ln 10.</summary>
    /// <param name="friction">f.</param>
    /// <param name="reynolds">Re.</param>
    /// <param name="relativeRoughness">κ.</param>
    internal static T RightSide<T>(T friction, T reynolds, T relativeRoughness)
        where T : struct, IReal<T> =>
        (T)(-2 / Ln10) * T.Log((relativeRoughness / 3.7) + ((T)2.51 / (reynolds * T.Sqrt(friction))));

    /// <summary>Darcy friction factor of fully rough flow, where the Reynolds number no longer matters.
    /// <para><c>1/√f_T = 2 · log10(3.7/κ)</c></para>
    /// </summary>
    /// <param name="relativeRoughness"><c>κ</c> (1): relative roughness, roughness ÷ bore.</param>
    /// <returns><c>f_T</c> (1): Darcy friction factor of fully rough flow.</returns>
    /// <remarks>
    /// <para>Range: 0 &lt; κ ≤ 0.05.</para>
    /// <para>Outside: nothing is checked; at κ = 0 the result is 0, at κ = 3.7 infinite.</para>
    /// <example>
    /// <code>
    /// Real result = ColebrookWhite.FullyRough&lt;Real&gt;(relativeRoughness: 0.01);
    /// // result = 0.0379037
    /// </code>
    /// </example>
    /// <para>Source: Th. von Kármán; the limit of Colebrook–White for Re → ∞.</para>
    /// </remarks>
    public static T FullyRough<T>(T relativeRoughness)
        where T : struct, IReal<T>
    {
        T root = (Ln10 / 2) / T.Log((T)3.7 / relativeRoughness);
        return root * root;
    }

    /// <summary>
    /// One step of fourth order towards the root of F + ln(k + F) = r: with e = (ln(k + F) + F − r)/s and s = k + F + 1,
    /// F − e (k + F) (s + e/2)/(s + e + e²/3), multiplied out so that it divides but once.
    /// </summary>
    private static T Nearer<T>(T k, T r, T guess)
        where T : struct, IReal<T>
    {
        T inside = k + guess;
        T slope = inside + 1.0;
        T error = T.Log(inside) + guess - r;
        T square = slope * slope;
        return guess
            - (error * inside * (square + (0.5 * error)) / ((slope * (square + error)) + (error * error * (1.0 / 3.0))));
    }
}
