using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;

namespace FuelSizing.Tests.Systems;

/// <summary>A result is one object of numbers: equal where its numbers are, and all that a solve makes.</summary>
public class OneResultTests
{
    private static readonly FuelSystem System = Wren.System();

    [Fact]
    public void Solve_OfThePointAgain_GivesAnEqualResult()
    {
        OperatingResult one = System.Solve(Wren.At(6000, 0.5));

        // At another voltage in between, for a pump keeps what depends on the last one asked for.
        Conditions flat = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(12.2), Wren.Hill.FuelTemperature);
        Assert.NotEqual(one, System.Solve(OperatingPoint.At(Wren.Rpm(6000), Wren.Kpa(50), flat)));
        OperatingResult again = System.Solve(Wren.At(6000, 0.5));
        Assert.Equal(one, again);
        Assert.Equal(one.GetHashCode(), again.GetHashCode());
        Assert.Equal(one, one with { });
        Assert.Equal(one.Demand, again.Demand);
        Assert.NotEqual(one, System.Solve(Wren.At(6000, 0.51)));
        Assert.NotEqual(one, Wren.System().Solve(Wren.At(6000, 0.5)));
    }

    [Fact]
    public void Solve_OfAPoint_MakesTheResultAndNothingElse()
    {
        OperatingPoint point = Wren.At(6000, 0.5);
        OperatingResult result = System.Solve(point);
        long before = GC.GetAllocatedBytesForCurrentThread();
        OperatingResult copy = result with { };
        long one = GC.GetAllocatedBytesForCurrentThread() - before;
        OperatingResult solved = System.Solve(point);
        long both = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.True(one > 0);
        Assert.Equal(one, both - one);
        Assert.Equal(copy, solved);
    }

    [Fact]
    public void Pumps_OfASolvedCircuit_AreDescribedAsOftenAsAsked()
    {
        OperatingResult result = System.Solve(Wren.At(6000, 0.5));
        PumpPoint once = Assert.Single(result.PumpPoints);
        Assert.Equal(once, Assert.Single(result.PumpPoints));
        Assert.Equal(result.PumpFlow!.Value.CubicMetersPerSecond, once.Flow);
        Assert.Equal(result.Circuit.OutletGauge!.Value.Pascals, once.Rise);
    }
}
