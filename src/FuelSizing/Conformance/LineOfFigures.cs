using FuelSizing.Quantities;

namespace FuelSizing.Conformance;

/// <summary>A figure along one coordinate: where it jumps, and where it has a kink that nobody named.</summary>
/// <param name="figure">SI against SI.</param>
/// <param name="first">Where it begins.</param>
/// <param name="last">Where it ends.</param>
/// <param name="kinks">Where a kink is named.</param>
internal sealed class LineOfFigures(Func<double, double> figure, double first, double last, IReadOnlyList<double> kinks)
{
    private const int Pieces = 1_000;

    // Of the whole change of the figure, or of the figure itself where it hardly changes.
    private const double Jump = 1e-3;

    // So much finer is looked at again: a curve bends less and less over a shorter piece, a kink as much as before.
    private const int Finer = 1_000;
    private const double Bend = 0.02;

    // What rounding alone may bend, of the figure.
    private const double Rounding = 1e-11;

    private readonly double _step = (last - first) / Pieces;
    private double[]? _read;

    /// <summary>The coordinate of a jump; none where there is none.</summary>
    public double? FirstJump()
    {
        double[] read = Read();
        double scale = Math.Max(read.Max() - read.Min(), 0.01 * read.Max(Math.Abs));
        for (int piece = 1; piece <= Pieces; piece++)
        {
            if (Math.Abs(read[piece] - read[piece - 1]) < Jump * scale)
            {
                continue;
            }

            (double low, double high) = (first + ((piece - 1) * _step), first + (piece * _step));
            (double below, double above) = (read[piece - 1], read[piece]);
            for (int half = 0; half < 40; half++)
            {
                double middle = (low + high) / 2;
                double there = figure(middle);
                bool isBefore = Math.Abs(there - below) >= Math.Abs(above - there);
                (low, below, high, above) = isBefore ? (low, below, middle, there) : (middle, there, high, above);
            }

            if (Math.Abs(above - below) >= Jump * scale)
            {
                return high;
            }
        }

        return null;
    }

    /// <summary>The coordinate of a kink that is not named; none where there is none.</summary>
    public double? FirstUnnamedKink()
    {
        double[] read = Read();
        double rounding = Rounding * read.Max(Math.Abs);
        double slope = Enumerable.Range(1, Pieces).Max(piece => Math.Abs(read[piece] - read[piece - 1])) / _step;
        for (int piece = 1; piece < Pieces; piece++)
        {
            double at = first + (piece * _step);
            double bend = Math.Abs(read[piece + 1] - (2 * read[piece]) + read[piece - 1]) / _step;
            if (bend < Bend * slope || bend * _step < rounding || kinks.Any(kink => Math.Abs(kink - at) <= 2 * _step))
            {
                continue;
            }

            double step = 2 * _step / Finer;
            for (int part = 1; part < Finer; part++)
            {
                double place = at - _step + (part * step);
                double bent = Math.Abs(figure(place + step) - (2 * figure(place)) + figure(place - step));
                if (bent >= rounding && bent / step >= Bend * slope / 2)
                {
                    return place;
                }
            }
        }

        return null;
    }

    /// <summary>The coordinate from which on it falls, against what is allowed; none where it does not.</summary>
    public double? FirstFall()
    {
        double[] read = Read();
        double scale = read.Max(Math.Abs);
        for (int piece = 1; piece <= Pieces; piece++)
        {
            if (read[piece] < read[piece - 1] - (1e-12 * scale))
            {
                return first + ((piece - 1) * _step);
            }
        }

        return null;
    }

    /// <summary>A jump and an unnamed kink, in words; none where there is neither.</summary>
    public Statement? Fault(Func<double, Statement> place) =>
        FirstJump() is { } jump ? Statement.Of("conformance.jump", $"it jumps at {place(jump)}")
        : FirstUnnamedKink() is { } kink ? Statement.Of("conformance.kink", $"it has a kink at {place(kink)} that is not named")
        : null;

    // Every rule of a line looks at the same figures.
    private double[] Read() => _read ??= [.. Enumerable.Range(0, Pieces + 1).Select(piece => figure(piece == Pieces ? last : first + (piece * _step)))];
}
