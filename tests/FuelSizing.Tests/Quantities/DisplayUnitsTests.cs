using FuelSizing.Equations;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Tests.Quantities;

/// <summary>Units for people: one setting for the process, so these run while nothing else does.</summary>
[Collection(Alone)]
public sealed class DisplayUnitsTests : IDisposable
{
    public const string Alone = "one setting for the process";

    public DisplayUnitsTests() => DisplayUnits.Style = UnitStyle.UsCustomary;

    public void Dispose() => DisplayUnits.Style = UnitStyle.Metric;

    // NIST Special Publication 811 (2008), appendix B.8: factors for converting to SI.
    [Fact(DisplayName = "US customary display units; NIST SP 811")]
    public void UsCustomary_OfEachKind_FollowsNistsFactors()
    {
        Published.Value("NIST SP 811 (2008), B.8, psi 6.894757E+03 Pa", 1, DisplayUnits.Pressure.ValueOf(Pressure.FromPascals(6894.757)), 1e-6);
        Published.Value("NIST SP 811 (2008), B.8, US gallon 3.785412E−03 m³", 1, DisplayUnits.PumpFlow.ValueOf(VolumeFlow.FromCubicMetersPerHour(3.785412e-3)), 1e-6);
        Published.Value("NIST SP 811 (2008), B.8, pound 4.535924E−01 kg", 1, DisplayUnits.MassFlow.ValueOf(MassFlow.FromKilogramsPerHour(0.4535924)), 1e-6);

        // UnitsNet's mechanical horsepower is 13 parts in a million low.
        Published.Value("NIST SP 811 (2008), B.8, horsepower (550 ft·lbf/s) 7.456999E+02 W", 1, DisplayUnits.Power.ValueOf(Power.FromWatts(745.6999)), 2e-5);
        Published.Value("NIST SP 811 (2008), B.8, lb/ft³ 1.601846E+01 kg/m³", 1, DisplayUnits.Density.ValueOf(Density.FromKilogramsPerCubicMeter(16.01846)), 1e-6);
        Published.Value("NIST SP 811 (2008), B.8, foot 3.048E−01 m", 1, DisplayUnits.Length.ValueOf(Length.FromMeters(0.3048)), 1e-12);
        Published.Value("NIST SP 811 (2008), B.8, Btu(IT)/lb 2.326E+03 J/kg", 1, DisplayUnits.HeatingValue.ValueOf(SpecificEnergy.FromJoulesPerKilogram(2326)), 1e-4);
        Published.Value("NIST SP 811 (2008), B.8, t/°F = 1.8 t/°C + 32", 104, DisplayUnits.Temperature.ValueOf(Temperature.FromDegreesCelsius(40)), 1e-12);
    }

    [Fact]
    public void UsCustomary_InWords_HasItsUnitsAndNoMoreFiguresThanItDeserves()
    {
        Assert.Equal("43.5 psi", Readable.Of(Pressure.FromKilopascals(300)));
        Assert.Equal("8.7 psi", Readable.Boost(Pressure.FromBars(0.6)));
        Assert.Equal("−8.7 psi", Readable.Boost(Pressure.FromBars(-0.6)));
        Assert.Equal("31.2 US gal/h", Readable.PumpFlow(VolumeFlow.FromLitersPerHour(118)));
        Assert.Equal("360 mL/min", Readable.InjectorFlow(VolumeFlow.FromMillilitersPerMinute(360)));
        Assert.Equal("164 lb/h", Readable.Of(MassFlow.FromGramsPerSecond(20.7)));
        Assert.Equal("318 hp", Readable.Of(Power.FromKilowatts(237)));
        Assert.Equal("101 W", Readable.Of(Power.FromWatts(101)));
        Assert.Equal("95 °F", Readable.Of(Temperature.FromDegreesCelsius(35)));
        Assert.Equal("0.518 lb/(hp·h)", Readable.Of(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315)));
        Assert.Equal("0.49 psi", Readable.PressureLoss(Pressure.FromKilopascals(3.4)));
        Assert.Equal("−0.49 psi", Readable.PressureChange(Pressure.FromKilopascals(-3.4)));
        Assert.Equal("14.8 ft", Readable.Of(Length.FromMeters(4.5)));
    }

    [Theory]
    [InlineData(UnitStyle.Metric)]
    [InlineData(UnitStyle.UsCustomary)]
    public void Quantity_OfAShownNumber_IsTheQuantity(UnitStyle style)
    {
        DisplayUnits.Style = style;
        Assert.Equal(3.1e5, DisplayUnits.Pressure.Quantity(DisplayUnits.Pressure.ValueOf(Pressure.FromPascals(3.1e5))).Pascals, 1e-6);
        Assert.Equal(0.3e5, DisplayUnits.Boost.Quantity(DisplayUnits.Boost.ValueOf(Pressure.FromPascals(0.3e5))).Pascals, 1e-6);
        Assert.Equal(120, DisplayUnits.PumpFlow.Quantity(DisplayUnits.PumpFlow.ValueOf(VolumeFlow.FromLitersPerHour(120))).LitersPerHour, 1e-9);
        Assert.Equal(500, DisplayUnits.InjectorFlow.Quantity(DisplayUnits.InjectorFlow.ValueOf(VolumeFlow.FromMillilitersPerMinute(500))).MillilitersPerMinute, 1e-9);
        Assert.Equal(20, DisplayUnits.MassFlow.Quantity(DisplayUnits.MassFlow.ValueOf(MassFlow.FromGramsPerSecond(20))).GramsPerSecond, 1e-9);
        Assert.Equal(200, (double)DisplayUnits.Power.Quantity(DisplayUnits.Power.ValueOf(Power.FromKilowatts(200))).Kilowatts, 1e-9);
        Assert.Equal(35, DisplayUnits.Temperature.Quantity(DisplayUnits.Temperature.ValueOf(Temperature.FromDegreesCelsius(35))).DegreesCelsius, 1e-9);
        Assert.Equal(740, DisplayUnits.Density.Quantity(DisplayUnits.Density.ValueOf(Density.FromKilogramsPerCubicMeter(740))).KilogramsPerCubicMeter, 1e-9);
        Assert.Equal(43, DisplayUnits.HeatingValue.Quantity(DisplayUnits.HeatingValue.ValueOf(SpecificEnergy.FromMegajoulesPerKilogram(43))).MegajoulesPerKilogram, 1e-9);
        Assert.Equal(315, DisplayUnits.Consumption.Quantity(DisplayUnits.Consumption.ValueOf(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315))).GramsPerKiloWattHour, 1e-9);
        Assert.Equal(4.5, DisplayUnits.Length.Quantity(DisplayUnits.Length.ValueOf(Length.FromMeters(4.5))).Meters, 1e-9);
    }

    [Fact]
    public void Style_ThatIsNone_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DisplayUnits.Style = (UnitStyle)7);

    [CollectionDefinition(Alone, DisableParallelization = true)]
    public sealed class RunsAlone;
}
