using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Power of a turning shaft.</summary>
internal static class EnginePower
{
    /// <summary>From torque, W: P = 2π n M.</summary>
    /// <param name="torque">M, N·m.</param>
    /// <param name="speed">n, rev/s.</param>
    public static T OfTorque<T>(T torque, T speed)
        where T : struct, IReal<T> => (T)(2 * Math.PI) * speed * torque;
}
