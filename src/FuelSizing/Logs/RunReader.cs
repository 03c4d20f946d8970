using System.Text;
using FuelSizing.Engines;
using UnitsNet;

namespace FuelSizing.Logs;

/// <summary>
/// Reads a recorded run from a text file of separated values, row by row in a memory that does not grow with the file. Every
/// row is used or refused with a problem that says why; docs/recorded-run.md says how each defect is handled.
/// </summary>
public sealed class RunReader : IDisposable
{
    /// <summary>Rows between two reports of progress.</summary>
    private const int RowsAReport = 65_536;

    private readonly Stream? _stream;

    private readonly RowParser _parser;

    private readonly ProblemLog _problems;

    private readonly IProgress<RunProgress>? _progress;

    private readonly CancellationToken _cancellation;

    private long _rows;

    private long _rowsUsed;

    private RunReader(
        TextReader text,
        Stream? stream,
        bool owned,
        RunMapping mapping,
        Atmosphere atmosphere,
        Action<RunProblem>? eachProblem,
        IProgress<RunProgress>? progress,
        CancellationToken cancellation)
    {
        mapping.Complete(nameof(mapping));
        (_stream, _progress, _cancellation) = (stream, progress, cancellation);
        _problems = new(eachProblem);
        _parser = new(new(text, owned, cancellation), mapping, atmosphere.Pascals, _problems);
    }

    /// <summary>What was wrong so far, in the file's order; the first thousand problems, of all that the account counts.</summary>
    public IReadOnlyList<RunProblem> Problems => _problems.Problems;

    /// <summary>What became of the rows read so far.</summary>
    public RunAccount Account => _problems.Account(_rows, _rowsUsed);

    /// <summary>The channels that the file has columns for.</summary>
    public IReadOnlyList<Channel> Channels => _parser.Channels;

    /// <summary>Opens a file and reads its heading.</summary>
    /// <param name="path">Text in UTF-8, or in UTF-16 or UTF-32 with a byte order mark.</param>
    /// <param name="mapping">Which column holds what, and how the file is written.</param>
    /// <param name="atmosphere">The air that the run was made in.</param>
    /// <param name="eachProblem">Hears of every problem as it is met, also of those past the first thousand.</param>
    /// <param name="progress">Hears how far the reading is, every 65,536 rows.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>A reader that stands before the first row.</returns>
    /// <exception cref="ArgumentException">A column of the mapping has no unit, and the units row is not used.</exception>
    /// <exception cref="RunFileException">The file is empty, lacks a column that the mapping names, or its column of speed cannot be told.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static RunReader Open(
        string path,
        RunMapping mapping,
        Atmosphere atmosphere,
        Action<RunProblem>? eachProblem = null,
        IProgress<RunProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        FileStream file = OpenedFile.At(path);
        try
        {
            return Open(file, owned: true, mapping, atmosphere, eachProblem, progress, cancellation);
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    /// <summary>Reads the heading of a file that is open already, and leaves it open at the end.</summary>
    /// <param name="stream">Text in UTF-8, or in UTF-16 or UTF-32 with a byte order mark.</param>
    /// <param name="mapping">Which column holds what, and how the file is written.</param>
    /// <param name="atmosphere">The air that the run was made in.</param>
    /// <param name="eachProblem">Hears of every problem as it is met, also of those past the first thousand.</param>
    /// <param name="progress">Hears how far the reading is, every 65,536 rows.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>A reader that stands before the first row.</returns>
    /// <exception cref="ArgumentException">A column of the mapping has no unit, and the units row is not used.</exception>
    /// <exception cref="RunFileException">The file is empty, lacks a column that the mapping names, or its column of speed cannot be told.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static RunReader Open(
        Stream stream,
        RunMapping mapping,
        Atmosphere atmosphere,
        Action<RunProblem>? eachProblem = null,
        IProgress<RunProgress>? progress = null,
        CancellationToken cancellation = default) =>
        Open(stream, owned: false, mapping, atmosphere, eachProblem, progress, cancellation);

    /// <summary>Reads the heading of a text, and leaves the text open at the end.</summary>
    /// <param name="text">The file's characters.</param>
    /// <param name="mapping">Which column holds what, and how the file is written.</param>
    /// <param name="atmosphere">The air that the run was made in.</param>
    /// <param name="eachProblem">Hears of every problem as it is met, also of those past the first thousand.</param>
    /// <param name="progress">Hears how far the reading is, every 65,536 rows.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>A reader that stands before the first row.</returns>
    /// <exception cref="ArgumentException">A column of the mapping has no unit, and the units row is not used.</exception>
    /// <exception cref="RunFileException">The file is empty, lacks a column that the mapping names, or its column of speed cannot be told.</exception>
    /// <exception cref="IOException">The text cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static RunReader Open(
        TextReader text,
        RunMapping mapping,
        Atmosphere atmosphere,
        Action<RunProblem>? eachProblem = null,
        IProgress<RunProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(mapping);
        ArgumentNullException.ThrowIfNull(atmosphere);
        return new(text, null, owned: false, mapping, atmosphere, eachProblem, progress, cancellation);
    }

    /// <summary>Reads a whole file into memory: 8 bytes a value, so 40 MB for a million rows of five channels.</summary>
    /// <param name="path">Text in UTF-8, or in UTF-16 or UTF-32 with a byte order mark.</param>
    /// <param name="mapping">Which column holds what, and how the file is written.</param>
    /// <param name="atmosphere">The air that the run was made in.</param>
    /// <param name="progress">Hears how far the reading is, every 65,536 rows.</param>
    /// <param name="cancellation">Stops the reading; the rows read until then are kept.</param>
    /// <returns>The run, named after its file; of the first so many rows where the reading was stopped.</returns>
    /// <exception cref="ArgumentException">A column of the mapping has no unit, and the units row is not used.</exception>
    /// <exception cref="RunFileException">The file is empty, lacks a column that the mapping names, or its column of speed cannot be told.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped before a row was read.</exception>
    public static RecordedRun Read(
        string path,
        RunMapping mapping,
        Atmosphere atmosphere,
        IProgress<RunProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        using RunReader reader = Open(path, mapping, atmosphere, null, progress, cancellation);
        return reader.ReadAll(CellText.Shown(Path.GetFileNameWithoutExtension(path)), atmosphere);
    }

    /// <summary>Reads a whole text into memory: 8 bytes a value, so 40 MB for a million rows of five channels.</summary>
    /// <param name="name">What the run is called in reports, 1 to 80 characters.</param>
    /// <param name="text">The file's characters; left open.</param>
    /// <param name="mapping">Which column holds what, and how the file is written.</param>
    /// <param name="atmosphere">The air that the run was made in.</param>
    /// <param name="progress">Hears how far the reading is, every 65,536 rows.</param>
    /// <param name="cancellation">Stops the reading; the rows read until then are kept.</param>
    /// <returns>The run; of the first so many rows where the reading was stopped.</returns>
    /// <exception cref="ArgumentException">The name is no name; or a column has no unit, and the units row is not used.</exception>
    /// <exception cref="RunFileException">The text is empty, or its column of speed cannot be told.</exception>
    /// <exception cref="IOException">The text cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped before a row was read.</exception>
    public static RecordedRun Read(
        string name,
        TextReader text,
        RunMapping mapping,
        Atmosphere atmosphere,
        IProgress<RunProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        Quantities.Guard.Name(name, nameof(name));
        using RunReader reader = Open(text, mapping, atmosphere, null, progress, cancellation);
        return reader.ReadAll(name, atmosphere);
    }

    /// <summary>Reads up to the next row that can be used.</summary>
    /// <param name="row">The row; empty at the end of the file.</param>
    /// <returns>False at the end of the file.</returns>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public bool TryRead(out RunRow row)
    {
        while (_parser.MoveNext())
        {
            _rows++;
            if (_rows % RowsAReport == 0)
            {
                Report();
            }

            if (_parser.TryTake(out row))
            {
                _rowsUsed++;
                return true;
            }
        }

        row = default;
        return false;
    }

    /// <summary>The rows that can be used from here to the end of the file, each read when asked for.</summary>
    /// <returns>Rows in time order.</returns>
    public IEnumerable<RunRow> Rows()
    {
        while (TryRead(out RunRow row))
        {
            yield return row;
        }
    }

    /// <summary>Closes the file, if the reader opened it.</summary>
    public void Dispose() => _parser.Dispose();

    /// <summary>Rows read so far.</summary>
    /// <returns>For instance <c>1,200 rows read, 1,198 used</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{_rows:N0} rows read, {_rowsUsed:N0} used");

    private static RunReader Open(
        Stream stream,
        bool owned,
        RunMapping mapping,
        Atmosphere atmosphere,
        Action<RunProblem>? eachProblem,
        IProgress<RunProgress>? progress,
        CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(mapping);
        ArgumentNullException.ThrowIfNull(atmosphere);
        StreamReader text = new(stream, Encoding.UTF8, detectEncodingFromByteOrderMarks: true, 65_536, leaveOpen: !owned);
        return new(text, stream, owned, mapping, atmosphere, eachProblem, progress, cancellation);
    }

    private RecordedRun ReadAll(string name, Atmosphere atmosphere)
    {
        var columns = new RunColumns();
        bool isComplete = true;
        try
        {
            while (TryRead(out RunRow row))
            {
                columns.Add(row);
            }
        }
        catch (OperationCanceledException) when (columns.Count > 0)
        {
            isComplete = false;
        }

        return columns.ToRun(name, atmosphere, [.. Problems], Account, isComplete);
    }

    private void Report()
    {
        _cancellation.ThrowIfCancellationRequested();
        _progress?.Report(new(
            _rows,
            _stream is { CanSeek: true, Length: > 0 } file ? Ratio.FromDecimalFractions(Math.Min((double)file.Position / file.Length, 1)) : null));
    }
}

/// <summary>How far the reading of a run is.</summary>
public readonly record struct RunProgress
{
    internal RunProgress(long rows, Ratio? share) => (Rows, Share) = (rows, share);

    /// <summary>Rows read so far.</summary>
    public long Rows { get; }

    /// <summary>How much of the file is read; null where its length is not known.</summary>
    public Ratio? Share { get; }

    /// <summary>Rows read so far and their share of the file.</summary>
    /// <returns>For instance <c>65,536 rows, 40 %</c>.</returns>
    public override string ToString() =>
        Share is { } share ? FormattableString.Invariant($"{Rows:N0} rows, {share.Percent:N0} %") : FormattableString.Invariant($"{Rows:N0} rows");
}
