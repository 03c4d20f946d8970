namespace FuelSizing.Findings;

/// <summary>Points through which a kinked line is to go, y less the slope under the kink times x.</summary>
/// <remarks>
/// Both x and y are noisy. A residual is divided by √(1 + (s q)²), s the slope there and q the ratio of the noises, which makes
/// least squares total least squares: without it the noise in x would flatten the slope (Fuller, Measurement Error Models, 1987,
/// chapter 1; from memory).
/// </remarks>
/// <param name="x">Places.</param>
/// <param name="above">y less the slope under the kink times x.</param>
/// <param name="slopeBelow">Slope under the kink.</param>
/// <param name="noiseRatio">q.</param>
/// <param name="minimum">Lowest place the kink may have.</param>
/// <param name="maximum">Highest.</param>
internal sealed class KinkPoints(double[] x, double[] above, double slopeBelow, double noiseRatio, double minimum, double maximum)
{
    private readonly double _square = noiseRatio * noiseRatio;

    /// <summary>Places.</summary>
    public double[] X => x;

    /// <summary>y less the slope under the kink times x.</summary>
    public double[] Above => above;

    /// <summary>Lowest place the kink may have.</summary>
    public double Minimum => minimum;

    /// <summary>Highest place the kink may have.</summary>
    public double Maximum => maximum;

    /// <summary>Number of points.</summary>
    public int Count => x.Length;

    /// <summary>How much wider than y's noise the residuals are at a point: √(1 + (s q)²).</summary>
    public double Widening(in Kinked at, int point)
    {
        double slope = slopeBelow + (x[point] > at.Onset ? at.Step : 0);
        return Math.Sqrt(1 + (slope * slope * _square));
    }

    /// <summary>Distance of a point from the line, as if it were all in y.</summary>
    public double Residual(in Kinked at, int point) =>
        (above[point] - at.Intercept - (at.Step * Math.Max(0, x[point] - at.Onset))) / Widening(at, point);

    /// <summary>All residuals.</summary>
    public double[] Residuals(in Kinked at)
    {
        double[] residuals = new double[x.Length];
        for (int i = 0; i < residuals.Length; i++)
        {
            residuals[i] = Residual(at, i);
        }

        return residuals;
    }

    /// <summary>Fall of a point's residual with intercept, step and onset.</summary>
    public void Derivatives(in Kinked at, int point, Span<double> row)
    {
        double widening = Widening(at, point);
        bool over = x[point] > at.Onset;
        row[0] = 1 / widening;
        row[1] = over
            ? ((x[point] - at.Onset) / widening)
                + (Residual(at, point) * (slopeBelow + at.Step) * _square / (widening * widening))
            : 0;
        row[2] = over ? -at.Step / widening : 0;
    }

    /// <summary>Sum of the bisquare's losses.</summary>
    public double Loss(in Kinked at)
    {
        double loss = 0;
        for (int i = 0; i < x.Length; i++)
        {
            loss += RobustLoss.BisquareLoss(Residual(at, i) / at.Scale);
        }

        return loss;
    }
}
