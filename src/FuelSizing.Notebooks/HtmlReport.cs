using System.Globalization;
using System.Reflection;
using FuelSizing.Interactive;
using Microsoft.AspNetCore.Html;
using Microsoft.DotNet.Interactive.Formatting;
using static Microsoft.DotNet.Interactive.Formatting.PocketViewTags;

namespace FuelSizing.Notebooks;

/// <summary>Writes a run as one HTML page that needs nothing but itself.</summary>
internal static class HtmlReport
{
    /// <summary>Whatever a cell displays, the page loads nothing and runs nothing.</summary>
    private const string ContentPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; form-action 'none'; base-uri 'none'";

    public static string Render(
        string notebookName, IReadOnlyList<CellRun> runs, int cellsInNotebook, IReadOnlyList<ChangedInput> changed, NotebookCell? running = null)
    {
        string heading = runs.Where(run => !run.Cell.IsCode).Select(run => Prose.Heading(run.Cell.Text)).FirstOrDefault(text => text is not null) ?? notebookName;
        PocketView page = html[lang: "en"](
            head(
                new HtmlString("<meta charset=\"utf-8\">"),
                new HtmlString($"<meta http-equiv=\"Content-Security-Policy\" content=\"{ContentPolicy}\">"),
                new HtmlString("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"),
                title(heading),
                style(new HtmlString(Style()))),
            body(
                header(p(Provenance(notebookName, runs, cellsInNotebook)), Inputs(changed)),
                Summary(runs),
                main(runs.Select(Cell).ToArray(), (running is null ? [] : new[] { Unfinished(running) }))));
        return "<!DOCTYPE html>\n" + page + "\n";
    }

    private static string Provenance(string notebookName, IReadOnlyList<CellRun> runs, int cellsInNotebook)
    {
        double seconds = runs.Sum(run => run.Elapsed.TotalSeconds);
        string reach =
            runs.FirstOrDefault(run => !run.IsDone) is { } last ? $"{runs.Count} of {cellsInNotebook} cells, {(last.IsStopped ? "stopped in the last" : "stopped at a failure")}"
            : runs.Count == cellsInNotebook ? $"all {cellsInNotebook} cells"
            : $"{runs.Count} of {cellsInNotebook} cells so far";
        return string.Create(CultureInfo.InvariantCulture, $"{notebookName}, run with FuelSizing {BundledPackages.Version}: {reach}, {seconds:0.0} s.");
    }

    /// <summary>Which inputs are not the notebook's own.</summary>
    private static IHtmlContent Inputs(IReadOnlyList<ChangedInput> changed)
    {
        if (changed.Count == 0)
        {
            return HtmlString.Empty;
        }

        PocketView view = div(
            p("Inputs set for this run:"),
            ul(changed.Select(input => li($"{input}")).ToArray()));
        return view;
    }

    private static IHtmlContent Summary(IReadOnlyList<CellRun> runs)
    {
        var found = runs.SelectMany(run => run.Verdicts.Select(verdict => (run.Cell.Number, Verdict: verdict))).ToList();
        if (found.Count == 0)
        {
            return HtmlString.Empty;
        }

        PocketView view = nav[aria_label: "Verdicts"](
            p(found.Count == 1 ? "Verdict" : "Verdicts"),
            ul(found.Select(item => li(a[href: $"#cell-{item.Number}"](item.Verdict.Line))).ToArray()));
        return view;
    }

    private static IHtmlContent Cell(CellRun run)
    {
        string anchor = $"cell-{run.Cell.Number}";
        if (!run.Cell.IsCode)
        {
            PocketView prose = section[id: anchor, @class: "prose"](new HtmlString(Prose.ToHtml(run.Cell.Text)));
            return prose;
        }

        PocketView code = section[id: anchor](
            details(
                summary($"Code of cell {run.Cell.Number}"),
                pre[tabindex: "0"](run.Cell.Text)),
            run.Outputs.Select(Output).ToArray(),
            (run.IsDone ? [] : new[] { Failure(run) }));
        return code;
    }

    private static IHtmlContent Output(CellOutput output)
    {
        PocketView view = output.MimeType == HtmlFormatter.MimeType
            ? div[@class: "output"](new HtmlString(output.Text))
            : div[@class: "output"](pre[tabindex: "0"](output.Text.TrimEnd()));
        return view;
    }

    private static PocketView Failure(CellRun run)
    {
        PocketView view = run.IsStopped
            ? div[@class: "failure", role: "alert"](
                p(string.Create(CultureInfo.InvariantCulture, $"Cell {run.Cell.Number} was stopped after {run.Elapsed.TotalSeconds:0.0} s; the run ends here.")))
            : div[@class: "failure", role: "alert"](
                p($"Cell {run.Cell.Number} failed; the run stopped here."),
                pre(run.Failure));
        return view;
    }

    /// <summary>The end of a page that no later one took the place of.</summary>
    private static PocketView Unfinished(NotebookCell running)
    {
        PocketView view = div[@class: "failure", role: "alert"](
            p($"Cell {running.Number} had begun and not ended when this page was written."),
            p("If no run is under way, that cell ended the program."));
        return view;
    }

    private static string Style()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("ReportStyle.css")!;
        using var reader = new StreamReader(stream);
        return $"{Palette.InTheDark}\n{reader.ReadToEnd()}";
    }
}
