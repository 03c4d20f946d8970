namespace FuelSizing.Equations;

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

    /// <summary>The value at x.</summary>
    public T At(T x)
    {
        T along = x - Start;
        return Value + (along * (Slope + (along * (Second + (along * Third)))));
    }
}

/// <summary>A curve of cubic pieces, one behind the other.</summary>
internal static class PiecewiseCubic
{
    /// <summary>The value at x, by the last piece that starts at or before it; each lane may take another piece.</summary>
    /// <param name="pieces">One or more, starts rising.</param>
    /// <param name="x">From the first start on.</param>
    public static T Of<T>(ReadOnlySpan<CubicPiece<Real>> pieces, T x)
        where T : struct, IReal<T>
    {
        CubicPiece<Real> piece = pieces[0];
        T start = piece.Start.Value;
        T value = piece.Value.Value;
        T slope = piece.Slope.Value;
        T second = piece.Second.Value;
        T third = piece.Third.Value;
        for (int next = 1; next < pieces.Length; next++)
        {
            ref readonly CubicPiece<Real> other = ref pieces[next];
            T from = other.Start.Value;
            start = T.IfLess(x, from, start, from);
            value = T.IfLess(x, from, value, other.Value.Value);
            slope = T.IfLess(x, from, slope, other.Slope.Value);
            second = T.IfLess(x, from, second, other.Second.Value);
            third = T.IfLess(x, from, third, other.Third.Value);
        }

        return new CubicPiece<T>(start, value, slope, second, third).At(x);
    }
}
