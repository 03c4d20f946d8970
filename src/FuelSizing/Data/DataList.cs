using System.Collections;
using System.Runtime.CompilerServices;

namespace FuelSizing.Data;

/// <summary>A list that never changes, and is equal to another that holds the same.</summary>
/// <typeparam name="T">What it holds.</typeparam>
[CollectionBuilder(typeof(DataList), nameof(DataList.Of))]
public sealed class DataList<T> : IReadOnlyList<T>, IEquatable<DataList<T>>
{
    private readonly T[] _items;

    internal DataList(T[] items) => _items = items;

    /// <inheritdoc/>
    public int Count => _items.Length;

    /// <inheritdoc/>
    public T this[int index] => _items[index];

    /// <summary>True if both hold the same in the same order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(DataList<T>? other) => other is not null && _items.SequenceEqual(other._items);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as DataList<T>);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = default;
        foreach (T item in _items)
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)_items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>How many it holds.</summary>
    /// <returns>For instance <c>entries: 3</c>.</returns>
    public override string ToString() => FormattableString.Invariant($"entries: {Count}");
}

/// <summary>Makes lists of data.</summary>
public static class DataList
{
    /// <summary>A list; the compiler calls it for <c>[one, another]</c>.</summary>
    /// <typeparam name="T">What it holds.</typeparam>
    /// <param name="items">What to hold, which is copied.</param>
    /// <returns>The list.</returns>
    public static DataList<T> Of<T>(ReadOnlySpan<T> items) => new(items.ToArray());
}
