using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>The problems of one reading, as many as a person would go through.</summary>
internal sealed class ProblemList
{
    private const int Maximum = 1000;
    private const int LongestField = 120;

    private readonly List<FileProblem> _found = [];
    private readonly List<InputQuestion> _asked = [];

    /// <summary>What was found, files in the order of reading, lines rising.</summary>
    public IReadOnlyList<FileProblem> Found =>
    [
        .. _found
            .Distinct()
            .GroupBy(problem => problem.File)
            .SelectMany(file => file.OrderBy(problem => problem.Line)),
    ];

    /// <summary>Questions about values that are possible and not plausible, one a field, lines rising.</summary>
    public IReadOnlyList<InputQuestion> Questions => [.. _asked.OrderBy(question => question.Line)];

    /// <summary>True once something was found.</summary>
    public bool Any => _found.Count > 0;

    /// <summary>True once there are so many that reading on helps nobody.</summary>
    public bool Full => _found.Count >= Maximum;

    /// <summary>Keeps a question; the first of a field stands for all rows of its table.</summary>
    public void Ask(InputQuestion question)
    {
        if (_asked.Count < Maximum && !_asked.Exists(other => other.Input == question.Input))
        {
            _asked.Add(question);
        }
    }

    /// <summary>Keeps a problem.</summary>
    public void Add(string file, int line, string field, Statement reason)
    {
        if (!Full)
        {
            // A field's name comes from the file, and may hold anything; so may parts of the reason, which whoever words it passes through Shown.
            string shown = Shown(field, LongestField);
            _found.Add(new(file, line, string.IsNullOrWhiteSpace(shown) ? "(blank)" : shown, reason));
        }
    }

    /// <summary>A text of a file as a message shows it: not too long.</summary>
    public static string Shown(string text, int maximum = 40) =>
        OneLine(text.Length <= maximum ? text : text[..maximum] + "…");

    /// <summary>A text on one line.</summary>
    public static string OneLine(string text) =>
        string.Concat(text.Select(letter => char.IsControl(letter) ? ' ' : letter));
}
