using MathNet.Numerics.Statistics;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>Estimates the variance-based indices of any function of the unit cube.</summary>
internal static class SobolEstimator
{
    private const uint SetA = 0;
    private const uint SetB = 1;

    /// <summary>Evaluates the function at A, B and each AB_i, and takes the means.</summary>
    /// <param name="function">Of the unit cube.</param>
    /// <param name="inputs">For each input its random streams: the function's coordinates in order, several to a group.</param>
    /// <param name="sampling">Samples of each set.</param>
    /// <param name="progress">Told the share done.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static SobolIndices Estimate(
        CubeFunction function,
        IReadOnlyList<uint[]> inputs,
        Sampling sampling,
        IProgress<Ratio>? progress = null,
        CancellationToken cancellation = default)
    {
        uint[] streams = [.. inputs.SelectMany(input => input)];
        double[] a = new double[sampling.Samples];
        double[] b = new double[sampling.Samples];
        double[][] mixed = [.. inputs.Select(_ => new double[sampling.Samples])];
        int done = SampleBlocks.Run(
            sampling,
            sample =>
            {
                Span<double> one = stackalloc double[streams.Length];
                Span<double> other = stackalloc double[streams.Length];
                CubeSample.Draw(sampling.Seed, sample, SetA, streams, one);
                CubeSample.Draw(sampling.Seed, sample, SetB, streams, other);
                a[sample] = function(one);
                b[sample] = function(other);
                int first = 0;
                for (int input = 0; input < inputs.Count; input++)
                {
                    for (int coordinate = first; coordinate < first + inputs[input].Length; coordinate++)
                    {
                        (one[coordinate], other[coordinate]) = (other[coordinate], one[coordinate]);
                    }

                    mixed[input][sample] = function(one);
                    for (int coordinate = first; coordinate < first + inputs[input].Length; coordinate++)
                    {
                        (one[coordinate], other[coordinate]) = (other[coordinate], one[coordinate]);
                    }

                    first += inputs[input].Length;
                }
            },
            progress,
            cancellation);
        return done > 0
            ? Indices(a, b, mixed, done)
            : throw new OperationCanceledException("The run was stopped before a sample was done.", cancellation);
    }

    private static SobolIndices Indices(double[] a, double[] b, double[][] mixed, int done)
    {
        int[] known =
        [
            .. Enumerable.Range(0, done).Where(sample =>
                !double.IsNaN(a[sample]) && !double.IsNaN(b[sample])
                && Array.TrueForAll(mixed, values => !double.IsNaN(values[sample]))),
        ];
        double mean = known.Length == 0 ? double.NaN : ArrayStatistics.Mean([.. known.SelectMany(s => new[] { a[s], b[s] })]);
        double[] variances = Array.ConvertAll(known, s => VarianceShare.VarianceTerm(a[s], b[s], mean));
        double variance = ArrayStatistics.Mean(variances);

        // Rounding alone makes a constant output vary by a part in 10¹⁶ or so.
        bool varies = Math.Sqrt(variance) > 1e-13 * Math.Abs(mean);
        (double Index, double Error)[] first = Array.ConvertAll(mixed, values => Ratio(Array.ConvertAll(
            known, s => VarianceShare.FirstOrderTerm(b[s], a[s], values[s], mean))));
        (double Index, double Error)[] total = Array.ConvertAll(mixed, values => Ratio(Array.ConvertAll(
            known, s => VarianceShare.TotalTerm(a[s], values[s]))));
        return new()
        {
            Samples = done,
            CannotSay = done - known.Length,
            Mean = mean,
            Variance = varies ? variance : 0,
            FirstOrder = Array.ConvertAll(first, index => index.Index),
            FirstOrderError = Array.ConvertAll(first, index => index.Error),
            Total = Array.ConvertAll(total, index => index.Index),
            TotalError = Array.ConvertAll(total, index => index.Error),
        };

        (double Index, double Error) Ratio(double[] terms)
        {
            if (!varies)
            {
                return (0, 0);
            }

            double ratio = ArrayStatistics.Mean(terms) / variance;
            double[] influence = new double[terms.Length];
            for (int sample = 0; sample < terms.Length; sample++)
            {
                influence[sample] = VarianceShare.Influence(terms[sample], ratio, variances[sample], variance);
            }

            return (ratio, ArrayStatistics.StandardDeviation(influence) / Math.Sqrt(terms.Length));
        }
    }
}
