using System.Text;
using CsCheck;
using FuelSizing.Logs;

namespace FuelSizing.Tests.Logs;

/// <summary>A text before it is split: it comes in pieces of any size, and no line of it takes more than a fixed memory.</summary>
public class BoundedLinesTests
{
    private const int Longest = 65_536;

    [Fact]
    public void Text_InPiecesOfAnySize_PassesAsItStandsAndIsMarkedWhereItsLastLineIsOpen() =>
        Gen.Select(Gen.OneOfConst('a', 'b', '7', ',', '\n', '\r', '\uFEFF').Array[0, 40], Gen.Int[1, 9], Gen.Int[1, 12]).Sample(
            (letters, piece, buffer) =>
            {
                string text = new(letters);
                Assert.Equal(Expected(text), Read(text, piece, buffer));
            },
            iter: 2000);

    /// <summary>Of a line passes one character more than it may have, so that its reader knows; lines before and behind it pass whole.</summary>
    [Fact]
    public void Lines_AroundTheLongestLength_PassUpToOneMoreThanIt()
    {
        int[][] lines =
        [
            [Longest - 1, 3], [Longest, 3], [Longest + 1, 3], [Longest + 2, 3], [Longest, Longest + 1, 2], [3, (2 * Longest) + 1, 3], [2, 70_000, 0, 5, 200_000, 1], [140_000, 140_000, 2],
        ];
        foreach (int[] lengths in lines)
        {
            string text = string.Concat(lengths.Select((length, line) => new string((char)('a' + line), length) + (line % 2 == 0 ? "\n" : "\r\n")));
            string open = text[..^1] + "x";
            (string ended, string cut) = (Expected(text), Expected(open));
            foreach ((int piece, int buffer) in new[] { (Longest, Longest), (100_000, Longest + 1), (300_000, 300_000), (300_000, 7000) })
            {
                Assert.Equal(ended, Read(text, piece, buffer));
                Assert.Equal(cut, Read(open, piece, buffer));
            }
        }
    }

    [Theory]
    [InlineData("", false)]
    [InlineData("\uFEFF", false)]
    [InlineData("a\n", false)]
    [InlineData("a\r", false)]
    [InlineData("a", true)]
    [InlineData("a\nb", true)]
    public void Text_ThatEndsInTheMiddleOfALine_IsCut(string text, bool isCut)
    {
        using BoundedLines lines = new(new StringReader(text), false, default);
        Assert.False(lines.IsCut);
        char[] buffer = new char[16];
        int read = 0;
        for (int more = 1; more > 0; read += more)
        {
            more = lines.Read(buffer, read, 3);
        }

        Assert.Equal(isCut, lines.IsCut);
        Assert.Equal(Expected(text), new string(buffer, 0, read));
        Assert.Equal(0, lines.Read(buffer, 0, 3));
    }

    /// <summary>Of a line that is too long nothing more passes, so one call may read for long: it must hear of the stop.</summary>
    [Fact]
    public void Reading_ThatIsStoppedWithinALongLine_Stops()
    {
        using CancellationTokenSource stop = new();
        using Pieces text = new(new string('7', 40 * Longest), Longest, read =>
        {
            if (read == 5)
            {
                stop.Cancel();
            }
        });
        using BoundedLines lines = new(text, false, stop.Token);
        char[] buffer = new char[Longest];
        Assert.Throws<OperationCanceledException>(() =>
        {
            while (lines.Read(buffer) > 0)
            {
            }
        });
        Assert.Equal(5, text.Reads);
    }

    [Fact]
    public void Reading_IntoNoRoom_TakesNothing()
    {
        using BoundedLines lines = new(new StringReader("ab\n"), false, default);
        Assert.Equal(0, lines.Read([]));
        char[] buffer = new char[8];
        Assert.Equal(3, lines.Read(buffer));
        Assert.Equal("ab\n", new string(buffer, 0, 3));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Text_IsClosedWithTheLines_WhereItIsTheirs(bool owned)
    {
        using Pieces text = new("a\n", 2);
        new BoundedLines(text, owned, default).Dispose();
        Assert.Equal(owned, text.IsClosed);
    }

    private static string Read(string text, int piece, int buffer)
    {
        using BoundedLines lines = new(new Pieces(text, piece), true, default);
        StringBuilder passed = new();
        char[] block = new char[buffer];
        for (int read = lines.Read(block); read > 0; read = lines.Read(block))
        {
            passed.Append(block, 0, read);
        }

        return passed.ToString();
    }

    /// <summary>Letter by letter: no byte order mark, of each line the first 65,537, and U+FFFF where the last line has no end.</summary>
    private static string Expected(string text)
    {
        string marked = text.StartsWith('\uFEFF') ? text[1..] : text;
        StringBuilder passed = new();
        int length = 0;
        foreach (char letter in marked)
        {
            bool isEnd = letter is '\n' or '\r';
            if (isEnd || length <= Longest)
            {
                passed.Append(letter);
            }

            length = isEnd ? 0 : length + 1;
        }

        return marked.Length == 0 || marked[^1] is '\n' or '\r' ? passed.ToString() : passed.Append('\uFFFF').ToString();
    }

    /// <summary>A text that comes in pieces, as from a pipe.</summary>
    private sealed class Pieces(string text, int piece, Action<int>? heard = null) : TextReader
    {
        private int _at;

        public int Reads { get; private set; }

        public bool IsClosed { get; private set; }

        public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

        public override int Read(Span<char> buffer)
        {
            heard?.Invoke(++Reads);
            int read = Math.Min(Math.Min(piece, buffer.Length), text.Length - _at);
            text.AsSpan(_at, read).CopyTo(buffer);
            _at += read;
            return read;
        }

        protected override void Dispose(bool disposing)
        {
            IsClosed = true;
            base.Dispose(disposing);
        }
    }
}
