using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FuelSizing.Files;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>A setup file takes the place of a notebook's parts, and its values can be changed from the command line.</summary>
public sealed class SetupInputTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fuelsizing-setup-");

    private string Report => Path.Combine(_folder.FullName, "report.html");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task Setup_InPlaceOfTheParts_IsJudgedAsTheLibraryJudgesIt()
    {
        (int code, string output, string error) = await RunAsync("01", "--setup", Repository.PathOf("docs/wren-setup.json"));

        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains(Headline(Setup.Read(Repository.PathOf("docs/wren-setup.json"))), output, StringComparison.Ordinal);
    }

    /// <summary>The demo's setup file holds the figures of notebook 09: as far as the first mixture it shows the same, whichever of the two it takes.</summary>
    [Fact]
    public async Task Dunnock_FromItsSetupFile_IsThatOfTheNotebook()
    {
        JsonNode book = JsonNode.Parse(await File.ReadAllTextAsync(Directory.GetFiles(Repository.PathOf("notebooks"), "09-*.ipynb").Single()))!;
        JsonArray cells = book["cells"]!.AsArray();
        int last = cells.ToList().FindIndex(cell => (string?)cell!["id"] == "lean-table");
        Assert.True(last > 0, "Notebook 09 has a cell of the mixture as it was.");
        while (cells.Count > last + 1)
        {
            cells.RemoveAt(last + 1);
        }

        using InventedNotebook notebook = InventedNotebook.OfText(book.ToJsonString());
        ProgramRun own = await notebook.RunAsync();
        ProgramRun file = await notebook.RunAsync("--setup", Repository.PathOf("docs/dunnock-setup.json"));
        ProgramRun other = await notebook.RunAsync("--setup", Repository.PathOf("docs/dunnock-setup.json"), "--set", "setup.boost_line.compressor_pulley=-12%");

        Assert.Equal((0, 0, 0), (own.Code, file.Code, other.Code));
        Assert.Contains("Does not hold", own.Output, StringComparison.Ordinal);
        Assert.Equal(Shown(own), Shown(file));
        Assert.NotEqual(Shown(own), Shown(other));

        // Without the code and the page's head, which say where the parts come from.
        static string Shown(ProgramRun run) =>
            Regex.Replace(run.Report![run.Report!.IndexOf("<main", StringComparison.Ordinal)..], "<details>.*?</details>", string.Empty, RegexOptions.Singleline);
    }

    [Fact]
    public async Task Value_SetInTheSetup_IsThatOfTheRun_AndTheFileIsKeptBesideTheReport()
    {
        (int code, string output, string error) = await RunAsync(
            "01", "--setup", Repository.PathOf("docs/wren-setup.json"), "--set", "setup.injectors.injector.static_flow=100lb/h", "--set", "setup.points[0].boost=9psi");

        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains("set setup.points[0].boost = 9 psi (in the setup file: 0.7 bar)", output, StringComparison.Ordinal);
        Assert.Contains("100 lb/h converted by the density of the test liquid, 684 kg/m³", output, StringComparison.Ordinal);
        Setup changed = Setup.Read(Path.ChangeExtension(Report, ".setup.json"));
        Assert.Equal(100 * 453.59237 / 60 / 0.6838, changed.System.Injectors.Injector.StaticFlow.MillilitersPerMinute, 1e-3);
        Assert.Equal(Pressure.FromPoundsForcePerSquareInch(9), changed.Points[0].Point.Boost);
        Assert.Contains(Headline(changed), output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--set", "displacement=2L", "comes from the file")]
    [InlineData("--set", "pumpCurve[0].LitresPerHour=200", "comes from the file")]
    [InlineData("--set", "setupFile=other.json", "say the same")]
    [InlineData("--set", "setup.engine=2L", "holds fields")]
    public async Task Input_ThatTheSetupHas_IsNotSetInVain(string option, string value, string said)
    {
        (int code, _, string error) = await RunAsync("01", "--setup", Repository.PathOf("docs/wren-setup.json"), option, value);
        Assert.Equal(2, code);
        Assert.Contains(said, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Setup_ThatIsMissingOrWrongOrNotAsked_IsRefused()
    {
        Assert.Contains("no such file", (await RunAsync("01", "--setup", "none.json")).Error, StringComparison.Ordinal);
        Assert.Contains("is missing: the text is not an object", (await RunAsync("01", "--setup", WriteFile("[]"))).Error, StringComparison.Ordinal);
        Assert.Contains("there is no setup file to change", (await RunAsync("01", "--set", "setup.engine.cylinders=6")).Error, StringComparison.Ordinal);
        Assert.Contains("no such input", (await RunAsync("04", "--setup", Repository.PathOf("docs/wren-setup.json"))).Error, StringComparison.Ordinal);
        Assert.False(File.Exists(Report));
    }

    [Fact]
    public async Task Setup_WithAnImplausibleValue_IsQuestionedUntilConfirmed()
    {
        string file = WriteFile((await File.ReadAllTextAsync(Repository.PathOf("docs/wren-setup.json"))).Replace("\"950 mL/min\"", "\"24 mL/min\"", StringComparison.Ordinal));
        (int code, _, string error) = await RunAsync("01", "--setup", file);
        Assert.Equal(6, code);
        Assert.Contains("line 80, injectors.injector.static_flow is 24 mL/min", error, StringComparison.Ordinal);

        (int confirmed, string output, _) = await RunAsync("01", "--setup", file, "--accept", "setup.injectors.injector.static_flow");
        Assert.Equal(0, confirmed);
        Assert.Contains("confirmed: line 80, injectors.injector.static_flow", output, StringComparison.Ordinal);
    }

    // As notebook 01 asks: its speeds, and seven boosts up to the highest of the file's points.
    private static string Headline(Setup setup)
    {
        double highest = setup.System.Demand.Engine.SpeedLimit.RevolutionsPerMinute;
        Pressure boost = setup.Points.Max(named => named.Point.Boost);
        SweepResult sweep = setup.System.Sweep(
            [.. Enumerable.Range(0, 14).Select(i => RotationalSpeed.FromRevolutionsPerMinute(2000 + ((highest - 2000) * i / 13)))],
            [.. Enumerable.Range(0, 7).Select(i => boost * (i / 6.0))],
            setup.Points[0].Point.Conditions);
        return sweep.Verdict.ToString().Split('\n')[0];
    }

    private string WriteFile(string text)
    {
        string path = Path.Combine(_folder.FullName, string.Create(CultureInfo.InvariantCulture, $"{Guid.NewGuid():N}.json"));
        File.WriteAllText(path, text);
        return path;
    }

    private async Task<(int Code, string Output, string Error)> RunAsync(string notebook, params string[] more)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        string path = Directory.GetFiles(Repository.PathOf("notebooks"), $"{notebook}-*.ipynb").Single();
        int code = await NotebookProgram.RunAsync([path, "--output", Report, .. more], output, error);
        string[] lines = error.ToString().Split('\n');
        return (code, output.ToString(), string.Join('\n', lines.Where(line => !line.StartsWith("cell ", StringComparison.Ordinal))));
    }
}
