using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The pressure a regulator sets in the rail, and what of it the injector sees.</summary>
internal static class RailPressure
{
    /// <summary>
    /// Gauge pressure set, Pa: min(ceiling, base + g_b · min(b, o) + g · max(0, b − o)). Gains: fixed g_b = g = 0;
    /// manifold-referenced g_b = g = 1; rising-rate g above 1 over its onset o.
    /// </summary>
    /// <param name="baseGauge">With the manifold at atmospheric pressure, Pa.</param>
    /// <param name="gainBelowOnset">g_b.</param>
    /// <param name="gain">g.</param>
    /// <param name="onset">o, gauge, Pa.</param>
    /// <param name="ceiling">Highest gauge pressure that the unit sets, Pa.</param>
    /// <param name="boost">b: manifold gauge pressure, negative under vacuum, Pa.</param>
    public static T Set<T>(T baseGauge, T gainBelowOnset, T gain, T onset, T ceiling, T boost)
        where T : struct, IReal<T> =>
        T.Min(ceiling, baseGauge + (gainBelowOnset * T.Min(boost, onset)) + (gain * T.Max(0, boost - onset)));

    /// <summary>Gauge pressure set by a unit that is off what its kind sets, Pa: set + offset.</summary>
    /// <param name="set">By the kind, gauge, Pa.</param>
    /// <param name="offset">Of this unit, Pa.</param>
    public static T Offset<T>(T set, T offset)
        where T : struct, IReal<T> => set + offset;

    /// <summary>Two regulators one behind the other on the return: the higher governs.</summary>
    /// <param name="first">Gauge, Pa.</param>
    /// <param name="second">Gauge, Pa.</param>
    public static T InSeries<T>(T first, T second)
        where T : struct, IReal<T> => T.Max(first, second);

    /// <summary>
    /// Differential pressure across the injector, Pa: Δp = rail gauge + ambient − manifold absolute.
    /// </summary>
    /// <param name="railGauge">Pa.</param>
    /// <param name="ambient">Absolute, Pa.</param>
    /// <param name="manifoldAbsolute">Pa.</param>
    public static T Differential<T>(T railGauge, T ambient, T manifoldAbsolute)
        where T : struct, IReal<T> => railGauge + ambient - manifoldAbsolute;
}
