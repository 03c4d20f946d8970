using System.Text.Json.Serialization;
using FuelSizing.Checks;
using FuelSizing.Quantities;
using FuelSizing.Selection;

namespace FuelSizing.Data;

/// <summary>Combinations of parts, judged over every stage of a plan, best first.</summary>
public sealed record RankingData : DataRecord
{
    /// <summary>Whether any combination is adequate, with the margins of the first or the reasons of the nearest.</summary>
    public required VerdictData Verdict { get; init; }

    /// <summary>False if the ranking was stopped before all combinations were judged.</summary>
    public required bool IsComplete { get; init; }

    /// <summary>Names of the stages.</summary>
    public required DataList<string> Stages { get; init; }

    /// <summary>How many combinations are adequate: the first so many of the list.</summary>
    public required int AdequateCount { get; init; }

    /// <summary>All combinations that were judged, best first.</summary>
    public required DataList<CombinationData> Combinations { get; init; }

    /// <summary>Candidates that fit no combination, with the reason.</summary>
    public required DataList<LeftOutData> LeftOut { get; init; }

    private protected override string InOneLine => Verdict.Headline.Text;

    internal static RankingData Of(Ranking ranking)
    {
        HashSet<Combination> pareto = [.. ranking.Pareto];
        return new()
        {
            Verdict = VerdictData.Of(ranking.Verdict),
            IsComplete = ranking.IsComplete,
            Stages = [.. ranking.Plan.Select(stage => stage.Name)],
            AdequateCount = ranking.Serving.Count,
            Combinations = [.. ranking.Combinations.Select(combination => CombinationData.Of(combination, pareto.Contains(combination)))],
            LeftOut = [.. ranking.LeftOut.Select(LeftOutData.Of)],
        };
    }
}

/// <summary>One choice of injectors, pump and regulator.</summary>
public sealed record CombinationData : PartlyKnownData
{
    /// <summary>The injectors; none where each stage keeps its own.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Injectors { get; init; }

    /// <summary>The pump or pumps; none where each stage keeps its own.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Pump { get; init; }

    /// <summary>The regulator; none where each stage keeps its own.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Regulator { get; init; }

    /// <summary>Whether every limit is kept at every point of every stage.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>True if it is adequate and no other beats it at once in cost, turndown and margin (Pareto-optimal).</summary>
    public required bool IsParetoOptimal { get; init; }

    /// <summary>What all of it costs, in the money that the catalogue was written in.</summary>
    public required double? CostInOwnMoney { get; init; }

    /// <summary>How much longer the shortest pulse is than the minimum linear one, as a share of it.</summary>
    public required double? TurndownShare { get; init; }

    /// <summary>The smallest margin of every other limit.</summary>
    public required double? MarginShare { get; init; }

    /// <summary>Code of the part with the tightest margin, or whose limit is exceeded by most.</summary>
    public required string Limiting { get; init; }

    /// <summary>The stage in which that is.</summary>
    public required string LimitingStage { get; init; }

    private protected override string InOneLine => $"{Injectors}, {Pump}, {Regulator}: {Outcome}";

    internal static CombinationData Of(Combination combination, bool isParetoOptimal)
    {
        Gaps gaps = new();
        Statement reason = Statement.Of("data.no-margin", $"it cannot be said, or nothing has such a margin");
        return new()
        {
            Injectors = combination.Injectors?.Name,
            Pump = combination.Pump?.Name,
            Regulator = combination.Regulator?.Name,
            Outcome = combination.Outcome,
            IsParetoOptimal = isParetoOptimal,
            CostInOwnMoney = gaps.Figure(nameof(CostInOwnMoney), (double?)combination.Cost, Statement.Of("data.no-cost", $"the cost of a part is not given")),
            TurndownShare = gaps.Figure(nameof(TurndownShare), combination.TurndownShare, reason, reason),
            MarginShare = gaps.Figure(nameof(MarginShare), combination.ReserveShare, reason, reason),
            Limiting = combination.WeakestPart.Code,
            LimitingStage = combination.WeakestStage.Name,
            NotKnown = gaps.Found,
        };
    }
}

/// <summary>A candidate that fits no combination, and why.</summary>
public sealed record LeftOutData : DataRecord
{
    /// <summary>The candidate.</summary>
    public required string Name { get; init; }

    /// <summary>Why it does not fit.</summary>
    public required StatementData Reason { get; init; }

    private protected override string InOneLine => $"{Name}: {Reason.Text}";

    internal static LeftOutData Of(LeftOut candidate) => new() { Name = candidate.Name, Reason = StatementData.Of(candidate.Reason) };
}
