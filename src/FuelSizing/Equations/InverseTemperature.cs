using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The two-parameter law ln y = A + B/T through two points (Andrade for viscosity, Clausius–Clapeyron for vapour).</summary>
internal static class InverseTemperature
{
    /// <summary>B, K: ln(y1/y2)/(1/T1 − 1/T2).</summary>
    public static T Slope<T>(T t1, T y1, T t2, T y2)
        where T : struct, IReal<T> => T.Log(y1 / y2) / (((T)1 / t1) - ((T)1 / t2));

    /// <summary>A: ln y1 − B/T1.</summary>
    public static T Intercept<T>(T t1, T y1, T slope)
        where T : struct, IReal<T> => T.Log(y1) - (slope / t1);
}
