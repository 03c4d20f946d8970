using CsCheck;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using UnitsNet;

namespace FuelSizing.Tests.Lines;

public class FilterTests
{
    private static readonly Temperature Room = Temperature.FromDegreesCelsius(20);

    [Fact]
    public void PressureLoss_AtTheRatedPoint_IsTheRatedLoss() =>
        Assert.Equal(8, Of().PressureLoss(VolumeFlow.FromLitersPerHour(200), Fuel.Petrol, Room).Kilopascals, 10);

    [Fact]
    public void PressureLoss_GoesWithFlowCloggingAndViscosity() =>
        Gen.Select(Gen.Double[0, 600], Gen.Double[1, 10], Gen.Double[-30, 80]).Sample((litersPerHour, clogging, celsius) =>
        {
            Temperature temperature = Temperature.FromDegreesCelsius(celsius);
            double expected = 8 * clogging * litersPerHour / 200
                * Fuel.Ethanol.DynamicViscosityAt(temperature).PascalSeconds
                / Fuel.Petrol.DynamicViscosityAt(Room).PascalSeconds;
            double actual = Of(clogging).PressureLoss(VolumeFlow.FromLitersPerHour(litersPerHour), Fuel.Ethanol, temperature).Kilopascals;
            Assert.InRange(actual, expected * (1 - 1e-12), (expected * (1 + 1e-12)) + 1e-300);
        });

    [Fact]
    public void LossPascals_ForTheSolver_IsTheTypedLossAndOdd()
    {
        Filter filter = Of(2);
        double density = Fuel.E85.DensityAt(Room).KilogramsPerCubicMeter;
        double viscosity = Fuel.E85.KinematicViscosityAt(Room).SquareMetersPerSecond;
        VolumeFlow flow = VolumeFlow.FromLitersPerHour(150);
        double loss = filter.LossPascals(flow.CubicMetersPerSecond, density, viscosity);
        Assert.Equal(filter.PressureLoss(flow, Fuel.E85, Room).Pascals, loss, 9);
        Assert.Equal(-loss, filter.LossPascals(-flow.CubicMetersPerSecond, density, viscosity));
    }

    /// <summary>A filter rated on a liquid of 1 mPa·s loses with petrol in proportion to petrol's viscosity.</summary>
    [Fact]
    public void PressureLoss_RatedOnAnotherLiquid_GoesWithTheViscosities()
    {
        Filter filter = Filter.Of(
            "filter",
            VolumeFlow.FromLitersPerHour(200),
            Pressure.FromKilopascals(8),
            ratedViscosity: DynamicViscosity.FromMillipascalSeconds(1));
        Assert.Equal(1, filter.RatedViscosity.MillipascalSeconds, 12);
        Assert.Equal(
            8 * Fuel.Petrol.DynamicViscosityAt(Room).MillipascalSeconds,
            filter.PressureLoss(VolumeFlow.FromLitersPerHour(200), Fuel.Petrol, Room).Kilopascals,
            9);
    }

    [Fact]
    public void Filter_InACircuit_IsLevel()
    {
        IFlowLoss part = Of(2);
        Assert.Equal(0, part.ElevationPascals(740));
        Assert.Equal(Of(2).LossPascals(4e-5, 740, 6e-7), part.LossPascals(4e-5, 740, 6e-7));
    }


    [Fact]
    public void PressureLoss_FarAboveTheRatedFlow_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(
            () => Of().PressureLoss(VolumeFlow.FromLitersPerHour(601), Fuel.Petrol, Room));

    [Fact]
    public void PressureLoss_OfNoFuel_IsRefused() =>
        Refused.Missing("fuel", () => Of().PressureLoss(VolumeFlow.FromLitersPerHour(100), null!, Room));


    private static Filter Of(double clogging = 1) =>
        Filter.Of("filter", VolumeFlow.FromLitersPerHour(200), Pressure.FromKilopascals(8), clogging);
}
