using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Tests.Quantities;

public class ReadableTests
{
    [Fact]
    public void Of_EachQuantity_HasItsUnitAndNoNeedlessFigures()
    {
        Assert.Equal("360 kPa", Readable.Of(Wren.Kpa(359.96)));
        Assert.Equal("0.60 bar", Readable.Boost(Wren.Kpa(60)));
        Assert.Equal("−0.65 bar", Readable.Boost(Wren.Kpa(-65)));
        Assert.Equal("7,200 rev/min", Readable.Of(Wren.Rpm(7200)));
        Assert.Equal("552 mL/min", Readable.InjectorFlow(VolumeFlow.FromMillilitersPerMinute(551.7)));
        Assert.Equal("118 L/h", Readable.PumpFlow(VolumeFlow.FromLitersPerHour(118.4)));
        Assert.Equal("20.4 g/s", Readable.Of(MassFlow.FromGramsPerSecond(20.41)));
        Assert.Equal("4.21 g/s", Readable.Of(MassFlow.FromGramsPerSecond(4.21)));
        Assert.Equal("221 kW", Readable.Of(Power.FromKilowatts(220.6)));
        Assert.Equal("101 W", Readable.Of(Power.FromWatts(100.6)));
        Assert.Equal("41 °C", Readable.Of(Temperature.FromDegreesCelsius(41.2)));
        Assert.Equal("12.40 ms", Readable.Of(Wren.Ms(12.4)));
        Assert.Equal("84.6 %", Readable.DutyCycle(Wren.Percent(84.62)));
        Assert.Equal("85 %", Readable.Of(Wren.Percent(85)));
        Assert.Equal("+12 %", Readable.Change(Wren.Percent(12.3)));
        Assert.Equal("−7 %", Readable.Change(Wren.Percent(-7.4)));
        Assert.Equal("740 kg/m³", Readable.Of(Density.FromKilogramsPerCubicMeter(740.4)));
        Assert.Equal("13.5 V", Readable.Of(Wren.Volt(13.5)));
        Assert.Equal("0.31 V", Readable.VoltageDrop(Wren.Volt(0.312)));
        Assert.Equal("12.5 A", Readable.Of(ElectricCurrent.FromAmperes(12.5)));
        Assert.Equal("5.4 mΩ", Readable.Of(ElectricResistance.FromOhms(0.0054)));
        Assert.Equal("2.5 mm²", Readable.Of(Area.FromSquareMillimeters(2.5)));
        Assert.Equal("44.0 MJ/kg", Readable.Of(SpecificEnergy.FromMegajoulesPerKilogram(44)));
        Assert.Equal("315 g/kWh", Readable.Of(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315)));
    }

    [Fact]
    public void Of_ANumberThatRoundsToZero_HasNoSign()
    {
        Assert.Equal("0.00 bar", Readable.Boost(Wren.Kpa(-0.1)));
        Assert.Equal("0 %", Readable.Change(Wren.Percent(0.2)));
        Assert.Equal("0 %", Readable.Change(Wren.Percent(-0.2)));
    }

    [Fact]
    public void Of_UnderAnyCulture_IsWrittenTheSame()
    {
        global::System.Globalization.CultureInfo before = global::System.Globalization.CultureInfo.CurrentCulture;
        try
        {
            global::System.Globalization.CultureInfo comma =
                (global::System.Globalization.CultureInfo)global::System.Globalization.CultureInfo.InvariantCulture.Clone();
            comma.NumberFormat.NumberDecimalSeparator = ",";
            comma.NumberFormat.NumberGroupSeparator = ".";
            global::System.Globalization.CultureInfo.CurrentCulture = comma;
            Assert.Equal("13.5 V", Readable.Of(Wren.Volt(13.5)));
            Assert.Equal("7,200 rev/min", Readable.Of(Wren.Rpm(7200)));
            Assert.Contains(
                "it must be between 6 V and 20 V",
                Assert.Throws<ArgumentOutOfRangeException>(() => FuelSizing.Points.Conditions.Of(
                    FuelSizing.Engines.Atmosphere.Standard, Wren.Volt(2.5), Temperature.FromDegreesCelsius(20))).Message,
                StringComparison.Ordinal);
        }
        finally
        {
            global::System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }
}
