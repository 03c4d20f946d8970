using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>Lists of parts from JSON: an object with the form's version and a list for each kind.</summary>
internal static class JsonCatalogue
{
    /// <summary>The parts that a text lists; what is wrong with its form is kept as problems.</summary>
    public static IReadOnlyList<Entry> Entries(in FileText text, ProblemList problems)
    {
        string file = text.Name;
        if (CatalogueForm.File.Fields(text, problems) is not { } fields)
        {
            return [];
        }

        foreach (string name in fields.Names)
        {
            problems.Add(
                file,
                fields[name]!.Value.Line,
                name,
                EntryKind.Of(name) is null ? NoList : Statement.Of("file.must-be-list", $"must be a list, in [ ]."));
        }

        List<Entry> entries = [];
        foreach (string name in fields.Lists)
        {
            EntryList list = fields.List(name)!;
            if (EntryKind.Of(name) is not { } kind)
            {
                problems.Add(file, list.Line, name, NoList);
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

    private static Statement NoList => Statement.Of("file.no-list-of-parts", $"is not a list of parts. Give {EntryKind.Names}.");
}
