namespace FuelSizing.Numerics;

/// <summary>The straight line through two points.</summary>
internal static class StraightLine
{
    /// <summary>y = y0 + (y1 − y0) (x − x0)/(x1 − x0).</summary>
    public static T Through<T>(T x0, T y0, T x1, T y1, T x)
        where T : struct, IReal<T> => y0 + ((y1 - y0) * (x - x0) / (x1 - x0));

    /// <summary>Slope: (y1 − y0)/(x1 − x0).</summary>
    public static T Slope<T>(T x0, T y0, T x1, T y1)
        where T : struct, IReal<T> => (y1 - y0) / (x1 - x0);
}
