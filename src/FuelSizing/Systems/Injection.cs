namespace FuelSizing.Systems;

/// <summary>How the fuel goes in at one rail pressure, in SI numbers.</summary>
internal readonly record struct Injection
{
    /// <summary>Across the injector, Pa.</summary>
    public required double Differential { get; init; }

    /// <summary>Of one injector, m³/s.</summary>
    public required double StaticFlow { get; init; }

    /// <summary>s.</summary>
    public required double AvailableTime { get; init; }

    /// <summary>s; null where the table does not cover the point.</summary>
    public required double? DeadTime { get; init; }

    /// <summary>s; null where there is no dead time or no flow.</summary>
    public required double? Pulse { get; init; }

    /// <summary>Null where there is no pulse.</summary>
    public required double? DutyCycle { get; init; }

    /// <summary>Fuel that the injectors can pass at the duty limit, m³/s; null where there is no dead time or no flow.</summary>
    public required double? Capacity { get; init; }
}
