namespace FuelSizing.Circuits;

/// <summary>A circuit solved by every reading of where its pumps' curves end.</summary>
/// <param name="Estimate">As results show it; its flows with the rail as set are those of the two others.</param>
/// <param name="Lower">With the least that the pumps' data allow.</param>
/// <param name="Upper">With the most that they allow.</param>
/// <remarks>Where the data covers the point all three are the same.</remarks>
internal readonly record struct CircuitBounds(CircuitState Estimate, CircuitState Lower, CircuitState Upper)
{
    /// <summary>
    /// With the least that the pumps allow against the highest pressure that the regulator may hold, and with the most against the lowest; none where the regulator holds
    /// one pressure. The lower and upper bound then are of the rail: the flow of one may be over that of the other.
    /// </summary>
    public (CircuitState Least, CircuitState Most)? Flows { get; init; }

    /// <summary>The bound that passes least.</summary>
    public CircuitState FlowsLess => Flows?.Least ?? Lower;

    /// <summary>The bound that passes most.</summary>
    public CircuitState FlowsMore => Flows?.Most ?? Upper;

    /// <summary>One of them.</summary>
    /// <param name="side">Which.</param>
    public CircuitState Of(CircuitSide side) => side switch
    {
        CircuitSide.FlowsLess => FlowsLess,
        CircuitSide.FlowsMore => FlowsMore,
        _ => Estimate,
    };

    /// <summary>A circuit whose data covers the point.</summary>
    public static CircuitBounds Exactly(in CircuitState state) => new(state, state, state);
}

/// <summary>Which of a circuit's bounds.</summary>
internal enum CircuitSide
{
    /// <summary>As results show it.</summary>
    Estimate,

    /// <summary>The one that passes least.</summary>
    FlowsLess,

    /// <summary>The one that passes most.</summary>
    FlowsMore,
}
