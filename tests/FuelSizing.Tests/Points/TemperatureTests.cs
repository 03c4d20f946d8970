using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>Tank, pump inlet, rail, coolant and test liquid have temperatures of their own.</summary>
public sealed class TemperatureTests
{
    /// <summary>At 2,000 m petrol of 60 °C boils at the inlet of a pump, whatever the rail; petrol of 20 °C there does not.</summary>
    [Fact]
    public void Inlet_IsJudgedAtItsOwnTemperature()
    {
        Conditions hot = Conditions.Of(Atmosphere.AtAltitude(Length.FromMeters(2000)), Wren.Volt(13.5), Celsius(60));
        Outcome At(Conditions conditions) => Of(Wren.System().Solve(OperatingPoint.At(Wren.Rpm(3000), Pressure.Zero, conditions)), Part.Suction).Outcome;
        Assert.Equal(Outcome.Fails, At(hot));
        Assert.Equal(Outcome.Holds, At(hot.WithTankTemperature(Celsius(20))));
        Assert.Equal(Outcome.Fails, At(hot.WithTankTemperature(Celsius(20)).WithInletTemperature(Celsius(60))));
        Assert.Equal(Outcome.Fails, At(Conditions.Of(hot.Atmosphere, Wren.Volt(13.5), Celsius(20)).WithTankTemperature(Celsius(60))));
    }

    /// <summary>Nothing of the injectors changes with the tank, and nothing at all where tank and inlet are as warm as the rail.</summary>
    [Fact]
    public void Injectors_AreJudgedAtTheRailsTemperature() =>
        Gen.Select(Gen.Double[-20, 70], Gen.Double[-20, 70], Gen.Double[1000, 7000]).Sample((rail, tank, rpm) =>
        {
            Conditions one = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(13.5), Celsius(rail));
            OperatingResult At(Conditions conditions) => Wren.System().Solve(OperatingPoint.At(Wren.Rpm(rpm), Wren.Kpa(50), conditions));
            OperatingResult same = At(one);
            OperatingResult other = At(one.WithTankTemperature(Celsius(tank)));
            return same.FuelDensity.Equals(other.FuelDensity, Density.Zero)
                && same.DutyCycle?.DecimalFractions == other.DutyCycle?.DecimalFractions
                && one.WithTankTemperature(Celsius(rail)).Equals(one)
                && !one.WithTankTemperature(Celsius(rail + 1)).Equals(one);
        });

    /// <summary>By the definition of effectiveness: 70 % of the way from the compressor's outlet to the coolant.</summary>
    [Fact]
    public void Charge_IsCooledTowardsItsCoolant() =>
        Gen.Select(Gen.Double[-20, 100], Gen.Double[0.1, 1.5], Gen.Double[1000, 7000]).Sample((coolant, boost, rpm) =>
        {
            FuelDemand demand = Wren.Demand(induction: Wren.Turbocharger.WithCoolant(Celsius(coolant)))
                .At(Wren.Rpm(rpm), Pressure.FromBars(boost), Atmosphere.Standard);
            FuelDemand ambient = Wren.Demand().At(Wren.Rpm(rpm), Pressure.FromBars(boost), Atmosphere.Standard);
            double outlet = demand.CompressorOutletTemperature.Kelvins;
            return Math.Abs(demand.ChargeTemperature.Kelvins - (outlet - (0.7 * (outlet - (coolant + 273.15))))) < 1e-9 * outlet
                && (coolant < 15) == (demand.FromAir > ambient.FromAir);
        });

    /// <summary>n-Heptane: 688.0 kg/m³ at 15 °C, 679.5 at 25 and 675.3 at 30, handbook values from memory.</summary>
    [Theory]
    [InlineData(15, 688.0)]
    [InlineData(25, 679.5)]
    [InlineData(30, 675.3)]
    public void Heptane_OfATemperature_HasTheHandbooksDensity(double celsius, double expected)
    {
        double density = TestFluid.HeptaneAt(Celsius(celsius)).Density.KilogramsPerCubicMeter;
        Assert.True(Math.Abs(density - expected) < 0.0003 * expected, $"{density}");
        Assert.Equal(TestFluid.Heptane.Density.KilogramsPerCubicMeter, TestFluid.HeptaneAt(Celsius(20)).Density.KilogramsPerCubicMeter, 9);
    }

    private static Temperature Celsius(double degrees) => Temperature.FromDegreesCelsius(degrees);

    private static Margin Of(OperatingResult result, Part part) => result.Margins.Single(margin => margin.Part == part);
}
