using System.Text.RegularExpressions;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The page for a reader who must decide has no figure of its own, and the page of limitations leaves out nothing that the README names.</summary>
/// <remarks>What stands between <c>&lt;!-- from PAGE --&gt;</c> and <c>&lt;!-- end --&gt;</c> is copied. With <c>FUELSIZING_OUTPUTS=write</c> figures that changed at their source are copied anew.</remarks>
public sealed partial class PageFigureTests
{
    // Of a figure, whatever its value.
    private const string Number = @"[-−\d.,]*\d";

    private static readonly string Page = Repository.PathOf("docs", "decide.md");

    [Fact]
    public void FiguresCopied_AreThoseOfTheirSource()
    {
        string text = File.ReadAllText(Page), now = Copied().Replace(text, block => CopiedAnew(block.Groups["source"].Value, block));
        if (Environment.GetEnvironmentVariable("FUELSIZING_OUTPUTS") == "write")
        {
            File.WriteAllText(Page, now);
            return;
        }

        Assert.Equal(now.Split('\n'), text.Split('\n'));
    }

    [Fact]
    public void FiguresNotCopied_ThereAreNone()
    {
        string own = Link().Replace(Code().Replace(Copied().Replace(File.ReadAllText(Page), ""), ""), "");
        Assert.DoesNotMatch(@"\d", own);
        Assert.InRange(Copied().Count(File.ReadAllText(Page)), 5, 20);
    }

    [Fact]
    public void Limits_OfTheReadme_AreOnThePageOfLimits()
    {
        string limits = Plain(File.ReadAllText(Repository.PathOf("docs", "limits.md")));
        string[] named =
        [
            .. Row().Matches(File.ReadAllText(Repository.PathOf("README.md")).Split("## What is modelled, and what is not")[1])
                .Select(row => row.Groups["right"].Value.Trim())
                .Where(cell => cell.Length > 0 && cell is not ("not modelled" or "---"))
                .SelectMany(cell => Parts().Split(cell)),
        ];
        Assert.InRange(named.Length, 12, 60);
        Assert.All(named, one => Assert.Contains(one, limits, StringComparison.Ordinal));
    }

    /// <summary>The block with each row and sentence as its source has it now, found by its words.</summary>
    private static string CopiedAnew(string source, Match block)
    {
        string page = File.ReadAllText(Repository.PathOf("docs", source)), flat = Plain(page);
        string[] rows = page.Split('\n');
        IEnumerable<string> paragraphs = block.Groups["text"].Value.Trim('\n').Split("\n\n").Select(paragraph => paragraph.StartsWith('|')
            ? string.Join('\n', paragraph.Split('\n').Select(row => InRows(row, rows, source)))
            : string.Join('\n', Sentences().Split(Plain(paragraph)).Select(sentence => InText(sentence, flat, source))));
        return $"<!-- from {source} -->\n\n{string.Join("\n\n", paragraphs)}\n\n<!-- end -->";
    }

    private static string InRows(string row, string[] rows, string source)
    {
        string pattern = $"^{Numbers().Replace(Regex.Escape(row), Number)}$";
        string[] found = rows.Contains(row) ? [row] : [.. rows.Where(one => Regex.IsMatch(one, pattern))];
        Assert.True(found.Length == 1, $"docs/decide.md copies a row that stands {found.Length} times in docs/{source}: {row}");
        return found[0];
    }

    private static string InText(string sentence, string flat, string source)
    {
        MatchCollection found = Regex.Matches(flat, Numbers().Replace(Regex.Escape(sentence), Number));
        Assert.True(found.Count > 0, $"docs/decide.md copies what docs/{source} does not say: {sentence}");
        return found.Any(match => match.Value == sentence) ? sentence : found[0].Value;
    }

    private static string Plain(string text) => Blank().Replace(text, " ");

    [GeneratedRegex(@"<!-- from (?<source>\S+) -->\n(?<text>.*?)<!-- end -->", RegexOptions.Singleline | RegexOptions.ExplicitCapture)]
    private static partial Regex Copied();

    [GeneratedRegex(@"\d[\d.,]*(?<=\d)")]
    private static partial Regex Numbers();

    [GeneratedRegex("`[^`]*`")]
    private static partial Regex Code();

    [GeneratedRegex(@"\]\([^)]*\)")]
    private static partial Regex Link();

    [GeneratedRegex(@"^\|[^|\n]*\|(?<right>[^|\n]*)\|$", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Row();

    [GeneratedRegex("[;,] ")]
    private static partial Regex Parts();

    [GeneratedRegex(@"(?<=\.) (?=[A-Z\d])")]
    private static partial Regex Sentences();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blank();
}
