namespace FuelSizing.Systems;

/// <summary>A part of the fuel system that can run out.</summary>
public enum Part
{
    /// <summary>The injectors' flow: duty cycle against its limit.</summary>
    Injectors,

    /// <summary>The injectors' shortest pulse: at light load against the minimum linear pulse.</summary>
    MinimumPulse,

    /// <summary>The injectors' opening: differential pressure against the highest at which they open.</summary>
    OpeningPressure,

    /// <summary>The pump: delivered flow at rail pressure against injected flow, reserve and least return.</summary>
    Pump,

    /// <summary>Hoses, fittings and filter: rail pressure against their rating.</summary>
    PressureRating,

    /// <summary>The way back to the tank: the pressure at which it passes the surplus against the one set.</summary>
    ReturnLine,

    /// <summary>A speed-controlled pump at its lowest speed: rail pressure against the target.</summary>
    PumpControl,

    /// <summary>The pump's inlet: pressure there against the fuel's vapour pressure.</summary>
    Suction,

    /// <summary>A pump's feed: voltage lost on the way against the most allowed.</summary>
    Feed,

    /// <summary>A filter: the flow through it against the most at which its loss is known.</summary>
    Filter,
}
