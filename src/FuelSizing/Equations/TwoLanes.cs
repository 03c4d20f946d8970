using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace FuelSizing.Equations;

/// <summary>Two double-precision numbers side by side, in which batches evaluate the same equations.</summary>
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
    public static TwoLanes Sqrt(TwoLanes value) => new(Vector128.Sqrt(value.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Min(TwoLanes left, TwoLanes right) => new(Vector128.Min(left.Values, right.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Max(TwoLanes left, TwoLanes right) => new(Vector128.Max(left.Values, right.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes IfLess(TwoLanes left, TwoLanes right, TwoLanes then, TwoLanes otherwise) =>
        new(Vector128.ConditionalSelect(Vector128.LessThan(left.Values, right.Values), then.Values, otherwise.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllWithin(TwoLanes values, TwoLanes least, TwoLanes most) =>
        Vector128.GreaterThanOrEqualAll(values.Values, least.Values)
        && Vector128.LessThanOrEqualAll(values.Values, most.Values);

#if NET9_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Exp(TwoLanes value) => new(Vector128.Exp(value.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Log(TwoLanes value) => new(Vector128.Log(value.Values));
#else
    public static TwoLanes Exp(TwoLanes value) => Each(value, Math.Exp);

    public static TwoLanes Log(TwoLanes value) => Each(value, Math.Log);

    private static TwoLanes Each(TwoLanes value, Func<double, double> function)
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
