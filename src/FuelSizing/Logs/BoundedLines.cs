namespace FuelSizing.Logs;

/// <summary>
/// A text on its way to the parser, made safe: of a line that is too long only the beginning passes, so that no line takes
/// more than a fixed memory; a last line without a line end is marked, so that the parser's user knows it; and a byte order
/// mark is dropped.
/// </summary>
/// <remarks>Line ends are \n, \r\n and \r, as the parser has them.</remarks>
internal sealed class BoundedLines(TextReader text, bool owned, CancellationToken cancellation) : TextReader
{
    /// <summary>Characters that a line may have.</summary>
    public const int LongestLine = 65_536;

    /// <summary>Ends a last line that had no line end: a code point that Unicode keeps out of texts.</summary>
    public const char CutMark = '\uFFFF';

    /// <summary>Characters of the line at hand that have passed, one over the longest at most.</summary>
    private int _passed;

    private bool _begun;

    private bool _lineOpen;

    private bool _ended;

    /// <summary>Whether the text ended in the middle of a line.</summary>
    public bool IsCut { get; private set; }

    public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

    public override int Read(Span<char> buffer)
    {
        while (!_ended && buffer.Length > 0)
        {
            cancellation.ThrowIfCancellationRequested();

            // No more than one longest line at a time: then at most the first and the last line in it can be too long.
            Span<char> block = buffer[..Math.Min(buffer.Length, LongestLine)];
            int read = text.Read(block);
            if (read == 0)
            {
                _ended = true;
                IsCut = _lineOpen;
                if (!_lineOpen)
                {
                    return 0;
                }

                buffer[0] = CutMark;
                return 1;
            }

            bool marked = !_begun && block[0] == '\uFEFF';
            _begun = true;
            if (marked)
            {
                block[1..read].CopyTo(block);
                read--;
            }

            int kept = read == 0 ? 0 : Bounded(block[..read]);
            if (kept > 0)
            {
                return kept;
            }
        }

        return 0;
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing && owned)
        {
            text.Dispose();
        }

        base.Dispose(disposing);
    }

    /// <summary>Drops what is too long from a block, and says how much is left.</summary>
    private int Bounded(Span<char> block)
    {
        _lineOpen = block[^1] is not ('\n' or '\r');
        int end = block.IndexOfAny('\n', '\r');
        int ofFirst = end < 0 ? block.Length : end;
        int fit = Math.Min(ofFirst, LongestLine + 1 - _passed);
        if (fit < ofFirst)
        {
            block[ofFirst..].CopyTo(block[fit..]);
        }

        int kept = block.Length - (ofFirst - fit);
        _passed = end < 0 ? _passed + fit : kept - 1 - block[..kept].LastIndexOfAny('\n', '\r');
        return kept;
    }
}
