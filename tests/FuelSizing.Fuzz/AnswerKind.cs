using System.Text.RegularExpressions;

namespace FuelSizing.Fuzz;

/// <summary>Tells kinds of answer apart by their words, the input's own words and numbers taken out.</summary>
internal static partial class AnswerKind
{
    private const int Longest = 160;

    /// <summary>The kind of a message.</summary>
    public static string Of(string message)
    {
        string kind = Own().Replace(message, "#");
        return kind.Length <= Longest ? kind : kind[..Longest];
    }

    // From the first quotation mark to the last: a quoted text may hold such marks itself.
    [GeneratedRegex("(?<=match: |character: ).*(?=\\. (Put|Check))|(?<=head with the unit ).*(?=\\. Give)|\".*\"|'.*'|Path: .*|[-−+]?[0-9∞][0-9.,eE+−-]*", RegexOptions.Singleline)]
    private static partial Regex Own();
}
