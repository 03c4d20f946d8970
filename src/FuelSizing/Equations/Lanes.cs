using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace FuelSizing.Equations;

/// <summary>Eight double-precision numbers side by side, in which batches evaluate the same equations.</summary>
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
    public static Lanes Min(Lanes left, Lanes right) => new(Vector512.Min(left.Values, right.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Max(Lanes left, Lanes right) => new(Vector512.Max(left.Values, right.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes IfLess(Lanes left, Lanes right, Lanes then, Lanes otherwise) =>
        new(Vector512.ConditionalSelect(Vector512.LessThan(left.Values, right.Values), then.Values, otherwise.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllWithin(Lanes values, Lanes least, Lanes most) =>
        Vector512.GreaterThanOrEqualAll(values.Values, least.Values)
        && Vector512.LessThanOrEqualAll(values.Values, most.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes TimesTwoTo(Lanes value, Lanes power) =>
        new((value.Values.AsInt64() + (power.Values.AsInt64() << 52)).AsDouble());

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Fraction(Lanes value, out Lanes power)
    {
        // The bits of √½, less which the exponent's bits say by how much to divide.
        const long Least = 0x3fe6a09e00000000;
        const long Exponent = unchecked((long)0xfff0000000000000);
        Vector512<long> bits = value.Values.AsInt64();
        Vector512<long> over = bits - Vector512.Create(Least);
        power = new(Vector512.ConvertToDouble(over >> 52));
        return new((bits - (over & Vector512.Create(Exponent))).AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Exp(Lanes value) => Elementary.Exp(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Log(Lanes value) => Elementary.Log(value);
}
