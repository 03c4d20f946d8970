using FuelSizing.Numerics;
using MathNet.Numerics.Distributions;

namespace FuelSizing.Bench;

/// <summary>Means of readings that were repeated at several set points, with a scatter that all set points share.</summary>
/// <remarks>
/// A few repeats of one set point tell little of a scatter; those of all of them together do. A reading's variance is the stated one and, where repeats differ by more, another that is the same
/// share of the figure at every set point: that at which the sum of squares is what chance makes it (Paule and Mandel, Consensus values and weighting factors, Journal of Research of the
/// National Bureau of Standards 87 (1982) 377; recalled). Where repeats differ by less than stated, the stated deviations stand.
/// </remarks>
internal sealed class PooledMeans
{
    /// <summary>Two-sided 95 % of a normal: what is stated, and not estimated from readings.</summary>
    public const double StatedReach = 1.959963984540054;

    private const double Confidence = 0.95;

    // A reading without a repeat is its own mean but for these.
    private const double LastBits = 1e-9;

    private readonly LinearFit _fit;

    private PooledMeans(double[] means, double[] deviations, LinearFit fit, double extra, int[] outliers)
    {
        (Means, Deviations, _fit) = (means, deviations, fit);
        (Extra, Outliers) = (extra, outliers);
    }

    /// <summary>Of each set point.</summary>
    public IReadOnlyList<double> Means { get; }

    /// <summary>Standard deviation of each mean.</summary>
    public IReadOnlyList<double> Deviations { get; }

    /// <summary>How many of those deviations an interval of 95 % reaches to either side.</summary>
    public double Reach => _fit.Reach(Confidence);

    /// <summary>By how much readings scatter besides what was stated, as a share of the figure.</summary>
    public double Extra { get; }

    /// <summary>Places of readings that are further from their repeats than chance brings one in a hundred tests, and than what was stated explains.</summary>
    public int[] Outliers { get; }

    /// <summary>Half of the interval of 95 % of a mean whose readings share an error of so much standard deviation.</summary>
    public double Half(int place, double shared) => _fit.Half(Deviations[place], shared, Confidence);

    /// <summary>Pools.</summary>
    /// <param name="values">What was read.</param>
    /// <param name="stated">Standard deviation of each, by the instruments.</param>
    /// <param name="places">Which set point each is of, counted from 0; at least one reading each, and one of them more.</param>
    public static PooledMeans Of(double[] values, double[] stated, int[] places)
    {
        int count = places.Max() + 1;
        double[] plain = [.. Enumerable.Range(0, count).Select(place => values.Where((_, reading) => places[reading] == place).Average())];
        int spare = values.Length - count;
        double[] With(double extra) => [.. stated.Select((own, reading) => Math.Sqrt((own * own) + Math.Pow(extra * plain[places[reading]], 2)))];

        double Scatter(double extra)
        {
            double[] deviations = With(extra);
            (double[] means, _) = Weighted(values, deviations, places, count);
            return values.Select((value, reading) => Math.Pow((value - means[places[reading]]) / deviations[reading], 2)).Sum() / spare;
        }

        // The logarithm is of the order of one however far apart stated and found are.
        double extra = Bracket.Of(share => Math.Log(Math.Max(Scatter(share), double.Epsilon)), 0, 1);
        double[] deviations = With(extra);
        (double[] means, double[] deviationsOfMeans) = Weighted(values, deviations, places, count);
        LinearFit fit = LinearFit.Of(
            [.. places.Select(place => Enumerable.Range(0, count).Select(other => other == place ? 1.0 : 0).ToArray())], values, deviations);
        double bound = Normal.InvCDF(0, 1, 1 - (0.005 / values.Length));
        return new(
            means,
            deviationsOfMeans,
            fit,
            extra,
            [.. fit.Outliers().Where(reading => Math.Abs(values[reading] - means[places[reading]]) > bound * stated[reading] * Math.Sqrt(Math.Max(LastBits, 1 - fit.Leverages[reading])))]);
    }

    private static (double[] Means, double[] Deviations) Weighted(double[] values, double[] deviations, int[] places, int count)
    {
        double[] weights = new double[count];
        double[] sums = new double[count];
        for (int reading = 0; reading < values.Length; reading++)
        {
            double weight = 1 / (deviations[reading] * deviations[reading]);
            weights[places[reading]] += weight;
            sums[places[reading]] += weight * values[reading];
        }

        return ([.. sums.Zip(weights, (sum, weight) => sum / weight)], [.. weights.Select(weight => 1 / Math.Sqrt(weight))]);
    }
}
