using System.Globalization;
using System.Text;
using System.Xml.Linq;
using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>A column of what a plot shows: texts or numbers.</summary>
internal sealed class PlotColumn
{
    private readonly IReadOnlyList<string>? _texts;
    private readonly IReadOnlyList<double>? _numbers;

    private PlotColumn(string heading, IReadOnlyList<string>? texts, IReadOnlyList<double>? numbers) =>
        (Heading, _texts, _numbers) = (heading, texts, numbers);

    /// <summary>What it holds, with the unit.</summary>
    public string Heading { get; }

    public int Count => _texts?.Count ?? _numbers!.Count;

    public bool IsNumber => _numbers is not null;

    public static PlotColumn Of(string heading, IReadOnlyList<string> texts) => new(heading, texts, null);

    /// <param name="heading">What it holds, with the unit.</param>
    /// <param name="numbers">Not a number where there is none.</param>
    public static PlotColumn Of(string heading, IReadOnlyList<double> numbers) => new(heading, null, numbers);

    /// <summary>A figure as a file holds it, by a decimal point; eight digits are more than any drawn value has.</summary>
    public string InFile(int row) => _texts?[row] ?? (double.IsNaN(_numbers![row]) ? "" : _numbers[row].ToString("G8", CultureInfo.InvariantCulture));

    public string Shown(int row, TextStyle style) => _texts?[row] ?? (double.IsNaN(_numbers![row]) ? "" : PlotData.Figure(_numbers[row], style));
}

/// <summary>The data behind a plot: as a table to unfold below it, and as comma-separated values.</summary>
/// <remarks>
/// What is shown of it is bounded, so that a plot of thousands of points does not make its page many times heavier; whatever is left out is said. The
/// comma-separated values are always whole.
/// </remarks>
internal sealed class PlotData(IReadOnlyList<PlotColumn> columns)
{
    /// <summary>More rows than these would be a file to read, not a table.</summary>
    internal const int MaximumRows = 40;
    internal const int MaximumColumns = 13;

    /// <summary>A page carries no larger file.</summary>
    internal const int MaximumLink = 60_000;

    private int Rows => columns[0].Count;

    /// <summary>A figure with as many digits as a reader can use.</summary>
    public static string Figure(double value, TextStyle style) =>
        Math.Abs(value) >= 1e7 || (value != 0 && Math.Abs(value) < 1e-4)
            ? style.Number(value, "0.###E+0")
            : style.Number(value, Math.Abs(value) switch { >= 1000 => "#,0.#", >= 100 => "0.##", >= 10 => "0.###", >= 1 => "0.####", _ => "0.#####" });

    /// <summary>All of it by RFC 4180: a heading line, a line a row, each ended by CR LF; what holds a comma, a quote or a line break stands in quotes.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder().AppendJoin(',', columns.Select(column => Quoted(column.Heading))).Append("\r\n");
        for (int row = 0; row < Rows; row++)
        {
            for (int column = 0; column < columns.Count; column++)
            {
                string cell = columns[column].InFile(row);
                text.Append(column > 0 ? "," : "").Append(columns[column].IsNumber ? cell : Quoted(cell));
            }

            text.Append("\r\n");
        }

        return text.ToString();
    }

    /// <summary>The table, folded, with the file to save.</summary>
    /// <param name="title">Of the plot.</param>
    /// <param name="style">Of the numbers in the table.</param>
    public XElement Html(string title, TextStyle style)
    {
        int[] rows = Picked(Rows, MaximumRows);
        int[] shown = Picked(columns.Count, MaximumColumns);
        string csv = ToCsv();
        string link = Encoded(csv);
        bool fits = link.Length <= MaximumLink;
        string size = $"{style.Count(Rows)} {(Rows == 1 ? "row" : "rows")}";
        string left = string.Join(" ",
            (string[])[
                .. rows.Length < Rows ? (string[])[$"The table shows {style.Count(rows.Length)} of {size}, evenly picked, the first and the last among them."] : [],
                .. shown.Length < columns.Count ? (string[])[$"It shows {style.Count(shown.Length)} of {style.Count(columns.Count)} columns."] : [],
                fits
                    ? rows.Length < Rows || shown.Length < columns.Count ? "The file holds everything." : ""
                    : $"All {size} are too many for this page: the plot's ToCsv() writes them.",
            ]).Trim();
        TableColumn[] heads = [.. shown.Select(column => columns[column].IsNumber ? TableColumn.Number(columns[column].Heading) : TableColumn.Text(columns[column].Heading))];
        string[][] cells = [.. rows.Select(row => (string[])[.. shown.Select(column => columns[column].Shown(row, style))])];
        int width = TableWidth.Of(heads, cells);
        bool stacks = width > TableWidth.AlwaysThere;
        return new XElement("details",
            new XElement("summary", new XAttribute("style", "cursor:pointer;font-size:0.875em;color:inherit"), $"Data of this plot, {size}"),
            fits
                ? new XElement("p",
                    new XAttribute("style", BlockStyle.PlotNote),
                    new XElement("a",
                        new XAttribute("href", $"data:text/csv;charset=utf-8,{link}"),
                        new XAttribute("download", $"{FileName(title)}.csv"),
                        new XAttribute("style", "color:inherit"),
                        "Save as CSV"))
                : null,
            left.Length > 0 ? new XElement("p", new XAttribute("style", BlockStyle.PlotNote), left) : null,
            new XElement("div",
                new XAttribute("style", $"overflow-x:auto;margin:6px 0 0;{BlockStyle.Measured}"),
                new XAttribute("role", "region"),
                new XAttribute("tabindex", "0"),
                new XAttribute("aria-label", $"Data of: {title}"),
                stacks ? new XElement("style", TableWidth.StackedUnder(width)) : null,
                new XElement("table",
                    stacks ? new XAttribute("class", TableWidth.ClassOf(width)) : null,
                    new XAttribute("role", "table"),
                    new XAttribute("style", BlockStyle.PlotTable),
                    new XElement("thead", new XAttribute("role", "rowgroup"), new XElement("tr", new XAttribute("role", "row"), shown.Select(column => new XElement("th",
                        new XAttribute("role", "columnheader"),
                        new XAttribute("scope", "col"),
                        columns[column].IsNumber ? null : new XAttribute("class", "text"),
                        columns[column].Heading)))),
                    new XElement("tbody", new XAttribute("role", "rowgroup"), cells.Select(row => new XElement("tr", new XAttribute("role", "row"), row.Select((cell, place) => new XElement("td",
                        new XAttribute("role", "cell"),
                        heads[place].Alignment == CellAlignment.Number ? null : new XAttribute("class", "text"),
                        stacks && (place > 0 || heads[0].Alignment == CellAlignment.Number) ? new XAttribute("data-of", heads[place].Header) : null,
                        stacks && cell.Length > TableWidth.LongestBeside ? new XAttribute("data-long", string.Empty) : null,
                        cell))))))));
    }

    /// <summary>So many places at most, evenly over all, the first and the last among them.</summary>
    internal static int[] Picked(int count, int most) => count <= most
        ? [.. Enumerable.Range(0, count)]
        : [.. Enumerable.Range(0, most).Select(place => (int)Math.Round((double)place * (count - 1) / (most - 1)))];

    /// <summary>Words of a title, fit for a file's name anywhere.</summary>
    internal static string FileName(string title)
    {
        var name = new StringBuilder();
        foreach (char letter in title.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(letter))
            {
                name.Append(letter);
            }
            else if (name.Length > 0 && name[^1] != '-')
            {
                name.Append('-');
            }
        }

        string words = name.ToString(0, Math.Min(name.Length, 60)).Trim('-');
        return words.Length > 0 ? words : "plot";
    }

    private static string Quoted(string text)
    {
        // A spreadsheet takes a text that begins so for a formula, and a log may have named it.
        string safe = text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' ? $"'{text}" : text;
        return safe.AsSpan().ContainsAny("\",\r\n") ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : safe;
    }

    /// <summary>As an address holds it: digits and commas as they are, so that it is hardly longer than the file.</summary>
    private static string Encoded(string text)
    {
        var address = new StringBuilder(text.Length + (text.Length / 4));
        foreach (byte letter in Encoding.UTF8.GetBytes(text))
        {
            if (char.IsAsciiLetterOrDigit((char)letter) || (char)letter is '-' or '.' or '_' or '~' or ',' or ';' or ':' or '(' or ')' or '*' or '/')
            {
                address.Append((char)letter);
            }
            else
            {
                address.Append(CultureInfo.InvariantCulture, $"%{letter:X2}");
            }
        }

        return address.ToString();
    }
}
