namespace FuelSizing.Numerics;

/// <summary>One piece of a table's curve: y = a + b s + c s² + d s³, s = x − x0.</summary>
/// <param name="Start">x0.</param>
/// <param name="Value">a.</param>
/// <param name="Slope">b.</param>
/// <param name="Second">c.</param>
/// <param name="Third">d.</param>
internal readonly record struct CubicPiece<T>(T Start, T Value, T Slope, T Second, T Third)
    where T : struct, IReal<T>
{
    /// <summary>The cubic through two points with given slopes (Hermite); a straight line where the slopes are its own.</summary>
    /// <param name="x0">Start.</param>
    /// <param name="y0">Value there.</param>
    /// <param name="slope0">Slope there.</param>
    /// <param name="x1">End.</param>
    /// <param name="y1">Value there.</param>
    /// <param name="slope1">Slope there.</param>
    public static CubicPiece<T> Between(T x0, T y0, T slope0, T x1, T y1, T slope1)
    {
        T width = x1 - x0;
        return new(
            x0,
            y0,
            slope0,
            (((T)3 * (y1 - y0) / width) - (2.0 * slope0) - slope1) / width,
            (((T)2 * (y0 - y1) / width) + slope0 + slope1) / (width * width));
    }

    /// <summary>The value at x of a piece that does not bend: y = a + b (x − x0).</summary>
    public static T Straight(T start, T value, T slope, T x) => T.MultiplyAdd(x - start, slope, value);

    /// <summary>The value at x.</summary>
    public T At(T x)
    {
        T along = x - Start;
        return T.MultiplyAdd(along, T.MultiplyAdd(along, T.MultiplyAdd(along, Third, Second), Slope), Value);
    }

    /// <summary>The slope at x: b + 2 c s + 3 d s².</summary>
    public T SlopeAt(T x)
    {
        T along = x - Start;
        return T.MultiplyAdd(along, T.MultiplyAdd(along, 3 * Third, 2 * Second), Slope);
    }
}
