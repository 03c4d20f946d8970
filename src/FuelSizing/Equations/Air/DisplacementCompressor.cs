using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>A compressor that passes a volume with each turn, on an engine that draws a volume with each cycle.</summary>
public static class DisplacementCompressor
{
    /// <summary>Density in the manifold at which the engine draws all air that a displacement compressor passes.
    /// <para><c>ρ_3 = ρ_1 · η_cv · V_c · i_c · k/(η_v · V_d)</c></para>
    /// </summary>
    /// <param name="inletDensity"><c>ρ_1</c> (kg/m³): density of the air at the compressor inlet.</param>
    /// <param name="compressorEfficiency"><c>η_cv</c> (1): volumetric efficiency of the compressor; what leaks back is missing in it.</param>
    /// <param name="compressorDisplacement"><c>V_c</c> (m³): displacement of the compressor, a revolution.</param>
    /// <param name="driveRatio"><c>i_c</c> (1): drive ratio, compressor speed ÷ engine speed.</param>
    /// <param name="revolutionsPerCycle"><c>k</c> (1): revolutions per working cycle; 2 for four strokes, 1 for two.</param>
    /// <param name="volumetricEfficiency"><c>η_v</c> (1): volumetric efficiency; referred to the density in the manifold.</param>
    /// <param name="displacement"><c>V_d</c> (m³): displacement of the engine.</param>
    /// <returns><c>ρ_3</c> (kg/m³): density of the charge in the manifold.</returns>
    /// <remarks>
    /// <para>
    /// Range: a result above the density at ambient pressure; all air goes to the engine, none through a bypass valve. The
    /// engine's speed is on both sides and cancels.
    /// </para>
    /// <para>Outside: nothing is checked; below that density the engine draws more than the compressor passes.</para>
    /// <example>
    /// <code>
    /// Real result = DisplacementCompressor.ChargeDensity&lt;Real&gt;(inletDensity: 1.2, compressorEfficiency: 0.9, compressorDisplacement: 1.3e-3, driveRatio: 1.9, revolutionsPerCycle: 2, volumetricEfficiency: 0.92, displacement: 2.8e-3);
    /// // result = 2.071118 kg/m³
    /// </code>
    /// </example>
    /// <para>Source: balance of the air that the compressor passes and the air that the engine draws.</para>
    /// </remarks>
    public static T ChargeDensity<T>(
        T inletDensity,
        T compressorEfficiency,
        T compressorDisplacement,
        T driveRatio,
        T revolutionsPerCycle,
        Divisor<T> volumetricEfficiency,
        Divisor<T> displacement)
        where T : struct, IReal<T> =>
        inletDensity * compressorEfficiency * compressorDisplacement * driveRatio * revolutionsPerCycle / volumetricEfficiency / displacement;
}
