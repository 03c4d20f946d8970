using System.Diagnostics.CodeAnalysis;

namespace FuelSizing.Files;

/// <summary>Reading as a question: what is wrong with a file is an answer then, and no exception.</summary>
internal static class TriedFile
{
    /// <summary>Tries to read.</summary>
    /// <param name="read">Reads, or throws what is wrong.</param>
    /// <param name="found">What was read.</param>
    /// <param name="problems">What is wrong; empty where it was read.</param>
    public static bool Read<T>(Func<T> read, [NotNullWhen(true)] out T? found, out IReadOnlyList<FileProblem> problems)
        where T : class
    {
        try
        {
            (found, problems) = (read(), []);
            return true;
        }
        catch (FileException wrong)
        {
            (found, problems) = (null, wrong.Problems);
            return false;
        }
    }
}
