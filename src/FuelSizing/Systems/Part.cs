namespace FuelSizing.Systems;

/// <summary>A part of the fuel system that can run out.</summary>
public enum Part
{
    /// <summary>The injectors' flow: duty cycle against its limit.</summary>
    Injectors,

    /// <summary>The injectors' shortest pulse: at light load against the minimum linear pulse.</summary>
    ShortestPulse,

    /// <summary>The injectors' opening: differential pressure against the highest at which they open.</summary>
    InjectorOpening,

    /// <summary>The pump: delivered flow at rail pressure against injected flow, reserve and least return.</summary>
    Pump,

    /// <summary>Hoses, fittings and filter: rail pressure against their rating.</summary>
    RailRating,
}
