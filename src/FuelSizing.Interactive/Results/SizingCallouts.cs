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
        return Remedies(sweep.Remedies, sweep.Notes, "Nothing fails in this range.", style ?? Units.Current);
    }

    /// <summary>Required changes of the components that fail along a boost line, and notes on the numbers.</summary>
    /// <param name="pull">The pull.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>A table, a line a remedy or note.</returns>
    /// <exception cref="ArgumentNullException">There is no pull.</exception>
    public static Table Remedies(LineSweepResult pull, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(pull);
        return Remedies(pull.Remedies, pull.Notes, "Nothing fails along this line.", style ?? Units.Current);
    }

    private static Table Remedies(IReadOnlyList<Remedy> remedies, IReadOnlyList<Statement> notes, string none, TextStyle style) => new(
        "Required changes",
        [TableColumn.Text("For"), TableColumn.Text("Change")],
        [
            .. remedies.Count > 0
                ? remedies.Select(remedy => (IReadOnlyList<string>)[remedy.Part.Name, PartText.Say(remedy.Text, style)])
                : [["–", none]],
            .. notes.Select(note => (IReadOnlyList<string>)["note", PartText.Say(note, style)]),
        ]);

    /// <summary>The cautions that go with every result.</summary>
    /// <returns>The callout.</returns>
    public static Callout Cautions() => Callout.Caution("Before you trust these numbers with an engine", [.. FuelSizing.Cautions.Lines]);
}
