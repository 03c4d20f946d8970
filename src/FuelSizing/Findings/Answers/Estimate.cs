namespace FuelSizing.Findings;

/// <summary>A figure worked out from a run, with the range that holds the truth in 95 of 100 runs.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public sealed record Estimate<T>
    where T : struct
{
    internal Estimate(T value, T minimum, T maximum) => (Value, Minimum, Maximum) = (value, minimum, maximum);

    /// <summary>The likeliest value.</summary>
    public T Value { get; }

    /// <summary>Lower end of the 95 % range.</summary>
    public T Minimum { get; }

    /// <summary>Upper end of the 95 % range.</summary>
    public T Maximum { get; }

    /// <summary>Value and its 95 % range.</summary>
    /// <returns>For instance <c>0.92 (0.9 to 0.94)</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Value} ({Minimum} to {Maximum})");
}
