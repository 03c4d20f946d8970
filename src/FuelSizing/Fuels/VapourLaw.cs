using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;

namespace FuelSizing.Fuels;

/// <summary>
/// Vapour pressure against temperature: ln p = A − B/(T + C), SI, that of petrol with so much ethanol if a share is given, and never below another law if
/// one is given.
/// </summary>
/// <param name="A">A.</param>
/// <param name="B">K.</param>
/// <param name="C">K.</param>
/// <param name="FirstKelvins">Lowest temperature that the source covers.</param>
/// <param name="LastKelvins">Highest temperature that the source covers.</param>
internal sealed record VapourLaw(double A, double B, double C, double FirstKelvins, double LastKelvins)
{
    private static readonly Identity<VapourLaw> _identity = new Identity<VapourLaw>()
        .Number(law => law.A)
        .Number(law => law.B)
        .Number(law => law.C)
        .Number(law => law.FirstKelvins)
        .Number(law => law.LastKelvins)
        .Number(law => law.ReidPressure)
        .Number(law => law.EthanolShare)
        .Number(law => law.Scale)
        .Value(law => law.IsBound)
        .Value(law => law.AtLeast);

    private const double Ln10 = 2.302585092994045684;

    /// <summary>Poling, Prausnitz, O'Connell, The Properties of Gases and Liquids, 5th edition, appendix A.</summary>
    public static VapourLaw Ethanol { get; } = OfDecimal(10.33675, 1648.22, -42.232, 276.5, 369.54);

    /// <summary>Poling, Prausnitz, O'Connell, The Properties of Gases and Liquids, 5th edition, appendix A.</summary>
    public static VapourLaw Methanol { get; } = OfDecimal(10.20277, 1580.08, -33.65, 262.59, 356);

    /// <summary>Reid vapour pressure, Pa, if the law is that of petrol.</summary>
    public double? ReidPressure { get; init; }

    /// <summary>Share of ethanol by volume, if the law is the sum of what petrol and ethanol contribute: A, B and C are then the petrol's.</summary>
    public double? EthanolShare { get; init; }

    /// <summary>What that sum is multiplied by, so that it has the blend's Reid vapour pressure.</summary>
    public double Scale { get; init; } = 1;

    /// <summary>True if the law is a bound rather than a measured or tabulated one.</summary>
    public bool IsBound { get; init; }

    /// <summary>A law below which this one does not fall.</summary>
    public VapourLaw? AtLeast { get; init; }

    /// <summary>Petrol by its Reid vapour pressure, Pa. AP-42's chart spans 0 to 140 °F.</summary>
    public static VapourLaw OfReid(double reidPressure) =>
        new(
            VapourPressure.PetrolIntercept<Real>(reidPressure),
            VapourPressure.PetrolSlope<Real>(reidPressure),
            0,
            255.37,
            333.15)
        { ReidPressure = reidPressure };

    /// <summary>The law through two measured points, in K and Pa.</summary>
    public static VapourLaw Through(double t1, double p1, double t2, double p2)
    {
        Real slope = InverseTemperature.Slope<Real>(t1, p1, t2, p2);
        return new(
            InverseTemperature.Intercept<Real>(t1, p1, slope), (Real)0 - slope, 0, Math.Min(t1, t2), Math.Max(t1, t2));
    }

    /// <summary>Pa.</summary>
    public double At(double kelvins)
    {
        double own = VapourPressure.Antoine<Real>(A, B, C, kelvins);
        if (EthanolShare is { } ethanol)
        {
            own = Scale * VapourPressure.OfBlend<Real>(
                VapourPressure.PetrolFactor<Real>(ethanol), VapourPressure.EthanolFactor<Real>(ethanol), ethanol, own, Ethanol.At(kelvins)).Value;
        }

        return AtLeast is null ? own : Math.Max(own, AtLeast.At(kelvins));
    }

    /// <summary>True if the law is a bound, or its source does not reach so far.</summary>
    public bool IsEstimateAt(double kelvins) => IsBound || kelvins < FirstKelvins || kelvins > LastKelvins;

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(VapourLaw? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    private static VapourLaw OfDecimal(double a, double b, double c, double first, double last) =>
        new(a * Ln10, b * Ln10, c, first, last);
}
