using FuelSizing.Quantities;

namespace FuelSizing.Findings;

/// <summary>Fuel by several methods.</summary>
public sealed record FuelBalance : IReadable
{
    internal FuelBalance(IReadOnlyList<FuelComparison> comparisons) => Comparisons = [.. comparisons];

    /// <summary>Each other estimate relative to the injectors'.</summary>
    public IReadOnlyList<FuelComparison> Comparisons { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Statement.Of("run.fuel", $"{Comparisons:;}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
