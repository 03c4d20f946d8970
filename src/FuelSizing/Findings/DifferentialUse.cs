using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Pressure across the injectors: rail gauge + ambient − manifold absolute.</summary>
public sealed record DifferentialUse
{
    internal DifferentialUse(Pressure minimum, RunPlace minimumPlace, Pressure maximum, RunPlace maximumPlace) =>
        (Minimum, MinimumPlace, Maximum, MaximumPlace) = (minimum, minimumPlace, maximum, maximumPlace);

    /// <summary>The lowest.</summary>
    public Pressure Minimum { get; }

    /// <summary>Where it was.</summary>
    public RunPlace MinimumPlace { get; }

    /// <summary>The highest.</summary>
    public Pressure Maximum { get; }

    /// <summary>Where it was.</summary>
    public RunPlace MaximumPlace { get; }

    /// <summary>In words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"{Readable.Of(Minimum)} at {MinimumPlace} to {Readable.Of(Maximum)} at {MaximumPlace} across the injectors";
}
