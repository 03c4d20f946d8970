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
}
