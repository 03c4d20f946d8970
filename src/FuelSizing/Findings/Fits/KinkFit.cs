using MathNet.Numerics.LinearAlgebra;

namespace FuelSizing.Findings;

/// <summary>A line with a kink, y = a + s·min(x, o) + g·max(0, x − o), as fitted, with its covariance.</summary>
/// <param name="Intercept">a.</param>
/// <param name="Gain">g, slope over the kink.</param>
/// <param name="Onset">o, place of the kink.</param>
/// <param name="Scale">Standard deviation of the noise, outliers apart.</param>
/// <param name="Covariance">Of a, g, o in this order.</param>
/// <param name="Freedom">Degrees of freedom.</param>
/// <param name="Outliers">Points that carry no weight.</param>
internal sealed record KinkFit(
    double Intercept, double Gain, double Onset, double Scale, Matrix<double> Covariance, int Freedom, int Outliers)
{
    /// <summary>How much better the kink fits than a straight line of any slope: twice the gain in log likelihood.</summary>
    public double Evidence { get; init; }
}
