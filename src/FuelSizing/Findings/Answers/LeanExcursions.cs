using FuelSizing.Quantities;

namespace FuelSizing.Findings;

/// <summary>Every lean stretch on boost, and what counts as one.</summary>
public sealed record LeanExcursions : IReadable
{
    internal LeanExcursions(double limit, IReadOnlyList<LeanExcursion> stretches) => (Limit, Stretches) = (limit, [.. stretches]);

    /// <summary>Lambda over which a row on boost is lean: the planned one and an allowance of 6 %.</summary>
    public double Limit { get; }

    /// <summary>In the order of the run; none where the mixture was as planned.</summary>
    public IReadOnlyList<LeanExcursion> Stretches { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Stretches.Count == 0
        ? Statement.Of("run.never-lean", $"no lean stretch on boost")
        : Statement.Of("run.lean", $"{Stretches:;}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
