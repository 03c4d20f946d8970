using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace FuelSizing.Equations;

/// <summary>Four double-precision numbers side by side, in which batches evaluate the same equations.</summary>
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
    public static FourLanes Sqrt(FourLanes value) => new(Vector256.Sqrt(value.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Min(FourLanes left, FourLanes right) => new(Vector256.Min(left.Values, right.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Max(FourLanes left, FourLanes right) => new(Vector256.Max(left.Values, right.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes IfLess(FourLanes left, FourLanes right, FourLanes then, FourLanes otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.LessThan(left.Values, right.Values), then.Values, otherwise.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllWithin(FourLanes values, FourLanes least, FourLanes most) =>
        Vector256.GreaterThanOrEqualAll(values.Values, least.Values)
        && Vector256.LessThanOrEqualAll(values.Values, most.Values);

#if NET9_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Exp(FourLanes value) => new(Vector256.Exp(value.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Log(FourLanes value) => new(Vector256.Log(value.Values));
#else
    public static FourLanes Exp(FourLanes value) => Each(value, Math.Exp);

    public static FourLanes Log(FourLanes value) => Each(value, Math.Log);

    private static FourLanes Each(FourLanes value, Func<double, double> function)
    {
        Span<double> numbers = stackalloc double[Count];
        value.CopyTo(numbers);
        foreach (ref double number in numbers)
        {
            number = function(number);
        }

        return From(numbers);
    }
#endif
}
