using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.Arm;
using System.Runtime.Intrinsics.X86;

namespace FuelSizing.Numerics;

/// <summary>Two double-precision numbers in the lanes of a register, in which batches evaluate the same equations.</summary>
/// <param name="Values">The numbers, in SI units.</param>
internal readonly record struct TwoLanes(Vector128<double> Values) : ILanes<TwoLanes>
{
    /// <inheritdoc/>
    public static int Count => Vector128<double>.Count;

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes From(ReadOnlySpan<double> numbers) => new(Vector128.Create(numbers));

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void CopyTo(Span<double> numbers) => Values.CopyTo(numbers);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator TwoLanes(double value) => new(Vector128.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes operator +(TwoLanes left, TwoLanes right) => new(left.Values + right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes operator -(TwoLanes left, TwoLanes right) => new(left.Values - right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes operator *(TwoLanes left, TwoLanes right) => new(left.Values * right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes operator /(TwoLanes left, TwoLanes right) => new(left.Values / right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Divide(TwoLanes left, TwoLanes right, TwoLanes reciprocal) => new(left.Values * reciprocal.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Sqrt(TwoLanes value) => new(Vector128.Sqrt(value.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Min(TwoLanes left, TwoLanes right) =>
        Sse2.IsSupported ? new(Sse2.Min(left.Values, right.Values))
        : IfLess(left, right, left, right);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Max(TwoLanes left, TwoLanes right) =>
        Sse2.IsSupported ? new(Sse2.Max(left.Values, right.Values))
        : IfLess(right, left, left, right);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes IfLess(TwoLanes left, TwoLanes right, TwoLanes whereLess, TwoLanes otherwise) =>
        new(Vector128.ConditionalSelect(Vector128.LessThan(left.Values, right.Values), whereLess.Values, otherwise.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllWithin(TwoLanes values, TwoLanes minimum, TwoLanes maximum) =>
        Vector128.GreaterThanOrEqualAll(values.Values, minimum.Values)
        && Vector128.LessThanOrEqualAll(values.Values, maximum.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes MultiplyAdd(TwoLanes left, TwoLanes right, TwoLanes addend) =>
        Fma.IsSupported ? new(Fma.MultiplyAdd(left.Values, right.Values, addend.Values))
        : AdvSimd.Arm64.IsSupported ? new(AdvSimd.Arm64.FusedMultiplyAdd(addend.Values, left.Values, right.Values))
        : ByHalves(left, right, addend);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Rank(ReadOnlySpan<double> rising, TwoLanes value)
    {
        Vector128<long> rank = Vector128<long>.Zero;
        Vector128<long> one = Vector128<long>.One;
        foreach (double number in rising)
        {
            rank = Vector128.ConditionalSelect(
                Vector128.GreaterThanOrEqual(value.Values, Vector128.Create(number)).AsInt64(), rank + one, rank);
        }

        return new(rank.AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Pick(ref readonly double column, TwoLanes rank, bool few)
    {
        Vector128<long> at = rank.Values.AsInt64();
        return new(Vector128.Create(
            Real.PickOne(in column, BitConverter.Int64BitsToDouble(at[0])),
            Real.PickOne(in column, BitConverter.Int64BitsToDouble(at[1]))));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes TimesTwoTo(TwoLanes value, TwoLanes power) =>
        new((value.Values.AsInt64() + (power.Values.AsInt64() << 52)).AsDouble());

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Fraction(TwoLanes value, out TwoLanes power)
    {
        // The bits of √½, less which the exponent's bits say by how much to divide.
        const long Minimum = 0x3fe6a09e00000000;
        const long Exponent = unchecked((long)0xfff0000000000000);
        Vector128<long> bits = value.Values.AsInt64();
        Vector128<long> over = bits - Vector128.Create(Minimum);
        power = new(Vector128.ConvertToDouble(over >> 52));
        return new((bits - (over & Vector128.Create(Exponent))).AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Exp(TwoLanes value) => Elementary.Exp(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Log(TwoLanes value) => Elementary.Log(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Power(TwoLanes left, TwoLanes right) => Elementary.Power(left, right);

    // Apart from what is inlined, of which the compiler takes only so much.
    private static TwoLanes ByHalves(TwoLanes left, TwoLanes right, TwoLanes addend) =>
        new(Vector128.Create(
            Math.FusedMultiplyAdd(left.Values[0], right.Values[0], addend.Values[0]),
            Math.FusedMultiplyAdd(left.Values[1], right.Values[1], addend.Values[1])));
}
