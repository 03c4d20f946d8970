using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Selection;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>
/// A second pump that a pressure switch runs above a boost. Each state is compared with a system that is described in that state, without a switch.
/// </summary>
public class SwitchedPumpTests
{
    private static readonly FuelConsumption E85 = FuelConsumption.Of(
        Fuel.E85, 0.80, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(455));

    private static readonly Pump First = Pump.From(Wren.PumpOf(0.9));

    private static readonly Pump Second = Pump.From(Wren.PumpOf(0.8));

    private static readonly Pressure On = Wren.Kpa(40);

    private static readonly Pressure Off = Wren.Kpa(30);

    private static readonly FuelSystem Staged = With(PumpParallel.Of(First, SwitchedPump.Above(On, Off, Second)));

    private static readonly FuelSystem OffAll = With(First);

    private static readonly FuelSystem OnAll = With(PumpParallel.Of(First, Second));

    [Theory]
    [InlineData(-40, false)]
    [InlineData(29.9, false)]
    [InlineData(40.1, true)]
    [InlineData(90, true)]
    public void OutsideTheBand_TheSystemIsThatOfItsOnePumpState(double kilopascals, bool on)
    {
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(6500), Wren.Kpa(kilopascals), Wren.Hill);
        OperatingResult staged = Staged.Solve(point);
        OperatingResult plain = (on ? OnAll : OffAll).Solve(point);
        Assert.Null(staged.Falling);
        Assert.Equal(plain.PumpFlow, staged.PumpFlow);
        Assert.Equal(plain.RailGauge, staged.RailGauge);
        Assert.Equal(plain.Margins.Select(margin => margin.ToString()), staged.Margins.Select(margin => margin.ToString()));
        Assert.Equal(on, staged.Circuit.Pumps[1].IsRunning);
    }

    /// <summary>The curve at a boost that has risen is that of the pumps that run there.</summary>
    [Theory]
    [InlineData(-40, false)]
    [InlineData(40, false)]
    [InlineData(40.1, true)]
    public void CurveAtBoost_IsThatOfThePumpsThatRun(double kilopascals, bool on)
    {
        ElectricPotential supply = Wren.Volt(13.5);
        Temperature temperature = Temperature.FromDegreesCelsius(20);

        Assert.Equal(
            (on ? OnAll : OffAll).Pump.CurveOf(Fuel.E85, temperature, supply, 21).Select(point => (Math.Round(point.PressureRise.Pascals, 3), Math.Round(point.Flow.LitersPerHour, 6))),
            Staged.Pump.CurveAtBoost(Fuel.E85, temperature, supply, Wren.Kpa(kilopascals), 21).Select(point => (Math.Round(point.PressureRise.Pascals, 3), Math.Round(point.Flow.LitersPerHour, 6))));
    }

    /// <summary>Between switch-off and switch-on both states occur on every pull: each check counts with the worse.</summary>
    [Theory]
    [InlineData(30)]
    [InlineData(36)]
    [InlineData(40)]
    public void InTheBand_EachMarginIsTheWorseOfBothStates(double kilopascals)
    {
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(6500), Wren.Kpa(kilopascals), Wren.Hill);
        OperatingResult staged = Staged.Solve(point);
        (OperatingResult rising, OperatingResult falling) = (OffAll.Solve(point), OnAll.Solve(point));
        Assert.Equal(rising.PumpFlow, staged.PumpFlow);
        Assert.Equal(falling.PumpFlow, staged.Falling!.PumpFlow);
        Assert.NotEmpty(staged.Margins);
        foreach ((Margin both, Margin one, Margin other) in staged.Margins.Zip(rising.Margins, falling.Margins))
        {
            Assert.Equal(Math.Min(one.Share!.Value, other.Share!.Value), both.Share!.Value);
        }

        // The pump is the shorter as boost rises, the return line the fuller as it falls.
        Assert.Equal(Part.Pump, staged.Margins.Single(margin => margin.Part == Part.Pump).Part);
        Assert.DoesNotContain("boost falls", staged.Margins.Single(margin => margin.Part == Part.Pump).Explanation, StringComparison.Ordinal);
        Assert.EndsWith(
            ", as boost falls and pump S may still be at full speed",
            staged.Margins.Single(margin => margin.Part == Part.ReturnLine).Explanation.Replace(Second.Name, "pump S", StringComparison.Ordinal),
            StringComparison.Ordinal);
    }

    [Fact]
    public void PumpThatNeverSwitchesOn_IsAbsent()
    {
        FuelSystem never = With(PumpParallel.Of(First, SwitchedPump.Above(Wren.Kpa(400), Wren.Kpa(399), Second)));
        Gen.Select(Gen.Double[2000, 7000], Gen.Double[-60, 120]).Sample(
            (rpm, kilopascals) =>
            {
                OperatingPoint point = OperatingPoint.At(Wren.Rpm(rpm), Wren.Kpa(kilopascals), Wren.Hill);
                (OperatingResult with, OperatingResult without) = (never.Solve(point), OffAll.Solve(point));
                Assert.Equal(without.RailGauge.Pascals, with.RailGauge.Pascals, 1e-9 * without.RailGauge.Pascals);
                Assert.Equal(without.PumpFlow!.Value.LitersPerHour, with.PumpFlow!.Value.LitersPerHour, 1e-7);
                foreach ((Margin one, Margin other) in without.Margins.Zip(with.Margins))
                {
                    Assert.Equal(one.Outcome, other.Outcome);
                    Assert.Equal(one.Share ?? 0, other.Share ?? 0, 1e-9);
                }
            },
            iter: 50);
    }

    /// <summary>Two speeds and two boosts, neither of them in the band: what fails only there must not be green.</summary>
    [Fact]
    public void Sweep_FindsWhatFailsOnlyBeforeTheSwitch()
    {
        FuelSystem late = With(PumpParallel.Of(First, SwitchedPump.Above(Wren.Kpa(60), Wren.Kpa(50), Second)));
        FuelSystem early = With(PumpParallel.Of(First, SwitchedPump.Above(Wren.Kpa(10), Wren.Kpa(5), Second)));
        RotationalSpeed[] speeds = [Wren.Rpm(3000), Wren.Rpm(7000)];
        Pressure[] boosts = [Wren.Kpa(0), Wren.Kpa(70)];
        SweepResult found = late.Sweep(speeds, boosts, Wren.Hill);
        PartStanding pump = found.Standings.Single(standing => standing.Part == Part.Pump);
        Assert.Equal(Outcome.Holds, late.Solve(OperatingPoint.At(speeds[1], boosts[1], Wren.Hill)).Margins.Single(m => m.Part == Part.Pump).Outcome);
        Assert.Equal(Outcome.Fails, pump.Outcome);
        Assert.Equal(60, pump.Tightest.Point.Boost.Kilopascals, 1e-3);
        Assert.Equal(Outcome.Holds, early.Sweep(speeds, boosts, Wren.Hill).Standings.Single(standing => standing.Part == Part.Pump).Outcome);
    }

    /// <summary>Random switches, coarse sweeps: none holds where a scan of both states finds a failing point.</summary>
    [Fact]
    public void Sweep_ThatHolds_HoldsInBothStatesOfADenseScan()
    {
        int holding = 0;
        int failing = 0;
        Gen.Select(Gen.Double[0.5, 1.4], Gen.Double[0.3, 1.2], Gen.Double[5, 95], Gen.Double[0.5, 30]).Sample(
            (one, other, on, hysteresis) =>
            {
                Pump first = Pump.From(Wren.PumpOf(one));
                Pump second = Pump.From(Wren.PumpOf(other));
                SweepResult sweep = With(PumpParallel.Of(first, SwitchedPump.Above(Wren.Kpa(on), Wren.Kpa(on - hysteresis), second)))
                    .Sweep([Wren.Rpm(2500), Wren.Rpm(7000)], [Wren.Kpa(0), Wren.Kpa(90)], Wren.Hill);
                (FuelSystem off, FuelSystem both) = (With(first), With(PumpParallel.Of(first, second)));
                HashSet<Part> fails = [];
                for (int speed = 0; speed <= 12; speed++)
                {
                    for (int boost = 0; boost <= 36; boost++)
                    {
                        OperatingPoint point = OperatingPoint.At(Wren.Rpm(2500 + (375 * speed)), Wren.Kpa(2.5 * boost), Wren.Hill);
                        FuelSystem[] states =
                        [
                            .. point.Boost.Kilopascals <= on ? [off] : Array.Empty<FuelSystem>(),
                            .. point.Boost.Kilopascals >= on - hysteresis ? [both] : Array.Empty<FuelSystem>(),
                        ];
                        fails.UnionWith(states.SelectMany(state => state.Solve(point).Margins).Where(m => m.Outcome == Outcome.Fails).Select(m => m.Part));
                    }
                }

                foreach (PartStanding standing in sweep.Standings)
                {
                    Assert.False(standing.Outcome == Outcome.Holds && fails.Contains(standing.Part), standing.ToString());
                    _ = standing.Outcome == Outcome.Holds ? Interlocked.Increment(ref holding) : Interlocked.Increment(ref failing);
                }
            },
            iter: 12);
        Assert.True(holding > 10 && failing > 3, $"{holding} hold, {failing} fail");
    }

    [Fact]
    public void LowSpeedThroughAResistor_IsThePumpBehindThatResistance_AndTheResistorIsNoLossOfTheFeed()
    {
        Feed feed = Feed.Of("feed", Conductor.Awg(12), Length.FromMeters(4), Length.FromMeters(4), Temperature.FromDegreesCelsius(40), Contact.DefaultFuse);
        Pump wired = Wren.WiredPump.WithFeed(feed);
        ElectricResistance resistor = ElectricResistance.FromMilliohms(150);
        FuelSystem staged = With(SwitchedPump.Above(On, Off, wired, PumpLowSpeed.Through(resistor)));
        Feed longer = Feed.Of(
            "feed", Conductor.Awg(12), Length.FromMeters(4), Length.FromMeters(4), Temperature.FromDegreesCelsius(40), Contact.DefaultFuse, Contact.Of("resistor", resistor));
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(0), Wren.Hill);
        PumpResult low = staged.Solve(point).Circuit.Pumps[0];
        PumpResult by = With(wired.WithFeed(longer)).Solve(point).Circuit.Pumps[0];
        Assert.Equal(by.Flow.LitersPerHour, low.Flow.LitersPerHour, 1e-9);
        Assert.Equal(by.Voltage.Volts, low.Voltage.Volts, 1e-9);
        Assert.Equal(low.Current!.Value.Amperes * feed.LoopResistance.Ohms, low.FeedDrop.Volts, 1e-9);
        Assert.True(low.FeedDrop < by.FeedDrop);
    }

    [Fact]
    public void LowSpeedByAShareOfTheVoltage_IsThePumpAtThatVoltage()
    {
        FuelSystem staged = With(SwitchedPump.Above(On, Off, Wren.WiredPump, PumpLowSpeed.At(Wren.Percent(90))));
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(0), Wren.Hill.With(Wren.Volt(13.5), Wren.Hill.FuelTemperature));
        OperatingPoint lower = OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(0), Wren.Hill.With(Wren.Volt(0.9 * 13.5), Wren.Hill.FuelTemperature));
        Assert.Equal(
            With(Wren.WiredPump).Solve(lower).Circuit.Pumps[0].Flow.LitersPerHour, staged.Solve(point).Circuit.Pumps[0].Flow.LitersPerHour, 1e-9);
    }

    [Fact]
    public void OnlyPumpStopped_StarvesTheRail_AndNothingIsNotANumber()
    {
        OperatingResult result = With(SwitchedPump.Above(On, Off, First)).Solve(OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(10), Wren.Hill));
        Assert.Equal(RailState.Starved, result.RailState);
        Assert.Equal(0, result.PumpFlow!.Value.LitersPerHour);
        Assert.Equal(Outcome.Fails, result.Outcome);
        Assert.DoesNotContain("NaN", string.Join(' ', result.Margins.Select(margin => margin.Explanation)), StringComparison.Ordinal);
        Assert.NotEmpty(result.Working.ToString());
    }

    [Fact]
    public void StageInSeries_ThatStandsStill_IsBypassedOrRefused()
    {
        SwitchedPump second = SwitchedPump.Above(On, Off, Second);
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(10), Wren.Hill);
        Assert.Equal(
            OffAll.Solve(point).RailGauge,
            With(PumpSeries.Of(SeriesBypass.CheckValve, First, second)).Solve(point).RailGauge);
        Assert.Contains(
            "stands still below that boost",
            Assert.Throws<ArgumentException>(() => PumpSeries.Of(SeriesBypass.None, First, second)).Message,
            StringComparison.Ordinal);
        Assert.NotNull(PumpSeries.Of(SeriesBypass.None, First, SwitchedPump.Above(On, Off, Second, PumpLowSpeed.At(Wren.Percent(80)))));
    }

    [Fact]
    public void Failures_HaveTheSwitchStuckEitherWay()
    {
        FailureResult[] failures =
        [
            .. Staged.WithEachFailure(MeasuredBoost.Of((Wren.Rpm(3000), Wren.Kpa(60)), (Wren.Rpm(6500), Wren.Kpa(60))), Wren.Rpm(3000), Wren.Rpm(6500), Wren.Hill),
        ];
        FailureResult open = failures.Single(failure => failure.Failure.ToString().Contains("stuck open", StringComparison.Ordinal) && failure.Failure.ToString().Contains("switch", StringComparison.Ordinal));
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(6500), Wren.Kpa(60), Wren.Hill);
        Assert.Equal(OffAll.Solve(point).Mixture.RailGauge, open.Sweep!.Results[^1].Mixture.RailGauge);
        Assert.Contains(failures, failure => failure.Failure.ToString().Contains("always at full speed", StringComparison.Ordinal));
    }

    [Fact]
    public void Ranking_CountsBothStates()
    {
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(6500), Wren.Kpa(36), Wren.Hill);
        Ranking ranking = Ranking.Of(
            [Stage.Of("hill", OffAll, point)],
            CandidateParts.Of(pumps: [.. new[] { Staged.Pump, OnAll.Pump }.Select((pump, at) => Candidate.Of($"pumps {at}", pump))]));
        foreach (Combination combination in ranking.Combinations)
        {
            OperatingResult solved = OffAll.With(combination.Pump!.Part).Solve(point);
            Assert.Equal(solved.Margins.Min(margin => margin.Share!.Value), combination.Reserve!.Value.DecimalFractions, 1e-12);
        }
    }

    [Fact]
    public void Switch_WithoutHysteresis_OrWithoutCurrentForItsResistor_IsRefused()
    {
        Refused.OutOfRange("off", () => SwitchedPump.Above(On, On, Second));
        Refused.OutOfRange("on", () => SwitchedPump.Above(Wren.Kpa(401), On, Second));
        Refused.Missing("pump", () => SwitchedPump.Above(On, Off, null!));
        Assert.Equal("lowSpeed", Assert.Throws<ArgumentException>(() => SwitchedPump.Above(On, Off, Second, PumpLowSpeed.Through(ElectricResistance.FromOhms(1)))).ParamName);
        Assert.Equal("plan", Assert.Throws<ArgumentException>(() => RunCheck.Of(Staged)).ParamName);
    }

    private static FuelSystem With(PumpAssembly pumps) => Wren.System(injector: 620, consumption: E85)
        .With(pumps)
        .With(Plumbing.Of(returnLine: [Line.Of("return", Length.FromMillimeters(6), Length.FromMeters(3), Roughness.DrawnTube)]));
}
