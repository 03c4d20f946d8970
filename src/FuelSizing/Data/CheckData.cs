using System.Text.Json.Serialization;
using FuelSizing.Checks;
using FuelSizing.Quantities;

namespace FuelSizing.Data;

/// <summary>How one check came out at one point.</summary>
public sealed record CheckData : PartlyKnownData
{
    /// <summary>Code of what was judged.</summary>
    public required string Part { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Whether its limit is kept.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>What is left before the limit, as a share of what is used; negative where it falls short.</summary>
    public required double? MarginShare { get; init; }

    /// <summary>What is used, in SI.</summary>
    public required double? Used { get; init; }

    /// <summary>What is allowed, in SI.</summary>
    public required double? Allowed { get; init; }

    /// <summary>Unit of both; none of a ratio, or where neither is known.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Unit { get; init; }

    /// <summary>Whether what is used may be at most or must be at least what is allowed.</summary>
    public required LimitDirection Direction { get; init; }

    /// <summary>The finding; among the results of a sweep that of a check that holds has no arguments, for its figures are used and allowed.</summary>
    public required StatementData Finding { get; init; }

    private protected override string InOneLine => $"{Name}: {Finding.Text}";

    internal static CheckData Of(Margin margin, bool isOneOfMany = false)
    {
        Gaps gaps = new();
        Statement reason = margin.Outcome == Outcome.CannotSay
            ? Statement.Of("data.cannot-say", $"it cannot be said: see the finding")
            : Statement.Of("data.nothing-to-compare", $"it is not known, has no bound, or there is nothing to compare with: see the finding");
        StatementData finding = StatementData.Of(margin.Finding);
        SiFigure? used = margin.Used is { } figure ? SiFigure.Of(figure) : null;
        SiFigure? allowed = margin.Allowed is { } limit ? SiFigure.Of(limit) : null;
        return new()
        {
            Part = margin.Part.Code,
            Name = margin.Part.Name,
            Outcome = margin.Outcome,
            MarginShare = gaps.Figure(nameof(MarginShare), margin.Share, reason),
            Used = gaps.Figure(nameof(Used), used?.Value, reason),
            Allowed = gaps.Figure(nameof(Allowed), allowed?.Value, reason),
            Unit = used?.Unit ?? allowed?.Unit,
            Direction = margin.Direction,
            Finding = isOneOfMany && margin.Outcome == Outcome.Holds ? finding with { Arguments = null } : finding,
            NotKnown = gaps.Found,
        };
    }
}

/// <summary>Something that a system has, or may have, and that was not judged.</summary>
public sealed record NotJudgedData : DataRecord
{
    /// <summary>Code of what was not judged.</summary>
    public required string Part { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Why not.</summary>
    public required StatementData Reason { get; init; }

    /// <summary>The reason for which the user does without a judgement; none where it is not waived.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Waiver { get; init; }

    private protected override string InOneLine => Waiver is null ? $"{Name}, {Reason.Text}" : $"{Name}, waived: {Waiver}";

    internal static NotJudgedData Of(NotJudged open) => new()
    {
        Part = open.Part.Code,
        Name = open.Part.Name,
        Reason = StatementData.Of(open.Reason),
        Waiver = open.Waiver,
    };

    internal static DataList<NotJudgedData> OfAll(IEnumerable<NotJudged> open) => [.. open.Select(Of)];
}

/// <summary>A change that would remedy a failing check.</summary>
public sealed record RemedyData : DataRecord
{
    /// <summary>Code of what it remedies.</summary>
    public required string Part { get; init; }

    /// <summary>The figure that the part needs to have, in SI and not rounded; none where there is no figure.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Needed { get; init; }

    /// <summary>Unit of that.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Unit { get; init; }

    /// <summary>The change, its figures rounded to the side that serves.</summary>
    public required StatementData Text { get; init; }

    private protected override string InOneLine => Text.Text;

    internal static RemedyData Of(Remedy remedy)
    {
        SiFigure? needed = remedy.Needed is { } figure ? SiFigure.Of(figure) : null;
        return new()
        {
            Part = remedy.Part.Code,
            Needed = needed is { Value: var value } && double.IsFinite(value) ? value : null,
            Unit = needed?.Unit,
            Text = StatementData.Of(remedy.Text),
        };
    }
}
