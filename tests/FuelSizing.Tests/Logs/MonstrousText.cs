namespace FuelSizing.Tests.Logs;

/// <summary>A text with a line of any length in it, which is never in memory.</summary>
internal sealed class MonstrousText(string before, long digits, string after) : TextReader
{
    private readonly StringReader _before = new(before);

    private readonly StringReader _after = new(after);

    private long _left = digits;

    public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

    public override int Read(Span<char> buffer)
    {
        int read = _before.Read(buffer);
        if (read > 0)
        {
            return read;
        }

        if (_left == 0)
        {
            return _after.Read(buffer);
        }

        read = (int)Math.Min(_left, buffer.Length);
        buffer[..read].Fill('7');
        _left -= read;
        return read;
    }
}
