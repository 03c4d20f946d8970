using System.Collections.Immutable;
using FuelSizing.Checks;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>A fuel system over a grid of speed and boost: the first limit reached, and where.</summary>
public sealed class SweepResult : IReadable
{
    private readonly Lazy<IReadOnlyList<Remedy>> _remedies;
    private readonly Pressure? _stoppedBefore;

    internal SweepResult(
        FuelSystem system,
        ImmutableArray<RotationalSpeed> speeds,
        ImmutableArray<Pressure> boosts,
        SolvedGrid results,
        PartStanding[] standings,
        Verdict verdict,
        Func<IReadOnlyList<Remedy>> remedies,
        int pointsSolved,
        Pressure? stoppedBefore)
    {
        (System, Speeds, Boosts, Results) = (system, speeds, boosts, results);
        (Standings, Verdict) = (Array.AsReadOnly(standings), verdict);
        _remedies = new(remedies);
        PointsSolved = pointsSolved;
        _stoppedBefore = stoppedBefore;
    }

    /// <summary>The system that was swept.</summary>
    public FuelSystem System { get; }

    /// <summary>The speeds, rising.</summary>
    public IReadOnlyList<RotationalSpeed> Speeds { get; }

    /// <summary>The boosts, rising; of those asked for the first so many, where the sweep was stopped.</summary>
    public IReadOnlyList<Pressure> Boosts { get; }

    /// <summary>
    /// How many points were solved: those of <see cref="Results"/>, and those between them at which the verdict, the tightest margins and the
    /// first limit reached were looked for.
    /// </summary>
    public int PointsSolved { get; }

    /// <summary>All results, boost by boost, in each the speeds in order.</summary>
    /// <remarks>The sweep judges in numbers alone: a result is written out when it is first asked for, with the figures that the sweep has judged.</remarks>
    public IReadOnlyList<OperatingResult> Results { get; }

    /// <summary>
    /// False if the sweep was stopped: it then has fewer boosts than were asked for, or not every remedy, and its verdict is
    /// never that all holds unless every boost was solved.
    /// </summary>
    public bool IsComplete => _stoppedBefore is null;

    /// <summary>How each check came out, the first limit reached before the others.</summary>
    public IReadOnlyList<PartStanding> Standings { get; }

    /// <summary>The limiting component: the first limit reached; if none is, the tightest margin.</summary>
    public PartStanding Limiting => Standings[0];

    /// <summary>The answer in words.</summary>
    public Verdict Verdict { get; }

    /// <summary>What would remedy each failing check; empty if none fails, and not all if the sweep was stopped.</summary>
    /// <remarks>Worked out from every point that was looked at, when they are first asked for.</remarks>
    public IReadOnlyList<Remedy> Remedies => _remedies.Value;

    /// <summary>What a careful reader should know about these numbers, each subject once, at its worst.</summary>
    public IReadOnlyList<Statement> Notes =>
    [
        .. _stoppedBefore is { } last
            ? new[]
            {
                Statement.Of(
                    "sweep.stopped",
                    $"The sweep was stopped at {Boosts[^1]:boost} of {last:boost}; what comes after is not in it."),
            }
            : [],
        .. ResultNotes.NeverActs(System.Regulator, Boosts) is { } idle ? new[] { idle } : [],
        .. Results
            .SelectMany(result => ResultNotes.Of(result))
            .GroupBy(note => note.Subject)
            .Select(notes => notes.MaxBy(note => note.Weight)!.Text),
    ];

    /// <summary>The result at a speed and boost by their places in the lists.</summary>
    /// <param name="speed">Place in <see cref="Speeds"/>, from 0.</param>
    /// <param name="boost">Place in <see cref="Boosts"/>, from 0.</param>
    /// <returns>The result.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A place is outside its list.</exception>
    public OperatingResult At(int speed, int boost) =>
        Results[
            (Guard.Count(boost, 0, Boosts.Count - 1, "Count places from 0.", nameof(boost)) * Speeds.Count)
            + Guard.Count(speed, 0, Speeds.Count - 1, "Count places from 0.", nameof(speed))];

    /// <inheritdoc/>
    public string In(TextStyle style) => Verdict.In(style);

    /// <summary>The verdict's headline.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
