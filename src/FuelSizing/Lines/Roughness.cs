using UnitsNet;

namespace FuelSizing.Lines;

/// <summary>Wall roughness of the usual fuel lines, new and clean.</summary>
/// <remarks>
/// In a smooth line a fuel flow of this size hardly feels the roughness; age, swelling and deposits matter more through the
/// bore that they take away.
/// </remarks>
public static class Roughness
{
    /// <summary>Drawn metal tube, glass-smooth: 0.0015 mm (Moody 1944; White, Fluid Mechanics, table 6.1: from memory).</summary>
    public static Length DrawnTube { get; } = Length.FromMillimeters(0.0015);

    /// <summary>Plastic tube: 0.0015 mm (White, Fluid Mechanics, table 6.1: from memory).</summary>
    public static Length PlasticTube { get; } = Length.FromMillimeters(0.0015);

    /// <summary>Stainless steel tube: 0.002 mm (White, Fluid Mechanics, table 6.1: from memory).</summary>
    public static Length StainlessTube { get; } = Length.FromMillimeters(0.002);

    /// <summary>
    /// Smooth rubber hose: 0.01 mm (White, Fluid Mechanics, table 6.1: from memory); tables range from 0.006 to 0.07 mm.
    /// </summary>
    public static Length RubberHose { get; } = Length.FromMillimeters(0.01);
}
