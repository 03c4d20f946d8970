using System.Xml.Linq;
using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Interactive;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The printable sheet, on an invented engine whose every part has something to say.</summary>
public class SizingSheetTests
{
    /// <summary>Where the sheets go that a printer is to try.</summary>
    internal const string FolderVariable = "FUELSIZING_SHEETS";

    private static readonly SweepResult Full = Sweep();

    [Fact]
    public void Sheet_SaysVerdictInputsMarginsChangesAndCautions()
    {
        var sheet = new SizingSheet(Full, "Two litres on trial", new DateOnly(2026, 11, 25));
        string shown = XDocument.Parse(sheet.ToDocument().Replace("<!DOCTYPE html>", string.Empty, StringComparison.Ordinal)).Root!.Value;

        Assert.Contains($"2026-11-25, calculated with FuelSizing {SizingSheet.Version}", shown, StringComparison.Ordinal);
        Assert.Contains(Full.Verdict.Headline.ToString(), shown, StringComparison.Ordinal);
        Assert.All(Full.Standings, standing => Assert.Contains(standing.Tightest.Margin.Explanation, shown, StringComparison.Ordinal));
        Assert.Contains(Full.Remedies[0].ToString(), shown, StringComparison.Ordinal);
        Assert.All(Cautions.Lines, line => Assert.Contains(line, shown, StringComparison.Ordinal));
        Assert.All(
            new[] { "2.00 L, 4 cylinders, four-stroke", "lambda 0.82", "supply 13.5 V", "4 × injector", "AWG 14", "filter, supply 8 mm × 4.0 m", "duty cycle 85.0 %" },
            text => Assert.Contains(text, shown, StringComparison.Ordinal));
    }

    [Fact]
    public void Sheet_InPlainText_SaysTheSame()
    {
        string text = new SizingSheet(Full, "Two litres on trial").ToString();
        Assert.Contains($"Fails: {Full.Verdict.Headline}", text, StringComparison.Ordinal);
        Assert.All(Cautions.Lines, line => Assert.Contains(line, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Sheet_WithAHostileName_EscapesIt()
    {
        var sheet = new SizingSheet(Sweep("<img src=x onerror=alert(1)>"), "<script>alert(1)</script>");
        foreach (string html in new[] { sheet.ToDocument(), sheet.ToHtml() })
        {
            Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
        }

        Assert.Contains("Content-Security-Policy", sheet.ToDocument(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    public void Sheet_WithoutATitle_IsRefused(string title) => Assert.Throws<ArgumentException>(() => new SizingSheet(Full, title));

    [Fact]
    public void Sheet_WithATitleTooLong_IsRefused() => Assert.Throws<ArgumentException>(() => new SizingSheet(Full, new string('x', 161)));

    /// <summary>For <c>.ci/sheet</c>, which prints it: it must fit one page of either paper.</summary>
    [Fact]
    public void Sheet_AsFullAsItGets_IsWrittenForThePrinter()
    {
        string page = new SizingSheet(Full, "Two litres on trial, with every part that has a limit").ToDocument();
        Assert.True(Full.Standings.Count >= 9 && Full.Remedies.Count >= 7 && Full.Notes.Count >= 2, $"{Full.Standings.Count} parts, {Full.Remedies.Count} changes, {Full.Notes.Count} notes");
        if (Environment.GetEnvironmentVariable(FolderVariable) is { Length: > 0 } folder)
        {
            File.WriteAllText(Path.Combine(folder, "sizing.html"), page);
        }
    }

    /// <param name="name">What every part is called; plain names if none is given.</param>
    internal static SweepResult Sweep(string? name = null)
    {
        Feed feed = Feed.Of(
            name ?? "feed",
            Conductor.Awg(14),
            Length.FromMeters(5),
            Length.FromMeters(5),
            Temperature.FromDegreesCelsius(60),
            Contact.DefaultFuse);
        Line LineOf(string place, double bore) => Line.Of(name ?? place, Length.FromMillimeters(bore), Length.FromMeters(4), Roughness.PlasticTube);
        var system = FuelSystem.Return(
            FuelDemandModel.Of(
                Engine.Of(name ?? "2 L", Volume.FromLiters(2), 4, EngineCycle.FourStroke, Rpm(7000)),
                Induction.Turbocharged(Ratio.FromPercent(70), Ratio.FromPercent(70), Pressure.FromKilopascals(5)),
                VolumetricEfficiency.Of((Rpm(800), Ratio.FromPercent(75)), (Rpm(7000), Ratio.FromPercent(95))),
                PowerCurve.AtWheels(Atmosphere.Standard, Ratio.FromPercent(15), (Rpm(800), Power.FromKilowatts(8)), (Rpm(7000), Power.FromKilowatts(140))),
                Ratio.FromPercent(85),
                FuelConsumption.Of(Fuel.E10, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(330))),
            InjectorSet.Of(
                Injector.Of(
                    name ?? "injector",
                    VolumeFlow.FromMillilitersPerMinute(400),
                    Pressure.FromKilopascals(300),
                    TestFluid.Heptane,
                    DeadTimeTable.ByVoltage((ElectricPotential.FromVolts(8), Duration.FromMilliseconds(2.2)), (ElectricPotential.FromVolts(16), Duration.FromMilliseconds(0.7))),
                    Duration.FromMilliseconds(3),
                    Pressure.FromKilopascals(420)),
                4),
            RisingRate.From(Pressure.FromKilopascals(300), 3, Pressure.FromKilopascals(5), Pressure.FromKilopascals(600), VolumeFlow.FromLitersPerHour(10)),
            Pump.From(PumpCurve.WithCurrent(
                name ?? "pump",
                ElectricPotential.FromVolts(12),
                (Pressure.Zero, VolumeFlow.FromLitersPerHour(160), ElectricCurrent.FromAmperes(6)),
                (Pressure.FromKilopascals(900), VolumeFlow.Zero, ElectricCurrent.FromAmperes(16)))).WithFeed(feed),
            SizingLimits.Of(Ratio.FromPercent(85), Ratio.FromPercent(10), Pressure.FromKilopascals(450), Ratio.FromPercent(1)),
            Plumbing.Of(
                [LineOf("suction", 10)],
                [Filter.Of(name ?? "filter", VolumeFlow.FromLitersPerHour(120), Pressure.FromKilopascals(10)), LineOf("supply", 8)],
                [LineOf("return", 2)]));
        return system.Sweep(
            [Rpm(900), Rpm(4000), Rpm(6500)],
            [Pressure.FromBars(-0.5), Pressure.Zero, Pressure.FromBars(0.8)],
            Conditions.Of(Atmosphere.Standard, ElectricPotential.FromVolts(13.5), Temperature.FromDegreesCelsius(50)));
    }

    private static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);
}
