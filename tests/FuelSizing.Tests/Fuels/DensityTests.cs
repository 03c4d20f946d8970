using CsCheck;
using FuelSizing.Fuels;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Fuels;

public class DensityTests
{
    // 749 kg/m³ at 32 °C, by hand: α 346.4228/749² + 0.4388/749 = 1.20336e-3, α ΔT 0.0204571, factor exp(−0.0204571 (1 + 0.8 · 0.0204571)) = 0.979423.
    [Theory(DisplayName = "Petrol density by temperature; ASTM D1250-80 table 54B")]
    [InlineData(749, 32, 0.979423)]
    [InlineData(745, 35, 0.975569)]
    public void PetrolDensity_AtATemperature_FollowsTable54B(double densityAt15, double celsius, double volumeCorrection) =>
        Published.Value(
            Works.Mpms.At(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{densityAt15} kg/m³ at {celsius} °C")),
            densityAt15 * volumeCorrection,
            Fuel.PetrolOf(Density.FromKilogramsPerCubicMeter(densityAt15))
                .DensityAt(Temperature.FromDegreesCelsius(celsius)).KilogramsPerCubicMeter,
            5e-6);

    [Fact(DisplayName = "Petrol expansion coefficient at 740 kg/m³; ASTM D1250-80 table 54B")]
    public void PetrolExpansion_At740_IsThatOfTable54B() =>
        Published.Value(
            Works.Mpms.At("expansion at 740 kg/m³, 1/K"),
            1.226e-3,
            Fuel.PetrolOf(Density.FromKilogramsPerCubicMeter(740)).ExpansionAt15C.PerKelvin,
            5e-4);

    [Fact]
    public void PetrolExpansion_AcrossTheTransition_IsContinuous()
    {
        // The standard's constants are rounded; its two branches meet within 0.2 %.
        double below = Fuel.PetrolOf(Density.FromKilogramsPerCubicMeter(770.49)).ExpansionAt15C.PerKelvin;
        double above = Fuel.PetrolOf(Density.FromKilogramsPerCubicMeter(770.51)).ExpansionAt15C.PerKelvin;
        Assert.InRange(above / below, 0.998, 1.002);
    }

    // OIML's formula is good to 0.02 %; ours follows it with one constant.
    [Theory(DisplayName = "Ethanol density by temperature; OIML R 22")]
    [InlineData(-20, 823.12)]
    [InlineData(0, 806.22)]
    [InlineData(15, 793.51)]
    [InlineData(20, 789.24)]
    [InlineData(30, 780.65)]
    [InlineData(40, 771.93)]
    public void EthanolDensity_AtATemperature_IsTheInternationalTables(double celsius, double density) =>
        Published.Value(
            Works.OimlR22,
            density,
            Fuel.Ethanol.DensityAt(Temperature.FromDegreesCelsius(celsius)).KilogramsPerCubicMeter,
            1e-3);

    [Fact(DisplayName = "Ethanol density at 60 °C; equation of state")]
    public void EthanolDensity_At60C_IsThatOfTheEquationOfState() =>
        Published.Value(
            Works.Schroeder.At("ethanol at 101.325 kPa"),
            754.05,
            Fuel.Ethanol.DensityAt(Temperature.FromDegreesCelsius(60)).KilogramsPerCubicMeter,
            1e-3);

    [Theory(DisplayName = "Methanol density by temperature; equation of state")]
    [InlineData(0, 810.07)]
    [InlineData(15, 796.04)]
    [InlineData(20, 791.35)]
    [InlineData(40, 772.40)]
    [InlineData(60, 752.90)]
    public void MethanolDensity_AtATemperature_IsThatOfTheEquationOfState(double celsius, double density) =>
        Published.Value(
            Works.DeReuck.At("saturated liquid"),
            density,
            Fuel.Methanol.DensityAt(Temperature.FromDegreesCelsius(celsius)).KilogramsPerCubicMeter,
            1e-3);

    [Fact]
    public void Density_At15C_IsTheReferenceDensity() =>
        Assert.Equal(
            Fuel.E85.DensityAt15C.KilogramsPerCubicMeter,
            Fuel.E85.DensityAt(Temperature.FromDegreesCelsius(15)).KilogramsPerCubicMeter,
            9);

    [Fact]
    public void Density_WithRisingTemperature_Falls() =>
        Gen.Select(Gen.Double[-30, 79], Gen.Double[0.01, 1], Gen.Double[0, 100]).Sample((celsius, step, share) =>
        {
            Fuel fuel = FuelBlend.EthanolInPetrol(Ratio.FromPercent(share));
            return fuel.DensityAt(Temperature.FromDegreesCelsius(celsius + step))
                < fuel.DensityAt(Temperature.FromDegreesCelsius(celsius));
        });
}
