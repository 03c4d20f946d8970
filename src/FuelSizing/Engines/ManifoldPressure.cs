using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>Checks on the gauge pressure in the inlet manifold.</summary>
internal static class ManifoldPressure
{
    /// <summary>The least gauge pressure.</summary>
    public static Pressure Minimum { get; } = Pressure.FromKilopascals(-95);

    /// <summary>The most.</summary>
    public static Pressure Maximum { get; } = Pressure.FromKilopascals(400);

    /// <summary>The deepest vacuum that the library reckons with, absolute.</summary>
    public static Pressure MinimumAbsolute { get; } = Pressure.FromKilopascals(10);

    /// <summary>Boost, or vacuum if negative, that a spark-ignition engine may see.</summary>
    public static Pressure Within(Pressure boost, string name) =>
        Guard.Between(
            boost,
            Minimum,
            Maximum,
            "Give gauge pressure in the manifold: negative under throttle, positive on boost.",
            name);
}
