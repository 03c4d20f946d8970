using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>Samples in which no fuel is injected have a lambda without end: they count, and leave no mean.</summary>
public class SampleWithoutEndTests
{
    private static readonly OutputSpread<double> Spread = new([0.8, double.PositiveInfinity, 0.9, 1, double.PositiveInfinity], value => value);

    [Fact]
    public void Mean_OfASampleWithoutEnd_IsNone() =>
        Assert.Equal((null, null, null), (Spread.Mean, Spread.StandardDeviation, Spread.StandardErrorOfMean));

    /// <summary>Type 8 of five samples: the median is the third, and the 90th percentile lies between the two without end.</summary>
    [Fact]
    public void Percentile_OfSamplesWithoutEnd_IsANumberOrWithoutEnd()
    {
        Assert.Equal(1, Spread.Percentile(Ratio.FromPercent(50)));
        Assert.Equal(double.PositiveInfinity, Spread.Percentile(Ratio.FromPercent(90)));
        Assert.Equal(0.8, Spread.Percentile(Ratio.Zero));
        Assert.All(Enumerable.Range(0, 101), percent => Assert.False(double.IsNaN(Spread.Percentile(Ratio.FromPercent(percent))!.Value)));
    }

    [Fact]
    public void Known_CountsThem() => Assert.Equal((5, 0), (Spread.Known, Spread.CannotSay));
}
