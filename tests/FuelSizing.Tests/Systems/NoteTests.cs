using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>What a result says of its own doubts: each where it has them, and nothing where it has none.</summary>
public class NoteTests
{
    private static readonly FuelConsumption Greedy = FuelConsumption.Of(
        Fuel.Petrol, 0.95, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(420));

    [Fact]
    public void Result_WithoutDoubts_HasNoNotes() => Assert.Empty(Wren.System().Solve(Wren.At(3000, 0)).Notes);

    /// <summary>Without boost and with it; not on a closed throttle, which a measured full-load power does not cover.</summary>
    [Fact]
    public void Demands_ThatDisagree_AreTold()
    {
        FuelSystem system = Wren.System(consumption: Greedy, pump: 3);
        foreach (double boost in new[] { 0, 0.5 })
        {
            OperatingResult result = system.Solve(Wren.At(5000, boost));
            Assert.True(Math.Abs(result.Demand.Difference.Percent) > 15);
            Assert.StartsWith(
                $"Fuel calculated from power differs by {Readable.Change(result.Demand.Difference)} from that calculated from air at 5,000 rev/min, {Readable.Boost(result.Point.Boost)}: ",
                Assert.Single(result.Notes).ToString(),
                StringComparison.Ordinal);
        }

        OperatingResult shut = system.Solve(Wren.At(5000, -0.5));
        Assert.True(Math.Abs(shut.Demand.Difference.Percent) > 15);
        Assert.Empty(shut.Notes);
    }

    [Fact]
    public void DeadTime_KnownAtOnePressureOnly_IsToldToBeAnEstimate()
    {
        Injector simple = Injector.Of(
            "injector S",
            VolumeFlow.FromMillilitersPerMinute(500),
            Wren.Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1.8)), (Wren.Volt(16), Wren.Ms(0.7))),
            Wren.Ms(1.6),
            Wren.Kpa(550));
        Assert.Equal(
            "Dead time is taken to be the same at every pressure: an estimate.",
            Assert.Single(Wren.System().With(InjectorSet.Of(simple, 4)).Solve(Wren.At(3000, 0)).Notes).ToString());
    }

    [Fact]
    public void Pump_OnMoreVoltageThanItsCurves_IsToldToBeTakenUnchanged()
    {
        Conditions strong = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(14.4), Wren.Hill.FuelTemperature);
        Assert.Equal(
            "The highest curve of pump P, 13.5 V, is used unchanged at 14.4 V for what the pump delivers at the least; return line, inlet, filter, pressure and current are judged by the most that it may deliver there.",
            Assert.Single(Wren.System().Solve(OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(0), strong)).Notes).ToString());
    }
}
