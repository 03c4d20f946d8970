using FuelSizing.Checks;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>How likely one part keeps its limit, and by how much.</summary>
public sealed record PartChance : IReadable
{
    internal PartChance(Part part, Chance chance, OutputSpread<Ratio> reserve) =>
        (Part, Chance, Reserve) = (part, chance, reserve);

    /// <summary>Which part.</summary>
    public Part Part { get; }

    /// <summary>How likely it holds.</summary>
    public Chance Chance { get; }

    /// <summary>Its reserve (<see cref="Margin.Reserve"/>) over the samples that have one.</summary>
    public OutputSpread<Ratio> Reserve { get; }

    /// <summary>Part and finding.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => $"{Part.Name}: {Chance.In(style)}";
}
