using System.Globalization;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>What is known of a quantity: its ends and how likely the values between them are.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public sealed record Distribution<T>
    where T : struct, IQuantity, IComparable<T>
{
    private static readonly Identity<Distribution<T>> _identity = new Identity<Distribution<T>>()
        .Value(distribution => distribution.Shape);

    internal Distribution(T minimum, T maximum, Func<double, double, Shape> shape)
    {
        (Minimum, Maximum) = (minimum, maximum);
        Shape = shape(Distribution.InBaseUnit(minimum), Distribution.InBaseUnit(maximum));
    }

    internal Distribution(T minimum, T maximum, Func<double, Shape> shape)
        : this(minimum, maximum, (value, _) => shape(value))
    {
    }

    /// <summary>The lowest value there may be.</summary>
    public T Minimum { get; }

    /// <summary>The highest value there may be.</summary>
    public T Maximum { get; }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Distribution<T>? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Its ends.</summary>
    /// <returns>For instance <c>96 % to 104 %</c>.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Minimum:S6} to {Maximum:S6}");

    /// <summary>Likelihood between the ends, in the quantity's base unit, which is SI for every quantity used here.</summary>
    internal Shape Shape { get; }
}
