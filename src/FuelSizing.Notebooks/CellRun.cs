using FuelSizing.Interactive;

namespace FuelSizing.Notebooks;

/// <summary>What became of one cell.</summary>
/// <param name="Cell">The cell.</param>
/// <param name="Outputs">What it showed, in order.</param>
/// <param name="Failure">Why it failed, or <see langword="null"/> if it ran.</param>
/// <param name="Elapsed">How long it took; zero for prose.</param>
/// <param name="IsStopped">Whether it was stopped before it ended.</param>
internal sealed record CellRun(NotebookCell Cell, IReadOnlyList<CellOutput> Outputs, string? Failure, TimeSpan Elapsed, bool IsStopped = false)
{
    /// <summary>The answers among what it showed.</summary>
    public IEnumerable<Callout> Verdicts => Outputs.Select(output => output.Verdict).OfType<Callout>();

    /// <summary>Whether it came to its end without a failure.</summary>
    public bool IsDone => Failure is null && !IsStopped;
}
