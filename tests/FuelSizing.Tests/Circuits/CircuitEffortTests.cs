using FuelSizing.Circuits;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// What is known already is not asked for again: a solver is called thousands of times in a sweep, so that each question to a line or a pump counts. Lines and pumps by formula count theirs:
/// p = 800 kPa (1 − Q/6e-5), and losses by the square of the flow.
/// </summary>
public class CircuitEffortTests
{
    private const double FreeFlow = 6e-5;
    private const double Deadhead = 8e5;

    private readonly SquareLawResistance _supply = new(4e4 / 1e-9);
    private readonly SquareLawResistance _return = new(1e4 / 1e-9);

    /// <summary>A regulated rail is where pumps meet the circuit with the rail as set: that meeting, and one question to the return line, are all.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void RegulatedRail_TakesOneMeetingAndOneQuestionToTheReturnLine(bool saysSoAtEnds)
    {
        FormulaPumps pumps = new(FreeFlow, Deadhead, givesFlow: true, bySquare: false) { SaysSoAtEnds = saysSoAtEnds };
        CircuitTask task = Task(FormulaAssembly.Always(pumps));
        _ = PumpIntersection.AtSet(task, pumps);
        int meeting = _supply.Asked;
        CircuitBounds bounds = CircuitSolver.SolveBounds(task);
        Assert.Equal(RailState.Regulated, bounds.Estimate.State);
        Assert.Equal(PumpCoverage.Measured, bounds.Estimate.Uncovered(ends: false));
        Assert.Equal((2 * meeting, 1, 0), (_supply.Asked, _return.Asked, pumps.AskedForData));
    }

    /// <summary>A rail as set where nothing returns, and one that the pumps give just the free flow for, are no different: the state is put together from one meeting.</summary>
    [Fact]
    public void RegulatedRail_WithNothingToReturn_IsSolvedOnceToo()
    {
        FormulaPumps pumps = new(FreeFlow, Deadhead, givesFlow: true, bySquare: false);
        CircuitTask task = Task(FormulaAssembly.Always(pumps)) with { Plumbing = Plumbing.Of(returnLine: [_return]), Set = Deadhead / 2, Injected = FreeFlow / 2 };
        Assert.Equal((RailState.Regulated, 0), (CircuitSolver.Solve(task).State, CircuitSolver.Solve(task).ReturnFlow));
        Assert.Equal(2, _return.Asked);
    }

    /// <summary>A return line that asks for just the set pressure leaves the meeting as it is.</summary>
    [Fact]
    public void ReturnLine_ThatAsksForJustTheSetPressure_IsAskedOnce()
    {
        FuelColumn climb = new(3e5);
        CircuitTask task = Task(FormulaAssembly.Always(new FormulaPumps(FreeFlow, Deadhead, givesFlow: true, bySquare: false))) with { Plumbing = Plumbing.Of(returnLine: [climb]) };
        Assert.Equal(RailState.Regulated, CircuitSolver.Solve(task).State);
        Assert.Equal(1, climb.Asked);
    }

    /// <summary>A curve that ends open above the state has a most of its own, which meets the circuit at the same flow: the state is not put together again.</summary>
    [Fact]
    public void OpenEndedPumps_ThatDeliverTheSame_ShareOneState()
    {
        FormulaPumps estimate = new(FreeFlow, Deadhead, givesFlow: true, bySquare: false);
        FormulaPumps upper = new(FreeFlow, Deadhead, givesFlow: true, bySquare: false);
        CircuitTask task = Task(new FormulaAssembly((_, reading) => reading == PumpReading.Upper ? upper : estimate, EndsOpen: true));
        CircuitBounds bounds = CircuitSolver.SolveBounds(task);
        Assert.Equal(1, _return.Asked);
        Assert.Same(estimate, bounds.Upper.Running);
        Assert.Equal(bounds.Estimate, bounds.Upper);

        // One that delivers more does not.
        FormulaPumps more = new(FreeFlow * 1.1, Deadhead, givesFlow: true, bySquare: false);
        CircuitBounds differing = CircuitSolver.SolveBounds(task with { Pump = new FormulaAssembly((_, reading) => reading == PumpReading.Upper ? more : estimate, EndsOpen: true) });
        Assert.Same(more, differing.Upper.Running);
        Assert.Same(estimate, differing.Lower.Running);
        Assert.True(differing.Upper.Flow > differing.Estimate.Flow * 1.05);
        Assert.Equal((differing.Lower.Flow, differing.Upper.Flow), (differing.Estimate.MinimumAtSet, differing.Estimate.MaximumAtSet));
    }

    /// <summary>A sweep's table brings the pumps as they run at its voltage: none is made to run again, though somebody has asked for another voltage since.</summary>
    [Fact]
    public void Table_BringsItsPumps()
    {
        FormulaAssembly pumps = FormulaAssembly.Always(new FormulaPumps(FreeFlow, Deadhead, givesFlow: true, bySquare: false));
        CircuitTask task = Task(pumps);
        CircuitTable table = CircuitTable.Of(task, 2e5, 4e5, 200)!;
        _ = pumps.Bounds(12);
        int made = pumps.Made;
        Assert.Equal(RailState.Regulated, CircuitSolver.Solve(task, table).State);
        Assert.Equal(made, pumps.Made);
    }

    /// <summary>Neither what a regulator holds by flow nor pumps without any flow follow from a table of set pressures.</summary>
    [Fact]
    public void Table_IsMadeOnlyWhereItHelps()
    {
        CircuitTask task = Task(FormulaAssembly.Always(new FormulaPumps(FreeFlow, Deadhead, givesFlow: true, bySquare: false)));
        Assert.NotNull(CircuitTable.Of(task, 2e5, 4e5, 200)!.Estimate);
        Assert.Null(CircuitTable.Of(task with { Held = Held(RegulatorFlow.Constant) }, 2e5, 4e5, 200));
        CircuitTable still = CircuitTable.Of(task with { Pump = FormulaAssembly.Always(new FormulaPumps(0, 0, givesFlow: true, bySquare: false)) }, 2e5, 4e5, 200)!;
        Assert.Null(still.Estimate);
    }

    /// <summary>
    /// A regulator whose pressure goes by what returns: with pumps that are known one circuit is solved, and the flow they are judged by is near it; with pumps that are known between bounds three are, and
    /// two flows.
    /// </summary>
    [Fact]
    public void SlopedRegulator_WithKnownPumps_IsSolvedOnce()
    {
        CircuitTask known = Task(Between(measured: true, open: false)) with { Held = Held(Rising) };
        CircuitTask between = Task(Between(measured: false, open: true)) with { Held = Held(Rising) };
        int once = Asked(() => CircuitSolver.SolveBounds(known));
        Assert.InRange(once, 4, 11);
        Assert.InRange(Asked(() => CircuitSolver.SolveBounds(between)), 2 * once, 3 * once);

        // One side of the latter is a circuit alone; of the former it is what there is.
        int alone = Asked(() => CircuitSolver.SolveSide(between, CircuitSide.FlowsLess));
        Assert.InRange(alone, 2, once - 1);
        Assert.InRange(Asked(() => CircuitSolver.SolveSide(between, CircuitSide.FlowsMore)), 2, once);
        Assert.InRange(Asked(() => CircuitSolver.SolveSide(between, CircuitSide.Estimate)), 2, once - 1);
        Assert.Equal(once, Asked(() => CircuitSolver.SolveSide(known, CircuitSide.FlowsLess)));
    }

    /// <summary>Pumps that give their rise by flow are not helped by what is lost at the rail as it is held: the flow that they are judged by is searched for as if nothing were known.</summary>
    [Fact]
    public void SlopedRegulator_WithPumpsThatGiveTheirRise_IsSolvedOnceToo()
    {
        FormulaPumps pumps = new(FreeFlow, Deadhead, givesFlow: false, bySquare: false);
        CircuitTask task = Task(FormulaAssembly.Always(pumps));
        int alone = Asked(() => PumpIntersection.AtSet(task, pumps));
        CircuitTask sloped = task with { Held = Held(Rising) };
        int both = Asked(() => CircuitSolver.SolveBounds(sloped));
        Assert.InRange(both, alone + 2, 3 * alone);
        Assert.Equal(alone, both - Asked(() => CircuitSolver.SolveSide(task with { Held = sloped.Held, Pump = Between(measured: false, open: true, givesFlow: false) }, CircuitSide.Estimate)));
    }

    /// <summary>With hysteresis the regulator has two sides: known pumps meet each of them once, and the estimate.</summary>
    [Fact]
    public void Hysteresis_WithKnownPumps_IsSolvedByEachSideOnce()
    {
        CircuitTask plain = Task(Between(measured: true, open: false)) with { Held = Held(Rising) };
        CircuitTask banded = plain with { Held = Held(Rising.WithHysteresis(Pressure.FromKilopascals(20))) };
        int once = Asked(() => CircuitSolver.SolveBounds(plain));
        Assert.InRange(Asked(() => CircuitSolver.SolveBounds(banded)), (2 * once) + 1, 3 * once);
        Assert.InRange(Asked(() => CircuitSolver.SolveSide(banded, CircuitSide.FlowsMore)), 2, once - 1);
    }

    /// <summary>What a pump's inlet and outlet are follows without a list of its places where it has no lines of its own.</summary>
    [Fact]
    public void PressuresAtPumps_WithoutLinesOfTheirOwn_AreTheCircuits()
    {
        CircuitState state = CircuitSolver.Solve(Task(Pump.From(Wren.Pump)));
        _ = state.AtPumps;
        long before = GC.GetAllocatedBytesForCurrentThread();
        (double inlet, double outlet) = state.AtPumps;
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.Equal((state.InletGauge, state.OutletGauge), (inlet, outlet));
    }

    private static RegulatorFlow Rising { get; } = RegulatorFlow.Rising(Wren.Kpa(36), VolumeFlow.FromLitersPerHour(100), VolumeFlow.FromLitersPerHour(36));

    private static FormulaAssembly Between(bool measured, bool open, bool givesFlow = true) => new(
        (_, reading) => new FormulaPumps(
            FreeFlow * reading switch { PumpReading.Lower => 0.98, PumpReading.Upper => 1.02, _ => 1 }, Deadhead, givesFlow, bySquare: false),
        measured,
        open);

    private static HeldPressure Held(RegulatorFlow flow) => new(Fixed.At(Wren.Kpa(300)).WithFlow(flow), 0);

    private int Asked<T>(Func<T> solve)
    {
        int before = _supply.Asked;
        _ = solve();
        return _supply.Asked - before;
    }

    private CircuitTask Task(PumpAssembly pumps) => new(LineLayout.Return, pumps, Plumbing.Of(supply: [_supply], returnLine: [_return]), 13.5, null, 3e5, 0, 1e-5, 740, 5e-7);
}
