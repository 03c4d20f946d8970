using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>True vapour pressure of a liquid fuel against temperature.</summary>
internal static class VapourPressure
{
    private const double PascalsPerPsi = 6894.757293168;

    /// <summary>√3: the distillation slope at 10 % evaporated that AP-42 gives for motor gasoline is 3 °F for each %.</summary>
    private const double RootOfDistillationSlope = 1.7320508075688772;

    /// <summary>Antoine's equation, Pa: ln p = A − B/(T + C).</summary>
    /// <param name="a">A.</param>
    /// <param name="b">B, K.</param>
    /// <param name="c">C, K.</param>
    /// <param name="temperature">T, K.</param>
    public static T Antoine<T>(T a, T b, T c, T temperature)
        where T : struct, IReal<T> => T.Exp(a - (b / (temperature + c)));

    /// <summary>
    /// A of petrol, p in Pa: AP-42 gives, in psi, A = 15.64 − 1.854 √S − (0.8742 − 0.3280 √S) ln RVP.
    /// </summary>
    /// <param name="reidPressure">Reid vapour pressure (at 37.8 °C), Pa.</param>
    /// <remarks>US EPA, AP-42, chapter 7.1 (Organic Liquid Storage Tanks), figure 7.1-15, after API; S = 3.</remarks>
    public static T PetrolIntercept<T>(T reidPressure)
        where T : struct, IReal<T> =>
        15.64 - (1.854 * RootOfDistillationSlope) + Math.Log(PascalsPerPsi)
        - ((0.8742 - (0.3280 * RootOfDistillationSlope)) * T.Log(reidPressure / PascalsPerPsi));

    /// <summary>
    /// B of petrol, K: AP-42 gives, in °R, B = 8742 − 1042 √S − (1049 − 179.4 √S) ln RVP.
    /// </summary>
    /// <param name="reidPressure">Reid vapour pressure (at 37.8 °C), Pa.</param>
    public static T PetrolSlope<T>(T reidPressure)
        where T : struct, IReal<T> =>
        (8742 - (1042 * RootOfDistillationSlope)
            - ((1049 - (179.4 * RootOfDistillationSlope)) * T.Log(reidPressure / PascalsPerPsi)))
        / 1.8;

    /// <summary>
    /// The most that an alcohol raises petrol's Reid vapour pressure, Pa: 7 kPa for ethanol and heavier alcohols, 21 kPa
    /// for methanol, told apart by oxygen.
    /// </summary>
    /// <param name="oxygenShare">Oxygen by mass: ethanol 0.347, methanol 0.499.</param>
    /// <remarks>
    /// Ethanol raises it by about 1 psi, and 15 % no more than 10 %: McCormick and Yanowitz, National Renewable Energy
    /// Laboratory (2012). Methanol, about 3 psi: from memory, common practice.
    /// </remarks>
    public static T AlcoholRise<T>(T oxygenShare)
        where T : struct, IReal<T> =>
        T.IfLess(0, oxygenShare, T.IfLess(oxygenShare, 0.4, 7_000, 21_000), 0);

    /// <summary>Reid vapour pressure of a blend, Pa: the petrol's own and the most that the alcohol adds.</summary>
    /// <param name="petrol">Of the petrol alone, Pa.</param>
    /// <param name="rise">Pa.</param>
    public static T BlendedReid<T>(T petrol, T rise)
        where T : struct, IReal<T> => petrol + rise;
}
