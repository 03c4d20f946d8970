using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

public class SweepTests
{
    private static readonly RotationalSpeed[] Speeds =
        [Wren.Rpm(2000), Wren.Rpm(3500), Wren.Rpm(5000), Wren.Rpm(6000), Wren.Rpm(6800), Wren.Rpm(7200)];

    private static readonly Pressure[] Boosts =
        [.. Enumerable.Range(0, 10).Select(step => Pressure.FromBars(step * 0.1))];

    private static readonly FuelConsumption E85 = FuelConsumption.Of(
        Fuel.E85, 0.80, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(455));

    /// <summary>A scan of a thousand boosts at each speed must not find the part failing earlier than the sweep says.</summary>
    [Fact]
    public void LimitReachedAt_AgainstAFineScan_IsTheSamePlace() =>
        Gen.Select(Gen.Double[450, 620], Gen.Double[0.7, 1.3]).Sample(
            (injector, pump) =>
            {
                FuelSystem system = Wren.System(injector: injector, pump: pump, consumption: E85);
                SweepResult sweep = system.Sweep(Speeds, Boosts, Wren.Hill);
                foreach (PartStanding standing in sweep.Standings)
                {
                    double? scanned = Enumerable.Range(0, 91)
                        .Select(step => step * 0.01)
                        .Where(boost => Between.Any(speed => system
                            .Solve(OperatingPoint.At(speed, Pressure.FromBars(boost), Wren.Hill))
                            .Margins.Any(m => m.Part == standing.Part && m.Outcome == Outcome.Fails)))
                        .Select(boost => (double?)boost)
                        .FirstOrDefault();
                    Assert.Equal(scanned is null, standing.LimitReachedAt is null);
                    if (scanned is { } boost)
                    {
                        Assert.InRange(boost - standing.LimitReachedAt!.Boost.Bars, -1e-6, 0.0105);
                    }
                }
            },
            iter: 6);

    // Of the range that the sweeps of these tests span.
    private static readonly RotationalSpeed[] Between =
        [.. Enumerable.Range(0, 53).Select(step => Wren.Rpm(Speeds[0].RevolutionsPerMinute + (step * (Speeds[^1] - Speeds[0]).RevolutionsPerMinute / 52)))];

    [Fact]
    public void Limiting_IsThePartWithTheMinimumBoost() =>
        Gen.Select(Gen.Double[300, 1200], Gen.Double[0.4, 2]).Sample(
            (injector, pump) =>
            {
                SweepResult sweep = Wren.System(injector: injector, pump: pump, consumption: E85)
                    .Sweep(Speeds, Boosts, Wren.Hill);
                double first = sweep.Limiting.LimitReachedAt?.Boost.Pascals ?? double.PositiveInfinity;
                return sweep.Standings.All(s => (s.LimitReachedAt?.Boost.Pascals ?? double.PositiveInfinity) >= first)
                    && (sweep.Verdict.Outcome == Outcome.Fails) == double.IsFinite(first);
            },
            iter: 50);

    [Fact]
    public void Remedies_FittedOneByOne_MakeTheSweepHold()
    {
        SweepResult before = Wren.System(injector: 360, pump: 0.9, consumption: E85).Sweep(Speeds, Boosts, Wren.Hill);
        Assert.Equal(Outcome.Fails, before.Verdict.Outcome);
        VolumeFlow injector = (VolumeFlow)before.Remedies.Single(r => r.Part == Part.Injectors && r.Needed is VolumeFlow).Needed!;
        Remedy pump = before.Remedies.Single(r => r.Part == Part.Pump && r.Needed is VolumeFlow);

        // Scaled so that it delivers the required flow at the maximum set pressure of the failing points.
        double scale = ((VolumeFlow)pump.Needed!).LitersPerHour / Wren.Pump.FlowAt(Wren.Kpa(390)).LitersPerHour;
        SweepResult after = Wren.System(injector: injector.MillilitersPerMinute * (1 + 1e-6), pump: scale * (1 + 1e-6), consumption: E85)
            .Sweep(Speeds, Boosts, Wren.Hill);
        Assert.Equal(Outcome.HoldsAsFarAsJudged, after.Verdict.Outcome);
        Assert.Empty(after.Remedies);

        // The injectors are just large enough: their tightest point, which may lie between the sweep's, is at the limit.
        Assert.Equal(0, after.Standings.Single(standing => standing.Part == Part.Injectors).Tightest.Margin.Reserve!.Value.Percent, 3);
    }

    [Fact]
    public void BoostRemedy_Obeyed_MakesTheSweepHold()
    {
        FuelSystem system = Wren.System(injector: 420);
        SweepResult before = system.Sweep(Speeds, Boosts, Wren.Hill);
        Pressure boost = before.Remedies.Select(r => r.Needed).OfType<Pressure>().Single();
        Assert.InRange(boost.Bars, 0.05, 0.55);
        SweepResult after = system.Sweep(Speeds, [Pressure.Zero, boost * (1 - 1e-6)], Wren.Hill);
        Assert.Equal(Outcome.HoldsAsFarAsJudged, after.Verdict.Outcome);
        Assert.Equal(
            Outcome.Fails, system.Sweep(Speeds, [Pressure.Zero, boost * 1.001], Wren.Hill).Verdict.Outcome);
    }

    [Fact]
    public void MinimumPulseRemedy_Fitted_MakesIdleHold()
    {
        RotationalSpeed[] idle = [Wren.Rpm(850)];
        Pressure[] vacuum = [Pressure.FromBars(-0.65)];
        SweepResult before = Wren.System(injector: 3000).Sweep(idle, vacuum, Wren.Hill);
        VolumeFlow maximum = (VolumeFlow)before.Remedies.Single(r => r.Part == Part.MinimumPulse).Needed!;
        SweepResult after = Wren.System(injector: maximum.MillilitersPerMinute * (1 - 1e-9)).Sweep(idle, vacuum, Wren.Hill);
        Assert.Equal(Outcome.HoldsAsFarAsJudged, after.Verdict.Outcome);
    }

    [Fact]
    public void Remedy_ForInjectorsWithNoPressureAcrossThem_SaysThatNoSizeServes()
    {
        SweepResult sweep = Wren.System(Fixed.At(Wren.Kpa(150)), pump: 4)
            .Sweep([Wren.Rpm(3000)], [Pressure.Zero, Pressure.FromBars(2)], Wren.Hill);
        Remedy remedy = sweep.Remedies.First(r => r.Part == Part.Injectors);
        Assert.Null(remedy.Needed);
        Assert.Contains("No injector size is adequate", remedy.Text.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Remedies_ForRatings_NameThePressure()
    {
        SweepResult sweep = Wren.System(
                RisingRate.From(Wren.Kpa(300), 6, Pressure.Zero),
                pump: 5,
                limits: SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(600)))
            .Sweep([Wren.Rpm(3000)], [Pressure.Zero, Pressure.FromBars(0.6)], Wren.Hill);
        Assert.Equal(660, ((Pressure)sweep.Remedies.Single(r => r.Part == Part.PressureRating && r.Text.ToString().StartsWith("Hoses", StringComparison.Ordinal)).Needed!).Kilopascals, 6);
        Assert.Equal(600, ((Pressure)sweep.Remedies.First(r => r.Part == Part.OpeningPressure).Needed!).Kilopascals, 6);
    }

    [Fact]
    public void Verdict_OfASystemThatHolds_NamesTheTightestMargin()
    {
        SweepResult sweep = Wren.System(injector: 800, pump: 1.5).Sweep(Speeds, Boosts, Wren.Hill);
        Assert.Equal(Outcome.HoldsAsFarAsJudged, sweep.Verdict.Outcome);
        Ratio minimum = sweep.Results.SelectMany(result => result.Margins).Min(margin => margin.Reserve) ?? Ratio.Zero;
        Assert.True(minimum.Percent > 1);
        Assert.Equal(
            $"Holds as far as judged over 0.00 bar to 0.90 bar, 2,000 rev/min to 7,200 rev/min: tightest margin: {sweep.Limiting.Part.Name}, {Readable.Change(minimum)}. "
            + "Not judged: return line; filter; pump feed; wire ampacity; fuse; hoses, fittings and filter; supply line; mixture.",
            sweep.Verdict.Headline.ToString());
        Assert.Null(sweep.Limiting.LimitReachedAt);
    }

    [Fact]
    public void Verdict_WhereTheDataEnds_SaysThatItCannotSay()
    {
        Conditions cranking = Conditions.Of(Atmosphere.Standard, Wren.Volt(9), Temperature.FromDegreesCelsius(20));
        SweepResult sweep = Wren.System(injector: 800, pump: 1.5).Sweep(Speeds, Boosts, cranking);
        Assert.Equal(Outcome.CannotSay, sweep.Verdict.Outcome);
        Assert.StartsWith(
            "Cannot be judged over 0.00 bar to 0.90 bar, 2,000 rev/min to 7,200 rev/min: pump: the lowest curve of pump P was measured at 13.5 V and gives no data for 9.0 V at ",
            sweep.Verdict.Headline.ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void At_OfTheGrid_IsTheResultThere()
    {
        SweepResult sweep = Wren.System().Sweep(Speeds, Boosts, Wren.Hill);
        for (int boost = 0; boost < Boosts.Length; boost++)
        {
            for (int speed = 0; speed < Speeds.Length; speed++)
            {
                Assert.Equal(Speeds[speed], sweep.At(speed, boost).Point.Speed);
                Assert.Equal(Boosts[boost], sweep.At(speed, boost).Point.Boost);
            }
        }
    }

    [Fact]
    public void Notes_OfASweep_SayEachThingOnce()
    {
        FuelConsumption greedy = FuelConsumption.Of(
            Fuel.Petrol, 0.95, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(420));
        Assert.Single(Wren.System(consumption: greedy, pump: 3).Sweep(Speeds, Boosts, Wren.Hill).Notes);
    }

    /// <summary>Of four boosts each is a fifth of the work; required changes are the last.</summary>
    [Fact]
    public void Progress_OfASweep_IsToldBoostByBoost()
    {
        List<double> heard = [];
        Wren.System().Sweep([Wren.Rpm(3000)], Boosts[..4], Wren.Hill, new Listener(share => heard.Add(share.Percent)));
        Assert.Equal([20, 40, 60, 80, 100], heard.Select(share => Math.Round(share, 9)));
    }

    [Fact]
    public void Progress_OfASweepThatIsStopped_EndsThere()
    {
        using CancellationTokenSource stop = new();
        List<double> heard = [];
        Listener listener = new(share =>
        {
            heard.Add(share.Percent);
            stop.Cancel();
        });
        SweepResult sweep = Wren.System(injector: 900, pump: 3).Sweep([Wren.Rpm(3000)], Boosts[..4], Wren.Hill, listener, stop.Token);
        Assert.Equal(Boosts[..1], sweep.Boosts);
        Assert.Equal(20, Assert.Single(heard), 9);
    }

    [Fact]
    public void Sweep_StoppedBeforeItsFirstBoost_HasNoAnswer()
    {
        CancellationToken stopped = new(canceled: true);
        OperationCanceledException error = Assert.Throws<OperationCanceledException>(
            () => Wren.System().Sweep([Wren.Rpm(3000)], Boosts, Wren.Hill, null, stopped));
        Assert.Equal(stopped, error.CancellationToken);
        Assert.Contains("before a boost was done", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Sweep_Stopped_IsTheSweepOfTheFirstBoostsAndNeverHolds()
    {
        using CancellationTokenSource stop = new();
        FuelSystem holding = Wren.System(injector: 900, pump: 3);
        SweepResult sweep = holding.Sweep(Speeds, Boosts[..7], Wren.Hill, Listener.StoppingFrom(37, stop), stop.Token);

        Assert.False(sweep.IsComplete);
        Assert.Equal(Boosts[..3], sweep.Boosts);
        SweepResult shorter = holding.Sweep(Speeds, Boosts[..3], Wren.Hill);
        Assert.Equal(ObjectGraph.Bits(shorter.Results), ObjectGraph.Bits(sweep.Results));
        Assert.Equal(Outcome.HoldsAsFarAsJudged, shorter.Verdict.Outcome);
        Assert.Equal(Outcome.CannotSay, sweep.Verdict.Outcome);
        Assert.Equal("Stopped at 0.20 bar, before 0.60 bar was reached: holds so far.", sweep.Verdict.Headline.ToString());
        Assert.Contains(sweep.Notes, note => note.ToString().Contains("stopped at 0.20 bar of 0.60 bar", StringComparison.Ordinal));
        Assert.DoesNotContain(shorter.Notes, note => note.ToString().Contains("stopped", StringComparison.Ordinal));
    }

    [Fact]
    public void Sweep_StoppedOnceAPartHasFailed_StillFails()
    {
        using CancellationTokenSource stop = new();

        // All is solved by then; the required changes are not.
        SweepResult sweep = Wren.System(injector: 250).Sweep(Speeds, Boosts[..7], Wren.Hill, Listener.StoppingFrom(87, stop), stop.Token);

        Assert.False(sweep.IsComplete);
        Assert.Equal(Boosts[..7], sweep.Boosts);
        Assert.Equal(Outcome.Fails, sweep.Verdict.Outcome);
        Assert.True(sweep.Remedies.Count < Wren.System(injector: 250).Sweep(Speeds, Boosts[..7], Wren.Hill).Remedies.Count);
    }

    /// <summary>
    /// A pump that gives up at once past 370 kPa falls short by everything, yet only after injectors a little too small have done so.
    /// </summary>
    [Fact]
    public void Standings_AreInTheOrderInWhichPartsRunOut()
    {
        SweepResult sweep = Wren.System(injector: 420)
            .With(Pump.From(PumpCurve.At(
                "steep",
                Wren.Volt(13.5),
                (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(400)),
                (Wren.Kpa(370), VolumeFlow.FromLitersPerHour(300)),
                (Wren.Kpa(385), VolumeFlow.Zero))))
            .Sweep(Speeds, Boosts, Wren.Hill);
        PartStanding[] failing = [.. sweep.Standings.Where(standing => standing.LimitReachedAt is not null)];
        Assert.Equal([Part.Injectors, Part.Pump], failing.Select(standing => standing.Part));
        Assert.InRange(failing[1].LimitReachedAt!.Boost.Kilopascals, 70, 85);
        Assert.InRange(failing[0].LimitReachedAt!.Boost.Kilopascals, 10, 60);
        Assert.Equal(-100, failing[1].Tightest.Margin.Reserve!.Value.Percent, 9);
        Assert.True(failing[0].Tightest.Margin.Reserve!.Value.Percent > -50);
    }

    /// <summary>Below the minimum boost there is nothing to search: the speed with the largest shortfall is named.</summary>
    [Fact]
    public void LimitReachedAt_WithinTheMinimumBoost_IsTheWorstSpeed()
    {
        SweepResult sweep = Wren.System(injector: 250, pump: 4).Sweep(Speeds, Boosts[6..], Wren.Hill);
        Assert.True(sweep.At(3, 0).DutyCycle > Wren.Percent(85) && sweep.At(2, 0).DutyCycle > Wren.Percent(85));
        OperatingResult worst = sweep.Results.Take(Speeds.Length)
            .MinBy(result => result.Margins.Single(margin => margin.Part == Part.Injectors).Reserve!.Value.Percent)!;
        Assert.Equal(worst.Point, sweep.Limiting.LimitReachedAt);
        Assert.Equal(Part.Injectors, sweep.Limiting.Part);
    }

    /// <summary>
    /// The curve ends at 330 kPa with 100 L/h: above 0.3 bar the result is "cannot say", until the demand exceeds the maximum measured flow. There it
    /// has run out, and not where the data ends.
    /// </summary>
    [Fact]
    public void LimitReachedAt_PastWhatTheDataCovers_IsWhereThePartSurelyFails()
    {
        SweepResult sweep = Wren.System(injector: 3000)
            .With(Pump.From(PumpCurve.At(
                "ended",
                Wren.Volt(13.5),
                (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(150)),
                (Wren.Kpa(330), VolumeFlow.FromLitersPerHour(100)))))
            .Sweep([Wren.Rpm(6800)], [Pressure.Zero, Pressure.FromBars(0.9)], Wren.Hill);
        OperatingPoint at = sweep.Standings.Single(standing => standing.Part == Part.Pump).LimitReachedAt!;
        Assert.True(at.Boost.Bars > 0.35);
        Assert.Equal(100, sweep.System.Solve(at).InjectedFlow.LitersPerHour * 1.1, 6);
    }

    [Fact]
    public void Notes_OfASweep_TellTheWorstOfEachThing()
    {
        FuelConsumption greedy = FuelConsumption.Of(
            Fuel.Petrol, 0.95, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(420));
        SweepResult sweep = Wren.System(consumption: greedy, pump: 3).Sweep(Speeds, Boosts, Wren.Hill);
        OperatingResult worst = sweep.Results.MaxBy(result => Math.Abs(result.Demand.Difference.Percent))!;
        Assert.Contains($"{Readable.Change(worst.Demand.Difference)} from that calculated from air at {worst.Point}:", Assert.Single(sweep.Notes).ToString(), StringComparison.Ordinal);

        // Under 12 V the curve of 13.5 V is scaled; the pump that gets least is scaled furthest.
        SweepResult weak = Wren.System()
            .With(Pump.From(Wren.WiredCurve(13.5, 1)).WithFeed(PumpAssemblyTests.FeedOf(6, 16)))
            .Sweep([Wren.Rpm(3000)], [Pressure.FromBars(-0.6), Pressure.Zero, Pressure.FromBars(0.9)], Wren.Hill);
        double[] volts = [.. weak.Results.Select(result => result.Circuit.Pumps.Single().Voltage.Volts)];
        Assert.Equal(volts.OrderDescending(), volts);
        Assert.Equal(
            $"pump W at {Readable.Of(Wren.Volt(volts[^1]))} is scaled from its 13.5 V curve by the affinity laws: an estimate. Each check takes the bound that is conservative for it.",
            Assert.Single(weak.Notes).ToString());
    }

    /// <summary>A margin too near to its limit says so wherever the standing is written, and is no margin that holds.</summary>
    [Fact]
    public void Standing_TooNearToItsLimit_SaysSo()
    {
        Limit tightest = Wren.System(injector: 900, pump: 3).Sweep(Speeds, Boosts[..2], Wren.Hill).Standings[0].Tightest;
        Assert.Equal(Outcome.Holds, tightest.Margin.Outcome);
        PartStanding open = new(tightest, null, isOpen: true);
        Assert.Equal(Outcome.CannotSay, open.Outcome);
        Assert.EndsWith(": too near to its limit to be sure of it between the points", open.ToString(), StringComparison.Ordinal);
        Assert.StartsWith(tightest.ToString(), open.ToString(), StringComparison.Ordinal);
        Assert.Equal(tightest.ToString(), new PartStanding(tightest, null, isOpen: false).ToString());
    }

    /// <summary>Speeds that differ in their own unit and not in another are two points, and no error.</summary>
    [Fact]
    public void Sweep_OfSpeedsAHairApart_IsSolved()
    {
        RotationalSpeed slow = RotationalSpeed.FromRevolutionsPerSecond(100);
        RotationalSpeed fast = slow;
        while (slow.RevolutionsPerSecond == fast.RevolutionsPerSecond || slow.RevolutionsPerMinute != fast.RevolutionsPerMinute)
        {
            (slow, fast) = (fast, RotationalSpeed.FromRevolutionsPerSecond(Math.BitIncrement(fast.RevolutionsPerSecond)));
        }

        SweepResult sweep = Wren.System().Sweep([slow, fast], [Pressure.Zero, Pressure.FromBars(0.3)], Wren.Hill);
        Assert.Equal(4, sweep.Results.Count);
    }

    /// <summary>A speed of the sweep at which the engine's tables have a point is one line, not two a rounding apart.</summary>
    [Fact]
    public void Sweep_AtTheTablesOwnSpeeds_SolvesNoneOfThemTwice()
    {
        FuelSystem system = Wren.System(injector: 900, pump: 3);
        int In(UnitsNet.Units.RotationalSpeedUnit unit) => system.Sweep(
            [.. Wren.VolumetricEfficiency.Points.Select(point => point.Speed.ToUnit(unit)).Where(speed => speed < Wren.Rpm(7000))],
            [Pressure.Zero, Pressure.FromBars(0.1)],
            Wren.Hill).PointsSolved;
        Assert.Equal(In(UnitsNet.Units.RotationalSpeedUnit.RevolutionPerMinute), In(UnitsNet.Units.RotationalSpeedUnit.RadianPerSecond));
    }

    [Fact]
    public void Sweep_OutOfOrder_IsRefused() =>
        Assert.Contains(
            "Sort the list",
            Assert.Throws<ArgumentOutOfRangeException>(
                () => Wren.System().Sweep([Wren.Rpm(3000), Wren.Rpm(2000)], Boosts, Wren.Hill)).Message,
            StringComparison.Ordinal);
}
