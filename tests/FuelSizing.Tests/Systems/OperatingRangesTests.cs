using FuelSizing.Fuels;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>Ranges of the conditions: their ends are allowed, what lies past them is refused by name, and each is told.</summary>
public class OperatingRangesTests
{
    private static readonly OperatingRanges None = OperatingRanges.Around(Wren.Hill);

    [Fact]
    public void Ends_OfEachRange_AreAllowedAndNoFurther()
    {
        static Temperature Celsius(double degrees) => Temperature.FromDegreesCelsius(degrees);
        OperatingRanges widest = None
            .WithAmbientPressure(Wren.Kpa(40), Wren.Kpa(110))
            .WithAmbientTemperature(Celsius(-50), Celsius(60))
            .WithSupplyVoltage(Wren.Volt(6), Wren.Volt(20))
            .WithFuelTemperature(Celsius(-30), Celsius(80))
            .WithEthanolContent(Wren.Percent(0), Wren.Percent(100));
        Assert.Equal((Wren.Kpa(40), Wren.Kpa(110)), widest.AmbientPressure);
        Assert.Equal((Celsius(-50), Celsius(60)), widest.AmbientTemperature);
        Assert.Equal((Wren.Volt(6), Wren.Volt(20)), widest.SupplyVoltage);
        Assert.Equal((Celsius(-30), Celsius(80)), widest.FuelTemperature);
        Assert.Equal((Wren.Percent(0), Wren.Percent(100)), widest.EthanolContent);
        Assert.Equal(Fuel.Petrol, widest.Petrol);
        Assert.Same(Wren.Hill, widest.Conditions);

        Refused.Missing("conditions", () => OperatingRanges.Around(null!));
        Refused.OutOfRange("lowest", () => None.WithAmbientPressure(Wren.Kpa(39.9), Wren.Kpa(110)));
        Refused.OutOfRange("highest", () => None.WithAmbientPressure(Wren.Kpa(40), Wren.Kpa(110.1)));
        Refused.OutOfRange("highest", () => None.WithAmbientPressure(Wren.Kpa(100), Wren.Kpa(99)));
        Refused.OutOfRange("lowest", () => None.WithAmbientTemperature(Celsius(-51), Celsius(60)));
        Refused.OutOfRange("highest", () => None.WithAmbientTemperature(Celsius(-50), Celsius(61)));
        Refused.OutOfRange("highest", () => None.WithAmbientTemperature(Celsius(20), Celsius(19)));
        Refused.OutOfRange("lowest", () => None.WithSupplyVoltage(Wren.Volt(5.9), Wren.Volt(20)));
        Refused.OutOfRange("highest", () => None.WithSupplyVoltage(Wren.Volt(6), Wren.Volt(20.1)));
        Refused.OutOfRange("highest", () => None.WithSupplyVoltage(Wren.Volt(13), Wren.Volt(12.9)));
        Refused.OutOfRange("lowest", () => None.WithFuelTemperature(Celsius(-31), Celsius(80)));
        Refused.OutOfRange("highest", () => None.WithFuelTemperature(Celsius(-30), Celsius(81)));
        Refused.OutOfRange("highest", () => None.WithFuelTemperature(Celsius(20), Celsius(19)));
        Refused.OutOfRange("lowest", () => None.WithEthanolContent(Wren.Percent(-1), Wren.Percent(100)));
        Refused.OutOfRange("highest", () => None.WithEthanolContent(Wren.Percent(0), Wren.Percent(101)));
        Refused.OutOfRange("highest", () => None.WithEthanolContent(Wren.Percent(20), Wren.Percent(19)));
    }

    [Fact]
    public void Words_NameEachRangeThatWasGiven()
    {
        Assert.Equal($"no range; {Wren.Hill}", None.ToString());
        OperatingRanges ranges = None.WithSupplyVoltage(Wren.Volt(12.4), Wren.Volt(14.2));
        Assert.Equal("supply voltage 12.4 V to 14.2 V", ranges.ToString());
        Assert.Equal(
            "ambient pressure 82 kPa to 102 kPa; ambient temperature −10 °C to 35 °C; supply voltage 12.4 V to 14.2 V; fuel temperature 5 °C to 55 °C; ethanol content 0 % to 20 %",
            ranges
                .WithEthanolContent(Wren.Percent(0), Wren.Percent(20))
                .WithFuelTemperature(Temperature.FromDegreesCelsius(5), Temperature.FromDegreesCelsius(55))
                .WithAmbientTemperature(Temperature.FromDegreesCelsius(-10), Temperature.FromDegreesCelsius(35))
                .WithAmbientPressure(Wren.Kpa(82), Wren.Kpa(102)).ToString());
    }

    /// <summary>Ranges are equal by value; each end of each counts, and the petrol.</summary>
    [Fact]
    public void Ranges_OfTheSameValues_AreEqual()
    {
        static OperatingRanges Of(double change, int which) => None
            .WithAmbientPressure(Wren.Kpa(82 + On(0, change, which)), Wren.Kpa(102 + On(1, change, which)))
            .WithAmbientTemperature(Temperature.FromDegreesCelsius(-10 + On(2, change, which)), Temperature.FromDegreesCelsius(35 + On(3, change, which)))
            .WithSupplyVoltage(Wren.Volt(12 + On(4, change, which)), Wren.Volt(14 + On(5, change, which)))
            .WithFuelTemperature(Temperature.FromDegreesCelsius(5 + On(6, change, which)), Temperature.FromDegreesCelsius(55 + On(7, change, which)))
            .WithEthanolContent(Wren.Percent(3 + On(8, change, which)), Wren.Percent(20 + On(9, change, which)));
        static double On(int place, double change, int which) => place == which ? change : 0;
        Assert.Equal(Of(0, 0), Of(0, 1));
        Assert.Equal(Of(0, 0).GetHashCode(), Of(0, 1).GetHashCode());
        Assert.All(Enumerable.Range(0, 10), place => Assert.NotEqual(Of(0, 0), Of(0.5, place)));
        Assert.NotEqual(None, Of(0, 0));
        Assert.NotEqual(
            None.WithEthanolContent(Wren.Percent(3), Wren.Percent(20)),
            None.WithEthanolContent(Wren.Percent(3), Wren.Percent(20), Fuel.Methanol));
    }
}
