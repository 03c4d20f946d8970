using FuelSizing.Uncertainty;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>Each statistic once with round numbers, calculated by hand.</summary>
public class StatisticsByHandTests
{
    [Fact]
    public void Proportion_OfTwentyInAHundred()
    {
        Near(0.04, Proportion.StandardError(0.2, 100));

        // Wilson's interval at 1.96: 0.1334 to 0.2888.
        Near(0.211098442, Proportion.ScoreMiddle(0.2, 100, 1.96));
        Near(0.0777325197, Proportion.ScoreHalfWidth(0.2, 100, 1.96));
    }

    [Fact]
    public void TruncatedProbability_OfTheMiddle() => Near(0.45, NormalShape.OfWhole(0.1, 0.8, 0.5));

    [Fact]
    public void VarianceShare_OfOneTerm()
    {
        Near(-8, VarianceShare.FirstOrderTerm(7, 3, 1, 3));
        Near(2, VarianceShare.TotalTerm(3, 1));
        Near(6.5, VarianceShare.VarianceTerm(5, 6, 3));
        Near(0.375, VarianceShare.Influence(5, 0.5, 4, 8));
    }

    /// <summary>95 % lie within 1.96 standard errors on either side of an estimate with a normal error.</summary>
    [Fact]
    public void Intervals_OfAnIndex_AreItsErrorTimesNormalDeviations()
    {
        VarianceOfInput found = new(
            null!,
            new()
            {
                Samples = 100,
                CannotSay = 0,
                Mean = 0,
                Variance = 1,
                FirstOrder = [0.3],
                FirstOrderError = [0.1],
                Total = [0.5],
                TotalError = [0.05],
            },
            0);
        (UnitsNet.Ratio minimum, UnitsNet.Ratio maximum) = found.FirstOrderInterval(UnitsNet.Ratio.FromPercent(95));
        Near(0.3 - 0.195996398, minimum.DecimalFractions);
        Near(0.3 + 0.195996398, maximum.DecimalFractions);
        Near(0.5 + 0.097998199, found.TotalInterval(UnitsNet.Ratio.FromPercent(95)).Maximum.DecimalFractions);
    }

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-6 * Math.Abs(expected));
}
