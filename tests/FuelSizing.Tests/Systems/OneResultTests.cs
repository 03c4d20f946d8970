using FuelSizing.Checks;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using FuelSizing.Tests.Files.Setups;

namespace FuelSizing.Tests.Systems;

/// <summary>A result is one object of numbers: equal where its numbers are, and all that a solve makes.</summary>
public class OneResultTests
{
    private static readonly FuelSystem System = Wren.System();

    [Fact]
    public void Solve_OfThePointAgain_GivesTheSameNumbers()
    {
        OperatingResult one = System.Solve(Wren.At(6000, 0.5));

        // At another voltage in between, for a pump keeps what depends on the last one asked for.
        Conditions flat = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(12.2), Wren.Hill.FuelTemperature);
        Assert.NotEqual(ResultText.Of(one), ResultText.Of(System.Solve(OperatingPoint.At(Wren.Rpm(6000), Wren.Kpa(50), flat))));
        Assert.Equal(ResultText.Of(one), ResultText.Of(System.Solve(Wren.At(6000, 0.5))));
        Assert.NotEqual(ResultText.Of(one), ResultText.Of(System.Solve(Wren.At(6000, 0.51))));
    }

    /// <summary>Everything is computed when the result is made, so reading it again neither computes nor allocates.</summary>
    [Fact]
    public void Margins_LimitingAndOutcome_ReadAgain_AreTheSameObjects()
    {
        OperatingResult result = System.Solve(Wren.At(6000, 0.5));
        long before = GC.GetAllocatedBytesForCurrentThread();
        IReadOnlyList<Margin> margins = result.Margins;
        Limit limiting = result.Limiting;
        Outcome outcome = result.Outcome;
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.Same(margins, result.Margins);
        Assert.Same(limiting, result.Limiting);
        Assert.Equal(outcome, limiting.Margin.Outcome);
        Assert.Contains(limiting.Margin, margins);
    }

    [Fact]
    public void Pumps_OfASolvedCircuit_AreThoseOfTheState()
    {
        OperatingResult result = System.Solve(Wren.At(6000, 0.5));
        PumpPoint once = Assert.Single(result.SolvedCircuit.Pumps);
        Assert.Equal(once, Assert.Single(result.SolvedCircuit.State.Pumps));
        Assert.Equal(result.PumpFlow!.Value.CubicMetersPerSecond, once.Flow);
        Assert.Equal(result.Circuit.OutletGauge!.Value.Pascals, once.Rise);
    }
}
