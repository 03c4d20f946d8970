// The reduction of exponential and logarithm, and the logarithm's coefficients, follow e_exp.c and e_log.c of fdlibm; modified. Their notices:
//
// Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
// Developed at SunSoft, a Sun Microsystems, Inc. business.
// Permission to use, copy, modify, and distribute this software is freely granted, provided that this notice is preserved.
//
// Copyright (C) 2004 by Sun Microsystems, Inc. All rights reserved.
// Permission to use, copy, modify, and distribute this software is freely granted, provided that this notice is preserved.

using System.Runtime.CompilerServices;

namespace FuelSizing.Numerics;

/// <summary>Exponential and logarithm of numbers in lanes, to an ulp.</summary>
/// <remarks>
/// The reduction of both, and the logarithm's coefficients, are those of fdlibm (e_exp.c, e_log.c; the notices
/// are above and in docs/notices.md), without branches. The runtime's own for vectors are called and not inlined, which takes twice as long, and lack before .NET 9;
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

    // Of Taylor's series of the exponential: 1/n!.
    private const double OneByFactorial2 = 1.0 / 2;
    private const double OneByFactorial3 = 1.0 / 6;
    private const double OneByFactorial4 = 1.0 / 24;
    private const double OneByFactorial5 = 1.0 / 120;
    private const double OneByFactorial6 = 1.0 / 720;
    private const double OneByFactorial7 = 1.0 / 5_040;
    private const double OneByFactorial8 = 1.0 / 40_320;
    private const double OneByFactorial9 = 1.0 / 362_880;
    private const double OneByFactorial10 = 1.0 / 3_628_800;
    private const double OneByFactorial11 = 1.0 / 39_916_800;
    private const double OneByFactorial12 = 1.0 / 479_001_600;
    private const double OneByFactorial13 = 1.0 / 6_227_020_800;

    private const double MinimumExponent = -708;
    private const double MaximumExponent = 709.5;
    private const double MinimumNormal = 2.2250738585072014e-308;

    /// <summary>Natural exponential; zero under e^−708, infinite over e^709.5.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Exp<T>(T x)
        where T : struct, ILanes<T>, IReal<T> =>
        T.IfLess(x, MinimumExponent, 0, T.IfLess(MaximumExponent, x, double.PositiveInfinity, ExpWithin(x)));

    /// <summary>Natural logarithm; numbers too small to be normal count as zero.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Log<T>(T x)
        where T : struct, ILanes<T>, IReal<T>
    {
        // Not a number stays so, by the difference.
        T result = T.IfLess(double.MaxValue, x, x, LogOfNormal(x) + (x - x));
        return T.IfLess(x, MinimumNormal, T.IfLess(x, 0, double.NaN, double.NegativeInfinity), result);
    }

    /// <summary>x^y = exp(y ln x), for x normal and above zero; the nearest of e^−708 and e^709.5 beyond them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Power<T>(T x, T y)
        where T : struct, ILanes<T>, IReal<T> => ExpWithin(y * LogOfNormal(x));

    /// <summary>As <see cref="Power{T}(T, T)"/>, of many numbers in their place, a whole number of vectors.</summary>
    /// <remarks>
    /// All logarithms before all exponentials: one after the other for each number they are a chain so long that the processor has no room to
    /// begin the next.
    /// </remarks>
    public static void Power<T>(Span<double> x, double y)
        where T : struct, ILanes<T>, IReal<T>
    {
        Logs<T>(x, y);
        Exps<T>(x);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Logs<T>(Span<double> x, double y)
        where T : struct, ILanes<T>, IReal<T>
    {
        T power = y;
        for (int at = 0; at < x.Length; at += T.Count)
        {
            (power * LogOfNormal(T.From(x[at..]))).CopyTo(x[at..]);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Exps<T>(Span<double> x)
        where T : struct, ILanes<T>, IReal<T>
    {
        for (int at = 0; at < x.Length; at += T.Count)
        {
            ExpWithin(T.From(x[at..])).CopyTo(x[at..]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T ExpWithin<T>(T x)
        where T : struct, ILanes<T>, IReal<T>
    {
        T inside = T.Min(MaximumExponent, T.Max(MinimumExponent, x));
        T shifted = T.MultiplyAdd(inside, Log2OfE, Rounder);
        T whole = shifted - Rounder;
        T r = T.MultiplyAdd(whole, -Ln2Low, T.MultiplyAdd(whole, -Ln2High, inside));

        // Taylor's series as far as r¹³/13!, less than 10^−17 off for |r| ≤ ½ ln 2. Summed by pairs, pairs of pairs and so on
        // (Estrin), since each step of a single long sum would wait for the one before.
        T r2 = r * r;
        T r4 = r2 * r2;
        T low = T.MultiplyAdd(r2, T.MultiplyAdd(r, OneByFactorial5, OneByFactorial4), T.MultiplyAdd(r, OneByFactorial3, OneByFactorial2));
        T middle = T.MultiplyAdd(r2, T.MultiplyAdd(r, OneByFactorial9, OneByFactorial8), T.MultiplyAdd(r, OneByFactorial7, OneByFactorial6));
        T high = T.MultiplyAdd(r2, T.MultiplyAdd(r, OneByFactorial13, OneByFactorial12), T.MultiplyAdd(r, OneByFactorial11, OneByFactorial10));
        T rest = T.MultiplyAdd(r4 * r4, high, T.MultiplyAdd(r4, middle, low));
        T fraction = (T)1 + T.MultiplyAdd(r2, rest, r);
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
