namespace FuelSizing.Systems;

/// <summary>The parts as results name them.</summary>
public static class PartNames
{
    /// <summary>A part's name in running text.</summary>
    /// <param name="part">The part.</param>
    /// <returns>Its name.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The part is not one of the enumeration.</exception>
    public static string Of(Part part) => Quantities.Guard.Member(part, "Choose a part.", nameof(part)) switch
    {
        Part.Injectors => "injectors",
        Part.MinimumPulse => "injectors at light load",
        Part.OpeningPressure => "injectors' opening",
        Part.Pump => "pump",
        Part.ReturnLine => "way back to the tank",
        Part.PumpControl => "pump control",
        Part.Suction => "pump inlet",
        Part.Feed => "pump feed",
        Part.Filter => "filter",
        _ => "hoses, fittings and filter",
    };

    /// <summary>The part in a clause that says it is the first to fail.</summary>
    internal static string FailsFirst(Part part) => part switch
    {
        Part.Injectors => "the injectors run out first",
        Part.MinimumPulse => "the injectors' pulse is too short first",
        Part.OpeningPressure => "the injectors may not open first",
        Part.Pump => "the pump runs out first",
        Part.ReturnLine => "the way back is too narrow first",
        Part.PumpControl => "the pump cannot be slowed enough first",
        Part.Suction => "fuel may boil at the pump's inlet first",
        Part.Feed => "the pump's feed loses too much first",
        _ => "hoses, fittings and filter pass their rating first",
    };
}
