using System.CommandLine;
using System.Globalization;

namespace FuelSizing.Notebooks;

/// <summary>The program: read, run, report.</summary>
internal static class NotebookProgram
{
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error)
    {
        var notebook = new Argument<FileInfo>("notebook") { Description = "The notebook (.ipynb) to run. Its code cells must be C#." };
        var report = new Option<FileInfo?>("--output", "-o") { Description = "Where to write the report. Default: artifacts/reports/<name>.html under the current directory." };
        var set = new Option<string[]>("--set") { Description = "name=value: sets a variable of the notebook's inputs cell for this run; a number is in the unit that the cell says. May be given again for others." };
        var command = new RootCommand(
            "Runs a FuelSizing notebook without a notebook server and writes one self-contained HTML report. "
            + "Exit code 0: every cell ran, whatever the verdict. 1: a cell failed; the report ends with the failure. 2: wrong arguments, or a notebook that cannot be read or run.")
        {
            notebook,
            report,
            set,
        };
        command.SetAction((parsed, cancellation) => RunAsync(
            parsed.GetRequiredValue(notebook), parsed.GetValue(report), parsed.GetValue(set) ?? [], output, error, cancellation));

        // A value that begins with @ is a value, not the name of a file of arguments.
        var parsed = command.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        var configuration = new InvocationConfiguration { Output = output, Error = error };
        int code = await parsed.InvokeAsync(configuration).ConfigureAwait(false);
        return parsed.Errors.Count > 0 ? ExitCode.BadInput : code;
    }

    private static async Task<int> RunAsync(
        FileInfo notebook, FileInfo? report, string[] set, TextWriter output, TextWriter error, CancellationToken cancellation)
    {
        try
        {
            var (cells, changed) = InputsCell.Apply(NotebookReader.Read(notebook), InputSetting.Parse(set));
            foreach (var cell in cells.Where(cell => cell.IsCode))
            {
                // Asked before the first cell runs, so that a wrong version costs no waiting.
                BundledPackages.Satisfy(cell);
            }

            report ??= new FileInfo(Path.Combine("artifacts", "reports", Path.ChangeExtension(notebook.Name, ".html")));
            report.Directory?.Create();
            foreach (var input in changed)
            {
                await output.WriteLineAsync($"set {input}").ConfigureAwait(false);
            }

            var runs = await RunCellsAsync(cells, output, cancellation).ConfigureAwait(false);
            await File.WriteAllTextAsync(report.FullName, HtmlReport.Render(notebook.Name, runs, cells.Count, changed), cancellation).ConfigureAwait(false);
            return Conclude(runs, report, output, error);
        }
        catch (NotebookException refusal)
        {
            await error.WriteLineAsync(refusal.Message).ConfigureAwait(false);
            return ExitCode.BadInput;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            await error.WriteLineAsync($"Cannot write the report: {failure.Message} Choose another place with --output.").ConfigureAwait(false);
            return ExitCode.BadInput;
        }
    }

    private static async Task<List<CellRun>> RunCellsAsync(IReadOnlyList<NotebookCell> cells, TextWriter output, CancellationToken cancellation)
    {
        using var runner = new CellRunner();
        var runs = new List<CellRun>();
        foreach (var cell in cells)
        {
            if (!cell.IsCode)
            {
                runs.Add(new CellRun(cell, [], null, TimeSpan.Zero));
                continue;
            }

            await output.WriteAsync($"cell {cell.Number} of {cells.Count} \u2026 ").ConfigureAwait(false);
            await output.FlushAsync(cancellation).ConfigureAwait(false);
            var run = await runner.RunAsync(cell, cancellation).ConfigureAwait(false);
            runs.Add(run);
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{run.Elapsed.TotalSeconds:0.0} s{(run.Failure is null ? "" : " failed")}")).ConfigureAwait(false);
            if (run.Failure is not null)
            {
                break;
            }
        }

        return runs;
    }

    private static int Conclude(List<CellRun> runs, FileInfo report, TextWriter output, TextWriter error)
    {
        foreach (var verdict in runs.SelectMany(run => run.Verdicts))
        {
            output.WriteLine(verdict.ToPlainText());
        }

        output.WriteLine($"Report: {Path.GetRelativePath(Environment.CurrentDirectory, report.FullName)}");
        if (runs.Find(run => run.Failure is not null) is { } failed)
        {
            error.WriteLine($"Cell {failed.Cell.Number} failed:\n{failed.Failure}");
            return ExitCode.CellFailed;
        }

        return ExitCode.Ran;
    }
}
