using System.Globalization;
using nietras.SeparatedValues;

namespace FuelSizing.Logs;

/// <summary>
/// The one reader of separated values, of recorded runs and of catalogues: a library finds lines, cells and numbers; quotes are
/// taken off here.
/// </summary>
/// <remarks>
/// The library can take quotes off too, but says nothing of a malformed one, and lets an open one swallow the lines below it.
/// So it is asked for bare cells, and the rare line with a quote in it goes through <see cref="QuotedCells"/>: a line is a row,
/// and a fault never reaches past its line.
/// </remarks>
internal sealed class CellReader : IDisposable
{
    private readonly BoundedLines _lines;
    private readonly SepReader _rows;
    private readonly QuotedCells _quoted;
    private readonly CultureInfo _numbers;
    private bool _isQuoted;

    /// <summary>Reads lines; they are let go of at the end.</summary>
    /// <param name="lines">The text.</param>
    /// <param name="separator">Between cells.</param>
    /// <param name="numbers">How numbers are written.</param>
    /// <param name="isStrict">Whether a quote within a cell that has none at its beginning is malformed too (RFC 4180), or text.</param>
    public CellReader(BoundedLines lines, char separator, CultureInfo numbers, bool isStrict = false)
    {
        (_lines, _numbers) = (lines, numbers);
        _quoted = new(separator, isStrict);
        _rows = Sep.New(separator)
            .Reader(options => options with
            {
                HasHeader = false,
                DisableColCountCheck = true,
                DisableQuotesParsing = true,
                CultureInfo = numbers,
            })
            .From(lines);
    }

    /// <summary>The line at hand, the first being 1.</summary>
    public long Line { get; private set; }

    /// <summary>The line as it stands.</summary>
    public ReadOnlySpan<char> Text => _rows.Current.Span;

    /// <summary>Whether only the beginning of the line passed.</summary>
    public bool IsTooLong => Text.Length > BoundedLines.LongestLine;

    /// <summary>Whether the line is the last one and has no line end.</summary>
    public bool IsCut => _lines.IsCut && Text is [.., BoundedLines.CutMark];

    /// <summary>The number of the last cell of the line as it stands, quotes or not.</summary>
    public int LastCell => _rows.Current.ColCount;

    /// <summary>Cells of the line split last; where its quotes do not match, up to the cell at fault.</summary>
    public int Count => _isQuoted ? _quoted.Count : _rows.Current.ColCount;

    /// <summary>A cell of the line split last, without its quotes.</summary>
    public ReadOnlySpan<char> this[int index] => _isQuoted ? _quoted[index] : _rows.Current[index].Span;

    /// <summary>Goes to the next line; false at the end.</summary>
    public bool MoveNext()
    {
        if (!_rows.MoveNext())
        {
            return false;
        }

        Line++;
        return true;
    }

    /// <summary>Parts the line into cells; false where its quotes do not match.</summary>
    public bool TrySplit()
    {
        ReadOnlySpan<char> line = Text;
        _isQuoted = line.Contains('"');
        return !_isQuoted || _quoted.TrySplit(line);
    }

    /// <summary>A cell's number.</summary>
    public bool TryNumber(int index, out double value) =>
        _isQuoted ? double.TryParse(_quoted[index], NumberStyles.Float, _numbers, out value) : _rows.Current[index].TryParse(out value);

    /// <inheritdoc/>
    public void Dispose() => _rows.Dispose();
}
