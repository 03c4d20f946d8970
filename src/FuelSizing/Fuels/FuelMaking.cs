using UnitsNet;

namespace FuelSizing.Fuels;

/// <summary>How a fuel was given, apart from its own figures.</summary>
internal sealed record FuelMaking
{
    /// <summary>By which of the ways to make a fuel.</summary>
    public FuelKind Kind { get; init; }

    /// <summary>A blend's parts, each with its share by volume.</summary>
    public IReadOnlyList<(Fuel Fuel, Ratio Share)> Parts { get; init; } = [];

    /// <summary>Viscosity at two temperatures, where it was given.</summary>
    public IReadOnlyList<(Temperature Temperature, KinematicViscosity Viscosity)> Viscosity { get; init; } = [];

    /// <summary>Vapour pressure at two temperatures, where it was given.</summary>
    public IReadOnlyList<(Temperature Temperature, Pressure Absolute)> VapourPressure { get; init; } = [];

    /// <summary>Reid vapour pressure, where it was given.</summary>
    public Pressure? ReidPressure { get; init; }

    /// <summary>Heat of vaporisation, where it was given.</summary>
    public SpecificEnergy? HeatOfVaporisation { get; init; }
}

/// <summary>The ways to make a fuel.</summary>
internal enum FuelKind
{
    /// <summary><see cref="Fuel.Of"/>.</summary>
    Other,

    /// <summary><see cref="Fuel.PetrolOf"/>.</summary>
    Petrol,

    /// <summary><see cref="Fuel.Ethanol"/>.</summary>
    Ethanol,

    /// <summary><see cref="Fuel.Methanol"/>.</summary>
    Methanol,

    /// <summary><see cref="FuelBlend.ByVolume"/>.</summary>
    Blend,
}
