using CsCheck;
using FuelSizing.Files;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Tests.Files;

/// <summary>A quantity written down comes back as it was, in every unit that it may be given in.</summary>
public class MeasureTests
{
    private static readonly Gen<double> Number = Gen.OneOf(Gen.Double[0.001, 1000], Gen.Double[-1e6, 1e6], Gen.OneOfConst(0, 0.1, 1e-12, 1.0 / 3));

    [Fact]
    public void Quantity_InAnyUnit_ComesBackToTheLastBit()
    {
        Comes<VolumeFlow, VolumeFlowUnit>(Measures.Flow, VolumeFlow.From);
        Comes<UnitsNet.Pressure, PressureUnit>(Measures.Pressure, UnitsNet.Pressure.From);
        Comes<Duration, DurationUnit>(Measures.Time, Duration.From);
        Comes<ElectricPotential, ElectricPotentialUnit>(Measures.Voltage, ElectricPotential.From);
        Comes<ElectricCurrent, ElectricCurrentUnit>(Measures.Current, ElectricCurrent.From);
        Comes<ElectricResistance, ElectricResistanceUnit>(Measures.Resistance, ElectricResistance.From);
        Comes<Density, DensityUnit>(Measures.Density, Density.From);
        Comes<Ratio, RatioUnit>(Measures.Share, Ratio.From);
        Comes<Volume, VolumeUnit>(Measures.Volume, Volume.From);
        Comes<RotationalSpeed, RotationalSpeedUnit>(Measures.Speed, RotationalSpeed.From);
        Comes<Power, PowerUnit>(Measures.Power, Power.From);
        Comes<Temperature, TemperatureUnit>(Measures.Temperature, Temperature.From);
        Comes<Length, LengthUnit>(Measures.Length, Length.From);
        Comes<Area, AreaUnit>(Measures.Area, Area.From);
        Comes<SpecificEnergy, SpecificEnergyUnit>(Measures.HeatingValue, SpecificEnergy.From);
        Comes<CoefficientOfThermalExpansion, CoefficientOfThermalExpansionUnit>(Measures.Expansion, CoefficientOfThermalExpansion.From);
        Comes<KinematicViscosity, KinematicViscosityUnit>(Measures.KinematicViscosity, KinematicViscosity.From);
        Comes<DynamicViscosity, DynamicViscosityUnit>(Measures.DynamicViscosity, DynamicViscosity.From);
        Comes<BrakeSpecificFuelConsumption, BrakeSpecificFuelConsumptionUnit>(Measures.Consumption, BrakeSpecificFuelConsumption.From);
    }

    /// <summary>Power is held as a decimal number, with more digits than a double has.</summary>
    [Fact]
    public void Power_OfManyDigits_KeepsThem()
    {
        Power third = Power.FromKilowatts(100) / 3;
        Assert.Equal(third.Watts, Back(Measures.Power, third).Watts);
    }

    [Theory]
    [InlineData("0.85 per unit", 0.85)]
    [InlineData("85 %", 0.85)]
    [InlineData("0.85 DecimalFraction", 0.85)]
    public void Share_InItsSpellings_IsRead(string text, double share) =>
        Assert.Equal(share, Read(Measures.Share, text)!.Value.DecimalFractions, 15);

    [Theory]
    [InlineData("1 3")]
    [InlineData("1 Undefined")]
    [InlineData("1 kPa")]
    public void Share_InAnotherUnit_IsNone(string text) => Assert.Null(Read(Measures.Share, text));

    private static void Comes<T, TUnit>(Measure<T> measure, Func<QuantityValue, TUnit, T> from)
        where T : struct, IQuantity<TUnit>
        where TUnit : struct, Enum =>
        Assert.All(Enum.GetValues<TUnit>(), unit => Number.Sample(
            number =>
            {
                T quantity = from(number, unit);
                T back = Back(measure, quantity);
                return back.Unit.Equals(quantity.Unit)
                    && (quantity.Value.IsDecimal
                        ? (decimal)back.Value == (decimal)quantity.Value
                        : BitConverter.DoubleToInt64Bits((double)back.Value) == BitConverter.DoubleToInt64Bits((double)quantity.Value));
            },
            iter: 20));

    private static T Back<T>(Measure<T> measure, T quantity)
        where T : struct => Read(measure, measure.Text(quantity))!.Value;

    private static T? Read<T>(Measure<T> measure, string text)
        where T : struct
    {
        int space = text.IndexOf(' ', StringComparison.Ordinal);
        return measure.Read(text[..space], text[(space + 1)..]);
    }
}
