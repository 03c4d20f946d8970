using FuelSizing.Quantities;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Quantities;

/// <summary>Units for people, one for each kind of figure.</summary>
public class FigureUnitsTests
{
    private static readonly TextStyle Us = TextStyle.UsCustomary;

    // NIST Special Publication 811 (2008), appendix B.8: factors for converting to SI.
    [Fact(DisplayName = "US customary display units; NIST SP 811")]
    public void UsCustomary_OfEachKind_FollowsNistsFactors()
    {
        FigureUnits us = FigureUnits.UsCustomary;
        Published.Value(Works.Nist811.At("psi, Pa"), 6894.757, 1 / us.Pressure.ValueOf(Pressure.FromPascals(1)), 1e-6);
        Published.Value(Works.Nist811.At("US gallon, m³"), 3.785412e-3, 1 / us.PumpFlow.ValueOf(VolumeFlow.FromCubicMetersPerHour(1)), 1e-6);
        Published.Value(Works.Nist811.At("pound, kg"), 0.4535924, 1 / us.MassFlow.ValueOf(MassFlow.FromKilogramsPerHour(1)), 1e-6);

        // UnitsNet's mechanical horsepower is 13 parts in a million low.
        Published.Value(Works.Nist811.At("horsepower (550 ft·lbf/s), W"), 745.6999, 1 / us.Power.ValueOf(Power.FromWatts(1)), 2e-5);
        Published.Value(Works.Nist811.At("lb/ft³, kg/m³"), 16.01846, 1 / us.Density.ValueOf(Density.FromKilogramsPerCubicMeter(1)), 1e-6);
        Published.Value(Works.Nist811.At("foot, m"), 0.3048, 1 / us.Length.ValueOf(Length.FromMeters(1)), 1e-12);
        Published.Value(Works.Nist811.At("Btu(IT)/lb, J/kg"), 2326, 1 / us.HeatingValue.ValueOf(SpecificEnergy.FromJoulesPerKilogram(1)), 1e-4);
        Published.Value(Works.Nist811.At("t/°F = 1.8 t/°C + 32, 40 °C"), 104, us.Temperature.ValueOf(Temperature.FromDegreesCelsius(40)), 1e-12);
    }

    [Fact]
    public void UsCustomary_InWords_HasItsUnitsAndNoMoreFiguresThanItDeserves()
    {
        Assert.Equal("43.5 psi", Us.Of(Pressure.FromKilopascals(300)));
        Assert.Equal("8.7 psi", Us.Boost(Pressure.FromBars(0.6)));
        Assert.Equal("−8.7 psi", Us.Boost(Pressure.FromBars(-0.6)));
        Assert.Equal("31.2 US gal/h", Us.PumpFlow(VolumeFlow.FromLitersPerHour(118)));
        Assert.Equal("360 mL/min", Us.InjectorFlow(VolumeFlow.FromMillilitersPerMinute(360)));
        Assert.Equal("164 lb/h", Us.Of(MassFlow.FromGramsPerSecond(20.7)));
        Assert.Equal("318 hp", Us.Of(Power.FromKilowatts(237)));
        Assert.Equal("101 W", Us.Of(Power.FromWatts(101)));
        Assert.Equal("95 °F", Us.Of(Temperature.FromDegreesCelsius(35)));
        Assert.Equal("0.518 lb/(hp·h)", Us.Of(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315)));
        Assert.Equal("0.49 psi", Us.PressureLoss(Pressure.FromKilopascals(3.4)));
        Assert.Equal("−0.49 psi", Us.PressureChange(Pressure.FromKilopascals(-3.4)));
        Assert.Equal("14.8 ft", Us.Of(Length.FromMeters(4.5)));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Quantity_OfAShownNumber_IsTheQuantity(bool metric)
    {
        FigureUnits units = metric ? FigureUnits.Metric : FigureUnits.UsCustomary;
        Assert.Equal(3.1e5, units.Pressure.Quantity(units.Pressure.ValueOf(Pressure.FromPascals(3.1e5))).Pascals, 1e-6);
        Assert.Equal(0.3e5, units.Boost.Quantity(units.Boost.ValueOf(Pressure.FromPascals(0.3e5))).Pascals, 1e-6);
        Assert.Equal(120, units.PumpFlow.Quantity(units.PumpFlow.ValueOf(VolumeFlow.FromLitersPerHour(120))).LitersPerHour, 1e-9);
        Assert.Equal(500, units.InjectorFlow.Quantity(units.InjectorFlow.ValueOf(VolumeFlow.FromMillilitersPerMinute(500))).MillilitersPerMinute, 1e-9);
        Assert.Equal(20, units.MassFlow.Quantity(units.MassFlow.ValueOf(MassFlow.FromGramsPerSecond(20))).GramsPerSecond, 1e-9);
        Assert.Equal(200, (double)units.Power.Quantity(units.Power.ValueOf(Power.FromKilowatts(200))).Kilowatts, 1e-9);
        Assert.Equal(35, units.Temperature.Quantity(units.Temperature.ValueOf(Temperature.FromDegreesCelsius(35))).DegreesCelsius, 1e-9);
        Assert.Equal(740, units.Density.Quantity(units.Density.ValueOf(Density.FromKilogramsPerCubicMeter(740))).KilogramsPerCubicMeter, 1e-9);
        Assert.Equal(43, units.HeatingValue.Quantity(units.HeatingValue.ValueOf(SpecificEnergy.FromMegajoulesPerKilogram(43))).MegajoulesPerKilogram, 1e-9);
        Assert.Equal(315, units.Consumption.Quantity(units.Consumption.ValueOf(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315))).GramsPerKiloWattHour, 1e-9);
        Assert.Equal(4.5, units.Length.Quantity(units.Length.ValueOf(Length.FromMeters(4.5))).Meters, 1e-9);
    }

    [Fact]
    public void With_NoUnit_IsRefused() =>
        Assert.Throws<ArgumentNullException>(() => FigureUnits.Metric with { Pressure = null! });
}
