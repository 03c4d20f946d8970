using System.Globalization;

namespace FuelSizing.Interactive;

/// <summary>Tables that hold what the library calculates beside what somebody else printed.</summary>
public static class PublishedTables
{
    private const string Note = "Read: the printed number was seen. Transcribed: somebody who is named copied it. Worked apart: inputs were read, the answer was worked from them without the library. "
        + "The page on published values lists every check, and what has none.";

    /// <summary>A published case, value by value.</summary>
    /// <param name="title">The case.</param>
    /// <param name="values">One or more.</param>
    /// <returns>The table, a line a value.</returns>
    /// <exception cref="ArgumentException">There are no values, or a text cannot be shown.</exception>
    /// <example>
    /// <code>
    /// Table table = PublishedTables.Compare(
    ///     "A hand calculation", new PublishedValue("air–fuel ratio of ethanol", "kg/kg", 9.0, 9.005, "U.S. Department of Energy, Alternative Fuels Data Center", "transcribed"));
    /// Console.WriteLine(table.ToPlainText());
    /// </code>
    /// </example>
    public static Table Compare(string title, params PublishedValue[] values)
    {
        ArgumentNullException.ThrowIfNull(values);
        return new Table(
            title,
            [TableColumn.Text("Value"), TableColumn.Number("Published"), TableColumn.Number("Calculated here"), TableColumn.Number("Difference"), TableColumn.Text("Source"), TableColumn.Text("Class")],
            [.. values.Select(value => (IReadOnlyList<string>)
            [
                value.What,
                $"{Number(value.Published)} {value.Unit}".TrimEnd(),
                $"{Number(value.Calculated)} {value.Unit}".TrimEnd(),
                ((value.Calculated / value.Published) - 1).ToString("+0.00 %;−0.00 %;0.00 %", CultureInfo.InvariantCulture),
                value.Source,
                value.Class,
            ])],
            Note);
    }

    private static string Number(double value) => value.ToString("G5", CultureInfo.InvariantCulture).Replace('-', '−');
}

/// <summary>A published value, and what the library calculates for it.</summary>
/// <param name="What">The quantity.</param>
/// <param name="Unit">Its unit; empty for a number without one.</param>
/// <param name="Published">As it was printed, or worked from what was printed; not zero.</param>
/// <param name="Calculated">By the library.</param>
/// <param name="Source">Author, title and place.</param>
/// <param name="Class">How the published value was come by: read, transcribed, worked apart.</param>
public sealed record PublishedValue(string What, string Unit, double Published, double Calculated, string Source, string Class);
