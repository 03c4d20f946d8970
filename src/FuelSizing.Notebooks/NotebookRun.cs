using System.Globalization;

namespace FuelSizing.Notebooks;

/// <summary>Runs a notebook's cells in order up to the first that fails or is stopped, and keeps the report abreast of them.</summary>
/// <remarks>
/// The report is written before each code cell and after the last. So what came before is there even if a cell takes the whole
/// program down, as an overflow of the stack does.
/// </remarks>
internal sealed class NotebookRun(
    string name, IReadOnlyList<NotebookCell> cells, IReadOnlyList<ChangedInput> changed, FileInfo report, TimeSpan timeout)
{
    private readonly List<CellRun> _runs = [];
    private NotebookCell? _current;

    /// <summary>What became of the cells so far.</summary>
    public IReadOnlyList<CellRun> Cells => _runs;

    public async Task RunAsync(TextWriter output, TextWriter error, CancellationToken cancellation)
    {
        var progress = new ProgressText(output, TimeSpan.FromSeconds(2));
        using var runner = new CellRunner(progress.Take);
        void Crashed(object sender, UnhandledExceptionEventArgs happening) => Crash(runner, happening.ExceptionObject, error);
        AppDomain.CurrentDomain.UnhandledException += Crashed;
        try
        {
            await RunCellsAsync(runner, progress, output, error, cancellation).ConfigureAwait(false);
        }
        finally
        {
            AppDomain.CurrentDomain.UnhandledException -= Crashed;
        }
    }

    private async Task RunCellsAsync(CellRunner runner, ProgressText progress, TextWriter output, TextWriter error, CancellationToken cancellation)
    {
        foreach (var cell in cells)
        {
            if (!cell.IsCode)
            {
                _runs.Add(new CellRun(cell, [], null, TimeSpan.Zero));
                continue;
            }

            _current = cell;
            await WriteReportAsync(cell).ConfigureAwait(false);
            await output.WriteAsync($"cell {cell.Number} of {cells.Count} \u2026 ").ConfigureAwait(false);
            await output.FlushAsync(CancellationToken.None).ConfigureAwait(false);
            progress.Begin();
            var run = await RunCellAsync(runner, cell, error, cancellation).ConfigureAwait(false);
            _runs.Add(run);
            progress.End();
            string outcome = run.IsDone ? "" : run.IsStopped ? " stopped" : " failed";
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{run.Elapsed.TotalSeconds:0.0} s{outcome}")).ConfigureAwait(false);
            if (!run.IsDone)
            {
                break;
            }
        }

        await WriteReportAsync(null).ConfigureAwait(false);
    }

    /// <summary>A thread that a cell left running failed, which ends the program: it ends with the report, and with the code that is documented.</summary>
    private void Crash(CellRunner runner, object thrown, TextWriter error)
    {
        string failure = $"A thread that this cell, or one before it, left running failed with {thrown.GetType().Name}: {(thrown as Exception)?.Message}";
        if (_current is { } cell)
        {
            error.WriteLine($"Cell {cell.Number}: {failure}");
            CellRun[] runs = [.. _runs.ToArray().TakeWhile(run => run.Cell.Number < cell.Number), new CellRun(cell, runner.Outputs, failure, TimeSpan.Zero)];
            ReportFile.Write(report, HtmlReport.Render(name, runs, cells.Count, changed, null));
        }

        _current = null;
        Environment.Exit(ExitCode.CellFailed);
    }

    private async Task<CellRun> RunCellAsync(CellRunner runner, NotebookCell cell, TextWriter error, CancellationToken cancellation)
    {
        // A cell that ends the program must not pass for a notebook that ran.
        void Ended(object? sender, EventArgs happening)
        {
            if (_current is null)
            {
                return;
            }

            error.WriteLine($"Cell {cell.Number} ended the program.");
            Environment.ExitCode = ExitCode.CellFailed;
        }

        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        stop.CancelAfter(timeout);
        AppDomain.CurrentDomain.ProcessExit += Ended;
        try
        {
            return await runner.RunAsync(cell, stop.Token).ConfigureAwait(false);
        }
        finally
        {
            AppDomain.CurrentDomain.ProcessExit -= Ended;
        }
    }

    private Task WriteReportAsync(NotebookCell? running) =>
        ReportFile.WriteAsync(report, HtmlReport.Render(name, _runs, cells.Count, changed, running));
}
