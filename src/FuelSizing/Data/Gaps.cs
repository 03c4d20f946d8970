using System.Text.Json;
using FuelSizing.Quantities;

namespace FuelSizing.Data;

/// <summary>Takes the numbers of one record, and keeps which of them are not known, and why.</summary>
internal sealed class Gaps
{
    private static readonly Statement Unbounded = Statement.Of("data.without-bound", $"it has no bound");

    private readonly List<(string Field, Statement Reason)> _found = [];

    /// <summary>What was not known, the fields of one reason together; none where everything was.</summary>
    public DataList<NotKnownData>? Found => _found.Count == 0
        ? null
        : [.. _found.GroupBy(gap => gap.Reason, gap => gap.Field).Select(gaps => new NotKnownData { Fields = [.. gaps], Reason = StatementData.Of(gaps.Key) })];

    /// <summary>A number, or null where it is not known or without bound.</summary>
    /// <param name="property">The record's property.</param>
    /// <param name="value">The number.</param>
    /// <param name="reason">Why it would not be known.</param>
    /// <param name="unbounded">Why it would have no bound.</param>
    public double? Figure(string property, double? value, Statement reason, Statement? unbounded = null)
    {
        if (value is { } known && double.IsFinite(known))
        {
            return known;
        }

        _found.Add((JsonNamingPolicy.SnakeCaseLower.ConvertName(property), value is { } bound && double.IsInfinity(bound) ? unbounded ?? Unbounded : reason));
        return null;
    }
}
