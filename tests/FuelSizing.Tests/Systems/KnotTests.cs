using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
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

    /// <summary>From where the unit does nothing on: the places are the same, and zero boost is one of them.</summary>
    [Fact]
    public void Boosts_OfAPair_BeginBelowZeroToo() =>
        Same(
            [-50, 0, 62, 80, 90, 130],
            Boosts(Wren.System(RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(310)), RisingRate.From(Pressure.Zero, 6, Pressure.Zero, Wren.Kpa(540)))), -50, 130));

    /// <summary>
    /// The unit sets 1.5 · boost, which never reaches the base regulator's 310 kPa + boost. If its gain counts over the 310 kPa, it has its ceiling of 400 kPa at
    /// 60 kPa, and the base regulator passes that at 90 kPa.
    /// </summary>
    [Fact]
    public void Boosts_OfAGainThatIsOnlyQuoted_AreThoseOfBothReadings()
    {
        RegulatorSeries pair = RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(310)), RisingRate.From(Pressure.Zero, 1.5, Pressure.Zero, Wren.Kpa(400)));
        Same([10, 60, 90, 130], Boosts(Wren.System(pair.WithQuotedGain()), 10, 130));
        Same([10, 130], Boosts(Wren.System(pair), 10, 130));

        // Before a base regulator that itself rises 5 for 1 from 40 kPa on a unit of 2 · boost over its 300 kPa has its ceiling of 400 kPa at 50 kPa, and the base passes that
        // at 52 kPa; at 65 kPa 400 kPa are across the injector.
        RegulatorSeries steep = RegulatorSeries.Of(RisingRate.From(Wren.Kpa(300), 5, Wren.Kpa(40)), RisingRate.From(Pressure.Zero, 2, Pressure.Zero, Wren.Kpa(400)));
        Same([10, 40, 50, 52, 65, 90], Boosts(Wren.System(steep.WithQuotedGain()), 10, 90));
        Same([10, 40, 65, 90], Boosts(Wren.System(steep), 10, 90));
    }

    /// <summary>
    /// 300 kPa + boost + boost²/100 kPa has 400 kPa across the injector at 100 kPa of boost. That lies between two of the 32 places of each piece of 0 to 150 kPa,
    /// 4.6875 kPa apart, where a straight line is off by up to 0.025 kPa here; of 0 to 160 kPa it is one of them.
    /// </summary>
    [Fact]
    public void Boosts_OfALaw_AreLookedForBetweenItsEnds()
    {
        FuelSystem system = Wren.System(CustomRegulator.Of(new Bowed()));
        Same([0, 100, 150], Boosts(system, 0, 150), 2.5e-4);
        Same([0, 100, 160], Boosts(system, 0, 160));
    }

    /// <summary>
    /// Behind that law a unit of 9 · boost takes over where boost² − 800 · boost + 30,000 = 0, at 400 − √130,000 kPa. From there on the differential is 8 · boost,
    /// which passes 400 and 600 kPa.
    /// </summary>
    [Fact]
    public void Boosts_OfAUnitBehindALaw_AreWhereItTakesOverToo() =>
        Same(
            [0, 400 - Math.Sqrt(130_000), 50, 75, 100],
            Boosts(Wren.System(RegulatorSeries.Of(CustomRegulator.Of(new Bowed()), RisingRate.From(Pressure.Zero, 9, Pressure.Zero))), 0, 100),
            1e-4);

    /// <summary>A pump is another just under its switch-off boost, and another just over its switch-on boost: a hundredth of a pascal.</summary>
    [Fact]
    public void Boosts_OfASwitchedPump_AreBothSidesOfItsSwitch() =>
        Same(
            [10, 45 - Beside, 45, 60, 60 + Beside, 100],
            Boosts(Even.With(SwitchedPump.Above(Wren.Kpa(60), Wren.Kpa(45), Pump.From(Wren.Pump))), 10, 100));

    /// <summary>
    /// The hand-over's begin, just above it, and its end. Of 420 kPa less boost the primary set has rows at 400, 300 and 200 kPa; of the secondary set's a row is at
    /// 350 kPa and a measured flow at 150 kPa.
    /// </summary>
    [Fact]
    public void Boosts_OfAHandOver_AreItsEndsAndTheDataOfBothSets() =>
        Same(
            [10, 20, 30, 30 + Beside, 55, 70, 120, 220, 270, 280],
            Boosts(Staged.Wren2(regulator: Fixed.At(Wren.Kpa(420))), 10, 280));

    /// <summary>
    /// A stream that begins at 20 kPa, flows whole from 45 kPa on, and is held at 330 kPa: with 250 kPa across the nozzles as the least that is known, boost takes
    /// that at 80 kPa and all of it at 330 kPa; before the compressor boost takes nothing.
    /// </summary>
    [Fact]
    public void Boosts_OfASecondStream_AreWhereItBeginsIsWholeAndLacksPressure()
    {
        FuelSystem With(SprayPlace place, double? full) => Even.With(SecondStream.Of(
            "stream M",
            StreamFluid.Of(Fuel.Methanol),
            SecondStreams.Spraying(390, place).WithMinimumDifferential(Wren.Kpa(250)),
            Wren.Kpa(20),
            Wren.Kpa(330),
            full: full is { } whole ? Wren.Kpa(whole) : null));
        Same([10, 20 - Beside, 20, 20 + Beside, 45, 80 - Beside, 80 + Beside, 330, 330 + Beside, 340], Boosts(With(SprayPlace.Manifold, 45), 10, 340));
        Same([10, 20 - Beside, 20, 20 + Beside, 45, 340], Boosts(With(SprayPlace.BeforeCompressor, 45), 10, 340));
        Same([10, 20 - Beside, 20, 20 + Beside, 340], Boosts(With(SprayPlace.BeforeCompressor, null), 10, 340));
    }

    /// <summary>
    /// A hand-over by duty cycle begins where the primary set alone would have 60 %: between which of the boosts that is, rising or falling, the place is found; where
    /// none has it, there is none.
    /// </summary>
    [Fact]
    public void HandOver_ByDutyCycle_BeginsWhereThePrimarySetHasThatDutyCycle()
    {
        FuelSystem system = Staged.Wren2(Staged.Of(Staged.ByDutyCycle));
        OperatingResult At(double kilopascals) => system.Solve(OperatingPoint.At(Wren.Rpm(5000), Wren.Kpa(kilopascals), Wren.Hill));
        double Over(double kilopascals) => At(kilopascals) is var at ? HandOverKnots.Over(at.SolvedDemand, at.Judged) : 0;
        double place = Assert.Single(HandOverKnots.ByDutyCycle([-40, 0, 15, 70], Over));
        Assert.Equal(place, Assert.Single(HandOverKnots.ByDutyCycle([70, 15, 0, -40], Over)), 1e-6);
        Assert.True(At(place - 1e-6).SecondaryInjection!.IsIdle);
        Assert.Equal(0.6, At(place - 1e-6).DutyCycle!.Value.DecimalFractions, 1e-6);
        Assert.False(At(place + 1e-6).SecondaryInjection!.IsIdle);
        Assert.Empty(HandOverKnots.ByDutyCycle([-40, -30, place - 0.1], Over));
        Assert.Empty(HandOverKnots.ByDutyCycle([place + 0.1, 50, 70], Over));
    }

    /// <summary>A demand by a law of one's own has the kinks that it states.</summary>
    [Fact]
    public void Knots_OfALawOfDemand_AreThoseThatItStates()
    {
        FuelSystem system = Even.With(Wren.Demand().With(new Stepped()));
        Same([10, 33, 38, 100], Boosts(system, 10, 100));
        Same([800, 2000, 2750, 3500, 5000, 6000, 6200, 6800, 7200], SpeedKnots.Of(system).Select(speed => speed * 60));
    }

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

    // A hundredth of a pascal, in kilopascals.
    private const double Beside = 1e-5;

    /// <summary>A car whose injectors have the same pressure across them everywhere, which is no row of their data.</summary>
    private static FuelSystem Even => Wren.System(ManifoldReferenced.From(Wren.Kpa(310)));

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

    private sealed record Bowed : IRegulatorLaw
    {
        public Statement Text => Statement.Of("own.bowed", $"1:1 from {Wren.Kpa(300)}, and the square of boost");

        public IReadOnlyList<Pressure> Kinks => [];

        public Pressure RailGauge(Pressure boost) => Wren.Kpa(300 + boost.Kilopascals + (boost.Kilopascals * boost.Kilopascals / 100));
    }

    private sealed record Stepped : IFuelDemandLaw
    {
        public Statement Text => Statement.Of("own.stepped", $"more from {Wren.Kpa(33)} on");

        public bool FollowsEstimate => true;

        public IReadOnlyList<RotationalSpeed> SpeedKinks => [Wren.Rpm(2750)];

        public IReadOnlyList<Pressure> BoostKinks => [Wren.Kpa(38), Wren.Kpa(33)];

        public MassFlow FuelAt(DemandPlace place) => place.Estimate.MassFlow * (1 + (0.1 * Math.Clamp((place.Boost.Kilopascals - 33) / 5, 0, 1)));
    }
}
