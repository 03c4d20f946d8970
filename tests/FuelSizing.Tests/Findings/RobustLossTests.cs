using FuelSizing.Findings;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace FuelSizing.Tests.Findings;

/// <summary>Losses, weights and slopes belong together, and their constants do what they are there for.</summary>
public class RobustLossTests
{
    /// <summary>
    /// Asymptotic efficiency of an M-estimator of location on normal noise, (E ψ')²/E ψ² (Huber and Ronchetti, Robust Statistics, 2nd
    /// ed., 2009, equation 3.9 with the normal's Fisher information of 1; number of the equation from memory).
    /// </summary>
    [Fact]
    public void Constants_GiveNinetyFivePerCentEfficiencyOnNormalNoise()
    {
        Assert.Equal(0.95, Efficiency(u => RobustLoss.HuberWeight(u) * u, u => Math.Abs(u) < RobustLoss.Huber ? 1 : 0), 3);
        Assert.Equal(0.95, Efficiency(u => RobustLoss.BisquareWeight(u) * u, RobustLoss.BisquareSlope), 3);
    }

    [Fact]
    public void MedianDeviation_OfNormalNoise_IsMadItsStandardDeviation() =>
        Assert.Equal(0.75, Normal.CDF(0, 1, 1 / RobustLoss.NormalConsistency), 10);

    [Theory]
    [InlineData(-6.1)]
    [InlineData(-2.3)]
    [InlineData(0.4)]
    [InlineData(1.1)]
    [InlineData(4.2)]
    public void Weight_IsTheLossesSlopeOverTheResidual(double residual)
    {
        const double Step = 1e-5;
        Assert.Equal(
            (RobustLoss.HuberLoss(residual + Step) - RobustLoss.HuberLoss(residual - Step)) / (2 * Step),
            RobustLoss.HuberWeight(residual) * residual,
            6);
        Assert.Equal(
            (RobustLoss.BisquareLoss(residual + Step) - RobustLoss.BisquareLoss(residual - Step)) / (2 * Step),
            RobustLoss.BisquareWeight(residual) * residual,
            6);
        Assert.Equal(
            ((RobustLoss.BisquareWeight(residual + Step) * (residual + Step)) - (RobustLoss.BisquareWeight(residual - Step) * (residual - Step))) / (2 * Step),
            RobustLoss.BisquareSlope(residual),
            6);
    }

    /// <summary>
    /// The definitions (Huber and Ronchetti, Robust Statistics, 2nd ed., 2009, chapter 4; the bisquare's from memory): Huber's ½u² up to k and
    /// k(u − ½k) over it; the bisquare's c²/6 (1 − (1 − (u/c)²)³) up to c and c²/6 over it.
    /// </summary>
    [Fact]
    public void Losses_AreAsDefined()
    {
        Assert.Equal(0.5 * 1.2 * 1.2, RobustLoss.HuberLoss(-1.2), 12);
        Assert.Equal(0.5 * 1.345 * 1.345, RobustLoss.HuberLoss(1.345), 12);
        Assert.Equal(1.345 * (3 - (0.5 * 1.345)), RobustLoss.HuberLoss(3), 12);
        Assert.Equal(1, RobustLoss.HuberWeight(-1.345));
        Assert.Equal(1.345 / 3, RobustLoss.HuberWeight(-3), 12);
        Assert.Equal(4.685 * 4.685 / 6 * (1 - Math.Pow(1 - Math.Pow(2 / 4.685, 2), 3)), RobustLoss.BisquareLoss(-2), 12);
        Assert.Equal(4.685 * 4.685 / 6, RobustLoss.BisquareLoss(7), 12);
        Assert.Equal(Math.Pow(1 - Math.Pow(2 / 4.685, 2), 2), RobustLoss.BisquareWeight(2), 12);
        Assert.Equal(0, RobustLoss.BisquareWeight(-4.7));
        Assert.Equal(0, RobustLoss.BisquareSlope(4.7));
        Assert.Equal((1 - Math.Pow(2 / 4.685, 2)) * (1 - (5 * Math.Pow(2 / 4.685, 2))), RobustLoss.BisquareSlope(2), 12);
    }

    private static double Efficiency(Func<double, double> influence, Func<double, double> slope)
    {
        double mean = Mean(slope);
        return mean * mean / Mean(u => influence(u) * influence(u));
    }

    // In pieces that end where a loss changes.
    private static double Mean(Func<double, double> of)
    {
        double[] ends = [-9, -RobustLoss.Bisquare, -RobustLoss.Huber, RobustLoss.Huber, RobustLoss.Bisquare, 9];
        return ends.Zip(ends.Skip(1)).Sum(piece => GaussLegendreRule.Integrate(
            u => of(u) * Normal.PDF(0, 1, u), piece.First + 1e-12, piece.Second - 1e-12, 64));
    }
}
