using FuelSizing.Circuits;
using FuelSizing.Controllers;

namespace FuelSizing.Points;

/// <summary>The mixture that the engine gets at a point from its controller, in SI numbers.</summary>
internal readonly record struct SolvedMixture
{
    /// <summary>What the controller commands; its pulse is not a number where recorded pulses give no data.</summary>
    public required PulseCommanded Command { get; init; }

    /// <summary>What it wants.</summary>
    public required FuelWanted Wanted { get; init; }

    /// <summary>What its lambda sensor multiplies the fuel by.</summary>
    public required double Trim { get; init; }

    /// <summary>The circuit with the flow that is injected.</summary>
    public required CircuitTask Task { get; init; }

    /// <summary>Where that settles.</summary>
    public required CircuitState State { get; init; }

    /// <summary>Across the injector, Pa.</summary>
    public required double Differential { get; init; }

    /// <summary>Of the injectors that are fitted, s; not a number where their table does not cover the point.</summary>
    public required double DeadTime { get; init; }

    /// <summary>s.</summary>
    public required double AvailableTime { get; init; }

    /// <summary>s; not a number where it is not known.</summary>
    public required double OpenTime { get; init; }

    /// <summary>Delivered to the whole engine, m³/s; not a number where it is not known.</summary>
    public required double Delivered { get; init; }

    /// <summary>Of the engine; not a number where it is not known, infinite where nothing is delivered.</summary>
    public required double Lambda { get; init; }

    /// <summary>The richest that it can be, by the pumps' data; the same as lambda where they cover the point.</summary>
    public required double MinimumLambda { get; init; }

    /// <summary>The leanest that it can be.</summary>
    public required double MaximumLambda { get; init; }

    /// <summary>In the rail, gauge, Pa.</summary>
    public double Rail => State.RailOr(Task.RailAsSet);

    /// <summary>True if the pulse is as long as the cycle.</summary>
    public bool IsHeldOpen => Command.Pulse >= AvailableTime;
}
