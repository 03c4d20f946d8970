using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace FuelSizing.Numerics;

/// <summary>A curve of cubic pieces, coefficient by coefficient, so that each lane picks its own piece.</summary>
internal sealed class CubicColumns
{
    /// <summary>As many pieces as one instruction can pick from.</summary>
    public const int Maximum = 16;

    private readonly double[] _rising;
    private readonly double[] _coefficients;
    private readonly bool _straight;
    private readonly bool _few;

    /// <summary>Sets the pieces out in columns.</summary>
    /// <param name="pieces">1 to <see cref="Maximum"/>, starts rising.</param>
    public CubicColumns(CubicPiece<Real>[] pieces)
    {
        _rising = [.. pieces.Skip(1).Select(piece => piece.Start.Value)];
        _coefficients = new double[5 * Maximum];
        for (int at = 0; at < pieces.Length; at++)
        {
            CubicPiece<Real> piece = pieces[at];
            _coefficients[at] = piece.Start;
            _coefficients[Maximum + at] = piece.Value;
            _coefficients[(2 * Maximum) + at] = piece.Slope;
            _coefficients[(3 * Maximum) + at] = piece.Second;
            _coefficients[(4 * Maximum) + at] = piece.Third;
        }

        _straight = Array.TrueForAll(pieces, piece => piece.Second == 0 && piece.Third == 0);
        _few = pieces.Length <= Maximum / 2;
    }

    /// <summary>
    /// Values times a scale at x, by the last piece that starts at or before it; each number may take another piece.
    /// </summary>
    /// <param name="x">A whole number of vectors; what is outside counts as the nearer end.</param>
    /// <param name="first">The first start.</param>
    /// <param name="last">The last piece's end.</param>
    /// <param name="scale">Factor.</param>
    /// <param name="into">Where to write the values.</param>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void At<T>(ReadOnlySpan<double> x, double first, double last, double scale, Span<double> into)
        where T : struct, ILanes<T>, IReal<T>
    {
        ReadOnlySpan<double> rising = _rising;
        ref double coefficients = ref MemoryMarshal.GetArrayDataReference(_coefficients);
        bool few = _few;
        bool straight = _straight;
        T minimum = first;
        T maximum = last;
        T factor = scale;
        for (int at = 0; at < x.Length; at += T.Count)
        {
            T inside = T.Min(maximum, T.Max(minimum, T.From(x[at..])));

            // A rank is at most one less than there are pieces, so nothing is read beyond a column.
            T rank = T.Rank(rising, inside);
            T start = T.Pick(in coefficients, rank, few);
            T value = T.Pick(in Unsafe.Add(ref coefficients, Maximum), rank, few);
            T slope = T.Pick(in Unsafe.Add(ref coefficients, 2 * Maximum), rank, few);
            T found = straight
                ? CubicPiece<T>.Straight(start, value, slope, inside)
                : new CubicPiece<T>(
                    start,
                    value,
                    slope,
                    T.Pick(in Unsafe.Add(ref coefficients, 3 * Maximum), rank, few),
                    T.Pick(in Unsafe.Add(ref coefficients, 4 * Maximum), rank, few)).At(inside);
            (factor * found).CopyTo(into[at..]);
        }
    }
}
