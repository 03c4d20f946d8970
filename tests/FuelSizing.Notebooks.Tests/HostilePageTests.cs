using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Injectors;
using FuelSizing.Interactive;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Selection;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>
/// Pages of hostile names and texts. Here they are compared with what escaping must leave; <c>.ci/hostile</c> loads them in a browser
/// and proves that nothing ran, and that the same texts unescaped do run.
/// </summary>
public sealed partial class HostilePageTests : IDisposable
{
    private const string FolderVariable = "FUELSIZING_HOSTILE";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fuelsizing-hostile-");

    public void Dispose() => _folder.Delete(recursive: true);

    /// <summary>Every text unescaped in its place, each in a frame of its own so that none breaks another.</summary>
    [Fact]
    public void Control_HasTheTextsUnescaped()
    {
        var page = new StringBuilder("<!DOCTYPE html><html><head><meta charset=\"utf-8\"></head><body>");
        foreach (var (text, place) in HostileText.All)
        {
            string piece = string.Format(CultureInfo.InvariantCulture, place, text);
            Assert.Contains(text, piece, StringComparison.Ordinal);
            page.Append(CultureInfo.InvariantCulture, $"<iframe srcdoc=\"{WebUtility.HtmlEncode(piece)}\"></iframe>\n");
        }

        Write("control.html", page.Append("</body></html>\n").ToString());
        Write("count", HostileText.All.Count.ToString(CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task Report_OfAHostileNotebook_EscapesIt()
    {
        string code = string.Join('\n', HostileText.All.Select((one, i) =>
        {
            string text = Literal(one.Text);
            return $$"""
                Console.WriteLine({{text}});
                display({{text}});
                display(new { Name = {{text}}, Parts = new[] { {{text}} }, Map = new Dictionary<string, string> { [{{text}}] = {{text}} } });
                display(new Exception({{text}}));
                display(new Table({{text}}, [TableColumn.Text({{text}}), TableColumn.Number({{text}})], [[{{text}}, {{text}}]], {{text}}));
                display(Callout.Fails({{text}}, {{text}}));
                """;
        }));
        // The name of a file is a text too; a slash it cannot hold.
        string name = HostileText.All.First(one => one.Text.StartsWith("\">", StringComparison.Ordinal)).Text + ".ipynb";
        using var notebook = InventedNotebook.OfCells(
            [
                ("markdown", $"# {HostileText.All[0].Text}"),
                .. HostileText.Markdown.Select(text => ("markdown", text)),
                ("code", $"{InventedNotebook.Load}\nvar label = \"plain\";"),
                ("code", code),
                ("code", $"throw new Exception({Literal(string.Join('\n', HostileText.All.Select(one => one.Text)))});"),
            ]);
        string place = Path.Combine(_folder.FullName, name);
        File.Copy(notebook.NotebookPath, place);
        string report = Path.Combine(_folder.FullName, "report.html");
        using var output = new StringWriter();
        using var error = new StringWriter();

        Assert.Equal(1, await NotebookProgram.RunAsync([place, "--output", report], output, error));

        string page = await File.ReadAllTextAsync(report);
        HoldsNoElementOfTheirs(page);
        Assert.Contains("&lt;script&gt;", page, StringComparison.Ordinal);
        Assert.Contains("Content-Security-Policy", page, StringComparison.Ordinal);
        Write("report.html", page);
    }

    [Fact]
    public void Sheet_OfAHostileSystem_EscapesIt()
    {
        foreach (var (one, i) in HostileText.All.Select((one, i) => (one, i)))
        {
            string page = new SizingSheet(SizingSheetTests.Sweep(one.Text), one.Text).ToDocument();
            HoldsNoElementOfTheirs(page);
            Assert.Contains(one.Text, WebUtility.HtmlDecode(page), StringComparison.Ordinal);
            Assert.Contains("Content-Security-Policy", page, StringComparison.Ordinal);
            Write(string.Create(CultureInfo.InvariantCulture, $"sheet-{i}.html"), page);
        }
    }

    /// <summary>With no policy, so that escaping alone is put to the test.</summary>
    [Fact]
    public void Blocks_OfAHostileSystem_EscapeIt()
    {
        var page = new StringBuilder("<!DOCTYPE html><html><head><meta charset=\"utf-8\"><title>blocks</title></head><body>");
        foreach (var (text, _) in HostileText.All)
        {
            foreach (IDisplayBlock block in Blocks(text))
            {
                page.Append(block.ToHtml()).Append('\n');
            }
        }

        HoldsNoElementOfTheirs(page.ToString());
        Assert.Contains("&lt;script&gt;", page.ToString(), StringComparison.Ordinal);
        Write("blocks.html", page.Append("</body></html>\n").ToString());
    }

    private static IEnumerable<IDisplayBlock> Blocks(string text)
    {
        SweepResult sweep = SizingSheetTests.Sweep(text);
        OperatingResult result = sweep.Results[^1];
        (string, OperatingResult) named = (text, result);
        PlotAxis axis = new(text, text);
        yield return new SizingSheet(sweep, text);
        yield return new PullSheet(PullSheetTests.Of(MixtureLimits.Of(0.9), text), text);
        yield return new ControllerSheet(ControllerSheetTests.Figures(text), text);
        yield return SizingTables.Steps(result);
        yield return SizingTables.Working(result);
        yield return SizingTables.Demand(sweep);
        yield return SizingTables.Standings(sweep);
        yield return SizingTables.Circuit(result);
        yield return SizingTables.Circuits(text, named);
        yield return SystemDiagram.Of(result);
        yield return SystemDiagram.Of(sweep.System);
        yield return SizingTables.Wiring(text, named);
        yield return SizingPlots.RailPressure(sweep, 0);
        yield return SizingPlots.DutyCycle(sweep);
        yield return SizingPlots.PumpAgainstDemand(sweep);
        yield return SizingPlots.SystemCurve(text, named);
        yield return SizingPlots.AcrossBoost(text, axis, one => one.Circuit.RailGauge.Bars, 0, (text, sweep));
        yield return SizingCallouts.Verdict(sweep.Verdict);
        yield return SizingCallouts.Remedies(sweep);
        yield return new Callout(CalloutKind.Caution, text, text);
        yield return new LinePlot(text, axis, axis, [new PlotLine(text, [0, 1], [0, 1])]).WithLimit(text, 1).WithPoint(text, 1, 1).WithNote(text);
        yield return new MapPlot(text, axis, axis, axis, [0, 1], [0, 1], new double[,] { { 0, 1 }, { 1, 2 } }).WithLimit(text, 1).WithPoint(text, 1, 1).WithNote(text);
        yield return new BarPlot(text, axis, [text], [new PlotBarRow(text, new PlotBar(0, 1, 2))]).WithBase(text, 1).WithLimit(text, 2).WithNote(text);
        yield return new HistogramPlot(text, axis, [1, 2, 2, 3]).WithUpperLimit(text, 2).WithMark(text, 1).WithNote(text);

        Injector injector = sweep.System.Injectors.Injector;
        Ranking ranking = Ranking.Of([Stage.Of(text, sweep.System, result.Point)], CandidateParts.Of([Candidate.Of(text, injector, 1m)]), threads: 1);
        yield return SelectionTables.Best(ranking);
        yield return SelectionTables.Margins(ranking.Combinations[0]);

        RunFindings findings = RunFindings.Of(
            sweep.System, RecordedRun.Of(text, Atmosphere.Standard, [RunRow.Of(1, RotationalSpeed.FromRevolutionsPerMinute(4000), railGauge: Pressure.FromBars(3))]));
        yield return FindingTables.Findings(findings);
        yield return FindingTables.Verdict(findings);
        UncertainSystem unsure = UncertainSystem.Of(
            sweep.System, result.Point, UncertainInput.InjectorFlowFactor(Distribution.Uniform(Ratio.FromPercent(96), Ratio.FromPercent(104))));
        MonteCarloResult sampled = unsure.MonteCarlo(Sampling.Of(64));
        yield return UncertaintyTables.Chances(sampled);
        yield return UncertaintyCallouts.Verdict(sampled, Ratio.FromPercent(90), text);
        yield return UncertaintyPlots.Tornado(unsure.Tornado(SystemOutput.DutyCycle));
    }

    /// <summary>Nothing that the library writes is one of these elements, and no element of its own has a handler or a link to code.</summary>
    private static void HoldsNoElementOfTheirs(string page)
    {
        foreach (string element in new[] { "script", "iframe", "img", "object", "embed", "link", "base" })
        {
            Assert.DoesNotContain($"<{element}", page.Replace("<img src=\"data:image/", string.Empty, StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase);
        }

        Assert.DoesNotMatch("(?i)<[^>\"]*(\"[^\"]*\"[^>\"]*)*\\son\\w+\\s*=[^>]*>", page);
        // A plot's data is a file to save, of letters that no address or attribute takes for its own; it is never opened.
        string pageOnly = OwnFile().Replace(page, string.Empty);
        Assert.DoesNotMatch("(?i)<[^>]*\\s(href|src)\\s*=\\s*[\"']?\\s*(javascript|data:text)", pageOnly);
    }

    [GeneratedRegex("""<a href="data:text/csv;charset=utf-8,[A-Za-z0-9%._~,;:()*/-]*" download="[a-z0-9-]+\.csv" style="color:inherit">""")]
    private static partial Regex OwnFile();

    private static string Literal(string text) => Microsoft.CodeAnalysis.CSharp.SymbolDisplay.FormatLiteral(text, quote: true);

    private static void Write(string name, string text)
    {
        if (Environment.GetEnvironmentVariable(FolderVariable) is { Length: > 0 } folder)
        {
            File.WriteAllText(Path.Combine(folder, name), text);
        }
    }
}
