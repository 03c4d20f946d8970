using System.Globalization;
using MathNet.Numerics.Interpolation;

namespace FuelSizing.Quantities;

/// <summary>
/// A table of one quantity against another, in SI numbers: linear or monotone between its points (MathNet.Numerics'
/// linear spline and its shape-preserving cubic), silent beyond them.
/// </summary>
internal sealed class Curve
{
    /// <summary>
    /// Share of a table's span by which its ends are widened, since the same end reached through other units may differ
    /// in the last digit.
    /// </summary>
    public const double EndTolerance = 1e-9;

    private readonly double[] _x;
    private readonly double[] _y;
    private readonly IInterpolation _between;
    private readonly double _scale = 1;

    /// <summary>Takes points whose x rises strictly.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two points, or x does not rise.</exception>
    public Curve(double[] x, double[] y, Interpolation kind, string name)
    {
        Allowed.Count(x.Length, 2, 1000, "Give the curve by two points or more.", name);
        for (int point = 1; point < x.Length; point++)
        {
            if (!(x[point] > x[point - 1]))
            {
                throw Allowed.OutOfRange(
                    name,
                    string.Create(CultureInfo.InvariantCulture, $"not rising at point {point + 1}"),
                    "points in rising order",
                    "Sort the points and give each abscissa once.");
            }
        }

        (_x, _y) = (x, y);
        _between = kind == Interpolation.Monotone && x.Length >= 3
            ? CubicSpline.InterpolatePchipSorted(x, y)
            : LinearSpline.InterpolateSorted(x, y);
    }

    private Curve(Curve curve, double factor)
    {
        (_x, _between, _scale) = (curve._x, curve._between, curve._scale * factor);
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

    /// <summary>The points as given.</summary>
    public IEnumerable<(double X, double Y)> Points => _x.Zip(_y);

    /// <summary>True if x lies within the table, ends included.</summary>
    public bool Covers(double x) => Math.Abs(x - Math.Clamp(x, First, Last)) <= EndTolerance * (Last - First);

    /// <summary>The same curve with every value times a factor: both kinds of interpolation are homogeneous.</summary>
    public Curve Scaled(double factor) => new(this, factor);

    /// <summary>The value at x, which the caller has found to be covered.</summary>
    public double At(double x) =>
        Covers(x)
            ? _scale * _between.Interpolate(Math.Clamp(x, First, Last))
            : throw new InvalidOperationException(
                string.Create(CultureInfo.InvariantCulture, $"{x} lies outside the table's {First} to {Last}."));
}
