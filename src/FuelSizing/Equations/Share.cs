using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>A part of a whole.</summary>
internal static class Share
{
    /// <summary>Part ÷ whole.</summary>
    public static T Of<T>(T part, T whole)
        where T : struct, IReal<T> => part / whole;
}
