using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Fuels;

/// <summary>A bound to the vapour pressure of a blend.</summary>
/// <remarks>
/// Alcohols and petrol are far from ideal together: a little alcohol makes the blend more volatile than either part. So no
/// mixing rule is used but a bound from above, which errs towards too small a suction margin: the petrol's Reid vapour
/// pressure and the most that the alcohol adds to it, whatever the shares, and never less than any part on its own.
/// </remarks>
internal static class BlendVapour
{
    /// <summary>The bound, or nothing if a part has no vapour pressure.</summary>
    /// <param name="parts">Those that are there at all.</param>
    public static VapourLaw? Of(IReadOnlyList<Fuel> parts)
    {
        VapourLaw[] laws = [.. parts.Select(part => part.Volatility).OfType<VapourLaw>().Distinct()];
        if (parts.Any(part => part.Volatility is null))
        {
            return null;
        }

        if (laws.Length == 1)
        {
            return laws[0];
        }

        VapourLaw? petrol = laws.Where(law => law.ReidPressure is not null).MaxBy(law => law.ReidPressure);
        IEnumerable<VapourLaw> others = laws.Where(law => law.ReidPressure is null);
        if (petrol is null)
        {
            return Maximum(others);
        }

        double rise = parts
            .Where(part => part.Volatility!.ReidPressure is null)
            .Max(part => (double?)VapourPressure.AlcoholRise<Real>(part.Composition.OxygenShare)) ?? 0;
        return Maximum(others.Prepend(
            VapourLaw.OfReid(VapourPressure.BlendedReid<Real>(petrol.ReidPressure!.Value, rise)) with
            {
                AtLeast = petrol.AtLeast,
            }));
    }

    private static VapourLaw Maximum(IEnumerable<VapourLaw> laws) =>
        laws.Aggregate((high, law) => Chain(law, high)) with { IsBound = true };

    /// <summary>Hangs a law at the end of another's chain.</summary>
    private static VapourLaw Chain(VapourLaw law, VapourLaw high) =>
        high with { AtLeast = high.AtLeast is null ? law : Chain(law, high.AtLeast) };
}
