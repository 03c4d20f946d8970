using FuelSizing.Numerics;

namespace FuelSizing.Points;

/// <summary>The definition of a margin: how far a part is from its limit, on one scale for all parts.</summary>
internal static class Reserve
{
    /// <summary>limit/figure − 1: +0.1 means that the figure could grow by a tenth.</summary>
    /// <param name="allowed">The limit; of a minimum, the figure.</param>
    /// <param name="used">The figure; of a minimum, the limit.</param>
    public static T Of<T>(T allowed, T used)
        where T : struct, IReal<T> => (allowed / used) - 1.0;
}
