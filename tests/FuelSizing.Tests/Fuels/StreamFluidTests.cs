using CsCheck;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Numerics;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Fuels;

/// <summary>Liquids of a second stream: fuel, and fuel and water.</summary>
public class StreamFluidTests
{
    [Fact(DisplayName = "Density of 40 % methanol and water by mass as an ideal mixture, and how far the measured one is over it; Sinnott, chapter 8")]
    public void Density_OfSinnottsMixture()
    {
        double ideal = FuelMixing.Density<Real>(0.4, 791.2, 998.2);

        // Printed from volumes rounded to three figures: 1000/1.107.
        Published.Value(Works.SinnottMethanolWater.At("ideal"), 903.3, ideal, 0.001);

        // What an unmeasured mixture is allowed to be denser by covers what was measured.
        StreamFluid mixture = StreamFluid.WithWaterByMass(Fuel.Methanol, Ratio.FromPercent(40));
        double least = mixture.DensityAtKelvins(293.15);
        double most = mixture.MaximumDensityAtKelvins(293.15);
        Assert.InRange(934.5, least, most);
    }

    [Fact]
    public void Properties_GoByMass()
    {
        StreamFluid half = StreamFluid.WithWaterByMass(Fuel.Methanol, Ratio.FromPercent(50));
        Assert.Equal(10.0, half.LowerHeatingValue.MegajoulesPerKilogram, 1e-9);
        Assert.Equal((1168 + 2442) / 2.0, half.HeatOfVaporisation!.Value.KilojoulesPerKilogram, 1e-9);
        Assert.Equal(Fuel.Methanol.StoichiometricAirFuelRatio / 2, half.StoichiometricAirFuelRatio, 1e-12);

        // 50 L of 796.0 and 50 L of 999.1 kg/m³.
        StreamFluid poured = StreamFluid.WithWaterByVolume(Fuel.Methanol, Ratio.FromPercent(50));
        Assert.Equal(796.0 / (796.0 + 999.1), poured.FuelMassShare.DecimalFractions, 1e-12);
        Assert.Equal((796.0 + 999.1) / 2, poured.DensityAt(Temperature.FromDegreesCelsius(15)).KilogramsPerCubicMeter, 1e-9);
        Assert.True(poured.IsDensityAssumed);
        StreamFluid measured = poured.WithDensity(Density.FromKilogramsPerCubicMeter(925));
        Assert.False(measured.IsDensityAssumed);
        Assert.Equal(925, measured.DensityAt(Temperature.FromDegreesCelsius(15)).KilogramsPerCubicMeter, 1e-9);
        Assert.Equal(measured.DensityAtKelvins(300), measured.MaximumDensityAtKelvins(300));
    }

    /// <summary>No water is the fuel, all water burns nothing; between, what is stated by mass and by volume is one liquid.</summary>
    [Fact]
    public void Ends_AreFuelAndWater() => Gen.Double[0.01, 0.99].Sample(share =>
    {
        Assert.Equal(StreamFluid.Of(Fuel.Methanol).DensityAtKelvins(310), StreamFluid.WithWaterByMass(Fuel.Methanol, Ratio.FromPercent(100)).DensityAtKelvins(310));
        Assert.Equal(0, StreamFluid.WithWaterByMass(Fuel.Methanol, Ratio.Zero).StoichiometricAirFuelRatio);
        StreamFluid byVolume = StreamFluid.WithWaterByVolume(Fuel.Ethanol, Ratio.FromDecimalFractions(share));
        StreamFluid byMass = StreamFluid.WithWaterByMass(Fuel.Ethanol, byVolume.FuelMassShare);
        Assert.Equal(byVolume, byMass);
        Assert.Equal(byVolume.DensityAtKelvins(300), byMass.DensityAtKelvins(300), 1e-9);
        double lower = Math.Min(Fuel.Ethanol.DensityAt(Temperature.FromKelvins(300)).KilogramsPerCubicMeter, 999.1);
        Assert.InRange(byVolume.DensityAtKelvins(300), lower, 999.1);
    });
}
