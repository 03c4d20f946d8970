using System.Text.RegularExpressions;
using FuelSizing.Equations;
using FuelSizing.Interactive;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>One line turns every table, plot and sheet to US customary units: nothing metric is left over.</summary>
[Collection(Alone)]
public sealed partial class UnitStyleTests : IDisposable
{
    private const string Alone = "one setting for the process";

    private static readonly SweepResult Swept = SizingSheetTests.Sweep();

    public UnitStyleTests() => DisplayUnits.Style = UnitStyle.UsCustomary;

    public void Dispose() => DisplayUnits.Style = UnitStyle.Metric;

    [Fact]
    public void Blocks_InUsCustomary_ShowNothingMetric()
    {
        OperatingResult busiest = Swept.Results.MaxBy(result => result.InjectedFlow)!;
        UncertainSystem unsure = UncertainSystem.Of(
            Swept.System,
            OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(4000), Pressure.FromBars(0.3)),
            UncertainInput.RegulatorOffset(Distribution.Uniform(Pressure.FromKilopascals(-10), Pressure.FromKilopascals(10))),
            UncertainInput.FuelTemperature(Distribution.Uniform(Temperature.FromDegreesCelsius(20), Temperature.FromDegreesCelsius(40))),
            UncertainInput.BrakeSpecificFuelConsumption(Distribution.Uniform(
                BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(310), BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(350))));
        IDisplayBlock[] blocks =
        [
            SizingTables.Steps(busiest),
            SizingTables.Demand(Swept),
            SizingTables.Standings(Swept),
            SizingTables.Circuit(busiest),
            SizingTables.Circuits("circuits", ("one", busiest)),
            SizingTables.Wiring("wiring", ("one", busiest)),
            SizingPlots.RailPressure(Swept, 1),
            SizingPlots.DutyCycle(Swept),
            SizingPlots.PumpAgainstDemand(Swept),
            SizingPlots.SystemCurve("curve", ("one", busiest)),
            SizingCallouts.Verdict(Swept.Verdict),
            SizingCallouts.Remedies(Swept),
            UncertaintyTables.Inputs(unsure),
            UncertaintyPlots.Tornado(unsure.Tornado(SystemOutput.RailGauge)),
            new SizingSheet(Swept, "In the other units"),
        ];

        foreach (IDisplayBlock block in blocks)
        {
            Match metric = Metric().Match(block.ToPlainText());
            Assert.False(metric.Success, $"{block.ToPlainText().Split('\n')[0]}: …{metric.Value}…");
        }

        Assert.Contains("psi", blocks[6].ToPlainText(), StringComparison.Ordinal);

        // The same blocks in metric units show that the search above finds them.
        DisplayUnits.Style = UnitStyle.Metric;
        IDisplayBlock[] metricBlocks =
            [SizingTables.Steps(busiest), SizingTables.Circuit(busiest), SizingPlots.RailPressure(Swept, 1), new SizingSheet(Swept, "In metric units")];
        Assert.All(metricBlocks, block => Assert.Matches(Metric(), block.ToPlainText()));
    }

    [GeneratedRegex(@".{0,40}[0-9(] *(kPa|bar|L/h|g/s|kW|°C|kg/m³|g/kWh|m)(?![\w/²³])", RegexOptions.CultureInvariant)]
    private static partial Regex Metric();

    [CollectionDefinition(Alone, DisableParallelization = true)]
    public sealed class RunsAlone;
}
