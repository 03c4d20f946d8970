using System.Collections;
using FuelSizing.Engines;
using FuelSizing.Quantities;

namespace FuelSizing.Logs;

/// <summary>A run as recorded: rows in time order, the air it was made in, and what was met in reading it.</summary>
public sealed class RecordedRun
{
    private readonly long[] _lines;

    /// <summary>One column of SI numbers a channel; null where no row has a value.</summary>
    private readonly double[]?[] _columns;

    /// <summary>Takes columns whose values are known to be within range and in time order.</summary>
    internal RecordedRun(
        string name, Atmosphere atmosphere, long[] lines, double[]?[] columns, IReadOnlyList<RunProblem> problems, RunAccount account, bool isComplete)
    {
        (Name, Atmosphere, _lines, _columns, Problems, Account, IsComplete) = (name, atmosphere, lines, columns, problems, account, isComplete);
        Rows = new RunRows(this);
        Channels = [.. Enum.GetValues<Channel>().Where(Has)];
    }

    /// <summary>What the run is called in reports.</summary>
    public string Name { get; }

    /// <summary>The air it was made in.</summary>
    public Atmosphere Atmosphere { get; }

    /// <summary>In time order; in the order of the file where no time was recorded. None, if no row came through.</summary>
    public IReadOnlyList<RunRow> Rows { get; }

    /// <summary>The channels of which at least one row has a value.</summary>
    public IReadOnlyList<Channel> Channels { get; }

    /// <summary>What was wrong with the file, in its order; the first thousand problems, of all that the account counts.</summary>
    public IReadOnlyList<RunProblem> Problems { get; }

    /// <summary>What became of the file's rows.</summary>
    public RunAccount Account { get; }

    /// <summary>False if the reading was stopped: the rows are then those up to there, and the account is of them alone.</summary>
    public bool IsComplete { get; }

    /// <summary>Number of rows.</summary>
    internal int Count => _lines.Length;

    /// <summary>Describes a run in code.</summary>
    /// <param name="name">1 to 80 characters.</param>
    /// <param name="atmosphere">The air it was made in.</param>
    /// <param name="rows">Made by <see cref="RunRow.Of"/>; all with a time or none, and each time later than the last.</param>
    /// <returns>The run.</returns>
    /// <exception cref="ArgumentException">The name, a row or the times are not so.</exception>
    public static RecordedRun Of(string name, Atmosphere atmosphere, IEnumerable<RunRow> rows)
    {
        Guard.Name(name, nameof(name));
        ArgumentNullException.ThrowIfNull(atmosphere);
        ArgumentNullException.ThrowIfNull(rows);
        var columns = new RunColumns();
        double last = double.NegativeInfinity;
        bool timed = false;
        foreach (RunRow row in rows)
        {
            if (row.Line == 0)
            {
                throw new ArgumentException($"rows holds a row that was never filled, after {columns.Count} others. Make each with RunRow.Of.", nameof(rows));
            }

            bool hasTime = row.Has(Channel.Time);
            if (columns.Count > 0 && hasTime != timed)
            {
                throw new ArgumentException($"rows: line {row.Line} {(hasTime ? "has a time and the one before has none" : "has no time and the one before has one")}. Give all rows a time, or none.", nameof(rows));
            }

            timed = hasTime;
            if (hasTime && row[Channel.Time] <= last)
            {
                throw new ArgumentException(
                    $"rows: line {row.Line} is at {ChannelRange.Text(Channel.Time, row[Channel.Time])}, not later than the one before at {ChannelRange.Text(Channel.Time, last)}. Put the rows in time order and let no two have one time.",
                    nameof(rows));
            }

            last = hasTime ? row[Channel.Time] : last;
            columns.Add(row);
        }

        return columns.ToRun(name, atmosphere, [], new RunAccount(columns.Count, columns.Count, 0, 0), isComplete: true);
    }

    /// <summary>Whether at least one row has a value in a channel.</summary>
    /// <param name="channel">Any.</param>
    /// <returns>True if so.</returns>
    public bool Has(Channel channel) => Enum.IsDefined(channel) && _columns[(int)channel] is not null;

    /// <summary>Name, rows and channels in words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => FormattableString.Invariant($"{Name}: {_lines.Length:N0} rows of {string.Join(", ", Channels)}");

    /// <summary>
    /// The channel's values in SI (s, rev/s, Pa, a share, V, W, N·m, K, m³/s, kg/s), one a row, NaN where the row has none;
    /// empty where no row has one.
    /// </summary>
    internal ReadOnlySpan<double> Si(Channel channel) => _columns[(int)channel];

    /// <summary>A row put together from the columns.</summary>
    internal RunRow RowAt(int index)
    {
        var values = ChannelValues.None;
        for (int i = 0; i < ChannelValues.Count; i++)
        {
            if (_columns[i] is { } column)
            {
                values[i] = column[index];
            }
        }

        return new(_lines[index], values);
    }
}

/// <summary>A run's rows, each put together when asked for.</summary>
internal sealed class RunRows(RecordedRun run) : IReadOnlyList<RunRow>
{
    public int Count => run.Count;

    public RunRow this[int index] => run.RowAt(index);

    public IEnumerator<RunRow> GetEnumerator()
    {
        for (int i = 0; i < run.Count; i++)
        {
            yield return run.RowAt(i);
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
