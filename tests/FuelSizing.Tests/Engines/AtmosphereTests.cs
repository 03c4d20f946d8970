using CsCheck;
using FuelSizing.Engines;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Engines;

public class AtmosphereTests
{
    // Printed to six figures.
    [Theory(DisplayName = "Standard atmosphere by altitude; ISO 2533")]
    [InlineData(0, 288.150, 1013.25, 1.22500)]
    [InlineData(500, 284.900, 954.608, 1.16727)]
    [InlineData(600, 284.250, 943.216, 1.15598)]
    [InlineData(1000, 281.650, 898.746, 1.11164)]
    [InlineData(1500, 278.400, 845.560, 1.05807)]
    [InlineData(2000, 275.150, 794.952, 1.00649)]
    [InlineData(3000, 268.650, 701.085, 0.909122)]
    public void AtAltitude_OfAStandardHeight_IsThatOfIso2533(
        double metres, double kelvins, double hectopascals, double density)
    {
        Atmosphere air = Atmosphere.AtAltitude(Length.FromMeters(metres));
        Published.Value(Works.Iso2533, kelvins, air.Temperature.Kelvins, 1e-6);
        Published.Value(Works.Iso2533, hectopascals, air.Pressure.Hectopascals, 2e-6);
        Published.Value(Works.Iso2533, density, air.Density.KilogramsPerCubicMeter, 6e-6);
    }

    [Fact]
    public void AtAltitude_HigherUp_IsThinner() =>
        Gen.Select(Gen.Double[-500, 5900], Gen.Double[1, 100]).Sample((metres, climb) =>
            Atmosphere.AtAltitude(Length.FromMeters(metres + climb)).Density
                < Atmosphere.AtAltitude(Length.FromMeters(metres)).Density);

    [Fact]
    public void AtAltitude_OnAHotDay_KeepsThePressureAndTakesTheTemperature()
    {
        Atmosphere hot = Atmosphere.AtAltitude(Length.FromMeters(600), Temperature.FromDegreesCelsius(32));
        Assert.Equal(
            Atmosphere.AtAltitude(Length.FromMeters(600)).Pressure.Pascals, hot.Pressure.Pascals, 6);
        Assert.Equal(32, hot.Temperature.DegreesCelsius, 9);
    }
}
