namespace FuelSizing.Equations;

/// <summary>Speed-density: the air an engine draws.</summary>
internal static class EngineAir
{
    /// <summary>
    /// Air mass flow, kg/s: ṁ = VE · p/(R T) · V · n/k. The volumetric efficiency is referred to the density in the
    /// inlet manifold.
    /// </summary>
    /// <param name="volumetricEfficiency">VE.</param>
    /// <param name="manifoldAbsolute">p, Pa.</param>
    /// <param name="chargeTemperature">T in the manifold, K.</param>
    /// <param name="displacement">V, m³.</param>
    /// <param name="speed">n, rev/s.</param>
    /// <param name="revolutionsPerCycle">k: 2 for four strokes, 1 for two.</param>
    public static T MassFlow<T>(
        T volumetricEfficiency, T manifoldAbsolute, T chargeTemperature, T displacement, T speed, Divisor<T> revolutionsPerCycle)
        where T : struct, IReal<T> =>
        volumetricEfficiency * StandardAir.Density(manifoldAbsolute, chargeTemperature)
        * displacement * speed / revolutionsPerCycle;
}
