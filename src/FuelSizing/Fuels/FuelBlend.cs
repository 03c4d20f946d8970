using System.Globalization;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Fuels;

/// <summary>Blends of fuels, from the shares of their parts.</summary>
/// <remarks>
/// Ideal mixing: volumes add, so density and thermal expansion go by volume, elements, heating value and heat of vaporisation by mass. Petrol
/// and ethanol together take up to about 0.5 % more room than that; the density is then that much too high. The logarithm of
/// viscosity goes by volume (Arrhenius); vapour pressure is that of petrol with so much ethanol, to the higher side, and with other alcohols a bound from
/// above (<see cref="Fuel.VapourPressureAt"/>). A blend lacks either if a part does.
/// </remarks>
public static class FuelBlend
{
    /// <summary>A blend by volume at 15 °C.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="parts">Each part and its share by volume, 0 to 100 %; the shares add up to 100 %.</param>
    /// <returns>A fuel like any other.</returns>
    /// <exception cref="ArgumentException">The name is blank, or there are no parts.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A share is outside its range, or they do not add up.</exception>
    /// <example>
    /// <code>Fuel e30 = FuelBlend.ByVolume("E30", (Fuel.Petrol, Ratio.FromPercent(70)), (Fuel.Ethanol, Ratio.FromPercent(30)));</code>
    /// </example>
    public static Fuel ByVolume(string name, params (Fuel Fuel, Ratio Share)[] parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        if (parts.Length == 0)
        {
            throw new ArgumentException("parts was empty; a blend has one part or more.", nameof(parts));
        }

        Span<Real> volumes = new Real[parts.Length];
        Span<Real> masses = new Real[parts.Length];
        double total = 0;
        for (int part = 0; part < parts.Length; part++)
        {
            ArgumentNullException.ThrowIfNull(parts[part].Fuel, nameof(parts));
            Ratio share = Guard.Between(
                parts[part].Share,
                Ratio.Zero,
                Ratio.FromPercent(100),
                $"It is the share of {parts[part].Fuel.Name} by volume.",
                nameof(parts));
            volumes[part] = share.DecimalFractions;
            masses[part] = volumes[part] * parts[part].Fuel.ReferenceDensity;
            total += volumes[part];
        }

        if (Math.Abs(total - 1) > 1e-6)
        {
            throw Guard.OutOfRange(
                nameof(parts),
                $"{(total * 100).ToString("G6", CultureInfo.InvariantCulture)} % in all",
                "shares that add up to 100 %",
                "Correct the shares.");
        }

        Fuel blend = Fuel.Of(
            name,
            ElementalComposition.ByMass(
                Mixed(masses, parts, fuel => fuel.Composition.CarbonShare),
                Mixed(masses, parts, fuel => fuel.Composition.HydrogenShare),
                Mixed(masses, parts, fuel => fuel.Composition.OxygenShare)),
            SpecificEnergy.FromJoulesPerKilogram(
                Mixed(masses, parts, fuel => fuel.LowerHeatingValue.JoulesPerKilogram)),
            Density.FromKilogramsPerCubicMeter(Mixed(volumes, parts, fuel => fuel.ReferenceDensity)),
            CoefficientOfThermalExpansion.FromPerKelvin(Mixed(volumes, parts, fuel => fuel.Expansion)));
        Fuel[] present = [.. parts.Where(part => part.Share > Ratio.Zero).Select(part => part.Fuel)];
        return blend with
        {
            Making = new(new() { Kind = FuelKind.Blend, Parts = [.. parts] }),
            Viscosity = present.All(fuel => fuel.HasViscosity)
                ? new ViscosityLaw(
                    Mixed(volumes, parts, fuel => fuel.Viscosity?.A ?? 0),
                    Mixed(volumes, parts, fuel => fuel.Viscosity?.B ?? 0),
                    Mixed(volumes, parts, fuel => fuel.Viscosity?.C ?? 0))
                : null,
            Volatility = BlendVapour.Of(parts),
            HeatOfVaporisation = present.All(fuel => fuel.HeatOfVaporisation is not null)
                ? SpecificEnergy.FromJoulesPerKilogram(Mixed(masses, parts, fuel => fuel.HeatOfVaporisation?.JoulesPerKilogram ?? 0))
                : null,
        };
    }

    /// <summary>Petrol with a share of ethanol by volume, as <see cref="Fuel.Petrol"/> and <see cref="Fuel.Ethanol"/>.</summary>
    /// <param name="ethanol">Share of ethanol by volume, 0 to 100 %.</param>
    /// <param name="name">Shown in results; "E" and the share if not given.</param>
    /// <returns>The blend.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    public static Fuel EthanolInPetrol(Ratio ethanol, string? name = null)
    {
        Guard.Between(
            ethanol, Ratio.Zero, Ratio.FromPercent(100), "It is the share of ethanol by volume.", nameof(ethanol));
        return ByVolume(
            name ?? $"E{ethanol.Percent.ToString("0.#", CultureInfo.InvariantCulture)}",
            (Fuel.Petrol, Ratio.FromPercent(100) - ethanol),
            (Fuel.Ethanol, ethanol));
    }

    private static double Mixed(ReadOnlySpan<Real> shares, (Fuel Fuel, Ratio Share)[] parts, Func<Fuel, double> property)
    {
        Span<Real> values = new Real[parts.Length];
        for (int part = 0; part < parts.Length; part++)
        {
            values[part] = property(parts[part].Fuel);
        }

        return FuelMixing.ByShare<Real>(shares, values);
    }
}
