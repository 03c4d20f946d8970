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

        PlotLine shown = RunPlots.Trace(run, Channel.Lambda).Lines[0];

        Assert.InRange(shown.Y.Count, 300, 600);
        Assert.Equal(1.31, shown.Y.Max(), 9);
        Assert.Equal(0.82, shown.Y.Min(), 9);
        Assert.Equal(123.45, shown.X[shown.Y.ToList().IndexOf(shown.Y.Max())], 9);
        Assert.Equal(shown.X.Order(), shown.X);
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
