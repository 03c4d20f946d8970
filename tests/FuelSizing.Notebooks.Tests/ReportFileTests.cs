namespace FuelSizing.Notebooks.Tests;

public sealed class ReportFileTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fuelsizing-report-");

    private FileInfo Place => new(Path.Combine(_folder.FullName, "report.html"));

    public void Dispose() => _folder.Delete(recursive: true);

    /// <summary>Whoever has the earlier page open goes on reading the earlier page: it is replaced, not written over.</summary>
    [Fact]
    public async Task Write_OverAnEarlierReport_LeavesItWholeForWhoeverReadsIt()
    {
        await ReportFile.WriteAsync(Place, "the earlier page");
        using var reader = new StreamReader(new FileStream(Place.FullName, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));

        await ReportFile.WriteAsync(Place, "another");

        Assert.Equal("the earlier page", await reader.ReadToEndAsync());
        Assert.Equal("another", await File.ReadAllTextAsync(Place.FullName));
        Assert.Single(_folder.GetFiles());
    }

    [Fact]
    public async Task Write_WhereAFolderIsInTheWay_LeavesNoDraftBehind()
    {
        Place.Directory!.CreateSubdirectory(Place.Name);

        Exception refused = (await Record.ExceptionAsync(() => ReportFile.WriteAsync(Place, "page")))!;

        Assert.True(refused is IOException or UnauthorizedAccessException, $"{refused}");
        Assert.Empty(_folder.GetFiles());
    }

    [Fact]
    public async Task Run_ThatIsRefused_LeavesTheReportOfAnEarlierRun()
    {
        using var notebook = InventedNotebook.OfCells(("code", "#!pwsh\nls"));
        Directory.CreateDirectory(Path.GetDirectoryName(notebook.ReportPath)!);
        await File.WriteAllTextAsync(notebook.ReportPath, "the earlier page");

        var run = await notebook.RunAsync();

        Assert.Equal(2, run.Code);
        Assert.Equal("the earlier page", run.Report);
    }

    [Fact]
    public async Task Run_WhereAFolderIsInTheWay_SaysSoBeforeAnyCellRuns()
    {
        using var notebook = InventedNotebook.OfCells(("code", "1"));
        Directory.CreateDirectory(notebook.ReportPath);

        var run = await notebook.RunAsync();

        Assert.Equal(2, run.Code);
        Assert.Contains("Cannot write the report", run.Error, StringComparison.Ordinal);
        Assert.Equal("", run.Output);
    }
}
