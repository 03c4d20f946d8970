using System.Runtime.InteropServices;
using FuelSizing.Files;

namespace FuelSizing.Fuzz.Readers;

/// <summary>What refusals of catalogues, setups and mappings promise.</summary>
internal static class FileAnswers
{
    private const int MaximumKinds = 8;

    /// <summary>The refusal as an answer, its promises checked.</summary>
    /// <param name="refused">The refusal.</param>
    /// <param name="name">What the reader was told the file is called.</param>
    /// <param name="input">What it was given.</param>
    public static Reading Refused(FileException refused, string name, byte[] input)
    {
        int lines = 1 + (input is [0xFF, 0xFE, ..]
            ? Ends<char>(MemoryMarshal.Cast<byte, char>(input), '\n', '\r')
            : Ends<byte>(input, (byte)'\n', (byte)'\r'));
        BrokenPromiseException.Unless(refused.Problems.Count > 0, "A refusal has a problem.");
        foreach (FileProblem problem in refused.Problems)
        {
            BrokenPromiseException.Unless(problem.File == name, "A problem names the file.");
            BrokenPromiseException.Unless(problem.Line >= 1 && problem.Line <= lines, "A problem's line is one of the file.");
            BrokenPromiseException.Unless(!string.IsNullOrWhiteSpace(problem.Field), "A problem has a field.");
            BrokenPromiseException.Unless(!string.IsNullOrWhiteSpace($"{problem.Reason}"), "A problem has words.");
            BrokenPromiseException.Unless(!problem.Field.Any(char.IsControl) && !$"{problem.Reason}".Any(char.IsControl), "A problem stands on one line.");
        }

        return new(false, [.. refused.Problems.Take(MaximumKinds).Select(problem => problem.Reason.Code == "file.refused-by-part" ? AnswerKind.Of($"{problem.Reason}") : problem.Reason.Code).Distinct()]);
    }

    private static int Ends<T>(ReadOnlySpan<T> text, T feed, T carriage)
        where T : IEquatable<T> => text.Count(feed) + text.Count(carriage);
}
