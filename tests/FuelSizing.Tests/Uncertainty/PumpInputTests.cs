using FuelSizing.Bench;
using FuelSizing.Electrical;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>Pumps and their wiring that are not known exactly: a drawn system is the one that is built with pump or feed changed by hand.</summary>
public class PumpInputTests
{
    /// <summary>All pumps deliver 90 %: as pumps in a condition of 90 % do, a worn one and a switched one too.</summary>
    [Fact]
    public void PumpFlow_Drawn_IsThatOfPumpsInSuchACondition()
    {
        SwitchedPump second = SwitchedPump.Above(Wren.Kpa(30), Wren.Kpa(20), Wired("pump S", 1));
        FuelSystem car = UncertainWren.Car().With(PumpParallel.Of(Wired("pump R", 0.8), second));
        UncertainSystem unsure = UncertainSystem.Of(car, UncertainWren.Point, UncertainInput.PumpFlowFactor(Distribution.Fixed(Wren.Percent(90))));
        OperatingResult drawn = UncertainWren.Solved(unsure, unsure.Drawn([0.5]));
        FuelSystem byHand = car.With(PumpParallel.Of(Wired("pump R", 0.72), SwitchedPump.Above(Wren.Kpa(30), Wren.Kpa(20), Wired("pump S", 0.9))));
        Assert.Equal(
            byHand.Solve(UncertainWren.Point).Circuit!.PumpFlow!.Value.LitersPerHour, drawn.Circuit!.PumpFlow!.Value.LitersPerHour, 1e-9);
    }

    /// <summary>40 mΩ more in the feed: as with a contact of 40 mΩ more described.</summary>
    [Fact]
    public void FeedResistance_Drawn_IsThatOfOneMoreContact()
    {
        FuelSystem car = UncertainWren.Car().With(Wired("pump R", 1));
        UncertainSystem unsure = UncertainSystem.Of(car, UncertainWren.Point, UncertainInput.FeedResistanceOffset(Distribution.Fixed(ElectricResistance.FromMilliohms(40))));
        OperatingResult drawn = UncertainWren.Solved(unsure, unsure.Drawn([0.5]));
        FuelSystem byHand = car.With(Wired("pump R", 1, Contact.Of("joint", ElectricResistance.FromMilliohms(40))));
        Assert.Equal(
            byHand.Solve(UncertainWren.Point).Circuit!.PumpFlow!.Value.LitersPerHour, drawn.Circuit!.PumpFlow!.Value.LitersPerHour, 1e-9);
        Assert.NotEqual(car.Solve(UncertainWren.Point).Circuit!.PumpFlow!.Value.LitersPerHour, drawn.Circuit!.PumpFlow!.Value.LitersPerHour, 1e-3);
    }

    [Fact]
    public void FeedResistance_OfAPumpWithoutAFeed_IsRefused() =>
        Assert.Contains(
            "Describe the wiring by Pump.WithFeed",
            Assert.Throws<ArgumentException>(() => UncertainWren.Of(UncertainInput.FeedResistanceOffset(Distribution.Fixed(ElectricResistance.FromMilliohms(40))))).Message,
            StringComparison.Ordinal);

    /// <summary>From the bench: the widest interval of a set point, and what a joint has more than was described.</summary>
    [Fact]
    public void Benches_GiveInputs_AsWideAsTheirIntervals()
    {
        PumpFlowFit pump = PumpFlowFit.Of(PumpFlowTest.Weighed(
            "pump S",
            TestFluid.Heptane,
            Mass.FromGrams(2),
            Duration.FromSeconds(0.1),
            GaugeAccuracy.Of(Wren.Kpa(1), Wren.Kpa(2), Wren.Percent(0.5)),
            Wren.Percent(0.2),
            Wren.Percent(0.2),
            [.. new[] { (0.0, 1214.0), (0, 1209), (200, 1043), (200, 1047), (400, 861), (400, 864) }.Select(point => PumpFlowReading.OfMass(
                Wren.Kpa(point.Item1), Wren.Volt(13.5), Mass.FromGrams(point.Item2), Duration.FromSeconds(30)))]));
        double widest = pump.Points.Max(point => (point.MaximumFlow - point.MinimumFlow) / point.Flow / 2);
        UncertainInput flow = pump.ToUncertainInput();
        Assert.Equal("pump flow", flow.Name);
        Assert.Equal(1 + widest, ((Ratio)flow.ValueAt(Wren.Percent(97.5))).DecimalFractions, 1e-4 * widest * 10);

        (double Amperes, double Millivolts)[] drops = [(0, 0.4), (4, 101), (4, 102), (8, 202), (12, 305), (16, 405)];
        VoltageDropFit drop = VoltageDropFit.Of(VoltageDropTest.Of(
            "ground stud",
            ElectricPotential.FromMillivolts(0.8),
            ElectricPotential.FromMillivolts(0.5),
            ElectricCurrent.FromMilliamperes(20),
            Wren.Percent(0.8),
            [.. drops.Select(point => VoltageDropReading.Of(ElectricCurrent.FromAmperes(point.Amperes), ElectricPotential.FromMillivolts(point.Millivolts)))]));
        UncertainInput more = drop.InputOver(ElectricResistance.FromMilliohms(5));
        Assert.Equal(drop.Resistance.Milliohms - 5, ((ElectricResistance)more.ValueAt(Wren.Percent(50))).Milliohms, 1e-6);
        Assert.Equal(drop.MaximumResistance.Milliohms - 5, ((ElectricResistance)more.ValueAt(Wren.Percent(97.5))).Milliohms, 1e-3);
    }

    private static Pump Wired(string name, double condition, params Contact[] joints) => Pump.Of(
        [
            PumpCurve.WithCurrent(
                name,
                Wren.Volt(11),
                (Wren.Kpa(0), Litres(215), ElectricCurrent.FromAmperes(4.5)),
                (Wren.Kpa(300), Litres(150), ElectricCurrent.FromAmperes(7.5)),
                (Wren.Kpa(600), Litres(20), ElectricCurrent.FromAmperes(11))),
            PumpCurve.WithCurrent(
                name,
                Wren.Volt(13.5),
                (Wren.Kpa(0), Litres(260), ElectricCurrent.FromAmperes(5)),
                (Wren.Kpa(300), Litres(210), ElectricCurrent.FromAmperes(8)),
                (Wren.Kpa(700), Litres(60), ElectricCurrent.FromAmperes(12))),
        ],
        condition: Ratio.FromDecimalFractions(condition),
        feed: Feed.Of($"feed of {name}", Conductor.Awg(14), Length.FromMeters(4), Length.FromMeters(4), Temperature.FromDegreesCelsius(60), [Contact.DefaultFuse, .. joints]));

    private static VolumeFlow Litres(double perHour) => VolumeFlow.FromLitersPerHour(perHour);
}
