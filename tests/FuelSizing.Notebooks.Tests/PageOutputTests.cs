using System.Text;
using System.Text.RegularExpressions;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Pages that stand by themselves: their code runs from top to bottom as it is written, and prints what the page shows below it.</summary>
/// <remarks>
/// All blocks of a page are compiled at once. With <c>FUELSIZING_OUTPUTS=write</c> what they print is written into the page: look at the difference then.
/// </remarks>
public sealed partial class PageOutputTests
{
    // What is printed between two blocks; no block prints it.
    private const string Border = "\u241E";

    /// <summary>Every block goes on from those before it.</summary>
    [Fact]
    public Task Tutorial_RunInOrder_PrintsWhatItShows() => PrintsWhatItShows(Repository.PathOf("docs", "tutorial.md"), blocksAreApart: false);

    /// <summary>The first block is common to all; each other knows of that one only.</summary>
    [Fact]
    public async Task Recipes_EachByItself_PrintWhatTheyShow()
    {
        string page = Repository.PathOf("docs", "recipes.md");
        Assert.Equal(30, Recipe().Count(await File.ReadAllTextAsync(page)));
        await PrintsWhatItShows(page, blocksAreApart: true);
    }

    private static async Task PrintsWhatItShows(string page, bool blocksAreApart)
    {
        string text = await File.ReadAllTextAsync(page);
        Match[] blocks = [.. Block().Matches(text).Cast<Match>()];
        Assert.NotEmpty(blocks);
        string[] codes = [.. blocks.Select(block => block.Groups["code"].Value)];
        string code = string.Join(
            $"Console.WriteLine(\"{Border}\");\n",
            codes.Select((one, place) => blocksAreApart && place > 0 ? $"{{\n{one}}}\n" : one));

        using CellRunner runner = new();
        CellRun run = await runner.RunAsync(new NotebookCell(1, true, code));
        string[] printed =
        [
            .. string.Concat(run.Outputs.Select(output => output.Text)).ReplaceLineEndings("\n").Split($"{Border}\n").Select(Trimmed),
        ];
        Assert.True(run.Failure is null, $"{run.Failure}\n{LineNamed(run.Failure, code) ?? codes[printed.Length - 1]}");
        Assert.Equal(codes.Length, printed.Length);

        if (Environment.GetEnvironmentVariable("FUELSIZING_OUTPUTS") == "write")
        {
            await File.WriteAllTextAsync(page, Written(text, blocks, printed));
            return;
        }

        Assert.All(blocks.Zip(printed), pair => Assert.Equal(Trimmed(pair.First.Groups["shown"].Value), pair.Second));
    }

    private static string Trimmed(string text) => string.Join('\n', text.Split('\n').Select(line => line.TrimEnd())).Trim('\n');

    /// <summary>The line that the compiler names; none if the code failed as it ran.</summary>
    private static string? LineNamed(string? failure, string code) =>
        failure is not null && FailedLine().Match(failure) is { Success: true } match
            ? code.Split('\n').ElementAtOrDefault(int.Parse(match.Groups["line"].Value, System.Globalization.CultureInfo.InvariantCulture) - 1)
            : null;

    private static string Written(string text, Match[] blocks, string[] printed)
    {
        StringBuilder written = new();
        int from = 0;
        foreach ((Match block, string lines) in blocks.Zip(printed))
        {
            written.Append(text, from, block.Index - from).Append("```csharp\n").Append(block.Groups["code"].Value).Append("```\n");
            if (lines.Length > 0)
            {
                written.Append("\n```text\n").Append(lines).Append("\n```\n");
            }

            from = block.Index + block.Length;
        }

        return written.Append(text, from, text.Length - from).ToString();
    }

    [GeneratedRegex(@"^```csharp\n(?<code>.*?)^```\n(\n```text\n(?<shown>.*?)^```\n)?", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.ExplicitCapture)]
    private static partial Regex Block();

    [GeneratedRegex(@"^### ", RegexOptions.Multiline)]
    private static partial Regex Recipe();

    [GeneratedRegex(@"^line (?<line>\d+)", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex FailedLine();
}
