namespace FuelSizing.Circuits;

/// <summary>A circuit solved by every reading of where its pumps' curves end.</summary>
/// <param name="Estimate">As results show it; its flows with the rail as set are those of the two others.</param>
/// <param name="Lower">With the least that the pumps' data allow.</param>
/// <param name="Upper">With the most that they allow.</param>
/// <remarks>Where the data covers the point all three are the same.</remarks>
internal readonly record struct CircuitBounds(CircuitState Estimate, CircuitState Lower, CircuitState Upper)
{
    /// <summary>A circuit whose data covers the point.</summary>
    public static CircuitBounds Exactly(in CircuitState state) => new(state, state, state);
}
