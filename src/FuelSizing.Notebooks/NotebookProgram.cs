using System.CommandLine;
using System.CommandLine.Parsing;
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
        var timeout = new Option<TimeSpan?>("--timeout")
        {
            Description = "Seconds that each cell may take, 0.1 to 86400; a cell that takes longer is stopped. Without it a cell runs until it ends or Ctrl+C stops it.",
            CustomParser = given => Seconds(given),
        };
        var follow = new Option<bool>("--follow-verdict") { Description = "Let the exit code follow the last verdict: 0 it holds, 3 it fails, 4 it cannot say or there is none, 5 it holds as far as judged." };
        var command = new RootCommand(
            "Runs a FuelSizing notebook without a notebook server and writes one self-contained HTML report. "
            + "Exit code 0: every cell ran, whatever the verdict unless --follow-verdict is given. 1: a cell failed or was stopped; the report ends with it. "
            + "2: wrong arguments, a notebook that cannot be read or run, or a report that cannot be written.")
        {
            notebook,
            report,
            set,
            timeout,
            follow,
        };

        // Handed to another thread at once: the library knows of a run that it can stop only when this returns, and ends the program
        // without a report if Ctrl+C comes before.
        command.SetAction((parsed, cancellation) => Task.Run(
            () => RunAsync(
                parsed.GetRequiredValue(notebook),
                parsed.GetValue(report),
                parsed.GetValue(set) ?? [],
                parsed.GetValue(timeout) ?? Timeout.InfiniteTimeSpan,
                parsed.GetValue(follow),
                output,
                error,
                cancellation),
            CancellationToken.None));

        // A value that begins with @ is a value, not the name of a file of arguments.
        var parsed = command.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });

        // A stopped run still writes its report, beside a cell that may keep the processor busy.
        var configuration = new InvocationConfiguration { Output = output, Error = error, ProcessTerminationTimeout = TimeSpan.FromSeconds(30) };
        int code = await parsed.InvokeAsync(configuration).ConfigureAwait(false);
        return parsed.Errors.Count > 0 ? ExitCode.BadInput : code;
    }

    private static TimeSpan? Seconds(ArgumentResult given)
    {
        string text = given.Tokens[0].Value;
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double seconds) && seconds is >= 0.1 and <= 86_400)
        {
            return TimeSpan.FromSeconds(seconds);
        }

        given.AddError($"--timeout {text}: expected the seconds that each cell may take, 0.1 to 86400.");
        return null;
    }

    private static async Task<int> RunAsync(
        FileInfo notebook,
        FileInfo? report,
        string[] set,
        TimeSpan timeout,
        bool isVerdictFollowed,
        TextWriter output,
        TextWriter error,
        CancellationToken cancellation)
    {
        try
        {
            var (cells, changed) = InputsCell.Apply(NotebookReader.Read(notebook), InputSetting.Parse(set));
            foreach (var cell in cells.Where(cell => cell.IsCode))
            {
                // Asked before the first cell runs, so that a refusal costs no waiting and leaves nothing half done.
                BundledPackages.Satisfy(cell);
            }

            report ??= new FileInfo(Path.Combine("artifacts", "reports", Path.ChangeExtension(notebook.Name, ".html")));
            ReportFile.RefuseNotebook(report, notebook);
            report.Directory?.Create();
            foreach (var input in changed)
            {
                await output.WriteLineAsync($"set {input}").ConfigureAwait(false);
            }

            var run = new NotebookRun(notebook.Name, cells, changed, report, timeout);
            await run.RunAsync(output, error, cancellation).ConfigureAwait(false);
            int code = Conclude(run.Cells, report, output, error);
            return code == ExitCode.Ran && isVerdictFollowed
                ? ExitCode.Of(run.Cells.SelectMany(cell => cell.Verdicts).LastOrDefault())
                : code;
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

    private static int Conclude(IReadOnlyList<CellRun> runs, FileInfo report, TextWriter output, TextWriter error)
    {
        bool isJudged = false;
        foreach (var verdict in runs.SelectMany(run => run.Verdicts))
        {
            output.WriteLine(verdict.ToPlainText());
            isJudged = true;
        }

        if (isJudged)
        {
            output.WriteLine(Cautions.OneLine);
        }

        output.WriteLine($"Report: {Path.GetRelativePath(Environment.CurrentDirectory, report.FullName)}");
        if (runs.FirstOrDefault(run => !run.IsDone) is { } last)
        {
            error.WriteLine(last.IsStopped
                ? string.Create(CultureInfo.InvariantCulture, $"Cell {last.Cell.Number} was stopped after {last.Elapsed.TotalSeconds:0.0} s.")
                : $"Cell {last.Cell.Number} failed:\n{last.Failure}");
            return ExitCode.CellFailed;
        }

        return ExitCode.Ran;
    }
}
