using FuelSizing.Quantities;

namespace FuelSizing.Selection;

/// <summary>A candidate that fits no combination, and why.</summary>
public sealed class LeftOut : IReadable
{
    internal LeftOut(string name, Statement reason) => (Name, Reason) = (name, reason);

    /// <summary>The candidate.</summary>
    public string Name { get; }

    /// <summary>Why it does not fit.</summary>
    public Statement Reason { get; }

    /// <summary>Candidate and reason, as a code with its arguments.</summary>
    public Statement Text => Statement.Of("ranking.left-out", $"{Name}: {Reason}");

    /// <summary>Candidate and reason.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);
}
