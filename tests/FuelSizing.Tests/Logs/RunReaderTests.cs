using System.Text;
using FuelSizing.Logs;
using FuelSizing.Quantities;
using FuelSizing.Tests.Sources;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Tests.Logs;

public class RunReaderTests
{
    [Fact]
    public void Rows_OfAGoodFile_AreRead()
    {
        RecordedRun run = LogText.Read(LogText.Heading + "0.00,3000,0.50,350,0.85\n0.01,3010,0.52,352,0.84\n");
        Assert.Equal(2, run.Rows.Count);
        Assert.Equal(2, run.Rows[0].Line);
        Assert.Equal(0.01, run.Rows[1].Time!.Value.Seconds, 12);
        Assert.Equal(3010, run.Rows[1].Speed.RevolutionsPerMinute, 9);
        Assert.Equal(95 + 52, run.Rows[1].ManifoldAbsolute!.Value.Kilopascals, 9);
        Assert.Equal(352, run.Rows[1].RailGauge!.Value.Kilopascals, 9);
        Assert.Equal(0.84, run.Rows[1].Lambda);
        Assert.Empty(run.Problems);
        Assert.Equal("2 rows: 2 used, 0 refused; 0 values left out; 0 problems", run.Account.ToString());
    }

    [Fact]
    public void Row_WithABlankCell_IsUsedWithoutTheValue()
    {
        RecordedRun run = LogText.Read(LogText.Heading + "0,3000,0.5,, \n");
        RunRow row = Assert.Single(run.Rows);
        Assert.Null(row.RailGauge);
        Assert.Null(row.Lambda);
        Assert.Empty(run.Problems);
    }

    // What stands in the third row's place, the problem's kind and effect, and its column.
    [Theory]
    [InlineData("0.02,3000,0.5,350", RunProblemKind.TooFewCells, ProblemEffect.RowRefused, 4)]
    [InlineData("0.02,3000,0.5,350,0.8,1", RunProblemKind.TooManyCells, ProblemEffect.RowRefused, 6)]
    [InlineData("", RunProblemKind.BlankLine, ProblemEffect.RowRefused, 1)]
    [InlineData("   ", RunProblemKind.BlankLine, ProblemEffect.RowRefused, 1)]
    [InlineData(",,,,", RunProblemKind.MissingValue, ProblemEffect.RowRefused, 2)]
    [InlineData("0.02,,0.5,350,0.8", RunProblemKind.MissingValue, ProblemEffect.RowRefused, 2)]
    [InlineData(",3000,0.5,350,0.8", RunProblemKind.MissingValue, ProblemEffect.RowRefused, 1)]
    [InlineData("0.02,fast,0.5,350,0.8", RunProblemKind.NotANumber, ProblemEffect.RowRefused, 2)]
    [InlineData("0.02,NaN,0.5,350,0.8", RunProblemKind.NotFinite, ProblemEffect.RowRefused, 2)]
    [InlineData("0.02,300000,0.5,350,0.8", RunProblemKind.OutOfRange, ProblemEffect.RowRefused, 2)]
    [InlineData("0.01,3000,0.5,350,0.8", RunProblemKind.DuplicateTime, ProblemEffect.RowRefused, 1)]
    [InlineData("0.005,3000,0.5,350,0.8", RunProblemKind.ReversedTime, ProblemEffect.RowRefused, 1)]
    [InlineData("0.02,3000,\"0.5,350,0.8", RunProblemKind.Quote, ProblemEffect.RowRefused, 3)]
    [InlineData("0.02,3000,\"0.5\"x,350,0.8", RunProblemKind.Quote, ProblemEffect.RowRefused, 3)]
    [InlineData("0.02,3000,0.5,350,NaN", RunProblemKind.NotFinite, ProblemEffect.ValueLeftOut, 5)]
    [InlineData("0.02,3000,0.5,-Infinity,0.8", RunProblemKind.NotFinite, ProblemEffect.ValueLeftOut, 4)]
    [InlineData("0.02,3000,0.5,∞,0.8", RunProblemKind.NotFinite, ProblemEffect.ValueLeftOut, 4)]
    [InlineData("0.02,3000,0.5,350,lean", RunProblemKind.NotANumber, ProblemEffect.ValueLeftOut, 5)]
    [InlineData("0.02,3000,0.5,350 kPa,0.8", RunProblemKind.NotANumber, ProblemEffect.ValueLeftOut, 4)]
    [InlineData("0.02,3000,0.5,\"1,350\",0.8", RunProblemKind.NotANumber, ProblemEffect.ValueLeftOut, 4)]
    [InlineData("0.02,3000,50,350,0.8", RunProblemKind.OutOfRange, ProblemEffect.ValueLeftOut, 3)]
    [InlineData("0.02,3000,0.5,1e400,0.8", RunProblemKind.OutOfRange, ProblemEffect.ValueLeftOut, 4)]
    public void Row_WithADefect_IsReportedWithItsLineAndColumn(string row, RunProblemKind kind, ProblemEffect effect, int column)
    {
        RecordedRun run = LogText.Read($"{LogText.Heading}0.00,3000,0.5,350,0.85\n0.01,3000,0.5,350,0.85\n{row}\n0.03,3000,0.5,350,0.85\n");
        RunProblem problem = Assert.Single(run.Problems);
        Assert.Equal((4, column, kind, effect), (problem.Line, problem.Column, problem.Kind, problem.Effect));
        bool refused = effect == ProblemEffect.RowRefused;
        Assert.Equal(refused ? [2L, 3, 5] : [2L, 3, 4, 5], run.Rows.Select(used => used.Line));
        Assert.Equal(4, run.Account.Rows);
        Assert.Equal(refused ? 1 : 0, run.Account.RowsRefused);
        Assert.Equal(refused ? 0 : 1, run.Account.ValuesLeftOut);
        Assert.Equal(1, run.Account.CountOf(kind));
    }

    [Fact]
    public void Problem_OfACell_SaysWhatWasFoundAndWhatIsAllowed() =>
        Assert.Equal(
            "line 2, column 4 (Rail): \"99999\" is RailGauge 99,999 kPa, too high; it must be between −110 kPa and 3,000 kPa; the row is used without this value.",
            Assert.Single(LogText.Read(LogText.Heading + "0,3000,0.5,99999,0.85\n").Problems).ToString());

    [Fact]
    public void Problem_OfACell_IsACodeWithQuantities_InAnyStyle()
    {
        RunProblem problem = Assert.Single(LogText.Read(LogText.Heading + "0,3000,0.5,99999,0.85\n").Problems);
        Assert.Equal("log.too-high", problem.Reason.Code);
        Assert.Equal(["name", "name", "pressure", "pressure", "pressure", "statement"], problem.Reason.Arguments.Select(argument => argument.Kind));
        Assert.Equal("99999", problem.Reason.Arguments[0].Value);
        Assert.Equal(99_999, Assert.IsType<Pressure>(problem.Reason.Arguments[2].Value).Kilopascals, 6);
        Assert.Equal("log.value-not-used", Assert.IsType<Statement>(problem.Reason.Arguments[5].Value).Code);
        Assert.Equal(
            "line 2, column 4 (Rail): \"99999\" is RailGauge 14,503.6 psi, too high; it must be between −16.0 psi and 435.1 psi; the row is used without this value.",
            problem.In(TextStyle.UsCustomary));
    }

    [Theory]
    [InlineData("1,3000,,,0.8\n0.25,3000,,,", "log.earlier-time", "the time \"0.25\" is 0.25 s, 750.00 ms before the last row used; the row is not used.")]
    [InlineData("1,3000,,,0.8\n1,3000,,,", "log.same-time", "the time \"1\" is 1.00 s, that of the last row used; the row is not used.")]
    [InlineData("1,-5,,,", "log.too-low", "\"-5\" is Speed −5 rev/min, too low; it must be between 0 rev/min and 25,000 rev/min; the row is not used.")]
    [InlineData("1,3000,,,0.29999", "log.too-low", "\"0.29999\" is Lambda 0.29999, too low; it must be between 0.3 and 30; the row is used without this value.")]
    [InlineData(
        "1,3000,,1e400,", "log.far-outside", "\"1e400\" is no RailGauge at all; it must be between −110 kPa and 3,000 kPa; the row is used without this value.")]
    [InlineData("1,,,,", "log.blank-cell", "the cell is blank, and a row needs its Speed; the row is not used.")]
    [InlineData("1,3000", "log.too-few-cells", "the row has 2 cells and the heading 5; which are missing cannot be told, so the row is not used.")]
    [InlineData("1,3000,,,0.8,x", "log.too-many-cells", "the row has 6 cells and the heading 5; which are too many cannot be told, so the row is not used.")]
    [InlineData("1,3000,,,lean", "log.not-a-number", "\"lean\" is no number as the mapping has numbers written; the row is used without this value.")]
    [InlineData("1,3000,,,nan", "log.not-finite", "\"nan\" says that there is no value of Lambda; the row is used without this value.")]
    public void Problem_OfEachKind_HasItsCodeAndWords(string rows, string code, string words)
    {
        Statement reason = Assert.Single(LogText.Read($"{LogText.Heading}{rows}\n").Problems).Reason;
        Assert.Equal((code, words), (reason.Code, reason.ToString()));
    }

    /// <summary>A power is a decimal number in its quantity, which a number of a log may be too large for.</summary>
    [Fact]
    public void Problem_OfAValueThatNoQuantityHolds_IsAProblemStill()
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute), RunColumn.Power("Power", PowerUnit.Kilowatt));
        foreach (string cell in new[] { "1e300", "-1e300", "1e400" })
        {
            Assert.Equal("log.far-outside", Assert.Single(LogText.Read($"Speed,Power\n3000,{cell}\n", mapping).Problems).Reason.Code);
        }
    }

    [Fact]
    public void Problem_SaidOnSixteenThreads_IsTheSameInEachStyle()
    {
        RunProblem[] problems = [.. LogText.Read(LogText.Heading + "0,3000,0.5,99999,0.85\n1,x,,,\n2,3000\n").Problems];
        string[] Said() => [.. problems.SelectMany(problem => new[] { problem.ToString(), problem.In(TextStyle.UsCustomary) })];
        string[] alone = Said();
        string[][] said = new string[160][];
        Parallel.For(0, said.Length, new ParallelOptions { MaxDegreeOfParallelism = 16 }, i => said[i] = Said());
        Assert.All(said, texts => Assert.Equal(alone, texts));
    }

    /// <summary>A message goes to a terminal and into reports: a heading must not bring line ends or escapes into it.</summary>
    [Fact]
    public void Problem_UnderAHeadingOfControlCharacters_StandsOnOneLine()
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed(ColumnPlace.Numbered(1), RotationalSpeedUnit.RevolutionPerMinute));
        RunProblem problem = Assert.Single(LogText.Read("Speed\u001B[31m\n,\n", mapping).Problems, problem => problem.Effect == ProblemEffect.RowRefused);
        Assert.Equal("Speed\u001B[31m", problem.Field);
        Assert.DoesNotContain(problem.ToString(), char.IsControl);
    }

    [Fact]
    public void Row_WithBlankCellsPastTheLastHeading_IsUsed() =>
        Assert.Empty(LogText.Read(LogText.Heading + "0,3000,0.5,350,0.85,, \n").Problems);

    [Fact]
    public void Heading_WithASeparatorAtItsEnd_AsksForNoMoreCells() =>
        Assert.Empty(LogText.Read("Time,Speed,Boost,Rail,Lambda,\n0,3000,0.5,350,0.85\n1,3000,0.5,350,0.85,\n").Problems);

    [Fact]
    public void LastLine_WithoutALineEnd_IsNotTrusted()
    {
        // The speed may have been 7,000 rev/min.
        RecordedRun run = LogText.Read("Speed\n6900\n7", RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute)));
        Assert.Equal([2L], run.Rows.Select(row => row.Line));
        RunProblem problem = Assert.Single(run.Problems);
        Assert.Equal((3, RunProblemKind.TruncatedLine), (problem.Line, problem.Kind));
    }

    [Fact]
    public void Cells_InQuotes_AreReadWithoutThem()
    {
        RecordedRun run = LogText.Read(
            "\"Time\",\"Speed, \"\"crank\"\"\"\n\"0.5\", \"3000\" \n",
            RunMapping.Of(
                RunColumn.Time("Time", DurationUnit.Second),
                RunColumn.Speed("Speed, \"crank\"", RotationalSpeedUnit.RevolutionPerMinute)));
        Assert.Empty(run.Problems);
        Assert.Equal(3000, run.Rows[0].Speed.RevolutionsPerMinute, 9);
    }

    [Fact]
    public void Quote_LeftOpen_CostsItsOwnLineOnly()
    {
        RecordedRun run = LogText.Read($"{LogText.Heading}0,3000,\"0.5,350,0.85\n1,3000,0.5,350,0.85\n2,3000,0.5,350,0.85\n");
        Assert.Equal([3L, 4], run.Rows.Select(row => row.Line));
    }

    [Fact]
    public void DecimalComma_WithSemicolons_IsRead()
    {
        RecordedRun run = LogText.Read(
            "Time;Speed;Boost;Rail;Lambda\r\n0,5;3000;0,52;1.000,5;0,85\r\n",
            LogText.Mapping.Written(CellSeparator.Semicolon, DecimalMark.Comma));
        Assert.Equal(95 + 52, run.Rows[0].ManifoldAbsolute!.Value.Kilopascals, 9);

        // A point groups thousands in one file and marks decimals in another: it is refused, not guessed.
        Assert.Equal((2, 4, RunProblemKind.NotANumber), Place(Assert.Single(run.Problems)));
    }

    [Theory]
    [InlineData("\uFEFF")]
    [InlineData("")]
    public void ByteOrderMark_OfAnyEncoding_IsNoPartOfTheHeading(string mark)
    {
        string text = "\"Speed\"\n3000\n";
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute));
        Assert.Single(LogText.Read(mark + text, mapping).Rows);
        foreach (Encoding encoding in new[] { Encoding.UTF8, Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.UTF32 })
        {
            using MemoryStream file = new([.. encoding.GetPreamble(), .. encoding.GetBytes(text)]);
            using RunReader reader = RunReader.Open(file, mapping, LogText.Air);
            Assert.Single(reader.Rows());
        }
    }

    [Fact]
    public void LinesAboveTheHeading_AreSkipped()
    {
        RecordedRun run = LogText.Read(
            "session 4\n\"a quote, left open\n" + LogText.Heading + "0,3000,0.5,350,0.85\n", LogText.Mapping.WithHeadingLine(3));
        Assert.Equal(4, Assert.Single(run.Rows).Line);
        Assert.Equal(1, run.Account.Rows);
    }

    [Fact]
    public void UnitsRow_ThatIsSkipped_IsNoRow()
    {
        RecordedRun run = LogText.Read(
            LogText.Heading + "s,rpm,bar,kPa,-\n0,3000,0.5,350,0.85\n", LogText.Mapping.WithUnitsRow(UnitsRow.Skipped));
        Assert.Equal(1, run.Account.Rows);
        Assert.Empty(run.Problems);
    }

    [Fact(DisplayName = "Rail pressure of a recorded run in psi; NIST SP 811")]
    public void UnitsRow_ThatIsUsed_GivesTheUnits()
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed"), RunColumn.RailAbsolute("Rail"))
            .WithUnitsRow(UnitsRow.Used);
        RecordedRun run = LogText.Read("Speed,Rail\n[rpm],(psi)\n3000,50\n", mapping);
        Assert.Equal(3000, run.Rows[0].Speed.RevolutionsPerMinute, 9);
        Published.Value(Works.Nist811.At("1 psi is 6.894757 kPa"), (50 * 6.894757) - 95, run.Rows[0].RailGauge!.Value.Kilopascals, 1e-6);
    }

    [Fact]
    public void UnitsRow_ThatGainsaysTheMapping_CostsTheChannel()
    {
        RecordedRun run = LogText.Read(
            LogText.Heading + "s,rpm,bar,bar,\n0,3000,0.5,350,0.85\n", LogText.Mapping.WithUnitsRow(UnitsRow.Used));
        Assert.Equal((2, 4, RunProblemKind.Unit), Place(Assert.Single(run.Problems)));
        Assert.False(run.Has(Channel.RailGauge));
        Assert.True(run.Has(Channel.ManifoldAbsolute));
    }

    [Fact]
    public void UnitsRow_WithoutAUnitThatIsNeeded_CostsTheFileOrTheChannel()
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed"), RunColumn.Power("Power")).WithUnitsRow(UnitsRow.Used);
        Assert.Equal((2, 2, RunProblemKind.Unit), Place(Assert.Single(LogText.Read("Speed,Power\nrpm,ch\n3000,50\n", mapping).Problems)));
        Assert.Equal((2, 1, RunProblemKind.Unit), Place(LogText.Refusal("Speed,Power\n,kW\n3000,50\n", mapping)));
        Assert.Equal((2, 1, RunProblemKind.Unit), Place(LogText.Refusal("Speed,Power\n", mapping)));
    }

    [Fact]
    public void Column_ThatIsNotThere_StopsTheReading()
    {
        RunProblem problem = LogText.Refusal("Time,Speed,Boost,Rail\n0,3000,0.5,350\n");
        Assert.Equal((1, 1, RunProblemKind.MissingColumn), Place(problem));
        Assert.Equal(ProblemEffect.FileRefused, problem.Effect);
        Assert.EndsWith("\"Rail\". Correct the mapping, or take the channel out of it.", problem.Reason.ToString(), StringComparison.Ordinal);

        // A lambda that is misspelt is not a log without lambda.
        Assert.Contains(
            "Did you mean \"Lamda\"?", LogText.Refusal("Time,Speed,Boost,Rail,Lamda\n0,3000,0.5,350,0.95\n").Reason.ToString(), StringComparison.Ordinal);

        RunProblem refusal = LogText.Refusal("Time,speed,Boost,Rail,Lambda\n0,3000,0.5,350,0.85\n");
        Assert.Equal((1, 1, RunProblemKind.MissingColumn), Place(refusal));
        Assert.Equal("there is no \"Speed\" for Speed; there are \"Time\", \"speed\", \"Boost\", \"Rail\", \"Lambda\". Did you mean \"speed\"? Correct the mapping, or take the channel out of it.", refusal.Reason.ToString());
    }

    [Fact]
    public void Column_ThatStandsTwice_CostsTheChannelOrTheFile()
    {
        Assert.Equal(
            (1, 6, RunProblemKind.DuplicateColumn),
            Place(Assert.Single(LogText.Read("Time,Speed,Boost,Rail,Lambda,Lambda\n0,3000,0.5,350,0.85,0.9\n").Problems)));
        Assert.Equal((1, 2, RunProblemKind.DuplicateColumn), Place(LogText.Refusal("Speed,Speed\n3000,1\n", RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute)))));

        // By its number it can be told; another heading that stands twice is nobody's business.
        RunMapping second = RunMapping.Of(RunColumn.Speed(ColumnPlace.Numbered(2), RotationalSpeedUnit.RevolutionPerMinute));
        Assert.Equal(3100, LogText.Read("Speed,Speed,x,x\n1,3100,,\n", second).Rows[0].Speed.RevolutionsPerMinute, 9);
    }

    [Fact]
    public void File_ThatIsEmptyOrEndsTooSoon_IsRefused()
    {
        Assert.Equal((1, 1, RunProblemKind.EmptyFile), Place(LogText.Refusal("")));
        Assert.Equal((2, 1, RunProblemKind.EmptyFile), Place(LogText.Refusal("one\ntwo\n", LogText.Mapping.WithHeadingLine(3))));
        Assert.Equal((1, 1, RunProblemKind.TruncatedLine), Place(LogText.Refusal("Time,Speed,Boost,Rail,Lam")));
        Assert.Equal((1, 1, RunProblemKind.MissingColumn), Place(LogText.Refusal("\n\n")));
    }

    [Fact]
    public void File_OfAHeadingAlone_IsARunWithoutRows()
    {
        RecordedRun run = LogText.Read(LogText.Heading);
        Assert.Empty(run.Rows);
        Assert.Equal(0, run.Account.Rows);
    }

    [Fact]
    public void Line_ThatIsMonstrous_CostsItselfAndLittleMemory()
    {
        string good = "0,3000,0.5,350,0.85\n", later = "1,3000,0.5,350,0.85\n";
        using MonstrousText text = new(LogText.Heading + good, 200_000_000, "\n" + later);
        long before = GC.GetAllocatedBytesForCurrentThread();
        RecordedRun run = RunReader.Read("run", text, LogText.Mapping, LogText.Air);
        long taken = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.Equal([2L, 4], run.Rows.Select(row => row.Line));
        Assert.Equal((3, 1, RunProblemKind.LineTooLong), Place(Assert.Single(run.Problems)));
        Assert.True(taken < 8_000_000, $"{taken} bytes for a line of 200,000,000 characters");
    }

    [Theory]
    [InlineData(65_536, RunProblemKind.TooFewCells)]
    [InlineData(65_537, RunProblemKind.LineTooLong)]
    public void Line_OfTheLongestLength_IsReadAndOneMoreIsNot(int length, RunProblemKind kind) =>
        Assert.Equal(
            (2, 1, kind),
            Place(Assert.Single(LogText.Read(LogText.Heading + new string('1', length) + "\n0,3000,0.5,350,0.85\n").Problems)));

    [Fact]
    public void Problems_PastTheFirstThousand_AreCountedAndHeardOf()
    {
        string text = LogText.Heading + string.Concat(Enumerable.Range(0, 1500).Select(i => $"{i},3000,0.5,350,lean\n"));
        List<RunProblem> heard = [];
        using RunReader reader = RunReader.Open(new StringReader(text), LogText.Mapping, LogText.Air, heard.Add);
        Assert.Equal(1500, reader.Rows().Count());
        Assert.Equal(1000, reader.Problems.Count);
        Assert.Equal(1500, reader.Account.Problems);
        Assert.Equal(Enumerable.Range(2, 1500).Select(line => (long)line), heard.Select(problem => problem.Line));
    }

    [Fact]
    public void Progress_OfALongFile_GoesOnToItsEnd()
    {
        byte[] file = Encoding.UTF8.GetBytes(LogText.Heading + string.Concat(Enumerable.Range(0, 200_000).Select(i => $"{i},3000,0.5,350,0.85\n")));
        List<RunProgress> reports = [];
        using RunReader reader = RunReader.Open(new MemoryStream(file), LogText.Mapping, LogText.Air, null, new Listener(reports));
        Assert.Equal(200_000, reader.Rows().Count());
        Assert.Equal([65_536L, 131_072, 196_608], reports.Select(report => report.Rows));
        Assert.Equal(reports.OrderBy(report => report.Share), reports);
        Assert.InRange(reports[^1].Share!.Value.DecimalFractions, 0.95, 1);
    }

    [Fact]
    public void Reading_ThatIsCancelled_Stops()
    {
        using CancellationTokenSource stop = new();
        string text = LogText.Heading + string.Concat(Enumerable.Range(0, 200_000).Select(i => $"{i},3000,0.5,350,0.85\n"));
        using RunReader reader = RunReader.Open(new StringReader(text), LogText.Mapping, LogText.Air, null, null, stop.Token);
        Assert.True(reader.TryRead(out _));
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => reader.Rows().Count());
        Assert.ThrowsAny<OperationCanceledException>(
            () => RunReader.Read("run", new MonstrousText("x", long.MaxValue, ""), LogText.Mapping, LogText.Air, null, new CancellationToken(true)));
    }

    [Fact]
    public void Mapping_WithoutAUnitThatNobodySays_IsRefused() =>
        Assert.Equal(
            "mapping",
            Assert.Throws<ArgumentException>(() => LogText.Read("Speed\n1\n", RunMapping.Of(RunColumn.Speed("Speed")))).ParamName);

    [Fact]
    public void File_OnDisk_IsReadAndNamedAfter()
    {
        string path = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.csv");
        try
        {
            File.WriteAllText(path, LogText.Heading + "0,3000,0.5,350,0.85\n");
            RecordedRun run = RunReader.Read(path, LogText.Mapping, LogText.Air);
            Assert.Equal(Path.GetFileNameWithoutExtension(path), run.Name);
            Assert.Single(run.Rows);
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static (long Line, int Column, RunProblemKind Kind) Place(RunProblem problem) => (problem.Line, problem.Column, problem.Kind);

    private sealed class Listener(List<RunProgress> reports) : IProgress<RunProgress>
    {
        public void Report(RunProgress value) => reports.Add(value);
    }
}
