namespace FuelSizing.Systems;

/// <summary>Who governs the pressure in the rail.</summary>
public enum RailState
{
    /// <summary>The regulator: surplus fuel passes it.</summary>
    Regulated,

    /// <summary>The regulator barely: the returned flow is under the least at which it governs.</summary>
    AtRegulatorLimit,

    /// <summary>The pump: the regulator is shut and the pressure has fallen to where the pump meets the demand.</summary>
    Sagging,

    /// <summary>Nobody: the pump cannot meet the demand even against no pressure.</summary>
    Starved,

    /// <summary>Not known: the pump's curve does not cover the point. Figures are those of the regulator's set pressure.</summary>
    NotCovered,
}
