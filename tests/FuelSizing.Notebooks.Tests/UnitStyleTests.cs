using System.Text.RegularExpressions;
using FuelSizing.Interactive;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>A style turns every table, plot and sheet to US customary units: nothing metric is left over.</summary>
public sealed partial class UnitStyleTests
{
    private static readonly TextStyle Us = TextStyle.UsCustomary;

    private static readonly SweepResult Swept = SizingSheetTests.Sweep();

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
            SizingTables.Steps(busiest, Us),
            SizingTables.Demand(Swept, Us),
            SizingTables.Standings(Swept, Us),
            SizingTables.Circuit(busiest, Us),
            SizingTables.Circuits("circuits", Us, ("one", busiest)),
            SizingTables.Wiring("wiring", Us, ("one", busiest)),
            SizingPlots.RailPressure(Swept, 1, Us),
            SizingPlots.DutyCycle(Swept, Us),
            SizingPlots.PumpAgainstDemand(Swept, Us),
            SizingPlots.SystemCurve("curve", Us, ("one", busiest)),
            SizingCallouts.Verdict(Swept.Verdict, Us),
            SizingCallouts.Remedies(Swept, Us),
            UncertaintyTables.Inputs(unsure, Us),
            UncertaintyPlots.Tornado(unsure.Tornado(SystemOutput.RailGauge), Us),
            new SizingSheet(Swept, "In the other units", style: Us),
            new PullSheet(PullSheetTests.Pull, "In the other units", style: Us),
        ];

        foreach (IDisplayBlock block in blocks)
        {
            Match metric = Metric().Match(block.ToPlainText());
            Assert.False(metric.Success, $"{block.ToPlainText().Split('\n')[0]}: …{metric.Value}…");
        }

        Assert.Contains("psi", blocks[6].ToPlainText(), StringComparison.Ordinal);

        // The same blocks in metric units show that the search above finds them.
        IDisplayBlock[] metricBlocks =
            [SizingTables.Steps(busiest), SizingTables.Circuit(busiest), SizingPlots.RailPressure(Swept, 1), new SizingSheet(Swept, "In metric units")];
        Assert.All(metricBlocks, block => Assert.Matches(Metric(), block.ToPlainText()));
    }

    [GeneratedRegex(@".{0,40}[0-9(] *(kPa|bar|L/h|g/s|kW|°C|kg/m³|g/kWh|m)(?![\w/²³])", RegexOptions.CultureInvariant)]
    private static partial Regex Metric();
}
