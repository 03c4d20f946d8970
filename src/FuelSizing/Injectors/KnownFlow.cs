using System.Runtime.CompilerServices;
using FuelSizing.Numerics;

namespace FuelSizing.Injectors;

/// <summary>Where an injector's flow is known: from the lowest differential pressure at which its law holds.</summary>
internal static class KnownFlow
{
    /// <summary>A static flow by the law, where that is known.</summary>
    /// <param name="flow">By the law, m³/s.</param>
    /// <param name="differential">Across the injector, Pa.</param>
    /// <param name="minimum">The lowest at which the law is known, Pa; the same pressure by other arithmetic may fall a last digit short.</param>
    /// <returns>m³/s: not a number between zero differential and the minimum, and zero where nothing flows.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Of<T>(T flow, T differential, T minimum)
        where T : struct, IReal<T> =>
        T.IfLess(0, differential, T.IfLess(differential, minimum * (1 - Curve.EndTolerance), double.NaN, flow), flow);
}
