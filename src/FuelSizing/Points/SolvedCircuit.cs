using FuelSizing.Circuits;

namespace FuelSizing.Points;

/// <summary>Pumps, lines and regulator against the demand at one point, in SI numbers: no injector has a part in it.</summary>
internal readonly record struct SolvedCircuit
{
    /// <summary>The circuit that was solved.</summary>
    public required CircuitTask Task { get; init; }

    /// <summary>Where it settles.</summary>
    public required CircuitState State { get; init; }

    /// <summary>Flow wanted of the pump, m³/s.</summary>
    public required double Wanted { get; init; }

    /// <summary>The least that may surely be injected with the pump's reserve kept, m³/s.</summary>
    public required double MinimumInjectable { get; init; }

    /// <summary>The most that may be injected with the pump's reserve kept, m³/s; the same where data covers the point.</summary>
    public required double MaximumInjectable { get; init; }

    /// <summary>What the regulator asks for, gauge, Pa.</summary>
    public double RailSet => Task.Set;

    /// <summary>In the rail, gauge, Pa; as set where the pump's data does not cover the point.</summary>
    public double Rail => State.RailOr(Task.Set);

    /// <summary>True where the pumps do not bring the rail to its set pressure.</summary>
    public bool Sags => State.State is RailState.Sagging or RailState.Starved;
}
