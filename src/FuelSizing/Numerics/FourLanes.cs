using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace FuelSizing.Numerics;

/// <summary>Four double-precision numbers in the lanes of a register, in which batches evaluate the same equations.</summary>
/// <param name="Values">The numbers, in SI units.</param>
internal readonly record struct FourLanes(Vector256<double> Values) : ILanes<FourLanes>
{
    /// <inheritdoc/>
    public static int Count => Vector256<double>.Count;

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes From(ReadOnlySpan<double> numbers) => new(Vector256.Create(numbers));

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void CopyTo(Span<double> numbers) => Values.CopyTo(numbers);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator FourLanes(double value) => new(Vector256.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator +(FourLanes left, FourLanes right) => new(left.Values + right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator -(FourLanes left, FourLanes right) => new(left.Values - right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator *(FourLanes left, FourLanes right) => new(left.Values * right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator /(FourLanes left, FourLanes right) => new(left.Values / right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Divide(FourLanes left, FourLanes right, FourLanes reciprocal) => new(left.Values * reciprocal.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Sqrt(FourLanes value) => new(Vector256.Sqrt(value.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Min(FourLanes left, FourLanes right) =>
        Avx.IsSupported ? new(Avx.Min(left.Values, right.Values))
        : IfLess(left, right, left, right);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Max(FourLanes left, FourLanes right) =>
        Avx.IsSupported ? new(Avx.Max(left.Values, right.Values))
        : IfLess(right, left, left, right);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes IfLess(FourLanes left, FourLanes right, FourLanes whereLess, FourLanes otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.LessThan(left.Values, right.Values), whereLess.Values, otherwise.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllWithin(FourLanes values, FourLanes minimum, FourLanes maximum) =>
        Vector256.GreaterThanOrEqualAll(values.Values, minimum.Values)
        && Vector256.LessThanOrEqualAll(values.Values, maximum.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes MultiplyAdd(FourLanes left, FourLanes right, FourLanes addend) =>
        Fma.IsSupported ? new(Fma.MultiplyAdd(left.Values, right.Values, addend.Values)) : ByHalves(left, right, addend);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Rank(ReadOnlySpan<double> rising, FourLanes value)
    {
        Vector256<long> rank = Vector256<long>.Zero;
        Vector256<long> one = Vector256<long>.One;
        foreach (double number in rising)
        {
            rank = Vector256.ConditionalSelect(
                Vector256.GreaterThanOrEqual(value.Values, Vector256.Create(number)).AsInt64(), rank + one, rank);
        }

        return new(rank.AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Pick(ref readonly double column, FourLanes rank, bool few) =>
        new(Vector256.Create(
            TwoLanes.Pick(in column, new(rank.Values.GetLower()), few).Values,
            TwoLanes.Pick(in column, new(rank.Values.GetUpper()), few).Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes TimesTwoTo(FourLanes value, FourLanes power) =>
        new((value.Values.AsInt64() + (power.Values.AsInt64() << 52)).AsDouble());

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Fraction(FourLanes value, out FourLanes power)
    {
        // The bits of √½, less which the exponent's bits say by how much to divide.
        const long Minimum = 0x3fe6a09e00000000;
        const long Exponent = unchecked((long)0xfff0000000000000);
        Vector256<long> bits = value.Values.AsInt64();
        Vector256<long> over = bits - Vector256.Create(Minimum);
        power = new(Vector256.ConvertToDouble(over >> 52));
        return new((bits - (over & Vector256.Create(Exponent))).AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Exp(FourLanes value) => Elementary.Exp(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Log(FourLanes value) => Elementary.Log(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Power(FourLanes left, FourLanes right) => Elementary.Power(left, right);

    // Apart from what is inlined, of which the compiler takes only so much.
    private static FourLanes ByHalves(FourLanes left, FourLanes right, FourLanes addend) =>
        new(Vector256.Create(
            TwoLanes.MultiplyAdd(new(left.Values.GetLower()), new(right.Values.GetLower()), new(addend.Values.GetLower())).Values,
            TwoLanes.MultiplyAdd(new(left.Values.GetUpper()), new(right.Values.GetUpper()), new(addend.Values.GetUpper())).Values));
}
