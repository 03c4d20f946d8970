using FuelSizing.Numerics;

namespace FuelSizing.Quantities;

/// <summary>What makes two descriptions the same: the values that a description lists, each with its rule.</summary>
/// <remarks>
/// Numbers are listed in SI and compared as <see cref="Significant"/> says. What follows from the listed values (a curve's
/// pieces, results that are stored, delegates) and how a value was given (<see cref="Given{T}"/>) is not listed and takes no
/// part. Built once for a type, in a static field; a comparison allocates nothing.
/// </remarks>
/// <typeparam name="T">The description.</typeparam>
internal sealed class Identity<T>
    where T : class
{
    private readonly List<(Func<T, T, bool> Same, Func<T, int> Hash)> _values = [];

    /// <summary>Lists a number in SI.</summary>
    public Identity<T> Number(Func<T, double> value) => With(
        (one, other) => Significant.Same(value(one), value(other)),
        of => Significant.Hash(value(of)));

    /// <summary>Lists a number in SI that may be missing.</summary>
    public Identity<T> Number(Func<T, double?> value) => With(
        (one, other) => value(one) is { } first && value(other) is { } second
            ? Significant.Same(first, second)
            : value(one) is null && value(other) is null,
        of => value(of) is { } number ? Significant.Hash(number) : 0);

    /// <summary>Lists numbers in SI, in their order.</summary>
    public Identity<T> Numbers(Func<T, double[]> values) => With(
        (one, other) => Significant.Same(values(one), values(other)),
        of => Significant.Hash(values(of)));

    /// <summary>Lists what is equal by itself: a name, a count, a choice, a curve, another description.</summary>
    public Identity<T> Value<TValue>(Func<T, TValue> value) => With(
        (one, other) => EqualityComparer<TValue>.Default.Equals(value(one), value(other)),
        of => value(of) is { } present ? EqualityComparer<TValue>.Default.GetHashCode(present) : 0);

    /// <summary>Lists descriptions, in their order.</summary>
    public Identity<T> List<TItem>(Func<T, IReadOnlyList<TItem>> list) => With(
        (one, other) => Same(list(one), list(other)),
        of => Hash(list(of)));

    /// <summary>True if both list the same values.</summary>
    public bool Same(T one, T? other)
    {
        if (ReferenceEquals(one, other))
        {
            return true;
        }

        if (other is null)
        {
            return false;
        }

        foreach ((Func<T, T, bool> same, _) in _values)
        {
            if (!same(one, other))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The same for all descriptions that list the same values.</summary>
    public int HashOf(T description)
    {
        HashCode hash = default;
        foreach ((_, Func<T, int> of) in _values)
        {
            hash.Add(of(description));
        }

        return hash.ToHashCode();
    }

    private static bool Same<TItem>(IReadOnlyList<TItem> one, IReadOnlyList<TItem> other)
    {
        if (one.Count != other.Count)
        {
            return false;
        }

        for (int at = 0; at < one.Count; at++)
        {
            if (!EqualityComparer<TItem>.Default.Equals(one[at], other[at]))
            {
                return false;
            }
        }

        return true;
    }

    private static int Hash<TItem>(IReadOnlyList<TItem> list)
    {
        HashCode hash = default;
        for (int at = 0; at < list.Count; at++)
        {
            hash.Add(list[at]);
        }

        return hash.ToHashCode();
    }

    private Identity<T> With(Func<T, T, bool> same, Func<T, int> hash)
    {
        _values.Add((same, hash));
        return this;
    }
}

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
