using System.Globalization;
using System.Xml.Linq;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Interactive;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Systems;
using Microsoft.DotNet.Interactive.Formatting;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>A recorded run against time, with the prediction.</summary>
public class RunPlotTests
{
    private static readonly FuelSystem Plan = SizingSheetTests.Sweep().System;

    private static readonly RunCheck Check = RunCheck.Of(Plan);

    [Fact]
    public void Traces_OfARunWithAPlan_AreSpeedLambdaRailAndDutyAgainstTime()
    {
        IReadOnlyList<LinePlot> plots = RunPlots.Traces(Run(60), Check);

        Assert.Equal(
            ["Engine speed (rev/min)", "Lambda", "Rail pressure, gauge (kPa)", "Duty cycle (%)"],
            plots.Select(plot => plot.Y.Title));
        Assert.All(plots, plot => Assert.Equal("Time (s)", plot.X.Title));
        Assert.Equal([1, 2, 2, 2], plots.Select(plot => plot.Lines.Count));
        Assert.Equal("limit 85 %*", Assert.Single(plots[3].Limits).Label);
    }

    [Fact]
    public void Traces_WithoutAPlan_ShowTheRecordAlone_AndNoDutyByThePulse()
    {
        IReadOnlyList<LinePlot> plots = RunPlots.Traces(Run(60));

        Assert.Equal(3, plots.Count);
        Assert.All(plots, plot => Assert.Equal("recorded", Assert.Single(plot.Lines).Name));
    }

    /// <summary>A car that does just what was planned: record and plan are one curve.</summary>
    [Theory]
    [InlineData(Channel.RailGauge)]
    [InlineData(Channel.InjectorPulse)]
    [InlineData(Channel.DutyCycle)]
    [InlineData(Channel.Lambda)]
    [InlineData(Channel.FuelMassFlow)]
    public void Trace_OfACarThatFollowsThePlan_ShowsOneCurve(Channel channel)
    {
        LinePlot plot = RunPlots.Trace(Run(60), channel, Check);

        Assert.Equal(60, plot.Lines[0].Y.Count);
        Assert.All(plot.Lines[0].Y.Zip(plot.Lines[1].Y), pair => Assert.Equal(pair.First, pair.Second, 6));
    }

    [Fact]
    public void Trace_WhereThePlanKnowsNothing_HasAGapInThePlan()
    {
        RunRow[] rows = [.. Run(10).Rows, RunRow.Of(40, Rpm(7600), Duration.FromSeconds(9), Pressure.FromBars(1.2), railGauge: Pressure.FromKilopascals(310))];

        LinePlot plot = RunPlots.Trace(RecordedRun.Of("pull", Atmosphere.Standard, rows), Channel.RailGauge, Check);

        Assert.Equal(310, plot.Lines[0].Y[^1], 6);
        Assert.True(double.IsNaN(plot.Lines[1].Y[^1]));
        Assert.DoesNotContain("NaN", plot.ToHtml(), StringComparison.Ordinal);
    }

    /// <summary>One lean row among 20,000 is what a reader looks for: it must not fall through the mesh.</summary>
    [Fact]
    public void Trace_OfALongRun_IsShort_AndKeepsTheSingleWorstRow()
    {
        RecordedRun run = RecordedRun.Of(
            "long",
            Atmosphere.Standard,
            Enumerable.Range(0, 20_000).Select(step => RunRow.Of(step + 1, Rpm(3000), Duration.FromSeconds(0.01 * step), lambda: step == 12_345 ? 1.31 : 0.82 + (0.0001 * (step % 7)))));

        LinePlot plot = RunPlots.Trace(run, Channel.Lambda);
        var svg = XElement.Parse(plot.ToSvg());
        string[] marks = [.. svg.Elements().Single(element => element.Attribute("class")?.Value == "readings").Attribute("d")!.Value.Split('M', StringSplitOptions.RemoveEmptyEntries)];
        double[] heights = [.. marks.Select(mark => double.Parse(mark.Split(' ', 'h')[1], CultureInfo.InvariantCulture))];

        Assert.InRange(marks.Length, 300, 610);
        Assert.True(heights.Order().ElementAt(1) - heights.Min() > 100, "The one lean row stands far above all others.");
        Assert.Contains("20,000 points of \"recorded\"", plot.ToHtml(), StringComparison.Ordinal);

        // What is read from a file of all rows is every row.
        string[] lines = plot.ToCsv().Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(20_001, lines.Length);
        Assert.Equal("123.45,1.31", lines[12_346]);
        Assert.InRange(plot.ToHtml().Length, 1, 60_000);
        Assert.Contains("All 20,000 rows are too many for this page: the plot's ToCsv() writes them.", plot.ToHtml(), StringComparison.Ordinal);
    }

    /// <summary>Traces stand one below the other: the same time must stand at the same place in each, also in that of a channel recorded for a part of the run.</summary>
    [Fact]
    public void Traces_OfOneRun_ShareTheirTimeAxis()
    {
        RecordedRun run = RecordedRun.Of(
            "late lambda",
            Atmosphere.Standard,
            Enumerable.Range(0, 80).Select(step => RunRow.Of(
                step + 1, Rpm(2500 + (50 * step)), Duration.FromSeconds(0.1 * step), lambda: step > 40 ? 0.82 : null, railGauge: Pressure.FromKilopascals(300 + step))));

        (string Time, double Place)[][] axes = [.. RunPlots.Traces(run).Select(Times)];

        Assert.Equal(3, axes.Length);
        Assert.InRange(axes[0].Length, 4, 12);
        Assert.All(axes, axis => Assert.Equal(axes[0], axis));

        // The numbers of the time axis are all that stands at the height of the lowest row of numbers.
        static (string Time, double Place)[] Times(LinePlot plot)
        {
            var texts = XElement.Parse(plot.ToSvg()).Descendants().Where(text => text.Name.LocalName == "text")
                .Select(text => (text.Value, At: text.Attribute("transform")!.Value["translate(".Length..^1].Split(',').Select(part => double.Parse(part, CultureInfo.InvariantCulture)).ToArray()))
                .ToList();
            double row = texts.Where(text => double.TryParse(text.Value, CultureInfo.InvariantCulture, out _)).Max(text => text.At[1]);
            return [.. texts.Where(text => text.At[1] == row).Select(text => (text.Value, Math.Round(text.At[0], 1)))];
        }
    }

    [Fact]
    public void Trace_OfReadings_JoinsNone_AndNamesThem()
    {
        LinePlot plot = RunPlots.Trace(Run(30), Channel.Lambda, Check);

        Assert.Equal([true, false], plot.Lines.Select(line => line.IsMeasured));
        Assert.Contains("recorded (readings)", plot.ToSvg(), StringComparison.Ordinal);
    }

    [Fact]
    public void Trace_OfASlowChannel_JoinsWhatThereIs()
    {
        RecordedRun run = RecordedRun.Of(
            "slow",
            Atmosphere.Standard,
            Enumerable.Range(0, 50).Select(step => RunRow.Of(step + 1, Rpm(3000), Duration.FromSeconds(0.1 * step), lambda: step % 10 == 0 ? 0.8 : null)));

        Assert.Equal([0, 1, 2, 3, 4], RunPlots.Trace(run, Channel.Lambda).Lines[0].X.Select(time => Math.Round(time, 6)));
    }

    [Fact]
    public void Trace_OfARunWithoutTime_GoesByTheLinesOfTheLog()
    {
        RecordedRun run = RecordedRun.Of("no clock", Atmosphere.Standard, [RunRow.Of(7, Rpm(3000)), RunRow.Of(9, Rpm(3100))]);

        LinePlot plot = RunPlots.Trace(run, Channel.Speed);

        Assert.Equal("Line of the log", plot.X.Title);
        Assert.Equal([7, 9], plot.Lines[0].X);
    }

    [Fact]
    public void Trace_OfWhatTheRunLacks_IsRefusedWithWhatItHas()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => RunPlots.Trace(Run(10), Channel.Torque, Check));

        Assert.Contains("torque", error.Message, StringComparison.Ordinal);
        Assert.Contains("lambda", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Channel.Time)]
    [InlineData((Channel)99)]
    public void Trace_OfNoChannelToPlot_IsRefused(Channel channel) =>
        Assert.Equal("channel", Assert.Throws<ArgumentOutOfRangeException>(() => RunPlots.Trace(Run(10), channel)).ParamName);

    [Fact]
    public void Traces_OfNoRun_AreRefused()
    {
        Assert.Throws<ArgumentNullException>(() => RunPlots.Traces(null!));
        Assert.Throws<ArgumentException>(() => RunPlots.Traces(RecordedRun.Of("empty", Atmosphere.Standard, [])));
    }

    [Fact]
    public void Notebook_ShowsTracesOneBelowTheOther()
    {
        FuelSizingExtension.Register();
        IReadOnlyList<LinePlot> plots = RunPlots.Traces(Run(20), Check);

        XElement page = XElement.Parse(plots.ToDisplayString(HtmlFormatter.MimeType));

        Assert.Equal(4, page.Elements("figure").Count());
        Assert.All(plots, plot => Assert.Contains(plot.Title, plots.ToDisplayString(PlainTextFormatter.MimeType), StringComparison.Ordinal));
    }

    private static RecordedRun Run(int rows) => RecordedRun.Of(
        "pull <1>",
        Atmosphere.Standard,
        Enumerable.Range(0, rows).Select(step =>
        {
            RotationalSpeed speed = Rpm(2500 + (50 * step));
            Pressure boost = Pressure.FromBars(0.005 * step);
            OperatingResult result = Plan.Solve(OperatingPoint.At(speed, boost));
            return RunRow.Of(
                step + 2,
                speed,
                Duration.FromSeconds(0.1 * step),
                result.Demand.ManifoldAbsolute,
                result.RailGauge,
                result.Pulse,
                lambda: 0.82,
                fuelMassFlow: result.Demand.MassFlow);
        }));

    private static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);
}
