using System.Globalization;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

using Units = UnitsNet.Units;

/// <summary>A quantity that files give as a number and a unit.</summary>
/// <typeparam name="T">The quantity.</typeparam>
/// <param name="Example">A number and unit, for a message.</param>
/// <param name="Read">
/// The quantity of a number as it stands in a file and a unit's abbreviation; none if it is no unit of it.
/// </param>
/// <param name="Text">Number and unit of a quantity, in the unit that it is given in, such that reading gives it back to the last bit.</param>
/// <exception cref="OverflowException">From reading: the number is too large for the quantity.</exception>
internal sealed record Measure<T>(string Example, Func<string, string, T?> Read, Func<T, string> Text)
    where T : struct;

/// <summary>The quantities that files give.</summary>
internal static class Measures
{
    /// <summary>In SI; what is larger might be beyond a double in a unit that a message is in.</summary>
    private const double Maximum = 1e100;

    public static readonly Measure<VolumeFlow> Flow = Of<VolumeFlow, Units.VolumeFlowUnit>("360 mL/min", VolumeFlow.From);

    public static readonly Measure<MassFlow> MassFlow = Of<MassFlow, Units.MassFlowUnit>("118 g/s", UnitsNet.MassFlow.From);

    public static readonly Measure<Pressure> Pressure = Of<Pressure, Units.PressureUnit>("300 kPa", UnitsNet.Pressure.From);

    public static readonly Measure<Duration> Time = Of<Duration, Units.DurationUnit>("1.2 ms", Duration.From);

    public static readonly Measure<ElectricPotential> Voltage =
        Of<ElectricPotential, Units.ElectricPotentialUnit>("13.5 V", ElectricPotential.From);

    public static readonly Measure<ElectricCurrent> Current =
        Of<ElectricCurrent, Units.ElectricCurrentUnit>("8 A", ElectricCurrent.From);

    public static readonly Measure<ElectricResistance> Resistance =
        Of<ElectricResistance, Units.ElectricResistanceUnit>("5 mΩ", ElectricResistance.From);

    public static readonly Measure<Density> Density = Of<Density, Units.DensityUnit>("684 kg/m³", UnitsNet.Density.From);

    public static readonly Measure<Ratio> Share = Of<Ratio, Units.RatioUnit>("95 %", Ratio.From);

    public static readonly Measure<Volume> Volume = Of<Volume, Units.VolumeUnit>("2.4 L", UnitsNet.Volume.From);

    public static readonly Measure<Mass> Mass = Of<Mass, Units.MassUnit>("12.4 g", UnitsNet.Mass.From);

    public static readonly Measure<RotationalSpeed> Speed =
        Of<RotationalSpeed, Units.RotationalSpeedUnit>("6800 rpm", RotationalSpeed.From);

    public static readonly Measure<Power> Power = Of<Power, Units.PowerUnit>("132 kW", UnitsNet.Power.From);

    public static readonly Measure<Temperature> Temperature =
        Of<Temperature, Units.TemperatureUnit>("20 °C", UnitsNet.Temperature.From);

    public static readonly Measure<Length> Length = Of<Length, Units.LengthUnit>("8 mm", UnitsNet.Length.From);

    public static readonly Measure<Area> Area = Of<Area, Units.AreaUnit>("2.5 mm²", UnitsNet.Area.From);

    public static readonly Measure<SpecificEnergy> HeatingValue =
        Of<SpecificEnergy, Units.SpecificEnergyUnit>("44 MJ/kg", SpecificEnergy.From);

    public static readonly Measure<CoefficientOfThermalExpansion> Expansion =
        Of<CoefficientOfThermalExpansion, Units.CoefficientOfThermalExpansionUnit>("0.0011 1/K", CoefficientOfThermalExpansion.From);

    public static readonly Measure<KinematicViscosity> KinematicViscosity =
        Of<KinematicViscosity, Units.KinematicViscosityUnit>("0.6 cSt", UnitsNet.KinematicViscosity.From);

    public static readonly Measure<DynamicViscosity> DynamicViscosity =
        Of<DynamicViscosity, Units.DynamicViscosityUnit>("0.45 mPa·s", UnitsNet.DynamicViscosity.From);

    public static readonly Measure<BrakeSpecificFuelConsumption> Consumption =
        Of<BrakeSpecificFuelConsumption, Units.BrakeSpecificFuelConsumptionUnit>("320 g/kWh", BrakeSpecificFuelConsumption.From);

    private static Measure<T> Of<T, TUnit>(string example, Func<QuantityValue, TUnit, T> from)
        where T : struct, IQuantity<TUnit>
        where TUnit : struct, Enum
    {
        // UnitsNet holds a few quantities, power among them, as decimal numbers, whose digits a double would lose.
        bool isDecimal = from(1, default(T).Unit).Value.IsDecimal;

        T? Read(string number, string text)
        {
            if (!UnitText.TryParse(text, out TUnit unit))
            {
                return null;
            }

            if (isDecimal)
            {
                return from(decimal.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture), unit);
            }

            double value = double.Parse(number, CultureInfo.InvariantCulture);
            return Math.Abs(value) * (double)from(1, unit).As(default(T).Unit) <= Maximum ? from(value, unit) : throw new OverflowException();
        }

        string Text(T quantity)
        {
            string number = isDecimal
                ? ((decimal)quantity.Value).ToString(CultureInfo.InvariantCulture)
                : ((double)quantity.Value).ToString("R", CultureInfo.InvariantCulture);
            return $"{number} {UnitText.Of(quantity.Unit)}";
        }

        return new(example, Read, Text);
    }
}
