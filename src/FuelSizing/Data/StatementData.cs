using System.Text.Json.Serialization;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Data;

/// <summary>A reason, note, remedy or finding: its code, its words in metric units, its figures.</summary>
public sealed record StatementData : DataRecord
{
    /// <summary>A code that stays the same, for instance <c>pump.delivers-too-little</c>.</summary>
    public required string Code { get; init; }

    /// <summary>English words, in metric units.</summary>
    public required string Text { get; init; }

    /// <summary>Figures, names and statements in it, in the order of the words; none where there are none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DataList<ArgumentData>? Arguments { get; init; }

    private protected override string InOneLine => Text;

    internal static StatementData Of(Statement statement) => new()
    {
        Code = statement.Code,
        Text = statement.ToString(),
        Arguments = statement.Arguments.Count == 0 ? null : [.. statement.Arguments.Select(ArgumentData.Of)],
    };

    internal static StatementData? OfAny(Statement? statement) => statement is null ? null : Of(statement);

    internal static DataList<StatementData> OfAll(IEnumerable<Statement> statements) => [.. statements.Select(Of)];
}

/// <summary>One figure, name or statement within a statement.</summary>
public sealed record ArgumentData : DataRecord
{
    /// <summary>For a quantity its kind of figure, for instance <c>pump-flow</c>; else <c>name</c>, <c>count</c>, <c>ordinal</c>, <c>number</c>, <c>cost</c>, <c>statement</c> or <c>list</c>.</summary>
    public required string Kind { get; init; }

    /// <summary>A quantity, its number in SI; a count, a place, a number or a cost. None of words, and of a number without bound.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Value { get; init; }

    /// <summary>Unit of <see cref="Value"/>; none of a number without one.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Unit { get; init; }

    /// <summary>A name, or words that have no code.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Text { get; init; }

    /// <summary>A statement.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public StatementData? Statement { get; init; }

    /// <summary>A list, each entry a statement, or words that have no code.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DataList<ArgumentData>? List { get; init; }

    private protected override string InOneLine => $"{Kind}: {Text ?? Statement?.Text ?? List?.ToString() ?? FormattableString.Invariant($"{Value} {Unit}").TrimEnd()}";

    internal static ArgumentData Of(StatementArgument argument) => argument.Value switch
    {
        IQuantity quantity when SiFigure.Of(quantity) is var figure => new()
        {
            Kind = argument.Kind,
            Value = double.IsFinite(figure.Value) ? figure.Value : null,
            Unit = figure.Unit,
            Text = double.IsFinite(figure.Value) ? null : argument.ToString(),
        },
        long count => new() { Kind = argument.Kind, Value = count },
        double number when double.IsFinite(number) => new() { Kind = argument.Kind, Value = number },
        decimal cost => new() { Kind = argument.Kind, Value = (double)cost },
        IReadable readable => Of(argument.Kind, readable),
        IReadOnlyList<IReadable> list => new() { Kind = argument.Kind, List = [.. list.Select(one => Of("statement", one))] },
        null => new() { Kind = argument.Kind },
        _ => new() { Kind = argument.Kind, Text = argument.ToString() },
    };

    private static ArgumentData Of(string kind, IReadable readable) => readable is Statement statement
        ? new() { Kind = kind, Statement = StatementData.Of(statement) }
        : new() { Kind = kind, Text = readable.In(TextStyle.Metric) };
}
