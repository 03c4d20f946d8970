using UnitsNet;

namespace FuelSizing.Quantities;

using Units = UnitsNet.Units;

/// <summary>Units as people write them in files: UnitsNet's abbreviations and a few common spellings that it lacks.</summary>
internal static class UnitText
{
    private static readonly UnitParser Parser = WithCommonSpellings();

    /// <summary>Reads a unit by its abbreviation.</summary>
    /// <param name="text">For instance <c>mL/min</c>.</param>
    /// <param name="unit">The unit; the default where the answer is false.</param>
    /// <returns>True if the abbreviation means one unit of this quantity.</returns>
    public static bool TryParse<TUnit>(string text, out TUnit unit)
        where TUnit : struct, Enum =>
        Parser.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out unit);

    private static UnitParser WithCommonSpellings()
    {
        UnitAbbreviationsCache cache = UnitAbbreviationsCache.CreateDefault();
        cache.MapUnitToAbbreviation(Units.VolumeFlowUnit.MilliliterPerMinute, "ml/min", "cc/min");
        cache.MapUnitToAbbreviation(Units.DensityUnit.KilogramPerCubicMeter, "kg/m3");
        cache.MapUnitToAbbreviation(Units.DurationUnit.Microsecond, "us");
        return new(cache);
    }
}
