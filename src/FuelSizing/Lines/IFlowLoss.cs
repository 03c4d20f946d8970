namespace FuelSizing.Lines;

/// <summary>A part of a circuit that fuel flows through and loses pressure in.</summary>
public interface IFlowLoss
{
    /// <summary>The name shown in results.</summary>
    string Name { get; }

    /// <summary>
    /// Pressure lost to flow, Pa: zero at rest, never falling as the flow grows, and of its sign. Nothing is checked or
    /// allocated, so that a solver may call it in a loop.
    /// </summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="density">kg/m³.</param>
    /// <param name="kinematicViscosity">m²/s.</param>
    internal double LossPascals(double flow, double density, double kinematicViscosity);

    /// <summary>Pressure lost to height, Pa, whatever the flow; below zero where the part descends.</summary>
    /// <param name="density">kg/m³.</param>
    internal double ElevationPascals(double density);
}
