using System.Text.Json.Serialization;
using FuelSizing.Quantities;
using FuelSizing.Workings;

namespace FuelSizing.Data;

/// <summary>How a result came about, line by line.</summary>
public sealed record WorkingData : DataRecord
{
    /// <summary>What it is the working of.</summary>
    public required string Subject { get; init; }

    /// <summary>The figures that the calculation starts from.</summary>
    public required DataList<WorkingStepData> Given { get; init; }

    /// <summary>The lines, each with what comes before it as symbols.</summary>
    public required DataList<WorkingStepData> Steps { get; init; }

    private protected override string InOneLine => FormattableString.Invariant($"working of {Subject}, steps: {Steps.Count}");

    internal static WorkingData Of(Working working) => new()
    {
        Subject = working.Subject,
        Given = [.. working.Given.Select(WorkingStepData.Of)],
        Steps = [.. working.Steps.Select(WorkingStepData.Of)],
    };
}

/// <summary>One line of a working: a quantity, its equation, the numbers put in, and what comes out.</summary>
public sealed record WorkingStepData : PartlyKnownData
{
    /// <summary>Where the value comes from.</summary>
    public required WorkingSource Kind { get; init; }

    /// <summary>The quantity.</summary>
    public required string Name { get; init; }

    /// <summary>Its symbol.</summary>
    public required string Symbol { get; init; }

    /// <summary>Its equation in symbols; none for a figure that no equation gives.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Equation { get; init; }

    /// <summary>The equation with numbers put in.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Numbers { get; init; }

    /// <summary>The value in SI, with all its digits.</summary>
    public required double? Value { get; init; }

    /// <summary>Unit of it; none of a number without one.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Unit { get; init; }

    /// <summary>The value as reports write it.</summary>
    public required string Readable { get; init; }

    /// <summary>Where the equation or the figure comes from; of a value that is not known why.</summary>
    public required string Source { get; init; }

    /// <summary>The equation that the line is an instance of, by its name in the index of equations; none of a sum, of a margin, and of a figure that no equation gives.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Law { get; init; }

    /// <summary>True for a line on the way to the result of one part.</summary>
    public required bool IsIntermediate { get; init; }

    private protected override string InOneLine => Equation is null ? $"{Symbol} = {Readable}" : $"{Symbol} = {Equation} = {Readable}";

    internal static WorkingStepData Of(WorkingStep step)
    {
        Gaps gaps = new();
        return new()
        {
            Kind = step.Kind,
            Name = step.Name,
            Symbol = step.Symbol,
            Equation = step.Equation,
            Numbers = step.Numbers,
            Value = gaps.Figure(nameof(Value), step.Si, Statement.Of("data.step-not-known", $"{step.Source}")),
            Unit = step.Unit is "1" ? null : step.Unit,
            Readable = step.Readable,
            Source = step.Source,
            Law = step.Law,
            IsIntermediate = step.IsIntermediate,
            NotKnown = gaps.Found,
        };
    }
}
