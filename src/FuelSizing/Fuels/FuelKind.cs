namespace FuelSizing.Fuels;

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
