using FuelSizing.Numerics;

namespace FuelSizing.Lines;

/// <summary>What the parts of a path lose together.</summary>
internal static class PathLoss
{
    /// <summary>Pressure lost on a path, height included, Pa.</summary>
    /// <param name="path">Its parts, in the order of flow.</param>
    /// <param name="flow">m³/s.</param>
    /// <param name="density">kg/m³.</param>
    /// <param name="kinematicViscosity">m²/s.</param>
    public static double Of(IReadOnlyList<IFlowLoss> path, double flow, double density, double kinematicViscosity)
    {
        Real loss = 0;
        for (int part = 0; part < path.Count; part++)
        {
            loss += Of(path[part], flow, density, kinematicViscosity);
        }

        return loss;
    }

    /// <summary>The same of an array: a solver goes over it many times.</summary>
    /// <param name="path">Its parts, in the order of flow.</param>
    /// <param name="flow">m³/s.</param>
    /// <param name="density">kg/m³.</param>
    /// <param name="kinematicViscosity">m²/s.</param>
    public static double Of(IFlowLoss[] path, double flow, double density, double kinematicViscosity)
    {
        Real loss = 0;
        foreach (IFlowLoss part in path)
        {
            loss += Of(part, flow, density, kinematicViscosity);
        }

        return loss;
    }

    /// <summary>Flow up to which the loss of every part of a path is known, m³/s; infinite where none has an end.</summary>
    /// <param name="path">Its parts.</param>
    public static double MaximumKnownFlow(IFlowLoss[] path)
    {
        double maximum = double.PositiveInfinity;
        foreach (IFlowLoss part in path)
        {
            maximum = part is ILimitedLoss limited ? Math.Min(maximum, limited.MaximumKnownFlow) : maximum;
        }

        return maximum;
    }

    /// <summary>A list of parts as an array of one's own, none of them missing.</summary>
    /// <param name="parts">The list, or none.</param>
    /// <param name="name">Of the argument.</param>
    public static IFlowLoss[] Copy(IReadOnlyList<IFlowLoss>? parts, string name)
    {
        IFlowLoss[] copy = [.. parts ?? []];
        foreach (IFlowLoss part in copy)
        {
            ArgumentNullException.ThrowIfNull(part, name);
        }

        return copy;
    }

    // Lines first, which most parts are: a call to a known type costs a tenth of one by the interface.
    private static Real Of(IFlowLoss part, double flow, double density, double kinematicViscosity) =>
        part is Line line
            ? (Real)line.LossPascals(flow, density, kinematicViscosity) + line.ElevationPascals(density)
            : (Real)part.LossPascals(flow, density, kinematicViscosity) + part.ElevationPascals(density);
}
