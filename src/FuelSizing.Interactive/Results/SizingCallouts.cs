using FuelSizing.Checks;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>The library's verdicts, remedies and cautions as callouts.</summary>
public static class SizingCallouts
{
    /// <summary>A verdict, with a line for each part.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>A callout that holds, fails or cannot say.</returns>
    /// <exception cref="ArgumentNullException">There is no verdict.</exception>
    public static Callout Verdict(Verdict verdict, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        style ??= Units.Current;
        return new Callout(
            verdict.Outcome switch
            {
                Outcome.Holds => CalloutKind.Holds,
                Outcome.HoldsAsFarAsJudged => CalloutKind.HoldsAsFarAsJudged,
                Outcome.Fails => CalloutKind.Fails,
                _ => CalloutKind.CannotSay,
            },
            PartText.Say(verdict.Headline, style),
            [.. verdict.Reasons.Select(reason => PartText.Say(reason, style)), .. verdict.NotJudged.Select(open => $"Not judged: {PartText.Say(open, style)}.")]);
    }

    /// <summary>Required changes of the failing components, and notes on the numbers.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>A table, a line a remedy or note.</returns>
    /// <exception cref="ArgumentNullException">There is no sweep.</exception>
    public static Table Remedies(SweepResult sweep, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        style ??= Units.Current;
        IEnumerable<IReadOnlyList<string>> changes = sweep.Remedies.Count > 0
            ? sweep.Remedies.Select(remedy => (IReadOnlyList<string>)[remedy.Part.Name, PartText.Say(remedy.Text, style)])
            : [["–", "Nothing fails in this range."]];
        return new Table(
            "Required changes",
            [TableColumn.Text("For"), TableColumn.Text("Change")],
            [.. changes, .. sweep.Notes.Select(note => (IReadOnlyList<string>)["note", PartText.Say(note, style)])]);
    }

    /// <summary>The cautions that go with every result.</summary>
    /// <returns>The callout.</returns>
    public static Callout Cautions() => Callout.Caution("Before you trust these numbers with an engine", [.. FuelSizing.Cautions.Lines]);
}
