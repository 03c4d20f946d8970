using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using FuelSizing.Files;

namespace FuelSizing.Notebooks;

/// <summary>The program: read, run, report.</summary>
internal static class NotebookProgram
{
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error)
    {
        var notebook = new Argument<FileInfo>("notebook") { Description = "The notebook (.ipynb) to run. Its code cells must be C#." };
        var report = new Option<FileInfo?>("--output", "-o") { Description = "Where to write the report. Default: artifacts/reports/<name>.html under the current directory." };
        var set = new Option<string[]>("--set") { Description = "name=value: sets a variable of the notebook's inputs cell for this run, with its unit: boost=8psi; a bare number is in the unit that the cell says. setup.PATH=value sets a field of the setup file. May be given again for others." };
        var setup = new Option<string?>("--setup") { Description = "A setup file (docs/setups.md) that the notebook takes its parts from, in place of those in its inputs cell." };
        var accept = new Option<string[]>("--accept") { Description = "name: confirms an input whose value is not plausible. May be given again for others." };
        var timeout = new Option<TimeSpan?>("--timeout")
        {
            Description = "Seconds that each cell may take, 0.1 to 86400; a cell that takes longer is stopped. Without it a cell runs until it ends or Ctrl+C stops it.",
            CustomParser = given => Seconds(given),
        };
        var follow = new Option<bool>("--follow-verdict") { Description = "Let the exit code follow the last verdict: 0 it holds, 3 it fails, 4 it cannot say or there is none, 5 it holds as far as judged." };
        var command = new RootCommand(
            "Runs a FuelSizing notebook without a notebook server and writes one self-contained HTML report. "
            + "Exit code 0: every cell ran, whatever the verdict unless --follow-verdict is given. 1: a cell failed or was stopped; the report ends with it. "
            + "2: wrong arguments, a notebook that cannot be read or run, or a report that cannot be written. "
            + "6: an input is not plausible and was not confirmed with --accept; nothing was run.")
        {
            notebook,
            report,
            set,
            setup,
            accept,
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
                parsed.GetValue(setup),
                parsed.GetValue(accept) ?? [],
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
        string? setup,
        string[] accept,
        TimeSpan timeout,
        bool isVerdictFollowed,
        TextWriter output,
        TextWriter error,
        CancellationToken cancellation)
    {
        try
        {
            report ??= new FileInfo(Path.Combine("artifacts", "reports", Path.ChangeExtension(notebook.Name, ".html")));
            var (cells, changed, questions, parts) = Inputs(NotebookReader.Read(notebook), InputSetting.Parse(set), setup, report);
            if (!await AskAsync(questions, accept, output, error).ConfigureAwait(false))
            {
                return ExitCode.Implausible;
            }

            foreach (var cell in cells.Where(cell => cell.IsCode))
            {
                // Asked before the first cell runs, so that a refusal costs no waiting and leaves nothing half done.
                BundledPackages.Satisfy(cell);
            }

            ReportFile.RefuseNotebook(report, notebook);
            report.Directory?.Create();
            if (parts?.Text is { } text)
            {
                await File.WriteAllTextAsync(parts.File, text, cancellation).ConfigureAwait(false);
            }

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

    /// <summary>The cells with what the command line sets, and everything that is to be asked before they run.</summary>
    private static (IReadOnlyList<NotebookCell> Cells, IReadOnlyList<ChangedInput> Changed, IReadOnlyList<InputQuestion> Questions, SetupInput? Setup) Inputs(
        IReadOnlyList<NotebookCell> cells, IReadOnlyList<InputSetting> settings, string? setup, FileInfo report)
    {
        InputSetting[] fields = [.. settings.Where(setting => setting.Name.StartsWith(SetupInput.Prefix, StringComparison.Ordinal))];
        InputSetting[] inputs = [.. settings.Except(fields)];
        if (setup is not null)
        {
            inputs = inputs.All(input => input.Name != InputsCell.SetupFile)
                ? [.. inputs, new(InputsCell.SetupFile, setup)]
                : throw new NotebookException($"--setup and --set {InputsCell.SetupFile} say the same. Keep one.");
        }

        string file = InputsCell.SetupOf(cells, inputs);
        if (setup is not null && file.Length == 0)
        {
            throw new NotebookException("--setup needs the name of a setup file (docs/setups.md).");
        }

        if (file.Length == 0)
        {
            var plain = fields.Length == 0
                ? InputsCell.Apply(cells, inputs)
                : throw new NotebookException($"--set {fields[0].Name}: there is no setup file to change. Give one with --setup FILE.");
            return (plain.Cells, plain.Changed, plain.Questions, null);
        }

        SetupInput read = SetupInput.Read(file, fields, report);
        InputSetting[] named = [.. inputs.Where(input => input.Name != InputsCell.SetupFile), new(InputsCell.SetupFile, read.File)];
        var applied = InputsCell.Apply(cells, named);
        return (applied.Cells, [.. applied.Changed, .. read.Changed], [.. applied.Questions, .. read.Questions], read);
    }

    /// <summary>Puts every question that was not confirmed; false where there is one.</summary>
    private static async Task<bool> AskAsync(IReadOnlyList<InputQuestion> questions, string[] accept, TextWriter output, TextWriter error)
    {
        HashSet<string> accepted = [.. accept.Select(name => InputSetting.WithoutRows(Field(name.Trim())))];
        InputQuestion[] open = [.. questions.Where(question => !accepted.Contains(InputSetting.WithoutRows(Field(question.Input))))];
        foreach (InputQuestion question in questions.Except(open))
        {
            await output.WriteLineAsync($"confirmed: {question}").ConfigureAwait(false);
        }

        foreach (InputQuestion question in open)
        {
            await error.WriteLineAsync($"{question} To confirm: --accept {InputSetting.WithoutRows(question.Input)}").ConfigureAwait(false);
        }

        return open.Length == 0;

        static string Field(string name) => name.StartsWith(SetupInput.Prefix, StringComparison.Ordinal) ? name[SetupInput.Prefix.Length..] : name;
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
