namespace FuelSizing.Files;

/// <summary>A kind of file that holds lists, as comma-separated values or JSON: catalogues, tests at a bench.</summary>
/// <param name="what">The file with its article.</param>
/// <param name="form">Its JSON form, whose fields are lists.</param>
/// <param name="isNamedOnce">Whether a name stands for one part of a list.</param>
internal sealed class ListFiles<T>(string what, FileForm<T> form, bool isNamedOnce)
    where T : class
{
    private readonly EntryKinds _kinds = new(form.Form.Fields, isNamedOnce);

    /// <summary>Reads files.</summary>
    /// <param name="files">One or more, each ending in <c>.csv</c> or <c>.json</c>.</param>
    /// <param name="problems">Takes what is wrong.</param>
    /// <param name="name">Of the argument.</param>
    /// <exception cref="ArgumentException">No file is named, or one ends otherwise.</exception>
    public Entry[] Read(string[] files, ProblemList problems, string name)
    {
        ArgumentNullException.ThrowIfNull(files, name);
        if (files.Length == 0)
        {
            throw new ArgumentException($"{name} was empty; name one or more.", name);
        }

        List<FileText> texts = [];
        foreach (string file in files)
        {
            WithKnownEnding(file, name);
            if (FileText.Of(file, problems) is { } text)
            {
                texts.Add(text);
            }
        }

        return [.. texts.SelectMany(text => Entries(text, problems))];
    }

    /// <summary>Reads one file's text.</summary>
    /// <param name="name">By which problems call it, ending in <c>.csv</c> or <c>.json</c>.</param>
    /// <param name="text">Everything in it.</param>
    /// <param name="problems">Takes what is wrong.</param>
    /// <exception cref="ArgumentException">The name ends otherwise.</exception>
    public Entry[] Parse(string name, string text, ProblemList problems)
    {
        WithKnownEnding(name, nameof(name));
        ArgumentNullException.ThrowIfNull(text);
        return [.. Entries(new(name, text), problems)];
    }

    /// <summary>The parts of a list that could be read.</summary>
    public static TPart[] Parts<TPart>(Entry[] entries, string kind, Form<TPart> form, ProblemList problems)
        where TPart : class =>
        [.. entries.Where(entry => entry.Kind.Name == kind).Select(entry => form.Read(entry.Reader(problems))).OfType<TPart>()];

    private static bool IsJson(string name) => name.EndsWith(".json", StringComparison.OrdinalIgnoreCase);

    private IReadOnlyList<Entry> Entries(in FileText text, ProblemList problems) =>
        IsJson(text.Name) ? JsonLists.Entries(text, form, _kinds, problems) : CsvLists.Entries(text, _kinds, problems);

    private void WithKnownEnding(string file, string name)
    {
        ArgumentNullException.ThrowIfNull(file, name);
        if (!IsJson(file) && !file.EndsWith(".csv", StringComparison.OrdinalIgnoreCase))
        {
            throw new ArgumentException($"{name} held \"{file}\"; {what} ends in .csv or .json.", name);
        }
    }
}
