using MathNet.Numerics.Statistics;

namespace FuelSizing.Interactive;

/// <summary>Samples counted in bins of one width, of which none reaches over a limit.</summary>
internal sealed class HistogramBins
{
    private const int Fewest = 8;
    private const int Maximum = 40;

    private readonly double _anchor;
    private readonly int _first;
    private readonly int[] _counts;

    /// <summary>Counts the samples.</summary>
    /// <param name="sorted">From low to high; at least one.</param>
    /// <param name="limit">A bin ends here; at a round number if there is no limit.</param>
    /// <param name="closedAbove">Whether a sample on the edge of two bins, as one on the limit, belongs to the lower one.</param>
    public HistogramBins(double[] sorted, double? limit, bool closedAbove)
    {
        Width = WidthOf(sorted);
        _anchor = limit ?? 0;
        int Place(double value)
        {
            double steps = (value - _anchor) / Width;
            return (int)(closedAbove ? Math.Ceiling(steps) - 1 : Math.Floor(steps));
        }

        _first = Place(sorted[0]);
        _counts = new int[Place(sorted[^1]) - _first + 1];
        foreach (double value in sorted)
        {
            _counts[Place(value) - _first]++;
        }
    }

    /// <summary>Width of a bin.</summary>
    public double Width { get; }

    /// <summary>How many bins.</summary>
    public int Count => _counts.Length;

    /// <summary>Lower end, upper end, and samples of each bin.</summary>
    public IEnumerable<(double From, double To, int Samples)> All =>
        _counts.Select((samples, bin) => (_anchor + ((_first + bin) * Width), _anchor + ((_first + bin + 1) * Width), samples));

    /// <summary>
    /// A round width near 2 · (interquartile range)/∛n: Freedman and Diaconis, On the histogram as a density estimator,
    /// Zeitschrift für Wahrscheinlichkeitstheorie 57 (1981) 453–476.
    /// </summary>
    private static double WidthOf(double[] sorted)
    {
        double span = sorted[^1] - sorted[0];
        double scale = Math.Max(Math.Abs(sorted[0]), Math.Abs(sorted[^1]));
        if (span <= 1e-9 * scale || span == 0)
        {
            // All alike: one bar, wide enough to be seen and narrow enough to be a single value.
            return scale > 0 ? 0.01 * scale : 1;
        }

        double ruled = 2 * SortedArrayStatistics.InterquartileRange(sorted) / Math.Cbrt(sorted.Length);
        double bins = ruled > 0 ? Math.Clamp(span / ruled, Fewest, Maximum) : Fewest;
        double[] levels = NiceScale.Levels(0, span, (int)bins);
        return levels[1] - levels[0];
    }
}
