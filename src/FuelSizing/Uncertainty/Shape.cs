using FuelSizing.Equations;
using MathNet.Numerics.Distributions;

namespace FuelSizing.Uncertainty;

/// <summary>A distribution in plain numbers, by the inverse of its cumulative probability.</summary>
/// <param name="Least">The lowest value.</param>
/// <param name="Most">The highest value.</param>
internal abstract record Shape(double Least, double Most)
{
    /// <summary>The value under which a share of all values lies.</summary>
    /// <param name="probability">Over 0 and under 1.</param>
    public double ValueAt(double probability) =>
        // Rounding must not lead past an end, for beyond it a part may not exist.
        Math.Clamp(Inverse(probability), Least, Most);

    private protected abstract double Inverse(double probability);
}

/// <summary>One value.</summary>
internal sealed record FixedShape(double Value) : Shape(Value, Value)
{
    private protected override double Inverse(double probability) => Value;
}

/// <summary>All values between the ends alike.</summary>
internal sealed record UniformShape(double Least, double Most) : Shape(Least, Most)
{
    private protected override double Inverse(double probability) => ContinuousUniform.InvCDF(Least, Most, probability);
}

/// <summary>Likeliest at the mode.</summary>
internal sealed record TriangularShape(double Least, double Mode, double Most) : Shape(Least, Most)
{
    private protected override double Inverse(double probability) => Triangular.InvCDF(Least, Most, Mode, probability);
}

/// <summary>A normal, cut off at the ends.</summary>
internal sealed record NormalShape : Shape
{
    private readonly double _below;
    private readonly double _belowMost;

    public NormalShape(double mean, double deviation, double least, double most)
        : base(least, most)
    {
        (Mean, Deviation) = (mean, deviation);
        _below = Normal.CDF(mean, deviation, least);
        _belowMost = Normal.CDF(mean, deviation, most);
    }

    public double Mean { get; }

    public double Deviation { get; }

    private protected override double Inverse(double probability) =>
        Normal.InvCDF(Mean, Deviation, TruncatedProbability.OfWhole<Real>(_below, _belowMost, probability));
}
