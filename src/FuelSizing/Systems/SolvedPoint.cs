namespace FuelSizing.Systems;

/// <summary>One solved point in SI numbers, as the result keeps it.</summary>
internal readonly record struct SolvedPoint
{
    /// <summary>The circuit that was solved.</summary>
    public required CircuitTask Task { get; init; }

    /// <summary>Pumps, lines and regulator against the demand.</summary>
    public required CircuitState Circuit { get; init; }

    /// <summary>Injection at the pressure in the rail.</summary>
    public required Injection Actual { get; init; }

    /// <summary>Injection at the pressure at which injectors are judged: as set where the rail sags, else as it is.</summary>
    public required Injection Judged { get; init; }

    /// <summary>Flow wanted of the pump, m³/s.</summary>
    public required double Wanted { get; init; }

    /// <summary>The least that may surely be injected with the pump's reserve kept, m³/s.</summary>
    public required double LeastInjectable { get; init; }

    /// <summary>The most that may be injected with the pump's reserve kept, m³/s; the same where data covers the point.</summary>
    public required double MostInjectable { get; init; }

    /// <summary>What the regulator asks for, gauge, Pa.</summary>
    public double RailSet => Task.Set;

    /// <summary>In the rail, gauge, Pa; as set where the pump's data does not cover the point.</summary>
    public double Rail => Circuit.RailOr(Task.Set);

    /// <summary>kg/m³.</summary>
    public double FuelDensity => Task.Density;

    /// <summary>Of the whole engine, m³/s.</summary>
    public double Injected => Task.Injected;
}
