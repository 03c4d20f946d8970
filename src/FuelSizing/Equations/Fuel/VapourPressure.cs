using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>True vapour pressure of a liquid fuel against temperature.</summary>
public static class VapourPressure
{
    private const double PascalsPerPsi = 6894.757293168;

    /// <summary>√3: the distillation slope at 10 % evaporated that AP-42 gives for motor gasoline is 3 °F for each %.</summary>
    private const double RootOfDistillationSlope = 1.7320508075688772;

    /// <summary>Vapour pressure of a liquid fuel at a temperature.
    /// <para><c>p_vp = exp(A_v − B_v/(T + C_v))</c></para>
    /// </summary>
    /// <param name="a"><c>A_v</c> (ln Pa): constant of the Antoine equation.</param>
    /// <param name="b"><c>B_v</c> (K): coefficient of the Antoine equation.</param>
    /// <param name="c"><c>C_v</c> (K): temperature offset of the Antoine equation.</param>
    /// <param name="temperature"><c>T</c> (K): temperature of the air or fuel.</param>
    /// <returns><c>p_vp</c> (Pa): vapour pressure of the fuel, absolute.</returns>
    /// <remarks>
    /// <para>Range: the range for which the coefficients were fitted.</para>
    /// <para>Outside: nothing is checked; the law is carried on; at T = −C_v it is not a number.</para>
    /// <example>
    /// <code>
    /// Real result = VapourPressure.Antoine&lt;Real&gt;(a: 23, b: 3800, c: -46, temperature: 300);
    /// // result = 3100.659 Pa
    /// </code>
    /// </example>
    /// <para>Source: Ch. Antoine, Comptes rendus 107 (1888) 681.</para>
    /// </remarks>
    public static T Antoine<T>(T a, T b, T c, T temperature)
        where T : struct, IReal<T> => T.Exp(a - (b / (temperature + c)));

    /// <summary>Constant of the Antoine equation for petrol of a Reid vapour pressure, at a distillation slope of 3 °F per %.
    /// <para><c>A_v = 15.64 − 1.854 · √3 + ln(6894.757293168) − (0.8742 − 0.328 · √3) · ln(RVP/6894.757293168)</c></para>
    /// </summary>
    /// <param name="reidPressure"><c>RVP</c> (Pa): Reid vapour pressure, at 37.8 °C.</param>
    /// <returns><c>A_v</c> (ln Pa): constant of the Antoine equation.</returns>
    /// <remarks>
    /// <para>Range: petrol, RVP about 14 to 140 kPa (2 to 20 psi).</para>
    /// <para>Outside: nothing is checked; the correlation is carried on; RVP of 0 or less gives no number.</para>
    /// <example>
    /// <code>
    /// Real result = VapourPressure.PetrolIntercept&lt;Real&gt;(reidPressure: 62052.81564);
    /// // result = 20.59475
    /// </code>
    /// </example>
    /// <para>Source: US EPA, AP-42, chapter 7.1 (Organic Liquid Storage Tanks), figure 7.1-15, after API.</para>
    /// </remarks>
    public static T PetrolIntercept<T>(T reidPressure)
        where T : struct, IReal<T> =>
        15.64 - (1.854 * RootOfDistillationSlope) + Math.Log(PascalsPerPsi)
        - ((0.8742 - (0.3280 * RootOfDistillationSlope)) * T.Log(reidPressure / PascalsPerPsi));

    /// <summary>Coefficient of the Antoine equation for petrol of a Reid vapour pressure, at a distillation slope of 3 °F per %.
    /// <para><c>B_v = (8742 − 1042 · √3 − (1049 − 179.4 · √3) · ln(RVP/6894.757293168))/1.8</c></para>
    /// </summary>
    /// <param name="reidPressure"><c>RVP</c> (Pa): Reid vapour pressure, at 37.8 °C.</param>
    /// <returns><c>B_v</c> (K): coefficient of the Antoine equation.</returns>
    /// <remarks>
    /// <para>Range: petrol, RVP about 14 to 140 kPa (2 to 20 psi).</para>
    /// <para>Outside: nothing is checked; the correlation is carried on; RVP of 0 or less gives no number.</para>
    /// <example>
    /// <code>
    /// Real result = VapourPressure.PetrolSlope&lt;Real&gt;(reidPressure: 62052.81564);
    /// // result = 2952.810 K
    /// </code>
    /// </example>
    /// <para>Source: US EPA, AP-42, chapter 7.1 (Organic Liquid Storage Tanks), figure 7.1-15, after API.</para>
    /// </remarks>
    public static T PetrolSlope<T>(T reidPressure)
        where T : struct, IReal<T> =>
        (8742 - (1042 * RootOfDistillationSlope)
            - ((1049 - (179.4 * RootOfDistillationSlope)) * T.Log(reidPressure / PascalsPerPsi)))
        / 1.8;

    /// <summary>Upper bound of what an alcohol adds to the Reid vapour pressure of petrol; ethanol and methanol are told apart by oxygen.
    /// <para><c>ΔRVP = 0 if w_O ≤ 0; 7000 if w_O &lt; 0.4; 21000 otherwise</c></para>
    /// </summary>
    /// <param name="oxygenShare"><c>w_O</c> (1): mass fraction of oxygen in the fuel; of the alcohol: ethanol 0.347, methanol
    /// 0.499.</param>
    /// <returns><c>ΔRVP</c> (Pa): rise of the Reid vapour pressure by alcohol.</returns>
    /// <remarks>
    /// <para>Range: any content of ethanol, heavier alcohols or methanol in petrol.</para>
    /// <para>Outside: nothing is checked; the bound is constant.</para>
    /// <example>
    /// <code>
    /// Real result = VapourPressure.AlcoholRise&lt;Real&gt;(oxygenShare: 0.347);
    /// // result = 7000 Pa
    /// </code>
    /// </example>
    /// <para>Source: ethanol, about 1 psi: R. L. McCormick and J. Yanowitz, National Renewable Energy Laboratory (2012); methanol,
    /// about 3 psi: from memory, common practice.</para>
    /// </remarks>
    public static T AlcoholRise<T>(T oxygenShare)
        where T : struct, IReal<T> =>
        T.IfLess(0, oxygenShare, T.IfLess(oxygenShare, 0.4, 7_000, 21_000), 0);

    /// <summary>Vapour pressure of a blend of petrol and ethanol: what either contributes by its share, times a factor for how far they are from ideal together.
    /// <para><c>p_vb = k_vP · (1 − φ_E) · p_vP + k_vE · φ_E · p_vE</c></para>
    /// </summary>
    /// <param name="petrolFactor"><c>k_vP</c> (1): factor of the petrol's contribution.</param>
    /// <param name="ethanolFactor"><c>k_vE</c> (1): factor of the ethanol's contribution.</param>
    /// <param name="ethanolShare"><c>φ_E</c> (1): share of ethanol in the blend, by volume.</param>
    /// <param name="petrol"><c>p_vP</c> (Pa): vapour pressure of the petrol in the blend, absolute.</param>
    /// <param name="ethanol"><c>p_vE</c> (Pa): vapour pressure of ethanol, absolute.</param>
    /// <returns><c>p_vb</c> (Pa): vapour pressure of the blend, absolute.</returns>
    /// <remarks>
    /// <para>Range: factors and pressures of one temperature; the factors are known for Reid vapour pressures, at 37.8 °C. At another temperature they
    /// are carried on, as they are.</para>
    /// <para>Outside: nothing is checked; the sum is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = VapourPressure.OfBlend&lt;Real&gt;(petrolFactor: 1.0433, ethanolFactor: 6.6609, ethanolShare: 0.1, petrol: 60e3, ethanol: 15.858e3);
    /// // result = 66901.06 Pa
    /// </code>
    /// </example>
    /// <para>Source: US EPA, Motor Vehicle Emission Simulator, generator of tank fuel, steps 1a and 1e (after S. R. Reddy).</para>
    /// </remarks>
    public static T OfBlend<T>(T petrolFactor, T ethanolFactor, T ethanolShare, T petrol, T ethanol)
        where T : struct, IReal<T> =>
        (petrolFactor * ((T)1 - ethanolShare) * petrol) + (ethanolFactor * ethanolShare * ethanol);

    /// <summary>Factor of the petrol's contribution to the vapour pressure of a blend with ethanol.
    /// <para><c>k_vP = 1 + 0.24 · φ_E + 2 · φ_E² − 0.7 · φ_E³</c></para>
    /// </summary>
    /// <param name="ethanolShare"><c>φ_E</c> (1): share of ethanol in the blend, by volume.</param>
    /// <returns><c>k_vP</c> (1): factor of the petrol's contribution.</returns>
    /// <remarks>
    /// <para>Range: 0 to 1, at 37.8 °C; a fit to measured Reid vapour pressures.</para>
    /// <para>Outside: nothing is checked; the polynomial is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = VapourPressure.PetrolFactor&lt;Real&gt;(ethanolShare: 0.85);
    /// // result = 2.219113
    /// </code>
    /// </example>
    /// <para>Source: US EPA, Motor Vehicle Emission Simulator, generator of tank fuel, steps 1a and 1e (after S. R. Reddy).</para>
    /// </remarks>
    public static T PetrolFactor<T>(T ethanolShare)
        where T : struct, IReal<T> =>
        1 + (0.24 * ethanolShare) + (2 * ethanolShare * ethanolShare) - (0.7 * ethanolShare * ethanolShare * ethanolShare);

    /// <summary>Factor of the ethanol's contribution to the vapour pressure of a blend with petrol.
    /// <para><c>k_vE = 46.321 · (100 · φ_E)^(−0.8422)</c></para>
    /// </summary>
    /// <param name="ethanolShare"><c>φ_E</c> (1): share of ethanol in the blend, by volume.</param>
    /// <returns><c>k_vE</c> (1): factor of the ethanol's contribution.</returns>
    /// <remarks>
    /// <para>Range: over 0 to 1, at 37.8 °C; a fit to measured Reid vapour pressures.</para>
    /// <para>Outside: nothing is checked; the power is carried on; 0 or less gives no number.</para>
    /// <example>
    /// <code>
    /// Real result = VapourPressure.EthanolFactor&lt;Real&gt;(ethanolShare: 0.85);
    /// // result = 1.098554
    /// </code>
    /// </example>
    /// <para>Source: US EPA, Motor Vehicle Emission Simulator, generator of tank fuel, steps 1a and 1e (after S. R. Reddy).</para>
    /// </remarks>
    public static T EthanolFactor<T>(T ethanolShare)
        where T : struct, IReal<T> => 46.321 * T.Power(100 * ethanolShare, -0.8422);
}
