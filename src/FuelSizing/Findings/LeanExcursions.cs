using FuelSizing.Checks;

namespace FuelSizing.Findings;

/// <summary>Every lean stretch on boost, and what counts as one.</summary>
public sealed record LeanExcursions
{
    internal LeanExcursions(double limit, IReadOnlyList<LeanExcursion> stretches) => (Limit, Stretches) = (limit, [.. stretches]);

    /// <summary>Lambda over which a row on boost is lean: the planned one and an allowance of 6 %.</summary>
    public double Limit { get; }

    /// <summary>In the order of the run; none where the mixture was as planned.</summary>
    public IReadOnlyList<LeanExcursion> Stretches { get; }

    /// <summary>In words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Stretches.Count == 0
        ? "no lean stretch on boost"
        : string.Join("; ", Stretches);
}
