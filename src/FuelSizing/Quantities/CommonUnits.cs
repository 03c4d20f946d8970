using System.Runtime.CompilerServices;
using UnitsNet.Units;

namespace FuelSizing.Quantities;

/// <summary>Units that files mostly hold, by their text: UnitsNet's parser says the same, and takes 0.3 s to get ready for it.</summary>
/// <remarks>Units stand as their numbers: a table of each quantity's own type would have to be compiled for each of them before a file is read.</remarks>
internal static class CommonUnits
{
    private static readonly (Type Quantity, string Text, int Unit)[] Listed =
    [
        (typeof(PressureUnit), "kPa", (int)PressureUnit.Kilopascal),
        (typeof(PressureUnit), "Pa", (int)PressureUnit.Pascal),
        (typeof(PressureUnit), "bar", (int)PressureUnit.Bar),
        (typeof(PressureUnit), "mbar", (int)PressureUnit.Millibar),
        (typeof(PressureUnit), "psi", (int)PressureUnit.PoundForcePerSquareInch),
        (typeof(VolumeFlowUnit), "mL/min", (int)VolumeFlowUnit.MilliliterPerMinute),
        (typeof(VolumeFlowUnit), "cc/min", (int)VolumeFlowUnit.MilliliterPerMinute),
        (typeof(VolumeFlowUnit), "L/h", (int)VolumeFlowUnit.LiterPerHour),
        (typeof(VolumeFlowUnit), "L/min", (int)VolumeFlowUnit.LiterPerMinute),
        (typeof(VolumeFlowUnit), "US gal/h", (int)VolumeFlowUnit.UsGallonPerHour),
        (typeof(MassFlowUnit), "g/s", (int)MassFlowUnit.GramPerSecond),
        (typeof(MassFlowUnit), "kg/h", (int)MassFlowUnit.KilogramPerHour),
        (typeof(MassFlowUnit), "lb/h", (int)MassFlowUnit.PoundPerHour),
        (typeof(DurationUnit), "ms", (int)DurationUnit.Millisecond),
        (typeof(DurationUnit), "s", (int)DurationUnit.Second),
        (typeof(DurationUnit), "us", (int)DurationUnit.Microsecond),
        (typeof(ElectricPotentialUnit), "V", (int)ElectricPotentialUnit.Volt), (typeof(ElectricPotentialUnit), "mV", (int)ElectricPotentialUnit.Millivolt),
        (typeof(ElectricCurrentUnit), "A", (int)ElectricCurrentUnit.Ampere),
        (typeof(ElectricResistanceUnit), "mΩ", (int)ElectricResistanceUnit.Milliohm), (typeof(ElectricResistanceUnit), "Ω", (int)ElectricResistanceUnit.Ohm),
        (typeof(DensityUnit), "kg/m³", (int)DensityUnit.KilogramPerCubicMeter), (typeof(DensityUnit), "kg/m3", (int)DensityUnit.KilogramPerCubicMeter),
        (typeof(RatioUnit), "%", (int)RatioUnit.Percent),
        (typeof(VolumeUnit), "L", (int)VolumeUnit.Liter), (typeof(VolumeUnit), "mL", (int)VolumeUnit.Milliliter), (typeof(VolumeUnit), "cm³", (int)VolumeUnit.CubicCentimeter),
        (typeof(RotationalSpeedUnit), "rpm", (int)RotationalSpeedUnit.RevolutionPerMinute),
        (typeof(RotationalSpeedUnit), "rev/min", (int)RotationalSpeedUnit.RevolutionPerMinute),
        (typeof(PowerUnit), "kW", (int)PowerUnit.Kilowatt),
        (typeof(PowerUnit), "W", (int)PowerUnit.Watt),
        (typeof(PowerUnit), "hp", (int)PowerUnit.MechanicalHorsepower),
        (typeof(PowerUnit), "PS", (int)PowerUnit.MetricHorsepower),
        (typeof(TemperatureUnit), "°C", (int)TemperatureUnit.DegreeCelsius),
        (typeof(TemperatureUnit), "°F", (int)TemperatureUnit.DegreeFahrenheit),
        (typeof(TemperatureUnit), "K", (int)TemperatureUnit.Kelvin),
        (typeof(LengthUnit), "mm", (int)LengthUnit.Millimeter),
        (typeof(LengthUnit), "m", (int)LengthUnit.Meter),
        (typeof(LengthUnit), "cm", (int)LengthUnit.Centimeter),
        (typeof(LengthUnit), "in", (int)LengthUnit.Inch),
        (typeof(AreaUnit), "mm²", (int)AreaUnit.SquareMillimeter),
        (typeof(SpecificEnergyUnit), "MJ/kg", (int)SpecificEnergyUnit.MegajoulePerKilogram),
        (typeof(SpecificEnergyUnit), "kJ/kg", (int)SpecificEnergyUnit.KilojoulePerKilogram),
        (typeof(KinematicViscosityUnit), "cSt", (int)KinematicViscosityUnit.Centistokes),
        (typeof(DynamicViscosityUnit), "mPa·s", (int)DynamicViscosityUnit.MillipascalSecond),
        (typeof(DynamicViscosityUnit), "Pa·s", (int)DynamicViscosityUnit.PascalSecond),
        (typeof(DynamicViscosityUnit), "cP", (int)DynamicViscosityUnit.Centipoise),
        (typeof(BrakeSpecificFuelConsumptionUnit), "g/kWh", (int)BrakeSpecificFuelConsumptionUnit.GramPerKiloWattHour),
    ];

    /// <summary>Every unit that is listed, by its quantity's unit type and its text.</summary>
    public static IEnumerable<KeyValuePair<(Type Quantity, string Text), int>> All => Listed.Select(unit => KeyValuePair.Create((unit.Quantity, unit.Text), unit.Unit));

    /// <summary>Of one quantity; empty of one that is not listed.</summary>
    public static IReadOnlyList<(string Text, TUnit Unit)> Of<TUnit>()
        where TUnit : struct, Enum =>
        [.. Listed.Where(unit => unit.Quantity == typeof(TUnit)).Select(unit => (unit.Text, Unsafe.BitCast<int, TUnit>(unit.Unit)))];

    /// <summary>The quantities that are listed, by their units.</summary>
    public static IEnumerable<Type> Quantities => Listed.Select(unit => unit.Quantity).Distinct();
}
