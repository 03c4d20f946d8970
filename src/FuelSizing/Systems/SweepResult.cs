using System.Collections.Immutable;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>A fuel system over a grid of speed and boost: which part runs out first, and where.</summary>
public sealed class SweepResult
{
    private readonly ImmutableArray<OperatingResult> _results;
    private readonly Pressure _maximumAsked;

    internal SweepResult(
        FuelSystem system,
        ImmutableArray<RotationalSpeed> speeds,
        ImmutableArray<Pressure> boosts,
        ImmutableArray<OperatingResult> results,
        Pressure maximumAsked,
        CancellationToken cancellation)
    {
        (System, Speeds, Boosts, _results, _maximumAsked) = (system, speeds, boosts, results, maximumAsked);
        Standings =
        [
            .. results
                .SelectMany(result => result.Margins, (result, margin) => new Limit(margin, result.Point))
                .GroupBy(limit => limit.Part)
                .Select(part => Stand(part.Key, part))
                .OrderBy(standing => standing.LimitReachedAt?.Boost.Pascals ?? double.PositiveInfinity)
                .ThenBy(standing => standing.Tightest.Margin.Check, TightestFirst.Order),
        ];
        bool isSolved = boosts[^1].Pascals == maximumAsked.Pascals;
        Verdict = Judge(isSolved);
        Remedies = SystemRemedies.For(this, cancellation, out bool areRemediesComplete);
        IsComplete = isSolved && areRemediesComplete;
    }

    /// <summary>The system that was swept.</summary>
    public FuelSystem System { get; }

    /// <summary>The speeds, rising.</summary>
    public IReadOnlyList<RotationalSpeed> Speeds { get; }

    /// <summary>The boosts, rising; of those asked for the first so many, where the sweep was stopped.</summary>
    public IReadOnlyList<Pressure> Boosts { get; }

    /// <summary>All results, boost by boost, in each the speeds in order.</summary>
    public IReadOnlyList<OperatingResult> Results => _results;

    /// <summary>
    /// False if the sweep was stopped: it then has fewer boosts than were asked for, or not every remedy, and its verdict is
    /// never that all holds unless every boost was solved.
    /// </summary>
    public bool IsComplete { get; }

    /// <summary>How each part stands, the one that runs out first before the others.</summary>
    public IReadOnlyList<PartStanding> Standings { get; }

    /// <summary>The part that runs out first; if none does, the one with the least in hand.</summary>
    public PartStanding Limiting => Standings[0];

    /// <summary>The answer in words.</summary>
    public Verdict Verdict { get; }

    /// <summary>What would mend each failing part; empty if none fails, and not all if the sweep was stopped.</summary>
    public IReadOnlyList<Remedy> Remedies { get; }

    /// <summary>What a careful reader should know about these numbers, each subject once, at its worst.</summary>
    public IReadOnlyList<string> Notes =>
    [
        .. IsComplete ? [] : new[] { $"The sweep was stopped at {Readable.Boost(Boosts[^1])} of {Readable.Boost(_maximumAsked)}; what comes after is not in it." },
        .. _results
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
        _results[
            (Guard.Count(boost, 0, Boosts.Count - 1, "Count places from 0.", nameof(boost)) * Speeds.Count)
            + Guard.Count(speed, 0, Speeds.Count - 1, "Count places from 0.", nameof(speed))];

    private PartStanding Stand(Part part, IEnumerable<Limit> limits)
    {
        Limit[] all = [.. limits];
        Limit tightest = Tightest(all);
        Limit[][] rows = [.. all.Chunk(Speeds.Count)];
        int row = Array.FindIndex(rows, limits => limits.Any(Fails));
        if (row < 0)
        {
            return new(tightest, null);
        }

        // Every speed that fails at the first failing boost held at the boost before: the earliest crossing counts.
        Limit[] failing = [.. rows[row].Where(Fails)];
        return new(
            tightest,
            row == 0
                ? Tightest(failing).Point
                : failing.Select(limit => FirstFailing(part, limit.Point, Boosts[row - 1])).MinBy(at => at.Boost.Pascals));
    }

    private static Limit Tightest(Limit[] limits) => limits.MinBy(limit => limit.Margin.Check, TightestFirst.Order)!;

    private static bool Fails(Limit limit) => limit.Margin.Outcome == Outcome.Fails;

    private OperatingPoint FirstFailing(Part part, OperatingPoint failing, Pressure holding)
    {
        OperatingPoint At(double share) => OperatingPoint.At(
            failing.Speed,
            Pressure.FromPascals(
                StraightLine.Through<Real>(0, holding.Pascals, 1, failing.Boost.Pascals, share).Value),
            failing.Conditions);

        // What cannot be said has not failed yet.
        double ReserveOf(double share) => System.Solve(At(share)).Checks.Single(check => check.Part == part).Reserve ?? 1;

        return At(Bracket.Of(ReserveOf, 0, 1));
    }

    private Verdict Judge(bool isSolved)
    {
        PartStanding first = Limiting;
        Outcome outcome = Standings.Max(standing => standing.Outcome);
        if (!isSolved && outcome == Outcome.Holds)
        {
            return new(
                Outcome.CannotSay,
                $"Stopped at {Readable.Boost(Boosts[^1])}, before {Readable.Boost(_maximumAsked)} was reached: keeps up so far.",
                [.. Standings.Select(standing => standing.Tightest.ToString())]);
        }

        string range = $"{Readable.Boost(Boosts[0])} to {Readable.Boost(Boosts[^1])}, {Readable.Of(Speeds[0])} to {Readable.Of(Speeds[^1])}";
        string headline = outcome switch
        {
            Outcome.Fails =>
                $"Does not keep up: {PartNames.FailsFirst(first.Part)}, at {Readable.Boost(first.LimitReachedAt!.Boost)} and {Readable.Of(first.LimitReachedAt.Speed)}.",
            Outcome.CannotSay =>
                $"Cannot be judged over {range}: {Standings.First(s => s.Outcome == Outcome.CannotSay).Tightest}.",
            _ => $"Keeps up over {range}: least in hand is {PartNames.Of(first.Part)}, {Readable.Change(first.Tightest.Margin.Reserve ?? Ratio.Zero)}.",
        };
        return new(outcome, headline, [.. Standings.Select(standing => standing.Tightest.ToString())]);
    }
}
