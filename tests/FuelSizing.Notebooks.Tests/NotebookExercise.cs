using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace FuelSizing.Notebooks.Tests;

/// <summary>An exercise at the end of a notebook: which inputs it changes, by which cells its answer is found, and the figures of that answer.</summary>
/// <remarks>
/// In the answer a figure in bold is what comes out with the change, one in italics what the notebook shows as it stands. The cell's metadata,
/// <c>exercise.cells</c>, names the cells to run after the inputs; without the others it is quick.
/// </remarks>
internal sealed partial record NotebookExercise(
    string Notebook, string Id, IReadOnlyList<string> Settings, IReadOnlyList<string> Cells, IReadOnlyList<string> Changed, IReadOnlyList<string> Unchanged)
{
    public static IReadOnlyList<NotebookExercise> Of(string notebook)
    {
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(Repository.PathOf("notebooks", notebook)));
        return
        [
            .. from cell in json.RootElement.GetProperty("cells").EnumerateArray()
               where cell.GetProperty("metadata").TryGetProperty("exercise", out _)
               let text = SourceOf(cell)
               let answer = Answer().Match(text)
               select new NotebookExercise(
                   notebook,
                   cell.GetProperty("id").GetString()!,
                   [.. Setting().Matches(text[..answer.Index]).Select(match => match.Groups["set"].Value)],
                   [.. cell.GetProperty("metadata").GetProperty("exercise").GetProperty("cells").EnumerateArray().Select(id => id.GetString()!)],
                   [.. Bold().Matches(answer.Value).Select(match => match.Groups["figure"].Value)],
                   [.. Italic().Matches(Bold().Replace(answer.Value, "")).Select(match => match.Groups["figure"].Value)]),
        ];
    }

    /// <summary>The code of several exercises of one notebook, each in a block of its own, with the border shown before each.</summary>
    public static string CodeOf(IReadOnlyList<NotebookExercise> exercises, string border)
    {
        string path = Repository.PathOf("notebooks", exercises[0].Notebook);
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(path));
        string[] ids = [.. json.RootElement.GetProperty("cells").EnumerateArray().Select(cell => cell.GetProperty("id").GetString()!)];
        IReadOnlyList<NotebookCell> cells = NotebookReader.Read(new FileInfo(path));
        SortedSet<string> usings = new(StringComparer.Ordinal);
        string[] blocks =
        [
            .. exercises.Select(exercise =>
            {
                (IReadOnlyList<NotebookCell> changed, _, _) = InputsCell.Apply(cells, InputSetting.Parse([.. exercise.Settings]));
                IEnumerable<string> bodies = changed.Where(cell => cell is { IsInputs: true, IsCode: true })
                    .Concat(exercise.Cells.Select(id => changed[Array.IndexOf(ids, id)]))
                    .Select(cell => BodyOf(cell, usings));
                return $"{{\ndisplay(\"{border}\");\n{string.Join('\n', bodies)}\n}}";
            }),
        ];
        return string.Join('\n', [.. usings, .. blocks]);
    }

    /// <summary>What a reader sees of a page or a block: words, without markup and with single spaces.</summary>
    public static string Words(string html) => Blank().Replace(System.Net.WebUtility.HtmlDecode(Tag().Replace(html, " ")), " ");

    public override string ToString() => $"{Notebook}, {Id}";

    /// <summary>A cell as the body of a block: using directives are collected, and a last expression is shown as a notebook shows it.</summary>
    private static string BodyOf(NotebookCell cell, SortedSet<string> usings)
    {
        CompilationUnitSyntax unit = CSharpSyntaxTree
            .ParseText(BundledPackages.Satisfy(cell), CSharpParseOptions.Default.WithKind(SourceCodeKind.Script))
            .GetCompilationUnitRoot();
        usings.UnionWith(unit.Usings.Select(directive => directive.WithoutTrivia().ToFullString()));
        return string.Join('\n', unit.Members.Select(member =>
            member is GlobalStatementSyntax { Statement: ExpressionStatementSyntax { SemicolonToken.IsMissing: true } shown }
                ? $"display({shown.Expression});"
                : member.ToString()));
    }

    private static string SourceOf(JsonElement cell) => cell.GetProperty("source") is { ValueKind: JsonValueKind.Array } lines
        ? string.Concat(lines.EnumerateArray().Select(line => line.GetString()))
        : cell.GetProperty("source").GetString()!;

    [GeneratedRegex("<details>.*</details>", RegexOptions.Singleline)]
    private static partial Regex Answer();

    [GeneratedRegex("`--set (\"(?<set>[^\"`]+)\"|(?<set>[^`]+))`", RegexOptions.ExplicitCapture)]
    private static partial Regex Setting();

    [GeneratedRegex(@"\*\*(?<figure>[^*]+)\*\*", RegexOptions.ExplicitCapture)]
    private static partial Regex Bold();

    [GeneratedRegex(@"\*(?<figure>[^*]+)\*", RegexOptions.ExplicitCapture)]
    private static partial Regex Italic();

    [GeneratedRegex(@"<style.*?</style>|<title>.*?</title>|<[^>]*>", RegexOptions.Singleline)]
    private static partial Regex Tag();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blank();
}
