using FuelSizing.Quantities;

namespace FuelSizing.Logs;

/// <summary>A file's heading, matched with a mapping.</summary>
internal static class Heading
{
    /// <summary>
    /// Finds each column of the mapping; one that is not there costs the file, one that cannot be told or read the channel or, of speed, the file.
    /// </summary>
    /// <param name="headings">Of all columns, without blanks at their ends.</param>
    /// <param name="units">The units row, if it is to be used.</param>
    /// <param name="mapping">What is wanted.</param>
    /// <param name="pascals">Ambient pressure.</param>
    /// <param name="refuse">Takes a problem of a channel: line below the heading's, column from 1, field, kind, reason.</param>
    public static List<ReadSlot> Match(
        string[] headings, string[]? units, RunMapping mapping, double pascals, Action<RunColumn, int, int, string, RunProblemKind, Statement> refuse)
    {
        List<ReadSlot> slots = [];
        foreach (RunColumn column in mapping.Columns)
        {
            int index = column.Place.Heading is { } heading ? Array.IndexOf(headings, heading) : column.Place.Number - 1;
            if (index < 0 || index >= headings.Length)
            {
                refuse(
                    column,
                    0,
                    1,
                    "",
                    RunProblemKind.MissingColumn,
                    Statement.Of("log.no-column", $"there is no {column.Place.ToString()} for {column.Channel.ToString()}; there {Listed(headings)}. {Cure(column, headings)}"));
                continue;
            }

            if (column.Place.Heading is not null && Array.LastIndexOf(headings, column.Place.Heading) is var again && again != index)
            {
                refuse(
                    column,
                    0,
                    again + 1,
                    headings[index],
                    RunProblemKind.DuplicateColumn,
                    Statement.Of(
                        "log.column-twice",
                        $"{column.Place.ToString()} stands over columns {index + 1:ordinal} and {again + 1:ordinal}, and {column.Channel.ToString()} cannot tell which; map it by its number."));
                continue;
            }

            void Contradicted(int below, Statement reason) => refuse(column, below, index + 1, headings[index], RunProblemKind.Unit, reason);
            if (ColumnUnit.Of(column, headings[index], units is null ? null : index < units.Length ? units[index] : "", Contradicted) is { } unit)
            {
                slots.Add(new(column.Channel, index, headings[index], unit.Scale, unit.Offset + Reference(column, pascals), unit.Stoichiometric is null));
            }
        }

        return slots;
    }

    /// <summary>What is added to the file's pressure, Pa: manifold pressure is kept absolute, rail pressure gauge.</summary>
    private static double Reference(RunColumn column, double pascals) => (column.Channel, column.Reference) switch
    {
        (Channel.ManifoldAbsolute, PressureReference.Gauge) => pascals,
        (Channel.RailGauge, PressureReference.Absolute) => -pascals,
        _ => 0,
    };

    private static Statement Cure(RunColumn column, string[] headings)
    {
        IReadOnlyList<string> nearest = column.Place.Heading is { } name ? NearestNames.Of(name, headings.Where(heading => heading.Length > 0)) : [];
        return nearest.Count > 0
            ? Statement.Of("log.column-meant", $"Did you mean \"{CellText.Shown(nearest[0])}\"? Correct the mapping, or take the channel out of it.")
            : Statement.Of("log.column-cure", $"Correct the mapping, or take the channel out of it.");
    }

    private static Statement Listed(string[] headings)
    {
        const int maximum = 12;
        Statement[] list = [.. headings.Take(maximum).Select(heading => Statement.Of("log.heading", $"\"{CellText.Shown(heading)}\""))];
        return headings.Length > maximum
            ? Statement.Of("log.many-headings", $"are {list:,} and {headings.Length - maximum} more")
            : headings.Length == 1 ? Statement.Of("log.one-heading", $"is {list[0]}")
            : Statement.Of("log.headings", $"are {list:,}");
    }
}

/// <summary>A channel of a file that is being read: where it stands and how its numbers become SI.</summary>
/// <param name="Channel">What the column holds.</param>
/// <param name="Index">Number of the cell, the first being 0.</param>
/// <param name="Field">The column's heading.</param>
/// <param name="Scale">SI units in one unit.</param>
/// <param name="Offset">SI value at the number zero, ambient pressure included.</param>
/// <param name="IsPlain">False of lambda that is written as an air-fuel ratio.</param>
internal sealed record ReadSlot(Channel Channel, int Index, string Field, double Scale, double Offset, bool IsPlain = true);
