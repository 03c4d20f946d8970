using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Fuels;

/// <summary>Specific heat of fuels whose kind is known, J/(kg·K).</summary>
/// <remarks>
/// Tables differ by up to 15 % for petrol (2.08 to 2.4 kJ/(kg·K)); the lowest of them stands here, with which fuel warms up most. They are for 20 to 25 °C: warmer fuel
/// has more. A blend takes up a little more than its parts by mass.
/// </remarks>
internal static class SpecificHeat
{
    private const double Petrol = 2080;
    private const double Ethanol = 2440;
    private const double Methanol = 2530;

    /// <summary>Of a fuel; not a number of a fuel of the user's own.</summary>
    /// <param name="fuel">The fuel.</param>
    public static double Of(Fuel fuel)
    {
        FuelMaking making = fuel.Making.Value;
        switch (making.Kind)
        {
            case FuelKind.Petrol:
                return Petrol;
            case FuelKind.Ethanol:
                return Ethanol;
            case FuelKind.Methanol:
                return Methanol;
            case FuelKind.Blend:
                Real[] masses = [.. making.Parts.Select(part => (Real)(part.Share.DecimalFractions * part.Fuel.ReferenceDensity))];
                Real[] heats = [.. making.Parts.Select(part => (Real)(part.Share.DecimalFractions > 0 ? Of(part.Fuel) : 0))];
                return FuelMixing.ByShare<Real>(masses, heats).Value;
            default:
                return double.NaN;
        }
    }
}
