using System.Runtime.CompilerServices;

namespace FuelSizing.Equations;

/// <summary>Exponential and logarithm of numbers side by side, to an ulp.</summary>
/// <remarks>
/// The methods and coefficients are those of fdlibm (e_exp.c, e_log.c; Sun Microsystems 1993, freely distributable), without
/// branches. The runtime's own for vectors are called and not inlined, which takes twice as long, and lack before .NET 9;
/// these give the same bits at every width and on every runtime.
/// </remarks>
internal static class Elementary
{
    private const double Log2OfE = 1.44269504088896338700;

    // ln 2 in two parts, of which whole multiples of the first are exact.
    private const double Ln2High = 6.93147180369123816490e-01;
    private const double Ln2Low = 1.90821492927058770002e-10;

    // 1.5 · 2^52: a number added to it is rounded to a whole one, which stands in the last bits.
    private const double Rounder = 6_755_399_441_055_744;

    private const double LeastExponent = -708;
    private const double MostExponent = 709.5;
    private const double LeastNormal = 2.2250738585072014e-308;

    /// <summary>Natural exponential; zero under e^−708, infinite over e^709.5.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Exp<T>(T x)
        where T : struct, ILanes<T>, IReal<T> =>
        T.IfLess(x, LeastExponent, 0, T.IfLess(MostExponent, x, double.PositiveInfinity, ExpWithin(x)));

    /// <summary>Natural logarithm; numbers too small to be normal count as zero.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Log<T>(T x)
        where T : struct, ILanes<T>, IReal<T>
    {
        // Not a number stays so, by the difference.
        T result = T.IfLess(double.MaxValue, x, x, LogOfNormal(x) + (x - x));
        return T.IfLess(x, LeastNormal, T.IfLess(x, 0, double.NaN, double.NegativeInfinity), result);
    }

    /// <summary>x^y = exp(y ln x), for x normal and above zero; the nearest of e^−708 and e^709.5 beyond them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Power<T>(T x, T y)
        where T : struct, ILanes<T>, IReal<T> => ExpWithin(y * LogOfNormal(x));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T ExpWithin<T>(T x)
        where T : struct, ILanes<T>, IReal<T>
    {
        T inside = T.Min(MostExponent, T.Max(LeastExponent, x));
        T shifted = T.MultiplyAdd(inside, Log2OfE, Rounder);
        T whole = shifted - Rounder;
        T high = T.MultiplyAdd(whole, -Ln2High, inside);
        T low = whole * Ln2Low;
        T rest = high - low;
        T square = rest * rest;
        T c = T.MultiplyAdd(square, 4.13813679705723846039e-08, -1.65339022054652515390e-06);
        c = T.MultiplyAdd(square, c, 6.61375632143793436117e-05);
        c = T.MultiplyAdd(square, c, -2.77777777770155933842e-03);
        c = T.MultiplyAdd(square, c, 1.66666666666666019037e-01);
        c = rest - (square * c);
        T fraction = (T)1 - (low - (rest * c / ((T)2 - c)) - high);
        return T.TimesTwoTo(fraction, shifted);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T LogOfNormal<T>(T x)
        where T : struct, ILanes<T>, IReal<T>
    {
        T fraction = T.Fraction(x, out T exponent);
        T f = fraction - 1.0;
        T s = f / ((T)2 + f);
        T z = s * s;
        T w = z * z;
        T even = T.MultiplyAdd(w, 1.531383769920937332e-01, 2.222219843214978396e-01);
        even = T.MultiplyAdd(w, even, 3.999999999940941908e-01);
        T odd = T.MultiplyAdd(w, 1.479819860511658591e-01, 1.818357216161805012e-01);
        odd = T.MultiplyAdd(w, odd, 2.857142874366239149e-01);
        odd = T.MultiplyAdd(w, odd, 6.666666666666735130e-01);
        T half = 0.5 * f * f;
        T sum = T.MultiplyAdd(z, odd, T.MultiplyAdd(w, even, half));
        return (exponent * Ln2High) - (half - T.MultiplyAdd(s, sum, exponent * Ln2Low) - f);
    }
}
