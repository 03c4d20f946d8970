using FuelSizing.Circuits;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Whole circuits calculated by hand: a pump whose flow falls in a straight line, Q = Q₀ (1 − p/p₀), and lines whose losses go
/// with the square of the flow, Δp = k Q². Every state of the rail is then the root of a quadratic at the most.
/// </summary>
public class SquareLawCircuitTests
{
    private const double FreeFlow = 6e-5;
    private const double Deadhead = 8e5;
    private const double Set = 3e5;
    private const double Volts = 13.5;

    // Pa s²/m⁶: 60, 12 and 10 kPa at 180 L/h.
    private const double Supply = 6e4 / (5e-5 * 5e-5);
    private const double Suction = 1.2e4 / (5e-5 * 5e-5);
    private const double Back = 1e4 / (5e-5 * 5e-5);

    // The pump's figures come through units and its curve, the flow through a few secants.
    private const double Rounding = 1e-12;

    private static readonly Pump Straight = StraightPump(FreeFlow, Deadhead, Volts);

    // The upper half of it: what it delivers against more is not known.
    private static readonly Pump OpenEnded = Pump.From(PumpCurve.At(
        "open-ended pump",
        Wren.Volt(Volts),
        (Pressure.Zero, VolumeFlow.FromCubicMetersPerSecond(FreeFlow)),
        (Pressure.FromPascals(Deadhead / 2), VolumeFlow.FromCubicMetersPerSecond(FreeFlow / 2))));

    [Fact]
    public void Regulated_Circuit_IsTheQuadraticsRoot()
    {
        const double Injected = 2e-5;
        (CircuitTask task, SquareLawResistance suction, SquareLawResistance supply, SquareLawResistance back) = Circuit(Injected);
        CircuitState state = CircuitSolver.Solve(task);

        // set + (k₁ + k₂) Q² = p₀ (1 − Q/Q₀)
        double flow = Root(Suction + Supply, Deadhead / FreeFlow, Set - Deadhead);
        Assert.Equal(RailState.Regulated, state.State);
        Close(flow, state.Flow);
        Close(flow - Injected, state.ReturnFlow);
        Close(flow, state.MinimumAtSet);
        Close(flow, state.MaximumAtSet);
        Close(-Suction * flow * flow, state.InletGauge);
        Close(Set + (Supply * flow * flow), state.OutletGauge);
        Close(Back * (flow - Injected) * (flow - Injected), state.ReturnGauge);
        Assert.Equal(Set, state.RailGauge);
        Assert.Equal(Volts, state.FedVoltage);

        // A solver is asked for thousands of points: each line a few times, the return line once.
        Assert.InRange(suction.Asked, 2, 5);
        Assert.InRange(supply.Asked, 2, 5);
        Assert.Equal(1, back.Asked);
    }

    /// <summary>The regulator governs down to its least return, and at it.</summary>
    [Fact]
    public void Return_AtTheRegulatorsMinimum_StillGoverns()
    {
        (CircuitTask task, _, _, _) = Circuit(2e-5);
        double returned = CircuitSolver.Solve(task).ReturnFlow;
        Assert.Equal(RailState.Regulated, CircuitSolver.Solve(task with { MinimumReturn = returned }).State);
        Assert.Equal(
            RailState.AtRegulatorLimit, CircuitSolver.Solve(task with { MinimumReturn = Math.BitIncrement(returned) }).State);
    }

    [Fact]
    public void NarrowReturnLine_HoldsTheRailUpAsTheQuadraticSays()
    {
        const double Injected = 1e-6;
        const double Narrow = 2e6 / (5e-5 * 5e-5);
        (CircuitTask task, _, _, SquareLawResistance back) = Circuit(Injected, back: Narrow);
        CircuitState state = CircuitSolver.Solve(task);

        // (k₁ + k₂) Q² + k₃ (Q − q)² = p₀ (1 − Q/Q₀)
        double flow = Root(
            Suction + Supply + Narrow,
            (Deadhead / FreeFlow) - (2 * Narrow * Injected),
            (Narrow * Injected * Injected) - Deadhead);
        double rail = Narrow * (flow - Injected) * (flow - Injected);
        Assert.Equal(RailState.ReturnFloor, state.State);
        Assert.True(rail > Set);
        Close(flow, state.Flow);
        Close(rail, state.RailGauge);
        Close(rail, state.ReturnGauge);
        Close(rail + (Supply * flow * flow), state.OutletGauge);
        Close(Root(Suction + Supply, Deadhead / FreeFlow, Set - Deadhead), state.MinimumAtSet);

        // Once to see that it is too narrow, then a few secants.
        Assert.InRange(back.Asked, 3, 14);
    }

    /// <summary>A return line that takes just the set pressure leaves the regulator wide open; slightly more lifts the rail.</summary>
    [Fact]
    public void ReturnLine_ThatTakesJustTheSetPressure_IsWideEnough()
    {
        const double Injected = 2e-5;
        double surplus = CircuitSolver.Solve(Circuit(Injected).Task).ReturnFlow;
        CircuitState just = CircuitSolver.Solve(Circuit(Injected, back: Set * (1 - 1e-13) / (surplus * surplus)).Task);
        CircuitState over = CircuitSolver.Solve(Circuit(Injected, back: Set * (1 + 1e-6) / (surplus * surplus)).Task);
        Assert.Equal(RailState.Regulated, just.State);
        Assert.Equal(RailState.ReturnFloor, over.State);
        Assert.InRange(over.RailGauge / Set, 1, 1 + 1e-6);
    }

    [Fact]
    public void Demand_AboveWhatThePumpDeliversAtTheSetPressure_LetsTheRailSag()
    {
        const double Injected = 4.5e-5;
        CircuitState state = CircuitSolver.Solve(Circuit(Injected).Task);

        // p₀ (1 − q/Q₀) − (k₁ + k₂) q²
        double rise = Deadhead * (1 - (Injected / FreeFlow));
        Assert.Equal(RailState.Sagging, state.State);
        Close(rise - ((Suction + Supply) * Injected * Injected), state.RailGauge);
        Close(Injected, state.Flow);
        Close(rise, state.PumpRise);
        Assert.Equal(0, state.ReturnFlow);
        Assert.Equal(0, state.ReturnGauge);
        Close(Root(Suction + Supply, Deadhead / FreeFlow, Set - Deadhead), state.MaximumAtSet);
    }

    /// <summary>Lines whose pressure drop takes all the pressure, or a demand above the free flow, starve the rail.</summary>
    [Theory]
    [InlineData(5.5e-5)]
    [InlineData(6e-5)]
    [InlineData(7e-5)]
    public void Demand_ThatTheLinesOrThePumpCannotPass_StarvesTheRail(double injected)
    {
        CircuitState state = CircuitSolver.Solve(Circuit(injected).Task);
        Assert.Equal(RailState.Starved, state.State);
        Assert.Equal(0, state.RailGauge);

        // What the lines let through to a rail without pressure, and no more than is asked for.
        Close(Math.Min(injected, Root(Suction + Supply, Deadhead / FreeFlow, -Deadhead)), state.Flow);
        Assert.Equal(0, state.ReturnFlow);
        Assert.True(state.Residual < 1e-9, $"{state.Residual}");
    }

    [Fact]
    public void Returnless_Circuit_LosesThePathToTheRailOnWhatIsInjected()
    {
        const double Injected = 2e-5;
        (CircuitTask task, _, _, _) = Circuit(Injected);
        CircuitState state = CircuitSolver.Solve(task with { Layout = LineLayout.Returnless });

        // The regulator sits upstream of the line: set + k₁ Q² = p₀ (1 − Q/Q₀).
        double flow = Root(Suction, Deadhead / FreeFlow, Set - Deadhead);
        Assert.Equal(RailState.Regulated, state.State);
        Close(flow, state.Flow);
        Close(Set - (Supply * Injected * Injected), state.RailGauge);
        Close(Set, state.OutletGauge);
    }

    /// <summary>Fuel through each part: what the pump gives, what goes forward, what goes back.</summary>
    [Theory]
    [InlineData(LineLayout.Return)]
    [InlineData(LineLayout.Returnless)]
    public void Flows_OfACircuit_AreThoseOfItsState(LineLayout layout)
    {
        const double Injected = 2e-5;
        CircuitTask task = Circuit(Injected).Task with { Layout = layout };
        CircuitState state = CircuitSolver.Solve(task);
        Assert.Equal(
            [state.Flow, layout == LineLayout.Return ? state.Flow : Injected, state.Flow - Injected],
            task.Flows(state).Select(way => way.Flow));
    }

    /// <summary>Two pumps in series: their rises add up, so the quadratic has both slopes in it.</summary>
    [Fact]
    public void Series_OfTwoStraightPumps_IsTheQuadraticsRoot()
    {
        const double Injected = 2e-5;
        const double LiftFree = 8e-5;
        const double LiftDeadhead = 1e5;
        PumpAssembly series = PumpSeries.Of(
            SeriesBypass.CheckValve, StraightPump(LiftFree, LiftDeadhead, Volts), Straight);
        (CircuitTask task, _, SquareLawResistance supply, SquareLawResistance back) = Circuit(Injected);
        CircuitState state = CircuitSolver.Solve(task with { Pump = series });
        double flow = Root(
            Suction + Supply, (Deadhead / FreeFlow) + (LiftDeadhead / LiftFree), Set - Deadhead - LiftDeadhead);
        Assert.Equal(RailState.Regulated, state.State);
        Close(flow, state.Flow);
        Close(Set + (Supply * flow * flow), state.OutletGauge);
        Assert.InRange(supply.Asked, 2, 12);
        Assert.Equal(1, back.Asked);

        const double Narrow = 8e6 / (5e-5 * 5e-5);
        CircuitState narrow = CircuitSolver.Solve(Circuit(Injected, back: Narrow).Task with { Pump = series });
        double more = Root(
            Suction + Supply + Narrow,
            (Deadhead / FreeFlow) + (LiftDeadhead / LiftFree) - (2 * Narrow * Injected),
            (Narrow * Injected * Injected) - Deadhead - LiftDeadhead);
        Assert.Equal(RailState.ReturnFloor, narrow.State);
        Close(more, narrow.Flow);
        Close(Narrow * (more - Injected) * (more - Injected), narrow.RailGauge);
    }

    /// <summary>A controller finds the voltage at which the pump gives what is injected against what that needs.</summary>
    [Fact]
    public void SpeedControl_WithLines_RunsThePumpWhereItsRiseIsTheOneNeeded()
    {
        const double Injected = 2e-5;
        const double Slow = 6;
        Pump pump = Pump.Of([Curve(3e-5, 3e5, Slow), Curve(FreeFlow, Deadhead, Volts)]);
        CircuitTask task = Circuit(Injected).Task with { Layout = LineLayout.Returnless, Pump = pump, MinimumSupply = Slow };
        CircuitState state = CircuitSolver.Solve(task);
        double losses = (Suction + Supply) * Injected * Injected;
        Assert.Equal(RailState.Regulated, state.State);
        Assert.Equal(Set, state.RailGauge);
        Close(Injected, state.Flow);
        Close(Set + losses, state.PumpRise);
        Close(Set + losses, pump.Running(state.FedVoltage).RiseAt(Injected), 1e-9);
        Assert.InRange(state.FedVoltage, Slow, Volts);

        // At its slowest it gives p₀ (1 − q/Q₀) less the losses: too much for a low set pressure, and just enough for that.
        const double Minimum = 1e-5;
        double floor = (3e5 * (1 - (Minimum / 3e-5))) - ((Suction + Supply) * Minimum * Minimum);
        CircuitTask slow = task with { Injected = Minimum };
        CircuitState over = CircuitSolver.Solve(slow with { Set = floor / 2 });
        Assert.Equal(RailState.PumpFloor, over.State);
        Assert.Equal(Slow, over.FedVoltage);
        Close(floor, over.RailGauge);
        CircuitState just = CircuitSolver.Solve(slow with { Set = floor * (1 + 1e-9) });
        Assert.Equal(RailState.Regulated, just.State);
        Close(Slow, just.FedVoltage, 1e-6);

        // Full supply is not enough for a high one.
        double maximum = (Deadhead * (1 - (Injected / FreeFlow))) - losses;
        CircuitState sagging = CircuitSolver.Solve(task with { Set = maximum * 1.01 });
        Assert.Equal(RailState.Sagging, sagging.State);
        Close(maximum, sagging.RailGauge);

        // A controller whose minimum voltage is above the supply has the supply.
        CircuitState starting = CircuitSolver.Solve(task with { MinimumSupply = Volts + 1 });
        Assert.Equal(RailState.PumpFloor, starting.State);
        Assert.Equal(Volts, starting.FedVoltage);
        Close(maximum, starting.RailGauge);
    }

    /// <summary>A state's residual is how far the pump's flow at its rise is off its flow.</summary>
    [Theory]
    [InlineData(1.25, 0.2)]
    [InlineData(0.8, 0.25)]
    [InlineData(1, 0)]
    public void Residual_OfAStateMadeWrong_SaysByHowMuch(double wrong, double expected)
    {
        CircuitState state = CircuitSolver.Solve(Circuit(2e-5).Task);
        CircuitState other = state with { Flow = state.Flow * wrong };
        Assert.Equal(expected, other.Residual, 8);
    }

    /// <summary>A table pays from a hundred points on, and has a cell for every eight of them within limits.</summary>
    [Theory]
    [InlineData(100, 32)]
    [InlineData(800, 100)]
    [InlineData(100_000, 256)]
    public void Table_OfManyPoints_IsAsFineAsTheyPayFor(int points, int cells)
    {
        (CircuitTask task, _, SquareLawResistance supply, _) = Circuit(2e-5);
        Assert.Null(CircuitTable.Of(task, Set, Set * 1.5, 99));
        Assert.Null(CircuitTable.Of(task, 0, Set * 1.5, points));
        Assert.Equal(0, supply.Asked);
        CircuitTable table = CircuitTable.Of(task, Set, Set * 1.5, points)!;

        // Five questions a pressure, a few more for the first: see IntersectionTableTests.
        Assert.InRange(supply.Asked, 4 * (cells + 1), (5 * (cells + 1)) + 5);

        // Over the whole range.
        foreach (double set in new[] { Set, Set * 1.25, Set * 1.5 })
        {
            Assert.True(table.Lower!.TryIntersect(task with { Set = set }, out _));
        }

        // A pump whose curve goes down to no flow has no open end.
        Assert.Same(table.Lower, table.Upper);
    }

    [Fact]
    public void Table_OfOneSetPressure_ServesIt()
    {
        (CircuitTask task, _, SquareLawResistance supply, _) = Circuit(2e-5);
        foreach (double maximum in new[] { Set, Set * (1 + 1e-3) })
        {
            int before = supply.Asked;
            CircuitTable table = CircuitTable.Of(task, Set, maximum, 1000)!;
            Assert.InRange(supply.Asked - before, 4, 20);
            foreach (double set in new[] { Set, maximum })
            {
                Assert.True(table.Lower!.TryIntersect(task with { Set = set }, out Intersection met));
                Close(Root(Suction + Supply, Deadhead / FreeFlow, set - Deadhead), met.Flow);
            }
        }
    }

    /// <summary>A curve that ends with flow left is read by two bounds: a table for each.</summary>
    [Fact]
    public void Table_OfAPumpWithAnOpenEnd_HasBothReadings()
    {
        CircuitTask task = Circuit(2e-5).Task with { Pump = OpenEnded };
        CircuitTable table = CircuitTable.Of(task, Deadhead * 0.3, Deadhead * 0.7, 200)!;
        Assert.NotSame(table.Lower, table.Upper);
        CircuitTask beyond = task with { Set = Deadhead * 0.6 };
        Intersection lower = PumpIntersection.AtSet(beyond, OpenEnded.Bounds(Volts).Lower);
        Intersection upper = PumpIntersection.AtSet(beyond, OpenEnded.Bounds(Volts).Upper);
        Assert.True(upper.Flow > lower.Flow);
        CircuitState swept = CircuitSolver.Solve(beyond, table);
        Close(lower.Flow, swept.MinimumAtSet);
        Close(upper.Flow, swept.MaximumAtSet);
    }

    /// <summary>
    /// Where the lines need more than the curve's last pressure to pass its last flow, the least flow is the one that they
    /// pass at that pressure: k Q² = p₁ − set. The regulator governs with that, as long as enough comes back.
    /// </summary>
    [Fact]
    public void OpenEnd_WithFlowToSpare_IsEnoughForTheRegulator()
    {
        const double Injected = 1e-5;
        CircuitTask task = Circuit(Injected).Task with { Pump = OpenEnded, Set = (Deadhead / 2) - 5e3 };
        CircuitState state = CircuitSolver.Solve(task);
        double flow = Math.Sqrt(5e3 / (Suction + Supply));
        Assert.True(flow < FreeFlow / 2);
        Assert.Equal(RailState.Regulated, state.State);
        Close(flow, state.Flow, 1e-9);
        Close(flow - Injected, state.Returned!.Value, 1e-8);
        Assert.Equal(0, state.Residual);
        Assert.Equal(RailState.AtRegulatorLimit, CircuitSolver.Solve(task with { MinimumReturn = 1e-5 }).State);

        // With more injected than that nobody knows.
        CircuitState unknown = CircuitSolver.Solve(task with { Injected = 2e-5 });
        Assert.Equal(RailState.NotCovered, unknown.State);
        Assert.Null(unknown.PumpFlow);
        Assert.Null(unknown.Returned);
    }

    /// <summary>A branch at the end of its curve passes what the other leaves of the flow that the lines take at that rise.</summary>
    [Fact]
    public void OpenEnd_InParallelWithAnotherPump_PassesWhatThatOneLeaves()
    {
        const double Flow = 4.2e-5;
        CircuitTask task = Circuit(1e-5).Task;
        CircuitState state = CircuitSolver.Solve(task with
        {
            Pump = PumpParallel.Of(OpenEnded, Straight),
            Set = (Deadhead / 2) - ((Suction + Supply) * Flow * Flow),
        });

        // A table's end is widened by a billionth of it, and the lines' loss there is an eighth of the rise.
        Close(Flow, state.Flow, 1e-8);
        Assert.Equal(0, state.Residual);
        Assert.Equal(2, state.Pumps.Count);
        Close(Flow - (FreeFlow / 2), state.Pumps[0].Flow, 5e-8);
        Close(FreeFlow / 2, state.Pumps[1].Flow, 1e-8);
    }

    /// <summary>A returnless regulator is not affected by the supply line's pressure drop, one at the rail by supply and return.</summary>
    [Fact]
    public void WayToTheRegulator_IsWhatLiesBeforeIt()
    {
        CircuitTask task = Circuit(2e-5).Task;
        CircuitTask supplied = task with { Plumbing = Plumbing.Of(supply: task.Plumbing.Supply, returnLine: task.Plumbing.ReturnLine) };
        Assert.True(task.HasPathToRegulator);
        Assert.True((task with { Layout = LineLayout.Returnless }).HasPathToRegulator);
        Assert.True(supplied.HasPathToRegulator);
        Assert.False((supplied with { Layout = LineLayout.Returnless }).HasPathToRegulator);
        Assert.False((task with { Plumbing = Plumbing.Of(returnLine: task.Plumbing.ReturnLine) }).HasPathToRegulator);
        Close(Supply * 4e-10, task.LossesAt(2e-5).Supply);
        Assert.Equal(0, (task with { Layout = LineLayout.Returnless }).LossesAt(2e-5).Supply);
    }

    [Fact]
    public void Losses_CarriedOn_LieOnTheLineThroughBoth()
    {
        PathLosses further = new PathLosses(2, 20).CarriedOn(new(1, 14), 0.5);
        Assert.Equal(2.5, further.Suction);
        Assert.Equal(23, further.Supply);
    }

    private static (CircuitTask Task, SquareLawResistance Suction, SquareLawResistance Supply, SquareLawResistance Back) Circuit(
        double injected, double back = Back)
    {
        (SquareLawResistance first, SquareLawResistance second, SquareLawResistance third) = (new(Suction), new(Supply), new(back));
        return (
            new(LineLayout.Return, Straight, Plumbing.Of([first], [second], [third]), Volts, null, Set, 0, injected, 740, 5e-7),
            first,
            second,
            third);
    }

    private static Pump StraightPump(double freeFlow, double deadhead, double volts) => Pump.From(Curve(freeFlow, deadhead, volts));

    private static PumpCurve Curve(double freeFlow, double deadhead, double volts) => PumpCurve.At(
        "straight pump",
        Wren.Volt(volts),
        (Pressure.Zero, VolumeFlow.FromCubicMetersPerSecond(freeFlow)),
        (Pressure.FromPascals(deadhead), VolumeFlow.Zero));

    /// <summary>The positive root of a x² + b x + c, of which c is negative.</summary>
    private static double Root(double a, double b, double c)
    {
        double root = Math.Sqrt((b * b) - (4 * a * c));
        return b > 0 ? -2 * c / (b + root) : (root - b) / (2 * a);
    }

    private static void Close(double expected, double actual, double share = Rounding) =>
        Assert.InRange(actual - expected, -share * Math.Abs(expected), share * Math.Abs(expected));
}
