using CsCheck;
using FuelSizing.Fuels;
using UnitsNet;

namespace FuelSizing.Tests.Fuels;

public class FuelBlendTests
{
    /// <summary>By hand: 85 L of ethanol weigh 67.45 kg, 15 L of petrol 11.18 kg; ethanol is 85.79 % by mass.</summary>
    [Fact]
    public void E85_ByHand_HasTheMassWeightedRatioAndHeat()
    {
        double ethanol = 0.85 * 793.5 / ((0.85 * 793.5) + (0.15 * 745));
        Assert.Equal(0.8579, ethanol, 4);
        Assert.Equal((ethanol * 9.005) + ((1 - ethanol) * 14.603), Fuel.E85.StoichiometricAirFuelRatio, 2);
        Assert.Equal((ethanol * 26.9) + ((1 - ethanol) * 44.0), Fuel.E85.LowerHeatingValue.MegajoulesPerKilogram, 3);
        Assert.Equal((0.85 * 793.5) + (0.15 * 745), Fuel.E85.DensityAt15C.KilogramsPerCubicMeter, 6);
    }

    /// <summary>
    /// E10 is typically given as 14.0 to 14.1 and E85 as 9.7 to 9.9: common practice, no source.
    /// </summary>
    [Fact]
    public void StoichiometricRatio_OfPumpBlends_IsInTheTypicalRange()
    {
        Assert.InRange(Fuel.E10.StoichiometricAirFuelRatio, 13.95, 14.15);
        Assert.InRange(Fuel.E85.StoichiometricAirFuelRatio, 9.7, 9.9);
    }

    [Fact]
    public void Blend_OfOneFuel_IsThatFuel() =>
        Gen.Double[0, 100].Sample(share =>
        {
            Fuel blend = FuelBlend.ByVolume(
                "ethanol twice",
                (Fuel.Ethanol, Ratio.FromPercent(share)),
                (Fuel.Ethanol, Ratio.FromPercent(100 - share)));
            Assert.Equal(Fuel.Ethanol.StoichiometricAirFuelRatio, blend.StoichiometricAirFuelRatio, 9);
            Assert.Equal(
                Fuel.Ethanol.DensityAt15C.KilogramsPerCubicMeter, blend.DensityAt15C.KilogramsPerCubicMeter, 9);
            Assert.Equal(
                Fuel.Ethanol.LowerHeatingValue.JoulesPerKilogram, blend.LowerHeatingValue.JoulesPerKilogram, 3);
        });

    [Fact]
    public void Blend_WithMoreEthanol_NeedsLessAir() =>
        Gen.Select(Gen.Double[0, 99], Gen.Double[0.1, 1]).Sample((share, more) =>
            FuelBlend.EthanolInPetrol(Ratio.FromPercent(share + more)).StoichiometricAirFuelRatio
                < FuelBlend.EthanolInPetrol(Ratio.FromPercent(share)).StoichiometricAirFuelRatio);

    [Fact]
    public void Blend_OfSharesThatDoNotAddUp_IsRefused()
    {
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => FuelBlend.ByVolume(
            "half", (Fuel.Petrol, Ratio.FromPercent(30)), (Fuel.Ethanol, Ratio.FromPercent(20))));
        Assert.Contains("50 % in all", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Molecule_ThatCannotBurn_IsRefused()
    {
        ArgumentOutOfRangeException error =
            Assert.Throws<ArgumentOutOfRangeException>(() => ElementalComposition.OfMolecule(1, 1, 10));
        Assert.Equal("oxygen", error.ParamName);
    }
}
