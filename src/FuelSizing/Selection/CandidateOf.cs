using FuelSizing.Checks;

namespace FuelSizing.Selection;

/// <summary>A part that may be chosen, with what it costs.</summary>
/// <typeparam name="T">The part: an injector, a pump or pumps, a regulator.</typeparam>
public sealed record Candidate<T>
    where T : notnull
{
    internal Candidate(string name, T part, decimal? cost) => (Name, Part, Cost) = (name, part, cost);

    /// <summary>The name shown in rankings.</summary>
    public string Name { get; }

    /// <summary>The part.</summary>
    public T Part { get; }

    /// <summary>What one of it costs, in the reader's own money; none if it is not known.</summary>
    public decimal? Cost { get; }
}
