using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>
/// Factors that turn full-load power of a spark-ignition engine, measured in some air, into that in the reference air: 99 kPa
/// of dry air at 298 K in both standards. (Compression-ignition engines have another factor, which is not modelled.)
/// </summary>
public static class PowerCorrectionFactor
{
    /// <summary><c>p_ref</c> (Pa): dry pressure of the reference air. ISO 1585, SAE J1349.</summary>
    public const double ReferenceDryPressure = 99_000;

    /// <summary><c>T_ref</c> (K): temperature of the reference air. ISO 1585, SAE J1349.</summary>
    public const double ReferenceTemperature = 298;

    /// <summary>Factor of ISO 1585 that turns full-load power measured in some air into power in the reference air.
    /// <para><c>α_a = (p_ref/p_d)^1.2 · (T/T_ref)^0.6</c></para>
    /// </summary>
    /// <param name="dryPressure"><c>p_d</c> (Pa): pressure of the dry air.</param>
    /// <param name="temperature"><c>T</c> (K): temperature of the air or fuel; at the inlet of the engine.</param>
    /// <returns><c>α_a</c> (1): power correction factor of ISO 1585.</returns>
    /// <remarks>
    /// <para>Range: 0.93 ≤ α_a ≤ 1.07, 283 ≤ T ≤ 313 K, 80 ≤ p_d ≤ 110 kPa; spark ignition at full load.</para>
    /// <para>Outside: nothing is checked; the standard does not allow corrections beyond these; the formula is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = PowerCorrectionFactor.Iso1585&lt;Real&gt;(dryPressure: 95e3, temperature: 310);
    /// // result = 1.075923
    /// </code>
    /// </example>
    /// <para>Source: ISO 1585 (1992; 2020), from memory; public quotations of the standard, and of UN Regulation 85, agree.</para>
    /// </remarks>
    public static T Iso1585<T>(T dryPressure, T temperature)
        where T : struct, IReal<T> =>
        T.Power(ReferenceDryPressure / dryPressure, (T)1.2) * T.Power(temperature / ReferenceTemperature, (T)0.6);

    /// <summary>Factor of SAE J1349 that turns full-load power measured in some air into power in the reference air: 1/0.85 of
    /// brake power is indicated and follows the charge, 0.18 is friction and does not.
    /// <para><c>CF = 1.18 · p_ref/p_d · √(T/T_ref) − 0.18</c></para>
    /// </summary>
    /// <param name="dryPressure"><c>p_d</c> (Pa): pressure of the dry air.</param>
    /// <param name="temperature"><c>T</c> (K): temperature of the air or fuel; at the inlet of the engine.</param>
    /// <returns><c>CF</c> (1): power correction factor of SAE J1349.</returns>
    /// <remarks>
    /// <para>Range: 0.97 ≤ CF ≤ 1.03 without remark; spark ignition at full load.</para>
    /// <para>Outside: nothing is checked; the formula is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = PowerCorrectionFactor.SaeJ1349&lt;Real&gt;(dryPressure: 95e3, temperature: 310);
    /// // result = 1.074199
    /// </code>
    /// </example>
    /// <para>Source: SAE J1349 (June 1990), as public discussions quote it; the range from memory.</para>
    /// </remarks>
    public static T SaeJ1349<T>(T dryPressure, T temperature)
        where T : struct, IReal<T> =>
        (1.18 * (ReferenceDryPressure / dryPressure) * T.Sqrt(temperature / ReferenceTemperature)) - 0.18;
}
