using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Statistics;

namespace FuelSizing.Findings;

/// <summary>Straight and kinked lines through noisy points, some of them outliers.</summary>
/// <remarks>
/// M-estimation: the place of the kink is searched with Huber's loss, then all figures are refined with Tukey's bisquare, for
/// which gross outliers count nothing. Covariance is the sandwich A⁻¹ B A⁻¹, which holds also where the noise is not the same
/// everywhere (Huber and Ronchetti, Robust Statistics, 2nd ed., 2009, chapter 7). A kink between two slopes that meet is a
/// regular parameter: its estimate is asymptotically normal, with −(g − s) as its derivative over the kink (Feder, Annals of
/// Statistics 3 (1975) 49; Hansen, Journal of Business and Economic Statistics 35 (2017) 228; both from memory).
/// </remarks>
internal static class RobustRegression
{
    private const int Candidates = 16;
    private const int MaximumSteps = 60;
    private const int MaximumRounds = 12;
    private const double WideShare = 0.8;

    /// <summary>Fits a straight line.</summary>
    public static LineFit Line(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double[] start = new double[2];
        double scale = NoiseScale(x, y);
        for (int step = 0; step < 20; step++)
        {
            start = LineStep(x, y, start, scale, step == 0 ? null : RobustLoss.HuberWeight);
        }

        for (int step = 0; step < 20; step++)
        {
            start = LineStep(x, y, start, scale, RobustLoss.BisquareWeight);
        }

        double[] residuals = new double[x.Length];
        for (int i = 0; i < x.Length; i++)
        {
            residuals[i] = y[i] - start[0] - (start[1] * x[i]);
        }

        double[][] derivatives = [new double[x.Length], x.ToArray()];
        Array.Fill(derivatives[0], 1);
        Matrix<double> covariance = Sandwich(derivatives, residuals, scale);
        return new(
            start[0],
            start[1],
            Math.Sqrt(covariance[0, 0]),
            Math.Sqrt(covariance[1, 1]),
            scale,
            x.Length - 2,
            residuals.Count(r => RobustLoss.BisquareWeight(r / scale) == 0));
    }

    /// <summary>Fits a line with a kink; the slope under the kink is known.</summary>
    /// <param name="x">Not sorted.</param>
    /// <param name="y">A value for each x.</param>
    /// <param name="slopeBelow">s.</param>
    /// <param name="noiseRatio">Standard deviation of x's noise ÷ that of y's.</param>
    /// <param name="leastBeside">Points that must lie on either side of the kink.</param>
    /// <returns>The fit; null where there are too few points.</returns>
    public static KinkFit? Kink(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, double slopeBelow, double noiseRatio, int leastBeside)
    {
        double[] sorted = x.ToArray();
        Array.Sort(sorted);
        if (sorted.Length < (2 * leastBeside) + 2)
        {
            return null;
        }

        (double minimum, double maximum) = (sorted[leastBeside], sorted[^(leastBeside + 1)]);
        if (!(maximum > minimum))
        {
            return null;
        }

        double[] above = new double[x.Length];
        for (int i = 0; i < x.Length; i++)
        {
            above[i] = y[i] - (slopeBelow * x[i]);
        }

        KinkPoints points = new(x.ToArray(), above, slopeBelow, noiseRatio, minimum, maximum);
        Kinked found = Searched(points, NoiseScale(x, above));

        // Begin so wide that the points beside a kink that is not yet in its place still count.
        double scale = Math.Max(
            found.Scale, points.Residuals(found).Select(Math.Abs).Quantile(WideShare) / Normal.InvCDF(0, 1, 0.5 + (WideShare / 2)));
        found = Refined(points, found with { Scale = scale });
        for (int round = 0; round < MaximumRounds; round++)
        {
            // Step by step, for points that fit badly under a start's wide scale would be outliers under a narrow one.
            double next = Math.Max(scale / 4, ScaleOf(points.Residuals(found), 3));
            bool settled = Math.Abs(next - scale) < 0.1 * scale;
            (scale, found) = (next, Refined(points, found with { Scale = next }));
            if (settled)
            {
                break;
            }
        }

        double[] residuals = points.Residuals(found);
        double[][] derivatives = [new double[x.Length], new double[x.Length], new double[x.Length]];
        Span<double> row = stackalloc double[3];
        for (int i = 0; i < x.Length; i++)
        {
            points.Derivatives(found, i, row);
            (derivatives[0][i], derivatives[1][i], derivatives[2][i]) = (row[0], row[1], row[2]);
        }

        return new(
            found.Intercept,
            slopeBelow + found.Step,
            found.Onset,
            scale,
            Sandwich(derivatives, residuals, scale),
            x.Length - 3,
            residuals.Count(r => RobustLoss.BisquareWeight(r / scale) == 0))
        {
            Evidence = 2 * (StraightLoss(x, y, points, found) - points.Loss(found)),
        };
    }

    private static double StraightLoss(ReadOnlySpan<double> x, ReadOnlySpan<double> y, KinkPoints points, in Kinked kinked)
    {
        LineFit line = Line(x, y);
        double loss = 0;
        for (int i = 0; i < x.Length; i++)
        {
            loss += RobustLoss.BisquareLoss(
                (y[i] - line.Intercept - (line.Slope * x[i])) / (kinked.Scale * points.Widening(kinked, i)));
        }

        return loss;
    }

    /// <summary>
    /// Noise about whatever smooth course the points follow: from differences between neighbours in x, whose standard
    /// deviation is √2 that of the noise.
    /// </summary>
    private static double NoiseScale(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        (double[] places, double[] values) = (x.ToArray(), y.ToArray());
        Array.Sort(places, values);
        double[] steps = new double[Math.Max(1, values.Length - 1)];
        for (int i = 1; i < values.Length; i++)
        {
            steps[i - 1] = Math.Abs(values[i] - values[i - 1]);
        }

        double size = Math.Abs(values.Average()) + values.Maximum() - values.Minimum();
        return Math.Max(
            RobustLoss.NormalConsistency * steps.Median() / Math.Sqrt(2),
            1e-9 * Math.Max(size, double.Epsilon * 1e20));
    }

    private static double ScaleOf(double[] residuals, int figures) =>
        RobustLoss.NormalConsistency
        * residuals.Select(Math.Abs).Median()
        * Math.Sqrt((double)residuals.Length / (residuals.Length - figures));

    private static double[] LineStep(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, double[] from, double scale, Func<double, double>? weightOf)
    {
        double[] sums = new double[5];
        for (int i = 0; i < x.Length; i++)
        {
            double weight = weightOf?.Invoke((y[i] - from[0] - (from[1] * x[i])) / scale) ?? 1;
            sums[0] += weight;
            sums[1] += weight * x[i];
            sums[2] += weight * x[i] * x[i];
            sums[3] += weight * y[i];
            sums[4] += weight * x[i] * y[i];
        }

        double determinant = (sums[0] * sums[2]) - (sums[1] * sums[1]);
        return determinant > 1e-12 * sums[0] * sums[2]
            ? [((sums[2] * sums[3]) - (sums[1] * sums[4])) / determinant, ((sums[0] * sums[4]) - (sums[1] * sums[3])) / determinant]
            : [sums[0] > 0 ? sums[3] / sums[0] : from[0], 0];
    }

    private static Kinked Searched(KinkPoints points, double scale)
    {
        (Kinked best, double minimumLoss) = (default, double.PositiveInfinity);
        double[] beyond = new double[points.Count];
        for (int candidate = 0; candidate < Candidates; candidate++)
        {
            double onset = points.Minimum + ((points.Maximum - points.Minimum) * candidate / (Candidates - 1));
            for (int i = 0; i < beyond.Length; i++)
            {
                beyond[i] = Math.Max(0, points.X[i] - onset);
            }

            double[] line = [0, 0];
            for (int step = 0; step < 4; step++)
            {
                line = LineStep(beyond, points.Above, line, scale, step == 0 ? null : RobustLoss.HuberWeight);
            }

            double loss = 0;
            for (int i = 0; i < beyond.Length; i++)
            {
                loss += RobustLoss.HuberLoss((points.Above[i] - line[0] - (line[1] * beyond[i])) / scale);
            }

            (best, minimumLoss) = loss < minimumLoss ? (new(line[0], line[1], onset, scale), loss) : (best, minimumLoss);
        }

        return best;
    }

    /// <summary>Gauss–Newton with the bisquare's weights, the step halved while it does not help.</summary>
    private static Kinked Refined(KinkPoints points, Kinked from)
    {
        Kinked at = from;
        double loss = points.Loss(at);
        Span<double> row = stackalloc double[3];
        for (int step = 0; step < MaximumSteps; step++)
        {
            Matrix<double> normal = Matrix<double>.Build.Dense(3, 3);
            Vector<double> right = Vector<double>.Build.Dense(3);
            for (int i = 0; i < points.Count; i++)
            {
                double residual = points.Residual(at, i);
                double weight = RobustLoss.BisquareWeight(residual / at.Scale);
                if (weight > 0)
                {
                    points.Derivatives(at, i, row);
                    Add(normal, right, row, residual, weight);
                }
            }

            Vector<double> move = Solved(normal, right);
            bool better = false;
            double share = 1;
            for (int halving = 0; halving < 12; halving++, share /= 2)
            {
                Kinked next = new(
                    at.Intercept + (share * move[0]),
                    at.Step + (share * move[1]),
                    Math.Clamp(at.Onset + (share * move[2]), points.Minimum, points.Maximum),
                    at.Scale);
                double nextLoss = points.Loss(next);
                if (nextLoss < loss)
                {
                    better = loss - nextLoss > 1e-9 * (1 + loss);
                    (at, loss) = (next, nextLoss);
                    break;
                }
            }

            if (!better)
            {
                break;
            }
        }

        return at;
    }

    // A kink without a step in slope has no place: the pseudo-inverse leaves it where it is.
    private static Vector<double> Solved(Matrix<double> normal, Vector<double> right)
    {
        Vector<double> size = normal.Diagonal().Map(d => d > 0 ? 1 / Math.Sqrt(d) : 0);
        Matrix<double> scaler = Matrix<double>.Build.DenseOfDiagonalVector(size);
        return scaler * ((scaler * normal * scaler).PseudoInverse() * (scaler * right));
    }

    private static void Add(
        Matrix<double> normal, Vector<double> right, ReadOnlySpan<double> row, double residual, double weight)
    {
        for (int j = 0; j < row.Length; j++)
        {
            right[j] += weight * row[j] * residual;
            for (int k = 0; k < row.Length; k++)
            {
                normal[j, k] += weight * row[j] * row[k];
            }
        }
    }

    /// <summary>
    /// A⁻¹ B A⁻¹ with A = mean ψ' Σ d dᵀ/s and B = Σ (ψ/(1 − l))² d dᵀ, d the derivatives and l the leverage of each point; gathered as
    /// Σ (A⁻¹ d)(A⁻¹ d)ᵀ, for products of whole matrices may leave a variance a rounding error under zero.
    /// </summary>
    private static Matrix<double> Sandwich(double[][] derivatives, double[] residuals, double scale)
    {
        int figures = derivatives.Length;
        int count = residuals.Length;
        Matrix<double> bread = Matrix<double>.Build.Dense(
            figures, figures, (j, k) => derivatives[j].Zip(derivatives[k], (left, right) => left * right).Sum());

        // Scaled to a unit diagonal, for the figures differ by many orders of magnitude.
        Vector<double> size = bread.Diagonal().Map(d => d > 0 ? 1 / Math.Sqrt(d) : 0);
        Matrix<double> scaler = Matrix<double>.Build.DenseOfDiagonalVector(size);
        Matrix<double> inverse = scaler * (scaler * bread * scaler).PseudoInverse() * scaler;
        Matrix<double> filling = Matrix<double>.Build.Dense(figures, figures);
        Vector<double> row = Vector<double>.Build.Dense(figures);
        double slope = 0;
        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j < figures; j++)
            {
                row[j] = derivatives[j][i];
            }

            double unit = residuals[i] / scale;
            slope += RobustLoss.BisquareSlope(unit) / count;
            double influence = RobustLoss.BisquareWeight(unit) * unit;
            if (influence != 0)
            {
                Vector<double> moved = inverse * row;
                double leverage = Math.Min(0.5, row * moved);
                influence /= 1 - leverage;
                for (int j = 0; j < figures; j++)
                {
                    for (int k = 0; k < figures; k++)
                    {
                        filling[j, k] += moved[j] * moved[k] * influence * influence;
                    }
                }
            }
        }

        double factor = scale / Math.Max(slope, 0.05);
        return filling * (factor * factor);
    }
}
