using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace FuelSizing.Equations;

/// <summary>A curve of cubic pieces, coefficient by coefficient, so that numbers side by side each pick their own piece.</summary>
internal sealed class CubicColumns
{
    /// <summary>As many pieces as one instruction can pick from.</summary>
    public const int Most = 16;

    private readonly double[] _rising;
    private readonly double[] _coefficients;
    private readonly bool _straight;
    private readonly bool _few;

    /// <summary>Sets the pieces out in columns.</summary>
    /// <param name="pieces">1 to <see cref="Most"/>, starts rising.</param>
    public CubicColumns(CubicPiece<Real>[] pieces)
    {
        _rising = [.. pieces.Skip(1).Select(piece => piece.Start.Value)];
        _coefficients = new double[5 * Most];
        for (int at = 0; at < pieces.Length; at++)
        {
            CubicPiece<Real> piece = pieces[at];
            _coefficients[at] = piece.Start;
            _coefficients[Most + at] = piece.Value;
            _coefficients[(2 * Most) + at] = piece.Slope;
            _coefficients[(3 * Most) + at] = piece.Second;
            _coefficients[(4 * Most) + at] = piece.Third;
        }

        _straight = Array.TrueForAll(pieces, piece => piece.Second == 0 && piece.Third == 0);
        _few = pieces.Length <= Most / 2;
    }

    /// <summary>The values at x, by the last piece that starts at or before it; each lane may take another piece.</summary>
    /// <param name="x">From the first start on.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T At<T>(T x)
        where T : struct, ILanes<T>, IReal<T>
    {
        // A rank is at most one less than there are pieces, so nothing is read beyond a column.
        T rank = T.Rank(_rising, x);
        T start = Coefficient(0, rank);
        T value = Coefficient(1, rank);
        T slope = Coefficient(2, rank);
        return _straight
            ? CubicPiece<T>.Straight(start, value, slope, x)
            : new CubicPiece<T>(start, value, slope, Coefficient(3, rank), Coefficient(4, rank)).At(x);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private T Coefficient<T>(int column, T rank)
        where T : struct, ILanes<T>, IReal<T> =>
        T.Pick(in Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_coefficients), column * Most), rank, _few);
}
