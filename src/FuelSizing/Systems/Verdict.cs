namespace FuelSizing.Systems;

/// <summary>The answer to "does it all keep up?".</summary>
public sealed record Verdict
{
    internal Verdict(Outcome outcome, string headline, IReadOnlyList<string> reasons) =>
        (Outcome, Headline, Reasons) = (outcome, headline, [.. reasons]);

    /// <summary>Holds, fails, or cannot be said.</summary>
    public Outcome Outcome { get; }

    /// <summary>One sentence.</summary>
    public string Headline { get; }

    /// <summary>One line for each part, the most urgent first.</summary>
    public IReadOnlyList<string> Reasons { get; }

    /// <summary>The headline.</summary>
    /// <returns>One sentence.</returns>
    public override string ToString() => Headline;
}
