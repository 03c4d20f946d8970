using UnitsNet.Units;

namespace FuelSizing.Quantities;

/// <summary>Units that files mostly hold, by their text: UnitsNet's parser says the same, and takes 0.3 s to get ready for it.</summary>
internal static class CommonUnits
{
    private static readonly Dictionary<Type, Array> ByUnit = new()
    {
        [typeof(PressureUnit)] = new (string, PressureUnit)[]
        {
            ("kPa", PressureUnit.Kilopascal), ("Pa", PressureUnit.Pascal), ("bar", PressureUnit.Bar), ("mbar", PressureUnit.Millibar), ("psi", PressureUnit.PoundForcePerSquareInch),
        },
        [typeof(VolumeFlowUnit)] = new (string, VolumeFlowUnit)[]
        {
            ("mL/min", VolumeFlowUnit.MilliliterPerMinute), ("cc/min", VolumeFlowUnit.MilliliterPerMinute), ("L/h", VolumeFlowUnit.LiterPerHour), ("L/min", VolumeFlowUnit.LiterPerMinute),
            ("US gal/h", VolumeFlowUnit.UsGallonPerHour),
        },
        [typeof(MassFlowUnit)] = new (string, MassFlowUnit)[] { ("g/s", MassFlowUnit.GramPerSecond), ("kg/h", MassFlowUnit.KilogramPerHour), ("lb/h", MassFlowUnit.PoundPerHour) },
        [typeof(DurationUnit)] = new (string, DurationUnit)[] { ("ms", DurationUnit.Millisecond), ("s", DurationUnit.Second), ("us", DurationUnit.Microsecond) },
        [typeof(ElectricPotentialUnit)] = new (string, ElectricPotentialUnit)[] { ("V", ElectricPotentialUnit.Volt), ("mV", ElectricPotentialUnit.Millivolt) },
        [typeof(ElectricCurrentUnit)] = new (string, ElectricCurrentUnit)[] { ("A", ElectricCurrentUnit.Ampere) },
        [typeof(ElectricResistanceUnit)] = new (string, ElectricResistanceUnit)[] { ("mΩ", ElectricResistanceUnit.Milliohm), ("Ω", ElectricResistanceUnit.Ohm) },
        [typeof(DensityUnit)] = new (string, DensityUnit)[] { ("kg/m³", DensityUnit.KilogramPerCubicMeter), ("kg/m3", DensityUnit.KilogramPerCubicMeter) },
        [typeof(RatioUnit)] = new (string, RatioUnit)[] { ("%", RatioUnit.Percent) },
        [typeof(VolumeUnit)] = new (string, VolumeUnit)[] { ("L", VolumeUnit.Liter), ("mL", VolumeUnit.Milliliter), ("cm³", VolumeUnit.CubicCentimeter) },
        [typeof(RotationalSpeedUnit)] = new (string, RotationalSpeedUnit)[] { ("rpm", RotationalSpeedUnit.RevolutionPerMinute), ("rev/min", RotationalSpeedUnit.RevolutionPerMinute) },
        [typeof(PowerUnit)] = new (string, PowerUnit)[] { ("kW", PowerUnit.Kilowatt), ("W", PowerUnit.Watt), ("hp", PowerUnit.MechanicalHorsepower), ("PS", PowerUnit.MetricHorsepower) },
        [typeof(TemperatureUnit)] = new (string, TemperatureUnit)[] { ("°C", TemperatureUnit.DegreeCelsius), ("°F", TemperatureUnit.DegreeFahrenheit), ("K", TemperatureUnit.Kelvin) },
        [typeof(LengthUnit)] = new (string, LengthUnit)[] { ("mm", LengthUnit.Millimeter), ("m", LengthUnit.Meter), ("cm", LengthUnit.Centimeter), ("in", LengthUnit.Inch) },
        [typeof(AreaUnit)] = new (string, AreaUnit)[] { ("mm²", AreaUnit.SquareMillimeter) },
        [typeof(SpecificEnergyUnit)] = new (string, SpecificEnergyUnit)[] { ("MJ/kg", SpecificEnergyUnit.MegajoulePerKilogram), ("kJ/kg", SpecificEnergyUnit.KilojoulePerKilogram) },
        [typeof(KinematicViscosityUnit)] = new (string, KinematicViscosityUnit)[] { ("cSt", KinematicViscosityUnit.Centistokes) },
        [typeof(DynamicViscosityUnit)] = new (string, DynamicViscosityUnit)[] { ("mPa·s", DynamicViscosityUnit.MillipascalSecond), ("Pa·s", DynamicViscosityUnit.PascalSecond), ("cP", DynamicViscosityUnit.Centipoise) },
        [typeof(BrakeSpecificFuelConsumptionUnit)] = new (string, BrakeSpecificFuelConsumptionUnit)[] { ("g/kWh", BrakeSpecificFuelConsumptionUnit.GramPerKiloWattHour) },
    };

    /// <summary>Of one quantity; empty of one that is not listed.</summary>
    public static IReadOnlyList<(string Text, TUnit Unit)> Of<TUnit>()
        where TUnit : struct, Enum => ByUnit.TryGetValue(typeof(TUnit), out Array? units) ? ((string, TUnit)[])units : [];

    /// <summary>The quantities that are listed, by their units.</summary>
    public static IEnumerable<Type> Quantities => ByUnit.Keys;
}
