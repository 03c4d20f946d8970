using System.Globalization;
using System.Text;
using CsCheck;
using FuelSizing.Logs;

namespace FuelSizing.Tests.Logs;

/// <summary>Lines with quotes in them, against a splitter that goes letter by letter (RFC 4180; here a line is a row).</summary>
public class QuotedCellsTests
{
    [Fact]
    public void Line_OfQuotesAndSeparators_IsSplitAsLetterByLetter()
    {
        QuotedCells[] cells = [new(',', false), new(',', true), new(';', false), new('\t', true)];
        (char Separator, bool IsStrict)[] kinds = [(',', false), (',', true), (';', false), ('\t', true)];
        Gen.Select(Gen.OneOfConst('"', '"', ',', ';', '\t', ' ', 'a', '1').Array[0, 24], Gen.Int[0, 3]).Sample(
            (letters, kind) => Compare(cells[kind], new(letters), kinds[kind].Separator, kinds[kind].IsStrict),
            iter: 5000,
            threads: 1);
    }

    /// <summary>Each line is longer than those before it, so that the room for a line grows, and then a short one.</summary>
    [Fact]
    public void Line_OfAnyLength_IsSplitWhole()
    {
        QuotedCells cells = new(',', false);
        foreach (int length in new[] { 254, 255, 256, 257, 300, 512, 513, 5000, 5001, 3 })
        {
            Compare(cells, $"\"{new string('x', length)}\",{new string('y', length)}", ',', false);
            Compare(cells, $"{new string('y', length)},\"{new string('x', length)}\"\"\"", ',', false);
        }
    }

    [Theory]
    [InlineData("\"1\",\"2\"", "1|2")]
    [InlineData("\"1\" , \"2\"  ", "1|2")]
    [InlineData("  \"a,b\"", "a,b")]
    [InlineData("\"a\"\"b\",", "a\"b|")]
    [InlineData("\"\"", "")]
    [InlineData("\"\"\"\"", "\"")]
    [InlineData("5\",6", "5\"|6")]
    [InlineData("a \"b\",c", "a \"b\"|c")]
    public void Cells_OfALine_AreThose(string line, string expected)
    {
        QuotedCells cells = new(',', false);
        Assert.True(cells.TrySplit(line));
        Assert.Equal(expected, string.Join('|', Enumerable.Range(0, cells.Count).Select(cell => cells[cell].ToString())));
    }

    /// <summary>The last cell counted is the one at fault.</summary>
    [Theory]
    [InlineData("1,\"2", false, 2)]
    [InlineData("1,\"2\"x,3", false, 2)]
    [InlineData("1,\"2\"\",3", false, 2)]
    [InlineData("\"", false, 1)]
    [InlineData("1,2,3\"", true, 3)]
    [InlineData("1,2\",\"3\"", true, 2)]
    public void Quote_ThatDoesNotMatch_IsInTheLastCellCounted(string line, bool isStrict, int count)
    {
        QuotedCells cells = new(',', isStrict);
        Assert.False(cells.TrySplit(line));
        Assert.Equal(count, cells.Count);
    }

    /// <summary>A number in quotes is the number that stands without them, and no thousands are guessed.</summary>
    [Theory]
    [InlineData("\"1.5\"", ".", 1.5)]
    [InlineData("\" 1.5 \"", ".", 1.5)]
    [InlineData("\"-2e3\"", ".", -2000.0)]
    [InlineData("\"1,5\"", ",", 1.5)]
    [InlineData("\"1,000.5\"", ".", null)]
    [InlineData("\"\"", ".", null)]
    [InlineData("\"(5)\"", ".", null)]
    [InlineData("\"0x10\"", ".", null)]
    public void Number_InQuotes_IsReadAsOneWithout(string cell, string mark, double? expected)
    {
        CultureInfo numbers = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (numbers.NumberFormat.NumberGroupSeparator, numbers.NumberFormat.NumberDecimalSeparator) = ("\uFFFE", mark);
        using CellReader cells = new(new BoundedLines(new StringReader($"{cell};x\n{cell[1..^1]};x\n"), true, default), ';', numbers);
        for (int line = 1; line <= 2; line++)
        {
            Assert.True(cells.MoveNext());
            Assert.True(cells.TrySplit());
            Assert.Equal(line, cells.Line);
            Assert.Equal(2, cells.Count);
            Assert.Equal("x", cells[1].ToString());
            Assert.Equal(expected is not null, cells.TryNumber(0, out double value));
            Assert.Equal(expected ?? value, value);
        }

        Assert.False(cells.MoveNext());
        Assert.Equal(2, cells.Line);
    }

    private static void Compare(QuotedCells cells, string line, char separator, bool isStrict)
    {
        bool whole = cells.TrySplit(line);
        (List<string> expected, bool isWhole) = Split(line, separator, isStrict);
        Assert.Equal(isWhole, whole);
        Assert.Equal(expected.Count, cells.Count);
        for (int cell = 0; cell < expected.Count - (whole ? 0 : 1); cell++)
        {
            Assert.Equal(expected[cell], cells[cell].ToString());
        }
    }

    private static (List<string> Cells, bool IsWhole) Split(string line, char separator, bool isStrict)
    {
        List<string> cells = [];
        int at = 0;
        while (true)
        {
            StringBuilder cell = new();
            int begin = at;
            while (begin < line.Length && line[begin] == ' ')
            {
                begin++;
            }

            if (begin < line.Length && line[begin] == '"')
            {
                at = begin + 1;
                bool isOpen = true;
                while (at < line.Length && isOpen)
                {
                    if (line[at] != '"')
                    {
                        cell.Append(line[at++]);
                    }
                    else if (at + 1 < line.Length && line[at + 1] == '"')
                    {
                        cell.Append('"');
                        at += 2;
                    }
                    else
                    {
                        isOpen = false;
                        at++;
                    }
                }

                while (at < line.Length && line[at] == ' ')
                {
                    at++;
                }

                cells.Add(cell.ToString());
                if (isOpen || (at < line.Length && line[at] != separator))
                {
                    return (cells, false);
                }
            }
            else
            {
                while (at < line.Length && line[at] != separator)
                {
                    cell.Append(line[at++]);
                }

                cells.Add(cell.ToString());
                if (isStrict && cell.ToString().Contains('"', StringComparison.Ordinal))
                {
                    return (cells, false);
                }
            }

            if (at == line.Length)
            {
                return (cells, true);
            }

            at++;
        }
    }
}
