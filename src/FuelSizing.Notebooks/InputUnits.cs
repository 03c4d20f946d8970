using UnitsNet.Units;

namespace FuelSizing.Notebooks;

/// <summary>The unit of a plain number, by the name that it has: <c>LitresPerHour</c>, <c>acrossKilopascals</c>.</summary>
internal static class InputUnits
{
    private static readonly (string Ending, Enum Unit)[] Known =
    [
        ("Kilopascals", PressureUnit.Kilopascal),
        ("Bar", PressureUnit.Bar),
        ("LitresPerHour", VolumeFlowUnit.LiterPerHour),
        ("MillilitresPerMinute", VolumeFlowUnit.MilliliterPerMinute),
        ("Amperes", ElectricCurrentUnit.Ampere),
        ("Volts", ElectricPotentialUnit.Volt),
        ("Milliseconds", DurationUnit.Millisecond),
        ("Kilowatts", PowerUnit.Kilowatt),
        ("GramsPerKilowattHour", BrakeSpecificFuelConsumptionUnit.GramPerKiloWattHour),
        ("Celsius", TemperatureUnit.DegreeCelsius),
        ("Millimetres", LengthUnit.Millimeter),
        ("Metres", LengthUnit.Meter),

        // The notebooks say these two in a comment: volumetric efficiency in per cent, speed in rev/min.
        ("Efficiency", RatioUnit.Percent),
        ("Speed", RotationalSpeedUnit.RevolutionPerMinute),
    ];

    /// <summary>The unit of a number; none where its name says none.</summary>
    public static Enum? Of(string name) =>
        Known.FirstOrDefault(known => name.EndsWith(known.Ending, StringComparison.OrdinalIgnoreCase)).Unit;
}
