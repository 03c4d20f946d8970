using FuelSizing.Findings;
using FuelSizing.Quantities;
using MathNet.Numerics.Distributions;

namespace FuelSizing.Tests.Findings;

/// <summary>What a proposed test promises, against closed forms of two normal readings.</summary>
public class NextTestTests
{
    /// <summary>Two as probable, readings 2 d apart with a deviation of 1: the right one is the nearer with Φ(d), a standard result of discrimination.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(1.3)]
    [InlineData(3)]
    public void TwoAlike_AreToldApartAsFarAsTheyLieApart(double half)
    {
        NextTest test = Of([1, 1], [-half, half], [1, 1]);
        Assert.Equal(Normal.CDF(0, 1, half), test.Separates.DecimalFractions, 0.02);
        Assert.InRange(test.Information, 0, 1);

        // Mutual information of a fair bit through Gaussian noise, by the trapezoidal rule on the definition over ±12.
        double bits = 0;
        const double Step = 0.001;
        for (double y = -12; y <= 12; y += Step)
        {
            double own = Normal.PDF(half, 1, y);
            double both = (own + Normal.PDF(-half, 1, y)) / 2;
            bits += own > 0 ? own * Math.Log2(own / both) * Step : 0;
        }

        Assert.Equal(bits, test.Information, 0.005);
    }

    /// <summary>Readings alike tell nothing; readings far apart tell everything that there is: the entropy of the weights.</summary>
    [Fact]
    public void Information_IsNoneToAll()
    {
        Assert.Equal(0, Of([1, 3], [5, 5], [2, 2]).Information, 1e-9);
        Assert.Equal(0.75, Of([1, 3], [5, 5], [2, 2]).Separates.DecimalFractions, 1e-9);
        Assert.Equal((0.25 * 2) + (0.75 * Math.Log2(4 / 3.0)), Of([1, 3], [0, 100], [2, 2]).Information, 1e-6);
        Assert.Equal(1, Of([1, 3], [0, 100], [2, 2]).Separates.DecimalFractions, 1e-9);
    }

    /// <summary>Bayes' theorem by hand: a reading of 1 is e^(−½·1²)/e^(−½·3²) = e⁴ times as probable of the first, which was a quarter.</summary>
    [Fact]
    public void After_IsBayesTheorem()
    {
        IReadOnlyList<(RunFault Fault, double Probability)> after = Of([1, 3], [0, 4], [1, 1]).After(1);
        Assert.Equal(RunFault.WeakPump, after[0].Fault);
        Assert.Equal(Math.Exp(4) / (Math.Exp(4) + 3), after[0].Probability, 1e-12);
        Assert.Equal(RunFault.CloggedFilter, after[1].Fault);
        Assert.Equal(1, after.Sum(one => one.Probability), 1e-12);
    }

    [Fact]
    public void Text_SaysWhatItPromises()
    {
        NextTest test = Of([1, 1], [-1.2816, 1.2816], [1, 1]);
        Assert.Equal($"Weigh it. It is expected to point to the right one with a probability of {Readable.Chance(test.Separates)}.", test.ToString());
        Assert.Equal("run.next-test", test.Text.Code);
    }

    private static NextTest Of(double[] weights, double[] means, double[] deviations) => new(
        new TestedQuantity(RunQuantity.FlowMeter, 1, Statement.Of("next.weigh", $"Weigh it.")), [RunFault.WeakPump, RunFault.CloggedFilter], weights, means, deviations);
}
