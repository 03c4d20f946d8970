using FuelSizing.Checks;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>The library's verdicts, remedies and cautions as callouts.</summary>
public static class SizingCallouts
{
    /// <summary>A verdict, with a line for each part.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <returns>A callout that holds, fails or cannot say.</returns>
    /// <exception cref="ArgumentNullException">There is no verdict.</exception>
    public static Callout Verdict(Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        return new Callout(
            verdict.Outcome switch
            {
                Outcome.Holds => CalloutKind.Holds,
                Outcome.Fails => CalloutKind.Fails,
                _ => CalloutKind.CannotSay,
            },
            verdict.Headline.ToString(),
            [.. verdict.Reasons.Select(reason => reason.ToString()!)]);
    }

    /// <summary>Required changes of the failing components, and notes on the numbers.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <returns>A table, a line a remedy or note.</returns>
    /// <exception cref="ArgumentNullException">There is no sweep.</exception>
    public static Table Remedies(SweepResult sweep)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        IEnumerable<IReadOnlyList<string>> changes = sweep.Remedies.Count > 0
            ? sweep.Remedies.Select(remedy => (IReadOnlyList<string>)[remedy.Part.Name, remedy.ToString()])
            : [["–", "Nothing fails in this range."]];
        return new Table(
            "Required changes",
            [TableColumn.Text("For"), TableColumn.Text("Change")],
            [.. changes, .. sweep.Notes.Select(note => (IReadOnlyList<string>)["note", note.ToString()])]);
    }

    /// <summary>The cautions that go with every result.</summary>
    /// <returns>The callout.</returns>
    public static Callout Cautions() => Callout.Caution("Before you trust these numbers with an engine", [.. FuelSizing.Cautions.Lines]);
}
