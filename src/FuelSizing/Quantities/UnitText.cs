using System.Collections.Concurrent;
using System.Globalization;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace FuelSizing.Quantities;

using Units = UnitsNet.Units;

/// <summary>Units as people write them in files: UnitsNet's abbreviations and a few common spellings that it lacks.</summary>
internal static class UnitText
{
    private const int MaximumKept = 5000;

    // UnitsNet looks an abbreviation up slowly, and a file holds the same few over and over. Units are kept as their numbers, for all quantities together.
    private static readonly ConcurrentDictionary<(Type Quantity, string Text), int> ByText = new(CommonUnits.All);

    private static readonly ConcurrentDictionary<(Type Quantity, int Unit), string> ByUnit = new();

    /// <summary>Reads a unit by its abbreviation.</summary>
    /// <param name="text">For instance <c>mL/min</c>.</param>
    /// <param name="unit">The unit; the default where the answer is false.</param>
    /// <returns>True if the abbreviation means one unit of this quantity.</returns>
    public static bool TryParse<TUnit>(string text, out TUnit unit)
        where TUnit : struct, Enum
    {
        if (ByText.TryGetValue((typeof(TUnit), text), out int kept))
        {
            unit = Unsafe.BitCast<int, TUnit>(kept);
            return true;
        }

        bool known = Known.TryParse(text, out unit)
            || (text.All(char.IsAsciiLetter) && Enum.TryParse(text, out unit) && Enum.IsDefined(unit));
        if (known && ByText.Count < MaximumKept)
        {
            ByText.TryAdd((typeof(TUnit), text), Unsafe.BitCast<TUnit, int>(unit));
        }

        return known;
    }

    /// <summary>The abbreviation of a unit, one that means no other; the unit's own name where there is none.</summary>
    public static string Of<TUnit>(TUnit unit)
        where TUnit : struct, Enum =>
        ByUnit.GetOrAdd(
            (typeof(TUnit), Unsafe.BitCast<TUnit, int>(unit)),
            wanted => Known.Abbreviations.GetUnitAbbreviations(unit, CultureInfo.InvariantCulture)
                .FirstOrDefault(text => text.Length > 0 && TryParse(text, out TUnit again) && Unsafe.BitCast<TUnit, int>(again) == wanted.Unit)
                ?? unit.ToString());

    private static UnitAbbreviationsCache WithCommonSpellings()
    {
        UnitAbbreviationsCache cache = UnitAbbreviationsCache.CreateDefault();
        cache.MapUnitToAbbreviation(Units.VolumeFlowUnit.MilliliterPerMinute, "ml/min", "cc/min");
        cache.MapUnitToAbbreviation(Units.DensityUnit.KilogramPerCubicMeter, "kg/m3");
        cache.MapUnitToAbbreviation(Units.DurationUnit.Microsecond, "us");
        cache.MapUnitToAbbreviation(Units.RotationalSpeedUnit.RevolutionPerMinute, "rev/min");
        cache.MapUnitToAbbreviation(Units.RotationalSpeedUnit.RevolutionPerSecond, "rev/s");
        cache.MapUnitToAbbreviation(Units.RatioUnit.DecimalFraction, "per unit");

        // Horsepower without a word is the mechanical one, 745.7 W; the metric one is PS.
        cache.MapUnitToAbbreviation(Units.PowerUnit.MechanicalHorsepower, "hp");
        cache.MapUnitToAbbreviation(Units.PowerUnit.MetricHorsepower, "PS");
        cache.MapUnitToAbbreviation(Units.VolumeFlowUnit.UsGallonPerHour, "US gal/h");
        cache.MapUnitToAbbreviation(Units.VolumeFlowUnit.UsGallonPerMinute, "US gal/min");
        cache.MapUnitToAbbreviation(Units.VolumeFlowUnit.UkGallonPerHour, "imp gal/h");
        cache.MapUnitToAbbreviation(Units.VolumeUnit.UsGallon, "US gal");
        cache.MapUnitToAbbreviation(Units.VolumeUnit.ImperialGallon, "imp gal");
        cache.MapUnitToAbbreviation(Units.BrakeSpecificFuelConsumptionUnit.PoundPerMechanicalHorsepowerHour, "lb/hp·h");
        cache.MapUnitToDefaultAbbreviation(Units.VolumeUnit.Liter, "L");
        cache.MapUnitToDefaultAbbreviation(Units.VolumeUnit.Milliliter, "mL");
        return cache;
    }

    // Made when a unit is asked for that is not among the common ones.
    internal static class Known
    {
        public static readonly UnitAbbreviationsCache Abbreviations = WithCommonSpellings();

        private static readonly UnitParser Parser = new(Abbreviations);

        /// <summary>Reads a unit by UnitsNet alone.</summary>
        public static bool TryParse<TUnit>(string text, out TUnit unit)
            where TUnit : struct, Enum => Parser.TryParse(text, CultureInfo.InvariantCulture, out unit);
    }
}
