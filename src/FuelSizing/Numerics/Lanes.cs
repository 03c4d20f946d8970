using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace FuelSizing.Numerics;

/// <summary>Eight double-precision numbers in the lanes of a register, in which batches evaluate the same equations.</summary>
/// <param name="Values">The numbers, in SI units.</param>
/// <remarks>
/// Where the processor has no 512-bit registers the runtime splits each operation; the results do not change, but
/// <see cref="FourLanes"/> or <see cref="TwoLanes"/> are faster there.
/// </remarks>
internal readonly record struct Lanes(Vector512<double> Values) : ILanes<Lanes>
{
    /// <inheritdoc/>
    public static int Count => Vector512<double>.Count;

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes From(ReadOnlySpan<double> numbers) => new(Vector512.Create(numbers));

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void CopyTo(Span<double> numbers) => Values.CopyTo(numbers);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Lanes(double value) => new(Vector512.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator +(Lanes left, Lanes right) => new(left.Values + right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator -(Lanes left, Lanes right) => new(left.Values - right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator *(Lanes left, Lanes right) => new(left.Values * right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator /(Lanes left, Lanes right) => new(left.Values / right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Divide(Lanes left, Lanes right, Lanes reciprocal) => new(left.Values * reciprocal.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Sqrt(Lanes value) => new(Vector512.Sqrt(value.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Min(Lanes left, Lanes right) =>
        Avx512F.IsSupported ? new(Avx512F.Min(left.Values, right.Values))
        : IfLess(left, right, left, right);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Max(Lanes left, Lanes right) =>
        Avx512F.IsSupported ? new(Avx512F.Max(left.Values, right.Values))
        : IfLess(right, left, left, right);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes IfLess(Lanes left, Lanes right, Lanes whereLess, Lanes otherwise) =>
        new(Vector512.ConditionalSelect(Vector512.LessThan(left.Values, right.Values), whereLess.Values, otherwise.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllWithin(Lanes values, Lanes minimum, Lanes maximum) =>
        Vector512.GreaterThanOrEqualAll(values.Values, minimum.Values)
        && Vector512.LessThanOrEqualAll(values.Values, maximum.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes MultiplyAdd(Lanes left, Lanes right, Lanes addend) =>
        Avx512F.IsSupported ? new(Avx512F.FusedMultiplyAdd(left.Values, right.Values, addend.Values)) : ByHalves(left, right, addend);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Rank(ReadOnlySpan<double> rising, Lanes value)
    {
        Vector512<long> rank = Vector512<long>.Zero;
        Vector512<long> one = Vector512<long>.One;
        foreach (double number in rising)
        {
            rank = Vector512.ConditionalSelect(
                Vector512.GreaterThanOrEqual(value.Values, Vector512.Create(number)).AsInt64(), rank + one, rank);
        }

        return new(rank.AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Pick(ref readonly double column, Lanes rank, bool few)
    {
        if (!Avx512F.IsSupported)
        {
            return new(Vector512.Create(
                FourLanes.Pick(in column, new(rank.Values.GetLower()), few).Values,
                FourLanes.Pick(in column, new(rank.Values.GetUpper()), few).Values));
        }

        Vector512<double> first = Vector512.LoadUnsafe(in column);
        return new(few
            ? Avx512F.PermuteVar8x64(first, rank.Values.AsInt64())
            : Avx512F.PermuteVar8x64x2(
                first, rank.Values.AsInt64(), Vector512.LoadUnsafe(in column, (nuint)Vector512<double>.Count)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes TimesTwoTo(Lanes value, Lanes power) =>
        new((value.Values.AsInt64() + (power.Values.AsInt64() << 52)).AsDouble());

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Fraction(Lanes value, out Lanes power)
    {
        // The bits of √½, less which the exponent's bits say by how much to divide.
        const long Minimum = 0x3fe6a09e00000000;
        const long Exponent = unchecked((long)0xfff0000000000000);
        Vector512<long> bits = value.Values.AsInt64();
        Vector512<long> over = bits - Vector512.Create(Minimum);
        power = new(Vector512.ConvertToDouble(over >> 52));
        return new((bits - (over & Vector512.Create(Exponent))).AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Exp(Lanes value) => Elementary.Exp(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Log(Lanes value) => Elementary.Log(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Power(Lanes left, Lanes right) => Elementary.Power(left, right);

    // Apart from what is inlined, of which the compiler takes only so much.
    private static Lanes ByHalves(Lanes left, Lanes right, Lanes addend) =>
        new(Vector512.Create(
            FourLanes.MultiplyAdd(new(left.Values.GetLower()), new(right.Values.GetLower()), new(addend.Values.GetLower())).Values,
            FourLanes.MultiplyAdd(new(left.Values.GetUpper()), new(right.Values.GetUpper()), new(addend.Values.GetUpper())).Values));
}
