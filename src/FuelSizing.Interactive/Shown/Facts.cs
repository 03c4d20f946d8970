using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>What is known of one thing, in lines; the one description of its type from which every table of it is made.</summary>
/// <param name="title">What it is, with its name.</param>
/// <param name="lines">One or more.</param>
/// <param name="note">A remark below the table, or none.</param>
internal sealed class Facts(string title, IReadOnlyList<Fact> lines, string? note = null)
{
    // A longer list is one to search, not to read.
    private const int MaximumRows = 60;

    private const string Nothing = "–";

    /// <summary>What it is, with its name.</summary>
    public string Title { get; } = VisibleText.Of(title);

    /// <summary>The lines.</summary>
    public IReadOnlyList<Fact> Lines { get; } = lines;

    /// <summary>One thing, a line a figure; a column only where some line fills it.</summary>
    public Table Table()
    {
        (TableColumn Head, Func<Fact, string> Cell)[] columns =
        [
            (TableColumn.Text("Name"), fact => fact.Name),
            (TableColumn.Text("Symbol"), fact => fact.Symbol),
            (TableColumn.Number("Value"), fact => fact.Value),
            (TableColumn.Text("Unit"), fact => fact.Unit),
            (TableColumn.Text("Note"), fact => fact.Note),
        ];
        (TableColumn Head, Func<Fact, string> Cell)[] used = [.. columns.Where(column => Lines.Any(line => column.Cell(line).Length > 0))];
        return new Table(
            Title,
            [.. used.Select(column => column.Head)],
            [.. Lines.Select(line => (IReadOnlyList<string>)[.. used.Select(column => VisibleText.OrEmpty(column.Cell(line)))])],
            VisibleText.OrNone(note));
    }

    /// <summary>Several things of a kind, a line a thing and a column a figure.</summary>
    public static Table List(IEnumerable<Facts> things, TextStyle style)
    {
        Facts[] all = [.. things.Take(MaximumRows + 1)];
        Facts[] shown = all.Length > MaximumRows ? all[..MaximumRows] : all;
        if (shown.Length == 0)
        {
            return new Table("An empty list", [TableColumn.Text("Of these there are")], [["none"]]);
        }

        // A name may stand in several lines of one thing, as the points of a curve do: they share its column.
        string[] names = [.. shown.SelectMany(thing => thing.Lines.Select(line => line.Name)).Distinct()];
        string Cell(Facts thing, string name)
        {
            string[] texts = [.. thing.Lines.Where(line => line.Name == name).Select(line => line.Figure.Length > 0 ? line.Figure : line.Note)];
            return texts.Length == 0 ? Nothing : VisibleText.OrEmpty(string.Join("; ", texts));
        }

        bool IsNumber(string name) => shown.All(thing => thing.Lines.All(line => line.Name != name || line.Figure.Length > 0));
        return new Table(
            $"A list of {(all.Length > MaximumRows ? "more than " : "")}{style.Count(shown.Length)}",
            [TableColumn.Text("Of"), .. names.Select(name => IsNumber(name) ? TableColumn.Number(name) : TableColumn.Text(name))],
            [.. shown.Select(thing => (IReadOnlyList<string>)[thing.Title, .. names.Select(name => Cell(thing, name))])],
            all.Length > MaximumRows ? $"The first {style.Count(MaximumRows)}." : null);
    }
}
