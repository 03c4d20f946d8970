using FuelSizing.Quantities;

namespace FuelSizing.Checks;

/// <summary>What all checks of the circuit have in common.</summary>
internal static class CircuitFinding
{
    /// <summary>The finding where the pumps' data does not cover the point, so that nothing is known of the circuit.</summary>
    public static Statement PumpNotCovered { get; } =
        Statement.Of("circuit.pump-data-not-covered", $"the pump's data does not cover the point");
}
