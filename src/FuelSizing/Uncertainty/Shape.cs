using FuelSizing.Equations;
using MathNet.Numerics.Distributions;

namespace FuelSizing.Uncertainty;

/// <summary>A distribution in plain numbers, by the inverse of its cumulative probability.</summary>
internal abstract record Shape
{
    /// <summary>The value under which a share of all values lies.</summary>
    /// <param name="probability">Over 0 and under 1.</param>
    public abstract double ValueAt(double probability);
}

/// <summary>One value.</summary>
internal sealed record FixedShape(double Value) : Shape
{
    public override double ValueAt(double probability) => Value;
}

/// <summary>All values between the ends alike.</summary>
internal sealed record UniformShape(double Least, double Most) : Shape
{
    public override double ValueAt(double probability) => ContinuousUniform.InvCDF(Least, Most, probability);
}

/// <summary>Likeliest at the mode.</summary>
internal sealed record TriangularShape(double Least, double Mode, double Most) : Shape
{
    public override double ValueAt(double probability) => Triangular.InvCDF(Least, Most, Mode, probability);
}

/// <summary>A normal, cut off at the ends.</summary>
internal sealed record NormalShape : Shape
{
    private readonly double _below;
    private readonly double _belowMost;

    public NormalShape(double mean, double deviation, double least, double most)
    {
        (Mean, Deviation, Least, Most) = (mean, deviation, least, most);
        _below = Normal.CDF(mean, deviation, least);
        _belowMost = Normal.CDF(mean, deviation, most);
    }

    public double Mean { get; }

    public double Deviation { get; }

    public double Least { get; }

    public double Most { get; }

    public override double ValueAt(double probability) =>
        Math.Clamp(
            Normal.InvCDF(Mean, Deviation, TruncatedProbability.OfWhole<Real>(_below, _belowMost, probability)),
            Least,
            Most);
}
