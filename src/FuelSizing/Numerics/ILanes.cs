namespace FuelSizing.Numerics;

/// <summary>Numbers in the lanes of a register, as many as a register of the processor holds: what a loop over spans needs beside arithmetic.</summary>
/// <typeparam name="T">The numbers themselves.</typeparam>
internal interface ILanes<T> : IReal<T>
    where T : struct, ILanes<T>
{
    /// <summary>How many numbers there are.</summary>
    static abstract int Count { get; }

    /// <summary>Reads them from the start of a span.</summary>
    static abstract T From(ReadOnlySpan<double> numbers);

    /// <summary>Writes them to the start of a span.</summary>
    void CopyTo(Span<double> numbers);

    /// <summary>True if every number lies within a closed range; one that is not a number never does.</summary>
    static abstract bool AllWithin(T values, T minimum, T maximum);

    /// <summary>How many of some rising numbers each has reached; the last bits of the answer hold it.</summary>
    /// <param name="rising">At most 15.</param>
    /// <param name="value">Numbers.</param>
    static abstract T Rank(ReadOnlySpan<double> rising, T value);

    /// <summary>For each lane its own number of a column. Nothing is checked.</summary>
    /// <param name="column">The first of 16 numbers.</param>
    /// <param name="rank">From <see cref="Rank"/>.</param>
    /// <param name="few">True where no rank is over 7.</param>
    static abstract T Pick(ref readonly double column, T rank, bool few);

    /// <summary>Times two to a whole power, which stands in the last bits of another number.</summary>
    /// <param name="value">Normal, and so the product.</param>
    /// <param name="power">Its last bits hold the power.</param>
    static abstract T TimesTwoTo(T value, T power);

    /// <summary>The number as a fraction of √½ to √2 times two to a whole power.</summary>
    /// <param name="value">Normal, over zero.</param>
    /// <param name="power">The power.</param>
    static abstract T Fraction(T value, out T power);
}
