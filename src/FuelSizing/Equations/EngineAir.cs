using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Speed-density: the air an engine draws.</summary>
internal static class EngineAir
{
    /// <summary>
    /// Air mass flow, kg/s: ṁ = VE · ρ · V · n/k. The volumetric efficiency is referred to the density in the
    /// inlet manifold, ρ = p/(R T).
    /// </summary>
    /// <param name="volumetricEfficiency">VE.</param>
    /// <param name="chargeDensity">ρ in the manifold, kg/m³.</param>
    /// <param name="displacement">V, m³.</param>
    /// <param name="speed">n, rev/s.</param>
    /// <param name="revolutionsPerCycle">k: 2 for four strokes, 1 for two.</param>
    public static T MassFlow<T>(
        T volumetricEfficiency, T chargeDensity, T displacement, T speed, Divisor<T> revolutionsPerCycle)
        where T : struct, IReal<T> =>
        volumetricEfficiency * chargeDensity * displacement * speed / revolutionsPerCycle;
}
