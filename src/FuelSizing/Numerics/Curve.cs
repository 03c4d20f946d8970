using System.Diagnostics;
using System.Globalization;
using MathNet.Numerics.Interpolation;

namespace FuelSizing.Numerics;

/// <summary>
/// A table of one quantity against another, in SI numbers: linear or monotone between its points (MathNet.Numerics'
/// linear spline and its shape-preserving cubic), silent beyond them.
/// </summary>
internal sealed class Curve : IEquatable<Curve>
{
    /// <summary>
    /// Share of a table's span by which its ends are widened, since the same end reached through other units may differ
    /// in the last digit.
    /// </summary>
    public const double EndTolerance = 1e-9;

    // Up to so many pieces it is faster to look at all of them than to search.
    private const int MaximumScanned = 24;

    private readonly double[] _x;
    private readonly double[] _y;
    private readonly CubicPiece<Real>[] _pieces;
    private readonly double _scale = 1;
    private readonly bool _isSmooth;
    private CubicColumns? _columns;

    /// <summary>Takes two points or more whose x rises strictly, which the caller has made sure of.</summary>
    public Curve(double[] x, double[] y, Interpolation kind)
    {
        Debug.Assert(x.Length >= 2 && x.Length == y.Length && x.Zip(x.Skip(1)).All(pair => pair.First < pair.Second), "The points must rise.");
        (_x, _y) = (x, y);
        _isSmooth = kind == Interpolation.Monotone && x.Length >= 3;
        _pieces = PiecesOf(x, y, _isSmooth ? CubicSpline.InterpolatePchipSorted(x, y) : null);
    }

    private Curve(Curve curve, double factor)
    {
        (_x, _pieces, _columns, _scale, _isSmooth) = (curve._x, curve._pieces, curve._columns, curve._scale * factor, curve._isSmooth);
        _y = Array.ConvertAll(curve._y, y => y * factor);
    }

    /// <summary>The lowest x.</summary>
    public double First => _x[0];

    /// <summary>The highest x.</summary>
    public double Last => _x[^1];

    /// <summary>The value at the lowest x.</summary>
    public double FirstValue => _y[0];

    /// <summary>The value at the highest x.</summary>
    public double LastValue => _y[^1];

    /// <summary>The curve's pieces, unscaled.</summary>
    public ReadOnlySpan<CubicPiece<Real>> Pieces => _pieces;

    /// <summary>The points as given.</summary>
    public IEnumerable<(double X, double Y)> Points => _x.Zip(_y);

    /// <summary>True if it bends between its points; false if it is straight between them.</summary>
    public bool IsSmooth => _isSmooth;

    /// <summary>How many points it has.</summary>
    public int Count => _x.Length;

    /// <summary>One of the points, counted from 0.</summary>
    public (double X, double Y) PointAt(int place) => (_x[place], _y[place]);

    /// <summary>The place of the point at x or before it, and of the last one but one at the end: where the piece begins that is read.</summary>
    public int PieceFor(double x) => PieceAt(Math.Clamp(x, First, Last));

    /// <summary>True if x lies within the table, ends included.</summary>
    public bool Covers(double x) => Math.Abs(x - Math.Clamp(x, First, Last)) <= EndTolerance * (Last - First);

    /// <summary>The same curve with every value times a factor: both kinds of interpolation are homogeneous.</summary>
    public Curve Scaled(double factor) => new(this, factor);

    /// <summary>The value at x, which the caller has found to be covered.</summary>
    public double At(double x) =>
        Covers(x)
            ? _scale * Between(Math.Clamp(x, First, Last))
            : throw new InvalidOperationException(
                string.Create(CultureInfo.InvariantCulture, $"{x} lies outside the table's {First} to {Last}."));

    /// <summary>The value at x; past an end that of the end.</summary>
    public double Nearest(double x) => _scale * Between(Math.Clamp(x, First, Last));

    /// <summary>The value at x and the slope there; past an end the end's value, and none.</summary>
    public (double Value, double Slope) NearestWithSlope(double x)
    {
        double within = Math.Clamp(x, First, Last);
        CubicPiece<Real> piece = _pieces[PieceAt(within)];
        return (_scale * piece.At(within), within == x ? _scale * piece.SlopeAt(within) : 0);
    }

    /// <summary>The values at all x, which the caller has found to be covered.</summary>
    /// <param name="x">A whole number of vectors.</param>
    /// <param name="values">Where to write them.</param>
    public void At<T>(ReadOnlySpan<double> x, Span<double> values)
        where T : struct, ILanes<T>, IReal<T>
    {
        if (_pieces.Length <= CubicColumns.Maximum)
        {
            // Only batches ask for them; two threads may both make them, and they are the same.
            _columns ??= new(_pieces);
            _columns.At<T>(x, First, Last, _scale, values);
            return;
        }

        for (int at = 0; at < x.Length; at++)
        {
            values[at] = _scale * Between(Math.Clamp(x[at], First, Last));
        }
    }

    /// <summary>True if the other has the same points, as <see cref="Significant"/> compares them.</summary>
    /// <remarks>How it runs between them is no part of it: a description gives all its curves one kind of interpolation.</remarks>
    public bool Equals(Curve? other) =>
        ReferenceEquals(this, other)
        || (other is not null && Significant.Same(_x, other._x) && Significant.Same(_y, other._y));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Curve);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Significant.Hash(_x), Significant.Hash(_y));

    private double Between(double x) => _pieces[PieceAt(x)].At(x);

    private int PieceAt(double x)
    {
        CubicPiece<Real>[] pieces = _pieces;
        int piece;
        if (pieces.Length <= MaximumScanned)
        {
            piece = 0;
            while (piece + 1 < pieces.Length && x >= pieces[piece + 1].Start)
            {
                piece++;
            }
        }
        else
        {
            piece = Array.BinarySearch(_x, 0, pieces.Length, x);
            piece = piece < 0 ? ~piece - 1 : piece;
        }

        return piece;
    }

    // The library gives slopes and not its coefficients; each piece follows from the slopes at its ends.
    private static CubicPiece<Real>[] PiecesOf(double[] x, double[] y, CubicSpline? smooth)
    {
        CubicPiece<Real>[] pieces = new CubicPiece<Real>[x.Length - 1];
        for (int k = 0; k < pieces.Length; k++)
        {
            double straight = StraightLine.Slope<Real>(x[k], y[k], x[k + 1], y[k + 1]);
            pieces[k] = smooth is null
                ? new(x[k], y[k], straight, 0, 0)
                : CubicPiece<Real>.Between(
                    x[k], y[k], smooth.Differentiate(x[k]), x[k + 1], y[k + 1], smooth.Differentiate(x[k + 1]));
        }

        return pieces;
    }
}

/// <summary>How a table reads between its points.</summary>
internal enum Interpolation
{
    /// <summary>By straight lines.</summary>
    Linear,

    /// <summary>By a smooth cubic that never overshoots its points.</summary>
    Monotone,
}
