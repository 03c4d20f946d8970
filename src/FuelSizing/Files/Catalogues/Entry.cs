namespace FuelSizing.Files;

/// <summary>One part as it stands in a file, whatever its format.</summary>
/// <param name="File">The file.</param>
/// <param name="Kind">What is listed: injectors, pumps, regulators.</param>
/// <param name="Fields">The part's fields.</param>
internal sealed record Entry(string File, EntryKind Kind, EntryFields Fields)
{
    /// <summary>Where the part begins, from 1.</summary>
    public int Line => Fields.Line;

    /// <summary>Reads its fields.</summary>
    public EntryReader Reader(ProblemList problems) => new(File, Kind.Name, Fields, problems);
}

/// <summary>What a list holds, and the name of the table that its parts have, if they do.</summary>
/// <param name="Name">As in a file.</param>
/// <param name="Table">The name of the table; none where each part is a line of its own.</param>
/// <param name="IsNamedOnce">Whether a name stands for one part: its lines belong together. Else a line with fields of its own begins another.</param>
internal sealed record EntryKind(string Name, string? Table, bool IsNamedOnce)
{
    /// <summary>The name that a part goes by.</summary>
    public const string NameField = "name";
}

/// <summary>The lists that a kind of file may hold.</summary>
internal sealed class EntryKinds
{
    /// <summary>Reads them off a file's form, whose fields are lists.</summary>
    /// <param name="lists">The fields.</param>
    /// <param name="isNamedOnce">Whether a name stands for one part.</param>
    public EntryKinds(IEnumerable<Field> lists, bool isNamedOnce)
    {
        All = [.. lists.Select(list => new EntryKind(list.Name, TableOf(list.Inner!), isNamedOnce))];
        Names = string.Join(", ", All.Select(kind => kind.Name));
    }

    /// <summary>Every kind.</summary>
    public IReadOnlyList<EntryKind> All { get; }

    /// <summary>Their names, for a message.</summary>
    public string Names { get; }

    /// <summary>The kind of a name; none if there is no such.</summary>
    public EntryKind? Of(string name) => All.FirstOrDefault(kind => kind.Name == name);

    private static string? TableOf(Form form) =>
        form.Records.SelectMany(record => record.Fields).FirstOrDefault(field => field is ITableField { IsTable: true })?.Name;
}
