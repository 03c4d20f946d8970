using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Loss coefficients of pipe fittings.</summary>
internal static class FittingLoss
{
    /// <summary>
    /// Roughness of clean commercial steel pipe, m (0.0018 in), to which the ratios of Crane TP-410 belong whatever pipe
    /// the fitting sits in.
    /// </summary>
    public const double ReferenceRoughness = 4.572e-5;

    /// <summary>
    /// K = K0 + n f_T (Crane TP-410), f_T = (2 log10(3.7 D/ε))^−2 of clean steel pipe of the same bore. One term is
    /// usually zero.
    /// </summary>
    /// <param name="fixedCoefficient">K0.</param>
    /// <param name="diameters">n, the length of straight pipe, in bores, that loses as much in fully turbulent flow.</param>
    /// <param name="bore">D, m.</param>
    public static T Coefficient<T>(T fixedCoefficient, T diameters, T bore)
        where T : struct, IReal<T> =>
        fixedCoefficient + (diameters * ColebrookWhite.FullyRough(ReferenceRoughness / bore));
}
