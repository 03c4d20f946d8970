using FuelSizing.Findings;
using MathNet.Numerics.LinearAlgebra;

namespace FuelSizing.Tests.Findings;

/// <summary>
/// Lines and kinked lines fitted to a few points: the answer satisfies the equations that define it, and its covariance is the formula's,
/// written out here.
/// </summary>
public class RobustRegressionTests
{
    /// <summary>Scatter of two dozen points about a line, one of them gross, in the order of the points.</summary>
    private static readonly double[] Scatter =
    [
        0.3, -1.1, 0.8, -0.2, 1.4, -0.7, 0.1, -1.6, 0.9, 0.4, -0.5, 1.2, -0.9, 0.6, -0.1, -1.3, 1.0, 0.2, -0.4, 0.7, -0.8, 1.5, -0.6, 40,
    ];

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Line_ThroughPointsOnALine_IsThatLine(double sign)
    {
        double[] x = [4, -2, 7, 1, 0, 9, 3, -5, 6, 2];
        LineFit fit = RobustRegression.Line(x, Array.ConvertAll(x, place => (sign * 2.5 * place) - 7));
        Assert.Equal(-7, fit.Intercept, 9);
        Assert.Equal(sign * 2.5, fit.Slope, 9);
        Assert.Equal(0, fit.InterceptError, 6);
        Assert.Equal(0, fit.SlopeError, 6);
        Assert.Equal(8, fit.Freedom);
        Assert.Equal(0, fit.Outliers);
    }

    /// <summary>The equations of an M-estimate: Σ ψ(r/s) = 0 and Σ x ψ(r/s) = 0, ψ(u) = u (1 − (u/4.685)²)² (Huber and Ronchetti, chapter 7).</summary>
    [Fact]
    public void Line_OfScatteredPoints_SolvesTheBisquaresEquations()
    {
        (double[] x, double[] y) = Points(place => 12 - (3 * place));
        LineFit fit = RobustRegression.Line(x, y);
        double[] influence = [.. x.Zip(y, (place, value) => Influence((value - fit.Intercept - (fit.Slope * place)) / fit.Scale))];
        Assert.Equal(0, influence.Sum(), 6);
        Assert.Equal(0, influence.Zip(x, (one, place) => one * place).Sum(), 6);
        Assert.Equal(1, fit.Outliers);
        Assert.Equal(22, fit.Freedom);
        Assert.Equal(-3, fit.Slope, 0.4);

        // The scale: the median of the steps from point to point along x, over √2 and over 0.6745.
        double[] steps = [.. y.Zip(y.Skip(1), (first, second) => Math.Abs(second - first)).Order()];
        Assert.Equal(1.4826 * steps[11] / Math.Sqrt(2), fit.Scale, 4);
        Matrix<double> covariance = Sandwich([[.. x.Select(_ => 1.0)], x], [.. x.Zip(y, (place, value) => value - fit.Intercept - (fit.Slope * place))], fit.Scale);
        Assert.Equal(Math.Sqrt(covariance[0, 0]), fit.InterceptError, 8);
        Assert.Equal(Math.Sqrt(covariance[1, 1]), fit.SlopeError, 8);
    }

    /// <summary>The order of the points is no part of the answer.</summary>
    [Fact]
    public void Line_OfPointsInAnyOrder_IsTheSame()
    {
        (double[] x, double[] y) = Points(place => 12 - (3 * place));
        int[] order = [.. Enumerable.Range(0, x.Length).OrderBy(i => i * 7 % 24)];
        (LineFit straight, LineFit mixed) =
            (RobustRegression.Line(x, y), RobustRegression.Line([.. order.Select(i => x[i])], [.. order.Select(i => y[i])]));
        Assert.Equal(straight.Slope, mixed.Slope, 9);
        Assert.Equal(straight.Scale, mixed.Scale, 12);
        Assert.Equal(straight.SlopeError, mixed.SlopeError, 9);
    }

    /// <summary>At one place only no slope can be told: the line is level, at the height of the points.</summary>
    [Fact]
    public void Line_ThroughPointsAtOnePlace_IsLevel()
    {
        LineFit fit = RobustRegression.Line([5, 5, 5, 5], [10, 11, 12, 11]);
        Assert.Equal(0, fit.Slope);
        Assert.Equal(11, fit.Intercept, 6);
    }

    [Fact]
    public void Kink_OfTooFewPoints_IsNone()
    {
        double[] x = [.. Enumerable.Range(0, 12).Select(i => (double)i)];
        double[] y = Array.ConvertAll(x, place => Kinked(place, 1, 4, 5.5));
        Assert.Null(RobustRegression.Kink(x.AsSpan(0, 11), y.AsSpan(0, 11), 1, 0.1, 5));
        Assert.Null(RobustRegression.Kink(x.AsSpan(0, 3), y.AsSpan(0, 3), 1, 0.1, 5));
        Assert.NotNull(RobustRegression.Kink(x, y, 1, 0.1, 5));
    }

    /// <summary>With no room between the fifth points from either end there is nowhere to look for a kink.</summary>
    [Fact]
    public void Kink_OfPointsAtOnePlace_IsNone() =>
        Assert.Null(RobustRegression.Kink([1, 2, 3, 4, 5, 5, 5, 6, 7, 8, 9, 5], [1, 2, 3, 4, 5, 5, 5, 6, 7, 8, 9, 5], 1, 0.1, 5));

    [Theory]
    [InlineData(1, 4, 2.5)]
    [InlineData(1, 1.6, -3)]
    [InlineData(0, 2.2, 0.4)]
    [InlineData(1, -2, 1.5)]
    public void Kink_ThroughPointsOnAKinkedLine_IsThatLine(double below, double above, double onset)
    {
        double[] x = [.. Enumerable.Range(0, 41).Select(i => -10 + (0.5 * ((i * 17) % 41)))];
        KinkFit fit = RobustRegression.Kink(x, Array.ConvertAll(x, place => 30 + Kinked(place, below, above, onset)), below, 0, 5)!;
        Assert.Equal(30, fit.Intercept, 4);
        Assert.Equal(above, fit.Gain, 4);
        Assert.Equal(onset, fit.Onset, 4);
        Assert.Equal(38, fit.Freedom);
        Assert.Equal(0, fit.Outliers);
        Assert.True(fit.Evidence > 100);
    }

    /// <summary>
    /// Forty to seventy places drawn at random, a kink anywhere between, a fifth of the points beyond it far off, all to one side, the others scattered by 0.01: nine in ten of such
    /// kinked lines are found, for their place is looked for over the whole range before it is refined. The rest end in another minimum; without that search it is every second.
    /// </summary>
    [Fact]
    public void Kink_WithPointsFarOff_IsFoundWhereverItLies()
    {
        const int Lines = 200;
        int found = 0;
        for (int seed = 0; seed < Lines; seed++)
        {
            Random drawn = new(seed);
            int count = 40 + drawn.Next(30);
            double below = drawn.Next(2);
            double above = below + ((drawn.Next(2) == 0 ? 1 : -1) * (1 + (9 * drawn.NextDouble())));
            double onset = 4 + (12 * drawn.NextDouble());
            double off = (drawn.Next(2) == 0 ? 1 : -1) * (30 + (70 * drawn.NextDouble()));
            double[] x = [.. Enumerable.Range(0, count).Select(_ => 20 * drawn.NextDouble())];
            double[] y = Array.ConvertAll(
                x,
                place => 30 + Kinked(place, below, above, onset) + (0.01 * (drawn.NextDouble() + drawn.NextDouble() - 1)) + (place > onset && drawn.NextDouble() < 0.2 ? off : 0));
            KinkFit fit = RobustRegression.Kink(x, y, below, 0.2, 5)!;
            found += Math.Abs(fit.Onset - onset) < 0.05 && Math.Abs(fit.Gain - above) < 0.05 && Math.Abs(fit.Intercept - 30) < 0.05 ? 1 : 0;
        }

        Assert.InRange(found, 0.87 * Lines, Lines);
    }

    /// <summary>
    /// A minimum of the bisquare's loss about which it rises either way in each figure; figures in error by what the sandwich says; and
    /// evidence of twice what the loss falls against a straight line.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.25)]
    public void Kink_OfScatteredPoints_HasTheLeastLoss(double noiseRatio)
    {
        (double[] x, double[] y) = Points(place => Kinked(place, 1, 5, 10.3));
        KinkFit fit = RobustRegression.Kink(x, y, 1, noiseRatio, 5)!;
        double Residual(double intercept, double gain, double onset, int i)
        {
            double slope = x[i] > onset ? gain : 1;
            return (y[i] - intercept - Kinked(x[i], 1, gain, onset)) / Math.Sqrt(1 + (slope * slope * noiseRatio * noiseRatio));
        }

        double LossAt(double intercept, double gain, double onset) =>
            Enumerable.Range(0, x.Length).Sum(i => Loss(Residual(intercept, gain, onset, i) / fit.Scale));
        double minimum = LossAt(fit.Intercept, fit.Gain, fit.Onset);
        foreach (double step in new[] { -0.02, 0.02 })
        {
            Assert.True(LossAt(fit.Intercept + step, fit.Gain, fit.Onset) > minimum);
            Assert.True(LossAt(fit.Intercept, fit.Gain + step, fit.Onset) > minimum);
            Assert.True(LossAt(fit.Intercept, fit.Gain, fit.Onset + step) > minimum);
        }

        const double Step = 1e-4;
        Assert.Equal(0, (LossAt(fit.Intercept + Step, fit.Gain, fit.Onset) - LossAt(fit.Intercept - Step, fit.Gain, fit.Onset)) / (2 * Step), 0.02);
        Assert.Equal(0, (LossAt(fit.Intercept, fit.Gain + Step, fit.Onset) - LossAt(fit.Intercept, fit.Gain - Step, fit.Onset)) / (2 * Step), 0.02);
        Assert.Equal(0, (LossAt(fit.Intercept, fit.Gain, fit.Onset + Step) - LossAt(fit.Intercept, fit.Gain, fit.Onset - Step)) / (2 * Step), 0.02);

        Assert.Equal(1, fit.Outliers);
        Assert.Equal(21, fit.Freedom);
        double[] residuals = [.. Enumerable.Range(0, x.Length).Select(i => Residual(fit.Intercept, fit.Gain, fit.Onset, i))];

        // The median of the sizes of the residuals over 0.6745, and for three figures fitted.
        double[] sizes = [.. residuals.Select(Math.Abs).Order()];
        Assert.Equal(1.4826 * 0.5 * (sizes[11] + sizes[12]) * Math.Sqrt(24.0 / 21), fit.Scale, 0.1 * fit.Scale);

        double[][] derivatives =
        [
            [.. x.Select((_, i) => Fall(i, 1e-5, 0, 0))],
            [.. x.Select((_, i) => Fall(i, 0, 1e-5, 0))],
            [.. x.Select((_, i) => Fall(i, 0, 0, 1e-5))],
        ];
        double Fall(int i, double intercept, double gain, double onset) =>
            -(Residual(fit.Intercept + intercept, fit.Gain + gain, fit.Onset + onset, i)
                - Residual(fit.Intercept - intercept, fit.Gain - gain, fit.Onset - onset, i)) / 2e-5;
        Matrix<double> covariance = Sandwich(derivatives, residuals, fit.Scale);
        for (int row = 0; row < 3; row++)
        {
            for (int column = 0; column < 3; column++)
            {
                Assert.Equal(covariance[row, column], fit.Covariance[row, column], 1e-5 * Math.Sqrt(covariance[row, row] * covariance[column, column]));
            }
        }

        LineFit line = RobustRegression.Line(x, y);
        double straight = Enumerable.Range(0, x.Length).Sum(i =>
        {
            double slope = x[i] > fit.Onset ? fit.Gain : 1;
            return Loss((y[i] - line.Intercept - (line.Slope * x[i])) / (fit.Scale * Math.Sqrt(1 + (slope * slope * noiseRatio * noiseRatio))));
        });
        Assert.Equal(2 * (straight - minimum), fit.Evidence, 6);
    }

    /// <summary>A fall of what a point's residual is with each figure, by differences; a residual by hand.</summary>
    [Fact]
    public void Residual_OfAPoint_IsItsDistanceOverTheWidening()
    {
        // Over the kink at 3 the slope is 1 + 4 = 5, so with q = 0.2 the residual is divided by √(1 + 1²) = √2; under it by √(1 + 0.2²).
        KinkPoints points = new([2, 7], [10, 40], 1, 0.2, 0, 9);
        Kinked at = new(8, 4, 3, 2);
        Assert.Equal((10 - 8) / Math.Sqrt(1.04), points.Residual(at, 0), 12);
        Assert.Equal((40 - 8 - 16) / Math.Sqrt(2), points.Residual(at, 1), 12);
        Assert.Equal([points.Residual(at, 0), points.Residual(at, 1)], points.Residuals(at));
        Assert.Equal(Loss(points.Residual(at, 0) / 2) + Loss(points.Residual(at, 1) / 2), points.Loss(at), 12);
        const double Step = 1e-6;
        Span<double> row = stackalloc double[3];
        for (int point = 0; point < 2; point++)
        {
            points.Derivatives(at, point, row);
            Assert.Equal((points.Residual(at with { Intercept = 8 - Step }, point) - points.Residual(at with { Intercept = 8 + Step }, point)) / (2 * Step), row[0], 6);
            Assert.Equal((points.Residual(at with { Step = 4 - Step }, point) - points.Residual(at with { Step = 4 + Step }, point)) / (2 * Step), row[1], 6);
            Assert.Equal((points.Residual(at with { Onset = 3 - Step }, point) - points.Residual(at with { Onset = 3 + Step }, point)) / (2 * Step), row[2], 6);
        }
    }

    /// <summary>A point just at the kink lies on the line under it.</summary>
    [Fact]
    public void Residual_OfAPointAtTheKink_IsThatOfTheLineUnderIt()
    {
        KinkPoints points = new([3], [10], 1, 0.2, 0, 9);
        Span<double> row = stackalloc double[3];
        points.Derivatives(new(8, 4, 3, 2), 0, row);
        Assert.Equal([1 / Math.Sqrt(1.04), 0, 0], row.ToArray());
    }

    private static double Kinked(double x, double below, double above, double onset) =>
        (below * Math.Min(x, onset)) + (above * Math.Max(0, x - onset));

    private static (double[] X, double[] Y) Points(Func<double, double> truth)
    {
        double[] x = [.. Enumerable.Range(0, Scatter.Length).Select(i => (double)i)];
        return (x, [.. x.Select((place, i) => truth(place) + Scatter[i])]);
    }

    private static double Influence(double u) => Math.Abs(u) < 4.685 ? u * Math.Pow(1 - Math.Pow(u / 4.685, 2), 2) : 0;

    private static double Loss(double u) =>
        4.685 * 4.685 / 6 * (Math.Abs(u) < 4.685 ? 1 - Math.Pow(1 - Math.Pow(u / 4.685, 2), 3) : 1);

    /// <summary>
    /// (s/m)² (DᵀD)⁻¹ (Σ ψ² d dᵀ/(1 − l)²) (DᵀD)⁻¹, m the mean of ψ' and l the leverage dᵀ(DᵀD)⁻¹d, at the most a half (Huber and
    /// Ronchetti, chapter 7; the leverage as for least squares).
    /// </summary>
    private static Matrix<double> Sandwich(double[][] derivatives, double[] residuals, double scale)
    {
        Matrix<double> d = Matrix<double>.Build.DenseOfColumnArrays(derivatives);
        Matrix<double> inverse = d.TransposeThisAndMultiply(d).Inverse();
        Matrix<double> filling = Matrix<double>.Build.Dense(derivatives.Length, derivatives.Length);
        double slope = 0;
        for (int i = 0; i < residuals.Length; i++)
        {
            double u = residuals[i] / scale;
            slope += Math.Abs(u) < 4.685 ? (1 - Math.Pow(u / 4.685, 2)) * (1 - (5 * Math.Pow(u / 4.685, 2))) / residuals.Length : 0;
            Vector<double> row = d.Row(i);
            double leverage = Math.Min(0.5, row * inverse * row);
            filling += row.OuterProduct(row) * Math.Pow(Influence(u) / (1 - leverage), 2);
        }

        return inverse * filling * inverse * Math.Pow(scale / slope, 2);
    }
}
