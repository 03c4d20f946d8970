using FuelSizing.Lines;
using FuelSizing.Numerics;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>One line or filter at its flow.</summary>
public sealed record PathResult
{
    internal PathResult(IFlowLoss part, double flow, double density, double kinematicViscosity)
    {
        Name = part.Name;
        Flow = VolumeFlow.FromCubicMetersPerSecond(flow);
        Real loss = part.LossPascals(flow, density, kinematicViscosity);
        PressureLoss = Pressure.FromPascals((loss + part.ElevationPascals(density)).Value);
    }

    /// <summary>The part's name.</summary>
    public string Name { get; }

    /// <summary>Flow through it.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Pressure lost in it, height included.</summary>
    public Pressure PressureLoss { get; }
}
