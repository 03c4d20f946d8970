using System.Text.Json.Serialization;
using FuelSizing.Checks;
using FuelSizing.Findings;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Data;

/// <summary>The answer to "is it all adequate?".</summary>
public sealed record VerdictData : DataRecord
{
    /// <summary>Holds, holds as far as judged, fails, or cannot be said.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>One sentence.</summary>
    public required StatementData Headline { get; init; }

    /// <summary>One reason for each check, the most urgent first.</summary>
    public required DataList<ReasonData> Reasons { get; init; }

    /// <summary>What no check judged, waived or not.</summary>
    public required DataList<NotJudgedData> NotJudged { get; init; }

    private protected override string InOneLine => Headline.Text;

    internal static VerdictData Of(Verdict verdict) => new()
    {
        Outcome = verdict.Outcome,
        Headline = StatementData.Of(verdict.Headline),
        Reasons = [.. verdict.Reasons.Select(ReasonData.Of)],
        NotJudged = NotJudgedData.OfAll(verdict.NotJudged),
    };
}

/// <summary>One reason of a verdict: how a check came out over a range, one thing that a run is judged by, or a statement.</summary>
public sealed record ReasonData : DataRecord
{
    /// <summary>In words.</summary>
    public required string Text { get; init; }

    /// <summary>Of a sweep.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public StandingData? Standing { get; init; }

    /// <summary>Of a recorded run.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public JudgementData? Judgement { get; init; }

    /// <summary>Of a ranking.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public StatementData? Statement { get; init; }

    private protected override string InOneLine => Text;

    internal static ReasonData Of(IReadable reason) => new()
    {
        Text = reason.In(TextStyle.Metric),
        Standing = reason is PartStanding standing ? StandingData.Of(standing) : null,
        Judgement = reason is RunJudgement judgement ? JudgementData.Of(judgement) : null,
        Statement = reason is Statement statement ? StatementData.Of(statement) : null,
    };
}

/// <summary>How one check came out over a whole sweep.</summary>
public sealed record StandingData : DataRecord
{
    /// <summary>The worst outcome anywhere in the range.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>True where it comes so near to its limit that it cannot be said whether it keeps it everywhere in the range.</summary>
    public required bool IsOpen { get; init; }

    /// <summary>How it came out where its margin is tightest.</summary>
    public required CheckData Tightest { get; init; }

    /// <summary>Where that is.</summary>
    public required PointData TightestAt { get; init; }

    /// <summary>The lowest boost, or along a line the lowest speed, at which the limit is reached; none if it never is.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public PointData? LimitReachedAt { get; init; }

    private protected override string InOneLine => $"{Tightest} at {TightestAt}";

    internal static StandingData Of(PartStanding standing) => new()
    {
        Outcome = standing.Outcome,
        IsOpen = standing.IsOpen,
        Tightest = CheckData.Of(standing.Tightest.Margin),
        TightestAt = PointData.Of(standing.Tightest.Point),
        LimitReachedAt = standing.LimitReachedAt is { } limit ? PointData.Of(limit) : null,
    };
}

/// <summary>One thing that a recorded run is judged by.</summary>
public sealed record JudgementData : DataRecord
{
    /// <summary>Code of what was judged.</summary>
    public required string Part { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Holds, fails or cannot say, of what rows and columns cover.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>What was found.</summary>
    public required StatementData Finding { get; init; }

    /// <summary>What of it the run does not cover; none where it was judged throughout.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public StatementData? Gap { get; init; }

    private protected override string InOneLine => $"{Name}: {Finding.Text}";

    internal static JudgementData Of(RunJudgement judgement) => new()
    {
        Part = judgement.Part.Code,
        Name = judgement.Part.Name,
        Outcome = judgement.Outcome,
        Finding = StatementData.Of(judgement.Text),
        Gap = StatementData.OfAny(judgement.Gap),
    };
}
