using CsCheck;
using FuelSizing.Fuels;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Fuels;

public class ViscosityTests
{
    [Theory(DisplayName = "Ethanol viscosity by temperature; Alternative Fuels Data Center")]
    [InlineData(20, 1.50)]
    [InlineData(-20, 3.435)]
    public void EthanolViscosity_AtATemperature_IsThatOfTheDataCenter(double celsius, double squareMillimetres) =>
        Published.Value(Works.Afdc, squareMillimetres, Kinematic(Fuel.Ethanol, celsius), 0.005);

    [Theory(DisplayName = "Methanol viscosity by temperature; Alternative Fuels Data Center")]
    [InlineData(20, 0.74)]
    [InlineData(-20, 1.345)]
    public void MethanolViscosity_AtATemperature_IsThatOfTheDataCenter(double celsius, double squareMillimetres) =>
        Published.Value(Works.Afdc, squareMillimetres, Kinematic(Fuel.Methanol, celsius), 0.02);

    /// <summary>The data center gives ranges at 20 and −20 °C, and 0.37 to 0.44 mPa·s at 60 °F.</summary>
    [Fact]
    public void PetrolViscosity_AtThePublishedTemperatures_IsWithinThePublishedRanges()
    {
        Assert.InRange(Kinematic(Fuel.Petrol, 20), 0.5, 0.6);
        Assert.InRange(Kinematic(Fuel.Petrol, -20), 0.8, 1.0);
        Assert.InRange(
            Fuel.Petrol.DynamicViscosityAt(Temperature.FromDegreesFahrenheit(60)).MillipascalSeconds, 0.37, 0.44);
    }

    /// <summary>
    /// Above 20 °C the law is a continuation: its fall from 20 to 40 °C lies between those of n-heptane (0.410 to 0.333
    /// mPa·s) and iso-octane (0.506 to 0.401), Perry's Chemical Engineers' Handbook, 8th edition, table 2-313.
    /// </summary>
    [Fact]
    public void PetrolViscosity_FromTwentyToFortyDegrees_FallsAsItsHydrocarbonsDo() =>
        Assert.InRange(
            Fuel.Petrol.DynamicViscosityAt(Temperature.FromDegreesCelsius(40))
                / Fuel.Petrol.DynamicViscosityAt(Temperature.FromDegreesCelsius(20)),
            0.401 / 0.506,
            0.333 / 0.410);

    [Fact]
    public void BlendViscosity_IsArrhenius() =>
        Gen.Select(Gen.Double[0, 100], Gen.Double[-30, 80]).Sample((share, celsius) =>
        {
            Temperature temperature = Temperature.FromDegreesCelsius(celsius);
            double Of(Fuel fuel) => fuel.DynamicViscosityAt(temperature).PascalSeconds;
            Assert.Equal(
                Math.Pow(Of(Fuel.Ethanol), share / 100) * Math.Pow(Of(Fuel.Petrol), 1 - (share / 100)),
                Of(FuelBlend.EthanolInPetrol(Ratio.FromPercent(share))),
                12);
        });

    [Fact]
    public void Viscosity_WithRisingTemperature_Falls() =>
        Gen.Select(Gen.Double[-30, 79], Gen.Double[0.01, 1], Gen.Double[0, 100]).Sample((celsius, step, share) =>
        {
            Fuel fuel = FuelBlend.ByVolume(
                "b", (Fuel.Methanol, Ratio.FromPercent(share)), (Fuel.E10, Ratio.FromPercent(100 - share)));
            return Kinematic(fuel, celsius + step) < Kinematic(fuel, celsius);
        });

    [Fact]
    public void WithViscosity_AtItsPoints_GivesThem()
    {
        Fuel fuel = Fuel.Petrol.WithViscosity(
            (Temperature.FromDegreesCelsius(40), KinematicViscosity.FromCentistokes(0.49)),
            (Temperature.FromDegreesCelsius(0), KinematicViscosity.FromCentistokes(0.72)));
        Assert.Equal(0.49, Kinematic(fuel, 40), 12);
        Assert.Equal(0.72, Kinematic(fuel, 0), 12);
    }

    [Fact]
    public void WithViscosity_ThatGrowsWithHeatOrAtOneTemperature_IsRefused()
    {
        foreach ((double celsius, double viscosity) in new[] { (40.0, 0.8), (22.0, 0.5) })
        {
            Assert.Equal("other", Assert.Throws<ArgumentOutOfRangeException>(() => Fuel.Petrol.WithViscosity(
                (Temperature.FromDegreesCelsius(20), KinematicViscosity.FromCentistokes(0.6)),
                (Temperature.FromDegreesCelsius(celsius), KinematicViscosity.FromCentistokes(viscosity)))).ParamName);
        }
    }

    [Fact]
    public void Blend_OfAFuelWithoutProperties_HasNone()
    {
        Fuel bare = Fuel.Of(
            "bare",
            Fuel.Petrol.Composition,
            Fuel.Petrol.LowerHeatingValue,
            Fuel.Petrol.DensityAt15C,
            Fuel.Petrol.ExpansionAt15C);
        Fuel blend = FuelBlend.ByVolume("b", (bare, Ratio.FromPercent(90)), (Fuel.Ethanol, Ratio.FromPercent(10)));
        Assert.False(bare.HasViscosity || bare.HasVapourPressure);
        Assert.False(blend.HasViscosity || blend.HasVapourPressure);
        Assert.Throws<InvalidOperationException>(() => blend.VapourPressureAt(Temperature.FromDegreesCelsius(20)));
    }

    private static double Kinematic(Fuel fuel, double celsius) =>
        fuel.KinematicViscosityAt(Temperature.FromDegreesCelsius(celsius)).Centistokes;
}
