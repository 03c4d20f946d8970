using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>A whole car with a surge tank: what is drawn, lifted and overflows; the lift pump's checks; nothing that is not looked at is silent.</summary>
public class SurgeTankTests
{
    private static readonly OperatingPoint Full = Wren.At(6000, 0.6);

    private static readonly Part[] LiftParts =
    [
        Part.LiftPump, Part.LiftSuction, Part.LiftFilter, Part.LiftFeed, Part.LiftWire, Part.LiftFuse, Part.SurgeTank, Part.LiftLine, Part.OverflowLine,
    ];

    [Fact]
    public void Car_WithoutASurgeTank_IsUnchangedToTheLastBit()
    {
        FuelSystem plain = Wren.System(pump: 0.8);
        FuelSystem again = plain.With(SurgeTanks.Everything).WithoutSurgeTank();
        Assert.Equal(plain, again);
        Assert.NotEqual(plain, plain.With(SurgeTanks.Everything));
        OperatingResult one = plain.Solve(Full);
        OperatingResult other = again.Solve(Full);
        Assert.Null(one.SurgeTank);
        Assert.Equal(one.SolvedCircuit.State, other.SolvedCircuit.State);
        Assert.Equal(one.Margins.Select(margin => margin.Reading), other.Margins.Select(margin => margin.Reading));
        Assert.DoesNotContain(one.Margins, margin => LiftParts.Contains(margin.Part));
        Assert.DoesNotContain(plain.NotJudged, open => LiftParts.Contains(open.Part));
    }

    /// <summary>With no pressure in the tank the main circuit is that of a car that draws from its main tank.</summary>
    [Fact]
    public void MainCircuit_WithTheTankAtAmbientPressure_IsUnchanged()
    {
        OperatingResult plain = Wren.System(pump: 0.8).Solve(Full);
        OperatingResult fed = SurgeTanks.Wren(SurgeTanks.Bare()).Solve(Full);
        Assert.Equal(plain.SolvedCircuit.State, fed.SolvedCircuit.State);
        foreach (Margin margin in plain.Margins)
        {
            Assert.Equal(margin.Reading, fed.Margins.Single(other => other.Part == margin.Part).Reading);
        }
    }

    /// <summary>A return to the surge tank leaves exactly what is injected to be lifted.</summary>
    [Fact]
    public void ReturnToTheSurgeTank_DrawsExactlyWhatIsInjected() =>
        Gen.Select(Gen.Double[1500, 7000], Gen.Double[-0.4, 0.9], Gen.Double[0.5, 1.4]).Sample((rpm, boost, pump) =>
        {
            OperatingResult result = SurgeTanks.Wren(SurgeTanks.Everything.WithReturnTo(ReturnDestination.SurgeTank), pump).Solve(Wren.At(rpm, boost));
            SurgeTankResult tank = result.SurgeTank!;
            return tank.MinimumNetDraw!.Value.CubicMetersPerSecond == result.InjectedFlow.CubicMetersPerSecond
                && tank.MaximumNetDraw!.Value.CubicMetersPerSecond == result.InjectedFlow.CubicMetersPerSecond
                && (result.RailState is RailState.Starved or RailState.NotCovered
                    || Math.Abs(tank.NetDraw!.Value.CubicMetersPerSecond - result.InjectedFlow.CubicMetersPerSecond) <= 1e-12 * result.InjectedFlow.CubicMetersPerSecond);
        });

    /// <summary>What is lifted is what is drawn and what overflows, and what the main pumps pass is what is injected and what returns: to 10⁻⁹.</summary>
    [Fact]
    public void Volume_IsConservedInBothCircuits()
    {
        int full = 0;
        int notFull = 0;
        RandomTanks.Sample((tank, pump, rpm, boost) =>
        {
            OperatingResult result = SurgeTanks.Wren(tank, pump).Solve(Wren.At(rpm, boost));
            SurgeTankResult at = result.SurgeTank!;
            if (at.Lifted is not { } lifted || at.NetDraw is not { } drawn)
            {
                return false;
            }

            double scale = 1e-9 * lifted.CubicMetersPerSecond;
            if (at.IsFull)
            {
                Interlocked.Increment(ref full);
                JoinedCircuits joined = result.SolvedCircuit.Lift!.Joined;
                CircuitState main = joined.Balance.Main;
                double out_ = at.Overflow!.Value.CubicMetersPerSecond;
                double loss = tank.Plumbing.ReturnLoss(out_, result.SolvedDemand.Density, result.SolvedDemand.KinematicViscosity);
                return Math.Abs(lifted.CubicMetersPerSecond - drawn.CubicMetersPerSecond - out_) <= scale
                    && Math.Abs(joined.DrawOf(main) - drawn.CubicMetersPerSecond) <= scale
                    && Math.Abs(main.Flow - main.ReturnFlow - (main.State == RailState.Starved ? main.Flow - main.ReturnFlow : result.SolvedDemand.Injected)) <= scale


                    // With nothing that overflows fuel stands in the overflow line as high as it may.
                    && (out_ > scale
                        ? Math.Abs(Math.Max(0, loss) - at.TankGauge!.Value.Pascals) <= 1e-9 * Math.Max(1e3, loss)
                        : at.TankGauge!.Value.Pascals >= 0 && at.TankGauge.Value.Pascals <= loss * (1 + 1e-9));
            }

            Interlocked.Increment(ref notFull);
            return at.Overflow!.Value.CubicMetersPerSecond == 0 && at.TankGauge!.Value.Pascals == 0 && lifted.CubicMetersPerSecond <= drawn.CubicMetersPerSecond + scale;
        });
        Assert.True(full > 10 && notFull > 10, $"{full} full, {notFull} not");
    }

    /// <summary>The pressure in the full tank is counted on the side where it does not flatter: no check comes out better than with the tank at ambient pressure.</summary>
    [Fact]
    public void PressureInTheTank_FlattersNoCheck() => RandomTanks.Sample((tank, pump, rpm, boost) =>
    {
        OperatingResult with = SurgeTanks.Wren(tank, pump).Solve(Wren.At(rpm, boost));
        OperatingResult without = SurgeTanks.Wren(tank.WithLines(tank.Suction, tank.LiftLine), pump).Solve(Wren.At(rpm, boost));
        return without.Margins.All(margin =>
        {
            CheckReadingOf one = new(with.Margins.Single(other => other.Part == margin.Part));
            CheckReadingOf other = new(margin);
            return !(one.Margin > other.Margin + 1e-9) && !(one.Best > other.Best + 1e-9);
        });
    });

    /// <summary>A return line that just passes the surplus into an open tank does not do so against the pressure of a full one.</summary>
    [Fact]
    public void ReturnLine_IntoAFullTank_WorksAgainstItsPressure()
    {
        Plumbing lines = Plumbing.Of(returnLine: [SurgeTanks.Hose("return line", 3, 3)]);
        SurgeTank open = SurgeTanks.Bare();
        SurgeTank tight = open.WithLines(overflow: [SurgeTanks.Hose("overflow line", 5.5, 3)]);
        OperatingPoint idle = Wren.At(1500, 0);
        Outcome Of(SurgeTank tank) => SurgeTanks.Wren(tank).With(lines).Solve(idle).Margins.Single(margin => margin.Part == Part.ReturnLine).Outcome;
        Assert.Equal(Outcome.Holds, Of(open));
        Assert.Equal(Outcome.Fails, Of(tight));
        Assert.Equal(Outcome.Holds, Of(tight.WithReturnTo(ReturnDestination.MainTank)));
    }

    /// <summary>With the return to the main tank the pressure in the full tank helps the main pumps, and the lift pump is judged by what they then pass.</summary>
    [Fact]
    public void ReturnToTheMainTank_IsJudgedByTheMostThatIsDrawn()
    {
        SurgeTank tank = SurgeTanks.Bare(scale: 1.4, to: ReturnDestination.MainTank).WithLines(overflow: [SurgeTanks.Hose("overflow line", 6, 3)]);
        OperatingResult result = SurgeTanks.Wren(tank).Solve(Full);
        SurgeTankResult at = result.SurgeTank!;
        Assert.True(at.TankGauge > SurgeTanks.Kpa(5));
        Assert.True(at.MaximumNetDraw > result.PumpFlow);
        Margin margin = result.Margins.Single(one => one.Part == Part.LiftPump);
        Assert.Equal(at.MaximumNetDraw!.Value.CubicMetersPerSecond, ((VolumeFlow)margin.Used!).CubicMetersPerSecond, 1e-15);
    }

    /// <summary>Of a surge tank of which only volume and pump are known nothing is silent: what is not judged is named.</summary>
    [Fact]
    public void BareTank_HoldsAsFarAsJudged_NamingWhatIsNot()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare());
        Assert.Equal(
            [Part.LiftFilter, Part.LiftFeed, Part.LiftWire, Part.LiftFuse, Part.SurgeTank, Part.LiftLine, Part.OverflowLine],
            system.NotJudged.Select(open => open.Part).Where(part => LiftParts.Contains(part)));
        SweepResult sweep = system.Sweep([Wren.Rpm(3000)], [Pressure.Zero], Wren.Hill);
        Assert.Equal(Outcome.HoldsAsFarAsJudged, sweep.Verdict.Outcome);
        Assert.Contains(sweep.Verdict.NotJudged, open => open.ToString().StartsWith("overflow line, none given", StringComparison.Ordinal));
    }

    [Fact]
    public void TankWithEverythingGiven_LeavesNothingOfItUnjudged() =>
        Assert.DoesNotContain(
            SurgeTanks.Wren(SurgeTanks.Everything).NotJudged,
            open => LiftParts.Except([Part.LiftWire, Part.LiftFuse]).Contains(open.Part));

    [Fact]
    public void OverflowLineThatFalls_IsNamed() => Assert.Contains(
        SurgeTanks.Wren(SurgeTanks.Bare().WithLines(overflow: [SurgeTanks.Hose("overflow line", 8, 2, -0.4)])).NotJudged,
        open => open.Part == Part.OverflowLine && open.ToString().Contains("siphon", StringComparison.Ordinal));

    /// <summary>The margin of the lift pump over the sustained demand, with the pumps' reserve: 232 L/h over 1.1 and what is injected.</summary>
    [Fact]
    public void LiftPump_OfNoLines_HasTheMarginOfItsFreeFlow()
    {
        OperatingResult result = SurgeTanks.Wren(SurgeTanks.Bare()).Solve(Full);
        Margin margin = result.Margins.Single(one => one.Part == Part.LiftPump);
        Assert.Equal(Outcome.Holds, margin.Outcome);
        Assert.Equal((232 / 1.1 / result.InjectedFlow.LitersPerHour) - 1, margin.Reserve!.Value.DecimalFractions, 1e-12);
    }

    /// <summary>A lift pump that is too small is named, and the one that its remedy asks for serves.</summary>
    [Theory]
    [InlineData(ReturnDestination.SurgeTank)]
    [InlineData(ReturnDestination.MainTank)]
    public void RemedyOfTheLiftPump_PutBack_Holds(ReturnDestination to)
    {
        SurgeTank tank = SurgeTanks.Bare(scale: 0.35, to: to).WithLines(SurgeTanks.Suction, SurgeTanks.LiftLine, SurgeTanks.Overflow);
        SweepResult sweep = SurgeTanks.Wren(tank).Sweep([Wren.Rpm(3000), Wren.Rpm(6000)], [Pressure.Zero, Pressure.FromBars(0.6)], Wren.Hill);
        Assert.Contains(sweep.Standings, standing => standing.Part == Part.LiftPump && standing.Outcome == Outcome.Fails);
        Remedy remedy = sweep.Remedies.Single(one => one.Part == Part.LiftPump);
        double flow = ((VolumeFlow)remedy.Needed!).LitersPerHour;
        Pressure rise = remedy.Text.Arguments.Select(argument => argument.Value).OfType<Pressure>().Single();

        // Just so much against just that pressure, and nothing against more.
        Pump fitted = Pump.From(PumpCurve.At(
            "lift pump by the remedy",
            Wren.Volt(13.5),
            (Pressure.Zero, SurgeTanks.Litres(flow * 1.0001)),
            (rise, SurgeTanks.Litres(flow)),
            (rise * 1.01, VolumeFlow.Zero)));
        SweepResult after = SurgeTanks.Wren(tank.With(fitted)).Sweep([Wren.Rpm(3000), Wren.Rpm(6000)], [Pressure.Zero, Pressure.FromBars(0.6)], Wren.Hill);
        Assert.DoesNotContain(after.Standings, standing => standing.Part == Part.LiftPump && standing.Outcome != Outcome.Holds);
    }

    [Fact]
    public void LiftPump_ThatCannotKeepTheTankFull_SaysInHowManySecondsItIsDry()
    {
        OperatingResult result = SurgeTanks.Wren(SurgeTanks.Bare(scale: 0.2)).Solve(Full);
        Margin margin = result.Margins.Single(one => one.Part == Part.LiftPump);
        Assert.Equal(Outcome.Fails, margin.Outcome);
        double seconds = 1.3e-3 / (result.InjectedFlow.CubicMetersPerSecond - (232 * 0.2 / 3.6e6));
        Assert.Contains(FormattableString.Invariant($"runs dry in {seconds:0.00} s"), margin.Explanation, StringComparison.Ordinal);
    }

    /// <summary>Starved or sagging main pumps draw little: the lift pump is judged by what the engine asks for all the same.</summary>
    [Theory]
    [InlineData(ReturnDestination.SurgeTank, 0.05)]
    [InlineData(ReturnDestination.MainTank, 0.05)]
    [InlineData(ReturnDestination.SurgeTank, 0.3)]
    [InlineData(ReturnDestination.MainTank, 0.3)]
    public void MainPumpsThatFail_AreNoReliefForTheLiftPump(ReturnDestination to, double pump)
    {
        OperatingResult result = SurgeTanks.Wren(SurgeTanks.Bare(scale: 0.2, to: to), pump).Solve(Full);
        Assert.NotEqual(RailState.Regulated, result.RailState);
        Margin margin = result.Margins.Single(one => one.Part == Part.LiftPump);
        Assert.Equal(Outcome.Fails, margin.Outcome);
        Assert.True((VolumeFlow)margin.Used! >= result.InjectedFlow);
    }

    /// <summary>Voltage at which nothing was measured: under 70 % of the lift pump's curve nothing is said of it, and nothing of the tank.</summary>
    [Fact]
    public void LiftPumpsData_ThatEndsAboveTheVoltage_CannotSay()
    {
        SurgeTank tank = SurgeTank.Of(Volume.FromLiters(1.3), Pump.From(SurgeTanks.LiftCurve(volts: 20)), ReturnDestination.SurgeTank);
        OperatingResult result = SurgeTanks.Wren(tank).Solve(Full);
        Assert.Equal(Outcome.CannotSay, result.Margins.Single(one => one.Part == Part.LiftPump).Outcome);
        Assert.Equal(RefillAnswer.CannotSay, SurgeTanks.Wren(tank).UncoverPickup(Full).Refill);
        Assert.Null(result.SurgeTank!.Lifted);
        Assert.Null(result.SurgeTank!.MinimumLifted);
    }

    /// <summary>A little under its curve the lift pump is known between two bounds, and the lower one decides.</summary>
    [Fact]
    public void LiftPumpsData_ALittleAboveTheVoltage_IsJudgedByItsLowerBound()
    {
        FuelSystem Of(double volts) => SurgeTanks.Wren(SurgeTank.Of(
            Volume.FromLiters(1.3), Pump.From(SurgeTanks.LiftCurve(volts: volts)), ReturnDestination.SurgeTank));
        Margin measured = Of(13.5).Solve(Full).Margins.Single(one => one.Part == Part.LiftPump);
        Margin carried = Of(15).Solve(Full).Margins.Single(one => one.Part == Part.LiftPump);
        Assert.True(carried.Reading.Margin < measured.Reading.Margin);
        Assert.True(carried.Reading.Margin < carried.Reading.BestMargin);
        SurgeTankResult tank = Of(15).Solve(Full).SurgeTank!;
        Assert.True(tank.MinimumLifted < tank.MaximumLifted);
        UncoveredPickupResult corner = Of(15).UncoverPickup(Full);
        Assert.True(corner.MaximumRefill is null || corner.MaximumRefill > corner.MinimumRefill);
    }

    /// <summary>A main pump whose data ends: how much it draws, and with a return to the main tank the lift pump has to bring, is known between bounds or not at all.</summary>
    [Fact]
    public void MainPumpsData_ThatEnds_BoundsTheDraw()
    {
        FuelSystem Of(ReturnDestination to, double volts) => SurgeTanks.Wren(SurgeTanks.Bare(to: to))
            .With(Pump.From(PumpCurve.At("pump", Wren.Volt(volts), (Pressure.Zero, SurgeTanks.Litres(200)), (SurgeTanks.Kpa(700), VolumeFlow.Zero))));
        SurgeTankResult bounded = Of(ReturnDestination.MainTank, 15).Solve(Full).SurgeTank!;
        Assert.True(bounded.MaximumNetDraw > bounded.MinimumNetDraw);
        OperatingResult unknown = Of(ReturnDestination.MainTank, 20).Solve(Full);
        Assert.Null(unknown.SurgeTank!.MaximumNetDraw);
        Margin lift = unknown.Margins.Single(one => one.Part == Part.LiftPump);
        Assert.Equal(Outcome.CannotSay, lift.Outcome);
        Assert.Contains("not known", lift.Explanation, StringComparison.Ordinal);
        Assert.Null(Of(ReturnDestination.MainTank, 20).UncoverPickup(Full).MinimumCarried);

        // With the return in the surge tank the draw is what is injected, whatever is known of the pump.
        Assert.Equal(unknown.InjectedFlow, Of(ReturnDestination.SurgeTank, 20).Solve(Full).SurgeTank!.MaximumNetDraw);
    }

    [Fact]
    public void LiftFilter_AboveItsKnownFlow_CannotSay()
    {
        SurgeTank tank = SurgeTanks.Bare().WithLines(suction: [Filter.Of("small strainer", SurgeTanks.Litres(60), SurgeTanks.Kpa(1))]);
        Margin margin = SurgeTanks.Wren(tank).Solve(Full).Margins.Single(one => one.Part == Part.LiftFilter);
        Assert.Equal(Outcome.CannotSay, margin.Outcome);
        Assert.Contains("small strainer", margin.Explanation, StringComparison.Ordinal);
    }

    /// <summary>A filter in the overflow line passes what overflows alone.</summary>
    [Fact]
    public void OverflowFilter_IsJudgedByWhatOverflows()
    {
        SurgeTank tank = SurgeTanks.Bare().WithLines(overflow: [Filter.Of("overflow screen", SurgeTanks.Litres(50), SurgeTanks.Kpa(1))]);
        OperatingResult result = SurgeTanks.Wren(tank).Solve(Full);
        Margin margin = result.Margins.Single(one => one.Part == Part.LiftFilter);
        Assert.Equal(Outcome.Holds, margin.Outcome);
        Assert.Equal(result.SurgeTank!.Overflow!.Value.CubicMetersPerSecond, ((VolumeFlow)margin.Used!).CubicMetersPerSecond, 1e-15);
    }

    /// <summary>The lift pump's inlet is judged by the temperature of the main tank, the main pump's by its own.</summary>
    [Fact]
    public void LiftPumpsInlet_IsJudgedAtTheTemperatureOfTheTank()
    {
        Conditions warm = Wren.Hill.WithTankTemperature(Temperature.FromDegreesCelsius(20)).WithInletTemperature(Temperature.FromDegreesCelsius(45));
        OperatingResult result = SurgeTanks.Wren(SurgeTanks.Everything).Solve(OperatingPoint.At(Wren.Rpm(5000), Pressure.Zero, warm));
        double margin = SizingLimits.Default.SuctionMargin.Pascals;
        Assert.Equal(
            Fuel.Petrol.VapourPressureAt(Temperature.FromDegreesCelsius(20)).Pascals + margin,
            ((Pressure)result.Margins.Single(one => one.Part == Part.LiftSuction).Allowed!).Pascals, 1e-6);
        Assert.Equal(
            Fuel.Petrol.VapourPressureAt(Temperature.FromDegreesCelsius(45)).Pascals + margin,
            ((Pressure)result.Margins.Single(one => one.Part == Part.Suction).Allowed!).Pascals, 1e-6);
    }

    /// <summary>At the inlet stands what the suction line leaves while the tank is not full, for then most is lifted.</summary>
    [Fact]
    public void LiftPumpsInlet_IsJudgedWhileMostIsLifted()
    {
        OperatingResult result = SurgeTanks.Wren(SurgeTanks.Everything).Solve(Full);
        CircuitState filling = result.SolvedCircuit.Lift!.Filling.State;
        Pressure used = (Pressure)result.Margins.Single(one => one.Part == Part.LiftSuction).Used!;
        Assert.Equal(filling.InletGauge + Wren.Hill.Atmosphere.Pascals, used.Pascals, 1e-6);
        Assert.True(filling.InletGauge < result.SolvedCircuit.Lift!.Full!.Value.State.InletGauge);
    }

    /// <summary>Thin wire to the lift pump fails for itself, and the feed that the remedy asks for serves.</summary>
    [Fact]
    public void LiftPumpsFeed_IsJudgedForItself()
    {
        SurgeTank thin = SurgeTanks.Everything.With(
            Pump.Of([SurgeTanks.LiftCurve(0.9, 12), SurgeTanks.LiftCurve()], feed: Tests.Pumps.PumpAssemblyTests.FeedOf(12, 18)));
        OperatingResult result = SurgeTanks.Wren(thin).Solve(Full);
        Assert.Equal(Outcome.Fails, result.Margins.Single(one => one.Part == Part.LiftFeed).Outcome);
        SweepResult sweep = SurgeTanks.Wren(thin).Sweep([Wren.Rpm(6000)], [Pressure.FromBars(0.6)], Wren.Hill);
        ElectricResistance most = (ElectricResistance)sweep.Remedies.Single(one => one.Part == Part.LiftFeed).Needed!;
        FuelSystem rewired = SurgeTanks.Wren(thin.With(thin.LiftPump.Rewired(feed => feed.WithLoopOfAtMost(most.Ohms))));
        Assert.Equal(Outcome.Holds, rewired.Solve(Full).Margins.Single(one => one.Part == Part.LiftFeed).Outcome);
    }

    /// <summary>A tank that is judged for its pressure is judged by the pressure at the lift pump's outlet, which is the highest.</summary>
    [Fact]
    public void SurgeTank_IsJudgedByTheHighestPressure()
    {
        SurgeTank tank = SurgeTanks.Everything.WithReturnTo(ReturnDestination.SurgeTank);
        OperatingResult result = SurgeTanks.Wren(tank).Solve(Full);
        Pressure used = (Pressure)result.Margins.Single(one => one.Part == Part.SurgeTank).Used!;
        Assert.True(used >= result.SurgeTank!.TankGauge && result.SurgeTank.TankGauge > Pressure.Zero);
        Assert.Equal(
            Outcome.Fails,
            SurgeTanks.Wren(tank.WithMaximumPressure(used * 0.9)).Solve(Full).Margins.Single(one => one.Part == Part.SurgeTank).Outcome);
    }

    /// <summary>The lift pump takes part in verdicts along a line, and is the first limit there where it is too small.</summary>
    [Fact]
    public void Pull_NamesTheLiftPumpWhereItIsTheFirstLimit()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare(scale: 0.3), 1.2);
        LineSweepResult pull = system.Pull(
            HeldBoost.Of(Pressure.FromBars(0.6), Wren.Rpm(3000), Wren.Rpm(6800)), Wren.Rpm(3000), Wren.Rpm(6800), Wren.Hill);
        Assert.Equal(Outcome.Fails, pull.Verdict.Outcome);
        Assert.Contains(pull.Remedies, remedy => remedy.Part == Part.LiftPump);
    }

    /// <summary>What a converter is asked for is judged in the main circuit alone.</summary>
    [Fact]
    public void LiftPump_BehindAConverter_IsRefused()
    {
        Pump converted = Wren.WiredPump.WithConverter(FuelSizing.Electrical.VoltageConverter.Times("converter", 1.1, Wren.Percent(90)));
        Assert.Equal("liftPump", Assert.Throws<ArgumentException>(() => SurgeTanks.Everything.With(converted)).ParamName);
    }

    [Fact]
    public void Fuel_WithoutAVapourPressure_IsRefusedWithASuctionLine()
    {
        Fuel bare = Fuel.Of(
            "bare", Fuel.Petrol.Composition, Fuel.Petrol.LowerHeatingValue, Fuel.Petrol.DensityAt15C, Fuel.Petrol.ExpansionAt15C);
        FuelSystem system = Wren.System(consumption: FuelConsumption.Of(bare, 0.85, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315)));
        Assert.Equal("surgeTank", Assert.Throws<ArgumentException>(() => system.With(SurgeTanks.Everything)).ParamName);
        Assert.NotNull(system.With(SurgeTanks.Bare()));
    }

    private static Gen<(SurgeTank, double, double, double)> RandomTanks => Gen.Select(
        Gen.Select(Gen.Double[0.1, 1.3], Gen.Bool, Gen.Double[4, 12], Gen.Double[0, 0.5], Gen.Bool),
        Gen.Double[0.4, 1.3],
        Gen.Double[1500, 7000],
        Gen.Double[-0.3, 0.8]).Select((tank, pump, rpm, boost) => (
            SurgeTank.Of(
                Volume.FromLiters(1),
                tank.Item5 ? SurgeTanks.Everything.With(Pump.From(SurgeTanks.LiftCurve(tank.Item1))).LiftPump : PumpParallel.Of(Pump.From(SurgeTanks.LiftCurve(tank.Item1 / 2)), Pump.From(SurgeTanks.LiftCurve(0.15))),
                tank.Item2 ? ReturnDestination.SurgeTank : ReturnDestination.MainTank,
                SurgeTanks.Suction,
                SurgeTanks.LiftLine,
                [SurgeTanks.Hose("overflow line", tank.Item3, 2, tank.Item4)]),
            pump,
            rpm,
            boost));

    private sealed record CheckReadingOf(double Margin, double Best)
    {
        public CheckReadingOf(Margin margin)
            : this(margin.Reading.Margin, margin.Reading.BestMargin)
        {
        }
    }
}
