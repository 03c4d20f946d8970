using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace FuelSizing.Findings;

/// <summary>What can only be off to one side: a regulator's pressure falls with flow and never rises, and no sensor comes early.</summary>
/// <remarks>
/// A fit takes them for normally distributed about zero, so half of what it allows cannot be. Each is cut off at zero in turn, and what is left is taken for
/// normal again, by its mean and variance, with all that goes with it (assumed density filtering; T. P. Minka, Expectation propagation for approximate Bayesian
/// inference, UAI 2001, equation 6 and following, recalled). Left in, the other half makes ranges too wide and draws the slope to zero.
/// </remarks>
internal static class OneSided
{
    private static readonly RunQuantity[] Quantities = [RunQuantity.RegulatorSlope, RunQuantity.ManifoldLag, RunQuantity.RailLag];

    // Further out the tail has no probability that a double holds.
    private const double Furthest = -30;

    /// <summary>Cuts off what cannot be.</summary>
    /// <param name="off">The likeliest state, in units of the tolerances; moved.</param>
    /// <param name="covariance">Its covariance; narrowed.</param>
    /// <returns>ln of how much more probable that makes the run: of what the fit has averaged over, the share that can be, over a half.</returns>
    public static double Cut(double[] off, Matrix<double> covariance)
    {
        double log = 0;
        foreach (RunQuantity quantity in Quantities)
        {
            int place = (int)quantity;
            double variance = covariance[place, place];
            double deviation = Math.Sqrt(variance);
            double away = Math.Max(Furthest, off[place] / deviation);
            double share = SpecialFunctions.Erfc(-away / Constants.Sqrt2) / 2;
            double ratio = Normal.PDF(0, 1, away) / share;
            log += Math.Log(2 * share);
            double moved = ratio / deviation;
            double narrowed = ratio * (ratio + away) / variance;
            double[] with = [.. covariance.Column(place)];
            for (int row = 0; row < off.Length; row++)
            {
                off[row] += with[row] * moved;
                for (int column = 0; with[row] != 0 && column < off.Length; column++)
                {
                    covariance[row, column] -= with[row] * with[column] * narrowed;
                }
            }
        }

        return log;
    }
}
