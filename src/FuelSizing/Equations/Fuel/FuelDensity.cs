using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Density of a liquid fuel against temperature.</summary>
public static class FuelDensity
{
    /// <summary><c>T_15</c> (K): temperature at which fuel densities are stated, 15 °C. ASTM D1250.</summary>
    public const double ReferenceTemperature = 288.15;

    /// <summary><c>ρ_tr</c> (kg/m³): density at 15 °C from which the expansion of petrol goes over to that of heavier products.
    /// ASTM D1250-80, table 54B.</summary>
    public const double PetrolTransition = 770.5;

    /// <summary>Thermal expansion of petrol at 15 °C from its density.
    /// <para><c>α_15 = (346.4228/ρ_15 + 0.4388)/ρ_15 if ρ_15 &lt; 770.5; 2680.3206/ρ_15² − 0.00336312 otherwise</c></para>
    /// </summary>
    /// <param name="densityAt15"><c>ρ_15</c> (kg/m³): density of the fuel at 15 °C.</param>
    /// <returns><c>α_15</c> (1/K): thermal expansion of the fuel at 15 °C.</returns>
    /// <remarks>
    /// <para>Range: 653 ≤ ρ_15 ≤ 787.5 kg/m³.</para>
    /// <para>Outside: nothing is checked; the correlation is carried on; heavier products have other constants.</para>
    /// <example>
    /// <code>
    /// Real result = FuelDensity.PetrolExpansion&lt;Real&gt;(densityAt15: 740);
    /// // result = 1.225593e-3 1/K
    /// </code>
    /// </example>
    /// <para>Source: ASTM D1250-80, table 54B.</para>
    /// </remarks>
    public static T PetrolExpansion<T>(T densityAt15)
        where T : struct, IReal<T> =>
        T.IfLess(
            densityAt15,
            PetrolTransition,
            (((T)346.4228 / densityAt15) + 0.4388) / densityAt15,
            ((T)2680.3206 / (densityAt15 * densityAt15)) - 0.00336312);

    /// <summary>Density of n-heptane, the typical liquid for measuring injectors, at a temperature: 683.8 kg/m³ at 20 °C, carried by the shape of
    /// its saturated liquid's density against temperature.
    /// <para><c>ρ_h = 683.8 · 0.26211^(((540.2 − 293.15)/540.2)^0.28141 − ((540.2 − T)/540.2)^0.28141)</c></para>
    /// </summary>
    /// <param name="temperature"><c>T</c> (K): temperature of the air or fuel.</param>
    /// <returns><c>ρ_h</c> (kg/m³): density of n-heptane.</returns>
    /// <remarks>
    /// <para>Range: 183 ≤ T &lt; 540 K.</para>
    /// <para>Outside: nothing is checked; not a number above the critical temperature.</para>
    /// <example>
    /// <code>
    /// Real result = FuelDensity.Heptane&lt;Real&gt;(temperature: 303.15);
    /// // result = 675.3594 kg/m³
    /// </code>
    /// </example>
    /// <para>Source: shape: Perry's Chemical Engineers' Handbook, 7th ed., table 2-30, n-heptane, from a transcription; density at 20 °C: Span and
    /// Wagner equation of state.</para>
    /// </remarks>
    public static T Heptane<T>(T temperature)
        where T : struct, IReal<T>
    {
        const double Critical = 540.2;
        const double Shape = 0.28141;
        T cold = (Critical - temperature) / Critical;
        return 683.8 * T.Exp(Math.Log(0.26211) * ((T)Math.Pow((Critical - 293.15) / Critical, Shape) - T.Power(cold, Shape)));
    }

    /// <summary>Density of a liquid fuel at a temperature.
    /// <para><c>ρ = ρ_15 · exp(−α_15 · (T − T_15) · (1 + 0.8 · α_15 · (T − T_15)))</c></para>
    /// </summary>
    /// <param name="densityAt15"><c>ρ_15</c> (kg/m³): density of the fuel at 15 °C.</param>
    /// <param name="expansion"><c>α_15</c> (1/K): thermal expansion of the fuel at 15 °C.</param>
    /// <param name="temperature"><c>T</c> (K): temperature of the air or fuel.</param>
    /// <returns><c>ρ</c> (kg/m³): density of the fuel.</returns>
    /// <remarks>
    /// <para>Range: 255 ≤ T ≤ 368 K, liquid.</para>
    /// <para>Outside: nothing is checked; the correlation is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = FuelDensity.At&lt;Real&gt;(densityAt15: 740, expansion: 1e-3, temperature: 308.15);
    /// // result = 725.1149 kg/m³
    /// </code>
    /// </example>
    /// <para>Source: ASTM D1250-80, volume correction factor.</para>
    /// </remarks>
    public static T At<T>(T densityAt15, T expansion, T temperature)
        where T : struct, IReal<T>
    {
        T warming = expansion * (temperature - ReferenceTemperature);
        return densityAt15 * T.Exp((T)0 - (warming * (1.0 + (0.8 * warming))));
    }
}
