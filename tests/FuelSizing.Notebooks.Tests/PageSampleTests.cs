using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FuelSizing.Equations;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Every C# sample in the pages and in the library's documentation compiles and runs, and no link is dead.</summary>
/// <remarks>
/// Samples go on from the README's: they may use its <c>system</c>, and the names that <see cref="Prepare"/> gives. Files
/// that a sample reads are those that its own page shows.
/// </remarks>
public sealed partial class PageSampleTests : IDisposable
{
    private const string Names =
        """
        using FuelSizing;
        using FuelSizing.Bench;
        using FuelSizing.Checks;
        using FuelSizing.Circuits;
        using FuelSizing.Conformance;
        using FuelSizing.Controllers;
        using FuelSizing.Data;
        using FuelSizing.Electrical;
        using FuelSizing.Equations;
        using FuelSizing.Files;
        using FuelSizing.Findings;
        using FuelSizing.Interactive;
        using FuelSizing.Lines;
        using FuelSizing.Logs;
        using FuelSizing.Numerics;
        using FuelSizing.Points;
        using FuelSizing.Quantities;
        using FuelSizing.Selection;
        using FuelSizing.Sizing;
        using FuelSizing.Uncertainty;
        using UnitsNet.Units;

        var point = OperatingPoint.At(Rpm(6800), Pressure.FromBars(0.6));
        var idle = OperatingPoint.At(Rpm(2000), Pressure.FromBars(-0.6));
        var (petrolSystem, ethanolSystem, petrolPeak, ethanolPeak) = (system, system, point, point);
        var (now, later) = (Stage.Of("now", system, point), Stage.Of("later", system, point));
        var (injector, table) = (system.Injectors.Injector, system.Demand.VolumetricEfficiency);
        var data = ControllerData.Of(injector, Fuel.Petrol, TargetLambda.At(0.88));
        var air = Atmosphere.Of(Pressure.FromKilopascals(95), Temperature.FromDegreesCelsius(20));
        double[] speeds = [50, 100], boosts = [0, 30e3], rails = new double[2], fuels = new double[2], flows = new double[2], duties = new double[2];
        """;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fuelsizing-page-");

    // The README's sample of a whole system runs before every other; the last two stand by themselves (PageOutputTests).
    public static TheoryData<string> Pages =>
        [.. PageFiles.Where(page => Path.GetFileName(page) is not ("README.md" or "tutorial.md" or "recipes.md") && Samples(page).Any()).Select(page => Path.GetRelativePath(Repository.PathOf(), page))];

    public static TheoryData<string> AllPages => [.. PageFiles.Select(page => Path.GetRelativePath(Repository.PathOf(), page))];

    private static IEnumerable<string> PageFiles =>
        Directory.GetFiles(Repository.PathOf("docs"), "*.md")
            .Concat([Repository.PathOf("README.md"), Repository.PathOf("DEVELOPERS.md")])
            .Order(StringComparer.Ordinal);

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Samples_OfAPage_CompileAndRun(string page)
    {
        string path = Repository.PathOf(page);
        using CellRunner runner = await Prepare(path);
        foreach (string sample in Samples(path))
        {
            await Runs(runner, InFolder(sample), inBlock: !Declares().IsMatch(sample));
        }
    }

    [Fact]
    public async Task Examples_OfTheLibrarysDocumentation_CompileAndRun()
    {
        string[] examples =
        [
            .. from assembly in new[] { "FuelSizing", "FuelSizing.Interactive" }
               from code in XDocument.Load(Path.Combine(AppContext.BaseDirectory, $"{assembly}.xml")).Descendants("example").Descendants("code")
               select code.Value,
        ];
        Assert.InRange(examples.Length, 10, 400);
        using CellRunner runner = await Prepare(Repository.PathOf("docs", "catalogues.md"));
        await Runs(runner, $"var catalogue = Catalogue.Read({string.Join(", ", Files().Where(file => file.EndsWith(".csv", StringComparison.Ordinal)).Select(file => $"@\"{file}\""))});", inBlock: false);
        foreach (string example in examples)
        {
            await Runs(runner, InFolder(example), inBlock: !Declares().IsMatch(example));
        }
    }

    /// <summary>Each public equation has an example of two lines, a call and its result, and gives that result when it runs.</summary>
    [Fact]
    public async Task Examples_OfTheEquations_GiveTheResultsThatTheyShow()
    {
        XElement[] members = [.. XDocument.Load(Path.Combine(AppContext.BaseDirectory, "FuelSizing.xml")).Descendants("member")];
        string[] equations =
        [
            .. from type in typeof(InjectorFlow).Assembly.GetExportedTypes()
               where type.Namespace == typeof(InjectorFlow).Namespace
               from method in type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly)
               select members.Single(member => member.Attribute("name")!.Value.StartsWith($"M:{type.FullName}.{method.Name}``", StringComparison.Ordinal))
                   .Descendants("example").Descendants("code").Single().Value,
        ];
        Assert.InRange(equations.Length, 60, 200);
        using CellRunner runner = new();
        await Runs(runner, "using FuelSizing.Equations;\nusing FuelSizing.Numerics;", inBlock: false);
        foreach (string[] several in equations.Chunk(20))
        {
            await Runs(runner, string.Join('\n', several.Select(code =>
            {
                string shown = Result().Match(code).Groups["number"].Value;
                return $"{{\n{code}\nif (!(Math.Abs(result - {shown}) <= 5e-6 * Math.Abs({shown}))) throw new Exception($\"{{result}} is not {shown}\");\n}}";
            })));
        }
    }

    [Theory]
    [MemberData(nameof(AllPages))]
    public void Links_OfAPage_LeadToSomething(string page)
    {
        string path = Repository.PathOf(page);
        string text = Regex.Replace(File.ReadAllText(path), "```.*?```", string.Empty, RegexOptions.Singleline);
        Dictionary<string, HashSet<string>> anchors = [];
        foreach (Match link in Link().Matches(text))
        {
            string target = link.Groups["target"].Value;
            // The site's builder follows those into the reference.
            if (target.StartsWith("https://", StringComparison.Ordinal) || target.StartsWith("xref:", StringComparison.Ordinal))
            {
                continue;
            }

            string[] parts = target.Split('#');
            string file = parts[0].Length == 0 ? path : Path.GetFullPath(Path.Combine(Path.GetDirectoryName(path)!, parts[0]));
            Assert.True(File.Exists(file), $"{page} links to {target}, which is not there.");
            if (parts.Length > 1 && !anchors.ContainsKey(file))
            {
                anchors[file] = [.. Anchors(file), .. PlacedAnchor().Matches(File.ReadAllText(file)).Select(place => place.Groups["id"].Value)];
            }

            Assert.True(parts.Length == 1 || anchors[file].Contains(parts[1]), $"{page} links to {target}, which has no such heading.");
        }
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private static async Task Runs(CellRunner runner, string code, bool inBlock = true)
    {
        CellRun run = await runner.RunAsync(new NotebookCell(1, true, inBlock ? $"{{\n{code}\n}}" : code));
        Assert.True(run.Failure is null, $"{run.Failure}\n{code}");
    }

    private static IEnumerable<string> Samples(string path) => Blocks(path, "csharp");

    private static IEnumerable<string> Blocks(string path, string language) =>
        Block().Matches(File.ReadAllText(path))
            .Where(block => block.Groups["language"].Value == language)
            .Select(block => block.Groups["code"].Value);

    private static IEnumerable<string> Anchors(string file) =>
        from line in File.ReadAllLines(file)
        where line.StartsWith('#')
        select string.Concat(line.TrimStart('#').Trim().ToLowerInvariant()
            .Where(letter => char.IsLetterOrDigit(letter) || letter is ' ' or '-'))
            .Replace(' ', '-');

    /// <summary>A kernel in which the README's sample has run and common names stand, and the page's own files are written.</summary>
    private async Task<CellRunner> Prepare(string path)
    {
        foreach (string text in Blocks(path, "csv"))
        {
            foreach (string file in FilesOf(text.Split(' ', ',', '\n')[0]))
            {
                File.WriteAllText(Path.Combine(_folder.FullName, file), text);
            }
        }

        // Samples about setups write this one before they read it.
        File.WriteAllText(Path.Combine(_folder.FullName, "wren.json"), string.Empty);

        // Those about programs read the one beside the pages, and write what came of it.
        File.Copy(Repository.PathOf("docs", "wren-setup.json"), Path.Combine(_folder.FullName, "wren-setup.json"), overwrite: true);
        File.WriteAllText(Path.Combine(_folder.FullName, "result.json"), string.Empty);

        CellRunner runner = new();
        await Runs(runner, Samples(Repository.PathOf("README.md")).Last(), inBlock: false);
        await Runs(runner, Names, inBlock: false);
        return runner;
    }

    // A list of parts is named by its kind; any other table is a recorded run.
    private static string[] FilesOf(string head) =>
        head is "injectors" or "pumps" or "regulators" ? [$"{head}.csv"] : ["pull.csv", "season.csv"];

    private string InFolder(string sample) => Files().Aggregate(
        sample, (text, file) => text.Replace($"\"{Path.GetFileName(file)}\"", $"@\"{file}\"", StringComparison.Ordinal));

    private string[] Files() => Directory.GetFiles(_folder.FullName);

    // A declared type cannot stand within a block.
    [GeneratedRegex(@"^\s*sealed (class|record) ", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Declares();

    [GeneratedRegex(@"^```(?<language>\w+)\n(?<code>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.ExplicitCapture)]
    private static partial Regex Block();

    [GeneratedRegex(@"^\s*// result = (?<number>[-\d.e]+)", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Result();

    // A row of a table that others lead to.
    [GeneratedRegex("""<a id="(?<id>[^"]+)"></a>""", RegexOptions.ExplicitCapture)]
    private static partial Regex PlacedAnchor();

    [GeneratedRegex(@"\]\((?<target>[^)\s]+)\)", RegexOptions.ExplicitCapture)]
    private static partial Regex Link();
}
