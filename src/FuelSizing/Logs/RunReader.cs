using System.Globalization;
using System.Text;
using FuelSizing.Engines;
using nietras.SeparatedValues;
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

    private const string OpenQuote =
        "the cell's quote is not closed before the separator or the line's end; a quote within a quoted cell is written twice.";

    private readonly BoundedLines _lines;

    private readonly Stream? _stream;

    private readonly SepReader _cells;

    private readonly QuotedCells _quoted;

    private readonly CultureInfo _numbers;

    private readonly ProblemLog _problems;

    private readonly IProgress<RunProgress>? _progress;

    private readonly CancellationToken _cancellation;

    private readonly int _columns;

    private readonly ReadSlot _speed;

    private readonly ReadSlot? _time;

    /// <summary>All channels but speed and time.</summary>
    private readonly ReadSlot[] _others;

    private bool _isQuoted;

    private long _line;

    private long _rows;

    private long _rowsUsed;

    private double _lastTime = double.NegativeInfinity;

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
        char separator = mapping.Separator switch
        {
            CellSeparator.Comma => ',',
            CellSeparator.Semicolon => ';',
            _ => '\t',
        };
        _numbers = Numbers(mapping.DecimalMark);
        (_stream, _progress, _cancellation) = (stream, progress, cancellation);
        _problems = new(eachProblem);
        _quoted = new(separator);
        _lines = new(text, owned, cancellation);

        // The parser is asked for cells only: heading, counts and quotes are looked after here, line by line, so that a
        // fault never reaches past its line.
        _cells = Sep.New(separator)
            .Reader(options => options with
            {
                HasHeader = false,
                DisableColCountCheck = true,
                DisableQuotesParsing = true,
                CultureInfo = _numbers,
            })
            .From(_lines);
        try
        {
            string[] headings = ReadHeading(mapping.HeadingLine);
            string[]? units = mapping.UnitsRow == UnitsRow.None ? null : ReadLine()?.Select(cell => cell.Trim()).ToArray() ?? [];
            _columns = headings.Length;
            List<ReadSlot> slots = Heading.Match(
                headings,
                mapping.UnitsRow == UnitsRow.Used ? units : null,
                mapping,
                atmosphere.Pascals,
                (column, below, cell, field, kind, message) => Refuse(column, mapping.HeadingLine + below, cell, field, kind, message));
            _speed = slots.Single(slot => slot.Channel == Channel.Speed);
            _time = slots.SingleOrDefault(slot => slot.Channel == Channel.Time);
            _others = [.. slots.Where(slot => slot.Channel is not (Channel.Speed or Channel.Time))];
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    /// <summary>What was wrong so far, in the file's order; the first thousand problems, of all that the account counts.</summary>
    public IReadOnlyList<RunProblem> Problems => _problems.Problems;

    /// <summary>What became of the rows read so far.</summary>
    public RunAccount Account => _problems.Account(_rows, _rowsUsed);

    /// <summary>The channels that the file has columns for.</summary>
    public IReadOnlyList<Channel> Channels =>
        [.. new[] { _time, _speed }.Concat(_others).OfType<ReadSlot>().Select(slot => slot.Channel).Order()];

    /// <summary>Opens a file and reads its heading.</summary>
    /// <param name="path">Text in UTF-8, or in UTF-16 or UTF-32 with a byte order mark.</param>
    /// <param name="mapping">Which column holds what, and how the file is written.</param>
    /// <param name="atmosphere">The air that the run was made in.</param>
    /// <param name="eachProblem">Hears of every problem as it is met, also of those past the first thousand.</param>
    /// <param name="progress">Hears how far the reading is, every 65,536 rows.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>A reader that stands before the first row.</returns>
    /// <exception cref="ArgumentException">A column of the mapping has no unit, and the units row is not used.</exception>
    /// <exception cref="RunFileException">The file is empty, or its column of speed cannot be told.</exception>
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
        FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1, FileOptions.SequentialScan);
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
    /// <exception cref="RunFileException">The file is empty, or its column of speed cannot be told.</exception>
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
    /// <exception cref="RunFileException">The file is empty, or its column of speed cannot be told.</exception>
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
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>The run, named after its file.</returns>
    /// <exception cref="ArgumentException">A column of the mapping has no unit, and the units row is not used.</exception>
    /// <exception cref="RunFileException">The file is empty, or its column of speed cannot be told.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
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
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>The run.</returns>
    /// <exception cref="ArgumentException">The name is no name; or a column has no unit, and the units row is not used.</exception>
    /// <exception cref="RunFileException">The text is empty, or its column of speed cannot be told.</exception>
    /// <exception cref="IOException">The text cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static RecordedRun Read(
        string name,
        TextReader text,
        RunMapping mapping,
        Atmosphere atmosphere,
        IProgress<RunProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        Quantities.Allowed.Name(name, nameof(name));
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
        while (_cells.MoveNext())
        {
            _line++;
            _rows++;
            if (_rows % RowsAReport == 0)
            {
                Report();
            }

            if (TryTake(_cells.Current, out row))
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
    public void Dispose() => _cells.Dispose();

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

    /// <summary>A number's form: no thousands, whose mark one country writes as the other writes its decimals.</summary>
    private static CultureInfo Numbers(DecimalMark mark)
    {
        CultureInfo numbers = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        numbers.NumberFormat.NumberDecimalSeparator = mark == DecimalMark.Comma ? "," : ".";
        numbers.NumberFormat.NumberGroupSeparator = "\uFFFE";
        return numbers;
    }

    private RecordedRun ReadAll(string name, Atmosphere atmosphere)
    {
        var columns = new RunColumns();
        while (TryRead(out RunRow row))
        {
            columns.Add(row);
        }

        return columns.ToRun(name, atmosphere, [.. Problems], Account);
    }

    private void Report()
    {
        _cancellation.ThrowIfCancellationRequested();
        _progress?.Report(new(
            _rows,
            _stream is { CanSeek: true, Length: > 0 } file ? Ratio.FromDecimalFractions(Math.Min((double)file.Position / file.Length, 1)) : null));
    }

    private string[] ReadHeading(int headingLine)
    {
        string[]? cells = null;
        for (int i = 0; i < headingLine; i++)
        {
            cells = ReadLine();
            if (cells is null)
            {
                throw File(
                    i,
                    RunProblemKind.EmptyFile,
                    i == 0 ? "the file is empty; wanted is a heading and numbers below." : string.Create(CultureInfo.InvariantCulture, $"the file ends here; its heading should be in line {headingLine}."));
            }
        }

        if (_lines.IsCut && cells![^1].EndsWith(BoundedLines.CutMark))
        {
            throw File(_line, RunProblemKind.TruncatedLine, "the file ends within its heading; wanted is a whole heading, its line ended, and numbers below.");
        }

        // Blank cells at the end of a heading are separators that some programs write after the last column.
        int count = cells!.Length;
        while (count > 1 && string.IsNullOrWhiteSpace(cells[count - 1]))
        {
            count--;
        }

        return [.. cells.Take(count).Select(cell => cell.Trim().TrimStart('\uFEFF').Trim())];
    }

    /// <summary>The cells of a line above the rows; null at the end of the file.</summary>
    private string[]? ReadLine()
    {
        if (!_cells.MoveNext())
        {
            return null;
        }

        _line++;
        SepReader.Row row = _cells.Current;
        if (row.Span.Length > BoundedLines.LongestLine)
        {
            throw File(_line, RunProblemKind.LineTooLong, TooLong());
        }

        if (!TrySplit(row))
        {
            throw File(_line, RunProblemKind.Quote, OpenQuote, _quoted.Count);
        }

        string[] cells = new string[Count(row)];
        for (int i = 0; i < cells.Length; i++)
        {
            cells[i] = Cell(row, i).ToString();
        }

        return cells;
    }

    private static RunFileException File(long line, RunProblemKind kind, string message, int column = 1) =>
        new(new(Math.Max(line, 1), column, "", kind, ProblemEffect.FileRefused, message));

    private static string TooLong() => string.Create(
        CultureInfo.InvariantCulture, $"the line has more than {BoundedLines.LongestLine:N0} characters; is a line end missing?");

    /// <summary>A channel that cannot be read: of speed, that ends the reading.</summary>
    private void Refuse(RunColumn column, int line, int cell, string field, RunProblemKind kind, string message)
    {
        if (column.Channel == Channel.Speed)
        {
            throw new RunFileException(new(line, cell, field, kind, ProblemEffect.FileRefused, message));
        }

        _problems.Add(line, cell, field, kind, ProblemEffect.ChannelLeftOut, message);
    }

    private bool TryTake(SepReader.Row row, out RunRow taken)
    {
        taken = default;
        ReadOnlySpan<char> line = row.Span;
        if (line.Length > BoundedLines.LongestLine)
        {
            return RefuseRow(1, "", RunProblemKind.LineTooLong, TooLong());
        }

        if (line.Length > 0 && line[^1] == BoundedLines.CutMark && _lines.IsCut)
        {
            return RefuseRow(
                row.ColCount,
                "",
                RunProblemKind.TruncatedLine,
                "the last line has no line end; its last value may have been cut, so the row is not used. End the line if it is whole.");
        }

        if (!TrySplit(row))
        {
            return RefuseRow(_quoted.Count, "", RunProblemKind.Quote, OpenQuote);
        }

        int count = Count(row);
        if (count != _columns && !IsCountGood(row, line, count))
        {
            return false;
        }

        var values = ChannelValues.None;
        if (!TryNeeded(row, _speed, ref values) || (_time is not null && !TryTime(row, _time, ref values)))
        {
            return false;
        }

        foreach (ReadSlot slot in _others)
        {
            if (TryValue(row, slot, out double value, out RunProblemKind kind))
            {
                values[(int)slot.Channel] = value;
            }
            else if (kind != RunProblemKind.MissingValue)
            {
                AddCell(row, slot, kind, value, ProblemEffect.ValueLeftOut);
            }
        }

        taken = new(_line, values);
        return true;
    }

    /// <summary>Blank cells past the last heading do no harm; other counts do.</summary>
    private bool IsCountGood(SepReader.Row row, ReadOnlySpan<char> line, int count)
    {
        if (count < _columns)
        {
            return line.IsWhiteSpace()
                ? RefuseRow(1, "", RunProblemKind.BlankLine, "the line is blank.")
                : RefuseRow(
                    count,
                    "",
                    RunProblemKind.TooFewCells,
                    _problems.IsHeard ? $"the row has {count} cells and the heading {_columns}; which are missing cannot be told, so the row is not used." : "");
        }

        for (int i = _columns; i < count; i++)
        {
            if (!Cell(row, i).IsWhiteSpace())
            {
                return RefuseRow(
                    i + 1,
                    "",
                    RunProblemKind.TooManyCells,
                    _problems.IsHeard ? $"the row has {count} cells and the heading {_columns}; which are too many cannot be told, so the row is not used." : "");
            }
        }

        return true;
    }

    /// <summary>A value without which the row is of no use.</summary>
    private bool TryNeeded(SepReader.Row row, ReadSlot slot, ref ChannelValues values)
    {
        if (TryValue(row, slot, out double value, out RunProblemKind kind))
        {
            values[(int)slot.Channel] = value;
            return true;
        }

        if (kind == RunProblemKind.MissingValue && Count(row) == 1)
        {
            return RefuseRow(1, "", RunProblemKind.BlankLine, "the line is blank.");
        }

        AddCell(row, slot, kind, value, ProblemEffect.RowRefused);
        return false;
    }

    /// <summary>Time, which must go on from row to row.</summary>
    private bool TryTime(SepReader.Row row, ReadSlot slot, ref ChannelValues values)
    {
        if (!TryNeeded(row, slot, ref values))
        {
            return false;
        }

        double time = values[(int)Channel.Time];
        if (time > _lastTime)
        {
            _lastTime = time;
            return true;
        }

        bool again = time == _lastTime;
        return RefuseRow(
            slot.Index + 1,
            slot.Field,
            again ? RunProblemKind.DuplicateTime : RunProblemKind.ReversedTime,
            _problems.IsHeard
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"the time is {time:R} s, {(again ? "that of the last row used" : $"before the last row used at {_lastTime:R} s")}; the row is not used.")
                : "");
    }

    /// <summary>A cell as an SI value that may be; if it is none, what is wrong with it. A blank cell is a missing value.</summary>
    private bool TryValue(SepReader.Row row, ReadSlot slot, out double value, out RunProblemKind kind)
    {
        kind = RunProblemKind.MissingValue;
        ReadOnlySpan<char> cell = Cell(row, slot.Index);
        if (cell.IsEmpty)
        {
            value = double.NaN;
            return false;
        }

        if (_isQuoted ? double.TryParse(cell, NumberStyles.Float, _numbers, out value) : row[slot.Index].TryParse(out value))
        {
            value = (value * slot.Scale) + slot.Offset;
            if (ChannelRange.Holds(slot.Channel, value))
            {
                return true;
            }

            kind = CellText.SaysNoNumber(cell) ? RunProblemKind.NotFinite : RunProblemKind.OutOfRange;
            return false;
        }

        value = double.NaN;
        if (!cell.IsWhiteSpace())
        {
            kind = CellText.SaysNoNumber(cell) ? RunProblemKind.NotFinite : RunProblemKind.NotANumber;
        }

        return false;
    }

    /// <summary>Parts a line into cells; false where a quote is not closed.</summary>
    private bool TrySplit(SepReader.Row row)
    {
        ReadOnlySpan<char> line = row.Span;
        _isQuoted = line.Contains('"');
        return !_isQuoted || _quoted.TrySplit(line);
    }

    private int Count(SepReader.Row row) => _isQuoted ? _quoted.Count : row.ColCount;

    private ReadOnlySpan<char> Cell(SepReader.Row row, int index) => _isQuoted ? _quoted[index] : row[index].Span;

    private bool RefuseRow(int column, string field, RunProblemKind kind, string message)
    {
        _problems.Add(_line, column, field, kind, ProblemEffect.RowRefused, message);
        return false;
    }

    /// <summary>A cell that gives no value.</summary>
    private void AddCell(SepReader.Row row, ReadSlot slot, RunProblemKind kind, double value, ProblemEffect effect) =>
        _problems.Add(
            _line,
            slot.Index + 1,
            slot.Field,
            kind,
            effect,
            _problems.IsHeard ? CellMessage(Cell(row, slot.Index), slot, kind, value, effect) : "");

    private static string CellMessage(ReadOnlySpan<char> cell, ReadSlot slot, RunProblemKind kind, double value, ProblemEffect effect)
    {
        string found = $"\"{CellText.Shown(cell.Trim())}\"";
        string what = kind switch
        {
            RunProblemKind.MissingValue => $"the cell is blank, and a row needs its {slot.Channel}",
            RunProblemKind.NotFinite => $"{found} says that there is no value of {slot.Channel}",
            RunProblemKind.OutOfRange =>
                $"{found} is {slot.Channel} {ChannelRange.Text(slot.Channel, value)}; allowed is {ChannelRange.Text(slot.Channel)}",
            _ => $"{found} is no number as the mapping has numbers written",
        };
        return $"{what}; {(effect == ProblemEffect.RowRefused ? "the row is not used." : "the row is used without this value.")}";
    }
}
