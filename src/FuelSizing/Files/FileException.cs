using System.Globalization;

namespace FuelSizing.Files;

/// <summary>Files could not be read; nothing of them was kept.</summary>
public abstract class FileException : FormatException
{
    private const int Shown = 5;

    private protected FileException(IReadOnlyList<FileProblem> problems)
        : base(Text(problems)) => Problems = [.. problems];

    /// <summary>Everything found wrong, in the order of the files and their lines.</summary>
    public IReadOnlyList<FileProblem> Problems { get; }

    private static string Text(IReadOnlyList<FileProblem> problems)
    {
        string more = problems.Count > Shown
            ? string.Create(CultureInfo.InvariantCulture, $" And {problems.Count - Shown} more.")
            : string.Empty;
        return $"Nothing was read. {string.Join(" ", problems.Take(Shown))}{more}";
    }
}
