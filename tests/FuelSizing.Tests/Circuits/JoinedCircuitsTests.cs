using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Two circuits joined by a surge tank, calculated by hand: pumps whose flow falls in a straight line, Q = Q₀ (1 − p/p₀), and lines whose losses go with the square of
/// the flow. Every state is then the root of a quadratic at the most.
/// </summary>
public class JoinedCircuitsTests
{
    private const double Volts = 13.5;
    private const double Rounding = 1e-11;

    // Main pump, m³/s and Pa; rail, Pa.
    private const double MainFree = 6e-5;
    private const double MainDeadhead = 8e5;
    private const double Set = 3e5;
    private const double Injected = 2e-5;

    // Lift pump.
    private const double LiftFree = 8e-5;
    private const double LiftDeadhead = 9e4;

    // Pa s²/m⁶: 8 kPa in the lift line and 20 kPa in the overflow line at 180 L/h.
    private const double LiftLine = 8e3 / (5e-5 * 5e-5);
    private const double Overflow = 2e4 / (5e-5 * 5e-5);

    /// <summary>With no lines and no pressure to work against a lift pump delivers its free flow.</summary>
    [Fact]
    public void LiftPump_OfNoLines_DeliversItsFreeFlow()
    {
        JoinedCircuits joined = Join(Tank(ReturnDestination.SurgeTank));
        Assert.Equal(LiftFree, joined.Sure.Estimate.Flow, LiftFree * 1e-14);
        Assert.Equal(LiftFree, joined.Full!.Value.Estimate.Flow, LiftFree * 1e-14);
        Close(LiftFree - Injected, joined.Full!.Value.Estimate.ReturnFlow);
        Assert.Equal(0, joined.MaximumGauge);
        Assert.Null(joined.MainFull);
    }

    /// <summary>Into a tank that is not full: p₀ (1 − Q/Q₀) = k Q².</summary>
    [Fact]
    public void FillingTank_IsTheQuadraticsRoot()
    {
        JoinedCircuits joined = Join(Tank(ReturnDestination.SurgeTank, LiftLine));
        double flow = Root(LiftLine, LiftDeadhead / LiftFree, -LiftDeadhead);
        Close(flow, joined.Filling.Estimate.Flow);
        Close(LiftLine * flow * flow, joined.Filling.Estimate.OutletGauge);
        Assert.Equal(0, joined.Filling.Estimate.RailGauge);
    }

    /// <summary>A return to the surge tank draws what is injected, whatever the tank's pressure: p₀ (1 − Q/Q₀) = k₁ Q² + k₂ (Q − q)².</summary>
    [Fact]
    public void FullTank_WithTheReturnInIt_IsTheQuadraticsRoot()
    {
        JoinedCircuits joined = Join(Tank(ReturnDestination.SurgeTank, LiftLine, Overflow));
        double flow = Root(
            LiftLine + Overflow,
            (LiftDeadhead / LiftFree) - (2 * Overflow * Injected),
            (Overflow * Injected * Injected) - LiftDeadhead);
        CircuitState full = joined.Full!.Value.Estimate;
        double pressure = Overflow * (flow - Injected) * (flow - Injected);
        Close(flow, full.Flow);
        Close(flow - Injected, full.ReturnFlow);
        Close(pressure, joined.MaximumGauge);
        Close(pressure, full.RailGauge);
        Close((LiftLine * flow * flow) + pressure, full.OutletGauge);
        Assert.Equal(Injected, joined.MinimumDraw);
        Assert.Equal(Injected, joined.MaximumDraw);
        Assert.Equal(Injected, joined.Balance.Drawn, Injected * 1e-14);

        // The main pumps gain the pressure in the tank: Q = Q₀ (1 − (set − p)/p₀).
        CircuitState main = joined.MainFull!.Value.Estimate;
        Close(MainFree * (1 - ((Set - pressure) / MainDeadhead)), main.Flow);
        Close(pressure, main.InletGauge);
        Close(Set, main.RailGauge);
        Close(pressure, main.ReturnGauge);
    }

    /// <summary>A return to the main tank draws all that the main pumps pass, more the more pressure there is in the tank: one equation in what overflows.</summary>
    [Fact]
    public void FullTank_WithTheReturnInTheOther_IsTheQuadraticsRoot()
    {
        JoinedCircuits joined = Join(Tank(ReturnDestination.MainTank, overflow: Overflow));

        // x = lifted − drawn = A − B p with p = k x².
        double spare = LiftFree - (MainFree * (1 - (Set / MainDeadhead)));
        double slope = (LiftFree / LiftDeadhead) + (MainFree / MainDeadhead);
        double over = Root(slope * Overflow, 1, -spare);
        double pressure = Overflow * over * over;
        Close(pressure, joined.MaximumGauge, 1e-9);
        Close(over, joined.Full!.Value.Estimate.ReturnFlow, 1e-9);
        Close(LiftFree * (1 - (pressure / LiftDeadhead)), joined.Full!.Value.Estimate.Flow, 1e-9);
        double drawn = MainFree * (1 - ((Set - pressure) / MainDeadhead));
        Close(drawn, joined.Balance.Drawn, 1e-9);

        // The lift pump is judged by the most that is drawn, that with the tank full.
        Close(drawn, joined.MaximumDraw, 1e-9);
        Assert.Equal(0, joined.MainFull!.Value.Estimate.ReturnGauge, 1e-6);
    }

    /// <summary>An overflow line that rises holds a column of fuel over the tank: the lift pump works against that, overflow or not.</summary>
    [Fact]
    public void OverflowLineThatRises_IsWorkedAgainstWithNothingThatOverflows()
    {
        SurgeTank tank = SurgeTank.Of(
            Volume.FromLiters(1), Straight(LiftFree, LiftDeadhead), ReturnDestination.SurgeTank, overflow: [new Column(6e3)]);
        JoinedCircuits joined = Join(tank);
        Close(LiftFree * (1 - (6e3 / LiftDeadhead)), joined.Sure.Estimate.Flow);
        Assert.Equal(LiftFree, joined.Filling.Estimate.Flow, LiftFree * 1e-14);
        Close(6e3, joined.MaximumGauge);
    }

    /// <summary>One that falls is taken to be vented: it helps the lift pump to nothing.</summary>
    [Fact]
    public void OverflowLineThatFalls_HelpsTheLiftPumpToNothing()
    {
        SurgeTank tank = SurgeTank.Of(
            Volume.FromLiters(1), Straight(LiftFree, LiftDeadhead), ReturnDestination.SurgeTank, overflow: [new Column(-6e3)]);
        JoinedCircuits joined = Join(tank);
        Assert.Equal(LiftFree, joined.Sure.Estimate.Flow, LiftFree * 1e-14);
        Assert.Equal(0, joined.MinimumGauge);
        Assert.Equal(0, joined.MaximumGauge);
    }

    [Fact]
    public void LiftPump_ThatBringsLessThanIsDrawn_LeavesTheTankNotFull()
    {
        JoinedCircuits joined = Join(Tank(ReturnDestination.SurgeTank, LiftLine, Overflow, free: 1.9e-5));
        Assert.False(joined.IsFull);
        Assert.Null(joined.Full);
        Assert.Null(joined.MainFull);
        Assert.Equal(0, joined.MaximumGauge);
        Assert.True(joined.Sure.Estimate.Flow < joined.MinimumDraw);
    }

    /// <summary>What a starved rail does not get is not drawn, but the lift pump is judged by what the engine asks for.</summary>
    [Theory]
    [InlineData(ReturnDestination.SurgeTank)]
    [InlineData(ReturnDestination.MainTank)]
    public void StarvedRail_IsNoRelief(ReturnDestination to)
    {
        JoinedCircuits joined = Join(Tank(to), injected: MainFree * 1.5);
        Assert.True(joined.Balance.Drawn < MainFree * 1.01);
        Assert.Equal(MainFree * 1.5, joined.MinimumDraw);
        Assert.Equal(MainFree * 1.5, joined.MaximumDraw);
    }

    /// <summary>A curve that begins at a higher pressure still says what is lifted at the least, and nothing of what is lifted at the most.</summary>
    [Fact]
    public void LiftCurve_ThatBeginsAtAHigherPressure_IsALowerBoundAlone()
    {
        PumpCurve curve = PumpCurve.At(
            "lift pump, measured from 40 kPa",
            Wren.Volt(Volts),
            (Wren.Kpa(40), VolumeFlow.FromLitersPerHour(180)),
            (Wren.Kpa(90), VolumeFlow.Zero));
        JoinedCircuits joined = Join(SurgeTank.Of(
            Volume.FromLiters(1), Pump.From(curve), ReturnDestination.SurgeTank, overflow: [new SquareLawResistance(Overflow)]));
        Assert.Equal(RailState.NotCovered, joined.Filling.Estimate.State);
        Assert.Equal(180, VolumeFlow.FromCubicMetersPerSecond(joined.Filling.Lower.Flow).LitersPerHour, 1e-9);
        Assert.True(double.IsNaN(joined.MaximumGauge));
        Assert.Equal((RailState.Regulated, RailState.NotCovered), (joined.MainFull!.Value.Lower.State, joined.MainFull.Value.Upper.State));

        // Also where what is known of it is less than what is drawn: it may be more.
        Assert.True(double.IsNaN(Join(
            SurgeTank.Of(Volume.FromLiters(1), Pump.From(curve), ReturnDestination.SurgeTank, overflow: [new SquareLawResistance(Overflow)]), 5.1e-5).MaximumGauge));
    }

    /// <summary>Lines that fall push fuel through the pump: it passes its free flow at the least, and nothing says how much more.</summary>
    [Fact]
    public void LinesThatFall_LeaveTheFreeFlowALowerBoundAlone()
    {
        JoinedCircuits Falling(double pascals) => Join(SurgeTank.Of(
            Volume.FromLiters(1), Straight(LiftFree, LiftDeadhead), ReturnDestination.SurgeTank, liftLine: [new Column(pascals)]));
        Assert.Equal(RailState.NotCovered, Falling(-2e3).Filling.Estimate.State);
        Assert.Equal(LiftFree, Falling(-2e3).Filling.Lower.Flow, LiftFree * 1e-12);
        Assert.True(double.IsNaN(Falling(-2e3).MaximumGauge));
        Assert.Equal(RailState.Regulated, Falling(0).Filling.Estimate.State);
        Close(LiftFree * (1 - (2e3 / LiftDeadhead)), Falling(2e3).Filling.Estimate.Flow);
    }

    private static JoinedCircuits Join(SurgeTank tank, double injected = Injected)
    {
        CircuitTask task = new(
            LineLayout.Return, Straight(MainFree, MainDeadhead), Plumbing.None, Volts, null, Set, 0, injected, 740, 0.6e-6);
        return JoinedCircuits.Of(tank, task, CircuitSolver.SolveBounds(task));
    }

    private static SurgeTank Tank(ReturnDestination to, double liftLine = 0, double overflow = 0, double free = LiftFree) => SurgeTank.Of(
        Volume.FromLiters(1),
        Straight(free, LiftDeadhead),
        to,
        liftLine: liftLine > 0 ? [new SquareLawResistance(liftLine)] : null,
        overflow: overflow > 0 ? [new SquareLawResistance(overflow)] : null);

    private static Pump Straight(double free, double deadhead) => Pump.From(PumpCurve.At(
        "straight pump",
        Wren.Volt(Volts),
        (Pressure.Zero, VolumeFlow.FromCubicMetersPerSecond(free)),
        (Pressure.FromPascals(deadhead), VolumeFlow.Zero)));

    private static double Root(double a, double b, double c) => a == 0 ? -c / b : (-b + Math.Sqrt((b * b) - (4 * a * c))) / (2 * a);

    private static void Close(double expected, double actual, double share = Rounding) =>
        Assert.Equal(expected, actual, Math.Abs(expected) * share);

    /// <summary>A height of fuel, whatever flows.</summary>
    private sealed class Column(double pascals) : IFlowLoss
    {
        public string Name => "column";

        double IFlowLoss.LossPascals(double flow, double density, double kinematicViscosity) => 0;

        double IFlowLoss.ElevationPascals(double density) => pascals;
    }
}
