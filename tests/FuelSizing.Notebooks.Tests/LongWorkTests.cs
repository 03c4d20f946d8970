using FuelSizing.Interactive;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The line that says how far long work is: under the cell, beside its number on the console, and gone from the report when the work is done.</summary>
public sealed class LongWorkTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fuelsizing-long-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Work_OutsideANotebook_IsDone()
    {
        Assert.Equal(3, LongWork.Run("counting", progress =>
        {
            progress.Report(Ratio.FromPercent(50));
            return 3;
        }));
        Assert.Equal(4, LongWork.Run("counting", () => 4));
        Assert.Throws<FormatException>(() => LongWork.Run<int>("counting", () => throw new FormatException()));
    }

    [Fact]
    public void Name_ThatIsNone_IsRefused()
    {
        Assert.Equal("name", Assert.Throws<ArgumentException>(() => LongWork.Run(" ", () => 1)).ParamName);
        Assert.Equal("work", Assert.Throws<ArgumentNullException>(() => LongWork.Run<int>("counting", (Func<int>)null!)).ParamName);
    }

    /// <summary>The cell waits at 40 % until that is seen; when it is done only its result is left.</summary>
    [Fact]
    public async Task Line_OfWorkThatGoesOn_IsShownAndGoesWhenItIsDone()
    {
        string gate = Path.Combine(_folder.FullName, "on");
        List<ProgressLine> lines = [];
        using var runner = new CellRunner(line =>
        {
            lock (lines)
            {
                lines.Add(line);
            }

            if (line.Share is 0.4)
            {
                File.WriteAllText(gate, string.Empty);
            }
        });

        CellRun run = await runner.RunAsync(Cell($$"""
            LongWork.Run("counting", progress =>
            {
                progress.Report(Ratio.FromPercent(40));
                progress.Report(Ratio.FromPercent(10));   // from a thread that is behind
                while (!System.IO.File.Exists(@"{{gate}}")) { System.Threading.Thread.Sleep(20); }
                return "counted";
            })
            """)).WaitAsync(TimeSpan.FromMinutes(2));

        Assert.Null(run.Failure);
        Assert.Equal("counted", Assert.Single(run.Outputs).Text);
        Assert.Equal((ProgressState.Runs, 0.4), (lines[0].State, lines[0].Share));
        Assert.Equal("counting", lines[0].Name);
        Assert.Equal(ProgressState.Finished, lines[^1].State);
        Assert.All(lines.Zip(lines.Skip(1)), pair => Assert.True(pair.Second.Elapsed >= pair.First.Elapsed && pair.Second.Share >= pair.First.Share));
    }

    /// <summary>Work that fails says where it stopped, and no more.</summary>
    [Fact]
    public async Task Line_OfWorkThatFails_SaysWhereItStopped()
    {
        string gate = Path.Combine(_folder.FullName, "on");
        using var runner = new CellRunner(_ => File.WriteAllText(gate, string.Empty));

        CellRun run = await runner.RunAsync(Cell($$"""
            LongWork.Run<int>("counting", progress =>
            {
                progress.Report(Ratio.FromPercent(40.9));
                while (!System.IO.File.Exists(@"{{gate}}")) { System.Threading.Thread.Sleep(20); }
                throw new FormatException("not a number");
            })
            """)).WaitAsync(TimeSpan.FromMinutes(2));

        Assert.Contains("not a number", run.Failure, StringComparison.Ordinal);
        CellOutput left = Assert.Single(run.Outputs);
        Assert.Contains("counting: stopped at 40 % after", left.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("<progress", left.Text, StringComparison.Ordinal);
    }

    /// <summary>A report leaves a number behind and allocates nothing, whatever is shown.</summary>
    [Fact]
    public async Task Reports_InAMillion_AllocateNothing()
    {
        using var runner = new CellRunner();

        CellRun run = await runner.RunAsync(Cell("""
            LongWork.Run("counting", progress =>
            {
                Ratio half = Ratio.FromPercent(50);
                progress.Report(half);
                long before = GC.GetAllocatedBytesForCurrentThread();
                for (int step = 0; step < 1_000_000; step++) { progress.Report(half); }
                return GC.GetAllocatedBytesForCurrentThread() - before;
            })
            """));

        Assert.InRange(long.Parse(System.Text.RegularExpressions.Regex.Match(Assert.Single(run.Outputs).Text, "[0-9]+").Value, System.Globalization.CultureInfo.InvariantCulture), 0, 100_000);
    }

    [Fact]
    public void Line_OfAnyText_IsOneElement()
    {
        var line = new ProgressLine("<b>\"a\" & b</b>", 0.999, TimeSpan.FromSeconds(12.4), ProgressState.Runs);

        System.Xml.Linq.XElement shown = System.Xml.Linq.XElement.Parse(line.ToHtml());

        Assert.Equal("99", shown.Element("progress")!.Attribute("value")!.Value);
        Assert.EndsWith("<b>\"a\" & b</b>: 99 % after 12 s", shown.Value, StringComparison.Ordinal);
        Assert.Equal("sampling: running after 3 s", new ProgressLine("sampling", null, TimeSpan.FromSeconds(3), ProgressState.Runs).ToPlainText());
    }

    /// <summary>On the console: behind the number of the cell, at most one word in each interval, nothing of what was quickly done.</summary>
    [Fact]
    public void Console_OfLongWork_SaysHowFarItIsNowAndThen()
    {
        using var console = new StringWriter();
        var progress = new ProgressText(console, TimeSpan.FromSeconds(2));
        void At(string name, double? share, double seconds, ProgressState state = ProgressState.Runs) =>
            progress.Take(new(name, share, TimeSpan.FromSeconds(seconds), state));

        At("too early", 0.1, 5);
        progress.Begin();
        At("quick", 0.5, 1.5);
        At("quick", 1, 2.5, ProgressState.Finished);
        At("sampling", 0.11, 2);
        At("sampling", 0.2, 3.5);
        At("sampling", 0.339, 4);
        At("searching", null, 2.6);
        progress.End();
        At("too late", 0.1, 5);
        progress.Begin();
        progress.End();

        Assert.Equal("sampling: 11 %, 33 %; searching: 3 s; ", console.ToString());
    }

    private static NotebookCell Cell(string code) => new(1, true, "using FuelSizing.Interactive; using UnitsNet; " + code);
}
