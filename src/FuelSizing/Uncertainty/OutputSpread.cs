using FuelSizing.Quantities;
using MathNet.Numerics.Statistics;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>How one output of a system scatters over the samples.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public sealed class OutputSpread<T>
    where T : struct
{
    private readonly double[] _sorted;
    private readonly double _mean;
    private readonly double _deviation;
    private readonly Func<double, T> _typed;

    /// <summary>Takes one value for each sample, not a number where there is none.</summary>
    internal OutputSpread(ReadOnlySpan<double> values, Func<double, T> typed)
    {
        List<double> known = new(values.Length);
        foreach (double value in values)
        {
            if (!double.IsNaN(value))
            {
                known.Add(value);
            }
        }

        // Mean and spread before sorting and after are one number only in exact arithmetic; this order is the samples'.
        _sorted = [.. known];
        (_mean, _deviation) = ArrayStatistics.MeanStandardDeviation(_sorted);
        Array.Sort(_sorted);
        _typed = typed;
        CannotSay = values.Length - _sorted.Length;
    }

    /// <summary>Samples in which the output has a value.</summary>
    public int Known => _sorted.Length;

    /// <summary>
    /// Samples in which it has none, for the data does not reach there or there is no such thing (no duty cycle where
    /// nothing flows). The figures below are of the others alone.
    /// </summary>
    public int CannotSay { get; }

    /// <summary>The known values, from low to high.</summary>
    public IReadOnlyList<T> Sorted => field ??= Array.AsReadOnly(Array.ConvertAll(_sorted, value => _typed(value)));

    /// <summary>Mean; none without a known sample, and where one has no end, as lambda has where no fuel is injected.</summary>
    public T? Mean => Known > 0 && double.IsFinite(_mean) ? _typed(_mean) : null;

    /// <summary>Standard deviation of one sample (with n − 1); none with fewer than two, and where there is no mean.</summary>
    public T? StandardDeviation => Known > 1 && double.IsFinite(_deviation) ? _typed(_deviation) : null;

    /// <summary>Standard error of the mean: standard deviation/√n; none where there is no standard deviation.</summary>
    public T? StandardErrorOfMean =>
        Known > 1 && double.IsFinite(_deviation) ? _typed(_deviation / Math.Sqrt(Known)) : null;

    /// <summary>
    /// The value under which a share of the known samples lies, between samples by the median-unbiased rule (type 8 of
    /// Hyndman and Fan, Sample quantiles in statistical packages, The American Statistician 50 (1996) 361–365).
    /// </summary>
    /// <param name="share">0 to 100 %; 50 % is the median.</param>
    /// <returns>The value; none without a known sample.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    public T? Percentile(Ratio share)
    {
        double tau = Guard.Between(
            share, Ratio.Zero, Ratio.FromPercent(100), "Give the share of samples below.", nameof(share)).DecimalFractions;
        return Known > 0 ? _typed(Quantile(tau)) : null;
    }

    private double Quantile(double tau)
    {
        double quantile = SortedArrayStatistics.Quantile(_sorted, tau);

        // Between a sample and one without an end there is no straight line: the sample below it is read, as the rule places it.
        return double.IsNaN(quantile)
            ? _sorted[(int)Math.Clamp(Math.Floor(((Known + (1.0 / 3)) * tau) + (1.0 / 3)) - 1, 0, Known - 1)]
            : quantile;
    }

    /// <summary>Median and percentiles.</summary>
    /// <returns>For instance <c>84.2 % (5th to 95th percentile 81.0 % to 87.6 %)</c>.</returns>
    public override string ToString() =>
        Known == 0
            ? "no sample has a value"
            : FormattableString.Invariant(
                $"{Percentile(Ratio.FromPercent(50))} (5th to 95th percentile {Percentile(Ratio.FromPercent(5))} to {Percentile(Ratio.FromPercent(95))})");
}
