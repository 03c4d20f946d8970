namespace FuelSizing.Findings;

/// <summary>Fuel by several methods.</summary>
public sealed record FuelBalance
{
    internal FuelBalance(IReadOnlyList<FuelComparison> comparisons) => Comparisons = [.. comparisons];

    /// <summary>Each other estimate relative to the injectors'.</summary>
    public IReadOnlyList<FuelComparison> Comparisons { get; }

    /// <summary>In words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => string.Join("; ", Comparisons);
}
