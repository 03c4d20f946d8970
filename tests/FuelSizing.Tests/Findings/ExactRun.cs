using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>
/// A run without scatter: the forward solver's car on the dynamometer, one row at each of two voltages, four boosts and eight speeds,
/// and every channel just what it should read. What is found of it can be worked out by hand.
/// </summary>
internal static class ExactRun
{
    private static readonly double[] Boosts = [-0.3, 0.05, 0.35, 0.6];
    private static readonly double[] Speeds = [2600, 3100, 3700, 4300, 4900, 5500, 6100, 6600];

    /// <summary>Fuel temperature of every row.</summary>
    public static Temperature Fuel { get; } = Temperature.FromDegreesCelsius(35);

    /// <summary>The results of the rows, in their order.</summary>
    public static IReadOnlyList<OperatingResult> Solved(FuelSystem car) =>
    [
        .. from volts in new[] { 13.5, 12.6 }
           from boost in Boosts
           from rpm in Speeds
           select car.Solve(OperatingPoint.At(
               Wren.Rpm(rpm), Pressure.FromBars(boost), Conditions.Of(PulledWren.Air, ElectricPotential.FromVolts(volts), Fuel))),
    ];

    /// <summary>The run of a car; power as the plan's BSFC makes it of the fuel, lambda as planned.</summary>
    public static RecordedRun Of(FuelSystem car) => RecordedRun.Of("exact", PulledWren.Air, Solved(car).Select((at, i) => RunRow.Of(
        i + 1,
        at.Point.Speed,
        Duration.FromSeconds(i * 0.1),
        at.Demand.ManifoldAbsolute,
        at.RailGauge,
        at.Pulse,
        lambda: 0.82,
        batteryVoltage: at.Point.Conditions.SupplyVoltage,
        power: Power.FromWatts(at.Demand.MassFlow.KilogramsPerSecond / car.Demand.Consumption.BrakeSpecificFuelConsumption.KilogramsPerJoule),
        fuelTemperature: Fuel,
        fuelVolumeFlow: at.InjectedFlow)));

    /// <summary>A run with its cells changed, row by row.</summary>
    public static RecordedRun Changed(RecordedRun run, Func<Cells, int, Cells> change) =>
        RecordedRun.Of(run.Name, run.Atmosphere, run.Rows.Select((row, i) => change(Cells.Of(row), i).Row((int)row.Line)));
}
