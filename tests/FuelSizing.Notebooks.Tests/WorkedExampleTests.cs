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
        using var copy = InventedNotebook.OfText(await File.ReadAllTextAsync(Repository.PathOf("notebooks", name)));

        var run = await copy.RunAsync();

        Assert.Equal("", run.Error);
        Assert.Equal(0, run.Code);
        Assert.Matches("(?m)^(Holds|Holds as far as judged|Fails|Cannot say): ", run.Output);
        string shown = System.Net.WebUtility.HtmlDecode(run.Report!);
        Assert.All(Cautions.Lines, line => Assert.Contains(line, shown, StringComparison.Ordinal));
        Assert.DoesNotContain("NaN", shown, StringComparison.Ordinal);
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
        string sample = Regex.Match(readme, "```csharp\n(?<code>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture).Groups["code"].Value;
        using var runner = new CellRunner();

        var run = await runner.RunAsync(new NotebookCell(1, true, sample));

        Assert.Null(run.Failure);
        Assert.Matches(@"^injectors: duty cycle .* at 6,800 rev/min, 0\.60 bar", Assert.Single(run.Outputs).Text);
    }
}
