using System.Globalization;

namespace FuelSizing.Logs;

/// <summary>Something wrong at one place of a recorded run, and what it costs.</summary>
public sealed record RunProblem
{
    internal RunProblem(long line, int column, string field, RunProblemKind kind, ProblemEffect effect, string message) =>
        (Line, Column, Field, Kind, Effect, Message) = (line, column, field, kind, effect, message);

    /// <summary>Line of the file, the first being 1.</summary>
    public long Line { get; }

    /// <summary>Number of the cell in its line, the first being 1.</summary>
    public int Column { get; }

    /// <summary>The column's heading; empty where the problem is not one column's.</summary>
    public string Field { get; }

    /// <summary>What is wrong.</summary>
    public RunProblemKind Kind { get; }

    /// <summary>What it costs.</summary>
    public ProblemEffect Effect { get; }

    /// <summary>What was found, what is wanted and what was done.</summary>
    public string Message { get; }

    /// <summary>The problem in words, for instance <c>line 12, column 3 (Lambda): …</c>.</summary>
    /// <returns>Place and message.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"line {Line}, column {Column}{(Field.Length > 0 ? $" ({CellText.Shown(Field)})" : "")}: {Message}");
}
