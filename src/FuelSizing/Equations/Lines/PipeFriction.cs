using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Friction of a round pipe from rest to fully turbulent flow.</summary>
/// <remarks>
/// Written in the friction number f Re, which stays finite when the flow stops: 64 in laminar flow, so that no loss comes
/// out of 0/0.
/// </remarks>
public static class PipeFriction
{
    /// <summary><c>Po_lam</c> (1): friction number f Re of laminar flow in a round pipe. Hagen, Poiseuille: f = 64/Re.</summary>
    public const double LaminarNumber = 64;

    /// <summary><c>Re_on</c> (1): Reynolds number at which turbulence first sustains itself. Avila et al., Science 333 (2011) 192.</summary>
    public const double TurbulenceOnset = 2040;

    /// <summary><c>Re_turb</c> (1): Reynolds number from which the flow is taken as turbulent. lower end of the Moody chart.</summary>
    public const double TurbulenceComplete = 4000;

    /// <summary>Friction number f Re of a round pipe from rest to fully turbulent flow: laminar, Colebrook–White, and a blend between.
    /// <para><c>Po = 64 + w · (f · max(2040; Re) − 64) with f = ColebrookWhite(max(2040; Re); κ) and w = x² · (3 − 2 · x) and x = min(1; max(0; (Re − 2040)/(4000 − 2040)))</c></para>
    /// </summary>
    /// <param name="reynolds"><c>Re</c> (1): Reynolds number.</param>
    /// <param name="relativeRoughness"><c>κ</c> (1): relative roughness, roughness ÷ bore.</param>
    /// <returns><c>Po</c> (1): friction number f Re (Poiseuille number).</returns>
    /// <remarks>
    /// <para>Range: 0 ≤ Re ≤ 1e8, 0 ≤ κ ≤ 0.05.</para>
    /// <para>Outside: nothing is checked; above Re 1e8 the law is carried on; a negative Re counts as laminar.</para>
    /// <example>
    /// <code>
    /// Real result = PipeFriction.Number&lt;Real&gt;(reynolds: 1600, relativeRoughness: 1e-3);
    /// // result = 64
    /// </code>
    /// </example>
    /// <para>Source: f = 64/Re below Re 2040, onset of turbulence after K. Avila et al., Science 333 (2011) 192; Colebrook–White
    /// from Re 4000, lower end of the Moody chart; the blend between, where flow is intermittent and no law is exact, is our own,
    /// smooth and strictly rising.</para>
    /// </remarks>
    public static T Number<T>(T reynolds, T relativeRoughness)
        where T : struct, IReal<T>
    {
        T weight = Weight(Share(reynolds));

        // Below the onset the weight is zero; the bound only keeps the turbulent branch within its domain there.
        T fast = T.Max(TurbulenceOnset, reynolds);
        return Blend(weight, ColebrookWhite.Friction(fast, relativeRoughness), fast);
    }

    /// <summary>How far a flow is from laminar to turbulent: x = (Re − 2040)/(4000 − 2040), held within 0 and 1.</summary>
    /// <param name="reynolds">Re.</param>
    internal static T Share<T>(T reynolds)
        where T : struct, IReal<T> =>
        T.Min(1, T.Max(0, (reynolds - TurbulenceOnset) / (TurbulenceComplete - TurbulenceOnset)));

    /// <summary>Weight of the turbulent branch: w = x² (3 − 2 x).</summary>
    /// <param name="share">x.</param>
    internal static T Weight<T>(T share)
        where T : struct, IReal<T> => share * share * (3.0 - (2.0 * share));

    /// <summary>Friction number: Po = 64 + w (f Re − 64).</summary>
    /// <param name="weight">w.</param>
    /// <param name="turbulentFriction">f, by <see cref="ColebrookWhite"/>.</param>
    /// <param name="reynolds">Re, at least 2040.</param>
    internal static T Blend<T>(T weight, T turbulentFriction, T reynolds)
        where T : struct, IReal<T> => LaminarNumber + (weight * ((turbulentFriction * reynolds) - LaminarNumber));

    /// <summary>Darcy friction factor from the friction number.
    /// <para><c>f = Po/Re</c></para>
    /// </summary>
    /// <param name="number"><c>Po</c> (1): friction number f Re (Poiseuille number).</param>
    /// <param name="reynolds"><c>Re</c> (1): Reynolds number.</param>
    /// <returns><c>f</c> (1): Darcy friction factor.</returns>
    /// <remarks>
    /// <para>Range: Re over 0.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = PipeFriction.Factor&lt;Real&gt;(number: 64, reynolds: 1600);
    /// // result = 0.04
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static T Factor<T>(T number, T reynolds)
        where T : struct, IReal<T> => number / reynolds;
}
