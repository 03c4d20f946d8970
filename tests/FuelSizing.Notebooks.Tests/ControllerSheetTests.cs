using System.Xml.Linq;
using FuelSizing.Bench;
using FuelSizing.Controllers;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Interactive;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The page of figures for a controller, of an invented injector on the bench.</summary>
public class ControllerSheetTests
{
    private static readonly ControllerFigures Weighed = Figures("injector C");

    private static readonly TargetLambda Target = TargetLambda.Of((Ratio.FromPercent(40), 1), (Ratio.FromPercent(90), 0.9), (Ratio.FromPercent(160), 0.8));

    [Fact]
    public void Sheet_HasEveryFigureToType_WithItsInterval()
    {
        XElement page = Parsed(new ControllerSheet(Weighed, "New injectors", date: new DateOnly(2026, 11, 30), style: TextStyle.Metric));
        string shown = page.Value;
        FlowFigure flow = Weighed.ReferenceFlow;
        Assert.Contains(TextStyle.Metric.Number(flow.Flow!.Value.MillilitersPerMinute, "N1"), shown, StringComparison.Ordinal);
        Assert.Contains(TextStyle.Metric.Number(flow.MassFlow!.Value.PoundsPerHour, "N2"), shown, StringComparison.Ordinal);
        Assert.Contains($"{flow.MinimumFlow!.Value.MillilitersPerMinute:0.0} to {flow.MaximumFlow!.Value.MillilitersPerMinute:0.0}", shown, StringComparison.Ordinal);
        Assert.All(
            Weighed.DeadTimes.Where(time => time.Minimum is not null),
            time => Assert.Contains($"{time.Time!.Value.Milliseconds:0.000} ({time.Minimum!.Value.Milliseconds:0.000} to {time.Maximum!.Value.Milliseconds:0.000})", shown, StringComparison.Ordinal));
        Assert.Contains("2026-11-30", shown, StringComparison.Ordinal);
        Assert.All(Cautions.Lines, line => Assert.Contains(line, shown, StringComparison.Ordinal));
        Assert.All(Weighed.Notes, note => Assert.Contains(note.ToString(), shown, StringComparison.Ordinal));
        Assert.Equal(2 * Weighed.Flows.Count, page.Descendants("td").Count(cell => (string?)cell.Attribute("class") == "blank"));
        Assert.All(page.Descendants("table").Where(table => (string?)table.Attribute("class") == "form"), table => Assert.Contains("overflow-x:auto", (string?)table.Parent!.Parent!.Attribute("style"), StringComparison.Ordinal));
    }

    [Fact]
    public void Sheet_OfAScaling_SaysWhatIsFalse_InPlainTextToo()
    {
        FlowScaling scaling = Weighed.ScaledTo(VolumeFlow.FromMillilitersPerMinute(300), Target);
        ControllerSheet sheet = new(Weighed, "New injectors", scaling, style: TextStyle.Metric);
        foreach (string text in new[] { Parsed(sheet).Value, sheet.ToString() })
        {
            Assert.Contains(scaling.ToString(), text, StringComparison.Ordinal);
            Assert.Contains(scaling.Caution!.ToString(), text, StringComparison.Ordinal);
            Assert.Contains("type 300.0 mL/min at", text, StringComparison.Ordinal);
            Assert.All(scaling.Lookups, lookup => Assert.Contains(lookup.ToString(), text, StringComparison.Ordinal));
        }

        Assert.Contains("____", sheet.ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Sheet_InUsUnits_HasNoMetricPressure()
    {
        string text = new ControllerSheet(Weighed, "New injectors", Weighed.ScaledTo(VolumeFlow.FromMillilitersPerMinute(300), Target), style: TextStyle.UsCustomary).ToString();
        Assert.Contains("43.5 psi", text, StringComparison.Ordinal);
        Assert.DoesNotContain("kPa", text, StringComparison.Ordinal);
        Assert.DoesNotContain("°C", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Sheet_WithAHostileName_EscapesIt()
    {
        ControllerSheet sheet = new(Figures("<img src=x onerror=alert(1)>"), "<script>alert(1)</script>");
        foreach (string html in new[] { sheet.ToDocument(), sheet.ToHtml() })
        {
            Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
        }

        Assert.Contains("Content-Security-Policy", sheet.ToDocument(), StringComparison.Ordinal);
    }

    [Fact]
    public void Sheet_WithoutATitle_OrWithAnotherScaling_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => new ControllerSheet(Weighed, "  "));
        Assert.Throws<ArgumentException>(() => new ControllerSheet(Weighed, new string('x', 161)));
        Assert.Throws<ArgumentException>("scaling", () => new ControllerSheet(Weighed, "x", Figures("other").ScaledTo(VolumeFlow.FromMillilitersPerMinute(300))));
    }

    /// <summary>Without a bench, with more pressures and voltages than fit: the sheet says by how much it is cut.</summary>
    [Fact]
    public void Sheet_OfMoreThanFits_SaysSo()
    {
        string text = new ControllerSheet(Full, "x", style: TextStyle.Metric).ToString();
        Assert.Contains("and 8 more", text, StringComparison.Ordinal);
        Assert.Contains("the dead times cover", text, StringComparison.Ordinal);
    }

    /// <summary>For <c>.ci/sheet</c>, which prints it: it must fit one page of either paper.</summary>
    [Fact]
    public void Sheet_AsFullAsItGets_IsWrittenForThePrinter()
    {
        ControllerFigures figures = Figures("An injector whose name is as long as eighty characters allow, which hardly any is", [300, 320, 340, 380, 420, 460], [9, 10, 11, 12, 12.5, 13, 14, 15, 16], [9, 10, 11, 12, 14, 16]);
        string page = new ControllerSheet(
            figures, "Two litres on trial, with injectors that the controller takes only at a share of their flow", figures.ScaledTo(VolumeFlow.FromMillilitersPerMinute(300), Target)).ToDocument();
        Assert.True(figures.ShortPulses.Count >= 8 && figures.Notes.Count >= 5, $"{figures.ShortPulses.Count} corrections, {figures.Notes.Count} notes");
        if (Environment.GetEnvironmentVariable(SizingSheetTests.FolderVariable) is { Length: > 0 } folder)
        {
            File.WriteAllText(Path.Combine(folder, "controller.html"), page);
        }
    }

    private static ControllerFigures Full => ControllerFigures.Of(
        Injector.Of(
            "injector",
            VolumeFlow.FromMillilitersPerMinute(640),
            Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.Of([Volts(8), Volts(16)], [Kpa(200), Kpa(400)], [[Ms(2), Ms(0.7)], [Ms(2.2), Ms(0.8)]]),
            Ms(1.6),
            Kpa(550)),
        Fuel.E85,
        Temperature.FromDegreesCelsius(60),
        [.. Enumerable.Range(0, 12).Select(step => Kpa(60 + (50 * step)))],
        voltages: [.. Enumerable.Range(0, 15).Select(step => Volts(6 + step))]);

    internal static ControllerFigures Figures(string name, double[]? kilopascals = null, double[]? volts = null, double[]? weighed = null)
    {
        bool isFull = weighed is not null;
        double[] widths = [0.2, 0.28, 0.36, 0.44, 0.52, 0.6, 0.7, 0.8, 1, 1.4, 2, 3, 4, 5, 6, 8, 10];
        PulseFit Fit(double kilopascals, double volts, double offset) => PulseFit.Of(PulseTest.Of(
            name.Length > 80 ? name[..80] : name,
            TestFluid.Heptane,
            Kpa(kilopascals),
            Volts(volts),
            Mass.FromMilligrams(10),
            Ratio.FromPercent(0.3),
            [
                .. widths.SelectMany((open, at) => new[] { -4e-6, 5e-6 }.Select(off => PulseReading.Of(
                    Ms(offset + open),
                    1000,
                    Mass.FromKilograms((7.3e-3 * Math.Sqrt(kilopascals / 300) * open * (1 - (0.4 * Math.Exp(-open / 0.22)))) + off + (1e-6 * (at % 3)) + (isFull && at == 14 && off > 0 ? 6e-5 : 0))))),
            ]));
        return ControllerFigures.From(
            [.. from at in weighed ?? [12, 14] from across in new[] { 300.0, 380 } select Fit(across, at, (15.7 / at) - 0.12 + ((across - 300) / 1000))],
            Kpa(300),
            Kpa(550),
            Fuel.E85,
            Temperature.FromDegreesCelsius(40),
            [.. (kilopascals ?? [300, 340, 450]).Select(Kpa)],
            voltages: volts is null ? null : [.. volts.Select(Volts)]);
    }

    private static XElement Parsed(ControllerSheet sheet) =>
        XDocument.Parse(sheet.ToDocument().Replace("<!DOCTYPE html>", string.Empty, StringComparison.Ordinal)).Root!;

    private static Pressure Kpa(double pressure) => Pressure.FromKilopascals(pressure);

    private static ElectricPotential Volts(double voltage) => ElectricPotential.FromVolts(voltage);

    private static Duration Ms(double time) => Duration.FromMilliseconds(time);
}
