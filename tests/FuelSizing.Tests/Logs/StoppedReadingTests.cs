using System.Globalization;
using System.Text;
using FuelSizing.Logs;
using UnitsNet.Units;

namespace FuelSizing.Tests.Logs;

/// <summary>How a reading goes on, ends and is stopped.</summary>
public class StoppedReadingTests
{
    private static readonly RunMapping Speed = RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute));

    private static readonly string Long =
        "Speed\n" + string.Concat(Enumerable.Range(1, 70_000).Select(row => FormattableString.Invariant($"{row % 7000}\n")));

    /// <summary>What was read until the stop is a run of the first rows, and says that it is not whole.</summary>
    [Fact]
    public void Run_StoppedWithinItsRows_KeepsTheFirstOnes()
    {
        using CancellationTokenSource stop = new();
        string all = string.Join('\n', Long.Split('\n', 15_002)[..15_001]) + "\n";
        using StoppingText text = new(all, 50_000, stop);
        RecordedRun run = RunReader.Read("pull", text, Speed, LogText.Air, null, stop.Token);
        Assert.False(run.IsComplete);
        Assert.InRange(run.Rows.Count, 1, 14_999);
        Assert.Equal(run.Rows.Count, run.Account.Rows);
        Assert.Equal(run.Rows.Count, run.Account.RowsUsed);
        Assert.Equal(
            Enumerable.Range(1, run.Rows.Count).Select(row => (double)(row % 7000)),
            run.Rows.Select(row => Math.Round(row.Speed.RevolutionsPerMinute, 6)));
        RecordedRun whole = RunReader.Read("pull", new StringReader(all), Speed, LogText.Air);
        Assert.True(whole.IsComplete);
        Assert.Equal(15_000, whole.Rows.Count);
    }

    /// <summary>Without a row there is no run to keep.</summary>
    [Fact]
    public void Run_StoppedBeforeItsFirstRow_IsNoRun()
    {
        using CancellationTokenSource stop = new();
        using StoppingText text = new("Speed\n" + new string('\n', 60_000) + "3000\n", 40_000, stop);
        Assert.ThrowsAny<OperationCanceledException>(() => RunReader.Read("pull", text, Speed, LogText.Air, null, stop.Token));
    }

    /// <summary>The listener of progress may be the one who stops; the rows of its report are then read.</summary>
    [Fact]
    public void Run_StoppedByItsListener_KeepsAllUpToTheNextReport()
    {
        using CancellationTokenSource stop = new();
        List<RunProgress> heard = [];
        using MemoryStream file = new(Encoding.UTF8.GetBytes(Long + Long["Speed\n".Length..]));
        using RunReader reader = RunReader.Open(file, Speed, LogText.Air, null, new Told(heard, stop), stop.Token);
        List<RunRow> rows = [];
        Assert.ThrowsAny<OperationCanceledException>(() =>
        {
            foreach (RunRow row in reader.Rows())
            {
                rows.Add(row);
            }
        });
        Assert.InRange(rows.Count, 65_536, 131_071);
        RunProgress only = Assert.Single(heard);
        Assert.Equal(65_536, only.Rows);

        // Rows of up to five bytes each, read ahead by the reader's buffers.
        double share = Encoding.UTF8.GetByteCount(string.Join('\n', Long.Split('\n')[..65_537])) / (double)file.Length;
        Assert.InRange(only.Share!.Value.DecimalFractions, share, share + 0.3);
        Assert.Equal(
            string.Create(CultureInfo.InvariantCulture, $"65,536 rows, {only.Share!.Value.Percent:N0} %"), only.ToString());
    }

    [Fact]
    public void Progress_OfATextWhoseLengthIsNotKnown_CountsRowsAlone()
    {
        List<RunProgress> heard = [];
        RecordedRun run = RunReader.Read("pull", new StringReader(Long), Speed, LogText.Air, new Told(heard, null));
        Assert.Equal(70_000, run.Rows.Count);
        RunProgress only = Assert.Single(heard);
        Assert.Null(only.Share);
        Assert.Equal("65,536 rows", only.ToString());
    }

    [Fact]
    public void Reader_SaysHowFarItIs_AndWhatItsFileHas()
    {
        RunMapping mapping = RunMapping.Of(
            RunColumn.Lambda("Lambda"),
            RunColumn.RailGauge("Rail", PressureUnit.Kilopascal),
            RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute),
            RunColumn.Time("Time", DurationUnit.Second));
        using RunReader reader = RunReader.Open(new StringReader(LogText.Heading + "0,3000,,350,0.9\n\n1,3100,,x,\n"), mapping, LogText.Air);
        Assert.Equal([Channel.Time, Channel.Speed, Channel.RailGauge, Channel.Lambda], reader.Channels);
        Assert.Equal("0 rows read, 0 used", reader.ToString());
        Assert.True(reader.TryRead(out RunRow row));
        Assert.Equal("line 2: Time 0 s, Speed 3000 rev/min, RailGauge 350 kPa, Lambda 0.9", row.ToString());
        Assert.True(reader.TryRead(out row));
        Assert.Equal("line 4: Time 1 s, Speed 3100 rev/min", row.ToString());
        Assert.Equal("3 rows read, 2 used", reader.ToString());
        Assert.Equal("3 rows: 2 used, 1 refused; 1 values left out; 2 problems", reader.Account.ToString());
        Assert.Equal(1, reader.Account.CountOf(RunProblemKind.BlankLine));
        Assert.Equal(1, reader.Account.CountOf(RunProblemKind.NotANumber));
        Assert.Equal(0, reader.Account.CountOf((RunProblemKind)99));
        Assert.Equal(0, reader.Account.CountOf((RunProblemKind)16));
        Assert.False(reader.TryRead(out row));
        Assert.Equal(default, row);
        Assert.Empty(reader.Rows());
    }

    /// <summary>What its caller opened, a reader leaves open; what it opened itself, it closes, also where the file is refused.</summary>
    [Fact]
    public void FileStreamAndText_AreClosedByWhoOpenedThem()
    {
        using MemoryStream stream = new("Speed\n3000\n"u8.ToArray());
        RunReader.Open(stream, Speed, LogText.Air).Dispose();
        Assert.True(stream.CanRead);
        using StringReader text = new("Speed\n3000\n");
        RunReader.Open(text, Speed, LogText.Air).Dispose();
        Assert.Equal(-1, text.Peek());
        string path = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.csv");
        try
        {
            File.WriteAllText(path, "Speed\n3000\n");
            RunReader reader = RunReader.Open(path, Speed, LogText.Air);
            Assert.Single(reader.Rows());
            Assert.True(IsOpen(path));
            reader.Dispose();
            Assert.False(IsOpen(path));
            File.WriteAllText(path, "Sped\n3000\n");
            Assert.Throws<RunFileException>(() => RunReader.Open(path, Speed, LogText.Air));
            Assert.False(IsOpen(path));
            Refused.Missing("mapping", () => RunReader.Open(path, null!, LogText.Air));
            Assert.False(IsOpen(path));
        }
        finally
        {
            File.Delete(path);
        }

        // Linux lists the open files of a process; elsewhere a file that is open cannot be opened for oneself alone.
        static bool IsOpen(string path)
        {
            if (OperatingSystem.IsLinux())
            {
                return Directory.GetFiles("/proc/self/fd").Any(file => File.ResolveLinkTarget(file, false)?.FullName == path);
            }

            try
            {
                using FileStream alone = new(path, FileMode.Open, FileAccess.Read, FileShare.None);
                return false;
            }
            catch (IOException)
            {
                return true;
            }
        }
    }

    [Fact]
    public void Reader_WithoutWhatItNeeds_IsRefused()
    {
        using StringReader text = new("Speed\n3000\n");
        Refused.Missing("path", () => RunReader.Open((string)null!, Speed, LogText.Air));
        Refused.Missing("stream", () => RunReader.Open((Stream)null!, Speed, LogText.Air));
        Refused.Missing("text", () => RunReader.Open((TextReader)null!, Speed, LogText.Air));
        Refused.Missing("mapping", () => RunReader.Open(Stream.Null, null!, LogText.Air));
        Refused.Missing("mapping", () => RunReader.Open(text, null!, LogText.Air));
        Refused.Missing("atmosphere", () => RunReader.Open(Stream.Null, Speed, null!));
        Refused.Missing("atmosphere", () => RunReader.Open(text, Speed, null!));
        Refused.Missing("name", () => RunReader.Read(null!, text, Speed, LogText.Air));
        Assert.Equal("name", Assert.Throws<ArgumentException>(() => RunReader.Read(" ", text, Speed, LogText.Air)).ParamName);
        Assert.Equal("path", Assert.Throws<ArgumentException>(() => RunReader.Open(string.Empty, Speed, LogText.Air)).ParamName);
    }

    private sealed class Told(List<RunProgress> heard, CancellationTokenSource? stop) : IProgress<RunProgress>
    {
        public void Report(RunProgress value)
        {
            heard.Add(value);
            stop?.Cancel();
        }
    }

    /// <summary>A text that comes in small pieces, and is stopped once so many characters of it have come.</summary>
    private sealed class StoppingText(string text, int after, CancellationTokenSource stop) : TextReader
    {
        private int _at;

        public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

        public override int Read(Span<char> buffer)
        {
            int read = Math.Min(Math.Min(100, buffer.Length), text.Length - _at);
            text.AsSpan(_at, read).CopyTo(buffer);
            _at += read;
            if (_at >= after)
            {
                stop.Cancel();
            }

            return read;
        }
    }
}
