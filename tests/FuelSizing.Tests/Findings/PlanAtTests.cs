using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>The plan at a recorded row is the plan solved there; outside its tables there is none.</summary>
public class PlanAtTests
{
    private static readonly RunCheck Check = RunCheck.Of(Wren.System(), Wren.Hill);

    private static readonly Atmosphere Air = Wren.Hill.Atmosphere;

    [Fact]
    public void PlanAt_ARowWithItsOwnVoltageAndFuel_IsThePlanSolvedThere()
    {
        var conditions = Conditions.Of(Air, Wren.Volt(12.1), Temperature.FromDegreesCelsius(41));
        var wanted = Check.Plan.Solve(OperatingPoint.At(Wren.Rpm(5200), Pressure.FromBars(0.4), conditions));

        OperatingResult? found = Check.PlanAt(Row(5200, 0.4, Wren.Volt(12.1), Temperature.FromDegreesCelsius(41)), Air);

        Assert.Equal(wanted.Pulse!.Value.Seconds, found!.Pulse!.Value.Seconds, 12);
        Assert.Equal(wanted.RailGauge.Pascals, found.RailGauge.Pascals, 6);
    }

    [Fact]
    public void PlanAt_ARowWithoutVoltageAndFuel_TakesThePlanned() =>
        Assert.Equal(Wren.Hill, Check.PlanAt(Row(5200, 0.4), Air)!.Point.Conditions);

    [Theory]
    [InlineData(300, 0.0)]
    [InlineData(9500, 0.0)]
    [InlineData(5000, 4.5)]
    [InlineData(5000, -0.88)]
    public void PlanAt_ARowOutsideThePlan_IsNone(double rpm, double bars) => Assert.Null(Check.PlanAt(Row(rpm, bars), Air));

    [Theory]
    [InlineData(4.0, 20.0)]
    [InlineData(21.0, 20.0)]
    [InlineData(13.0, 95.0)]
    [InlineData(13.0, -40.0)]
    public void PlanAt_AVoltageOrFuelThatNobodyPlansFor_IsNone(double volts, double celsius) =>
        Assert.Null(Check.PlanAt(Row(5000, 0.3, Wren.Volt(volts), Temperature.FromDegreesCelsius(celsius)), Air));

    /// <summary>Fuels are given from −30 to 80 °C, both of them included.</summary>
    [Theory]
    [InlineData(-30)]
    [InlineData(80)]
    public void PlanAt_AFuelAtTheEndOfItsRange_IsSolved(double celsius) =>
        Assert.Equal(celsius, Check.PlanAt(Row(5000, 0.3, fuel: Temperature.FromDegreesCelsius(celsius)), Air)!.Point.Conditions.FuelTemperature.DegreesCelsius, 9);

    [Fact]
    public void PlanAt_ARowWithoutManifoldPressure_OrNeverFilled_IsNone()
    {
        Assert.Null(Check.PlanAt(RunRow.Of(1, Wren.Rpm(5000)), Air));
        Assert.Null(Check.PlanAt(default, Air));
    }

    [Fact]
    public void PlanAt_WithoutAir_IsRefused() => Assert.Throws<ArgumentNullException>(() => Check.PlanAt(Row(5000, 0), null!));

    /// <summary>A drawing engine's sensor may show a little boost at full throttle: scatter, which the plan has none of.</summary>
    [Fact]
    public void PlanAt_ADrawingEngineWithAScatteringSensor_IsAtNoBoost()
    {
        var check = RunCheck.Of(OddRunTests.Plan("drawn"));

        Assert.Equal(Pressure.Zero, check.PlanAt(Row(4000, 0.03, atmosphere: Atmosphere.Standard), Atmosphere.Standard)!.Point.Boost);
        Assert.Null(check.PlanAt(Row(4000, 0.1, atmosphere: Atmosphere.Standard), Atmosphere.Standard));
    }

    private static RunRow Row(
        double rpm, double bars, ElectricPotential? battery = null, Temperature? fuel = null, Atmosphere? atmosphere = null) =>
        RunRow.Of(
            3,
            Wren.Rpm(rpm),
            manifoldAbsolute: (atmosphere ?? Air).Pressure + Pressure.FromBars(bars),
            batteryVoltage: battery,
            fuelTemperature: fuel);
}
