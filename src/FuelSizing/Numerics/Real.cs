using System.Runtime.CompilerServices;

namespace FuelSizing.Numerics;

/// <summary>One double-precision number, in which the typed API evaluates the equations.</summary>
/// <param name="Value">The number, in SI units.</param>
internal readonly record struct Real(double Value) : ILanes<Real>
{
    /// <inheritdoc/>
    public static int Count => 1;

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real From(ReadOnlySpan<double> numbers) => new(numbers[0]);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void CopyTo(Span<double> numbers) => numbers[0] = Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllWithin(Real values, Real minimum, Real maximum) =>
        values.Value >= minimum.Value && values.Value <= maximum.Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Real(double value) => new(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator double(Real number) => number.Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator +(Real left, Real right) => new(left.Value + right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator -(Real left, Real right) => new(left.Value - right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator *(Real left, Real right) => new(left.Value * right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator /(Real left, Real right) => new(left.Value / right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Divide(Real left, Real right, Real reciprocal) => new(left.Value / right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Sqrt(Real value) => new(Math.Sqrt(value.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Exp(Real value) => new(Math.Exp(value.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Log(Real value) => new(Math.Log(value.Value));

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Power(Real left, Real right) => new(Math.Exp(right.Value * Math.Log(left.Value)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Min(Real left, Real right) => new(Math.Min(left.Value, right.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Max(Real left, Real right) => new(Math.Max(left.Value, right.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real IfLess(Real left, Real right, Real then, Real otherwise) =>
        left.Value < right.Value ? then : otherwise;

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real MultiplyAdd(Real left, Real right, Real addend) =>
        new(Math.FusedMultiplyAdd(left.Value, right.Value, addend.Value));

    /// <inheritdoc/>
    public static Real Rank(ReadOnlySpan<double> rising, Real value)
    {
        long rank = 0;
        while (rank < rising.Length && value.Value >= rising[(int)rank])
        {
            rank++;
        }

        return new(BitConverter.Int64BitsToDouble(rank));
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Pick(ref readonly double column, Real rank, bool few) =>
        new(Unsafe.Add(ref Unsafe.AsRef(in column), (int)BitConverter.DoubleToInt64Bits(rank.Value)));

    public static Real TimesTwoTo(Real value, Real power) =>
        new(BitConverter.Int64BitsToDouble(
            BitConverter.DoubleToInt64Bits(value.Value) + (BitConverter.DoubleToInt64Bits(power.Value) << 52)));

    public static Real Fraction(Real value, out Real power)
    {
        int exponent = Math.ILogB(value.Value * Math.Sqrt(2));
        power = exponent;
        return new(Math.ScaleB(value.Value, -exponent));
    }
}
