using FuelSizing.Equations;
using FuelSizing.Numerics;
using UnitsNet;

namespace FuelSizing.Fuels;

/// <summary>The vapour pressure of a blend, to the higher side.</summary>
/// <remarks>
/// <para>Alcohols and petrol are far from ideal together: a little ethanol makes the blend more volatile than either part, a lot of it makes it less so
/// than the petrol. Of petrol and ethanol the blend's Reid vapour pressure follows from a published fit to measurements, plus an allowance; of any
/// other blend only a bound is given: the petrol's Reid vapour pressure and the maximum that the alcohol adds to it, whatever the shares, and never less
/// than any part on its own. A blend of blends is what it holds in the end: how it was put together does not matter.</para>
/// <para>With temperature petrol's vapour pressure grows more slowly than ethanol's. Whether the blend follows the one or the sum of both was not
/// found measured, so it is the higher of the two: the first below 37.8 °C, the second above.</para>
/// </remarks>
internal static class BlendVapour
{
    /// <summary>Over the fit, Pa: chosen, about what one laboratory may measure differently from another.</summary>
    private const double Allowance = 3_000;

    /// <summary>Ethanol's Reid vapour pressure in the fit, 2.3 psi, Pa.</summary>
    private const double EthanolReidPressure = 15_858;

    /// <summary>Temperature of Reid vapour pressures, 100 °F, K.</summary>
    private const double ReidKelvins = 310.928;

    /// <summary>What petrol in a measured blend has at least, Pa: the lowest that a fuel may be given.</summary>
    private const double MinimumReidPressure = 7_000;

    /// <summary>The law of a blend, or nothing if a part has no vapour pressure.</summary>
    /// <param name="parts">Fuels and their shares by volume.</param>
    public static VapourLaw? Of(IReadOnlyList<(Fuel Fuel, Ratio Share)> parts)
    {
        List<(Fuel Fuel, double Share)> components = [.. parts.SelectMany(part => Components(part.Fuel, part.Share.DecimalFractions))];
        if (components.Exists(component => component.Fuel.Volatility is null))
        {
            return null;
        }

        Fuel[] fuels = [.. components.Select(component => component.Fuel).Distinct()];
        if (fuels.Length == 1)
        {
            return fuels[0].Volatility;
        }

        double ethanol = components.Sum(component => component.Share * EthanolIn(component.Fuel));
        double total = components.Sum(component => component.Share);
        return ethanol > 0 && Array.Exists(fuels, fuel => PetrolOf(fuel) is not null)
            ? OfPetrolAndEthanol(fuels, ethanol / total)
            : Bound(fuels);
    }

    /// <summary>The law of a blend of petrol and ethanol whose own Reid vapour pressure was measured.</summary>
    /// <param name="reidPressure">Of the blend, Pa.</param>
    /// <param name="ethanolShare">Of ethanol by volume, over 0.</param>
    public static VapourLaw OfMeasured(double reidPressure, double ethanolShare) =>
        Law(reidPressure, PetrolIn(reidPressure, ethanolShare), ethanolShare);

    /// <summary>Share of ethanol by volume of a fuel whose parts are known; not a number where they are not, or are others than petrol and ethanol.</summary>
    /// <param name="fuel">The fuel.</param>
    public static double EthanolIn(Fuel fuel) => fuel.Making.Value switch
    {
        { Kind: FuelKind.Ethanol } => 1,
        { Kind: FuelKind.Petrol } when fuel.Composition.OxygenShare <= 0 => 0,
        { Kind: FuelKind.Blend } making => making.Parts
            .Where(part => part.Share > Ratio.Zero)
            .Sum(part => part.Share.DecimalFractions * EthanolIn(part.Fuel)) / making.Parts.Sum(part => part.Share.DecimalFractions),
        _ => double.NaN,
    };

    /// <summary>
    /// What a fuel is blended of in the end, whatever blends came between; itself where it is no blend, or where its own vapour pressure
    /// was given.
    /// </summary>
    private static IEnumerable<(Fuel Fuel, double Share)> Components(Fuel fuel, double share) =>
        share <= 0 ? []
        : fuel.Making.Value is { Kind: FuelKind.Blend, ReidPressure: null, VapourPressure.Count: 0 } making
            ? making.Parts.SelectMany(part => Components(part.Fuel, share * part.Share.DecimalFractions))
            : [(fuel, share)];

    private static VapourLaw OfPetrolAndEthanol(Fuel[] fuels, double ethanolShare)
    {
        // Of several petrols the most volatile counts, as if all were that.
        double petrol = fuels.Max(fuel => PetrolOf(fuel) is { } own && EthanolIn(fuel) is var within && within > 0
            ? Math.Max(own, PetrolIn(own, within))
            : PetrolOf(fuel))!.Value;
        VapourLaw law = Law(OfFit(petrol, ethanolShare) + Allowance, petrol, ethanolShare);

        // What was measured at two temperatures is not undercut, and the ethanol's own neither.
        IEnumerable<VapourLaw> others = fuels.Select(fuel => fuel.Volatility!).Where(other => other.ReidPressure is null).Distinct();
        return Maximum(others.Prepend(law));
    }

    /// <summary>The higher of petrol's law and of the sum of both, each at one Reid vapour pressure.</summary>
    private static VapourLaw Law(double reidPressure, double petrol, double ethanolShare) => VapourLaw.OfReid(reidPressure) with
    {
        IsBound = true,
        AtLeast = VapourLaw.OfReid(petrol) with
        {
            ReidPressure = null,
            EthanolShare = ethanolShare,
            Scale = reidPressure / OfFit(petrol, ethanolShare),
            IsBound = true,
        },
    };

    /// <summary>Reid vapour pressure of petrol with ethanol, by the fit, Pa.</summary>
    private static double OfFit(double petrol, double ethanolShare) => VapourPressure.OfBlend<Real>(
        VapourPressure.PetrolFactor<Real>(ethanolShare), VapourPressure.EthanolFactor<Real>(ethanolShare), ethanolShare, petrol, EthanolReidPressure).Value;

    /// <summary>Reid vapour pressure of the petrol in a blend of a measured one, by the fit, Pa.</summary>
    private static double PetrolIn(double reidPressure, double ethanolShare)
    {
        // The fit is a straight line over the petrol's pressure.
        double none = OfFit(0, ethanolShare);
        double slope = (OfFit(reidPressure, ethanolShare) - none) / reidPressure;
        return slope > 0 ? Math.Max(MinimumReidPressure, (reidPressure - none) / slope) : MinimumReidPressure;
    }

    /// <summary>The petrol's pressure and all that alcohol can add to it.</summary>
    private static VapourLaw Bound(Fuel[] fuels)
    {
        VapourLaw[] laws = [.. fuels.Select(fuel => fuel.Volatility!).Distinct()];
        IEnumerable<VapourLaw> others = laws.Where(law => law.ReidPressure is null);

        // A measured blend has alcohol of its own, which may raise the petrol that it is mixed with.
        double rise = fuels.Max(fuel => VapourPressure.AlcoholRise<Real>(fuel.Composition.OxygenShare).Value);
        VapourLaw? petrol = laws.Where(law => law.ReidPressure is not null).MaxBy(law => law.ReidPressure);
        double? reid = rise > 0 ? fuels.Max(PetrolOf) : petrol?.ReidPressure;
        return reid is not { } most ? laws.Length == 1 ? laws[0] : Maximum(others)
            : Maximum(others.Prepend(VapourLaw.OfReid(most + rise) with { AtLeast = petrol?.AtLeast }));
    }

    /// <summary>
    /// Reid vapour pressure of a fuel that is no pure alcohol, Pa; where it was measured at two temperatures its true pressure at 37.8 °C, which is a
    /// little higher.
    /// </summary>
    private static double? PetrolOf(Fuel fuel) => fuel.Volatility!.ReidPressure
        ?? (fuel.Making.Value.Kind is FuelKind.Ethanol or FuelKind.Methanol ? null : fuel.Volatility.At(ReidKelvins));

    private static VapourLaw Maximum(IEnumerable<VapourLaw> laws) =>
        laws.Aggregate((high, law) => Chain(law, high)) with { IsBound = true };

    /// <summary>Hangs a law at the end of another's chain.</summary>
    private static VapourLaw Chain(VapourLaw law, VapourLaw high) =>
        high with { AtLeast = high.AtLeast is null ? law : Chain(law, high.AtLeast) };
}
