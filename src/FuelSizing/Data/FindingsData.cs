using System.Text.Json.Serialization;
using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Quantities;

namespace FuelSizing.Data;

/// <summary>A recorded run compared with its plan.</summary>
public sealed record FindingsData : DataRecord
{
    /// <summary>Whether the run is as planned; its reasons are what it was judged by, the most urgent first.</summary>
    public required VerdictData Verdict { get; init; }

    /// <summary>False if the reading of the run, or the search for faults, was stopped.</summary>
    public required bool IsComplete { get; init; }

    /// <summary>True if faults were searched for.</summary>
    public required bool IsDiagnosed { get; init; }

    /// <summary>The likeliest single fault, by its words joined by hyphens.</summary>
    public required RunFault Fault { get; init; }

    /// <summary>Every fault tried, the likeliest first.</summary>
    public required DataList<FaultData> Faults { get; init; }

    /// <summary>Faults that the data cannot tell from the likeliest.</summary>
    public required DataList<FaultData> Rivals { get; init; }

    /// <summary>Probability that nothing is at fault, 0 to 1; none where no fault was looked for.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? NoFaultProbability { get; init; }

    /// <summary>A second fault that the run needs beside the likeliest; none where one explains it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public FaultData? Second { get; init; }

    /// <summary>Measurements that would tell apart what the run leaves open, the most telling first.</summary>
    public required DataList<NextTestData> NextTests { get; init; }

    /// <summary>What the run says of one thing after another, or why it does not.</summary>
    public required DataList<FindingData> Answers { get; init; }

    /// <summary>Points at which run and plan were compared.</summary>
    public required int PointsCompared { get; init; }

    /// <summary>Rows gathered in them.</summary>
    public required int RowsUsed { get; init; }

    /// <summary>Rows that the plan does not cover.</summary>
    public required int RowsOutsideThePlan { get; init; }

    /// <summary>Rows between steady points.</summary>
    public required int RowsUnsteady { get; init; }

    /// <summary>What to change or measure next.</summary>
    public required DataList<StatementData> WhatToChange { get; init; }

    /// <summary>What could not be worked out for lack of which channel, and what a careful reader should know.</summary>
    public required DataList<StatementData> Notes { get; init; }

    private protected override string InOneLine => Verdict.Headline.Text;

    internal static FindingsData Of(RunFindings findings) => new()
    {
        Verdict = VerdictData.Of(findings.Verdict),
        IsComplete = findings.IsComplete,
        IsDiagnosed = findings.IsDiagnosed,
        Fault = findings.Fault,
        Faults = [.. findings.Faults.Select(FaultData.Of)],
        Rivals = [.. findings.Rivals.Select(FaultData.Of)],
        NoFaultProbability = findings.NoFault?.DecimalFractions,
        Second = findings.Second is { } second ? FaultData.Of(second) : null,
        NextTests = [.. findings.NextTests.Select(NextTestData.Of)],
        Answers =
        [
            FindingData.Of("duty-cycle", findings.Duty, answer => answer.Text),
            FindingData.Of("differential", findings.Differential, answer => answer.Text),
            FindingData.Of("regulator", findings.Regulator, answer => answer.Text),
            FindingData.Of("fuel", findings.Fuel, answer => answer.Text),
            FindingData.Of("brake-consumption", findings.BrakeConsumption, answer => answer.Text),
            FindingData.Of("volumetric-efficiency", findings.VolumetricEfficiency, answer => answer.Text),
            FindingData.Of("rail-pressure", findings.Sag, answer => answer.Text),
            FindingData.Of("dead-time", findings.DeadTime, answer => answer.Text),
            FindingData.Of("lean-excursions", findings.Lean, answer => answer.Text),
            FindingData.Of("mixture", findings.Mixture, answer => answer.Text),
            .. findings.Agreement.Select(agreement => new FindingData { Name = "agreement", Answer = StatementData.Of(agreement.Text), MissingChannels = [] }),
        ],
        PointsCompared = findings.PointsCompared,
        RowsUsed = findings.RowsUsed,
        RowsOutsideThePlan = findings.RowsOutsideThePlan,
        RowsUnsteady = findings.RowsUnsteady,
        WhatToChange = StatementData.OfAll(findings.WhatToChange),
        Notes = StatementData.OfAll(findings.Notes),
    };
}

/// <summary>An answer from a run, or the reason why the run does not hold one.</summary>
public sealed record FindingData : DataRecord
{
    /// <summary>What was asked.</summary>
    public required string Name { get; init; }

    /// <summary>The answer; none where it cannot be told.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public StatementData? Answer { get; init; }

    /// <summary>Why it cannot be told; none where it can.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public StatementData? Reason { get; init; }

    /// <summary>Channels whose lack is the reason.</summary>
    public required DataList<Channel> MissingChannels { get; init; }

    private protected override string InOneLine => $"{Name}: {Answer?.Text ?? Reason?.Text}";

    internal static FindingData Of<T>(string name, Finding<T> finding, Func<T, Statement> text)
        where T : class, IReadable => new()
        {
            Name = name,
            Answer = finding.Answer is { } answer ? StatementData.Of(text(answer)) : null,
            Reason = StatementData.OfAny(finding.Reason),
            MissingChannels = [.. finding.Missing],
        };
}

/// <summary>A measurement that would tell suspected faults apart.</summary>
public sealed record NextTestData : DataRecord
{
    /// <summary>What to measure.</summary>
    public required StatementData What { get; init; }

    /// <summary>Bits that its outcome is expected to tell, which has no unit.</summary>
    public required double InformationBits { get; init; }

    /// <summary>Probability that after it the likeliest of the suspected is the right one, 0 to 1.</summary>
    public required double RightProbability { get; init; }

    private protected override string InOneLine => What.Text;

    internal static NextTestData Of(NextTest test) => new()
    {
        What = StatementData.Of(test.What),
        InformationBits = test.Information,
        RightProbability = test.Separates.DecimalFractions,
    };
}

/// <summary>A fault that would explain a run.</summary>
public sealed record FaultData : PartlyKnownData
{
    /// <summary>Which.</summary>
    public required RunFault Fault { get; init; }

    /// <summary>Its name in words.</summary>
    public required string Name { get; init; }

    /// <summary>Probability that the fault is there, alone or with another, 0 to 1.</summary>
    public required double Probability { get; init; }

    /// <summary>Twice ln of the Bayes factor of this fault alone against a sound car, which has no unit.</summary>
    public required double? Evidence { get; init; }

    /// <summary>How large the fault would be.</summary>
    public required StatementData Size { get; init; }

    /// <summary>What to change or measure.</summary>
    public required StatementData Change { get; init; }

    private protected override string InOneLine => Size.Text;

    internal static FaultData Of(FaultFinding fault)
    {
        Gaps gaps = new();
        return new()
        {
            Fault = fault.Fault,
            Name = fault.Name,
            Probability = fault.Probability.DecimalFractions,
            Evidence = gaps.Figure(nameof(Evidence), fault.Evidence, Statement.Of("data.no-evidence", $"the run does not fit the fault at all")),
            Size = StatementData.Of(fault.Size),
            Change = StatementData.Of(fault.Change),
            NotKnown = gaps.Found,
        };
    }
}
