using System.Collections;
using FuelSizing.Points;

namespace FuelSizing.Systems;

/// <summary>Results of places that were judged in numbers, each solved in full when somebody asks for it, once, on any thread.</summary>
/// <param name="count">How many.</param>
/// <param name="solve">Solves one of them, by its place; what it gives is the same whoever asks, and when.</param>
internal sealed class SolvedGrid(int count, Func<int, OperatingResult> solve) : IReadOnlyList<OperatingResult>
{
    private OperatingResult?[]? _solved;

    /// <inheritdoc/>
    public int Count => count;

    /// <inheritdoc/>
    public OperatingResult this[int index]
    {
        get
        {
            OperatingResult?[] solved = Volatile.Read(ref _solved) ?? SolvedPoint.Once(ref _solved, new OperatingResult?[count]);
            return Volatile.Read(ref solved[index]) ?? SolvedPoint.Once(ref solved[index], solve(index));
        }
    }

    /// <summary>The first so many of them.</summary>
    public SolvedGrid First(int some) => some == Count ? this : new(some, solve);

    /// <inheritdoc/>
    public IEnumerator<OperatingResult> GetEnumerator()
    {
        for (int at = 0; at < Count; at++)
        {
            yield return this[at];
        }
    }

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
