using System.Text.Json.Serialization;
using FuelSizing.Systems;

namespace FuelSizing.Data;

/// <summary>A fuel system over a grid of speed and boost.</summary>
public sealed record SweepData : DataRecord
{
    /// <summary>The answer; its reasons are the checks, the first limit reached before the others.</summary>
    public required VerdictData Verdict { get; init; }

    /// <summary>False if the sweep was stopped.</summary>
    public required bool IsComplete { get; init; }

    /// <summary>How many points were solved, those between the points of the grid included.</summary>
    public required int PointsSolved { get; init; }

    /// <summary>The speeds, rising, revolutions of the crank a second.</summary>
    public required DataList<double> SpeedsRevolutionsPerSecond { get; init; }

    /// <summary>The boosts, rising.</summary>
    public required DataList<double> BoostsGaugePascals { get; init; }

    /// <summary>Boost by boost, in each the speeds in order.</summary>
    public required DataList<OperatingResultData> Results { get; init; }

    /// <summary>What would remedy each failing check.</summary>
    public required DataList<RemedyData> Remedies { get; init; }

    /// <summary>What a careful reader should know about these numbers.</summary>
    public required DataList<StatementData> Notes { get; init; }

    private protected override string InOneLine => Verdict.Headline.Text;

    internal static SweepData Of(SweepResult sweep) => new()
    {
        Verdict = VerdictData.Of(sweep.Verdict),
        IsComplete = sweep.IsComplete,
        PointsSolved = sweep.PointsSolved,
        SpeedsRevolutionsPerSecond = [.. sweep.Speeds.Select(speed => speed.RevolutionsPerSecond)],
        BoostsGaugePascals = [.. sweep.Boosts.Select(boost => boost.Pascals)],
        Results = [.. sweep.Results.Select(result => OperatingResultData.Of(result, isOneOfMany: true))],
        Remedies = [.. sweep.Remedies.Select(RemedyData.Of)],
        Notes = StatementData.OfAll(sweep.Notes),
    };
}

/// <summary>A fuel system along a boost line: a pull at full throttle.</summary>
public sealed record LineSweepData : DataRecord
{
    /// <summary>What the boost follows.</summary>
    public required StatementData BoostLine { get; init; }

    /// <summary>The answer; its reasons are the checks, the first limit reached as speed rises before the others.</summary>
    public required VerdictData Verdict { get; init; }

    /// <summary>How many points were solved, those between the speeds shown included.</summary>
    public required int PointsSolved { get; init; }

    /// <summary>The results, speeds rising.</summary>
    public required DataList<OperatingResultData> Results { get; init; }

    /// <summary>Where along the line the mixture can be leanest, between the points shown too; none where it is known nowhere.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public OperatingResultData? Leanest { get; init; }

    /// <summary>What would remedy each failing check.</summary>
    public required DataList<RemedyData> Remedies { get; init; }

    /// <summary>What a careful reader should know about these numbers.</summary>
    public required DataList<StatementData> Notes { get; init; }

    private protected override string InOneLine => Verdict.Headline.Text;

    internal static LineSweepData Of(LineSweepResult pull) => new()
    {
        BoostLine = StatementData.Of(pull.Line.Text),
        Verdict = VerdictData.Of(pull.Verdict),
        PointsSolved = pull.PointsSolved,
        Results = [.. pull.Results.Select(result => OperatingResultData.Of(result, isOneOfMany: true))],
        Leanest = pull.Leanest is { } leanest ? OperatingResultData.Of(leanest, isOneOfMany: true) : null,
        Remedies = [.. pull.Remedies.Select(RemedyData.Of)],
        Notes = StatementData.OfAll(pull.Notes),
    };
}
