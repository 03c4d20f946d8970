using System.Diagnostics;
using FuelSizing.Interactive;
using FuelSizing.Systems;
using Microsoft.CodeAnalysis;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;
using Microsoft.DotNet.Interactive.PackageManagement;

namespace FuelSizing.Notebooks;

/// <summary>Runs C# cells one after another in one kernel inside this process.</summary>
internal sealed class CellRunner : IDisposable
{
    private readonly CompositeKernel _kernel;

    public CellRunner()
    {
        FuelSizingExtension.Register();
        var csharp = new CSharpKernel()
            .UseKernelHelpers()
            .UseNugetDirective(
                (kernel, references) =>
                {
                    kernel.AddAssemblyReferences(references.SelectMany(reference => reference.AssemblyPaths));
                    return Task.CompletedTask;
                },
                false);
        csharp.AddAssemblyReferences(BundledPackages.AssemblyPaths);
        _kernel = new CompositeKernel { csharp };
        _kernel.DefaultKernelName = csharp.Name;
    }

    public async Task<CellRun> RunAsync(NotebookCell cell, CancellationToken cancellation = default)
    {
        var clock = Stopwatch.StartNew();
        string code = BundledPackages.Satisfy(cell);
        if (string.IsNullOrWhiteSpace(code))
        {
            return new CellRun(cell, [], null, clock.Elapsed);
        }

        var result = await _kernel.SendAsync(new SubmitCode(code), cancellation).ConfigureAwait(false);

        var outputs = new List<CellOutput>();
        var indexOfUpdatable = new Dictionary<string, int>();
        var errors = new List<string>();
        string? failure = null;
        foreach (var happening in result.Events)
        {
            switch (happening)
            {
                case DisplayEvent display:
                    Show(display, outputs, indexOfUpdatable);
                    break;
                case DiagnosticsProduced produced:
                    errors.AddRange(produced.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error).Select(Place).Except(errors));
                    break;
                case CommandFailed failed:
                    failure = errors.Count > 0 ? string.Join('\n', errors) : Reason(failed);
                    break;
            }
        }

        return new CellRun(cell, outputs, failure, clock.Elapsed);
    }

    public void Dispose() => _kernel.Dispose();

    private static void Show(DisplayEvent display, List<CellOutput> outputs, Dictionary<string, int> indexOfUpdatable)
    {
        var formatted = display.FormattedValues.FirstOrDefault(value => value.MimeType == HtmlFormatter.MimeType)
            ?? display.FormattedValues.FirstOrDefault(value => value.MimeType == PlainTextFormatter.MimeType)
            ?? display.FormattedValues.FirstOrDefault();
        if (formatted is null)
        {
            return;
        }

        var output = new CellOutput(formatted.MimeType, formatted.Value, VerdictIn(display.Value));
        if (display.ValueId is { } id && indexOfUpdatable.TryGetValue(id, out int index))
        {
            outputs[index] = output;
            return;
        }

        if (display.ValueId is { } fresh)
        {
            indexOfUpdatable[fresh] = outputs.Count;
        }

        outputs.Add(output);
    }

    private static Callout? VerdictIn(object? value) => value switch
    {
        Callout { IsVerdict: true } callout => callout,
        Verdict verdict => SizingCallouts.Verdict(verdict),
        _ => null,
    };

    /// <summary>A compiler error with its place counted as an editor counts, from 1.</summary>
    private static string Place(Microsoft.DotNet.Interactive.Diagnostic error) =>
        $"line {error.LinePositionSpan.Start.Line + 1}, column {error.LinePositionSpan.Start.Character + 1}: {error.Message} ({error.Code})";

    private static string Reason(CommandFailed failed) =>
        failed.Exception is { } exception and not CodeSubmissionCompilationErrorException
            ? $"{exception.GetType().Name}: {exception.Message}"
            : failed.Message;
}
