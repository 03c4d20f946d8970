using FuelSizing.Points;

namespace FuelSizing.Uncertainty;

/// <summary>How lambda scatters at one place of what is judged.</summary>
public sealed record MixtureSpread
{
    internal MixtureSpread(OperatingPoint point, OutputSpread<double> lambda) => (Point, Lambda) = (point, lambda);

    /// <summary>The place, as the nominal system has it: boost and air of a sample may differ.</summary>
    public OperatingPoint Point { get; }

    /// <summary>Lambda of the leanest cylinder over the samples.</summary>
    public OutputSpread<double> Lambda { get; }

    /// <summary>Place and spread.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => FormattableString.Invariant($"lambda at {Point}: {Lambda}");
}
