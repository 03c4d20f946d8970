using FuelSizing.Checks;

namespace FuelSizing.Interactive;

/// <summary>What is drawn for a part, each by its own symbol.</summary>
internal enum DiagramSymbol
{
    Place,
    Tank,
    Line,
    Filter,
    Pump,
    Feed,
    Converter,
    CheckValve,
    Rail,
    Injectors,
    Regulator,
    PumpController,
    SurgeTank,
}

/// <summary>One part or place of a drawn system: what is written beside its symbol, and what is said of it in words.</summary>
/// <param name="Symbol">Its symbol.</param>
/// <param name="Name">Its name.</param>
/// <param name="Lines">What is written under its name.</param>
/// <param name="State">All that is said of it, for its title and the text in the order of flow.</param>
internal sealed record DiagramPart(DiagramSymbol Symbol, string Name, IReadOnlyList<string> Lines, string State)
{
    /// <summary>Checks that fail, cannot be judged, or are the limiting one, of this part.</summary>
    public IReadOnlyList<DiagramMark> Marks { get; init; } = [];

    /// <summary>What a pressure line leads to its spring from, for instance <c>manifold, 0.60 bar</c>; none without such a line.</summary>
    public string? Reference { get; init; }

    /// <summary>How many are drawn side by side.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Name, state and marks.</summary>
    public string Title => string.Join("; ", [State.Length > 0 ? $"{Name}: {State}" : Name, .. Marks.Select(mark => mark.Words)]);

    /// <summary>The worst of its marks; none where it has none.</summary>
    public DiagramMark? Worst => Marks.MaxBy(mark => mark.Rank);
}

/// <summary>A check that stands out, marked at the part that it judges.</summary>
/// <param name="Outcome">How it came out.</param>
/// <param name="Short">What is written at the part.</param>
/// <param name="Words">The whole finding.</param>
internal sealed record DiagramMark(Outcome Outcome, string Short, string Words)
{
    /// <summary>The higher the worse.</summary>
    public int Rank => Outcome switch
    {
        Outcome.Fails => 2,
        Outcome.CannotSay => 1,
        _ => 0,
    };
}
