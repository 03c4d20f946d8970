using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Volumetric efficiency that fuel and lambda imply, against the planned.</summary>
public sealed record VolumetricEfficiencyFound
{
    internal VolumetricEfficiencyFound(
        Estimate<Ratio> factor, IReadOnlyList<(RotationalSpeed Speed, Ratio Efficiency)> bySpeed) =>
        (Factor, BySpeed) = (factor, [.. bySpeed]);

    /// <summary>Implied ÷ planned; the range is the run's scatter, not the injectors' or the lambda sensor's own error.</summary>
    public Estimate<Ratio> Factor { get; }

    /// <summary>Implied, by speed.</summary>
    public IReadOnlyList<(RotationalSpeed Speed, Ratio Efficiency)> BySpeed { get; }

    /// <summary>In words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"volumetric efficiency {Readable.Chance(Factor.Value)} of the planned ({Readable.Chance(Factor.Minimum)} to {Readable.Chance(Factor.Maximum)})";
}
