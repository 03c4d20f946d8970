using FuelSizing.Logs;
using UnitsNet.Units;

namespace FuelSizing.Tests.Logs;

/// <summary>Rows with something wrong: where it is, what is said of it, and that nothing else is lost.</summary>
public class RefusedRowTests
{
    private static readonly RunMapping Speed = RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute));

    /// <summary>Past the first thousand nobody but a listener hears of a problem, but it is counted, and the row refused or used as before.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Problems_OfEveryKind_PastTheFirstThousand_AreCountedAndPutInWordsForAListener(bool listens)
    {
        string text = LogText.Heading
            + string.Concat(Enumerable.Range(0, 999).Select(i => $"{i},3000,0.5,350,lean\n"))
            + "2000,3000\n2000,3000,,,0.9\n"
            + $"1,3000\n2001,3000,,,0.9,7\n\n2001,fast,,,0.9\n2001,,,,0.9\n2001,3000,\"1,,0.9\n2001,3000,50,350,0.9\n2001,3000,,,0.9\n"
            + $"2000.25,3000,,,0.9\n1998,3000,,,0.9\n2002,3000,,,inf\n{new string('7', 70_000)}\n2003,30";
        List<RunProblem> heard = [];
        using RunReader reader = RunReader.Open(new StringReader(text), LogText.Mapping, LogText.Air, listens ? heard.Add : null);
        List<RunRow> rows = [.. reader.Rows()];
        Assert.Equal([2000, 2001, 2002], rows.Skip(999).Select(row => row.Time!.Value.Seconds));
        Assert.Equal("1,014 rows: 1,002 used, 12 refused; 1,001 values left out; 1,013 problems", reader.Account.ToString());
        Assert.Equal(
            [
                (RunProblemKind.TooFewCells, 2), (RunProblemKind.TooManyCells, 1), (RunProblemKind.BlankLine, 1), (RunProblemKind.LineTooLong, 1),
                (RunProblemKind.Quote, 1), (RunProblemKind.TruncatedLine, 1), (RunProblemKind.NotANumber, 1000), (RunProblemKind.NotFinite, 1),
                (RunProblemKind.OutOfRange, 1), (RunProblemKind.MissingValue, 1), (RunProblemKind.DuplicateTime, 1), (RunProblemKind.ReversedTime, 2),
            ],
            Enum.GetValues<RunProblemKind>().Select(kind => (kind, (int)reader.Account.CountOf(kind))).Where(count => count.Item2 > 0));
        string[] words =
        [
            "line 1001, column 2: the row has 2 cells and the heading 5; which are missing cannot be told, so the row is not used.",
            "line 1003, column 2: the row has 2 cells and the heading 5; which are missing cannot be told, so the row is not used.",
            "line 1004, column 6: the row has 6 cells and the heading 5; which are too many cannot be told, so the row is not used.",
            "line 1005, column 1: the line is blank.",
            "line 1006, column 2 (Speed): \"fast\" is no number as the mapping has numbers written; the row is not used.",
            "line 1007, column 2 (Speed): the cell is blank, and a row needs its Speed; the row is not used.",
            "line 1008, column 3: the cell's quote is not closed before the separator or the line's end; a quote within a quoted cell is written twice.",
            "line 1009, column 3 (Boost): \"50\" is ManifoldAbsolute 5,095 kPa, too high; it must be between 5 kPa and 550 kPa; the row is used without this value.",
            "line 1010, column 1 (Time): the time \"2001\" is 2,001.00 s, that of the last row used; the row is not used.",
            "line 1011, column 1 (Time): the time \"2000.25\" is 2,000.25 s, 750.00 ms before the last row used; the row is not used.",
            "line 1012, column 1 (Time): the time \"1998\" is 1,998.00 s, 3.00 s before the last row used; the row is not used.",
            "line 1013, column 5 (Lambda): \"inf\" says that there is no value of Lambda; the row is used without this value.",
            "line 1014, column 1: the line has more than 65,536 characters; is a line end missing?",
            "line 1015, column 2: the last line has no line end; its last value may have been cut, so the row is not used. End the line if it is whole.",
        ];
        Assert.Equal(listens ? words : [], heard.Skip(999).Select(problem => problem.ToString()));
        Assert.Equal(1000, reader.Problems.Count);
        Assert.Equal(words[0], reader.Problems[^1].ToString());
    }

    /// <summary>The first cell past the heading that has something in it is the one too many.</summary>
    [Theory]
    [InlineData("0,3000,,,0.9,,x", 7)]
    [InlineData("0,3000,,,0.9,7,", 6)]
    [InlineData("0,3000,,,0.9,\" \",\"7\",", 7)]
    public void Row_WithCellsTooMany_IsRefusedAtTheFirstThatHoldsSomething(string row, int column)
    {
        RunProblem problem = Assert.Single(LogText.Read($"{LogText.Heading}{row}\n1,3000,,,0.9,,\n").Problems);
        Assert.Equal((2, column, RunProblemKind.TooManyCells), (problem.Line, problem.Column, problem.Kind));
    }

    /// <summary>A file of one column: a blank cell is a blank line, blanks and quotes and all.</summary>
    [Theory]
    [InlineData("", RunProblemKind.BlankLine, "the line is blank.")]
    [InlineData("  ", RunProblemKind.BlankLine, "the line is blank.")]
    [InlineData("\"\"", RunProblemKind.BlankLine, "the line is blank.")]
    [InlineData("x", RunProblemKind.NotANumber, "\"x\" is no number as the mapping has numbers written; the row is not used.")]
    [InlineData("\"3\"\"\"", RunProblemKind.NotANumber, "\"3\"\" is no number as the mapping has numbers written; the row is not used.")]
    [InlineData("1,2", RunProblemKind.TooManyCells, "the row has 2 cells and the heading 1; which are too many cannot be told, so the row is not used.")]
    [InlineData(" nan ", RunProblemKind.NotFinite, "\"nan\" says that there is no value of Speed; the row is not used.")]
    [InlineData("+Inf", RunProblemKind.NotFinite, "\"+Inf\" says that there is no value of Speed; the row is not used.")]
    [InlineData("\"-∞\"", RunProblemKind.NotFinite, "\"-∞\" says that there is no value of Speed; the row is not used.")]
    [InlineData("INFINITY", RunProblemKind.NotFinite, "\"INFINITY\" says that there is no value of Speed; the row is not used.")]
    [InlineData("1e999", RunProblemKind.OutOfRange, "\"1e999\" is no Speed at all; it must be between 0 rev/min and 25,000 rev/min; the row is not used.")]
    public void Row_OfASpeedAlone_ThatIsNone_IsRefusedAndTheNextIsRead(string row, RunProblemKind kind, string words)
    {
        RecordedRun run = LogText.Read($"Speed\n{row}\n3000\n", Speed);
        RunProblem problem = Assert.Single(run.Problems);
        Assert.Equal((2, kind, ProblemEffect.RowRefused, words), (problem.Line, problem.Kind, problem.Effect, problem.Reason.ToString()));
        Assert.Equal([3L], run.Rows.Select(used => used.Line));
    }

    /// <summary>A line that is both too long and without its end is too long; the heading and the units row may be neither.</summary>
    [Fact]
    public void Line_OfTheFirstTwo_ThatIsTooLongOrOpenOrMisquoted_IsRefusedAsTheFile()
    {
        string monstrous = new('7', 65_537);
        RefusedAt($"Speed{monstrous}\n3000\n", 1, 1, RunProblemKind.LineTooLong, UnitsRow.None);
        RefusedAt($"Speed\n{monstrous}\n3000\n", 2, 1, RunProblemKind.LineTooLong, UnitsRow.Used);
        RefusedAt("x,\"Speed\n3000\n", 1, 2, RunProblemKind.Quote, UnitsRow.None);
        RefusedAt("Speed\n\"rpm\n3000\n", 2, 1, RunProblemKind.Quote, UnitsRow.Used);
        RefusedAt("Speed", 1, 1, RunProblemKind.TruncatedLine, UnitsRow.None);
        RunProblem problem = Assert.Single(LogText.Read($"Speed\n{monstrous}", Speed).Problems);
        Assert.Equal((2, 1, RunProblemKind.LineTooLong), (problem.Line, problem.Column, problem.Kind));

        // A units row that is skipped is not looked at.
        Assert.Single(LogText.Read($"Speed\n\"{monstrous}\n3000\n", Speed.WithUnitsRow(UnitsRow.Skipped)).Rows);

        static void RefusedAt(string text, int line, int column, RunProblemKind kind, UnitsRow units)
        {
            RunProblem refusal = LogText.Refusal(text, Speed.WithUnitsRow(units));
            Assert.Equal(
                (line, column, string.Empty, kind, ProblemEffect.FileRefused),
                (refusal.Line, refusal.Column, refusal.Field, refusal.Kind, refusal.Effect));
        }
    }

    [Theory]
    [InlineData("", 1, "line 1, column 1: the file is empty; wanted is a heading and numbers below.")]
    [InlineData("", 3, "line 1, column 1: the file is empty; wanted is a heading and numbers below.")]
    [InlineData("a\n", 2, "line 1, column 1: the file ends here; its heading should be in line 2.")]
    [InlineData("a\nb\nc\n", 5, "line 3, column 1: the file ends here; its heading should be in line 5.")]
    [InlineData(
        "a\nTime,Spe", 2, "line 2, column 1: the file ends within its heading; wanted is a whole heading, its line ended, and numbers below.")]
    public void File_ThatEndsBeforeItsHeading_IsRefused(string text, int heading, string words) =>
        Assert.Equal(words, LogText.Refusal(text, LogText.Mapping.WithHeadingLine(heading)).ToString());

    /// <summary>Time is compared with the last row that was used: a refused one does not count.</summary>
    [Fact]
    public void Time_OfARefusedRow_IsNotGoneBehind()
    {
        RecordedRun run = LogText.Read(LogText.Heading + "1,3000,,,\n9,x,,,\n0.001,3000,,,\n0,3000,,,\n2,3000,,,\n2.5,3000,,,\n");
        Assert.Equal([1, 2, 2.5], run.Rows.Select(row => row.Time!.Value.Seconds));
        Assert.Equal(
            [
                "\"x\" is no number as the mapping has numbers written; the row is not used.",
                "the time \"0.001\" is 0.00 s, 999.00 ms before the last row used; the row is not used.",
                "the time \"0\" is 0.00 s, 1.00 s before the last row used; the row is not used.",
            ],
            run.Problems.Select(problem => problem.Reason.ToString()));
    }

    /// <summary>
    /// With the engine turning at 60 rev/min or more, 4 to 25 before any reading up to 3 is a ratio. What is none is lambda, or outside its range.
    /// </summary>
    [Theory]
    [InlineData("60", "4", true)]
    [InlineData("60", "25", true)]
    [InlineData("59.9", "14.7", false)]
    [InlineData("3000", "3.99", false)]
    [InlineData("3000", "25.1", false)]
    public void Reading_OfTheSizeOfARatio_IsOneWithTheEngineTurning(string speed, string reading, bool isRatio)
    {
        RecordedRun run = LogText.Read($"{LogText.Heading}0,{speed},,,{reading}\n1,3000,,,12.5\n2,3000,,,3.001\n3,3000,,,13\n4,3000,,,3\n5,3000,,,14\n6,3000,,,0.9\n7,3000,,,14\n");
        Assert.Equal(
            isRatio ? [2L] : [3L], run.Problems.Where(problem => problem.Effect == ProblemEffect.ChannelLeftOut).Select(problem => problem.Line));
        double first = double.Parse(reading, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal([isRatio ? null : first, null, 3.001, null, 3, 14, 0.9, 14], run.Rows.Select(row => row.Lambda));
        Assert.Equal(
            $"\"{(isRatio ? reading : "12.5")}\" looks like an air-fuel ratio, not lambda; Lambda is left out until a reading that can be lambda. "
            + "Map the column as an air-fuel ratio, with what the instrument shows at lambda 1.",
            run.Problems[0].Reason.ToString());
        Assert.Equal(("Lambda", 5), (run.Problems[0].Field, run.Problems[0].Column));
    }

    /// <summary>A ratio that is mapped as one is never lambda: 14.7 ÷ 14.7, and 60 ÷ 14.7 as of a sensor in air.</summary>
    [Fact]
    public void Ratio_ThatIsMappedAsOne_IsTakenAtAnySize()
    {
        RecordedRun run = LogText.Read(
            "Speed,AFR\n3000,60\n3000,73.5\n3000,14.7\n",
            RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute), RunColumn.AirFuelRatio("AFR", 14.7)));
        Assert.Empty(run.Problems);
        Assert.Equal(60 / 14.7, run.Rows[0].Lambda!.Value, 12);
        Assert.Equal(5, run.Rows[1].Lambda!.Value, 12);
        Assert.Equal(1, run.Rows[2].Lambda!.Value, 12);
    }

    /// <summary>What is quoted of a file is its first 40 characters, in which nothing is left that a terminal obeys or that is no character.</summary>
    [Theory]
    [InlineData("a cell of forty characters is all shown.", "a cell of forty characters is all shown.")]
    [InlineData("one of more than forty characters is cut here", "one of more than forty characters is cut…")]
    [InlineData("a\u0007b\u0085c", "a\uFFFDb\uFFFDc")]
    [InlineData("\uD83D\uDE97", "\uFFFD\uFFFD")]
    [InlineData("\uFFFC\uFFFD\uFFFE", "\uFFFC\uFFFD\uFFFD")]
    public void Text_OfAFile_IsQuotedShortAndOnOneLine(string cell, string shown) =>
        Assert.Equal(
            $"\"{shown}\" is no number as the mapping has numbers written; the row is not used.",
            Assert.Single(LogText.Read($"Speed\n{cell}\n", Speed).Problems).Reason.ToString());

    [Fact]
    public void Mapping_WithoutWhatItNeeds_IsRefused()
    {
        Refused.Missing("columns", () => RunMapping.Of(null!));
        Refused.Missing("columns", () => RunMapping.Of(null!, RunColumn.Lambda("Lambda")));
        Refused.Missing("place", () => RunColumn.Lambda(null!));
        Refused.OutOfRange("separator", () => Speed.Written((CellSeparator)3, DecimalMark.Point));
        Refused.OutOfRange("decimalMark", () => Speed.Written(CellSeparator.Tab, (DecimalMark)2));
        Refused.OutOfRange("unitsRow", () => Speed.WithUnitsRow((UnitsRow)3));
        Refused.OutOfRange("headingLine", () => Speed.WithHeadingLine(0));
        Refused.OutOfRange("headingLine", () => Speed.WithHeadingLine(1001));
        Refused.OutOfRange("unit", () => RunColumn.Speed("n", (RotationalSpeedUnit)999));
        Refused.OutOfRange("stoichiometric", () => RunColumn.AirFuelRatio("AFR", 4.9));
        Assert.Equal(3000, LogText.Read("a\tSpeed\n1\t3000\n", Speed.Written(CellSeparator.Tab, DecimalMark.Comma)).Rows[0].Speed.RevolutionsPerMinute, 9);
        Assert.StartsWith(
            "columns name the channel Speed twice. Keep the column that is to be read.",
            Assert.Throws<ArgumentException>(() => RunMapping.Of([.. Speed.Columns, RunColumn.Speed("n")])).Message,
            StringComparison.Ordinal);
        Assert.Equal("Lambda in column 2", RunColumn.Lambda(ColumnPlace.Numbered(2)).ToString());
        Assert.StartsWith(
            "mapping gives no unit for Power in \"P\", and the file's units row is not used. Give the column a unit, or say WithUnitsRow(UnitsRow.Used).",
            Assert.Throws<ArgumentException>(() => LogText.Read("Speed,P\n1,2\n", RunMapping.Of([.. Speed.Columns, RunColumn.Power("P")]))).Message,
            StringComparison.Ordinal);
    }
}
