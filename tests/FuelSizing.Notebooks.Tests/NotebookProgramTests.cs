using System.Text.RegularExpressions;

namespace FuelSizing.Notebooks.Tests;

public partial class NotebookProgramTests
{
    [Fact]
    public async Task Run_NotebookWithEveryKindOfBlock_WritesOneReportAndPrintsTheVerdict()
    {
        using var notebook = InventedNotebook.OfCells(
            ("markdown", "# Is it adequate?\n\nSome *prose*."),
            ("code", InventedNotebook.Load),
            ("code", """display(new Table("Margins", [TableColumn.Text("Part"), TableColumn.Number("Margin")], [["pump", "21 %"]]));"""),
            ("code", """
                new LinePlot("Duty", new PlotAxis("Speed", "rev/min"), new PlotAxis("Duty cycle", "%"), [new PlotLine("petrol", [1000, 2000], [10, 20])])
                """),
            ("code", """Console.WriteLine("a printed line"); Callout.Fails("The injectors are limiting", "93 % at 6,800 rev/min")"""));

        var run = await notebook.RunAsync();

        Assert.Equal("", run.Error);
        Assert.Equal(0, run.Code);
        Assert.Matches(@"cell 2 of 5 … \d+\.\d s", run.Output);
        Assert.Contains("Fails: The injectors are limiting", run.Output, StringComparison.Ordinal);
        Assert.Contains("invented.html", run.Output, StringComparison.Ordinal);
        Assert.NotNull(run.Report);
        Assert.Contains("<title>Is it adequate?</title>", run.Report, StringComparison.Ordinal);
        Assert.Contains("<em>prose</em>", run.Report, StringComparison.Ordinal);
        Assert.Contains("<svg", run.Report, StringComparison.Ordinal);
        Assert.Contains("21 %", run.Report, StringComparison.Ordinal);
        Assert.Contains("a printed line", run.Report, StringComparison.Ordinal);
        Assert.Contains("""href="#cell-5">Fails: The injectors are limiting""", run.Report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_FinishedNotebook_ReportLoadsNothingFromElsewhere()
    {
        using var notebook = InventedNotebook.OfCells(
            ("markdown", "![a picture](https://example.org/p.png) and [a link](javascript:alert(1))"),
            ("code", InventedNotebook.Load + "\nCallout.Holds(\"fine\")"));

        var run = await notebook.RunAsync();

        Assert.Equal(0, run.Code);
        Assert.DoesNotMatch(LoadingAttribute(), run.Report);
        Assert.DoesNotContain("javascript:", run.Report, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("[picture: a picture]", run.Report, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", run.Report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_CellThatThrows_StopsThereAndKeepsTheEarlierReport()
    {
        using var notebook = InventedNotebook.OfCells(
            ("code", "Console.WriteLine(\"before\");"),
            ("code", "throw new InvalidOperationException(\"the tank is dry\");"),
            ("code", "Console.WriteLine(\"never shown\");"));

        var run = await notebook.RunAsync();

        Assert.Equal(1, run.Code);
        Assert.Contains("Cell 2 failed", run.Error, StringComparison.Ordinal);
        Assert.Contains("InvalidOperationException: the tank is dry", run.Error, StringComparison.Ordinal);
        Assert.Contains("before", run.Report, StringComparison.Ordinal);
        Assert.Contains("Cell 2 failed", run.Report, StringComparison.Ordinal);
        Assert.Contains("the tank is dry", run.Report, StringComparison.Ordinal);
        Assert.DoesNotContain("never shown", run.Report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_CellThatDoesNotCompile_NamesTheLineAsAnEditorCountsIt()
    {
        using var notebook = InventedNotebook.OfCells(("code", InventedNotebook.Load + "\nint boost = \"much\";"));

        var run = await notebook.RunAsync();

        Assert.Equal(1, run.Code);
        Assert.Contains("line 3, column 13", run.Error, StringComparison.Ordinal);
        Assert.Contains("CS0029", run.Report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_HostileTextInTitleCellAndPrint_IsEscapedInTheReport()
    {
        const string Hostile = "<script>alert(1)</script><img src=x onerror=alert(2)>";
        using var notebook = InventedNotebook.OfCells(
            ("markdown", $"# {Hostile}\n\n{Hostile}"),
            ("code", InventedNotebook.Load),
            ("code", $"""Console.WriteLine("{Hostile}"); display("{Hostile}"); display(new Table("{Hostile}", [TableColumn.Text("{Hostile}")], [["{Hostile}"]], "{Hostile}"));"""),
            ("code", $"""display(Callout.Fails("{Hostile}", "{Hostile}"));"""),
            ("code", $"""throw new Exception("{Hostile}");"""));

        var run = await notebook.RunAsync();

        Assert.Equal(1, run.Code);
        Assert.Contains("&lt;script&gt;", run.Report, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", run.Report, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", run.Report, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("""#r "nuget:FuelSizing.Interactive,9.9.9" """)]
    [InlineData("""#r "nuget: FuelSizing, 0.0.1" """)]
    public async Task Run_NotebookAskingForAnotherVersion_IsRefusedBeforeAnyCellRuns(string directive)
    {
        using var notebook = InventedNotebook.OfCells(("code", "Console.WriteLine(1);"), ("code", directive));

        var run = await notebook.RunAsync();

        Assert.Equal(2, run.Code);
        Assert.Contains("cell 2", run.Error, StringComparison.Ordinal);
        Assert.Contains(BundledPackages.Version, run.Error, StringComparison.Ordinal);
        Assert.Null(run.Report);
    }

    [Fact]
    public async Task Run_SharedValues_AreOfTheTypesThisProcessKnows()
    {
        using var notebook = InventedNotebook.OfCells(
            ("code", InventedNotebook.Load + "\nusing UnitsNet;\nvar p = Pressure.FromKilopascals(300);"),
            ("code", $"typeof(Callout).Module.ModuleVersionId == Guid.Parse(\"{typeof(Interactive.Callout).Module.ModuleVersionId}\") && p.Kilopascals == 300"));

        var run = await notebook.RunAsync();

        Assert.Equal("", run.Error);
        Assert.Contains("True", run.Report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_CautionAlone_IsNotPrintedAsAVerdict()
    {
        using var notebook = InventedNotebook.OfCells(("code", InventedNotebook.Load + "\nCallout.Caution(\"mind the mixture\")"));

        var run = await notebook.RunAsync();

        Assert.Equal(0, run.Code);
        Assert.DoesNotContain("mind the mixture", run.Output, StringComparison.Ordinal);
        Assert.Contains("mind the mixture", run.Report, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("python", "code", "1", "python")]
    [InlineData("F#", "code", "1", "fsharp")]
    [InlineData("C#", "code", "#!pwsh\nls", "pwsh")]
    [InlineData("C#", "code", "#!time\n1", "#!time")]
    [InlineData("C#", "raw", "1", "raw")]
    public async Task Run_CellThatIsNotCSharp_IsRefusedByName(string language, string type, string source, string named)
    {
        using var notebook = InventedNotebook.OfLanguage(language, (type, source));

        var run = await notebook.RunAsync();

        Assert.Equal(2, run.Code);
        Assert.Contains("cell 1", run.Error, StringComparison.Ordinal);
        Assert.Contains(named, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("not json")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("""{"cells":5}""")]
    [InlineData("""{"cells":[5]}""")]
    [InlineData("""{"cells":[]}""")]
    [InlineData("""{"cells":[{"cell_type":"code","source":"1","metadata":null}],"nbformat":4}""")]
    [InlineData("""{"cells":[{"cell_type":"code","source":"1"}],"metadata":{"a":{"b":1,"b":2}},"nbformat":4}""")]
    public async Task Run_FileThatIsNoNotebook_IsBadInputWithAMessage(string text)
    {
        using var notebook = InventedNotebook.OfText(text);

        var run = await notebook.RunAsync();

        Assert.Equal(2, run.Code);
        Assert.Contains("invented.ipynb", run.Error, StringComparison.Ordinal);
    }

    /// <summary>The compiler's parser would take a stack frame for every bracket, and the process down with it.</summary>
    [Theory]
    [InlineData("(")]
    [InlineData("$\"{")]
    [InlineData("a ? ")]
    public async Task Run_CellThatNestsTooDeep_IsRefusedBeforeAnyCellRuns(string grain)
    {
        using var notebook = InventedNotebook.OfCells(("code", "1"), ("code", string.Concat(Enumerable.Repeat(grain, 50_000))));

        var run = await notebook.RunAsync();

        Assert.Equal(2, run.Code);
        Assert.StartsWith("Cell 2 has more than 200 brackets within one another", run.Error, StringComparison.Ordinal);
        Assert.Null(run.Report);
    }

    [Theory]
    [InlineData()]
    [InlineData("missing.ipynb")]
    [InlineData("a.ipynb", "b.ipynb")]
    public async Task Run_WrongArguments_IsBadInput(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();

        Assert.Equal(2, await NotebookProgram.RunAsync(args, output, error));
        Assert.NotEqual("", error.ToString());
    }

    [GeneratedRegex("""<(img|link|iframe|object|embed|audio|video|source|base|script)\b|\bsrc(set)?=|@import|url\((?!#)""", RegexOptions.IgnoreCase)]
    private static partial Regex LoadingAttribute();
}
