using FuelSizing.Checks;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing;

/// <summary>How one check came out over everything that is assumed.</summary>
public sealed class MarginRange : IReadable
{
    private readonly bool _isOne;

    private MarginRange(Margin worst, Margin best, bool isOne) => (Worst, Best, _isOne) = (worst, best, isOne);

    /// <summary>What was judged.</summary>
    public Part Part => Worst.Part;

    /// <summary>The margin with the assumed values where they are worst for it.</summary>
    public Margin Worst { get; }

    /// <summary>The margin with the assumed values where they are best for it; the same where nothing is assumed.</summary>
    public Margin Best { get; }

    /// <summary>It holds if it does at worst, fails if it does at best, and else it cannot be said.</summary>
    public Outcome Outcome =>
        Worst.Outcome == Outcome.Holds ? Outcome.Holds
        : Best.Outcome == Outcome.Fails ? Outcome.Fails
        : Outcome.CannotSay;

    /// <inheritdoc/>
    public string In(TextStyle style) => _isOne
        ? Worst.In(style)
        : Statement.Of("check.margin-range", $"{Part.Name}: at worst {Worst.Finding}; at best {Best.Finding}").In(style);

    /// <summary>The margin, or both.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <summary>One check over the same system solved with several values for what is assumed.</summary>
    internal static MarginRange Over(IReadOnlyList<OperatingResult> results, int check) => new(
        results.Select(result => result.Margins[check]).MinBy(margin => margin, Urgency.Order)!,
        results.Select(result => result.Margins[check]).MaxBy(margin => margin, Urgency.Order)!,
        results.Count == 1);
}
