using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>How far a part is from its limit, on one scale for all parts.</summary>
internal static class Reserve
{
    /// <summary>What is allowed over what is used, less one: +0.1 means that the use could grow by a tenth.</summary>
    /// <param name="allowed">The most (or, for a least value, what is used).</param>
    /// <param name="used">What is used (or, for a least value, the least).</param>
    public static T Of<T>(T allowed, T used)
        where T : struct, IReal<T> => (allowed / used) - 1.0;
}
