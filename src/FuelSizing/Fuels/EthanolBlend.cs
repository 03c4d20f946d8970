using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Fuels;

/// <summary>A nominal fuel seen as petrol with ethanol, so that its content can be changed.</summary>
internal sealed class EthanolBlend
{
    // Density and heating value of a fuel that is such a blend agree with the blend's own to rounding; a fuel that was
    // measured may be a little off.
    private const double Tolerance = 0.02;

    private readonly Fuel _petrol;
    private readonly Fuel _nominal;
    private readonly bool _ownViscosity;
    private readonly bool _ownVolatility;

    /// <summary>Finds the content of a fuel by its oxygen.</summary>
    /// <exception cref="ArgumentException">The fuel is not such a blend.</exception>
    public EthanolBlend(Fuel nominal, Fuel petrol, string name)
    {
        (_nominal, _petrol) = (nominal, petrol);
        double content = FuelMixing.VolumeShare<Real>(
            nominal.Composition.OxygenShare,
            Fuel.Ethanol.Composition.OxygenShare,
            Fuel.Ethanol.ReferenceDensity,
            petrol.Composition.OxygenShare,
            petrol.ReferenceDensity);
        Content = Math.Clamp(content, 0, 1);
        Fuel blend = Blend(Content);
        if (!(Math.Abs(content - Content) < Tolerance)
            || !Close(nominal.ReferenceDensity, blend.ReferenceDensity)
            || !Close(
                nominal.LowerHeatingValue.JoulesPerKilogram, blend.LowerHeatingValue.JoulesPerKilogram))
        {
            throw new ArgumentException(
                $"{name} has an ethanol content, but {nominal.Name} is no blend of ethanol with {petrol.Name} ({Readable.Of(petrol.DensityAt15C)}). Give the petrol in it.",
                name);
        }

        _ownViscosity = nominal.HasViscosity && !SameViscosity(nominal, blend);
        _ownVolatility = nominal.Volatility != blend.Volatility;
    }

    /// <summary>Of the nominal fuel, by volume.</summary>
    public double Content { get; }

    /// <summary>The fuel with another content.</summary>
    public Fuel At(double content)
    {
        Fuel blend = Blend(content);
        return blend with
        {
            Viscosity = _ownViscosity ? _nominal.Viscosity : blend.Viscosity,
            Volatility = _ownVolatility ? _nominal.Volatility : blend.Volatility,
        };
    }

    private Fuel Blend(double content)
    {
        Ratio ethanol = Ratio.FromDecimalFractions(content);
        return FuelBlend.ByVolume(
            _nominal.Name, (_petrol, Ratio.FromDecimalFractions(1) - ethanol), (Fuel.Ethanol, ethanol));
    }

    private static bool Close(double one, double other) => Math.Abs(one - other) <= Tolerance * other;

    private static bool SameViscosity(Fuel nominal, Fuel blend) =>
        nominal.HasViscosity && blend.HasViscosity
        && Math.Abs(nominal.DynamicViscosityAtKelvins(300) - blend.DynamicViscosityAtKelvins(300))
            <= 1e-6 * blend.DynamicViscosityAtKelvins(300);
}
