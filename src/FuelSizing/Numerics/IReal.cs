namespace FuelSizing.Numerics;

/// <summary>
/// The arithmetic that every equation of the library is written in: one text serves a single number
/// (<see cref="Real"/>), batches of numbers in vector registers, and numbers that write their own working.
/// </summary>
/// <typeparam name="T">The number itself: a value type, so that the compiler makes one fast version for each.</typeparam>
/// <remarks>
/// Branches are written with <see cref="IfLess"/>, since the lanes of a batch may disagree about a condition.
/// </remarks>
public interface IReal<T>
    where T : struct, IReal<T>
{
    /// <summary>A plain number, the same in every lane.</summary>
    /// <param name="value">The number.</param>
    /// <returns>The result.</returns>
    static abstract implicit operator T(double value);

    /// <summary>Sum.</summary>
    /// <param name="left">First number.</param>
    /// <param name="right">Second number.</param>
    /// <returns>The result.</returns>
    static abstract T operator +(T left, T right);

    /// <summary>Difference.</summary>
    /// <param name="left">First number.</param>
    /// <param name="right">Second number.</param>
    /// <returns>The result.</returns>
    static abstract T operator -(T left, T right);

    /// <summary>Product.</summary>
    /// <param name="left">First number.</param>
    /// <param name="right">Second number.</param>
    /// <returns>The result.</returns>
    static abstract T operator *(T left, T right);

    /// <summary>Quotient.</summary>
    /// <param name="left">First number.</param>
    /// <param name="right">Second number.</param>
    /// <returns>The result.</returns>
    static abstract T operator /(T left, T right);

    /// <summary>Quotient, where the divisor's reciprocal is at hand.</summary>
    /// <param name="left">First number.</param>
    /// <param name="right">Second number.</param>
    /// <param name="reciprocal">1 ÷ <paramref name="right"/>.</param>
    /// <returns>The result.</returns>
    static abstract T Divide(T left, T right, T reciprocal);

    /// <summary>left · right + addend, rounded once.</summary>
    /// <param name="left">First number.</param>
    /// <param name="right">Second number.</param>
    /// <param name="addend">Added to the product.</param>
    /// <returns>The result.</returns>
    static abstract T MultiplyAdd(T left, T right, T addend);

    /// <summary>Square root.</summary>
    /// <param name="value">The number.</param>
    /// <returns>The result.</returns>
    static abstract T Sqrt(T value);

    /// <summary>Natural exponential.</summary>
    /// <param name="value">The number.</param>
    /// <returns>The result.</returns>
    static abstract T Exp(T value);

    /// <summary>Natural logarithm.</summary>
    /// <param name="value">The number.</param>
    /// <returns>The result.</returns>
    static abstract T Log(T value);

    /// <summary>left^right, for left above zero.</summary>
    /// <param name="left">First number.</param>
    /// <param name="right">Second number.</param>
    /// <returns>The result.</returns>
    static abstract T Power(T left, T right);

    /// <summary>The smaller of two; the right one where it is not a number.</summary>
    /// <param name="left">First number.</param>
    /// <param name="right">Second number.</param>
    /// <returns>The result.</returns>
    static abstract T Min(T left, T right);

    /// <summary>The larger of two; the right one where it is not a number.</summary>
    /// <param name="left">First number.</param>
    /// <param name="right">Second number.</param>
    /// <returns>The result.</returns>
    static abstract T Max(T left, T right);

    /// <summary>In each lane: <paramref name="whereLess"/> where left is less than right, else <paramref name="otherwise"/>.</summary>
    /// <param name="left">First number.</param>
    /// <param name="right">Second number.</param>
    /// <param name="whereLess">Result where left is less.</param>
    /// <param name="otherwise">Result elsewhere.</param>
    /// <returns>The result.</returns>
    static abstract T IfLess(T left, T right, T whereLess, T otherwise);
}
