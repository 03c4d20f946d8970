using System.Text;
using System.Text.RegularExpressions;

namespace FuelSizing.Tests.Quantities;

/// <summary>Every code that a program may ask for is listed in docs/codes.md with the words that go with it.</summary>
public partial class CodesPageTests
{
    private static readonly string Root = Folder();

    [Fact]
    public void Page_ListsEveryCodeOfTheSources_WithItsWords()
    {
        string page = Path.Combine(Root, "docs", "codes.md");
        string[] wanted = [.. Rows()];
        if (Environment.GetEnvironmentVariable("FUELSIZING_CODES") == "write")
        {
            File.WriteAllText(page, Head + string.Join('\n', wanted) + "\n");
        }

        string[] listed = [.. File.ReadAllLines(page).Where(line => line.StartsWith("| `", StringComparison.Ordinal))];
        Assert.True(wanted.Length > 80, $"Only {wanted.Length} codes were found: does the search still see them?");
        Assert.Equal(wanted, listed);
    }

    [Fact]
    public void EveryCode_HasAReaderInItsSource_SoNoneIsMadeOfAnythingButALiteral() =>
        Assert.Empty(
            from file in Sources()
            from Match made in Made().Matches(Code(file))
            where !made.Groups["code"].Success
            select $"{Path.GetFileName(file)}: {made.Value}");

    private const string Head = """
        # Codes

        Every reason, note, remedy and finding is a [Statement](xref:FuelSizing.Quantities.Statement): a code that stays the same, arguments with their
        types, and words. A program compares `Code` and reads `Arguments`; a reader gets `ToString()`, or `In(style)` for other units. A hole is written
        with its kind of figure, ‹boost› for instance ([FigureUnits](xref:FuelSizing.Quantities.FigureUnits)); ‹…› is a figure of the quantity's first
        kind, a name, a count or another statement. The tests write this table from the sources.

        | code | words |
        | --- | --- |

        """;

    private static IEnumerable<string> Rows() =>
        Sources()
            .SelectMany(file => Made().Matches(Code(file)))
            .SelectMany(made => made.Groups["code"].Captures.Select(code => (Code: code.Value, Words: Words(made.Groups["text"].Value))))
            .GroupBy(made => made.Code)
            .OrderBy(made => made.Key, StringComparer.Ordinal)
            .Select(made => $"| `{made.Key}` | {string.Join("; or: ", made.Select(one => one.Words).Distinct().Order(StringComparer.Ordinal))} |");

    // Examples in the documentation of types are no codes of the library.
    private static string Code(string file) =>
        string.Join('\n', File.ReadLines(file).Where(line => !line.TrimStart().StartsWith("///", StringComparison.Ordinal)));

    private static string Words(string text)
    {
        StringBuilder words = new();
        int depth = 0;
        int start = 0;
        for (int i = 0; i < text.Length; i++)
        {
            if (depth == 0 && (text[i] == '\\' || text[i..].StartsWith("{{", StringComparison.Ordinal) || text[i..].StartsWith("}}", StringComparison.Ordinal)))
            {
                words.Append(text[++i]);
            }
            else if (text[i] == '{' && depth++ == 0)
            {
                start = i;
            }
            else if (text[i] == '}' && --depth == 0)
            {
                Match kind = Kind().Match(text[start..i]);
                words.Append(kind.Success ? $"‹{kind.Groups[1].Value}›" : "‹…›");
            }
            else if (depth == 0)
            {
                words.Append(text[i]);
            }
        }

        return words.ToString().Replace("|", "\\|", StringComparison.Ordinal);
    }

    private static IEnumerable<string> Sources() =>
        Directory.EnumerateFiles(Path.Combine(Root, "src", "FuelSizing"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
                && Path.GetFileName(file) != "Statement.cs")
            .Order(StringComparer.Ordinal);

    private static string Folder()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "FuelSizing.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder!;
    }

    // A quote or bracket of the words themselves is written twice or after a backslash; in holes they stand as they are.
    [GeneratedRegex(@"(?<!\w)Statement\.Of\((\s*([^""?;]*\?\s*""(?<code>[^""]+)""\s*:\s*)?""(?<code>[^""]+)"",\s*\$""(?<text>(?:\\.|\{\{|\}\}|[^""{}\\]|\{(?:[^{}]|\{[^{}]*\})*\})*)"")?", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Made();

    [GeneratedRegex(@":(?!up$|down$)([a-z][a-z-]+)(:up|:down)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Kind();
}
