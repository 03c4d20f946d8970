using System.Text.Json;
using System.Text.RegularExpressions;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The notebooks and the README's sample, as a reader finds them.</summary>
public class WorkedExampleTests
{
    public static TheoryData<string> Notebooks =>
        [.. Directory.GetFiles(Repository.PathOf("notebooks"), "*.ipynb").Select(path => Path.GetFileName(path))];

    [Theory]
    [MemberData(nameof(Notebooks))]
    public async Task Notebook_OfTheRepository_RunsToTheEndWithAVerdictAndCautions(string name)
    {
        using var copy = InventedNotebook.CopyOf(name);

        var run = await copy.RunAsync();

        Assert.Equal("", run.Error);
        Assert.Equal(0, run.Code);
        Assert.Matches("(?m)^(Holds|Holds as far as judged|Fails|Cannot say): ", run.Output);
        string shown = System.Net.WebUtility.HtmlDecode(run.Report!);
        Assert.All(Cautions.Lines, line => Assert.Contains(line, shown, StringComparison.Ordinal));
        Assert.DoesNotContain("NaN", shown, StringComparison.Ordinal);
        PageWorking.FollowSome(run.Report!, name);
        StandsBesidePublishedValues(run.Report!);
        if (Environment.GetEnvironmentVariable("FUELSIZING_REPORTS") is { Length: > 0 } folder)
        {
            await File.WriteAllTextAsync(Path.Combine(folder, Path.ChangeExtension(name, ".html")), run.Report);
        }

        // The exercises at its end: figures in italics are those of the notebook as it stands, figures in bold are not (ExerciseTests).
        string before = NotebookExercise.Words(run.Report![..run.Report!.IndexOf("Exercises</h2>", StringComparison.Ordinal)]);
        Assert.All(NotebookExercise.Of(name), exercise =>
        {
            Assert.All(exercise.Unchanged, figure => Assert.True(before.Contains(figure, StringComparison.Ordinal), $"{exercise}: {figure} is not in the notebook"));
            Assert.All(exercise.Changed, figure => Assert.False(before.Contains(figure, StringComparison.Ordinal), $"{exercise}: {figure} is in the notebook without the change"));
        });
    }

    [Theory]
    [MemberData(nameof(Notebooks))]
    public void Notebook_OfTheRepository_NamesThisVersionAndHoldsNoOldOutput(string name)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Repository.PathOf("notebooks", name)));
        var cells = json.RootElement.GetProperty("cells").EnumerateArray().ToList();

        Assert.All(cells, cell => Assert.NotEmpty(cell.GetProperty("id").GetString()!));
        Assert.All(
            cells.Where(cell => cell.GetProperty("cell_type").GetString() == "code"),
            cell => Assert.Equal(0, cell.GetProperty("outputs").GetArrayLength()));
        Assert.Contains($"nuget:FuelSizing.Interactive,{BundledPackages.Version}", json.RootElement.GetRawText(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sample_OfTheReadme_CompilesAndNamesThePartThatLimits()
    {
        string readme = await File.ReadAllTextAsync(Repository.PathOf("README.md"));
        string sample = SamplesOf(readme)[1];
        using var runner = new CellRunner();

        var run = await runner.RunAsync(new NotebookCell(1, true, sample));

        Assert.Null(run.Failure);
        Assert.Matches(@"^injectors: duty cycle .* at 6,800 rev/min, 0\.60 bar", Assert.Single(run.Outputs).Text);
    }

    [Fact]
    public async Task Sample_OfTheReadmesStart_TakesEightLinesAndListsWhatItAssumes()
    {
        string sample = SamplesOf(await File.ReadAllTextAsync(Repository.PathOf("README.md")))[0];
        Assert.InRange(sample.Split('\n').Count(line => line.Length > 0), 1, 8);
        using var runner = new CellRunner();

        var run = await runner.RunAsync(new NotebookCell(1, true, sample));

        Assert.Null(run.Failure);
        Assert.Matches("^Holds as far as judged over the whole ranges of the 11 values that are assumed: tightest margin: injectors, .* Not judged: .*pump;", run.Outputs[0].Text);
        Assert.Contains(run.Outputs, output => output.Text.Contains("BSFC: 395 g/kWh on petrol at worst, 275 g/kWh at best (common practice, no source)", StringComparison.Ordinal));
    }

    /// <summary>Each notebook shows a published case beside what the library calculates for it; a value read from a chart differs by most, 1.3 %.</summary>
    private static void StandsBesidePublishedValues(string page)
    {
        int from = page.IndexOf("Calculated here", StringComparison.Ordinal);
        Assert.True(from > 0, "Nothing published is on the page.");
        double[] differences =
        [
            .. Regex.Matches(page[from..page.IndexOf("</table>", from, StringComparison.Ordinal)], "data-of=\"Difference\"[^>]*>(?<percent>[^<]*?).%</td>", RegexOptions.ExplicitCapture)
                .Select(match => double.Parse(match.Groups["percent"].Value.Replace('−', '-'), System.Globalization.CultureInfo.InvariantCulture)),
        ];
        Assert.NotEmpty(differences);
        Assert.All(differences, percent => Assert.InRange(percent, -1.3, 1.3));
    }

    private static string[] SamplesOf(string readme) =>
        [.. Regex.Matches(readme, "```csharp\n(?<code>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture).Select(match => match.Groups["code"].Value)];
}
