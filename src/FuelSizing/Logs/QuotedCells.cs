namespace FuelSizing.Logs;

/// <summary>
/// Splits the rare line with quotes in it. A cell that begins with a quote runs to its closing quote, separators and doubled
/// quotes inside; only blanks may follow. Any other quote is text, or malformed where that is asked for. A line is a row: quotes
/// hold no line end.
/// </summary>
internal sealed class QuotedCells(char separator, bool isStrict)
{
    private readonly List<Range> _cells = [];

    private char[] _text = new char[256];

    /// <summary>Number of cells of the line split last.</summary>
    public int Count => _cells.Count;

    /// <summary>A cell of the line split last, without its quotes.</summary>
    public ReadOnlySpan<char> this[int index] => _text.AsSpan(_cells[index]);

    /// <summary>Splits a line; false where quotes do not match, in the last cell counted.</summary>
    public bool TrySplit(ReadOnlySpan<char> line)
    {
        _cells.Clear();
        if (_text.Length < line.Length)
        {
            _text = new char[Math.Max(line.Length, 2 * _text.Length)];
        }

        int written = 0;
        while (true)
        {
            int start = written;
            bool whole = true;
            int lead = line.Length - line.TrimStart(' ').Length;
            if (lead < line.Length && line[lead] == '"')
            {
                whole = TryQuoted(ref line, lead + 1, ref written);
            }
            else
            {
                int length = line.IndexOf(separator) is >= 0 and var found ? found : line.Length;
                whole = !isStrict || !line[..length].Contains('"');
                line[..length].CopyTo(_text.AsSpan(written));
                written += length;
                line = line[length..];
            }

            _cells.Add(start..written);
            if (!whole || line.IsEmpty)
            {
                return whole;
            }

            line = line[1..];
        }
    }

    /// <summary>Takes a cell from behind its opening quote up to the separator or the line's end.</summary>
    private bool TryQuoted(ref ReadOnlySpan<char> line, int start, ref int written)
    {
        line = line[start..];
        while (true)
        {
            int quote = line.IndexOf('"');
            if (quote < 0)
            {
                return false;
            }

            bool doubled = quote + 1 < line.Length && line[quote + 1] == '"';
            int taken = quote + (doubled ? 1 : 0);
            line[..taken].CopyTo(_text.AsSpan(written));
            written += taken;
            line = line[(quote + (doubled ? 2 : 1))..];
            if (!doubled)
            {
                line = line.TrimStart(' ');
                return line.IsEmpty || line[0] == separator;
            }
        }
    }
}
