using System.Runtime.CompilerServices;

namespace FuelSizing.Numerics;

/// <summary>
/// A number that others are divided by again and again. Numbers in vector registers are multiplied by its reciprocal, which is
/// several times as fast and half an ulp worse; one number is divided.
/// </summary>
/// <typeparam name="T">The number itself.</typeparam>
/// <remarks>A number becomes one by itself, so that an equation is called with plain numbers.</remarks>
public readonly record struct Divisor<T>
    where T : struct, IReal<T>
{
    private readonly T _reciprocal;

    /// <summary>Prepares a number.</summary>
    /// <param name="value">The number.</param>
    public Divisor(T value)
        : this(value, (T)1 / value)
    {
    }

    /// <summary>Takes a number whose reciprocal is known.</summary>
    /// <param name="value">The number.</param>
    /// <param name="reciprocal">1 ÷ value.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Divisor(T value, T reciprocal) => (Value, _reciprocal) = (value, reciprocal);

    /// <summary>The number.</summary>
    public T Value { get; }

    /// <summary>Prepares a number.</summary>
    /// <param name="value">The number.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Divisor<T>(T value) => new(value);

    /// <summary>Prepares a plain number.</summary>
    /// <param name="value">The number.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Divisor<T>(double value) => new(value);

    /// <summary>Quotient.</summary>
    /// <param name="left">Dividend.</param>
    /// <param name="right">Divisor.</param>
    /// <returns>left ÷ right.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T operator /(T left, Divisor<T> right) => T.Divide(left, right.Value, right._reciprocal);
}
