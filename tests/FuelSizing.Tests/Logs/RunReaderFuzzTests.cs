using System.Globalization;
using System.Text;
using CsCheck;
using FuelSizing.Logs;

namespace FuelSizing.Tests.Logs;

/// <summary>
/// Thousands of broken files: each ends in a refusal with its place, or in an account in which no row is missing and every
/// row used says what a plain reading of its line says.
/// </summary>
public class RunReaderFuzzTests
{
    private const string Good =
        LogText.Heading
        + "0.00,3000,0.50,350,0.85\n0.01,3010,0.52,352,0.84\n0.02,3020,,,\n\"0.03\",3030,0.53,353,0.86\n0.04,3040.5,-0.2,3.5e2,0.9\r\n"
        + "0.05,3050,0.50,350,0.85\n0.06,3060,0.52,352,0.84\n0.07,3070,0.51,351,0.83\n";

    /// <summary>The characters that a reader of tables must look out for, and some of every other sort.</summary>
    private static readonly Gen<char> Telling = Gen.OneOf(
        Gen.OneOfConst('"', ',', ';', '\t', '\n', '\r', '.', '-', '+', 'e', 'E', ' ', '\0', '\uFEFF', '\uFFFF', '\uFFFD', '\uD800', 'N', '∞', '\u2028', '\u0085'),
        Gen.Char['0', '9'],
        Gen.Char);

    private static readonly Gen<Func<string, string>> Change = Gen.OneOf(
        Gen.Select(Gen.Int, Telling, (at, c) => Edit(text => text.Insert(Place(at, text.Length + 1), $"{c}"))),
        Gen.Select(Gen.Int, Telling, (at, c) => Edit(text => text.Length == 0 ? text : Put(text, Place(at, text.Length), c))),
        Gen.Select(Gen.Int, Gen.Int[1, 30], (at, length) => Edit(text => Cut(text, Place(at, text.Length + 1), length))),
        Gen.Int.Select(at => Edit(text => text[..Place(at, text.Length + 1)])),
        Gen.Select(Gen.Int, Gen.Int, (from, to) => Edit(text => MoveLine(text, from, to))),
        Gen.Select(Gen.Int, Gen.OneOfConst("NaN", "-Infinity", "∞", "1e999", "1,5", "1.5.2", "0x1F", "", "\"\"\"", "99999999999999999999"), (at, word) =>
            Edit(text => text.Insert(Place(at, text.Length + 1), word))));

    [Fact]
    public void GoodFile_WithAFewChanges_IsReadRightOrReported() =>
        Change.Array[1, 6].Select(changes => changes.Aggregate(Good, (text, change) => change(text)))
            .Sample(text => Check(text), iter: 6000);

    /// <summary>Lines above the heading, units below it that are used, semicolons and decimal commas: the account alone is checked.</summary>
    [Fact]
    public void FileOfAnotherDialect_WithAFewChanges_LosesNoRow()
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Time("Time"), RunColumn.Speed("Speed"), RunColumn.RailAbsolute("Rail"), RunColumn.Lambda("Lambda"))
            .Written(CellSeparator.Semicolon, DecimalMark.Comma).WithHeadingLine(2).WithUnitsRow(UnitsRow.Used);
        const string good = "a run; on the hill\nTime;Speed;Boost;Rail;Lambda\n[s];rpm;bar;kPa;\n0,00;3000;0,50;450;0,85\n\"0,01\";3010;0,52;452;0,84\n0,02;3020;;;\n";
        Change.Array[1, 6].Select(changes => changes.Aggregate(good, (text, change) => change(text)))
            .Sample(text => CheckAccount(text, new StringReader(text), mapping, 3), iter: 3000);
    }

    [Fact]
    public void Text_OfTellingCharacters_IsReadRightOrReported() =>
        Gen.Select(Telling.Array[0, 300], Gen.Bool, (text, headed) => (headed ? LogText.Heading : "") + new string(text))
            .Sample(text => Check(text), iter: 3000);

    [Fact]
    public void Bytes_OfAnySort_AreReadRightOrReported() =>
        Gen.Select(Gen.Byte.Array[0, 400], Gen.Bool, (bytes, headed) => headed ? [.. Encoding.UTF8.GetBytes(LogText.Heading), .. bytes] : bytes)
            .Sample(
                bytes =>
                {
                    using StreamReader text = new(new MemoryStream(bytes), Encoding.UTF8, true);
                    Check(text.ReadToEnd(), new MemoryStream(bytes));
                },
                iter: 3000);

    [Fact]
    public void CellsAndLines_InAnyNumber_AreReadRightOrReported() =>
        Gen.OneOfConst("", "0", "1.5", "\"", "\"2\"", "x", " ", "NaN").Array[0, 9].Select(cells => string.Join(',', cells)).Array[0, 40]
            .Select(lines => LogText.Heading + string.Join('\n', lines))
            .Sample(text => Check(text), iter: 3000);

    private static void Check(string text, Stream? bytes = null)
    {
        using TextReader reader = bytes is null ? new StringReader(text) : new StreamReader(bytes, Encoding.UTF8, true);
        if (CheckAccount(text, reader, LogText.Mapping, 1) is var (rows, problems))
        {
            string[] lines = Lines(text);
            foreach (RunRow row in rows)
            {
                CheckCells(lines[row.Line - 1], row, lines[0], problems);
            }
        }
    }

    /// <summary>What was read, every row accounted for; null of a file that is refused.</summary>
    private static (List<RunRow> Rows, List<RunProblem> Problems)? CheckAccount(string text, TextReader file, RunMapping mapping, int linesAbove)
    {
        List<RunProblem> problems = [];
        RunReader reader;
        try
        {
            reader = RunReader.Open(file, mapping, LogText.Air, problems.Add);
        }
        catch (RunFileException refusal)
        {
            Assert.True(refusal.Problem.Line >= 1 && refusal.Problem.Column >= 1 && refusal.Problem.Reason.Code.Length > 0);
            Assert.Equal(ProblemEffect.FileRefused, refusal.Problem.Effect);
            return null;
        }

        List<RunRow> rows;
        using (reader)
        {
            rows = [.. reader.Rows()];
        }

        int lines = Lines(text).Length;
        RunAccount account = reader.Account;
        Assert.Equal(lines - linesAbove, account.Rows);
        Assert.Equal(rows.Count, account.RowsUsed);
        Assert.All(problems, problem => Assert.True(problem.Line >= 1 && problem.Line <= lines && problem.Column >= 1 && problem.Reason.Code.Length > 0));

        // Each line below the heading is either used or refused, once.
        long[] refused = [.. problems.Where(problem => problem.Effect == ProblemEffect.RowRefused).Select(problem => problem.Line)];
        Assert.Equal(
            Enumerable.Range(linesAbove + 1, lines - linesAbove).Select(line => (long)line), rows.Select(row => row.Line).Concat(refused).Order());
        Assert.Equal(account.ValuesLeftOut, problems.Count(problem => problem.Effect == ProblemEffect.ValueLeftOut));
        Assert.Equal(account.Problems, problems.Count);
        Assert.True(rows.Zip(rows.Skip(1)).All(pair => !reader.Channels.Contains(Channel.Time) || pair.First[Channel.Time] < pair.Second[Channel.Time]));
        return (rows, problems);
    }

    /// <summary>What a plain reading says of the cells: split, trim, parse. Lines with quotes are left to other tests.</summary>
    private static void CheckCells(string line, RunRow row, string heading, List<RunProblem> problems)
    {
        if (line.Contains('"', StringComparison.Ordinal) || heading.Contains('"', StringComparison.Ordinal))
        {
            return;
        }

        string[] cells = line.Split(','), headings = [.. heading.Split(',').Select(cell => cell.Trim())];
        foreach ((string name, Channel channel, double scale, double offset) in new[]
        {
            ("Time", Channel.Time, 1, 0),
            ("Speed", Channel.Speed, 1 / 60.0, 0),
            ("Boost", Channel.ManifoldAbsolute, 1e5, 95e3),
            ("Rail", Channel.RailGauge, 1e3, 0),
            ("Lambda", Channel.Lambda, 1, 0),
        })
        {
            int at = Array.IndexOf(headings, name);
            bool known = at >= 0 && Array.LastIndexOf(headings, name) == at;
            bool isNumber = double.TryParse(known ? cells[at] : "", NumberStyles.Float, CultureInfo.InvariantCulture, out double number);
            if (row.Has(channel))
            {
                Assert.True(isNumber);
                Assert.Equal((number * scale) + offset, row[channel], 1e-9 * Math.Max(1, Math.Abs(row[channel])));
            }
            else if (known && !string.IsNullOrWhiteSpace(cells[at]))
            {
                // A cell that has something in it is read or reported.
                Assert.Contains(problems, problem => problem.Line == row.Line && problem.Column == at + 1);
            }
        }
    }

    private static string[] Lines(string text)
    {
        text = text.StartsWith('\uFEFF') ? text[1..] : text;
        string[] lines = text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n').Split('\n');
        return lines[^1].Length == 0 ? lines[..^1] : lines;
    }

    private static Func<string, string> Edit(Func<string, string> edit) => edit;

    private static int Place(int any, int count) => (int)((uint)any % (uint)count);

    private static string Put(string text, int at, char c) => text[..at] + c + text[(at + 1)..];

    private static string Cut(string text, int at, int length) => text.Remove(at, Math.Min(length, text.Length - at));

    private static string MoveLine(string text, int from, int to)
    {
        List<string> lines = [.. text.Split('\n')];
        string line = lines[Place(from, lines.Count)];
        lines.Insert(Place(to, lines.Count + 1), line);
        return string.Join('\n', lines);
    }
}
