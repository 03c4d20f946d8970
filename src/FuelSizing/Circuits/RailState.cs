namespace FuelSizing.Circuits;

/// <summary>Who governs the pressure in the rail.</summary>
public enum RailState
{
    /// <summary>The regulator: surplus fuel passes it.</summary>
    Regulated,

    /// <summary>The regulator barely: the returned flow is under the least at which it governs.</summary>
    AtRegulatorLimit,

    /// <summary>The way back: it passes the surplus only at a higher pressure than the regulator asks for.</summary>
    ReturnFloor,

    /// <summary>The pump at its lowest speed: an electronic returnless system cannot slow it further.</summary>
    PumpFloor,

    /// <summary>The pump: the regulator is shut and the pressure has fallen to where the pump meets the demand.</summary>
    Sagging,

    /// <summary>Nobody: the pump cannot bring the demand to the rail even against no pressure.</summary>
    Starved,

    /// <summary>Not known: the pump's data does not cover the point. Figures are those of the regulator's set pressure.</summary>
    NotCovered,
}
