using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Pumps;

/// <summary>Pumps that hang on one splice: battery, relay, splice, pumps.</summary>
public class SharedFeedTests
{
    /// <summary>12 A and 8 A at any voltage: the trunk of 20 mΩ takes 0.4 V, the branches of 10 and 15 mΩ 0.12 V each.</summary>
    [Fact]
    public void Drop_OfSteadyPumps_IsWorkedByHand()
    {
        OperatingResult result = Solve(Steady("pump A", 12, Ohms(10).WithShared(Trunk(20))), Steady("pump B", 8, Ohms(15).WithShared(Trunk(20))));
        Assert.All(result.Circuit.Pumps, pump =>
        {
            Assert.Equal(0.4, pump.SharedDrop.Volts, 1e-9);
            Assert.Equal(0.52, pump.FeedDrop.Volts, 1e-9);
            Assert.Equal(13.5 - 0.52, pump.Voltage.Volts, 1e-9);
            Assert.Equal(13.1, pump.SourceVoltage.Volts, 1e-9);
        });
        Assert.Equal((0.675 / 0.52) - 1, Find(result, Part.Feed).Reserve!.Value.DecimalFractions, 1e-6);
    }

    /// <summary>Two equal pumps draw the same: each is as if alone behind its branch and twice the trunk. A closed form by symmetry.</summary>
    [Fact]
    public void EqualPumps_AreEachBehindTwiceTheTrunk() =>
        Gen.Select(Gen.Double[0.5, 60], Gen.Double[0, 60], Gen.Double[12, 14.5], Gen.Double[50, 500]).Sample(
            (trunk, branch, supply, kilopascals) =>
            {
                Pump one = Wired(Ohms(branch).WithShared(Trunk(trunk)));
                Pump alone = Wired(Ohms(branch + (2 * trunk)));
                RunningPumps pair = PumpParallel.Of(one, one).Running(supply);
                RunningPumps single = alone.Running(supply);
                Assert.Equal(2 * single.FlowAt(kilopascals * 1e3), pair.FlowAt(kilopascals * 1e3), 1e-8 * single.FreeFlow);
                Assert.Equal(2 * single.FreeFlow, pair.FreeFlow, 1e-8 * single.FreeFlow);
                Assert.Equal(single.Deadhead, pair.Deadhead, 1e-7 * single.Deadhead);
            },
            iter: 40);

    /// <summary>In series the same flow passes both, and equal stages draw the same too.</summary>
    [Fact]
    public void EqualStages_AreEachBehindTwiceTheTrunk() =>
        Gen.Select(Gen.Double[0.5, 40], Gen.Double[0, 40], Gen.Double[12, 14.5], Gen.Double[0.05, 0.95]).Sample(
            (trunk, branch, supply, share) =>
            {
                Pump one = Wired(Ohms(branch).WithShared(Trunk(trunk)));
                RunningPumps pair = PumpSeries.Of(SeriesBypass.CheckValve, one, one).Running(supply);
                RunningPumps single = Wired(Ohms(branch + (2 * trunk))).Running(supply);
                double flow = share * single.FreeFlow;
                Assert.Equal(2 * single.RiseAt(flow), pair.RiseAt(flow), 1e-7 * single.Deadhead);
                Assert.Equal(single.FreeFlow, pair.FreeFlow, 1e-7 * single.FreeFlow);
                Assert.Equal(2 * single.Deadhead, pair.Deadhead, 1e-7 * single.Deadhead);
                Assert.Equal(flow, pair.FlowAt(2 * single.RiseAt(flow)), 1e-6 * single.FreeFlow);
            },
            iter: 25);

    /// <summary>One pump alone on a trunk is one feed.</summary>
    [Fact]
    public void OnePump_OnATrunk_IsBehindTheSum() =>
        Gen.Select(Gen.Double[0.5, 60], Gen.Double[0, 60], Gen.Double[12, 14.5], Gen.Double[50, 500]).Sample(
            (trunk, branch, supply, kilopascals) =>
            {
                RunningPumps shared = Wired(Ohms(branch).WithShared(Trunk(trunk))).Running(supply);
                RunningPumps plain = Wired(Ohms(branch + trunk)).Running(supply);
                Assert.Equal(plain.FlowAt(kilopascals * 1e3), shared.FlowAt(kilopascals * 1e3), 1e-8 * plain.FreeFlow);
            },
            iter: 40);

    /// <summary>More in the trunk never gives more flow, nor does another pump on it.</summary>
    [Fact]
    public void MoreResistance_OrAnotherPump_NeverGivesMore() =>
        Gen.Select(Gen.Double[0.5, 40], Gen.Double[0, 30], Gen.Double[12, 14.5], Gen.Double[50, 500]).Sample(
            (trunk, more, supply, kilopascals) =>
            {
                double With(double milliohms) => PumpParallel.Of(Wired(Ohms(5).WithShared(Trunk(milliohms))), Wired(Ohms(20).WithShared(Trunk(milliohms))))
                    .Running(supply).FlowAt(kilopascals * 1e3);
                Assert.True(With(trunk + more) <= With(trunk) * (1 + 1e-9));
                double alone = Wired(Ohms(5).WithShared(Trunk(trunk))).Running(supply).FlowAt(kilopascals * 1e3)
                    + Wired(Ohms(20).WithShared(Trunk(trunk))).Running(supply).FlowAt(kilopascals * 1e3);
                Assert.True(With(trunk) <= alone * (1 + 1e-9));
            },
            iter: 40);

    /// <summary>A pump that is off draws nothing from the trunk; between its two boosts both states are judged, and the one in which both run loses more.</summary>
    [Fact]
    public void SwitchedPump_ThatIsOff_DrawsNothingFromTheTrunk()
    {
        Pump first = Steady("pump A", 12, Ohms(10).WithShared(Trunk(20)));
        SwitchedPump second = SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Steady("pump B", 8, Ohms(15).WithShared(Trunk(20))));
        FuelSystem system = Wren.System().With(PumpParallel.Of(first, second));
        OperatingResult off = system.Solve(Wren.At(3000, 0.2));
        Assert.Equal(0.24, off.Circuit.Pumps[0].SharedDrop.Volts, 1e-9);
        Assert.Equal((0, 0), (off.Circuit.Pumps[1].SharedDrop.Volts, off.Circuit.Pumps[1].FeedDrop.Volts));
        Assert.Equal(0.4, system.Solve(Wren.At(3000, 0.5)).Circuit.Pumps[0].SharedDrop.Volts, 1e-9);

        OperatingResult both = system.Solve(Wren.At(3000, 0.35));
        Assert.Equal(0.24, both.Circuit.Pumps[0].SharedDrop.Volts, 1e-9);
        Assert.Equal(0.4, both.Falling!.Circuit.Pumps[0].SharedDrop.Volts, 1e-9);
        Assert.Equal((0.675 / 0.52) - 1, Find(both, Part.Feed).Reserve!.Value.DecimalFractions, 1e-6);
    }

    /// <summary>AWG 14 at 30 °C with insulation for 105 °C: 35 A (33 CFR 183.425, table 5). 22 A and 18 A pass each branch, and not both of them the trunk.</summary>
    [Fact]
    public void Trunk_CarriesTheSum_AndItsWireAndFuseAreJudgedByIt()
    {
        Feed trunk = Insulated("relay to splice", 14, 35);
        OperatingResult[] results = [Solve(Steady("pump A", 22, Insulated("to A", 14).WithShared(trunk)), Steady("pump B", 18, Insulated("to B", 14).WithShared(trunk)))];
        Assert.Equal("relay to splice carries 40.0 A, over its ampacity of 35.0 A in surroundings of 30 °C", Find(results[0], Part.Wire).Explanation);
        Assert.Equal("40.0 A through a fuse of 35.0 A, over 80 % of its rating (common practice, no source)", Find(results[0], Part.Fuse).Explanation);
        Assert.Equal(40, ((ElectricCurrent)Find(results[0], Part.Wire).Check.RemedyFor(new(results, results))!.Needed!).Amperes, 6);
        Assert.Equal(50, ((ElectricCurrent)Find(results[0], Part.Fuse).Check.RemedyFor(new(results, results))!.Needed!).Amperes, 6);

        // Put in its place: AWG 10, of 60 A, with a fuse of 50 A, which the branches' wire does not stand without fuses of their own.
        Feed thick = Insulated("relay to splice", 10, 50);
        OperatingResult put = Solve(Steady("pump A", 22, Insulated("to A", 14).WithShared(thick)), Steady("pump B", 18, Insulated("to B", 14).WithShared(thick)));
        Assert.Equal(Outcome.Holds, Find(put, Part.Wire).Outcome);
        Assert.Equal("a fuse of 50.0 A does not protect to A, whose wire has an ampacity of 35.0 A", Find(put, Part.Fuse).Explanation);
        OperatingResult fused = Solve(Steady("pump A", 22, Insulated("to A", 14, 30).WithShared(thick)), Steady("pump B", 18, Insulated("to B", 14, 30).WithShared(thick)));
        Assert.Equal(Outcome.Holds, Find(fused, Part.Fuse).Outcome);

        // What is not given of the trunk, or of a branch, is named.
        Assert.Equal(
            "judged, but no insulation rating and surroundings given of trunk",
            new WireCheck(Part.Wire, JudgedCircuit.Main).AppliesTo(System(Steady("pump A", 22, Insulated("to A", 14).WithShared(Trunk(5)))).Parts).ToString());
        Assert.Equal(
            "judged, but no insulation rating and surroundings given of branch",
            new WireCheck(Part.Wire, JudgedCircuit.Main).AppliesTo(System(Steady("pump A", 22, Ohms(5).WithShared(trunk))).Parts).ToString());
        Assert.Equal(
            "judged, but whether it protects the wire of branch, whose ampacity is not known",
            new FuseCheck(Part.Fuse, JudgedCircuit.Main).AppliesTo(System(Steady("pump A", 22, Ohms(5).WithShared(trunk))).Parts).ToString());
    }

    /// <summary>One relay for two pumps carries the sum, of both states the higher; one of its own carries its pump's. Not given, none is judged or missed.</summary>
    [Fact]
    public void Relay_OfSeveralPumps_CarriesTheirSumInEitherState()
    {
        FuelSystem With(double rating) => Wren.System().With(PumpParallel.Of(
            Steady("pump A", 12, Ohms(10).WithShared(Trunk(5).WithRelay(ElectricCurrent.FromAmperes(rating)))),
            SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Steady("pump B", 8, Ohms(10).WithShared(Trunk(5).WithRelay(ElectricCurrent.FromAmperes(rating)))))));
        Assert.Equal("12.0 A through the relay of trunk, of the 15.0 A that its contacts carry continuously", Find(With(15).Solve(Wren.At(3000, 0.2)), Part.Relay).Explanation);

        // At 35 kPa the second pump may still run.
        OperatingResult[] results = [With(15).Solve(Wren.At(3000, 0.35))];
        Margin relay = Find(results[0], Part.Relay);
        Assert.Equal((Outcome.Fails, (15 / 20.0) - 1), (relay.Outcome, Math.Round(relay.Reserve!.Value.DecimalFractions, 9)));
        Assert.Contains("20.0 A through the relay of trunk, over the 15.0 A that its contacts carry continuously", relay.Explanation, StringComparison.Ordinal);
        Remedy remedy = relay.Check.RemedyFor(new([With(15).Solve(Wren.At(3000, 0.5))], [With(15).Solve(Wren.At(3000, 0.5))]))!;
        Assert.Equal(20, ((ElectricCurrent)remedy.Needed!).Amperes, 6);
        Assert.Equal("A relay whose contacts carry at least 20.0 A continuously where it sits, or a relay for each pump.", remedy.ToString());
        Assert.Equal(Outcome.Holds, Find(With(20.1).Solve(Wren.At(3000, 0.35)), Part.Relay).Outcome);

        // A relay of each pump.
        OperatingResult own = Solve(
            Steady("pump A", 12, Ohms(10).WithRelay(ElectricCurrent.FromAmperes(15))), Steady("pump B", 8, Named("to B", 10).WithRelay(ElectricCurrent.FromAmperes(9))));
        Assert.Equal("8.0 A through the relay of to B, of the 9.0 A that its contacts carry continuously", Find(own, Part.Relay).Explanation);

        FuelSystem none = System(Steady("pump A", 12, Ohms(10)));
        Assert.DoesNotContain(none.NotJudged, open => open.Part == Part.Relay);
        Assert.Equal("not applicable", new RelayCheck(Part.Relay, JudgedCircuit.Main).AppliesTo(none.Parts).ToString());
    }

    /// <summary>Fitted with the resistance named, trunk and branches alike, the drop holds; with a millionth more it does not.</summary>
    [Fact]
    public void FeedRemedy_OfASharedFeed_ServesWhenItIsFitted()
    {
        FuelSystem With(double branch, double trunk) => System(
            Steady("pump A", 12, Ohms(branch).WithShared(Trunk(trunk))), Steady("pump B", 8, Ohms(branch).WithShared(Trunk(trunk))));
        OperatingResult[] results = [With(40, 60).Solve(Wren.At(3000, 0.2))];
        Remedy remedy = Find(results[0], Part.Feed).Check.RemedyFor(new(results, results))!;
        double most = ((ElectricResistance)remedy.Needed!).Milliohms;

        // 12 A in the branch and 20 A in the trunk: 0.675 V/32 A.
        Assert.Equal(675.0 / 32, most, 1e-6);
        Assert.Contains("and no more in any part that pumps share", remedy.ToString(), StringComparison.Ordinal);
        Assert.Equal(Outcome.Holds, Find(With(most, most).Solve(Wren.At(3000, 0.2)), Part.Feed).Outcome);
        Assert.Equal(Outcome.Fails, Find(With(most * (1 + 1e-6), most * (1 + 1e-6)).Solve(Wren.At(3000, 0.2)), Part.Feed).Outcome);
    }

    /// <summary>A pump measured at one voltage alone, on more: what its neighbour loses lies between bounds that hold both.</summary>
    [Fact]
    public void Bounds_OfASharedDrop_HoldTheEstimate()
    {
        Pump one = Pump.From(Wren.WiredCurve(12, 1)).WithFeed(Ohms(10).WithShared(Trunk(20)));
        OperatingResult result = Solve(one, Wired(Ohms(5).WithShared(Trunk(20))));
        for (int pump = 0; pump < 2; pump++)
        {
            (double least, double most) = result.SolvedCircuit.FeedDropOf(pump)!.Value;
            Assert.True(least < most);
            Assert.InRange(result.SolvedCircuit.Pumps[pump].FeedDrop, least * (1 - 1e-9), most * (1 + 1e-9));
        }

        Assert.True(result.SolvedCircuit.Lower.MinimumAtSet <= result.SolvedCircuit.Upper.MinimumAtSet);
    }

    [Fact]
    public void SharedFeed_OfNonsense_IsRefusedByName()
    {
        Feed trunk = Trunk(20);
        Refused.Missing("shared", () => Ohms(5).WithShared(null!));
        Assert.Equal("shared", Assert.Throws<ArgumentException>(() => Ohms(5).WithShared(Ohms(5).WithShared(trunk))).ParamName);

        // One name, two trunks.
        Pump one = Wired(Ohms(5).WithShared(trunk));
        Pump other = Wired(Ohms(5).WithShared(Trunk(30)));
        Assert.StartsWith(
            "branches has pumps whose feeds share trunk, described in two ways", Assert.Throws<ArgumentException>(() => PumpParallel.Of(one, other)).Message, StringComparison.Ordinal);
        Assert.Equal("stages", Assert.Throws<ArgumentException>(() => PumpSeries.Of(SeriesBypass.CheckValve, one, other)).ParamName);

        // What draws the more the less it gets, and what pulses.
        VoltageConverter converter = VoltageConverter.Holding("converter", Wren.Volt(16), Wren.Percent(90));
        Assert.Equal("converter", Assert.Throws<ArgumentException>(() => one.WithConverter(converter)).ParamName);
        Assert.Equal("feed", Assert.Throws<ArgumentException>(() => Wired(Ohms(5)).WithConverter(converter).WithFeed(Ohms(5).WithShared(trunk))).ParamName);
        Assert.Equal("lowSpeed", Assert.Throws<ArgumentException>(() => SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), one, PumpLowSpeed.At(Wren.Percent(60)))).ParamName);

        // A lift pump on the main pumps' splice.
        Assert.Equal(
            "surgeTank",
            Assert.Throws<ArgumentException>(() => Wren.System().With(one).With(SurgeTank.Of(Volume.FromLiters(1), one, ReturnDestination.SurgeTank))).ParamName);
    }

    private static FuelSystem System(params Pump[] pumps) => Wren.System().With(pumps.Length == 1 ? pumps[0] : PumpParallel.Of(pumps));

    private static OperatingResult Solve(params Pump[] pumps) => System(pumps).Solve(Wren.At(3000, 0.2));

    private static Pump Wired(Feed feed) => Pump.Of([Wren.WiredCurve(10, 0.7), Wren.WiredCurve(12, 0.85), Wren.WiredCurve(14.5, 1.1)]).WithFeed(feed);

    /// <summary>The same current at every pressure, and, as a displacement pump's follows its torque, at every voltage.</summary>
    private static Pump Steady(string name, double amperes, Feed feed) => Pump.Of(
    [
        .. new[] { 11.0, 13.5 }.Select(volts => PumpCurve.WithCurrent(
            name,
            Wren.Volt(volts),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(215 * volts / 13.5), ElectricCurrent.FromAmperes(amperes)),
            (Wren.Kpa(750), VolumeFlow.Zero, ElectricCurrent.FromAmperes(amperes)))),
    ]).WithDrive(PumpDrive.Of(PumpKind.Displacement, ElectricResistance.FromOhms(0.1))).WithFeed(feed);

    private static Feed Ohms(double milliohms) => Named("branch", milliohms);

    private static Feed Trunk(double milliohms) => Named("trunk", milliohms);

    private static Feed Named(string name, double milliohms) => Feed.Of(
        name, Conductor.Awg(8), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(40), Contact.Of("all of it", ElectricResistance.FromMilliohms(milliohms)));

    private static Feed Insulated(string name, int gauge, double? fuse = null)
    {
        Feed feed = Feed.Of(name, Conductor.Awg(gauge), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(60))
            .WithInsulation(Temperature.FromDegreesCelsius(105), Temperature.FromDegreesCelsius(30));
        return fuse is { } amperes ? feed.WithFuse(ElectricCurrent.FromAmperes(amperes)) : feed;
    }
}
