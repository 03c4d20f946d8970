using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Interactive;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Selection;
using FuelSizing.Systems;
using Microsoft.DotNet.Interactive.Formatting;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Rankings as a notebook shows them, on an invented engine.</summary>
public class SelectionBlockTests
{
    private static readonly Stage Peak = Stage.Of("peak", SystemOf(), OperatingPoint.At(Rpm(900), Pressure.FromBars(-0.6)), OperatingPoint.At(Rpm(6500), Pressure.FromBars(0.5)));

    [Fact]
    public void Best_ShowsPartsCostAndWhyOneFails()
    {
        Table table = SelectionTables.Best(RankingOf((400, 50), (900, 90)));

        Assert.Equal(["Injectors", "Cost", "Turndown at idle", "Reserve", "Tightest margin", "Limit exceeded"], table.Columns.Select(column => column.Header));
        Assert.Equal(("injector 900", "360", "none"), (table.Rows[0][0], table.Rows[0][1], table.Rows[0][5]));
        Assert.StartsWith("injectors: duty cycle", table.Rows[1][5], StringComparison.Ordinal);
        Assert.StartsWith("1 of 2 combinations are adequate for peak", table.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Best_WithoutCostsOrFailures_LeavesTheirColumnsOut() =>
        Assert.Equal(
            ["Injectors", "Turndown at idle", "Reserve", "Tightest margin"],
            SelectionTables.Best(RankingOf((900, null), (1000, null))).Columns.Select(column => column.Header));

    [Fact]
    public void Best_ShowsNoMoreThanAsked() => Assert.Single(SelectionTables.Best(RankingOf((400, 1), (900, 1)), maximum: 1).Rows);

    [Theory]
    [InlineData(0)]
    [InlineData(1001)]
    public void Best_OfTooFewOrTooMany_IsRefused(int maximum) =>
        Assert.Equal("maximum", Assert.Throws<ArgumentOutOfRangeException>(() => SelectionTables.Best(RankingOf((900, 1)), maximum)).ParamName);

    [Fact]
    public void Pareto_ShowsWhatNoOtherBeats()
    {
        // The smaller has more turndown; it is beaten only where it is no cheaper either. The pump holds the reserve of both.
        Assert.Equal(["injector 1000", "injector 900"], SelectionTables.Pareto(RankingOf((900, 90), (1000, 60))).Rows.Select(row => row[0]));
        Assert.Equal(["injector 900"], SelectionTables.Pareto(RankingOf((900, 90), (1000, 100))).Rows.Select(row => row[0]));
        Assert.Throws<ArgumentException>(() => SelectionTables.Pareto(RankingOf((300, 1))));
    }

    [Fact]
    public void ParetoPlot_HasARowForEachWithItsCostAndBothFigures()
    {
        Ranking ranking = RankingOf((900, 90), (1000, 60));
        BarPlot plot = SelectionPlots.Pareto(ranking);
        Assert.Equal(["injector 1000 (240)", "injector 900 (360)"], plot.Rows.Select(row => row.Label));
        Assert.Equal(
            ranking.Pareto.Select(one => (one.Turndown!.Value.Percent, one.Reserve!.Value.Percent)),
            plot.Rows.Select(row => (row.Bars[0].To, row.Bars[1].To)));
        Assert.Throws<ArgumentException>(() => SelectionPlots.Pareto(RankingOf((300, 1))));
    }

    [Fact]
    public void Margins_ShowEveryPartWithItsStage()
    {
        Table table = SelectionTables.Margins(RankingOf((900, 90)).Best!);
        Assert.Equal(5, table.Rows.Count);
        Assert.All(table.Rows, row => Assert.Equal("peak", row[3]));
        Assert.Equal("How each part stands: injector 900", table.Title);
    }

    [Fact]
    public void Notebook_ShowsARankingAndACombinationAsTables()
    {
        FuelSizingExtension.Register();
        Ranking ranking = RankingOf((900, 90));
        Assert.Contains("Turndown at idle", ranking.ToDisplayString("text/html"), StringComparison.Ordinal);
        Assert.Contains("In stage", ranking.Best!.ToDisplayString("text/plain"), StringComparison.Ordinal);
    }

    private static Ranking RankingOf(params (double Flow, int? Cost)[] injectors) =>
        Ranking.Of([Peak], CandidateParts.Of([.. injectors.Select(one => Candidate.Of($"injector {one.Flow:0}", InjectorOf(one.Flow), (decimal?)one.Cost))]));

    private static FuelSystem SystemOf() => FuelSystem.Return(
        FuelDemandModel.Of(
            Engine.Of("2 L", Volume.FromLiters(2), 4, EngineCycle.FourStroke, Rpm(7000)),
            Induction.Turbocharged(Ratio.FromPercent(70), Ratio.FromPercent(70), Pressure.FromKilopascals(5)),
            VolumetricEfficiency.Of((Rpm(800), Ratio.FromPercent(75)), (Rpm(7000), Ratio.FromPercent(95))),
            PowerCurve.AtWheels(Atmosphere.Standard, Ratio.FromPercent(15), (Rpm(800), Power.FromKilowatts(8)), (Rpm(7000), Power.FromKilowatts(110))),
            Ratio.FromPercent(85),
            FuelConsumption.Of(Fuel.Petrol, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(320))),
        InjectorSet.Of(InjectorOf(400), 4),
        ManifoldReferenced.From(Pressure.FromKilopascals(300)),
        Pump.From(PumpCurve.At(
            "pump",
            ElectricPotential.FromVolts(13.5),
            (Pressure.Zero, VolumeFlow.FromLitersPerHour(400)),
            (Pressure.FromKilopascals(900), VolumeFlow.Zero))));

    private static Injector InjectorOf(double millilitresPerMinute) => Injector.Of(
        $"injector {millilitresPerMinute:0}",
        VolumeFlow.FromMillilitersPerMinute(millilitresPerMinute),
        Pressure.FromKilopascals(300),
        TestFluid.Heptane,
        DeadTimeTable.ByVoltage((ElectricPotential.FromVolts(8), Duration.FromMilliseconds(2.2)), (ElectricPotential.FromVolts(16), Duration.FromMilliseconds(0.7))),
        Duration.FromMilliseconds(1.5),
        Pressure.FromKilopascals(600));

    private static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);
}
