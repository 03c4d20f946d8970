namespace FuelSizing.Files;

/// <summary>The problems of one reading, as many as a person would go through.</summary>
internal sealed class ProblemList
{
    private const int Maximum = 1000;
    private const int LongestField = 120;

    private readonly List<FileProblem> _found = [];

    /// <summary>What was found, files in the order of reading, lines rising.</summary>
    public IReadOnlyList<FileProblem> Found =>
    [
        .. _found
            .Distinct()
            .GroupBy(problem => problem.File)
            .SelectMany(file => file.OrderBy(problem => problem.Line)),
    ];

    /// <summary>True once something was found.</summary>
    public bool Any => _found.Count > 0;

    /// <summary>True once there are so many that reading on helps nobody.</summary>
    public bool Full => _found.Count >= Maximum;

    /// <summary>Keeps a problem.</summary>
    public void Add(string file, int line, string field, string message)
    {
        if (!Full)
        {
            // A field's name and parts of the message come from the file, and may hold anything.
            string shown = Shown(field, LongestField);
            _found.Add(new(file, line, string.IsNullOrWhiteSpace(shown) ? "(blank)" : shown, OneLine(message)));
        }
    }

    /// <summary>A text of a file as a message shows it: not too long.</summary>
    public static string Shown(string text, int maximum = 40) =>
        OneLine(text.Length <= maximum ? text : text[..maximum] + "…");

    private static string OneLine(string text) =>
        string.Concat(text.Select(letter => char.IsControl(letter) ? ' ' : letter));
}
