using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Circuits that cannot do their job, each by hand: a pump whose flow falls in a straight line, p = p₀ (1 − Q/Q₀), lines whose losses go with the square of
/// the flow, and lines that climb.
/// </summary>
public class StarvedCircuitTests
{
    private const double FreeFlow = 6e-5;
    private const double Deadhead = 8e5;
    private const double Set = 3e5;

    // Pa s²/m⁶: 10 kPa at 1e-5 m³/s.
    private const double Loss = 1e4 / 1e-10;

    private static readonly Pump Straight = Pump.From(PumpCurve.At(
        "straight pump",
        Wren.Volt(13.5),
        (Pressure.Zero, VolumeFlow.FromCubicMetersPerSecond(FreeFlow)),
        (Pressure.FromPascals(Deadhead), VolumeFlow.Zero)));

    /// <summary>
    /// A regulator at the tank goes on holding 300 kPa before a supply line that passes 3e-5 m³/s at that, of 3.2e-5 that are asked for: the pump runs where it
    /// does with less demand, and what does not get to the rail returns.
    /// </summary>
    [Fact]
    public void SupplyLine_BehindARegulatorThatHolds_StarvesTheRailAndReturnsTheRest()
    {
        SquareLawResistance suction = new(Loss / 10);
        SquareLawResistance supply = new(Set / (3e-5 * 3e-5));
        CircuitTask task = Task(3.2e-5, Plumbing.Of([suction], [supply], [])) with { Layout = LineLayout.Returnless };
        CircuitState state = CircuitSolver.Solve(task);
        double flow = Root(Loss / 10, Deadhead / FreeFlow, Set - Deadhead);
        Assert.True(flow > 3.2e-5);
        Assert.Equal(RailState.Starved, state.State);
        Close(flow, state.Flow);
        Close(flow - 3e-5, state.ReturnFlow);
        Close(Set, state.OutletGauge);
        Close(-Loss / 10 * flow * flow, state.InletGauge);
        Assert.Equal((0, 0), (state.RailGauge, state.ReturnGauge));
        Assert.Equal(13.5, state.FedVoltage);

        // Through the suction all that the pump gives, through the supply line what gets to the rail.
        Assert.Equal([flow, 3e-5], task.Flows(state).Select(way => way.Flow), (one, other) => Math.Abs(one - other) < 1e-12 * one);
    }

    /// <summary>A line that takes all that a pump has passes what is left of its rise: (k₁ + k₂) Q² = p₀ (1 − Q/Q₀), with nothing returned.</summary>
    [Fact]
    public void Lines_ThatTakeAllOfAPumpsRise_PassWhatTheyCan()
    {
        SquareLawResistance suction = new(Loss * 3);
        SquareLawResistance supply = new(Loss * 5);
        CircuitState state = CircuitSolver.Solve(Task(4e-5, Plumbing.Of([suction], [supply], [])));
        double flow = Root(8 * Loss, Deadhead / FreeFlow, -Deadhead);
        Assert.True(flow < 4e-5);
        Assert.Equal(RailState.Starved, state.State);
        Close(flow, state.Flow);
        Assert.Equal(0, state.ReturnFlow);
        Close(-3 * Loss * flow * flow, state.InletGauge);
        Close(5 * Loss * flow * flow, state.OutletGauge);
    }

    /// <summary>Without lines a demand over the free flow gets the free flow; one just at it too.</summary>
    [Theory]
    [InlineData(7e-5)]
    [InlineData(6e-5)]
    public void Demand_OverTheFreeFlowOfAPumpWithoutLines_GetsTheFreeFlow(double injected)
    {
        CircuitState state = CircuitSolver.Solve(Task(injected, Plumbing.None));
        Assert.Equal(RailState.Starved, state.State);
        Close(FreeFlow, state.Flow, 1e-9);
        Assert.Equal((0, 0, 0), (state.ReturnFlow, state.RailGauge, state.InletGauge));
        Assert.Equal(0, state.Residual);
    }

    /// <summary>A line that climbs by more than the pump's deadhead passes nothing: no flow, no heat.</summary>
    [Fact]
    public void Line_ThatClimbsOverThePumpsDeadhead_PassesNothing()
    {
        Plumbing lines = Plumbing.Of([], [new Climb(Deadhead * 1.01)], []);
        CircuitState state = CircuitSolver.Solve(Task(1e-5, lines));
        Assert.Equal((RailState.Starved, 0, 0, 0), (state.State, state.Flow, state.ReturnFlow, state.RailGauge));
        Close(Deadhead, state.OutletGauge, 1e-9);
        Assert.Equal(0, state.Residual);

        OperatingResult result = Wren.System().With(Wren.WiredPump).With(lines).Solve(Wren.At(5000, 0.3));
        Assert.Equal(RailState.Starved, result.RailState);
        Assert.Null(result.Circuit.HeatToTank);
        Assert.NotNull(Wren.System().With(Wren.WiredPump).Solve(Wren.At(5000, 0.3)).Circuit.HeatToTank);
    }

    /// <summary>
    /// A return line that climbs holds the rail up by its height wherever the pump can: 500 kPa + k (Q − q)² = p₀ (1 − Q/Q₀). Where the pump does not reach
    /// that height with what is injected the regulator is shut, and the rail is what is left. One pump, or two in series that are as one.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void ReturnLine_ThatClimbs_HoldsTheRailUpAsFarAsThePumpReaches(bool inSeries)
    {
        const double Height = 5e5;
        PumpAssembly pump = inSeries
            ? PumpSeries.Of(SeriesBypass.CheckValve, Half("first"), Half("second"))
            : Straight;
        CircuitTask Of(double injected) => Task(injected, Plumbing.Of([], [], [new Climb(Height), new SquareLawResistance(Loss)])) with { Pump = pump };

        const double Injected = 1e-5;
        CircuitState held = CircuitSolver.Solve(Of(Injected));
        double flow = Root(Loss, (Deadhead / FreeFlow) - (2 * Loss * Injected), Height + (Loss * Injected * Injected) - Deadhead);
        Assert.Equal(RailState.ReturnFloor, held.State);
        Close(flow, held.Flow, 1e-11);
        Close(Height + (Loss * (flow - Injected) * (flow - Injected)), held.RailGauge, 1e-11);
        Close(held.RailGauge, held.ReturnGauge);

        // At 3e-5 m³/s the pump has 400 kPa: more than the regulator's 300, less than the height.
        CircuitState below = CircuitSolver.Solve(Of(3e-5));
        Assert.Equal(RailState.Sagging, below.State);
        Close(Deadhead / 2, below.RailGauge, 1e-11);
        Assert.Equal(0, below.ReturnFlow);
    }

    /// <summary>A curve that begins at 200 kPa and ends at 500 kPa with flow left is enough for a regulator that governs between them, and for nothing else.</summary>
    [Fact]
    public void Curve_ThatBeginsLateAndEndsOpen_IsEnoughForARegulatorBetween()
    {
        Pump between = Pump.From(PumpCurve.At(
            "between",
            Wren.Volt(13.5),
            (Wren.Kpa(200), VolumeFlow.FromCubicMetersPerSecond(5e-5)),
            (Wren.Kpa(500), VolumeFlow.FromCubicMetersPerSecond(2e-5))));
        CircuitTask task = Task(1e-5, Plumbing.None) with { Pump = between };
        CircuitState state = CircuitSolver.Solve(task);
        Assert.Equal(RailState.Regulated, state.State);
        Close(4e-5, state.Flow, 1e-9);
        Assert.Equal(RailState.AtRegulatorLimit, CircuitSolver.Solve(task with { MinimumReturn = 3.1e-5 }).State);
        Assert.Equal(RailState.Regulated, CircuitSolver.Solve(task with { MinimumReturn = 2.9e-5 }).State);
        Assert.Equal(RailState.NotCovered, CircuitSolver.Solve(task with { Set = 1.9e5 }).State);

        // Where a line needs more than its last pressure to pass its last flow, what the line passes at that pressure is enough: k Q² = 5 kPa.
        CircuitState end = CircuitSolver.Solve(task with { Set = 4.95e5, Plumbing = Plumbing.Of([], [new SquareLawResistance(5e3 / (1.5e-5 * 1.5e-5))], []) });
        Assert.Equal(RailState.Regulated, end.State);
        Close(1.5e-5, end.Flow, 1e-6);
        Assert.Equal(RailState.NotCovered, CircuitSolver.Solve(task with { Set = 5.1e5 }).State);
    }

    /// <summary>
    /// A pump that is slowed under its only curve is known between bounds, though the supply is the voltage of the curve: with less flow by its data it
    /// needs more voltage, with more less.
    /// </summary>
    [Fact]
    public void Bounds_OfASlowedPump_DifferThoughItsSupplyWasMeasured()
    {
        CircuitTask task = Task(1e-5, Plumbing.None) with { Layout = LineLayout.Returnless, Pump = Pump.From(Wren.PumpOf(1)), MinimumSupply = 7 };
        CircuitBounds bounds = CircuitSolver.SolveBounds(task);
        Assert.InRange(bounds.Estimate.FedVoltage, 7.1, 13.4);
        Assert.True(bounds.Lower.FedVoltage > bounds.Upper.FedVoltage * 1.01, $"{bounds.Lower.FedVoltage}, {bounds.Upper.FedVoltage}");
        Assert.InRange(bounds.Estimate.FedVoltage, bounds.Upper.FedVoltage, bounds.Lower.FedVoltage);
    }

    /// <summary>What is delivered to the rail is what the pump gives less what returns: just what is injected.</summary>
    [Fact]
    public void DeliveredFlow_IsWhatIsInjected()
    {
        OperatingResult result = Wren.System().Solve(Wren.At(5000, 0.3));
        Assert.True(result.Circuit.ReturnedFlow!.Value.LitersPerHour > 10);
        Assert.Equal(result.Circuit.InjectedFlow.LitersPerHour, result.Circuit.DeliveredFlow!.Value.LitersPerHour, 1e-9);
    }

    private static CircuitTask Task(double injected, Plumbing lines) => new(LineLayout.Return, Straight, lines, 13.5, null, Set, 0, injected, 740, 5e-7);

    private static Pump Half(string name) => Pump.From(PumpCurve.At(
        name,
        Wren.Volt(13.5),
        (Pressure.Zero, VolumeFlow.FromCubicMetersPerSecond(FreeFlow)),
        (Pressure.FromPascals(Deadhead / 2), VolumeFlow.Zero)));

    /// <summary>The positive root of a x² + b x + c, of which c is negative.</summary>
    private static double Root(double a, double b, double c) => -2 * c / (b + Math.Sqrt((b * b) - (4 * a * c)));

    private static void Close(double expected, double actual, double share = 1e-12) =>
        Assert.InRange(actual - expected, -share * Math.Abs(expected), share * Math.Abs(expected));

    /// <summary>A line that climbs and loses nothing.</summary>
    private sealed class Climb(double pascals) : IFlowLoss
    {
        public string Name => "climb";

        double IFlowLoss.LossPascals(double flow, double density, double kinematicViscosity) => 0;

        double IFlowLoss.ElevationPascals(double density) => pascals;
    }
}
