using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace FuelSizing.Uncertainty;

/// <summary>Makes independent draws of the first inputs correlated, each keeping its own distribution: a Gaussian copula.</summary>
/// <remarks>z = L Φ⁻¹(p), L the Cholesky factor of the correlations; back by Φ (Sklar's theorem with normal margins, textbook result).</remarks>
internal sealed class Correlated
{
    // Where Φ still differs from 0 and 1.
    private const double Tail = 1e-12;

    private readonly double[,] _factor;

    private Correlated(double[,] factor) => _factor = factor;

    /// <summary>From a matrix of correlations, its diagonal 1.</summary>
    public static Correlated Of(Matrix<double> correlations) => new(correlations.Cholesky().Factor.ToArray());

    /// <summary>Probabilities of the first inputs, correlated in place.</summary>
    public void Correlate(Span<double> probabilities)
    {
        int count = _factor.GetLength(0);
        Span<double> normal = stackalloc double[count];
        for (int i = 0; i < count; i++)
        {
            normal[i] = Normal.InvCDF(0, 1, Math.Clamp(probabilities[i], Tail, 1 - Tail));
        }

        for (int i = 0; i < count; i++)
        {
            double sum = 0;
            for (int j = 0; j <= i; j++)
            {
                sum += _factor[i, j] * normal[j];
            }

            probabilities[i] = Math.Clamp(Normal.CDF(0, 1, sum), Tail, 1 - Tail);
        }
    }
}
