using System.Globalization;
using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>Files could not be read; nothing of them was kept.</summary>
public abstract class FileException : FormatException
{
    private const int Shown = 5;

    private protected FileException(IReadOnlyList<FileProblem> problems, IReadOnlyList<InputQuestion>? questions = null)
        : base(Text(problems, questions ?? [])) => (Problems, Asked) = ([.. problems], [.. questions ?? []]);

    /// <summary>Everything found wrong, in the order of the files and their lines.</summary>
    public IReadOnlyList<FileProblem> Problems { get; }

    private protected IReadOnlyList<InputQuestion> Asked { get; }

    private static string Text(IReadOnlyList<FileProblem> problems, IReadOnlyList<InputQuestion> questions)
    {
        string more = problems.Count > Shown
            ? string.Create(CultureInfo.InvariantCulture, $" And {problems.Count - Shown} more.")
            : string.Empty;
        return $"Nothing was read. {string.Join(" ", problems.Take(Shown))}{more}{string.Concat(questions.Take(Shown).Select(question => $" {question}"))}";
    }
}

/// <summary>One thing wrong in a file, and where.</summary>
public sealed record FileProblem : IReadable
{
    internal FileProblem(string file, int line, string field, Statement reason) =>
        (File, Line, Field, Reason) = (file, line, field, reason);

    /// <summary>The file, as it was named to the reader.</summary>
    public string File { get; }

    /// <summary>Line in the file, from 1.</summary>
    public int Line { get; }

    /// <summary>The field, for instance <c>injectors.static_flow</c>; the column's number where it has no name.</summary>
    public string Field { get; }

    /// <summary>What is wrong and what to do; its code is one of those under <c>file.</c>.</summary>
    /// <remarks>
    /// What a part's own factory refuses is <c>file.refused-by-part</c>: its argument is the text of the exception, in metric units.
    /// </remarks>
    public Statement Reason { get; }

    /// <summary>File, line, field and reason, as a code with its arguments.</summary>
    public Statement Text => Statement.Of("file.problem", $"{File}, line {Line:ordinal}, {Field}: {Reason}");

    /// <summary>File, line, field and reason.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);
}
