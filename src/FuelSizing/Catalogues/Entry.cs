namespace FuelSizing.Catalogues;

/// <summary>One part as it stands in a file, whatever its format: fields, and tables of fields.</summary>
internal sealed class Entry
{
    private readonly Dictionary<string, List<EntryFields>> _tables = [];

    /// <summary>Starts with nothing but its place.</summary>
    /// <param name="file">The file.</param>
    /// <param name="kind">What is listed: injectors, pumps, regulators.</param>
    /// <param name="line">Where the part begins, from 1.</param>
    public Entry(string file, EntryKind kind, int line) => (File, Kind, Fields) = (file, kind, new(line));

    /// <summary>The file.</summary>
    public string File { get; }

    /// <summary>What is listed.</summary>
    public EntryKind Kind { get; }

    /// <summary>The part's own fields.</summary>
    public EntryFields Fields { get; }

    /// <summary>Where the part begins, from 1.</summary>
    public int Line => Fields.Line;

    /// <summary>The tables that are given.</summary>
    public IEnumerable<string> Tables => _tables.Keys;

    /// <summary>The rows of a table; none if it is not given.</summary>
    public IReadOnlyList<EntryFields> Rows(string table) =>
        _tables.TryGetValue(table, out List<EntryFields>? rows) ? rows : [];

    /// <summary>Adds a row to a table.</summary>
    public void Add(string table, EntryFields row)
    {
        if (!_tables.TryGetValue(table, out List<EntryFields>? rows))
        {
            _tables[table] = rows = [];
        }

        rows.Add(row);
    }
}
