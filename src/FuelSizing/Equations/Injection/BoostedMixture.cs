using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>
/// Mixture of an engine whose controller commands the same pulse with and without boost, in closed form: more air, and a flow that goes with the
/// square root of the differential pressure.
/// </summary>
/// <remarks>
/// Dead times and volumetric efficiency are those without boost, the rail neither sags nor reaches a ceiling. The solver does without these
/// simplifications; where they hold it gives the same.
/// </remarks>
public static class BoostedMixture
{
    /// <summary>Lambda under boost.
    /// <para><c>λ = λ_0 · r_ρ/√(Δp/Δp_0)</c></para>
    /// </summary>
    /// <param name="unboostedLambda"><c>λ_0</c> (1): lambda without boost.</param>
    /// <param name="densityRatio"><c>r_ρ</c> (1): density of the charge under boost ÷ that without boost.</param>
    /// <param name="differential"><c>Δp</c> (Pa): differential pressure across the injector.</param>
    /// <param name="unboostedDifferential"><c>Δp_0</c> (Pa): differential pressure across the injector without boost.</param>
    /// <returns><c>λ</c> (1): lambda of the engine.</returns>
    /// <remarks>
    /// <para>Range: both differentials over 0; equal dead times, pulses and volumetric efficiency.</para>
    /// <para>Outside: nothing is checked; infinite at Δp = 0.</para>
    /// <example>
    /// <code>
    /// Real result = BoostedMixture.Lambda&lt;Real&gt;(unboostedLambda: 0.9, densityRatio: 1.5, differential: 432e3, unboostedDifferential: 300e3);
    /// // result = 1.125
    /// </code>
    /// </example>
    /// <para>Source: derived from conservation of mass and the orifice equation.</para>
    /// </remarks>
    public static T Lambda<T>(T unboostedLambda, T densityRatio, T differential, T unboostedDifferential)
        where T : struct, IReal<T> => unboostedLambda * densityRatio / T.Sqrt(differential / unboostedDifferential);

    /// <summary>Differential pressure that brings lambda under boost to its target.
    /// <para><c>Δp = Δp_0 · (r_ρ · λ_0/λ_t)²</c></para>
    /// </summary>
    /// <param name="unboostedDifferential"><c>Δp_0</c> (Pa): differential pressure across the injector without boost.</param>
    /// <param name="densityRatio"><c>r_ρ</c> (1): density of the charge under boost ÷ that without boost.</param>
    /// <param name="unboostedLambda"><c>λ_0</c> (1): lambda without boost.</param>
    /// <param name="targetLambda"><c>λ_t</c> (1): target lambda, at which the fuel flow is needed.</param>
    /// <returns><c>Δp</c> (Pa): differential pressure across the injector.</returns>
    /// <remarks>
    /// <para>Range: all over 0; equal dead times, pulses and volumetric efficiency.</para>
    /// <para>Outside: nothing is checked; infinite at λ_t = 0.</para>
    /// <example>
    /// <code>
    /// Real result = BoostedMixture.RequiredDifferential&lt;Real&gt;(unboostedDifferential: 300e3, densityRatio: 1.5, unboostedLambda: 0.9, targetLambda: 0.8);
    /// // result = 854296.875 Pa
    /// </code>
    /// </example>
    /// <para>Source: derived from conservation of mass and the orifice equation.</para>
    /// </remarks>
    public static T RequiredDifferential<T>(T unboostedDifferential, T densityRatio, T unboostedLambda, T targetLambda)
        where T : struct, IReal<T>
    {
        T ratio = densityRatio * unboostedLambda / targetLambda;
        return unboostedDifferential * (ratio * ratio);
    }

    /// <summary>Gain of a rising-rate unit that gives the engine a differential pressure at a boost, with its onset at zero boost.
    /// <para><c>G = 1 + (Δp − Δp_0)/p_b</c></para>
    /// </summary>
    /// <param name="differential"><c>Δp</c> (Pa): differential pressure across the injector.</param>
    /// <param name="unboostedDifferential"><c>Δp_0</c> (Pa): differential pressure across the injector without boost.</param>
    /// <param name="boost"><c>p_b</c> (Pa): boost, gauge pressure in the manifold; negative under vacuum.</param>
    /// <returns><c>G</c> (1): gain above the onset.</returns>
    /// <remarks>
    /// <para>Range: p_b over 0; a rail at the pressure that the unit sets.</para>
    /// <para>Outside: nothing is checked; infinite at p_b = 0.</para>
    /// <example>
    /// <code>
    /// Real result = BoostedMixture.Gain&lt;Real&gt;(differential: 650e3, unboostedDifferential: 300e3, boost: 50e3);
    /// // result = 8
    /// </code>
    /// </example>
    /// <para>Source: derived from the definition of the gain.</para>
    /// </remarks>
    public static T Gain<T>(T differential, T unboostedDifferential, T boost)
        where T : struct, IReal<T> => (T)1 + ((differential - unboostedDifferential) / boost);
}
