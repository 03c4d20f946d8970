using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Friction of a round pipe from rest to fully turbulent flow.</summary>
/// <remarks>
/// Written in the friction number f Re, which stays finite when the flow stops: 64 in laminar flow, so that no loss comes
/// out of 0/0.
/// </remarks>
internal static class PipeFriction
{
    /// <summary>f Re of laminar flow in a round pipe: f = 64/Re (Hagen, Poiseuille).</summary>
    public const double LaminarNumber = 64;

    /// <summary>Re at which turbulence first sustains itself: Avila et al., Science 333 (2011) 192.</summary>
    public const double TurbulenceOnset = 2040;

    /// <summary>Re from which the flow is taken as turbulent: the usual lower end of the Moody chart.</summary>
    public const double TurbulenceComplete = 4000;

    /// <summary>
    /// Friction number: f Re = 64 + w (f_t Re − 64), f_t by <see cref="ColebrookWhite"/>, w = s²(3 − 2 s) with
    /// s = (Re − 2040)/(4000 − 2040) held within 0 and 1.
    /// </summary>
    /// <param name="reynolds">Re, 0 to 1e8.</param>
    /// <param name="relativeRoughness">ε/D, 0 to 0.05.</param>
    /// <remarks>
    /// Laminar exactly up to Re 2040, Colebrook–White from 4000. Between them, where a real pipe is intermittent and no
    /// law is exact, w and f_t Re both grow, so the loss grows strictly with the flow and has no kink.
    /// </remarks>
    public static T Number<T>(T reynolds, T relativeRoughness)
        where T : struct, IReal<T>
    {
        T share = T.Min(1, T.Max(0, (reynolds - TurbulenceOnset) / (TurbulenceComplete - TurbulenceOnset)));
        T weight = share * share * (3.0 - (2.0 * share));

        // Below the onset the weight is zero; the bound only keeps the turbulent branch within its domain there.
        T fast = T.Max(TurbulenceOnset, reynolds);
        T turbulent = ColebrookWhite.Friction(fast, relativeRoughness) * fast;
        return LaminarNumber + (weight * (turbulent - LaminarNumber));
    }

    /// <summary>Darcy friction factor f = (f Re)/Re, for Re above 0.</summary>
    /// <param name="number">f Re.</param>
    /// <param name="reynolds">Re, above 0.</param>
    public static T Factor<T>(T number, T reynolds)
        where T : struct, IReal<T> => number / reynolds;
}
