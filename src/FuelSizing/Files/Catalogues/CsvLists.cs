using System.Globalization;
using System.Text.RegularExpressions;
using FuelSizing.Logs;
using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>Reads a list of parts from comma-separated values (RFC 4180).</summary>
/// <remarks>
/// The first cell of the head says what is listed and the version of the form, <c>injectors 1</c>; names stand below it. A
/// part's own fields stand on its first line; each further line with its name adds a row to its table.
/// </remarks>
internal sealed partial class CsvLists
{
    private const string Version = "1";

    private readonly string _file;
    private readonly EntryKinds _kinds;
    private readonly ProblemList _problems;
    private readonly List<Entry> _entries = [];
    private Column[] _columns = [];
    private EntryKind? _kind;

    private CsvLists(string file, EntryKinds kinds, ProblemList problems) => (_file, _kinds, _problems) = (file, kinds, problems);

    /// <summary>The parts that a text lists; what is wrong with its form is kept as problems.</summary>
    public static IReadOnlyList<Entry> Entries(in FileText text, EntryKinds kinds, ProblemList problems)
    {
        CsvLists reader = new(text.Name, kinds, problems);
        reader.Read(text.Text);
        return reader._entries;
    }

    private void Read(string text)
    {
        // A last line without a line end is as good as any other here: what is missing in a part is seen.
        using CellReader rows = new(new(new StringReader(text + "\n"), owned: true, default), ',', CultureInfo.InvariantCulture, isStrict: true);
        while (rows.MoveNext())
        {
            int line = (int)rows.Line;
            if (rows.IsTooLong)
            {
                Wrong(line, "line", Statement.Of("file.line-too-long", $"has more than {BoundedLines.LongestLine} characters. Check for a line end that is missing."));
                continue;
            }

            string?[] cells = Cells(rows, line);
            if (_kind is null)
            {
                if (!Head(cells, line))
                {
                    return;
                }
            }
            else if (cells.Any(cell => cell is null || cell.Trim().Length > 0))
            {
                Part(cells, line);
            }

            if (_problems.Full)
            {
                return;
            }
        }

        if (_kind is null)
        {
            Wrong(1, "column 1", Statement.Of("file.empty", $"is empty. The first cell says what is listed and the version of the form, such as \"{_kinds.All[0].Name} {Version}\"."));
        }
    }

    private bool Head(string?[] cells, int line)
    {
        string first = (cells[0] ?? string.Empty).Trim();
        string[] words = first.Split(' ');
        _kind = _kinds.Of(words[0]);
        if (_kind is null || words.Length != 2 || words[1] != Version)
        {
            Statement? semicolons = first.Contains(';') ? Statement.Of("file.use-commas", $" Save the file with commas between its cells.") : null;
            Wrong(
                line,
                "column 1",
                Statement.Of("file.no-catalogue", $"was \"{Short(first)}\". Give one of {_kinds.Names} and the version of the form, such as \"{_kinds.All[0].Name} {Version}\".{semicolons}"));
            return false;
        }

        bool sound = true;
        HashSet<string> seen = [EntryKind.NameField];
        _columns = new Column[cells.Length];
        _columns[0] = new(EntryKind.NameField, null);
        for (int cell = 1; cell < cells.Length; cell++)
        {
            Match head = FieldAndUnit().Match((cells[cell] ?? string.Empty).Trim());
            string field = head.Groups["field"].Value;
            if (!head.Success)
            {
                Wrong(line, Numbered(cell), Statement.Of("file.no-column-head", $"has the head \"{Short(cells[cell] ?? string.Empty)}\". Give a field and, in brackets, its unit, such as static_flow [mL/min]."));
                sound = false;
            }
            else if (!seen.Add(field))
            {
                Wrong(line, field, Statement.Of("file.column-twice", $"stands at the head of two columns, the second is {Numbered(cell)}. Take one out."));
                sound = false;
            }

            _columns[cell] = new(field, head.Groups["unit"] is { Success: true } unit ? unit.Value.Trim() : null);
        }

        return sound;
    }

    private void Part(string?[] cells, int line)
    {
        if (cells.Length != _columns.Length)
        {
            Wrong(
                line,
                Numbered(Math.Min(cells.Length, _columns.Length)),
                Statement.Of("file.cell-count", $"the line has {cells.Length} cells where the head has {_columns.Length}. Give every cell, blank ones too."));
            return;
        }

        if (Array.Exists(cells, cell => cell is null))
        {
            return;
        }

        string name = cells[0]!.Trim();
        bool further = _entries.Count > 0 && name.Length > 0 && _entries[^1].Fields[EntryKind.NameField]?.Text == name
            && (_kind!.IsNamedOnce || !HasOwnFields(cells));
        if (!further)
        {
            _entries.Add(new(_file, _kind!, new(line)));
            if (name.Length > 0)
            {
                _entries[^1].Fields.TryAdd(EntryKind.NameField, new EntryValue(name, null, line));
            }
        }

        Add(_entries[^1], cells, line, further);
    }

    private void Add(Entry entry, string?[] cells, int line, bool further)
    {
        EntryFields row = new(line);
        for (int cell = 1; cell < cells.Length; cell++)
        {
            string text = cells[cell]!.Trim();
            if (text.Length == 0)
            {
                continue;
            }

            (string field, string? unit) = _columns[cell];
            EntryValue value = new(text, unit, line);
            string inTable = $"{_kind!.Table}.";
            if (_kind.Table is not null && field.StartsWith(inTable, StringComparison.Ordinal))
            {
                row.TryAdd(field[inTable.Length..], value);
            }
            else if (further)
            {
                Wrong(line, $"{_kind.Name}.{field}", Statement.Of("file.field-on-further-line", $"is given on a further line of the part. Give it on the part's first line alone."));
            }
            else
            {
                entry.Fields.TryAdd(field, value);
            }
        }

        if (row.Names.Any())
        {
            Table(entry.Fields, _kind!.Table!).Rows.Add(row);
        }
    }

    /// <summary>Whether a line gives more than a row of the table.</summary>
    private bool HasOwnFields(string?[] cells) => Enumerable.Range(1, cells.Length - 1)
        .Any(cell => cells[cell]!.Trim().Length > 0 && !_columns[cell].Field.StartsWith($"{_kind!.Table}.", StringComparison.Ordinal));

    private static EntryList Table(EntryFields part, string table)
    {
        EntryList list = part.List(table) ?? new(part.Line, false, []);
        part.TryAdd(table, list);
        return list;
    }

    // A cell whose quotes do not match is none, and nothing is known of those after it.
    private string?[] Cells(CellReader rows, int line)
    {
        bool whole = rows.TrySplit();
        string?[] cells = new string?[rows.Count];
        for (int cell = 0; cell < cells.Length; cell++)
        {
            cells[cell] = whole || cell < cells.Length - 1 ? Single(rows[cell].ToString(), line, cell) : null;
        }

        if (whole)
        {
            return cells;
        }

        Wrong(line, Field(cells.Length - 1), Statement.Of("file.quotes", $"has quotes that do not match: {Short(rows.Text.ToString())}. Put the whole cell in quotes, on one line, and double each one inside."));
        Array.Resize(ref cells, Math.Max(cells.Length, _columns.Length));
        return cells;
    }

    private string? Single(string text, int line, int cell)
    {
        if (!text.Any(char.IsControl))
        {
            return text;
        }

        Wrong(line, Field(cell), Statement.Of("file.control-character", $"holds a control character: {Short(text)}. Take it out."));
        return null;
    }

    private string Field(int cell) => cell < _columns.Length ? _columns[cell].Field : Numbered(cell);

    private void Wrong(int line, string field, Statement reason) => _problems.Add(_file, line, field, reason);

    private static string Numbered(int cell) => string.Create(CultureInfo.InvariantCulture, $"column {cell + 1}");

    private static string Short(string text) => ProblemList.Shown(text);

    [GeneratedRegex(@"^(?<field>[a-z_]+(\.[a-z_]+)?)(\s*\[(?<unit>[^\[\]]+)\])?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex FieldAndUnit();

    private readonly record struct Column(string Field, string? Unit);
}
