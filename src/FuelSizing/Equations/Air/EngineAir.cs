using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Speed-density: the air an engine draws.</summary>
public static class EngineAir
{
    /// <summary>Air that an engine draws (speed-density).
    /// <para><c>ṁ_a = η_v · ρ_3 · V_d · n/k</c></para>
    /// </summary>
    /// <param name="volumetricEfficiency"><c>η_v</c> (1): volumetric efficiency; referred to the density in the manifold.</param>
    /// <param name="chargeDensity"><c>ρ_3</c> (kg/m³): density of the charge in the manifold.</param>
    /// <param name="displacement"><c>V_d</c> (m³): displacement of the engine.</param>
    /// <param name="speed"><c>n</c> (rev/s): engine speed.</param>
    /// <param name="revolutionsPerCycle"><c>k</c> (1): revolutions per working cycle; 2 for four strokes, 1 for two.</param>
    /// <returns><c>ṁ_a</c> (kg/s): air mass flow of the engine.</returns>
    /// <remarks>
    /// <para>Range: η_v 0.3 to 1.2.</para>
    /// <para>Outside: nothing is checked; the result is in proportion.</para>
    /// <example>
    /// <code>
    /// Real result = EngineAir.MassFlow&lt;Real&gt;(volumetricEfficiency: 0.9, chargeDensity: 1.58349039, displacement: 2.4e-3, speed: 100, revolutionsPerCycle: 2);
    /// // result = 0.171017 kg/s
    /// </code>
    /// </example>
    /// <para>Source: definition of volumetric efficiency.</para>
    /// </remarks>
    public static T MassFlow<T>(
        T volumetricEfficiency, T chargeDensity, T displacement, T speed, Divisor<T> revolutionsPerCycle)
        where T : struct, IReal<T> =>
        volumetricEfficiency * chargeDensity * displacement * speed / revolutionsPerCycle;
}
