namespace FuelSizing.Selection;

/// <summary>A candidate that fits no combination, and why.</summary>
public sealed class LeftOut
{
    internal LeftOut(string name, string reason) => (Name, Reason) = (name, reason);

    /// <summary>The candidate.</summary>
    public string Name { get; }

    /// <summary>Why it does not fit.</summary>
    public string Reason { get; }

    /// <summary>Candidate and reason.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => $"{Name}: {Reason}";
}
