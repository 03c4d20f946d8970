using FuelSizing.Quantities;

namespace FuelSizing.Logs;

/// <summary>Something wrong at one place of a recorded run, and what it costs.</summary>
public sealed record RunProblem : IReadable
{
    internal RunProblem(long line, int column, string field, RunProblemKind kind, ProblemEffect effect, Statement reason) =>
        (Line, Column, Field, Kind, Effect, Reason) = (line, column, field, kind, effect, reason);

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

    /// <summary>What was found, what is wanted and what was done; its code is one of those under <c>log.</c>.</summary>
    public Statement Reason { get; }

    /// <summary>Place and reason, as a code with its arguments.</summary>
    public Statement Text
    {
        get
        {
            Statement? heading = Field.Length > 0 ? Statement.Of("log.field", $" ({CellText.Shown(Field)})") : null;
            return Statement.Of("log.problem", $"line {Line:ordinal}, column {Column:ordinal}{heading}: {Reason}");
        }
    }

    /// <summary>The problem in words, for instance <c>line 12, column 3 (Lambda): …</c>.</summary>
    /// <returns>Place and reason.</returns>
    public override string ToString() => Text.ToString();

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);
}

/// <summary>What is wrong with a place in a recorded run.</summary>
public enum RunProblemKind
{
    /// <summary>The file has no line at all.</summary>
    EmptyFile,

    /// <summary>A column that the mapping names is not in the heading.</summary>
    MissingColumn,

    /// <summary>A heading that the mapping names stands over more than one column.</summary>
    DuplicateColumn,

    /// <summary>The units row cannot be read, or says another unit than the mapping.</summary>
    Unit,

    /// <summary>A row has fewer cells than the heading.</summary>
    TooFewCells,

    /// <summary>A row has more cells than the heading.</summary>
    TooManyCells,

    /// <summary>A line has nothing in it.</summary>
    BlankLine,

    /// <summary>A line is longer than the reader takes.</summary>
    LineTooLong,

    /// <summary>A quote is not closed on its line, or closed before the end of its cell.</summary>
    Quote,

    /// <summary>The last line has no line end: the file may have been cut there.</summary>
    TruncatedLine,

    /// <summary>A cell is neither blank nor a number.</summary>
    NotANumber,

    /// <summary>A cell says that there is no number: NaN or infinity in words.</summary>
    NotFinite,

    /// <summary>A number is outside the channel's range: another unit, or a failed sensor.</summary>
    OutOfRange,

    /// <summary>A row has no speed, or no time though time is mapped.</summary>
    MissingValue,

    /// <summary>A row has the same time as the last row used.</summary>
    DuplicateTime,

    /// <summary>A row is earlier than the last row used.</summary>
    ReversedTime,
}

/// <summary>What a problem costs.</summary>
public enum ProblemEffect
{
    /// <summary>The row is not used.</summary>
    RowRefused,

    /// <summary>The row is used without this value.</summary>
    ValueLeftOut,

    /// <summary>The whole channel is left out.</summary>
    ChannelLeftOut,

    /// <summary>The file cannot be used.</summary>
    FileRefused,
}

/// <summary>A recorded run that cannot be read at all: no line, or no column of speed.</summary>
public sealed class RunFileException : FormatException
{
    internal RunFileException(RunProblem problem)
        : base(problem.ToString()) => Problem = problem;

    /// <summary>What is wrong, and where.</summary>
    public RunProblem Problem { get; }
}
