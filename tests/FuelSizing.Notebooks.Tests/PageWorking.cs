using System.Text.RegularExpressions;
using FuelSizing.Tests.Systems;

namespace FuelSizing.Notebooks.Tests;

/// <summary>
/// A working as a reader of the page has it: lines of text, from which any figure can be calculated with what stands above it. Nothing of the library is asked.
/// </summary>
internal static partial class PageWorking
{
    private const int Followed = 5;

    // Lines with an equation: of the chain from demand to margins, and of a working of its own such as a fit's.
    private const int FewestOfAChain = 20;

    /// <summary>Takes five lines with an equation of each working by chance, by the name of the page for a seed, and calculates each from the text of the page alone.</summary>
    public static void FollowSome(string page, string name)
    {
        int[] workings = [.. Folded().Matches(page).Select(match => match.Index)];
        Assert.True(workings.Length > 0, "The page has no working.");
        int[] followed = [.. workings.Select(from => FollowSome(page, from, name))];
        Assert.True(followed.Max() >= FewestOfAChain, $"{name}: no working of the whole chain");
    }

    private static int FollowSome(string page, int from, string name)
    {
        string[][] lines = [.. Lines(page, from)];
        string[][] calculated = [.. lines.Where(line => line.Length == 4)];
        Assert.True(calculated.Length >= Followed, $"{name}: {calculated.Length} lines with an equation");

        // What a symbol stands for, wherever in the working it has its line.
        Dictionary<string, double> known = [];
        foreach (string[] line in lines.Where(line => line.Length > 1))
        {
            known.TryAdd(line[0], Hand.Compute(Number(line[^1])).Value);
        }

        Random chance = new(name.Sum(letter => letter));
        for (int time = 0; time < Followed; time++)
        {
            string[] line = calculated[chance.Next(calculated.Length)];
            double value = Hand.Compute(Number(line[3])).Value;
            string written = string.Join(" = ", line);
            Assert.True(Hand.Compute(line[1], known).Is(value), $"{name}: {written}, by the figures of its symbols");
            Assert.True(Hand.Compute(line[2]).Is(value), $"{name}: {written}, by the figures put in");
        }

        return calculated.Length;
    }

    /// <summary>Every line of a working on the page: symbol, equation, numbers, value; symbol and value where no equation gives it.</summary>
    private static IEnumerable<string[]> Lines(string page, int from)
    {
        int to = page.IndexOf("</details>", from, StringComparison.Ordinal);
        foreach (Match line in Line().Matches(page[from..to]))
        {
            string text = string.Join(' ', Piece().Matches(line.Value).Select(piece => System.Net.WebUtility.HtmlDecode(piece.Groups["text"].Value)));
            yield return text.Split(" = ");
        }
    }

    private static string Number(string value) => value.Split(' ')[0];

    [GeneratedRegex("All lines: ")]
    private static partial Regex Folded();

    [GeneratedRegex("<li .*?</li>", RegexOptions.Singleline)]
    private static partial Regex Line();

    [GeneratedRegex("alttext=\"(?<text>[^\"]*)\"", RegexOptions.ExplicitCapture)]
    private static partial Regex Piece();
}
