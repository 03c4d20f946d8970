namespace FuelSizing.Numerics;

/// <summary>
/// The arithmetic that every equation of the library is written in: one text serves a single number
/// (<see cref="Real"/>) and a batch of numbers side by side (<see cref="Lanes"/>).
/// </summary>
/// <typeparam name="T">The number itself: a value type, so that the compiler makes one fast version for each.</typeparam>
/// <remarks>
/// Branches are written with <see cref="IfLess"/>, since the lanes of a batch may disagree about a condition.
/// </remarks>
internal interface IReal<T>
    where T : struct, IReal<T>
{
    /// <summary>A plain number, the same in every lane.</summary>
    static abstract implicit operator T(double value);

    /// <summary>Sum.</summary>
    static abstract T operator +(T left, T right);

    /// <summary>Difference.</summary>
    static abstract T operator -(T left, T right);

    /// <summary>Product.</summary>
    static abstract T operator *(T left, T right);

    /// <summary>Quotient.</summary>
    static abstract T operator /(T left, T right);

    /// <summary>Quotient, where the divisor's reciprocal is at hand.</summary>
    static abstract T Divide(T left, T right, T reciprocal);

    /// <summary>left · right + addend, rounded once.</summary>
    static abstract T MultiplyAdd(T left, T right, T addend);

    /// <summary>Square root.</summary>
    static abstract T Sqrt(T value);

    /// <summary>Natural exponential.</summary>
    static abstract T Exp(T value);

    /// <summary>Natural logarithm.</summary>
    static abstract T Log(T value);

    /// <summary>left^right, for left above zero.</summary>
    static abstract T Power(T left, T right);

    /// <summary>The smaller of two; the right one where it is not a number.</summary>
    static abstract T Min(T left, T right);

    /// <summary>The larger of two; the right one where it is not a number.</summary>
    static abstract T Max(T left, T right);

    /// <summary>In each lane: <paramref name="then"/> where left is less than right, else <paramref name="otherwise"/>.</summary>
    static abstract T IfLess(T left, T right, T then, T otherwise);
}
