using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Area and diameter of a solid round wire.</summary>
internal static class RoundWire
{
    /// <summary>Area, m²: A = π d²/4.</summary>
    /// <param name="diameter">d, m.</param>
    public static T Area<T>(T diameter)
        where T : struct, IReal<T> => (T)(Math.PI / 4) * diameter * diameter;

    /// <summary>Diameter, m: d = √(4 A/π).</summary>
    /// <param name="area">A, m².</param>
    public static T Diameter<T>(T area)
        where T : struct, IReal<T> => T.Sqrt((T)(4 / Math.PI) * area);
}
