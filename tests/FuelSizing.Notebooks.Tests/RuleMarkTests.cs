using FuelSizing.Interactive;
using FuelSizing.Points;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using Microsoft.DotNet.Interactive.Formatting;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Rules of thumb are marked in the sheet, the tables, the callouts and the plots; figures of one's own are not.</summary>
public class RuleMarkTests
{
    public RuleMarkTests() => FuelSizingExtension.Register();

    private const string Words = "common practice, no source";

    private static readonly SizingLimits Own = SizingLimits.Of(
        Ratio.FromPercent(84), Ratio.FromPercent(11), null, Ratio.FromPercent(5.1), Pressure.FromKilopascals(10.1));

    [Fact]
    public void Sheet_ByRulesOfThumb_MarksEachAndSaysWhatTheMarkMeans()
    {
        string limits = Line(new SizingSheet(SweepBy(SizingLimits.Default), "a sheet").ToPlainText(), "Limits | ");
        Assert.Contains("duty cycle 85.0 %*, pump reserve 10 %*, feed drop 5 %*, 10 kPa* over vapour pressure (* common practice, no source)", limits, StringComparison.Ordinal);
        Assert.DoesNotContain("*", Line(new SizingSheet(SweepBy(Own), "a sheet").ToPlainText(), "Limits | "), StringComparison.Ordinal);
    }

    [Fact]
    public void Margins_InSheetTableAndCallout_SayIt()
    {
        foreach (string page in Pages(SweepBy(SizingLimits.Default)))
        {
            Assert.Contains(Words, page, StringComparison.Ordinal);
        }

        foreach (string page in Pages(SweepBy(Own)))
        {
            Assert.DoesNotContain(Words, page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Plots_OfTheDutyCycle_StarTheLimitAndExplainTheStar()
    {
        foreach (SizingLimits limits in new[] { SizingLimits.Default, Own })
        {
            SweepResult sweep = SweepBy(limits);
            UncertainSystem uncertain = UncertainSystem.Of(
                sweep.System,
                sweep.Results[^1].Point,
                UncertainInput.InjectorFlowFactor(Distribution.Uniform(Ratio.FromPercent(96), Ratio.FromPercent(104))));
            string[] plots =
            [
                SizingPlots.DutyCycle(sweep).ToHtml(),
                UncertaintyPlots.DutyCycle(uncertain.MonteCarlo(Sampling.Of(64, 3, 1))).ToHtml(),
                UncertaintyPlots.Tornado(uncertain.Tornado(SystemOutput.DutyCycle)).ToHtml(),
            ];
            bool rule = limits == SizingLimits.Default;
            Assert.All(plots, plot => Assert.Equal(rule, plot.Contains("%*", StringComparison.Ordinal)));
            Assert.All(plots, plot => Assert.Equal(rule, plot.Contains("* " + Words, StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void Limits_ShownByThemselves_SayIt()
    {
        Assert.Equal(4, SizingLimits.Default.ToDisplayString("text/plain").Split(Words).Length - 1);
        Assert.DoesNotContain(Words, Own.ToDisplayString("text/plain"), StringComparison.Ordinal);
    }

    private static string[] Pages(SweepResult sweep) =>
    [
        string.Join('\n', new SizingSheet(sweep, "a sheet").ToPlainText().Split('\n').Where(line => !line.TrimStart().StartsWith("Limits", StringComparison.Ordinal))),
        SizingTables.Standings(sweep).ToPlainText(),
        SizingCallouts.Verdict(sweep.Verdict).ToPlainText(),
    ];

    private static string Line(string text, string start) =>
        Assert.Single(text.Split('\n'), line => line.TrimStart().StartsWith(start, StringComparison.Ordinal));

    private static SweepResult SweepBy(SizingLimits limits) => ResultBlockTests.Sweep(360, limits);
}
