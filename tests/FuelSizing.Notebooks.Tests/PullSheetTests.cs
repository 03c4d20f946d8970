using System.Xml.Linq;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Interactive;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The page for the dynamometer, on an invented engine whose every part has something to say.</summary>
public class PullSheetTests
{
    internal static readonly LineSweepResult Pull = Of(MixtureLimits.ByBoost([(Kpa(10), 0.9), (Kpa(40), 0.86), (Kpa(60), 0.84)], 0.68));

    [Fact]
    public void Sheet_HasWhatToExpectAtEachSpeed_AndBlanksForWhatWasRead()
    {
        XElement page = Parsed(new PullSheet(Pull, "First pull", new DateOnly(2026, 11, 29)));
        XElement[] rows = [.. page.Descendants("table").Single(table => (string?)table.Attribute("class") == "form").Element("tbody")!.Elements("tr")];
        Assert.Equal(Pull.Results.Count, rows.Length);
        foreach ((XElement row, OperatingResult result) in rows.Zip(Pull.Results))
        {
            string[] cells = [.. row.Elements("td").Select(cell => cell.Value)];
            Assert.Equal($"{result.Point.Speed.RevolutionsPerMinute:#,0} rev/min", cells[0]);
            Assert.Equal($"{result.Mixture.RailGauge.Kilopascals:0} kPa", cells[2]);
            Assert.Equal($"{result.Mixture.CommandedPulse!.Value.Milliseconds:0.00} ms", cells[3]);
            Assert.Equal($"{result.Mixture.Lambda!.Value:0.000}", cells[5]);
            Assert.Equal(4, row.Elements("td").Count(cell => (string?)cell.Attribute("class") == "blank" && cell.Value.Length == 0));
        }

        Assert.Contains("2026-11-29", page.Value, StringComparison.Ordinal);
        Assert.Contains(Pull.Verdict.Headline.ToString(), page.Value, StringComparison.Ordinal);
        Assert.Contains("0.86 from 0.40 bar", page.Value, StringComparison.Ordinal);
        Assert.Contains("pulses recorded over speed", page.Value, StringComparison.Ordinal);
        Assert.All(Cautions.Lines, line => Assert.Contains(line, page.Value, StringComparison.Ordinal));
    }

    [Fact]
    public void Sheet_InPlainText_SaysTheSame()
    {
        string text = new PullSheet(Pull, "First pull").ToString();
        Assert.Contains(Pull.Verdict.Headline.ToString(), text, StringComparison.Ordinal);
        Assert.Contains("____", text, StringComparison.Ordinal);
        Assert.All(Cautions.Lines, line => Assert.Contains(line, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Sheet_WithoutALeanestLambda_AsksForOne() =>
        Assert.Contains("no leanest lambda was given", new PullSheet(Of(null), "First pull").ToString(), StringComparison.Ordinal);

    [Fact]
    public void Sheet_OfAPlanThatFails_SaysNotToRunIt()
    {
        Assert.Equal(FuelSizing.Checks.Outcome.Fails, Pull.Verdict.Outcome);
        Assert.Contains("Do not run it", new PullSheet(Pull, "First pull").ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    public void Sheet_WithoutATitle_IsRefused(string title) => Assert.Throws<ArgumentException>(() => new PullSheet(Pull, title));

    [Fact]
    public void Sheet_WithAHostileTitle_EscapesIt()
    {
        PullSheet sheet = new(Pull, "<script>alert(1)</script>");
        Assert.All(new[] { sheet.ToDocument(), sheet.ToHtml() }, html => Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>For <c>.ci/sheet</c>, which prints it: it must fit one page of either paper.</summary>
    [Fact]
    public void Sheet_AsFullAsItGets_IsWrittenForThePrinter()
    {
        RotationalSpeed[] speeds = [.. Enumerable.Range(0, 40).Select(step => Rpm(2500 + (step * 100)))];
        LineSweepResult pull = Pull.System.Sweep(Pull.Line, speeds);
        string page = new PullSheet(pull, "Two litres on trial, with a controller that knows nothing of its boost").ToDocument();
        Assert.Equal(16, Parsed(new PullSheet(pull, "x")).Descendants("tr").Count(row => row.Elements("td").Count() == 11));
        if (Environment.GetEnvironmentVariable(SizingSheetTests.FolderVariable) is { Length: > 0 } folder)
        {
            File.WriteAllText(Path.Combine(folder, "pull.html"), page);
        }
    }

    internal static LineSweepResult Of(MixtureLimits? limits, string? name = null)
    {
        FuelSystem system = SizingSheetTests.Sweep(name).System;
        SizingLimits own = system.Limits;
        return system
            .With(limits is null ? own : own.With(limits))
            .With(RecordedPulseController.BySpeed((Rpm(2000), Duration.FromMilliseconds(8.4)), (Rpm(7000), Duration.FromMilliseconds(7.9))))
            .Pull(HeldBoost.Of(Kpa(60), Rpm(3200), Rpm(6800), Rpm(2200)), Rpm(2500), Rpm(6600));
    }

    private static XElement Parsed(PullSheet sheet) =>
        XDocument.Parse(sheet.ToDocument().Replace("<!DOCTYPE html>", string.Empty, StringComparison.Ordinal)).Root!;

    private static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);

    private static Pressure Kpa(double pressure) => Pressure.FromKilopascals(pressure);
}
