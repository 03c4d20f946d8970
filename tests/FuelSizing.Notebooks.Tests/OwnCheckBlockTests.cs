using FuelSizing.Checks;
using FuelSizing.Interactive;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using FuelSizing.Tests;
using FuelSizing.Tests.Checks;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>A check that another assembly defines is shown like the library's own, by the one registration.</summary>
public class OwnCheckBlockTests
{
    private static readonly VolumeFlow Required = VolumeFlow.FromLitersPerHour(400);

    private static readonly SweepResult Strict = Wren.System()
        .With(new ReturnFlowForCooling(Required))
        .Sweep([Wren.Rpm(3000), Wren.Rpm(6000)], [Pressure.Zero, Wren.Kpa(15), Wren.Kpa(30)], Wren.Hill);

    [Fact]
    public void Standings_OfASystemWithOwnCheck_HaveItsLine()
    {
        Table table = SizingTables.Standings(Strict, TextStyle.Metric);
        Assert.Equal(["return flow for cooling", "FAILS"], table.Rows[0].Take(2));
    }

    [Fact]
    public void Remedies_OfASystemWithOwnCheck_NameIt() => Assert.Contains(
        SizingCallouts.Remedies(Strict, TextStyle.Metric).Rows,
        row => row[0] == "return flow for cooling" && row[1].StartsWith("A pump that returns at least 400 L/h", StringComparison.Ordinal));

    [Fact]
    public void Sheet_OfASystemWithOwnCheck_SaysMarginAndChange()
    {
        string text = new SizingSheet(Strict, "Wren with a hot rail", new DateOnly(2026, 11, 29)).ToPlainText();
        Assert.Contains("return flow for cooling", text, StringComparison.Ordinal);
        Assert.Contains("400 L/h required to cool the rail", text, StringComparison.Ordinal);
        Assert.Contains("A pump that returns at least 400 L/h", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Plot_OfOwnCheck_DrawsReturnedAgainstRequired()
    {
        LinePlot plot = SizingPlots.Check(Strict, ReturnFlowForCooling.Cooling, 1, TextStyle.UsCustomary);
        Assert.Equal("Returned flow (US gal/h)", plot.Y.Title);
        Assert.Equal(["return flow for cooling", "at least"], plot.Lines.Select(line => line.Name));
        Assert.All(Enumerable.Range(0, 3), boost =>
        {
            Assert.Equal(Strict.At(1, boost).ReturnedFlow!.Value.UsGallonsPerHour, plot.Lines[0].Y[boost], 9);
            Assert.Equal(Required.UsGallonsPerHour, plot.Lines[1].Y[boost], 9);
        });
    }

    [Fact]
    public void Plot_OfTheInjectors_DrawsTheDutyCycleAgainstItsLimit()
    {
        LinePlot plot = SizingPlots.Check(Strict, Part.Injectors, 1, TextStyle.Metric);
        Assert.Equal(Strict.At(1, 2).DutyCycle!.Value.Percent, plot.Lines[0].Y[2], 9);
        Assert.Equal("at most", plot.Lines[1].Name);
        Assert.Equal(Strict.System.Limits.DutyCycle.Percent, plot.Lines[1].Y[2], 9);
    }

    [Fact]
    public void Plot_OfACheckThatTheSystemHasNot_NamesThoseThatItHas()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => SizingPlots.Check(Strict, Part.Of("own.other", "another"), 0));
        Assert.Contains("it has ", error.Message, StringComparison.Ordinal);
        Assert.Contains("return flow for cooling", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Drawn_OfAnotherQuantity_IsRefused()
    {
        CheckFigure figure = new ReturnFlowForCooling(Required).Figure;
        Assert.Throws<ArgumentException>(() => figure.Drawn(Pressure.FromBars(3), TextStyle.Metric));
        Assert.True(double.IsNaN(figure.Drawn(null, TextStyle.Metric)));
    }
}
