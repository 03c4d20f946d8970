using FuelSizing.Quantities;

namespace FuelSizing.Engines;

using Pressure = UnitsNet.Pressure;

/// <summary>Checks on the gauge pressure in the inlet manifold.</summary>
internal static class ManifoldPressure
{
    /// <summary>The least gauge pressure.</summary>
    public static Pressure Least { get; } = Pressure.FromKilopascals(-95);

    /// <summary>The most.</summary>
    public static Pressure Most { get; } = Pressure.FromKilopascals(400);

    /// <summary>The deepest vacuum that the library reckons with, absolute.</summary>
    public static Pressure LeastAbsolute { get; } = Pressure.FromKilopascals(10);

    /// <summary>Boost, or vacuum if negative, that a spark-ignition engine may see.</summary>
    public static Pressure Within(Pressure boost, string name) =>
        Allowed.Between(
            boost,
            Least,
            Most,
            "Give gauge pressure in the manifold: negative under throttle, positive on boost.",
            name);
}
