using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Volumetric efficiency that fuel and lambda imply, against the planned.</summary>
public sealed record VolumetricEfficiencyFound : IReadable
{
    internal VolumetricEfficiencyFound(
        Estimate<Ratio> factor, IReadOnlyList<(RotationalSpeed Speed, Ratio Efficiency)> bySpeed) =>
        (Factor, BySpeed) = (factor, [.. bySpeed]);

    /// <summary>Implied ÷ planned; the range is the run's scatter, not the injectors' or the lambda sensor's own error.</summary>
    public Estimate<Ratio> Factor { get; }

    /// <summary>Implied, by speed.</summary>
    public IReadOnlyList<(RotationalSpeed Speed, Ratio Efficiency)> BySpeed { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Statement.Of(
        "run.volumetric-efficiency",
        $"volumetric efficiency {Factor.Value:chance} of the planned ({Factor.Minimum:chance} to {Factor.Maximum:chance})");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
