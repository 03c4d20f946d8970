using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Pressure across the injectors: rail gauge + ambient − manifold absolute.</summary>
public sealed record DifferentialUse : IReadable
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

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Statement.Of(
        "run.differential", $"{Minimum} at {MinimumPlace} to {Maximum} at {MaximumPlace} across the injectors");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
