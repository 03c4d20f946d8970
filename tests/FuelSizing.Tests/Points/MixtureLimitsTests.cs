using FuelSizing.Points;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>The leanest lambda allowed against boost: straight between its points, held over the last, not judged under the first.</summary>
public class MixtureLimitsTests
{
    private static readonly MixtureLimits Falling = MixtureLimits.ByBoost([(Wren.Kpa(10), 0.90), (Wren.Kpa(50), 0.85), (Wren.Kpa(100), 0.70)], 0.65);

    [Theory]
    [InlineData(-50, null)]
    [InlineData(9.99, null)]
    [InlineData(10, 0.90)]
    [InlineData(30, 0.875)]
    [InlineData(50, 0.85)]
    [InlineData(75, 0.775)]
    [InlineData(100, 0.70)]
    [InlineData(250, 0.70)]
    public void Leanest_AtABoost_IsOnTheLineThroughItsPoints(double kilopascals, double? expected)
    {
        if (expected is { } lambda)
        {
            Assert.Equal(lambda, Falling.LeanestAllowed(Wren.Kpa(kilopascals))!.Value, 1e-12);
        }
        else
        {
            Assert.Null(Falling.LeanestAllowed(Wren.Kpa(kilopascals)));
        }
    }

    /// <summary>Ten kilopascals may be a last digit less in another unit: a billionth under its first boost the limit counts, a millionth under it not.</summary>
    [Fact]
    public void Limit_ALastDigitUnderItsFirstBoost_Counts()
    {
        Assert.NotNull(Falling.LeanestAllowed(Wren.Kpa(10 * (1 - 5e-10))));
        Assert.Null(Falling.LeanestAllowed(Wren.Kpa(10 * (1 - 1e-6))));
        Assert.NotNull(MixtureLimits.Of(0.88).LeanestAllowed(Pressure.FromPascals(-5e-10)));
        Assert.Null(MixtureLimits.Of(0.88).LeanestAllowed(Pressure.FromPascals(-1e-6)));
        Assert.Equal(0.88, MixtureLimits.Of(0.88).LeanestAllowed(Wren.Kpa(300)));
    }

    [Fact]
    public void Limits_ThatCannotBe_AreRefused()
    {
        Assert.Null(MixtureLimits.Of(0.88).Richest);
        Assert.Equal(0.88, MixtureLimits.Of(0.88, richest: 0.88).Richest);
        Assert.Equal(0.4, MixtureLimits.Of(0.88, richest: 0.4).Richest);
        Refused.OutOfRange("richest", () => MixtureLimits.Of(0.88, richest: 0.881));
        Refused.OutOfRange("richest", () => MixtureLimits.Of(0.88, richest: 0.399));

        // The richest lies under the lowest of the leanest, not only under the first.
        Refused.OutOfRange("richest", () => MixtureLimits.ByBoost([(Wren.Kpa(10), 0.9), (Wren.Kpa(50), 0.8)], 0.85));
        Refused.OutOfRange("leanest", () => MixtureLimits.ByBoost([]));
        Refused.Missing("leanest", () => MixtureLimits.ByBoost(null!));
        Refused.OutOfRange("leanest", () => MixtureLimits.ByBoost([(Wren.Kpa(10), 0.59)]));
        Refused.OutOfRange("leanest", () => MixtureLimits.ByBoost([(Wren.Kpa(10), 1.21)]));
        Refused.OutOfRange("leanest", () => MixtureLimits.ByBoost([(Wren.Kpa(-1), 0.9)]));
        Refused.OutOfRange("leanest", () => MixtureLimits.ByBoost([(Wren.Kpa(401), 0.9)]));
        Refused.OutOfRange("boostOver", () => MixtureLimits.Of(0.88, Wren.Kpa(401)));
        ArgumentOutOfRangeException twice = Assert.Throws<ArgumentOutOfRangeException>(() => MixtureLimits.ByBoost([(Wren.Kpa(10), 0.9), (Wren.Kpa(30), 0.9), (Wren.Kpa(30), 0.8)]));
        Assert.Contains("over the 0.30 bar before it", twice.Message, StringComparison.Ordinal);
        Refused.OutOfRange("leanest", () => MixtureLimits.ByBoost([(Wren.Kpa(10), 0.9), (Wren.Kpa(30), 0.9), (Wren.Kpa(20), 0.8)]));
        Refused.OutOfRange("boost", () => Falling.LeanestAllowed(Wren.Kpa(401)));
    }

    [Fact]
    public void Limits_OfTheSameValues_AreEqual()
    {
        Assert.Equal(Falling, MixtureLimits.ByBoost([(Pressure.FromBars(0.1), 0.90), (Wren.Kpa(50), 0.85), (Wren.Kpa(100), 0.70)], 0.65));
        Assert.Equal(Falling.GetHashCode(), MixtureLimits.ByBoost([(Pressure.FromBars(0.1), 0.90), (Wren.Kpa(50), 0.85), (Wren.Kpa(100), 0.70)], 0.65).GetHashCode());
        Assert.NotEqual(Falling, MixtureLimits.ByBoost([(Wren.Kpa(11), 0.90), (Wren.Kpa(50), 0.85), (Wren.Kpa(100), 0.70)], 0.65));
        Assert.NotEqual(Falling, MixtureLimits.ByBoost([(Wren.Kpa(10), 0.91), (Wren.Kpa(50), 0.85), (Wren.Kpa(100), 0.70)], 0.65));
        Assert.NotEqual(Falling, MixtureLimits.ByBoost([(Wren.Kpa(10), 0.90), (Wren.Kpa(50), 0.85), (Wren.Kpa(100), 0.70)], 0.64));
        Assert.NotEqual(Falling, MixtureLimits.ByBoost([(Wren.Kpa(10), 0.90), (Wren.Kpa(50), 0.85), (Wren.Kpa(100), 0.70)]));
        Assert.Equal("lambda at most 0.900 from 0.10 bar, 0.850 from 0.50 bar, 0.700 from 1.00 bar, at least 0.650", Falling.ToString());
        Assert.Equal("lambda at most 0.880 from 0.00 bar", MixtureLimits.Of(0.88).ToString());
    }
}
