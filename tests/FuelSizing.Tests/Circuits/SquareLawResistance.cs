using FuelSizing.Lines;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// A resistance whose loss goes with the square of the flow, as of any sharp-edged restriction, and that counts how often it
/// is asked. With it and a pump whose flow falls in a straight line the circuit is a quadratic equation.
/// </summary>
/// <param name="factor">Loss over the square of the flow, Pa s²/m⁶.</param>
internal sealed class SquareLawResistance(double factor) : IFlowLoss
{
    /// <inheritdoc/>
    public string Name => "resistance";

    /// <summary>How often its loss was asked for.</summary>
    public int Asked { get; private set; }

    /// <inheritdoc/>
    double IFlowLoss.LossPascals(double flow, double density, double kinematicViscosity)
    {
        Asked++;
        return factor * flow * Math.Abs(flow);
    }

    /// <inheritdoc/>
    double IFlowLoss.ElevationPascals(double density) => 0;
}
