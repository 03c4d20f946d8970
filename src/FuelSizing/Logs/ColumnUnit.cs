using FuelSizing.Quantities;

namespace FuelSizing.Logs;

/// <summary>The unit of a column on which mapping, units row and heading agree.</summary>
/// <remarks>
/// Each may say a unit, and gauge or absolute. What contradicts another costs the column, and so does a units row that is not understood:
/// a pressure in the wrong unit is a wrong verdict.
/// </remarks>
internal static class ColumnUnit
{
    /// <summary>Units may differ by so much in their scale and be one: a horsepower has several definitions, a factor its last figures.</summary>
    private const double Alike = 1e-3;

    /// <summary>The unit; null where it is not known, which is then refused.</summary>
    /// <param name="column">As mapped.</param>
    /// <param name="heading">Of the column.</param>
    /// <param name="row">What the units row says of it; null if none is used.</param>
    /// <param name="refuse">Takes how many lines below the heading, and the reason.</param>
    public static ChannelUnit? Of(RunColumn column, string heading, string? row, Action<int, Statement> refuse)
    {
        ChannelUnit? unit = column.Unit;
        bool isMapped = unit is not null;
        if (row is not null && !WrittenUnit.SaysNothing(row))
        {
            if (!WrittenUnit.TryFind(column.Channel, row, out WrittenUnit said))
            {
                refuse(1, Statement.Of(
                    "log.no-unit",
                    $"the units row says \"{CellText.Shown(row)}\", which is no unit of {column.Channel.ToString()} that is understood; {column.Channel.ToString()} is left out. Write one of {Known(column.Channel)} there, or have the row skipped and give the unit in the mapping."));
                return null;
            }

            if (Contradiction("units row", row, said, column, unit) is { } reason)
            {
                refuse(1, reason);
                return null;
            }

            unit ??= said.Unit;
        }

        if (unit is null)
        {
            refuse(1, Statement.Of(
                "log.unit-blank", $"the units row says no unit of {column.Channel.ToString()}, nor does the mapping; {column.Channel.ToString()} is left out. Give the unit in the mapping."));
            return null;
        }

        foreach ((string text, WrittenUnit said) in HeadingUnit.In(column.Channel, heading))
        {
            if (Contradiction("heading", text, said, column, unit, isMapped ? "mapping" : "units row") is { } reason)
            {
                refuse(0, reason);
                return null;
            }
        }

        if (column.Reference is { } reference && HeadingUnit.ReferenceIn(heading) is { } other && other != reference)
        {
            refuse(0, Differ("heading", heading, Name(other), Name(reference), column, "mapping"));
            return null;
        }

        return unit;
    }

    private static Statement? Contradiction(
        string place, string text, WrittenUnit said, RunColumn column, ChannelUnit? unit, string other = "mapping")
    {
        string channel = column.Channel.ToString();
        bool isRatio = said.Of == UnitOf.AirFuelRatio;
        if (column.Channel == Channel.Lambda && (said.Of == UnitOf.Lambda || isRatio))
        {
            return isRatio == (unit?.Stoichiometric is not null) ? null
                : isRatio ? Statement.Of(
                    "log.ratio-for-lambda",
                    $"the {place} says \"{CellText.Shown(text)}\", an air-fuel ratio, and the mapping lambda; {channel} is left out. Map the column as an air-fuel ratio, with what the instrument shows at lambda 1.")
                : Statement.Of(
                    "log.lambda-for-ratio",
                    $"the {place} says \"{CellText.Shown(text)}\", which is lambda, and the mapping an air-fuel ratio; {channel} is left out. Map the column as lambda.");
        }

        if (said.Of != WrittenUnit.QuantityOf(column.Channel))
        {
            return Statement.Of(
                "log.other-quantity",
                $"the {place} says \"{CellText.Shown(text)}\", which is no unit of {channel}; {channel} is left out. Correct the {place} or the mapping.");
        }

        if (unit is { } given && !(Math.Abs(said.Unit.Scale - given.Scale) <= Alike * given.Scale && Math.Abs(said.Unit.Offset - given.Offset) < 0.01))
        {
            return Differ(place, text, null, given.Text, column, other);
        }

        return said.Reference is { } reference && column.Reference is { } mapped && reference != mapped
            ? Differ(place, text, Name(reference), Name(mapped), column, "mapping")
            : null;
    }

    private static Statement Differ(string place, string text, string? meaning, string unit, RunColumn column, string other)
    {
        Statement? means = meaning is null ? null : Statement.Of("log.unit-means", $", {meaning},");
        return Statement.Of(
            "log.units-differ",
            $"the {place} says \"{CellText.Shown(text)}\"{means} and the {other} {unit}; {column.Channel.ToString()} is left out until they agree. Correct whichever is wrong.");
    }

    private static string Name(PressureReference reference) => reference == PressureReference.Gauge ? "gauge" : "absolute";

    private static string Known(Channel channel) => string.Join(", ", ChannelUnits.Texts(channel));
}
