using System.Globalization;
using nietras.SeparatedValues;

namespace FuelSizing.Logs;

/// <summary>
/// Takes a file's lines apart into rows: a library finds lines and cells, and what is right or wrong with them is said here.
/// </summary>
internal sealed class RowParser : IDisposable
{
    private const string OpenQuote =
        "the cell's quote is not closed before the separator or the line's end; a quote within a quoted cell is written twice.";

    private readonly BoundedLines _lines;

    private readonly SepReader _cells;

    private readonly QuotedCells _quoted;

    private readonly CultureInfo _numbers;

    private readonly ProblemLog _problems;

    private readonly int _columns;

    private readonly ReadSlot _speed;

    private readonly ReadSlot? _time;

    /// <summary>All channels but speed and time.</summary>
    private readonly ReadSlot[] _others;

    private bool _isQuoted;

    private long _line;

    private double _lastTime = double.NegativeInfinity;

    /// <summary>Reads up to the first row; the lines are let go of at the end, or at once if there is no reading them.</summary>
    public RowParser(BoundedLines lines, RunMapping mapping, double pascals, ProblemLog problems)
    {
        char separator = mapping.Separator switch
        {
            CellSeparator.Comma => ',',
            CellSeparator.Semicolon => ';',
            _ => '\t',
        };
        (_lines, _problems) = (lines, problems);
        _numbers = Numbers(mapping.DecimalMark);
        _quoted = new(separator);

        // The library is asked for cells only: heading, counts and quotes are looked after here, line by line, so that a
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
            string[]? units = null;
            switch (mapping.UnitsRow)
            {
                case UnitsRow.Skipped:
                    MoveNext();
                    break;
                case UnitsRow.Used:
                    units = MoveNext() ? [.. ReadCells().Select(cell => cell.Trim())] : [];
                    break;
            }

            _columns = headings.Length;
            List<ReadSlot> slots = Heading.Match(
                headings,
                units,
                mapping,
                pascals,
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

    /// <summary>The channels that the file has columns for.</summary>
    public IReadOnlyList<Channel> Channels =>
        [.. new[] { _time, _speed }.Concat(_others).OfType<ReadSlot>().Select(slot => slot.Channel).Order()];

    /// <summary>Goes to the next row; false at the end.</summary>
    public bool MoveNext()
    {
        if (!_cells.MoveNext())
        {
            return false;
        }

        _line++;
        return true;
    }

    /// <summary>Takes the row at hand; false where it is refused.</summary>
    public bool TryTake(out RunRow taken)
    {
        taken = default;
        SepReader.Row row = _cells.Current;
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

    public void Dispose() => _cells.Dispose();

    /// <summary>A number's form: no thousands, whose mark one country writes as the other writes its decimals.</summary>
    private static CultureInfo Numbers(DecimalMark mark)
    {
        CultureInfo numbers = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        numbers.NumberFormat.NumberDecimalSeparator = mark == DecimalMark.Comma ? "," : ".";
        numbers.NumberFormat.NumberGroupSeparator = "\uFFFE";
        return numbers;
    }

    private string[] ReadHeading(int headingLine)
    {
        for (int i = 0; i < headingLine; i++)
        {
            if (!MoveNext())
            {
                throw File(
                    RunProblemKind.EmptyFile,
                    i == 0 ? "the file is empty; wanted is a heading and numbers below." : string.Create(CultureInfo.InvariantCulture, $"the file ends here; its heading should be in line {headingLine}."));
            }
        }

        string[] cells = ReadCells();
        if (_lines.IsCut && cells[^1].EndsWith(BoundedLines.CutMark))
        {
            throw File(RunProblemKind.TruncatedLine, "the file ends within its heading; wanted is a whole heading, its line ended, and numbers below.");
        }

        // Blank cells at the end of a heading are separators that some programs write after the last column.
        int count = cells.Length;
        while (count > 1 && string.IsNullOrWhiteSpace(cells[count - 1]))
        {
            count--;
        }

        return [.. cells.Take(count).Select(cell => cell.Trim())];
    }

    /// <summary>The cells of a line above the rows.</summary>
    private string[] ReadCells()
    {
        SepReader.Row row = _cells.Current;
        if (row.Span.Length > BoundedLines.LongestLine)
        {
            throw File(RunProblemKind.LineTooLong, TooLong());
        }

        if (!TrySplit(row))
        {
            throw File(RunProblemKind.Quote, OpenQuote, _quoted.Count);
        }

        string[] cells = new string[Count(row)];
        for (int i = 0; i < cells.Length; i++)
        {
            cells[i] = Cell(row, i).ToString();
        }

        return cells;
    }

    private RunFileException File(RunProblemKind kind, string message, int column = 1) =>
        new(new(Math.Max(_line, 1), column, "", kind, ProblemEffect.FileRefused, message));

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
