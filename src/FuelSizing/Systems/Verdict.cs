using FuelSizing.Checks;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>How one check came out over a whole sweep.</summary>
public sealed class PartStanding : IReadable
{
    internal PartStanding(Limit tightest, OperatingPoint? limitReachedAt, bool isOpen)
    {
        (Tightest, LimitReachedAt) = (tightest, limitReachedAt);
        IsOpen = isOpen && tightest.Margin.Outcome == Outcome.Holds;
    }

    /// <summary>What was judged.</summary>
    public Part Part => Tightest.Part;

    /// <summary>The worst outcome anywhere in the range.</summary>
    public Outcome Outcome => IsOpen ? Outcome.CannotSay : Tightest.Margin.Outcome;

    /// <summary>Where its margin is tightest: at one of the sweep's points, or at one between them.</summary>
    public Limit Tightest { get; }

    /// <summary>True where it comes so near to its limit that it cannot be said whether it keeps it everywhere in the range.</summary>
    public bool IsOpen { get; }

    /// <summary>
    /// The lowest boost at which the limit is reached, and at which speed, between the sweep's points too; none if it never is.
    /// </summary>
    public OperatingPoint? LimitReachedAt { get; }

    /// <summary>What would remedy a check that fails; none if there is none to name.</summary>
    /// <param name="results">Every point that was solved.</param>
    internal Remedy? RemedyAmong(IReadOnlyList<OperatingResult> results) => Tightest.Margin.Check.RemedyFor(new(
        [.. results.SelectMany(result => result.States)],
        [.. results.SelectMany(result => result.States).Where(state => state.FailsBy(Part))]));

    /// <inheritdoc/>
    public string In(TextStyle style) => IsOpen
        ? Statement.Of("standing.too-near", $"{Tightest}: too near to its limit to be sure of it between the points").In(style)
        : Tightest.In(style);

    /// <summary>The tightest margin, and where; that it is too near to its limit, where it is.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}

/// <summary>The answer to "is it all adequate?".</summary>
public sealed class Verdict : IReadable
{
    internal Verdict(Outcome outcome, Statement headline, IReadOnlyList<IReadable> reasons, IReadOnlyList<NotJudged>? notJudged = null) =>
        (Outcome, Headline, Reasons, NotJudged) = (outcome, headline, [.. reasons], notJudged ?? []);

    /// <summary>Holds, holds as far as judged, fails, or cannot be said.</summary>
    public Outcome Outcome { get; }

    /// <summary>One sentence, as a code with its figures.</summary>
    public Statement Headline { get; }

    /// <summary>One line for each check, the most urgent first.</summary>
    public IReadOnlyList<IReadable> Reasons { get; }

    /// <summary>What no check judged, waived or not; the headline names what is not waived.</summary>
    public IReadOnlyList<NotJudged> NotJudged { get; }

    /// <summary>The verdict over a sweep.</summary>
    /// <param name="system">That was swept.</param>
    /// <param name="standings">The most urgent first.</param>
    /// <param name="speeds">That were solved.</param>
    /// <param name="boosts">That were solved.</param>
    /// <param name="last">The last boost that was asked for, where the sweep was stopped before it.</param>
    internal static Verdict Of(
        FuelSystem system,
        IReadOnlyList<PartStanding> standings,
        IReadOnlyList<RotationalSpeed> speeds,
        IReadOnlyList<Pressure> boosts,
        Pressure? last)
    {
        Outcome outcome = Worst(system, standings);
        if (last is { } wanted && Urgency.IsHolding(outcome))
        {
            return new(
                Outcome.CannotSay,
                Statement.Of(
                    "verdict.stopped", $"Stopped at {boosts[^1]:boost}, before {wanted:boost} was reached: holds so far."),
                standings,
                system.NotJudged);
        }

        return Over(
            Statement.Of("verdict.range", $"{boosts[0]:boost} to {boosts[^1]:boost}, {speeds[0]} to {speeds[^1]}"), outcome, system, standings);
    }

    /// <summary>The verdict along a boost line.</summary>
    /// <param name="system">That was swept.</param>
    /// <param name="standings">The most urgent first.</param>
    /// <param name="slowest">Where the sweep begins.</param>
    /// <param name="fastest">Where it ends.</param>
    internal static Verdict Along(FuelSystem system, IReadOnlyList<PartStanding> standings, OperatingPoint slowest, OperatingPoint fastest) => Over(
        Statement.Of("verdict.line", $"the boost line from {slowest} to {fastest}"), Worst(system, standings), system, standings);

    private static Outcome Worst(FuelSystem system, IReadOnlyList<PartStanding> standings) =>
        system.Whole(standings.Select(standing => standing.Outcome).Aggregate(Urgency.Worse));

    private static Verdict Over(Statement range, Outcome outcome, FuelSystem system, IReadOnlyList<PartStanding> standings)
    {
        PartStanding first = standings[0];
        Statement headline = outcome switch
        {
            Outcome.Fails => Statement.Of(
                "verdict.fails",
                $"Does not hold: first limit reached: {first.Part.Name}, at {first.LimitReachedAt!.Boost:boost} and {first.LimitReachedAt.Speed}."),
            Outcome.CannotSay when standings.FirstOrDefault(standing => standing.Tightest.Margin.Outcome == Outcome.CannotSay) is null =>
                Statement.Of(
                    "verdict.too-near",
                    $"Cannot be judged over {range}: so near to its limit that it is not known to keep it between the points: {standings.First(standing => standing.IsOpen).Tightest}."),
            Outcome.CannotSay => Statement.Of(
                "verdict.cannot-say",
                $"Cannot be judged over {range}: {standings.First(standing => standing.Tightest.Margin.Outcome == Outcome.CannotSay).Tightest}."),
            Outcome.HoldsAsFarAsJudged => Statement.Of(
                "verdict.holds-as-far-as-judged",
                $"Holds as far as judged over {range}: tightest margin: {first.Part.Name}, {first.Tightest.Margin.Reserve ?? Ratio.Zero:change}. Not judged: {Open(system.NotJudged):;}."),
            _ => Statement.Of(
                "verdict.holds",
                $"Holds over {range}: tightest margin: {first.Part.Name}, {first.Tightest.Margin.Reserve ?? Ratio.Zero:change}."),
        };
        return new(outcome, headline, standings, system.NotJudged);
    }

    /// <summary>The names of what is neither judged nor waived; the reasons stand in the list.</summary>
    internal static IReadOnlyList<IReadable> Open(IReadOnlyList<NotJudged> notJudged) =>
        [.. notJudged.Where(open => open.Waiver is null).Select(open => Statement.Of("not-judged.part", $"{open.Part.Name}"))];

    /// <inheritdoc/>
    public string In(TextStyle style) => Headline.In(style);

    /// <summary>The headline.</summary>
    /// <returns>One sentence.</returns>
    public override string ToString() => Headline.ToString();
}
