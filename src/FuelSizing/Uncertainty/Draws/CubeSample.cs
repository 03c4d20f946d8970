namespace FuelSizing.Uncertainty;

/// <summary>A function of a point in the unit cube, one coordinate for each independent input; not a number where it has no value.</summary>
internal delegate double CubeFunction(ReadOnlySpan<double> point);

/// <summary>Random points in the unit cube.</summary>
internal static class CubeSample
{
    /// <summary>Draws one point.</summary>
    /// <param name="seed">Of the run.</param>
    /// <param name="sample">Which sample.</param>
    /// <param name="set">Which of several independent samples.</param>
    /// <param name="streams">The random stream of each coordinate.</param>
    /// <param name="point">Takes the coordinates.</param>
    public static void Draw(long seed, int sample, uint set, ReadOnlySpan<uint> streams, Span<double> point)
    {
        for (int coordinate = 0; coordinate < streams.Length; coordinate++)
        {
            point[coordinate] = CountedRandom.At(seed, sample, streams[coordinate], set);
        }
    }
}
