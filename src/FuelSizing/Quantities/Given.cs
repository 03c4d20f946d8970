namespace FuelSizing.Quantities;

/// <summary>How a value was given, kept with it so that it can be written down as it was; no part of what it is.</summary>
/// <remarks>Any two are equal: records that hold the same figures stay equal, however they were given.</remarks>
internal readonly struct Given<T>(T value) : IEquatable<Given<T>>
{
    /// <summary>As it was given.</summary>
    public T Value { get; } = value;

    /// <inheritdoc/>
    public bool Equals(Given<T> other) => true;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Given<T>;

    /// <inheritdoc/>
    public override int GetHashCode() => 0;
}
