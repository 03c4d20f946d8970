using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using MathNet.Numerics.LinearAlgebra;
using static FuelSizing.Tests.Uncertainty.UncertainWren;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>Independent draws made correlated: z = L Φ⁻¹(p), by hand with round factors and tables of the normal distribution (from memory).</summary>
public class CorrelatedTests
{
    // Φ(1), Φ(−0.5), Φ(0.25), and of the sums below: Φ(0.2), Φ(−0.1).
    private const double OfOne = 0.8413447460685429;
    private const double OfMinusHalf = 0.3085375387259869;
    private const double OfQuarter = 0.5987063256829237;
    private const double OfTwoTenths = 0.579259709439103;
    private const double OfMinusTenth = 0.460172162722971;

    /// <summary>L = (1; 0.6, 0.8; 0, 0.6, 0.8): z = (1, 0.6 − 0.4, −0.3 + 0.2). What lies past the matrix stays.</summary>
    [Fact]
    public void Draws_OfThreeInputs_AreThoseOfTheCholeskyFactor()
    {
        double[] drawn = [OfOne, OfMinusHalf, OfQuarter, 0.777, 0.1];
        Chain.Correlate(drawn);
        Near(OfOne, drawn[0]);
        Near(OfTwoTenths, drawn[1]);
        Near(OfMinusTenth, drawn[2]);
        Assert.Equal([0.777, 0.1], drawn[3..]);
    }

    [Fact]
    public void Draws_OfUncorrelatedInputs_StayAsTheyAre()
    {
        double[] drawn = [0.2, 0.9];
        Correlated.Of(Matrix<double>.Build.DenseIdentity(2)).Correlate(drawn);
        Near(0.2, drawn[0]);
        Near(0.9, drawn[1]);
    }

    /// <summary>At the very ends of both tails a draw stays a probability, off 0 and 1 by 10⁻¹²: a part beyond them may not exist.</summary>
    [Fact]
    public void Draws_AtTheEnds_StayWithin()
    {
        foreach ((double end, double kept) in new[] { (0.0, 1e-12), (1.0, 1 - 1e-12), (1e-16, 1e-12) })
        {
            double[] drawn = [end, end, end];
            Chain.Correlate(drawn);
            Assert.Equal(kept, drawn[0], 1e-14);
            Assert.Equal(kept, drawn[1]);
            Assert.Equal(kept, drawn[2]);
        }
    }

    /// <summary>A system draws by the correlated numbers: (Φ(1), Φ(−0.5)) at a correlation of 0.6 is (Φ(1), Φ(0.2)) without one.</summary>
    [Fact]
    public void System_OfCorrelatedInputs_IsDrawnByTheCorrelatedNumbers()
    {
        Correlated correlated = Correlated.Of(Matrix<double>.Build.DenseOfArray(new[,] { { 1, 0.6 }, { 0.6, 1 } }));
        UncertainSystem system = UncertainSystem.Joined(Car(), Point, correlated, Flow, Bsfc, Volts);
        OperatingResult drawn = Solved(system, system.Drawn([OfOne, OfMinusHalf, 0.3]));
        UncertainSystem apart = Of(Flow, Bsfc, Volts);
        OperatingResult expected = Solved(apart, apart.Drawn([OfOne, OfTwoTenths, 0.3]));
        Assert.Equal(expected.DutyCycle!.Value.DecimalFractions, drawn.DutyCycle!.Value.DecimalFractions, 12);
        Assert.Equal(expected.Demand.FromPower.KilogramsPerSecond, drawn.Demand.FromPower.KilogramsPerSecond, 12);
        double[] point = [OfOne, OfMinusHalf, 0.3];
        system.At(point);
        Assert.Equal([OfOne, OfMinusHalf, 0.3], point);

        InvalidOperationException refused = Assert.Throws<InvalidOperationException>(() => system.Sobol(SystemOutput.DutyCycle, Sampling.Of(16)));
        Assert.Equal(
            "Inputs are correlated, as one experiment has measured them, and indices of variance need independent ones. Use Tornado.",
            refused.Message);
        Assert.Equal(3, system.Tornado(SystemOutput.DutyCycle).Bars.Count);
    }

    private static Correlated Chain => Correlated.Of(Matrix<double>.Build.DenseOfArray(new[,] { { 1, 0.6, 0 }, { 0.6, 1, 0.48 }, { 0, 0.48, 1 } }));

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-9);
}
