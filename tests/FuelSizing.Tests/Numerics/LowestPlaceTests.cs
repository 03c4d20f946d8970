using FuelSizing.Numerics;

namespace FuelSizing.Tests.Numerics;

/// <summary>Where a function of one number is least.</summary>
public class LowestPlaceTests
{
    [Theory]
    [InlineData(0.3)]
    [InlineData(-2)]
    [InlineData(5)]
    [InlineData(4.99)]
    public void Of_AParabola_IsItsLowestPlace_OrTheEndNearestToIt(double lowest)
    {
        (double at, double value) = LowestPlace.Of(x => (x - lowest) * (x - lowest), -1, 5, 4, 1e-9);
        double expected = Math.Clamp(lowest, -1, 5);
        Assert.Equal(expected, at, 1e-7);
        Assert.Equal((at - lowest) * (at - lowest), value);
    }

    /// <summary>The deeper of two valleys is found where the grid has a place in it.</summary>
    [Fact]
    public void Of_TwoValleys_IsTheDeeperOfThem()
    {
        (double at, double value) = LowestPlace.Of(x => Math.Min(Math.Abs(x - 1), Math.Abs(x - 8) - 0.5), 0, 10, 10, 1e-9);
        Assert.Equal(8, at, 1e-8);
        Assert.Equal(-0.5, value, 1e-8);
    }

    /// <summary>A limit begins to break with a jump: the least place is right before it.</summary>
    [Fact]
    public void Of_AJump_EndsRightBeforeIt()
    {
        (double at, double value) = LowestPlace.Of(x => x > Math.E ? 1000 : 3 - x, 0, 10, 7, 1e-9);
        Assert.InRange(at, Math.E - 2e-9, Math.E);
        Assert.Equal(3 - at, value);
    }

    [Fact]
    public void Of_NoRange_IsItsOnlyPlace() => Assert.Equal((2.5, 7), LowestPlace.Of(_ => 7, 2.5, 2.5, 8, 0));
}
