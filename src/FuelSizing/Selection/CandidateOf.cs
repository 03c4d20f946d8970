using FuelSizing.Quantities;

namespace FuelSizing.Selection;

/// <summary>A part that may be chosen, with what it costs.</summary>
/// <typeparam name="T">The part: an injector, a pump or pumps, a regulator.</typeparam>
public sealed record Candidate<T>
    where T : notnull
{
    private static readonly Identity<Candidate<T>> _identity = new Identity<Candidate<T>>()
        .Value(candidate => candidate.Name)
        .Value(candidate => candidate.Part)
        .Value(candidate => candidate.Cost)
        .Value(candidate => candidate.LeftOut);

    internal Candidate(string name, T part, decimal? cost, Statement? leftOut) => (Name, Part, Cost, LeftOut) = (name, part, cost, leftOut);

    /// <summary>The name shown in rankings.</summary>
    public string Name { get; }

    /// <summary>The part.</summary>
    public T Part { get; }

    /// <summary>What one of it costs, in the reader's own money; none if it is not known.</summary>
    public decimal? Cost { get; }

    /// <summary>
    /// Why it cannot be chosen, and is in the list only to be named: a pump that was to be wired and has no current in its curves, for instance.
    /// None where it can. A ranking leaves it out, with this reason.
    /// </summary>
    public Statement? LeftOut { get; }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Candidate<T>? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name and cost.</summary>
    /// <returns>For instance <c>injector B, cost 42.5</c>.</returns>
    public override string ToString() =>
        Cost is { } cost ? FormattableString.Invariant($"{Name}, cost {cost}") : Name;
}
