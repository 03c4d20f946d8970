using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Loss coefficients of pipe fittings.</summary>
public static class FittingLoss
{
    /// <summary><c>k_s</c> (m): roughness of clean commercial steel pipe, to which the ratios of Crane TP-410 belong whatever pipe
    /// the fitting sits in. 0.0018 in.</summary>
    public const double ReferenceRoughness = 4.572e-5;

    /// <summary>Loss coefficient of a pipe fitting by its equivalent length.
    /// <para><c>K = K_0 + n_d/(2 · log10(3.7 · d/k_s))²</c></para>
    /// </summary>
    /// <param name="fixedCoefficient"><c>K_0</c> (1): constant part of a loss coefficient.</param>
    /// <param name="diameters"><c>n_d</c> (1): equivalent length of a fitting, in bores; straight pipe that loses as much in fully
    /// turbulent flow.</param>
    /// <param name="bore"><c>d</c> (m): bore of the line.</param>
    /// <returns><c>K</c> (1): loss coefficient.</returns>
    /// <remarks>
    /// <para>Range: d well over k_s; fully turbulent flow.</para>
    /// <para>Outside: nothing is checked; in laminar flow real fittings lose more.</para>
    /// <example>
    /// <code>
    /// Real result = FittingLoss.Coefficient&lt;Real&gt;(fixedCoefficient: 0.5, diameters: 30, bore: 0.02286);
    /// // result = 1.202615
    /// </code>
    /// </example>
    /// <para>Source: Crane Co., Technical Paper 410, appendix A; the friction factor is that of clean commercial steel pipe.</para>
    /// </remarks>
    public static T Coefficient<T>(T fixedCoefficient, T diameters, T bore)
        where T : struct, IReal<T> =>
        fixedCoefficient + (diameters * ColebrookWhite.FullyRough(ReferenceRoughness / bore));
}
