using FuelSizing.Points;
using FuelSizing.Systems;

namespace FuelSizing.Tests.Systems;

/// <summary>The compass search: four neighbours at a step, and half the step where none of them is nearer.</summary>
public class DownhillTests
{
    private static readonly FuelSystem System = Wren.System();

    /// <summary>To within the last step, a 16,384th of the first, in both directions; from either side.</summary>
    [Theory]
    [InlineData(5000, 0)]
    [InlineData(5900, 0)]
    [InlineData(5000, 60)]
    [InlineData(5900, 60)]
    public void Search_OfABowl_EndsAtItsBottom(double rpm, double boost)
    {
        OperatingResult found = From(rpm, boost, (400, 20), 14);
        Assert.Equal(5321, found.Point.Speed.RevolutionsPerMinute, 400 / 8192.0);
        Assert.Equal(23, found.Point.Boost.Kilopascals, 20 / 8192.0);
    }

    [Fact]
    public void Search_FromTheBottom_HalvesItsStepsAndLooksFourTimesAtEach()
    {
        int looks = 0;
        OperatingResult found = From(5321, 23, (400, 20), 14, (_, _) => ++looks > 0);
        Assert.Equal((4 * 14, 5321, 23), (looks, found.Point.Speed.RevolutionsPerMinute, Math.Round(found.Point.Boost.Kilopascals, 9)));
        looks = 0;
        From(5321, 23, (400, 20), 0, (_, _) => ++looks > 0);
        Assert.Equal(0, looks);
    }

    /// <summary>Steps of 1 rev/min that always help: fifty of them.</summary>
    [Fact]
    public void Search_ThatNeverEnds_IsStoppedAfterFiftySteps()
    {
        Assert.Equal(5050, From(5000, 23, (1, 0), 14).Point.Speed.RevolutionsPerMinute, 1e-9);
        Assert.Equal(5850, From(5900, 23, (1, 0), 14).Point.Speed.RevolutionsPerMinute, 1e-9);
        Assert.Equal(50, From(5321, 0, (0, 1), 14, bottom: 90).Point.Boost.Kilopascals, 1e-9);
    }

    /// <summary>Where it may not look it does not go: the nearest place within the range is at its edge.</summary>
    [Fact]
    public void Search_AtTheEdgeOfARange_StaysWithinIt()
    {
        OperatingResult found = From(5000, 5, (300, 8), 14, (rpm, boost) => rpm <= 5200 && boost <= 12);
        Assert.Equal(5200, found.Point.Speed.RevolutionsPerMinute, 0.1);
        Assert.Equal(12, found.Point.Boost.Kilopascals, 0.01);
    }

    private static OperatingResult From(
        double rpm, double boost, (double Speed, double Boost) steps, int halvings, Func<double, double, bool>? within = null, double bottom = 23)
    {
        double Off(OperatingResult at)
        {
            (double speed, double pressure) = ((at.Point.Speed.RevolutionsPerMinute - 5321) / 500, (at.Point.Boost.Kilopascals - bottom) / 20);
            return (speed * speed) + (pressure * pressure);
        }

        return Downhill.From(
            At(rpm, boost),
            (steps.Speed, steps.Boost * 1e3),
            halvings,
            (speed, pascals) => within?.Invoke(speed, pascals / 1e3) == false ? null : At(speed, pascals / 1e3),
            Comparer<OperatingResult>.Create((one, other) => Off(one).CompareTo(Off(other))));
    }

    private static OperatingResult At(double rpm, double boost) => System.Solve(OperatingPoint.At(Wren.Rpm(rpm), Wren.Kpa(boost)));
}
