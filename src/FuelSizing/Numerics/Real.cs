using System.Globalization;
using System.Runtime.CompilerServices;

namespace FuelSizing.Numerics;

/// <summary>One double-precision number, on which an equation is evaluated: <c>InjectorFlow.Static&lt;Real&gt;(…)</c>.</summary>
/// <param name="Value">The number, in the SI unit that the equation names.</param>
/// <remarks>A <see cref="double"/> becomes one by itself, and it becomes a <see cref="double"/> by itself.</remarks>
public readonly record struct Real(double Value) : ILanes<Real>
{
    /// <inheritdoc/>
    static int ILanes<Real>.Count => 1;

    /// <summary>A plain number.</summary>
    /// <param name="value">In the SI unit that the equation names.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Real(double value) => new(value);

    /// <summary>The plain number.</summary>
    /// <param name="number">The result of an equation.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator double(Real number) => number.Value;

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator +(Real left, Real right) => new(left.Value + right.Value);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator -(Real left, Real right) => new(left.Value - right.Value);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator *(Real left, Real right) => new(left.Value * right.Value);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator /(Real left, Real right) => new(left.Value / right.Value);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Divide(Real left, Real right, Real reciprocal) => new(left.Value / right.Value);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real MultiplyAdd(Real left, Real right, Real addend) =>
        new(Math.FusedMultiplyAdd(left.Value, right.Value, addend.Value));

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Sqrt(Real value) => new(Math.Sqrt(value.Value));

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Exp(Real value) => new(Math.Exp(value.Value));

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Log(Real value) => new(Math.Log(value.Value));

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Power(Real left, Real right) => new(Math.Exp(right.Value * Math.Log(left.Value)));

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Min(Real left, Real right) => new(Math.Min(left.Value, right.Value));

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Max(Real left, Real right) => new(Math.Max(left.Value, right.Value));

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real IfLess(Real left, Real right, Real whereLess, Real otherwise) =>
        left.Value < right.Value ? whereLess : otherwise;

    /// <summary>The number in digits, the same in every culture.</summary>
    /// <returns>As many figures as tell it from every other number.</returns>
    public override string ToString() => Value.ToString(CultureInfo.InvariantCulture);

    // What only batches need of it, a vector of one, is no part of its public face.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static Real ILanes<Real>.From(ReadOnlySpan<double> numbers) => new(numbers[0]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    void ILanes<Real>.CopyTo(Span<double> numbers) => numbers[0] = Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static bool ILanes<Real>.AllWithin(Real values, Real minimum, Real maximum) =>
        values.Value >= minimum.Value && values.Value <= maximum.Value;

    static Real ILanes<Real>.Rank(ReadOnlySpan<double> rising, Real value)
    {
        long rank = 0;
        while (rank < rising.Length && value.Value >= rising[(int)rank])
        {
            rank++;
        }

        return new(BitConverter.Int64BitsToDouble(rank));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static Real ILanes<Real>.Pick(ref readonly double column, Real rank, bool few) => new(PickOne(in column, rank.Value));

    /// <summary>The number of a column whose place stands in the last bits of another.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double PickOne(ref readonly double column, double rank) =>
        Unsafe.Add(ref Unsafe.AsRef(in column), (int)BitConverter.DoubleToInt64Bits(rank));

    static Real ILanes<Real>.TimesTwoTo(Real value, Real power) =>
        new(BitConverter.Int64BitsToDouble(
            BitConverter.DoubleToInt64Bits(value.Value) + (BitConverter.DoubleToInt64Bits(power.Value) << 52)));

    static Real ILanes<Real>.Fraction(Real value, out Real power)
    {
        int exponent = Math.ILogB(value.Value * Math.Sqrt(2));
        power = exponent;
        return new(Math.ScaleB(value.Value, -exponent));
    }
}
