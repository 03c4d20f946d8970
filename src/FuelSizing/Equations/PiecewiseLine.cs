namespace FuelSizing.Equations;

/// <summary>A curve of straight pieces from point to point.</summary>
internal static class PiecewiseLine
{
    /// <summary>
    /// The value at x by the first piece that ends at or after it (see <see cref="StraightLine"/>); each lane may take another.
    /// </summary>
    /// <param name="xs">Two or more, rising.</param>
    /// <param name="ys">As many.</param>
    /// <param name="x">From the first to the last.</param>
    public static T Of<T>(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, T x)
        where T : struct, IReal<T>
    {
        T x0 = xs[0];
        T y0 = ys[0];
        T x1 = xs[1];
        T y1 = ys[1];
        for (int next = 1; next < xs.Length - 1; next++)
        {
            T from = xs[next];
            x0 = T.IfLess(from, x, from, x0);
            y0 = T.IfLess(from, x, ys[next], y0);
            x1 = T.IfLess(from, x, xs[next + 1], x1);
            y1 = T.IfLess(from, x, ys[next + 1], y1);
        }

        return StraightLine.Through(x0, y0, x1, y1, x);
    }
}
