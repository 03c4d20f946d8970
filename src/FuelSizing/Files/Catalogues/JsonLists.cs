using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>Lists of parts from JSON: an object with the form's version and a list for each kind.</summary>
internal static class JsonLists
{
    /// <summary>The parts that a text lists; what is wrong with its form is kept as problems.</summary>
    /// <param name="text">The text.</param>
    /// <param name="form">The file's own form.</param>
    /// <param name="kinds">The lists in it.</param>
    /// <param name="problems">Takes what is wrong.</param>
    public static IReadOnlyList<Entry> Entries<T>(in FileText text, FileForm<T> form, EntryKinds kinds, ProblemList problems)
        where T : class
    {
        string file = text.Name;
        if (form.Fields(text, problems) is not { } fields)
        {
            return [];
        }

        foreach (string name in fields.Names)
        {
            problems.Add(
                file,
                fields[name]!.Value.Line,
                name,
                kinds.Of(name) is null ? NoList(kinds) : Statement.Of("file.must-be-list", $"must be a list, in [ ]."));
        }

        List<Entry> entries = [];
        foreach (string name in fields.Lists)
        {
            EntryList list = fields.List(name)!;
            if (kinds.Of(name) is not { } kind)
            {
                problems.Add(file, list.Line, name, NoList(kinds));
            }
            else if (list.IsOne)
            {
                problems.Add(file, list.Line, name, Statement.Of("file.must-be-list", $"must be a list, in [ ]."));
            }
            else
            {
                entries.AddRange(list.Rows.Select(row => new Entry(file, kind, row)));
            }
        }

        return entries;
    }

    private static Statement NoList(EntryKinds kinds) => Statement.Of("file.no-list-of-parts", $"is not a list of parts. Give {kinds.Names}.");
}
