using FuelSizing.Lines;

namespace FuelSizing.Tests.Circuits;

/// <summary>A height of fuel, whatever flows, that counts how often it is asked.</summary>
/// <param name="pascals">Pressure lost over it; negative where the line falls, Pa.</param>
internal sealed class FuelColumn(double pascals) : IFlowLoss
{
    /// <inheritdoc/>
    public string Name => "column";

    /// <summary>How often its loss was asked for.</summary>
    public int Asked { get; private set; }

    /// <inheritdoc/>
    double IFlowLoss.LossPascals(double flow, double density, double kinematicViscosity)
    {
        Asked++;
        return 0;
    }

    /// <inheritdoc/>
    double IFlowLoss.ElevationPascals(double density) => pascals;
}
