using System.Globalization;
using FuelSizing.Quantities;

namespace FuelSizing.Logs;

/// <summary>
/// Makes rows of a file's cells, and says what is right or wrong with them.
/// </summary>
internal sealed class RowParser : IDisposable
{
    private static readonly Statement OpenQuote = Statement.Of(
        "log.open-quote",
        $"the cell's quote is not closed before the separator or the line's end; a quote within a quoted cell is written twice.");

    private static readonly Statement Blank = Statement.Of("log.blank-line", $"the line is blank.");

    private static readonly Statement TooLong = Statement.Of(
        "log.line-too-long", $"the line has more than {BoundedLines.LongestLine} characters; is a line end missing?");

    private static readonly Statement Cut = Statement.Of(
        "log.cut-line",
        $"the last line has no line end; its last value may have been cut, so the row is not used. End the line if it is whole.");

    private static readonly Statement RowNotUsed = Statement.Of("log.row-not-used", $"the row is not used");

    private static readonly Statement ValueNotUsed = Statement.Of("log.value-not-used", $"the row is used without this value");

    private readonly CellReader _cells;

    private readonly ProblemLog _problems;

    private readonly int _columns;

    private readonly ReadSlot _speed;

    private readonly ReadSlot? _time;

    /// <summary>All channels but speed and time.</summary>
    private readonly ReadSlot[] _others;

    /// <summary>An engine burns at no leaner mixture than this.</summary>
    private const double SurelyLambda = 3;

    /// <summary>Air-fuel ratios of engines: methanol at its richest, petrol at its leanest.</summary>
    private const double SmallestRatio = 4;
    private const double LargestRatio = 25;

    /// <summary>A slower crank is at rest, and the sensor in plain air, rev/s.</summary>
    private const double Turning = 1;

    private bool _hasLambda;

    private bool _hasRatio;

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
        _problems = problems;
        _cells = new(lines, separator, Numbers(mapping.DecimalMark));
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
                (column, below, cell, field, kind, reason) => Refuse(column, mapping.HeadingLine + below, cell, field, kind, reason));
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
    public bool MoveNext() => _cells.MoveNext();

    /// <summary>Takes the row at hand; false where it is refused.</summary>
    public bool TryTake(out RunRow taken)
    {
        taken = default;
        if (_cells.IsTooLong)
        {
            return RefuseRow(1, "", RunProblemKind.LineTooLong, TooLong);
        }

        if (_cells.IsCut)
        {
            return RefuseRow(
                _cells.LastCell,
                "",
                RunProblemKind.TruncatedLine,
                Cut);
        }

        if (!_cells.TrySplit())
        {
            return RefuseRow(_cells.Count, "", RunProblemKind.Quote, OpenQuote);
        }

        int count = _cells.Count;
        if (count != _columns && !IsCountGood(count))
        {
            return false;
        }

        var values = ChannelValues.None;
        if (!TryNeeded(_speed, ref values) || (_time is not null && !TryTime(_time, ref values)))
        {
            return false;
        }

        foreach (ReadSlot slot in _others)
        {
            if (TryValue(slot, out double value, out RunProblemKind kind))
            {
                if (slot.Channel != Channel.Lambda || !slot.IsPlain || CanBeLambda(slot, value, values[(int)Channel.Speed]))
                {
                    values[(int)slot.Channel] = value;
                }
            }
            else if (kind != RunProblemKind.MissingValue)
            {
                AddCell(slot, kind, value, ProblemEffect.ValueLeftOut);
            }
        }

        taken = new(_cells.Line, values);
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
                    i == 0
                        ? Statement.Of("log.empty-file", $"the file is empty; wanted is a heading and numbers below.")
                        : Statement.Of("log.no-heading", $"the file ends here; its heading should be in line {headingLine:ordinal}."));
            }
        }

        string[] cells = ReadCells();
        if (_cells.IsCut)
        {
            throw File(
                RunProblemKind.TruncatedLine,
                Statement.Of("log.cut-heading", $"the file ends within its heading; wanted is a whole heading, its line ended, and numbers below."));
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
        if (_cells.IsTooLong)
        {
            throw File(RunProblemKind.LineTooLong, TooLong);
        }

        if (!_cells.TrySplit())
        {
            throw File(RunProblemKind.Quote, OpenQuote, _cells.Count);
        }

        string[] cells = new string[_cells.Count];
        for (int i = 0; i < cells.Length; i++)
        {
            cells[i] = _cells[i].ToString();
        }

        return cells;
    }

    private RunFileException File(RunProblemKind kind, Statement reason, int column = 1) =>
        new(new(Math.Max(_cells.Line, 1), column, "", kind, ProblemEffect.FileRefused, reason));

    /// <summary>A channel that cannot be read: of speed, or where the mapping names a column that is not there, that ends the reading.</summary>
    private void Refuse(RunColumn column, int line, int cell, string field, RunProblemKind kind, Statement reason)
    {
        if (column.Channel == Channel.Speed || kind == RunProblemKind.MissingColumn)
        {
            throw new RunFileException(new(line, cell, field, kind, ProblemEffect.FileRefused, reason));
        }

        _problems.Add(line, cell, field, kind, ProblemEffect.ChannelLeftOut, reason);
    }

    /// <summary>Blank cells past the last heading do no harm; other counts do.</summary>
    private bool IsCountGood(int count)
    {
        if (count < _columns)
        {
            return _cells.Text.IsWhiteSpace()
                ? RefuseRow(1, "", RunProblemKind.BlankLine, Blank)
                : RefuseRow(
                    count,
                    "",
                    RunProblemKind.TooFewCells,
                    _problems.IsHeard
                        ? Statement.Of(
                            "log.too-few-cells",
                            $"the row has {count} cells and the heading {_columns}; which are missing cannot be told, so the row is not used.")
                        : null);
        }

        for (int i = _columns; i < count; i++)
        {
            if (!_cells[i].IsWhiteSpace())
            {
                return RefuseRow(
                    i + 1,
                    "",
                    RunProblemKind.TooManyCells,
                    _problems.IsHeard
                        ? Statement.Of(
                            "log.too-many-cells",
                            $"the row has {count} cells and the heading {_columns}; which are too many cannot be told, so the row is not used.")
                        : null);
            }
        }

        return true;
    }

    /// <summary>A value without which the row is of no use.</summary>
    private bool TryNeeded(ReadSlot slot, ref ChannelValues values)
    {
        if (TryValue(slot, out double value, out RunProblemKind kind))
        {
            values[(int)slot.Channel] = value;
            return true;
        }

        if (kind == RunProblemKind.MissingValue && _cells.Count == 1)
        {
            return RefuseRow(1, "", RunProblemKind.BlankLine, Blank);
        }

        AddCell(slot, kind, value, ProblemEffect.RowRefused);
        return false;
    }

    /// <summary>Time, which must go on from row to row.</summary>
    private bool TryTime(ReadSlot slot, ref ChannelValues values)
    {
        if (!TryNeeded(slot, ref values))
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
            _problems.IsHeard ? TimeReason(CellText.Shown(_cells[slot.Index].Trim()), time, again) : null);
    }

    // Rows a millisecond apart have times that round to the same, so the cell is quoted and a short step back is in ms.
    private Statement TimeReason(string found, double time, bool again)
    {
        StatementArgument at = ChannelRange.Figure(Channel.Time, time);
        StatementArgument early = ChannelRange.Figure(_lastTime - time < 1 ? Channel.InjectorPulse : Channel.Time, _lastTime - time);
        return again
            ? Statement.Of("log.same-time", $"the time \"{found}\" is {at}, that of the last row used; {RowNotUsed}.")
            : Statement.Of("log.earlier-time", $"the time \"{found}\" is {at}, {early} before the last row used; {RowNotUsed}.");
    }

    /// <summary>A cell as an SI value that may be; if it is none, what is wrong with it. A blank cell is a missing value.</summary>
    private bool TryValue(ReadSlot slot, out double value, out RunProblemKind kind)
    {
        kind = RunProblemKind.MissingValue;
        ReadOnlySpan<char> cell = _cells[slot.Index];
        if (cell.IsEmpty)
        {
            value = double.NaN;
            return false;
        }

        if (_cells.TryNumber(slot.Index, out value))
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

    /// <summary>
    /// Whether a reading can be lambda. Before the first that surely is, one of the size of an air-fuel ratio with the engine turning is
    /// taken for such a ratio, and the channel is left out until one comes that is not.
    /// </summary>
    private bool CanBeLambda(ReadSlot slot, double value, double speed)
    {
        _hasLambda |= value <= SurelyLambda;
        if (_hasLambda || speed < Turning || value is < SmallestRatio or > LargestRatio)
        {
            return true;
        }

        if (!_hasRatio)
        {
            _hasRatio = true;
            _problems.Add(
                _cells.Line,
                slot.Index + 1,
                slot.Field,
                RunProblemKind.Unit,
                ProblemEffect.ChannelLeftOut,
                Statement.Of(
                    "log.looks-like-ratio",
                    $"\"{CellText.Shown(_cells[slot.Index].Trim())}\" looks like an air-fuel ratio, not lambda; {slot.Channel.ToString()} is left out until a reading that can be lambda. Map the column as an air-fuel ratio, with what the instrument shows at lambda 1."));
        }

        return false;
    }

    private bool RefuseRow(int column, string field, RunProblemKind kind, Statement? reason)
    {
        _problems.Add(_cells.Line, column, field, kind, ProblemEffect.RowRefused, reason);
        return false;
    }

    /// <summary>A cell that gives no value.</summary>
    private void AddCell(ReadSlot slot, RunProblemKind kind, double value, ProblemEffect effect) =>
        _problems.Add(
            _cells.Line,
            slot.Index + 1,
            slot.Field,
            kind,
            effect,
            _problems.IsHeard ? CellReason(CellText.Shown(_cells[slot.Index].Trim()), slot.Channel, kind, value, effect) : null);

    // Of an unusual value the figure may round to the range's end, so the words say on which side it is.
    private static Statement CellReason(string found, Channel channel, RunProblemKind kind, double value, ProblemEffect effect)
    {
        string name = channel.ToString();
        Statement cost = effect == ProblemEffect.RowRefused ? RowNotUsed : ValueNotUsed;
        StatementArgument minimum = ChannelRange.Minimum(channel);
        StatementArgument maximum = ChannelRange.Maximum(channel);
        return kind switch
        {
            RunProblemKind.MissingValue => Statement.Of("log.blank-cell", $"the cell is blank, and a row needs its {name}; {cost}."),
            RunProblemKind.NotFinite => Statement.Of("log.not-finite", $"\"{found}\" says that there is no value of {name}; {cost}."),
            RunProblemKind.OutOfRange when ChannelRange.IsFarOutside(channel, value) => Statement.Of(
                "log.far-outside", $"\"{found}\" is no {name} at all; it must be between {minimum} and {maximum}; {cost}."),
            RunProblemKind.OutOfRange when ChannelRange.IsOver(channel, value) => Statement.Of(
                "log.too-high",
                $"\"{found}\" is {name} {ChannelRange.Figure(channel, value)}, too high; it must be between {minimum} and {maximum}; {cost}."),
            RunProblemKind.OutOfRange => Statement.Of(
                "log.too-low",
                $"\"{found}\" is {name} {ChannelRange.Figure(channel, value)}, too low; it must be between {minimum} and {maximum}; {cost}."),
            _ => Statement.Of("log.not-a-number", $"\"{found}\" is no number as the mapping has numbers written; {cost}."),
        };
    }
}
