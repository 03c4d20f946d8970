namespace FuelSizing.Systems;

/// <summary>One solved point in SI numbers, as the result keeps it.</summary>
internal readonly record struct SolvedPoint
{
    /// <summary>What the regulator asks for, gauge, Pa.</summary>
    public required double RailSet { get; init; }

    /// <summary>In the rail, gauge, Pa; as set where the pump's data does not cover the point.</summary>
    public required double Rail { get; init; }

    /// <summary>Pumps, lines and regulator against the demand.</summary>
    public required CircuitState Circuit { get; init; }

    /// <summary>Across the injector, Pa.</summary>
    public required double Differential { get; init; }

    /// <summary>kg/m³.</summary>
    public required double FuelDensity { get; init; }

    /// <summary>Of the whole engine, m³/s.</summary>
    public required double Injected { get; init; }

    /// <summary>Flow wanted of the pump, m³/s.</summary>
    public required double Wanted { get; init; }

    /// <summary>Rise that the pumps need to deliver that, Pa.</summary>
    public required double WantedRise { get; init; }

    /// <summary>The least that may surely be injected with the pump's reserve kept, m³/s.</summary>
    public required double LeastInjectable { get; init; }

    /// <summary>The most that may be injected with the pump's reserve kept, m³/s; the same where data covers the point.</summary>
    public required double MostInjectable { get; init; }

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

    /// <summary>Fuel that the injectors can pass at the duty limit, m³/s; null where there is no dead time.</summary>
    public required double? Capacity { get; init; }
}
