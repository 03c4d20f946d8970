using System.Collections.ObjectModel;
using System.Xml.Linq;

namespace FuelSizing.Interactive;

/// <summary>A titled table of text already formatted with its units.</summary>
/// <example>
/// <code>
/// var table = new Table(
///     "Margins at full load",
///     [TableColumn.Text("Part"), TableColumn.Number("Margin")],
///     [["injectors", "-8 %"], ["pump", "21 %"]]);
/// Console.WriteLine(table.ToPlainText());
/// </code>
/// </example>
public sealed class Table : IDisplayBlock
{
    private const int MaximumColumns = 24;
    private const int MaximumRows = 5_000;

    /// <summary>Creates a table.</summary>
    /// <param name="title">What the table shows; not empty.</param>
    /// <param name="columns">1 to 24 columns.</param>
    /// <param name="rows">Rows, each with one cell a column; an empty cell is an empty string.</param>
    /// <param name="note">A remark below the table, or none.</param>
    /// <exception cref="ArgumentException">A text is empty, too long or not representable, or a row has the wrong number of cells.</exception>
    public Table(string title, IReadOnlyList<TableColumn> columns, IReadOnlyList<IReadOnlyList<string>> rows, string? note = null)
    {
        Title = Require.Text(title, nameof(title));
        var ownColumns = Require.Some(columns, MaximumColumns, nameof(columns));
        var ownRows = Require.Some(rows, MaximumRows, nameof(rows));
        Columns = Array.AsReadOnly(ownColumns);
        Rows = Array.AsReadOnly<IReadOnlyList<string>>([.. ownRows.Select((row, i) => CopyRow(row, i, ownColumns.Length))]);
        Note = Require.OptionalText(note, nameof(note));
    }

    /// <summary>What the table shows.</summary>
    public string Title { get; }

    /// <summary>The columns, left to right.</summary>
    public IReadOnlyList<TableColumn> Columns { get; }

    /// <summary>The rows, top to bottom; each has one cell a column.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Rows { get; }

    /// <summary>A remark below the table, or <see langword="null"/>.</summary>
    public string? Note { get; }

    /// <inheritdoc/>
    public string ToHtml()
    {
        int width = TableWidth.Of(Columns, Rows);
        bool stacks = width > TableWidth.AlwaysThere;
        string[] cellStyles = [.. Columns.Select((column, i) => BlockStyle.BodyCell(column.Alignment, TableWidth.LongestOf([.. Rows.Select(row => row[i])]), Columns.Count))];
        return new XElement("div",
            new XAttribute("style", $"{BlockStyle.TableBox};{BlockStyle.Measured}"),
            stacks ? new XElement("style", TableWidth.StackedUnder(width)) : null,
            new XElement("p", new XAttribute("style", BlockStyle.Caption), VisibleText.Unbroken(Title)),
            // Where a front end takes the style away, a wide table scrolls inside this box; the focus stop lets a keyboard scroll it too.
            new XElement("div",
                new XAttribute("style", BlockStyle.TableScroll),
                new XAttribute("role", "region"),
                new XAttribute("tabindex", "0"),
                new XAttribute("aria-label", Title),
                // Roles are stated, for cells that are stacked would lose them.
                new XElement("table",
                    stacks ? new XAttribute("class", TableWidth.ClassOf(width)) : null,
                    new XAttribute("role", "table"),
                    new XAttribute("style", BlockStyle.TableGrid),
                    new XElement("thead", new XAttribute("role", "rowgroup"), new XElement("tr", new XAttribute("role", "row"), Columns.Select(column =>
                        new XElement("th", new XAttribute("scope", "col"), new XAttribute("role", "columnheader"), new XAttribute("style", BlockStyle.HeadCell(column.Alignment)), column.Header)))),
                    new XElement("tbody", new XAttribute("role", "rowgroup"), Rows.Select(row => new XElement("tr", new XAttribute("role", "row"), row.Select((cell, i) =>
                        new XElement("td",
                            new XAttribute("role", "cell"),
                            stacks && (i > 0 || Columns[0].Alignment == CellAlignment.Number) ? new XAttribute("data-of", Columns[i].Header) : null,
                            stacks && cell.Length > TableWidth.LongestBeside ? new XAttribute("data-long", string.Empty) : null,
                            new XAttribute("style", cellStyles[i]),
                            VisibleText.Unbroken(cell)))))))),
            Note is null ? null : new XElement("p", new XAttribute("style", BlockStyle.Note), VisibleText.Unbroken(Note)))
            .ToString(SaveOptions.DisableFormatting);
    }

    /// <inheritdoc/>
    public string ToPlainText()
    {
        var widths = Columns.Select((column, i) => Math.Max(column.Header.Length, Rows.Max(row => row[i].Length))).ToArray();
        string Line(IEnumerable<string> cells) => string.Join("  ", cells.Select((cell, i) =>
            Columns[i].Alignment == CellAlignment.Number ? cell.PadLeft(widths[i]) : cell.PadRight(widths[i]))).TrimEnd();

        List<string> lines =
        [
            Title,
            Line(Columns.Select(column => column.Header)),
            string.Join("  ", widths.Select(width => new string('-', width))),
            .. Rows.Select(Line),
        ];
        if (Note is not null)
        {
            lines.Add(Note);
        }

        return string.Join('\n', lines);
    }

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    private static ReadOnlyCollection<string> CopyRow(IReadOnlyList<string> row, int index, int columns)
    {
        if (row.Count != columns)
        {
            throw new ArgumentException($"rows[{index}] has {row.Count} cell(s) but there are {columns} column(s). Give one cell a column; an empty string leaves a cell blank.", nameof(row));
        }

        return Array.AsReadOnly([.. row.Select((cell, i) =>
            Require.OptionalText(cell, $"rows[{index}][{i}]") ?? throw new ArgumentException($"rows[{index}][{i}] has no value. An empty string leaves a cell blank.", nameof(row)))]);
    }
}
