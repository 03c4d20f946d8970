using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>Checks on engine speeds, given back in revolutions per second or as they are.</summary>
internal static class EngineSpeed
{
    private static readonly RotationalSpeed Slowest = RotationalSpeed.FromRevolutionsPerMinute(100);

    /// <summary>The least speed, rev/s.</summary>
    public static double Minimum => Slowest.RevolutionsPerSecond;

    /// <summary>A speed that an engine can turn at.</summary>
    public static double Within(RotationalSpeed speed, string name) => Checked(speed, name).RevolutionsPerSecond;

    /// <summary>The speed itself, checked.</summary>
    public static RotationalSpeed Checked(RotationalSpeed speed, string name) =>
        Guard.Between(
            speed,
            Slowest,
            RotationalSpeed.FromRevolutionsPerMinute(25_000),
            "Give the crankshaft's speed.",
            name);

    /// <summary>A speed that a table covers.</summary>
    public static double Covered(RotationalSpeed speed, Curve table, string what, string name)
    {
        double revolutions = Within(speed, name);
        return table.Covers(revolutions)
            ? revolutions
            : throw Guard.OutOfRange(
                name,
                Readable.Of(speed),
                $"{Text(table.First)} to {Text(table.Last)}",
                $"The {what} covers no more; extend the table by measured points.");
    }

    private static string Text(double revolutionsPerSecond) =>
        Readable.Of(RotationalSpeed.FromRevolutionsPerSecond(revolutionsPerSecond));
}
