using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>What is known of a quantity: its ends and how likely the values between them are.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public sealed record Distribution<T>
    where T : struct, IQuantity, IComparable<T>
{
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

    /// <summary>Likelihood between the ends, in the quantity's base unit, which is SI for every quantity used here.</summary>
    internal Shape Shape { get; }
}
