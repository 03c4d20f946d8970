using System.Diagnostics;
using System.Globalization;

namespace FuelSizing.Notebooks.Tests;

/// <summary>A cell that never ends, or that ends the program, leaves the report so far and an exit code that is not 0.</summary>
public sealed class StoppedCellTests : IDisposable
{
    private const string Spinning = """Console.WriteLine("spinning"); while (true) { }""";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fuelsizing-stopped-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task Cell_StoppedWhileItWaits_KeepsWhatItShowed()
    {
        string mark = Path.Combine(_folder.FullName, "begun");
        using var stop = new CancellationTokenSource();
        using var runner = new CellRunner();
        var running = runner.RunAsync(
            new NotebookCell(1, true, $"display(\"waiting\"); System.IO.File.WriteAllText(@\"{mark}\", \"\"); await Task.Delay(-1);"), stop.Token);
        while (!running.IsCompleted && !File.Exists(mark))
        {
            await Task.Delay(50);
        }

        await stop.CancelAsync();
        var run = await running;

        Assert.True(run.IsStopped);
        Assert.False(run.IsDone);
        Assert.Null(run.Failure);
        Assert.Equal("waiting", Assert.Single(run.Outputs).Text);
    }

    [Fact]
    public async Task Run_CellThatWaitsForEver_IsStoppedByTheTimeoutAndNoneFollows()
    {
        using var notebook = InventedNotebook.OfCells(
            ("code", "await Task.Delay(-1);"),
            ("code", "Console.WriteLine(\"never shown\");"));

        var run = await notebook.RunAsync("--timeout", "0.5");

        Assert.Equal(1, run.Code);
        Assert.Contains("Cell 1 was stopped", run.Error, StringComparison.Ordinal);
        Assert.Contains("Cell 1 was stopped", run.Report, StringComparison.Ordinal);
        Assert.DoesNotContain("never shown", run.Report, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("NaN")]
    [InlineData("1e9")]
    [InlineData("soon")]
    public async Task Run_TimeoutOutOfItsRange_IsBadInput(string seconds)
    {
        using var notebook = InventedNotebook.OfCells(("code", "1"));

        var run = await notebook.RunAsync("--timeout", seconds);

        Assert.Equal(2, run.Code);
        Assert.Contains($"--timeout {seconds}", run.Error, StringComparison.Ordinal);
        Assert.Null(run.Report);
    }

    [Fact]
    public async Task Program_CellThatNeverYields_EndsAtTheTimeout()
    {
        using var notebook = InventedNotebook.OfCells(("code", Spinning));

        var run = await ProgramAsync(notebook, "--timeout", "2");

        Assert.Equal(1, run.Code);
        Assert.Contains("Cell 1 was stopped", run.Error, StringComparison.Ordinal);
        Assert.Contains("Cell 1 was stopped", run.Report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Program_InterruptedByTheUser_LeavesTheReportSoFar()
    {
        using var notebook = InventedNotebook.OfCells(("code", Spinning));
        using var program = Start(notebook);
        var error = program.StandardError.ReadToEndAsync();

        // The page written before the cell says that it has begun.
        while (!program.HasExited && !File.Exists(notebook.ReportPath))
        {
            await Task.Delay(50);
        }

        using var kill = Process.Start("kill", ["-INT", program.Id.ToString(CultureInfo.InvariantCulture)])!;
        await program.WaitForExitAsync();

        Assert.Equal(1, program.ExitCode);
        Assert.Contains("Cell 1 was stopped", await error, StringComparison.Ordinal);
        Assert.Contains("Cell 1 was stopped", await File.ReadAllTextAsync(notebook.ReportPath), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Environment.Exit(0);", "Cell 2 ended the program.")]
    [InlineData("int Deeper(int n) => Deeper(n + 1) + 1; Deeper(1)", "overflow")]
    public async Task Program_CellThatTakesItDown_LeavesWhatCameBeforeAndIsNamed(string code, string said)
    {
        using var notebook = InventedNotebook.OfCells(("code", "Console.WriteLine(\"before\");"), ("code", code));

        var run = await ProgramAsync(notebook);

        Assert.NotEqual(0, run.Code);
        Assert.EndsWith("cell 2 of 2 … ", run.Output, StringComparison.Ordinal);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
        Assert.Contains("before", run.Report, StringComparison.Ordinal);
        Assert.Contains("Cell 2 had begun and not ended", run.Report, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("new System.Threading.Thread(() => System.Threading.Thread.Sleep(-1)).Start();", 0)]
    [InlineData("for (int i = 0; i < 8; i++) { new System.Threading.Thread(() => { while (true) { } }).Start(); }", 0)]
    [InlineData("_ = new System.Threading.Timer(_ => { }, null, 0, 1); _ = System.Threading.Tasks.Task.Run(async () => { while (true) { await System.Threading.Tasks.Task.Yield(); } });", 0)]
    [InlineData("new System.Threading.Thread(() => System.Threading.Thread.Sleep(-1)).Start(); throw new System.Exception(\"after\");", 1)]
    public async Task Program_CellThatLeavesAThreadRunning_EndsWithTheLastCell(string code, int exit)
    {
        using var notebook = InventedNotebook.OfCells(("code", code));
        using var program = Start(notebook);
        var error = program.StandardError.ReadToEndAsync();

        // The last line of the output, printed when the page is written; a cell that fails prints another after it.
        string? line;
        do
        {
            line = await program.StandardOutput.ReadLineAsync();
        }
        while (line?.StartsWith("Report: ", StringComparison.Ordinal) == false);

        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        var clock = Stopwatch.StartNew();
        await program.WaitForExitAsync(patience.Token);
        await error;

        Assert.NotNull(line);
        Assert.Equal(exit, program.ExitCode);
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(10), $"it took {clock.Elapsed} to end");
    }

    [Fact]
    public async Task Program_ThreadThatFailsLater_EndsWithTheCellsCodeAndReport()
    {
        using var notebook = InventedNotebook.OfCells(
            ("code", "Console.WriteLine(\"before\"); new System.Threading.Thread(() => { System.Threading.Thread.Sleep(500); throw new InvalidOperationException(\"the tank is dry\"); }).Start();"),
            ("code", "Console.WriteLine(\"waiting\"); await Task.Delay(-1);"));

        var run = await ProgramAsync(notebook);

        Assert.Equal(1, run.Code);
        Assert.Contains("Cell 2: A thread that this cell, or one before it, left running failed with InvalidOperationException: the tank is dry", run.Error, StringComparison.Ordinal);
        Assert.Contains("before", run.Report, StringComparison.Ordinal);
        Assert.Contains("the tank is dry", run.Report, StringComparison.Ordinal);
    }

    private static async Task<ProgramRun> ProgramAsync(InventedNotebook notebook, params string[] more)
    {
        using var program = Start(notebook, more);
        var output = program.StandardOutput.ReadToEndAsync();
        string error = await program.StandardError.ReadToEndAsync();
        await program.WaitForExitAsync();
        return new(program.ExitCode, await output, error, File.Exists(notebook.ReportPath) ? await File.ReadAllTextAsync(notebook.ReportPath) : null);
    }

    private static Process Start(InventedNotebook notebook, params string[] more)
    {
        string[] command =
        [
            Environment.ProcessPath!, "exec", typeof(NotebookProgram).Assembly.Location, notebook.NotebookPath, "--output", notebook.ReportPath, .. more,
        ];

        // A shell that runs the tests in its background has them ignore Ctrl+C, and what they start inherits that.
        string[] started = OperatingSystem.IsLinux() ? ["env", "--default-signal=INT", .. command] : command;
        var start = new ProcessStartInfo(started[0], started[1..])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };

        // A stack that overflows shall not leave a dump of memory behind.
        start.Environment["DOTNET_DbgEnableMiniDump"] = "0";
        return Process.Start(start)!;
    }
}
