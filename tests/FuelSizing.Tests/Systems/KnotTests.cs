using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>Where something about a system bends: each place worked by hand from the parts' own figures.</summary>
public class KnotTests
{
    private static readonly Induction Belt = Induction.BeltDriven(Wren.Percent(66), Wren.Percent(60), Pressure.Zero, Wren.Percent(95));

    /// <summary>
    /// 300 kPa and gain 1 up to 20 kPa of boost, gain 4 to the ceiling of 480 kPa: 320 kPa + 4 · 40 kPa, at 60 kPa. The differential is 300 kPa up to
    /// 20 kPa of boost, rises 3 for 1 to 420 kPa, and falls 1 for 1 after that: it passes the dead times' row of 400 kPa at 20 + 100/3 and at 80 kPa.
    /// </summary>
    [Fact]
    public void Boosts_OfARisingRate_AreOnsetCeilingAndRowsOfDeadTime() =>
        Same([-50, 0, 20, 53.333333333, 60, 80, 100], Boosts(Wren.System(RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(20), Wren.Kpa(480))), -50, 100));

    /// <summary>
    /// With a stop under what the onset sets, the ceiling is reached with gain 1: 310 kPa at 10 kPa. Above it the differential falls: 200 kPa at 110. 25 kPa,
    /// where the line above the onset, carried on backwards, has the ceiling, is a place too many and does no harm.
    /// </summary>
    [Fact]
    public void Boosts_OfACeilingUnderTheOnset_AreWhereGainOneReachesIt() =>
        Same([5, 10, 25, 30, 110, 120], Boosts(Wren.System(RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(30), Wren.Kpa(310))), 5, 120));

    /// <summary>A fixed 420 kPa less boost passes 400, 300 and 200 kPa; one that follows the manifold passes none.</summary>
    [Fact]
    public void Boosts_OfASteadyRegulator_AreThoseOfTheDeadTimes()
    {
        Same([-30, 0, 20, 120, 150], Boosts(Wren.System(Fixed.At(Wren.Kpa(420))), -30, 150));
        Same([10, 150], Boosts(Wren.System(ManifoldReferenced.From(Wren.Kpa(310))), 10, 150));
    }

    /// <summary>A fixed 420 kPa passes a flow measured at 360 kPa across the injector at 60 kPa of boost.</summary>
    [Fact]
    public void Boosts_OfMeasuredFlows_AreThoseOfTheirPressures() =>
        Same([-30, 0, 20, 60, 120, 150], Boosts(
            Wren.System(Fixed.At(Wren.Kpa(420))).With(InjectorSet.Of(
                Wren.InjectorOf(400).WithMeasuredFlows((Wren.Kpa(360), UnitsNet.VolumeFlow.FromMillilitersPerMinute(441))), 4)),
            -30,
            150));

    /// <summary>A unit that sets 6 · boost passes 310 kPa + boost at 62 kPa and its ceiling of 540 kPa at 90 kPa; between them the differential is 5 · boost.</summary>
    [Fact]
    public void Boosts_OfAPair_AreWhereTheUnitTakesOverToo() =>
        Same(
            [10, 62, 80, 90, 130],
            Boosts(Wren.System(RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(310)), RisingRate.From(Pressure.Zero, 6, Pressure.Zero, Wren.Kpa(540)))), 10, 130));

    /// <summary>Limits of the mixture count by boost, a controller's sensor by absolute pressure: 150 kPa is 55 kPa of boost at 95 kPa.</summary>
    [Fact]
    public void Boosts_OfMixtureAndController_AreThoseOfLimitAndSensor()
    {
        FuelSystem system = Wren.System()
            .With(SizingLimits.Default.With(MixtureLimits.ByBoost([(Wren.Kpa(12), 0.9), (Wren.Kpa(70), 0.85)])))
            .With(SpeedDensityController.Of(ControllerData.Of(Wren.InjectorOf(360), Fuel.Petrol, TargetLambda.At(0.84)), Wren.VolumetricEfficiency, Wren.Kpa(150)));
        Same([0, 12, 55, 70, 90], Boosts(system, 0, 90));
        Same([20, 55, 60], Boosts(system, 20, 60));
    }

    [Fact]
    public void Speeds_AreThoseOfTheEnginesAndTheControllersTables()
    {
        FuelSystem system = Wren.System().With(RecordedPulseController.BySpeed((Wren.Rpm(1100), Wren.Ms(9)), (Wren.Rpm(5300), Wren.Ms(8.5)), (Wren.Rpm(7100), Wren.Ms(7.5))));
        Same([800, 2000, 3500, 5000, 6000, 6200, 6800, 7200], SpeedKnots.Of(system.Demand).Select(speed => speed * 60));
        Same([800, 1100, 2000, 3500, 5000, 5300, 6000, 6200, 6800, 7100, 7200], SpeedKnots.Of(system).Select(speed => speed * 60));
    }

    /// <summary>
    /// Boost along a straight line, 1 kPa for 40 rev/min from 2,000: the rising rate's 20, 53⅓, 60 and 80 kPa lie at 2,800, 4,133⅓, 4,400 and 5,200.
    /// </summary>
    [Fact]
    public void Speeds_AlongALine_AreAlsoWhereItCrossesABoostThatBends()
    {
        FuelSystem system = Wren.System(RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(20), Wren.Kpa(480))).With(Wren.Demand(induction: Belt));
        BoostLine line = MeasuredBoost.Of((Wren.Rpm(2000), Pressure.Zero), (Wren.Rpm(4800), Wren.Kpa(70)), (Wren.Rpm(6400), Wren.Kpa(110)));
        Same([2800, 3500, 4133.333333333, 4400, 4800, 5000, 5200], Along(system, line, 2200, 6000));
        Same([3500, 4133.333333333, 4400], Along(system, line, 2900, 4700));
    }

    /// <summary>r^((γ−1)/γ) − 1 goes with the square of the speed: without a cooler's drop, in the air of the known point, nothing else counts.</summary>
    [Fact]
    public void Speeds_AlongACompressorsLine_LieOnItsCurve()
    {
        FuelSystem system = Wren.System(RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(20), Wren.Kpa(480))).With(Wren.Demand(induction: Belt));
        BoostLine line = CentrifugalBoost.From(8.3, Wren.Rpm(6000), Wren.Kpa(70), Wren.Hill.Atmosphere);
        double ambient = Wren.Hill.Atmosphere.Pressure.Kilopascals;
        double exponent = 0.4 / 1.4;
        double SpeedOf(double boost) => 6000 * Math.Sqrt((Math.Pow(1 + (boost / ambient), exponent) - 1) / (Math.Pow(1 + (70 / ambient), exponent) - 1));
        Same([SpeedOf(20), 3500, 5000, SpeedOf(53.333333333), SpeedOf(60), 6000, 6200], Along(system, line, 2100, 6300), 1e-5);
    }

    private static IEnumerable<double> Boosts(FuelSystem system, double minimum, double maximum) =>
        BoostKnots.Of(system, 95e3, minimum * 1e3, maximum * 1e3).Select(boost => boost / 1e3);

    private static IEnumerable<double> Along(FuelSystem system, BoostLine line, double slowest, double fastest) =>
        LineKnots.Of(system, line, Wren.Hill, slowest / 60, fastest / 60).Select(speed => speed * 60);

    /// <summary>The same places, whatever their order, and each as often as it may be.</summary>
    private static void Same(double[] expected, IEnumerable<double> actual, double share = 1e-10)
    {
        List<double> places = [];
        foreach (double place in actual.Order())
        {
            if (places.Count == 0 || place - places[^1] > 1e-6)
            {
                places.Add(place);
            }
        }

        Assert.Equal(expected.Length, places.Count);
        Assert.All(expected.Zip(places), pair => Assert.Equal(pair.First, pair.Second, Math.Max(1e-9, share * pair.First)));
    }
}
