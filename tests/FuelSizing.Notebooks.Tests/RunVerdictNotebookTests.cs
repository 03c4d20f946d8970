using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Notebook 07 on logs of a lean car: the verdict stands in the console, at the page's head and in the exit code.</summary>
public sealed partial class RunVerdictNotebookTests : IDisposable
{
    private const string Mapping = """
        {
          "mapping": 1,
          "channels": {
            "time": { "column": "Time", "unit": "s" },
            "speed": { "column": "Speed", "unit": "rev/min" },
            "manifold_pressure": { "column": "Boost", "unit": "kPa", "reference": "gauge" },
            "rail_pressure": { "column": "Rail", "unit": "kPa", "reference": "gauge" },
            "lambda": { "column": "Lambda" }
          }
        }
        """;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fuelsizing-run-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task LeanLog_FailsInConsolePageHeadAndExitCode()
    {
        const string lambda = "0.92";
        using var notebook = await AfterThePull();

        ProgramRun run = await notebook.RunAsync([.. Log(_ => lambda), "--follow-verdict"]);

        Assert.Equal("", run.Error);
        Assert.Equal(3, run.Code);
        string[] verdicts = [.. run.Output.Split('\n').Where(line => Verdict().IsMatch(line))];
        Assert.StartsWith($"Fails: the run does not hold: lean on boost: lambda {lambda} at ", verdicts[^1], StringComparison.Ordinal);
        Assert.Contains("detonates and destroys an engine in seconds", verdicts[^1], StringComparison.Ordinal);
        Assert.Contains(Cautions.OneLine, run.Output, StringComparison.Ordinal);

        // The page's head is what stands before its first cell.
        string page = System.Net.WebUtility.HtmlDecode(run.Report!);
        string head = page[..page.IndexOf("<main", StringComparison.Ordinal)];
        Assert.Contains($"Fails: the run does not hold: lean on boost: lambda {lambda} at ", head, StringComparison.Ordinal);
    }

    [Fact]
    public async Task LogWithoutLambdaOnBoost_CannotSay()
    {
        using var notebook = await AfterThePull();

        ProgramRun run = await notebook.RunAsync([.. Log(boost => boost > 0 ? "" : "0.90"), "--follow-verdict"]);

        Assert.Equal("", run.Error);
        Assert.Equal(4, run.Code);
        Assert.Matches("(?m)^Cannot say: cannot tell whether the run holds: mixture: no row on boost has a usable lambda", run.Output);
        Assert.DoesNotContain("no lean stretch", run.Output, StringComparison.Ordinal);
    }

    private static async Task<InventedNotebook> AfterThePull() =>
        InventedNotebook.OfText(await File.ReadAllTextAsync(Repository.PathOf("notebooks", "07-after-the-pull.ipynb")));

    /// <summary>Two pulls with the rail where the notebook's regulator should hold it: 300 kPa, gain 3 from 20 kPa on.</summary>
    private string[] Log(Func<double, string> lambda)
    {
        StringBuilder text = new("Time,Speed,Boost,Rail,Lambda\n");
        for (int i = 0; i < 80; i++)
        {
            double speed = 2400 + (100 * (i % 40));
            double boost = Math.Min(60, -20 + (4 * (i % 40)));
            double rail = 300 + Math.Min(boost, 20) + (3 * Math.Max(0, boost - 20)) + (i % 3);
            text.AppendLine(CultureInfo.InvariantCulture, $"{i * 0.1:0.0},{speed},{boost},{rail},{lambda(boost)}");
        }

        File.WriteAllText(Path.Combine(_folder.FullName, "lean.csv"), text.ToString());
        File.WriteAllText(Path.Combine(_folder.FullName, "mapping.json"), Mapping);
        return ["--set", $"log={Path.Combine(_folder.FullName, "lean.csv")}", "--set", $"mapping={Path.Combine(_folder.FullName, "mapping.json")}"];
    }

    [GeneratedRegex("^(Holds|Holds as far as judged|Fails|Cannot say): ")]
    private static partial Regex Verdict();
}
