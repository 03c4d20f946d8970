using System.Globalization;

namespace FuelSizing.Logs;

/// <summary>
/// What became of a file's rows: every row read is either used or refused, and a refused row has a problem that says why.
/// </summary>
public sealed class RunAccount
{
    private readonly long[] _byKind;

    internal RunAccount(long rows, long rowsUsed, long valuesLeftOut, long problems, long[]? byKind = null)
    {
        (Rows, RowsUsed, ValuesLeftOut, Problems) = (rows, rowsUsed, valuesLeftOut, problems);
        _byKind = byKind ?? [];
    }

    /// <summary>Lines below the heading (and the units row), blank ones too.</summary>
    public long Rows { get; }

    /// <summary>Rows that came through, some perhaps without a value that was left out.</summary>
    public long RowsUsed { get; }

    /// <summary>Rows that did not come through: <see cref="Rows"/> − <see cref="RowsUsed"/>, each with a problem.</summary>
    public long RowsRefused => Rows - RowsUsed;

    /// <summary>Values that rows came through without, each with a problem; a blank cell is none.</summary>
    public long ValuesLeftOut { get; }

    /// <summary>All problems met, also those past the number that is kept word for word.</summary>
    public long Problems { get; }

    /// <summary>How many of the problems are of one kind.</summary>
    /// <param name="kind">Any.</param>
    /// <returns>Zero or more.</returns>
    public long CountOf(RunProblemKind kind) => (uint)kind < (uint)_byKind.Length ? _byKind[(int)kind] : 0;

    /// <summary>The account in words.</summary>
    /// <returns>For instance <c>1,200 rows: 1,198 used, 2 refused; 3 values left out; 5 problems</c>.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Rows:N0} rows: {RowsUsed:N0} used, {RowsRefused:N0} refused; {ValuesLeftOut:N0} values left out; {Problems:N0} problems");
}
