using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Systems;

namespace FuelSizing.Tests.Systems;

/// <summary>
/// A hand-over by duty cycle begins on a curve over speed and boost, on one side of which the secondary set's pulses are shortest: what a search over a range looks at
/// along that curve, by a check that has nothing else to look for.
/// </summary>
public class HandOverSearchTests
{
    private static readonly FuelSystem System = ShapedCheck.Judging(_ => 0.5, Staged.Wren2(Staged.Of(Staged.ByDutyCycle)));

    // Where the primary set alone has 60 % at 5,000 and at 6,000 rev/min: the second lies lower.
    private static readonly (double Slow, double Fast) Begins = (BeginAt(5000), BeginAt(6000));

    /// <summary>On each line of speed, and in the middle between two, both sides of the place: a hundredth of a pascal under it the set is idle, and over it it injects.</summary>
    [Fact]
    public void Search_OverARange_LooksAtBothSidesAlongEachSpeed()
    {
        RangeSearch search = Over([5000, 6000], [Begins.Fast - 5, 70]);
        foreach (double speed in new[] { 5000.0, 5500, 6000 })
        {
            OperatingResult[] at = [.. search.Results().Where(point => Math.Abs(point.Point.Speed.RevolutionsPerMinute - speed) < 1e-9).OrderBy(point => point.Point.Boost.Pascals)];
            OperatingResult under = at.Last(point => point.SecondaryInjection!.IsIdle);
            OperatingResult over = at.First(point => !point.SecondaryInjection!.IsIdle);
            double begin = BeginAt(speed) * 1e3;
            Assert.Equal((0, 0), (Math.Round(over.Point.Boost.Pascals - begin, 1), Math.Round(under.Point.Boost.Pascals - begin, 1)));
            Assert.All(new[] { begin - 0.01, begin + 0.01 }, beside => Assert.Contains(at, point => Math.Abs(point.Point.Boost.Pascals - beside) < 1e-4));
        }
    }

    /// <summary>Along the lowest and the highest boost the place is a speed: a hundred-millionth of it to either side, and the speed itself.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Search_OverARange_LooksAtBothSidesAlongItsEdges(bool isLowest)
    {
        double edge = (Begins.Slow + Begins.Fast) / 2;
        RangeSearch search = Over([5000, 6000], isLowest ? [edge, 70] : [-20, edge]);
        AreBothSides([.. search.Results().Where(point => Math.Abs(point.Point.Boost.Kilopascals - edge) < 1e-9)]);
    }

    /// <summary>The same along a boost line.</summary>
    [Fact]
    public void Search_AlongALine_LooksAtBothSides()
    {
        double edge = (Begins.Slow + Begins.Fast) / 2;
        BoostLine line = MeasuredBoost.Of((Wren.Rpm(4500), Wren.Kpa(edge)), (Wren.Rpm(6500), Wren.Kpa(edge)));
        RangeSearch search = RangeSearch.Along(System, line, [At(5000, edge).Point, At(6000, edge).Point], CancellationToken.None);
        AreBothSides([.. search.Results()]);
    }

    private static void AreBothSides(OperatingResult[] points)
    {
        OperatingResult[] at = [.. points.OrderBy(point => point.Point.Speed.RevolutionsPerMinute)];
        int over = Array.FindIndex(at, point => !point.SecondaryInjection!.IsIdle);
        Assert.InRange(over, 1, at.Length - 1);
        double place = at[over].Point.Speed.RevolutionsPerMinute;
        Assert.Equal(place, at[over - 1].Point.Speed.RevolutionsPerMinute, 1e-3);
        Assert.All(
            new[] { place * (1 - 1e-8), place * (1 + 1e-8) },
            beside => Assert.Contains(at, point => Math.Abs(point.Point.Speed.RevolutionsPerMinute - beside) < 1e-6));
    }

    private static double BeginAt(double speed)
    {
        (double low, double high) = (-40, 70);
        for (int halving = 0; halving < 60; halving++)
        {
            double middle = (low + high) / 2;
            (low, high) = At(speed, middle).SecondaryInjection!.IsIdle ? (middle, high) : (low, middle);
        }

        Assert.Equal(0.6, At(speed, low).DutyCycle!.Value.DecimalFractions, 1e-6);
        return low;
    }

    private static OperatingResult At(double speed, double kilopascals) => System.Solve(OperatingPoint.At(Wren.Rpm(speed), Wren.Kpa(kilopascals), Wren.Hill));

    private static RangeSearch Over(double[] speeds, double[] boosts) => RangeSearch.Over(
        System, null, [.. speeds.Select(Wren.Rpm)], [.. boosts.Select(Wren.Kpa)], Wren.Hill, null, CancellationToken.None)!;
}
