using FuelSizing.Checks;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>Statistics of few samples, by hand.</summary>
public class OutputSpreadTests
{
    /// <summary>
    /// 8, 2, 4, 10: mean 6, squares of what is off 4 + 16 + 4 + 16 = 40, by n − 1 = 3. Type 8 of Hyndman and Fan takes the value at (n + ⅓) p + ⅓ of those in
    /// order: 50 % at 2.5, midway between 4 and 8; 25 % at 17/12 and 75 % at 43/12; 5 % at 0.55 and 95 % at 4.45, past the ends.
    /// </summary>
    [Fact]
    public void Spread_OfFourValuesAndTwoUnknown_IsThatByHand()
    {
        OutputSpread<double> spread = new([8, double.NaN, 2, 4, 10, double.NaN], value => value);
        Assert.Equal((4, 2), (spread.Known, spread.CannotSay));
        Assert.Equal([2, 4, 8, 10], spread.Sorted);
        Assert.Equal(6, spread.Mean);
        Assert.Equal(Math.Sqrt(40.0 / 3), spread.StandardDeviation!.Value, 12);
        Assert.Equal(Math.Sqrt(40.0 / 3) / 2, spread.StandardErrorOfMean!.Value, 12);
        Assert.Equal(6, spread.Percentile(Ratio.FromPercent(50))!.Value, 12);
        Assert.Equal(2 + (2 * 5 / 12.0), spread.Percentile(Ratio.FromPercent(25))!.Value, 12);
        Assert.Equal(10 - (2 * 5 / 12.0), spread.Percentile(Ratio.FromPercent(75))!.Value, 12);
        Assert.Equal(2, spread.Percentile(Ratio.Zero));
        Assert.Equal(10, spread.Percentile(Ratio.FromPercent(100)));
        Assert.Equal("6 (5th to 95th percentile 2 to 10)", spread.ToString());
    }

    [Fact]
    public void Spread_OfOneValue_HasNoDeviation()
    {
        OutputSpread<double> one = new([double.NaN, 7], value => value);
        Assert.Equal((1, 1), (one.Known, one.CannotSay));
        Assert.Equal(7, one.Mean);
        Assert.Null(one.StandardDeviation);
        Assert.Null(one.StandardErrorOfMean);
        Assert.Equal(7, one.Percentile(Ratio.FromPercent(5)));
        OutputSpread<double> two = new([1, 3], value => value);
        Assert.Equal(Math.Sqrt(2), two.StandardDeviation!.Value, 12);
        Assert.Equal(1, two.StandardErrorOfMean!.Value, 12);
    }

    [Fact]
    public void Spread_OfNoValue_IsNone()
    {
        OutputSpread<Ratio> none = new([double.NaN, double.NaN, double.NaN], value => Ratio.FromDecimalFractions(value));
        Assert.Equal((0, 3), (none.Known, none.CannotSay));
        Assert.Null(none.Mean);
        Assert.Null(none.StandardDeviation);
        Assert.Null(none.StandardErrorOfMean);
        Assert.Null(none.Percentile(Ratio.FromPercent(50)));
        Assert.Empty(none.Sorted);
        Assert.Equal("no sample has a value", none.ToString());
        Refused.OutOfRange("share", () => none.Percentile(Ratio.FromPercent(-0.1)));
        Refused.OutOfRange("share", () => none.Percentile(Ratio.FromPercent(100.1)));
    }

    /// <summary>Three hold, one fails, two cannot be said: √(½ · ½/6) is the error of a half.</summary>
    [Fact]
    public void Chance_OfSixSamples_CountsEachSort()
    {
        Chance chance = new([Outcome.Holds, Outcome.CannotSay, Outcome.Fails, Outcome.Holds, Outcome.CannotSay, Outcome.Holds]);
        Assert.Equal((6, 3, 2, 1), (chance.Samples, chance.Holding, chance.CannotSay, chance.Failing));
        Assert.Equal(0.5, chance.Holds.DecimalFractions);
        Assert.Equal(Math.Sqrt(0.25 / 6), chance.StandardError.DecimalFractions, 12);

        // Wilson's interval of none of n ends at z²/(n + z²), of all at n/(n + z²) begins; 50 % is z = 0.67448975 (tables, from memory).
        double square = 0.6744897501960817 * 0.6744897501960817;
        Chance none = new([Outcome.Fails, Outcome.Fails, Outcome.Fails]);
        (Ratio minimum, Ratio maximum) = none.Interval(Ratio.FromPercent(50));
        Assert.Equal(0, minimum.DecimalFractions, 15);
        Assert.Equal(square / (3 + square), maximum.DecimalFractions, 9);
        (minimum, maximum) = new Chance([Outcome.Holds, Outcome.Holds, Outcome.Holds]).Interval(Ratio.FromPercent(50));
        Assert.Equal(3 / (3 + square), minimum.DecimalFractions, 9);
        Assert.Equal(1, maximum.DecimalFractions, 15);
        Assert.True(minimum.DecimalFractions >= 0 && maximum.DecimalFractions <= 1);
        foreach (double percent in new[] { 49.9, 99.991 })
        {
            Refused.OutOfRange("confidence", () => none.Interval(Ratio.FromPercent(percent)));
            Refused.OutOfRange("confidence", () => none.Reaches(Ratio.FromPercent(90), Ratio.FromPercent(percent)));
        }

        Refused.OutOfRange("wanted", () => none.Reaches(Ratio.Zero, Ratio.FromPercent(95)));
        Refused.OutOfRange("wanted", () => none.Reaches(Ratio.FromPercent(99.9991), Ratio.FromPercent(95)));
    }

    /// <summary>
    /// Two hold, two cannot be said, two fail: Wilson's interval of 2 of 6 begins at 9.677 %, and of 4 of 6 it ends at 90.323 % (z² = 3.841459:
    /// (⅓ + 0.320122 − 1.959964 √(0.037037 + 0.026677))/1.640243, and the same from above).
    /// </summary>
    [Fact]
    public void Chance_OfAsManyUnknownAsHolding_IsNotNone() =>
        Assert.Equal(
            "holds in 33.3 % of 6 samples, and nothing can be said of 33.3 %; 95 % interval 9.6 % to 90.4 %",
            new Chance([Outcome.Holds, Outcome.Holds, Outcome.CannotSay, Outcome.CannotSay, Outcome.Fails, Outcome.Fails]).ToString());

    [Theory]
    [InlineData(50, 0.674489750196082)]
    [InlineData(68.26894921370859, 1)]
    [InlineData(95, 1.959963984540054)]
    [InlineData(99.99, 3.890591886413094)]
    public void Confidence_OfARange_IsItsNormalDeviations(double percent, double deviations) =>
        Assert.Equal(deviations, Confidence.Deviations(Ratio.FromPercent(percent), "confidence"), 9);
}
