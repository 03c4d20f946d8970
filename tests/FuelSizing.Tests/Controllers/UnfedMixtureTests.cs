using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Controllers;

/// <summary>Mixtures where there is no pulse, or no pressure in the rail: neither may pass for one that is known.</summary>
public class UnfedMixtureTests
{
    [Theory]
    [InlineData(1500)]
    [InlineData(6500)]
    public void Lambda_WherePulsesWereNotRecorded_IsNotKnown(double rpm)
    {
        FuelSystem system = Wren.System().With(RecordedPulseController.BySpeed((Wren.Rpm(2000), Wren.Ms(9)), (Wren.Rpm(6000), Wren.Ms(9.5))));
        DeliveredMixture mixture = system.Solve(Wren.At(rpm, 0.3)).Mixture;
        Assert.Null(mixture.CommandedPulse);
        Assert.Null(mixture.OpenTime);
        Assert.Null(mixture.InjectedFlow);
        Assert.Null(mixture.Lambda);
        Assert.Null(mixture.MinimumLambda);
        Assert.Null(mixture.MaximumLambda);
        Assert.Equal("lambda cannot be said: data of pump, dead time, injector or pulses ends before this point", mixture.ToString());
    }

    /// <summary>Conservation of mass: without lines the pump passes its free flow to a rail without pressure, and no more can be injected.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Lambda_OfAStarvedRail_IsThatOfWhatThePumpPasses(bool assumed)
    {
        Injector injector = Injector.Of(
            "large",
            VolumeFlow.FromMillilitersPerMinute(2000),
            Wren.Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(2)), (Wren.Volt(16), Wren.Ms(0.7))),
            Wren.Ms(1.5),
            Wren.Kpa(700)).WithMinimumDifferential(Wren.Kpa(20));
        FuelSystem system = Wren.System(pump: 0.02).With(InjectorSet.Of(injector, 4));
        if (!assumed)
        {
            system = system.With(RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(8)), (Wren.Rpm(7000), Wren.Ms(8))));
        }

        OperatingPoint point = OperatingPoint.At(Wren.Rpm(5000), Wren.Kpa(-45), Conditions.Default);
        DeliveredMixture mixture = system.Solve(point).Mixture;
        VolumeFlow free = VolumeFlow.FromLitersPerHour(215 * 0.02);
        double needed = system.Demand.At(point.Speed, point.Boost, point.Conditions.Atmosphere).MassFlow.KilogramsPerSecond
            / Fuel.Petrol.DensityAt(point.Conditions.FuelTemperature).KilogramsPerCubicMeter;
        Assert.Equal(RailState.Starved, mixture.RailState);
        Assert.Equal(free.CubicMetersPerSecond, mixture.InjectedFlow!.Value.CubicMetersPerSecond, 1e-9 * free.CubicMetersPerSecond);
        Assert.Equal(mixture.TargetLambda * needed / free.CubicMetersPerSecond, mixture.Lambda!.Value, 1e-9 * mixture.Lambda.Value);
        Assert.True(mixture.Lambda > 1.5, mixture.ToString());
        Assert.Equal(mixture.Lambda.Value / mixture.TargetLambda, mixture.Causes.Aggregate(1.0, (all, cause) => all * cause.Factor), 1e-9 * mixture.Lambda.Value);
    }
}
