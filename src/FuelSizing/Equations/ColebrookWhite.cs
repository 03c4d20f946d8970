using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>
/// Darcy friction factor of turbulent flow: the Colebrook–White equation
/// 1/√f = −2 log10(ε/(3.7 D) + 2.51/(Re √f)).
/// </summary>
/// <remarks>
/// Solved by two fixed steps to machine precision (Clamond, Ind. Eng. Chem. Res. 48 (2009) 3665,
/// doi 10.1021/ie801626g), so that a batch needs no loop of its own length for each lane.
/// </remarks>
internal static class ColebrookWhite
{
    private const double Ln10 = 2.302585092994045684;

    /// <summary>The friction factor f.</summary>
    /// <param name="reynolds">Re, from the onset of turbulence up to 1e8.</param>
    /// <param name="relativeRoughness">ε/D, 0 to 0.05.</param>
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

    /// <summary>
    /// The limit of a fully rough wall, where the Reynolds number no longer matters (von Kármán): 1/√f = −2 log10(ε/(3.7 D)).
    /// </summary>
    /// <param name="relativeRoughness">ε/D, above 0.</param>
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
