using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>A line of one bore, in SI numbers that do not change along a sweep.</summary>
/// <param name="Bore">m.</param>
/// <param name="Length">Straight and gently bent pipe together, m.</param>
/// <param name="RelativeRoughness">Roughness ÷ bore.</param>
/// <param name="LossCoefficient">Sum over the fittings.</param>
internal readonly record struct PipeConstants<T>(T Bore, T Length, T RelativeRoughness, T LossCoefficient)
    where T : struct, IReal<T>;

/// <summary>What a flow costs in a line, in SI numbers.</summary>
/// <param name="Velocity">Mean, m/s.</param>
/// <param name="Reynolds">Reynolds number.</param>
/// <param name="FrictionNumber">Friction factor × Reynolds number.</param>
/// <param name="StraightLoss">Pa.</param>
/// <param name="FittingsLoss">Pa.</param>
/// <param name="FrictionLoss">Both together, Pa.</param>
internal readonly record struct PipeState<T>(
    T Velocity, T Reynolds, T FrictionNumber, T StraightLoss, T FittingsLoss, T FrictionLoss)
    where T : struct, IReal<T>;

/// <summary>The chain from flow to pressure loss: one text for a point and for batches.</summary>
internal static class PipeLoss
{
    /// <summary>Evaluates the chain: flow → velocity → Reynolds number → friction → loss. Elevation is apart.</summary>
    /// <param name="line">The line.</param>
    /// <param name="flow">m³/s, not below zero.</param>
    /// <param name="density">kg/m³.</param>
    /// <param name="kinematicViscosity">m²/s.</param>
    public static PipeState<T> Evaluate<T>(in PipeConstants<T> line, T flow, T density, T kinematicViscosity)
        where T : struct, IReal<T>
    {
        T velocity = PipeFlow.Velocity(flow, line.Bore);
        T reynolds = PipeFlow.Reynolds(velocity, line.Bore, kinematicViscosity);
        T number = PipeFriction.Number(reynolds, line.RelativeRoughness);
        T straight = PipeFlow.StraightLoss(
            number, line.Length, line.Bore, density, kinematicViscosity, velocity);
        T fittings = PipeFlow.FittingsLoss(line.LossCoefficient, density, velocity);
        return new(velocity, reynolds, number, straight, fittings, straight + fittings);
    }
}
