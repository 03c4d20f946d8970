using System.Diagnostics;
using FuelSizing.Interactive;
using Microsoft.CodeAnalysis;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;

namespace FuelSizing.Notebooks;

/// <summary>Runs C# cells one after another in one kernel inside this process.</summary>
/// <remarks>The kernel has no commands of its own beyond C#: it restores no package, reads no other file and connects to nothing.</remarks>
internal sealed class CellRunner : IDisposable
{
    private readonly CompositeKernel _kernel;
    private bool _isAbandoned;
    private CellRecord _record = new();

    /// <summary>What the cell that runs, or the last that ran, has shown so far.</summary>
    public IReadOnlyList<CellOutput> Outputs => _record.Outputs;

    private readonly Action<ProgressLine>? _progress;

    /// <param name="progress">Told how far long work of a cell is, from any thread; none to leave that.</param>
    public CellRunner(Action<ProgressLine>? progress = null)
    {
        _progress = progress;
        FuelSizingExtension.Register();
        var csharp = new CSharpKernel().UseKernelHelpers();
        csharp.AddAssemblyReferences(BundledPackages.AssemblyPaths);
        _kernel = new CompositeKernel { csharp };
        _kernel.DefaultKernelName = csharp.Name;
    }

    /// <summary>Runs a cell until it ends or is stopped; a stopped cell keeps what it showed, and no other can follow it.</summary>
    public async Task<CellRun> RunAsync(NotebookCell cell, CancellationToken cancellation = default)
    {
        var clock = Stopwatch.StartNew();
        string code = BundledPackages.Satisfy(cell);
        if (string.IsNullOrWhiteSpace(code))
        {
            return new CellRun(cell, [], null, clock.Elapsed);
        }

        var record = _record = new CellRecord(_progress);
        using var _ = _kernel.KernelEvents.Subscribe(record.Take);
        string? failure = null;
        bool isStopped = false;
        try
        {
            // On a thread of its own: a cell that never waits for anything would not give this one back.
            var result = await Task.Run(() => _kernel.SendAsync(new SubmitCode(code), cancellation), CancellationToken.None)
                .WaitAsync(cancellation).ConfigureAwait(false);
            failure = FailureIn(result.Events);

            // Code that hears of the stop ends by failing; that is no fault of its own.
            isStopped = failure is not null && cancellation.IsCancellationRequested;
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            isStopped = true;
        }

        _isAbandoned |= isStopped;
        return new CellRun(cell, record.Outputs, isStopped ? null : failure, clock.Elapsed, isStopped);
    }

    public void Dispose()
    {
        // A kernel waits for the cell it runs; one that was stopped may never end.
        if (!_isAbandoned)
        {
            _kernel.Dispose();
        }
    }

    private static string? FailureIn(IEnumerable<KernelEvent> happenings)
    {
        var errors = new List<string>();
        string? failure = null;
        foreach (var happening in happenings)
        {
            switch (happening)
            {
                case DiagnosticsProduced produced:
                    errors.AddRange(produced.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error).Select(Place).Except(errors));
                    break;
                case CommandFailed failed:
                    failure = errors.Count > 0 ? string.Join('\n', errors) : Reason(failed);
                    break;
            }
        }

        return failure;
    }

    /// <summary>A compiler error with its place counted as an editor counts, from 1.</summary>
    private static string Place(Microsoft.DotNet.Interactive.Diagnostic error) =>
        $"line {error.LinePositionSpan.Start.Line + 1}, column {error.LinePositionSpan.Start.Character + 1}: {error.Message} ({error.Code})";

    private static string Reason(CommandFailed failed) =>
        failed.Exception is { } exception and not CodeSubmissionCompilationErrorException
            ? $"{exception.GetType().Name}: {exception.Message}"
            : failed.Message;
}
