using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>What checks read of a lift circuit: each figure from the state, pump, wire, fuse, relay and filter that it has to come from.</summary>
public class LiftValuesTests
{
    /// <summary>
    /// Two lift pumps in parallel, one with the smaller fuse, the other with the thinner wire and the relay: each figure is that of the part that is nearest to its limit, and the current through it the
    /// most of the two states.
    /// </summary>
    [Fact]
    public void Wiring_OfTwoLiftPumps_IsThatOfThePartNearestToItsLimit()
    {
        Feed one = Wired("feed 1", 12).WithFuse(Amperes(5));
        Feed other = Wired("feed 2", 18).WithFuse(Amperes(20)).WithRelay(Amperes(30));
        (LiftValues<Real> values, SolvedLift lift) = Read(SurgeTanks.Suction, Lift(one), Lift(other));
        Assert.Equal(other.Ampacity!.Amperes, values.WireAmpacity.Value);
        Assert.Equal(5, values.FuseRating.Value);
        Assert.Equal(30, values.RelayRating.Value);
        double Current(int pump) => Math.Max(lift.Filling.Pumps[pump].Current!.Value, lift.Full!.Value.Pumps[pump].Current!.Value);
        Assert.Equal(Current(1), values.Maximum.WireCurrent.Value, 1e-12);
        Assert.Equal(Current(0), values.Maximum.FuseCurrent.Value, 1e-12);
        Assert.Equal(Current(1), values.Maximum.RelayCurrent.Value, 1e-12);
        Assert.Equal(
            Math.Max(lift.Filling.Pumps[1].FeedDrop, lift.Full!.Value.Pumps[1].FeedDrop), values.Maximum.FeedDrop.Value, 1e-12);
    }

    /// <summary>Without wiring nothing of it is known, and nothing is made up.</summary>
    [Fact]
    public void Wiring_ThatIsNotDescribed_IsNotANumber()
    {
        (LiftValues<Real> values, _) = Read([], Pump.From(SurgeTanks.LiftCurve(1.2)));
        Assert.Equal(double.NaN, values.WireAmpacity.Value);
        Assert.Equal(double.NaN, values.FuseRating.Value);
        Assert.Equal(double.NaN, values.RelayRating.Value);
        Assert.Equal(double.NaN, values.Maximum.WireCurrent.Value);
        Assert.Equal(double.NaN, values.FilterMaximum.Value);
    }

    /// <summary>
    /// Of two filters that whose data end is nearer, as a share: with the strainer on the way to the lift pump in either state the most flows while the tank fills; a filter in the overflow line has
    /// flow only once it is full.
    /// </summary>
    [Fact]
    public void Filter_NearestToTheEndOfItsData_IsLookedForInBothStates()
    {
        Filter strainer = Filter.Of("lift strainer", SurgeTanks.Litres(310), Wren.Kpa(3));
        Filter overflow = Filter.Of("overflow strainer", SurgeTanks.Litres(60), Wren.Kpa(1));
        (LiftValues<Real> first, SolvedLift filling) = Read([strainer], Pump.From(SurgeTanks.LiftCurve(1.2)));
        Assert.Equal(strainer.MaximumFlow.CubicMetersPerSecond, first.FilterMaximum.Value);
        (ILimitedLoss Filter, double Flow) found = LiftReading.FilterOf(filling)!.Value;
        Assert.Equal(strainer, found.Filter);
        Assert.Equal(Math.Max(filling.Filling.State.Flow, filling.Full!.Value.State.Flow), found.Flow, 1e-15);

        SurgeTank tank = SurgeTank.Of(Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve(1.2)), ReturnDestination.SurgeTank, [strainer], [], [overflow]);
        SolvedPoint both = Wren.System().With(tank).Solve(Wren.At(2000, -0.3));
        (ILimitedLoss Filter, double Flow) busiest = LiftReading.FilterOf(both.SolvedCircuit.Lift!)!.Value;
        Assert.Equal("overflow strainer", busiest.Filter.Name);
        Assert.Equal(both.SolvedCircuit.Lift!.Full!.Value.State.ReturnFlow, busiest.Flow, 1e-15);
        Assert.Equal(overflow.MaximumFlow.CubicMetersPerSecond, PointReading.Of(both).Lift.FilterMaximum.Value);

        // A tank that does not stay full has the filling state alone.
        SolvedPoint scarce = Wren.System().With(SurgeTank.Of(Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve(0.1)), ReturnDestination.SurgeTank, [strainer], [], [overflow])).Solve(Wren.At(6000, 0.5));
        Assert.Null(scarce.SolvedCircuit.Lift!.Full);
        Assert.Equal("lift strainer", LiftReading.FilterOf(scarce.SolvedCircuit.Lift!)!.Value.Filter.Name);
    }

    /// <summary>
    /// A figure that may be at most so much is the more of the two states; the inlet is lowest while the tank fills, and what flows through the regulator is the less.
    /// </summary>
    [Fact]
    public void Figures_OfBothStates_AreThoseThatALimitHasToKeep()
    {
        (LiftValues<Real> values, SolvedLift lift) = Read(SurgeTanks.Suction, Lift(Wired("feed 1", 14)));
        CircuitState filling = lift.Filling.State;
        CircuitState full = lift.Full!.Value.State;
        Assert.True(full.OutletGauge > filling.OutletGauge && filling.Flow > full.Flow);
        Assert.Equal(filling.InletGauge, values.Minimum.InletGauge.Value, 1e-12);
        Assert.Equal(filling.InletGauge, values.Maximum.InletGauge.Value, 1e-12);
        Assert.Equal(full.OutletGauge, values.Maximum.OutletGauge.Value, 1e-9);
        Assert.Equal(full.OutletGauge, values.Minimum.OutletGauge.Value, 1e-9);
        Assert.Equal(filling.Flow, values.Maximum.PumpFlow.Value, 1e-15);
        Assert.Equal(full.ReturnFlow, values.Maximum.Returned.Value, 1e-15);
        Assert.Equal(full.RailGauge, values.MaximumTankGauge.Value, 1e-9);
        Assert.Equal(lift.MinimumSustained, values.MinimumSustained.Value);
        Assert.Equal(lift.MaximumSustained, values.MaximumSustained.Value);
        Assert.Equal(lift.Joined.MinimumDraw, values.MinimumDraw.Value);
        Assert.Equal(lift.Joined.MaximumDraw, values.MaximumDraw.Value);
    }

    private static (LiftValues<Real> Values, SolvedLift Lift) Read(IFlowLoss[] suction, params Pump[] pumps)
    {
        SolvedPoint point = Wren.System().With(SurgeTank.Of(
            Volume.FromLiters(1),
            pumps.Length == 1 ? pumps[0] : PumpParallel.Of(pumps),
            ReturnDestination.SurgeTank,
            suction,
            SurgeTanks.LiftLine,
            SurgeTanks.Overflow)).Solve(Wren.At(2500, -0.2));
        return (PointReading.Of(point).Lift, point.SolvedCircuit.Lift!);
    }

    private static Pump Lift(Feed feed) => Pump.Of([SurgeTanks.LiftCurve(0.9, 12), SurgeTanks.LiftCurve()], feed: feed);

    private static Feed Wired(string name, int gauge) => Feed.Of(
            name, Conductor.Awg(gauge), Length.FromMeters(2), Length.FromMeters(2), Temperature.FromDegreesCelsius(60), Contact.DefaultFuse)
        .WithInsulation(Temperature.FromDegreesCelsius(105), Temperature.FromDegreesCelsius(45));

    private static ElectricCurrent Amperes(double amperes) => ElectricCurrent.FromAmperes(amperes);
}
