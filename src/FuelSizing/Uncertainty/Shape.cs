using FuelSizing.Quantities;
using MathNet.Numerics.Distributions;

namespace FuelSizing.Uncertainty;

/// <summary>A distribution in plain numbers, by the inverse of its cumulative probability.</summary>
/// <param name="Minimum">The lowest value.</param>
/// <param name="Maximum">The highest value.</param>
internal abstract record Shape(double Minimum, double Maximum)
{
    /// <summary>The value under which a share of all values lies.</summary>
    /// <param name="probability">Over 0 and under 1.</param>
    public double ValueAt(double probability) =>
        // Rounding must not lead past an end, for beyond it a part may not exist.
        Math.Clamp(Inverse(probability), Minimum, Maximum);

    private protected abstract double Inverse(double probability);
}

/// <summary>One value.</summary>
internal sealed record FixedShape(double Value) : Shape(Value, Value)
{
    private static readonly Identity<FixedShape> _identity = new Identity<FixedShape>()
        .Number(shape => shape.Value);

    private protected override double Inverse(double probability) => Value;

    /// <inheritdoc/>
    public bool Equals(FixedShape? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);
}

/// <summary>All values between the ends alike.</summary>
internal sealed record UniformShape(double Minimum, double Maximum) : Shape(Minimum, Maximum)
{
    private static readonly Identity<UniformShape> _identity = new Identity<UniformShape>()
        .Number(shape => shape.Minimum)
        .Number(shape => shape.Maximum);

    private protected override double Inverse(double probability) => ContinuousUniform.InvCDF(Minimum, Maximum, probability);

    /// <inheritdoc/>
    public bool Equals(UniformShape? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);
}

/// <summary>Likeliest at the mode.</summary>
internal sealed record TriangularShape(double Minimum, double Mode, double Maximum) : Shape(Minimum, Maximum)
{
    private static readonly Identity<TriangularShape> _identity = new Identity<TriangularShape>()
        .Number(shape => shape.Minimum)
        .Number(shape => shape.Mode)
        .Number(shape => shape.Maximum);

    private protected override double Inverse(double probability) => Triangular.InvCDF(Minimum, Maximum, Mode, probability);

    /// <inheritdoc/>
    public bool Equals(TriangularShape? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);
}

/// <summary>A normal, cut off at the ends.</summary>
internal sealed record NormalShape : Shape
{
    private static readonly Identity<NormalShape> _identity = new Identity<NormalShape>()
        .Number(shape => shape.Mean)
        .Number(shape => shape.Deviation)
        .Number(shape => shape.Minimum)
        .Number(shape => shape.Maximum);

    private readonly double _below;
    private readonly double _belowMaximum;

    public NormalShape(double mean, double deviation, double minimum, double maximum)
        : base(minimum, maximum)
    {
        (Mean, Deviation) = (mean, deviation);
        _below = Normal.CDF(mean, deviation, minimum);
        _belowMaximum = Normal.CDF(mean, deviation, maximum);
    }

    public double Mean { get; }

    public double Deviation { get; }

    /// <inheritdoc/>
    public bool Equals(NormalShape? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    private protected override double Inverse(double probability) =>
        Normal.InvCDF(Mean, Deviation, OfWhole(_below, _belowMaximum, probability));

    /// <summary>
    /// Probability under the whole distribution that belongs to one under the stretch between two bounds: F(a) + p (F(b) − F(a)),
    /// F the cumulative probability of the whole.
    /// </summary>
    /// <param name="below">F(a), at the lower bound.</param>
    /// <param name="belowMaximum">F(b), at the upper bound.</param>
    /// <param name="probability">p, 0 to 1.</param>
    internal static double OfWhole(double below, double belowMaximum, double probability) =>
        below + (probability * (belowMaximum - below));
}
