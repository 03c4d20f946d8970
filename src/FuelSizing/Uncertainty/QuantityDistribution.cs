using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>What is known of a quantity: its ends and how likely the values between them are.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public sealed record Distribution<T>
    where T : struct, IQuantity, IComparable<T>
{
    internal Distribution(T least, T most, Func<double, double, Shape> shape)
    {
        (Least, Most) = (least, most);
        Shape = shape(Distribution.InBaseUnit(least), Distribution.InBaseUnit(most));
    }

    internal Distribution(T least, T most, Func<double, Shape> shape)
        : this(least, most, (value, _) => shape(value))
    {
    }

    /// <summary>The lowest value there may be.</summary>
    public T Least { get; }

    /// <summary>The highest value there may be.</summary>
    public T Most { get; }

    /// <summary>Likelihood between the ends, in the quantity's base unit, which is SI for every quantity used here.</summary>
    internal Shape Shape { get; }
}
