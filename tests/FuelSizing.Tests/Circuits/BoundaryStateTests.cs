using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// States just where one kind of state ends and another begins. The numbers are powers of two, so that each of them is met without any rounding: pumps of 2⁻¹⁴ m³/s and 2²⁰ Pa whose rise falls in a
/// straight line, p = 2²⁰ (1 − Q/2⁻¹⁴), have 2¹⁹ Pa at half their free flow and 2¹⁸ Pa at three quarters of it.
/// </summary>
public class BoundaryStateTests
{
    private const double FreeFlow = 1.0 / 16384;
    private const double Deadhead = 1048576;
    private const double Half = Deadhead / 2;
    private const double Quarter = Deadhead / 4;

    /// <summary>
    /// Pumps that give just what is injected at the set pressure hold it, with nothing to return; with the next larger number injected the regulator is shut. The same whether their flow follows from the
    /// rise or has to be searched for, whether their data is known to cover the state or is looked at, and with a regulator whose pressure goes by what returns.
    /// </summary>
    [Theory]
    [InlineData(true, true, false)]
    [InlineData(true, false, false)]
    [InlineData(false, true, false)]
    [InlineData(false, false, false)]
    [InlineData(true, true, true)]
    [InlineData(false, true, true)]
    public void PumpsThatGiveJustWhatIsInjected_HoldTheSetPressure(bool givesFlow, bool surely, bool byFlow)
    {
        CircuitTask task = Task(Pumps(givesFlow, surely), 0.75 * FreeFlow) with { Held = byFlow ? Constant(Quarter) : null };
        CircuitState just = CircuitSolver.Solve(task);
        Assert.Equal((RailState.Regulated, Quarter, 0.75 * FreeFlow, 0), (just.State, just.RailGauge, just.Flow, just.ReturnFlow));
        Assert.Equal(0.75 * FreeFlow, just.MinimumAtSet, FreeFlow * 1e-14);

        CircuitState over = CircuitSolver.Solve(task with { Injected = 0.75 * FreeFlow * (1 + 1e-12) });
        Assert.Equal((RailState.Sagging, 0), (over.State, over.ReturnFlow));
        Assert.Equal(Quarter, over.RailGauge, Quarter * 1e-11);
    }

    /// <summary>A return line that climbs to 2¹⁹ Pa, at which the pumps give just what is injected: it holds the rail at that, with nothing to return. With the next larger number injected the regulator is shut.</summary>
    [Theory]
    [InlineData(true, true)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(false, false)]
    public void PumpsThatJustReachTheReturnLinesHeight_AreHeldAtIt(bool givesFlow, bool surely)
    {
        CircuitTask task = Task(Pumps(givesFlow, surely), 0.5 * FreeFlow, Plumbing.Of(returnLine: [new FuelColumn(Half)]));
        CircuitState just = CircuitSolver.Solve(task);
        Assert.Equal((RailState.ReturnFloor, Half, Half), (just.State, just.RailGauge, just.ReturnGauge));
        Assert.Equal((0.5 * FreeFlow, 0), (just.Flow, just.ReturnFlow));
        Assert.Equal(RailState.Sagging, CircuitSolver.Solve(task with { Injected = 0.5 * FreeFlow * (1 + 1e-12) }).State);
    }

    /// <summary>A return line that asks for just the set pressure, or for just what the regulator holds, leaves the rail to the regulator.</summary>
    [Theory]
    [InlineData(true, false)]
    [InlineData(false, false)]
    [InlineData(true, true)]
    public void ReturnLineThatAsksForJustTheSetPressure_LeavesTheRailToTheRegulator(bool surely, bool byFlow)
    {
        CircuitTask task = Task(Pumps(givesFlow: true, surely), 0.5 * FreeFlow, Plumbing.Of(returnLine: [new FuelColumn(Quarter)])) with { Held = byFlow ? Constant(Quarter) : null };
        CircuitState state = CircuitSolver.Solve(task);
        Assert.Equal((RailState.Regulated, Quarter, Quarter, 0.25 * FreeFlow), (state.State, state.RailGauge, state.ReturnGauge, state.ReturnFlow));
        CircuitTask higher = task with { Plumbing = Plumbing.Of(returnLine: [new FuelColumn(Quarter + 1)]) };
        Assert.Equal(RailState.ReturnFloor, CircuitSolver.Solve(higher).State);
    }

    /// <summary>A supply line that takes just all that a regulator at the tank holds leaves no pressure, whether it takes it by the square of the flow or by its height.</summary>
    [Theory]
    [InlineData(true, true)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(false, false)]
    public void SupplyLineThatTakesJustAllThatIsHeld_StarvesTheRail(bool bySquare, bool surely)
    {
        const double Injected = 0.5 * FreeFlow;
        IFlowLoss supply = bySquare ? new SquareLawResistance(Quarter / (Injected * Injected)) : new FuelColumn(Quarter);
        CircuitTask task = Task(Pumps(givesFlow: true, surely), Injected, Plumbing.Of(supply: [supply])) with { Layout = LineLayout.Returnless };
        Assert.Equal(0, task.RailAsSet);
        CircuitState state = CircuitSolver.Solve(task);
        Assert.Equal((RailState.Starved, 0), (state.State, state.RailGauge));
        Assert.Equal((0.75 * FreeFlow, Quarter), (state.Flow, state.OutletGauge));

        // By its square it lets just the demand through; the rest returns.
        if (bySquare)
        {
            Assert.Equal(0.25 * FreeFlow, state.ReturnFlow, FreeFlow * 1e-13);
        }
    }

    /// <summary>
    /// Parts before a regulator at the tank, which pass all that the pumps do: where nothing returns their loss is one of three in a row, (k₁ + k₂ + k₃) Q² = p₀ (1 − Q/Q₀), and where the regulator holds
    /// 2¹⁸ Pa behind them the pumps' outlet is over it by k₂ Q².
    /// </summary>
    [Fact]
    public void PartsBeforeTheRegulator_CountAtAStarvedRail()
    {
        const double Whole = Deadhead / (FreeFlow * FreeFlow);
        (SquareLawResistance suction, SquareLawResistance before) = (new(0.25 * Whole), new(0.5 * Whole));
        Plumbing lines = Plumbing.Of([suction], [new SquareLawResistance(1.25 * Whole)], [], [before]);
        CircuitState shut = CircuitSolver.Solve(Task(Pumps(givesFlow: true), 0.6 * FreeFlow, lines) with { Layout = LineLayout.Returnless });

        // 2 x² + x − 1 = 0: x = 1/2 of the free flow.
        Assert.Equal((RailState.Starved, 0), (shut.State, shut.ReturnFlow));
        Assert.Equal(0.5 * FreeFlow, shut.Flow, FreeFlow * 1e-12);

        // Held before a supply line that passes 0.1 Q₀ at 2¹⁸ Pa, of 0.2 that are asked for: x + 0.75 x² = 0.75 for the pumps.
        CircuitTask held = Task(Pumps(givesFlow: true), 0.2 * FreeFlow, Plumbing.Of([suction], [new SquareLawResistance(25 * Whole)], [], [before])) with { Layout = LineLayout.Returnless };
        CircuitState open = CircuitSolver.Solve(held);
        double share = (-1 + Math.Sqrt(1 + (4 * 0.75 * 0.75))) / 1.5;
        Assert.Equal(RailState.Starved, open.State);
        Assert.Equal(share * FreeFlow, open.Flow, FreeFlow * 1e-12);
        Assert.Equal((share - 0.1) * FreeFlow, open.ReturnFlow, FreeFlow * 1e-12);
        Assert.Equal(Quarter + (0.5 * Deadhead * share * share), open.OutletGauge, Deadhead * 1e-12);
    }

    /// <summary>
    /// Pumps whose deadhead goes with the square of the voltage, 2²⁰ Pa at 16 V and 2¹⁸ at 8, and whose free flow stays: a controller that slows them down to 8 V gives them just all or just the least
    /// where that is just enough, and the rail is held.
    /// </summary>
    [Theory]
    [InlineData(16, 0.75)]
    [InlineData(8, 0)]
    public void SlowedPumps_ForWhichAnEndIsJustEnough_HoldTheRail(double volts, double share)
    {
        FormulaAssembly pumps = new((supply, _) => new FormulaPumps(FreeFlow, Deadhead * (supply / 16) * (supply / 16), givesFlow: true, bySquare: false));
        CircuitTask task = Task(pumps, share * FreeFlow) with { Layout = LineLayout.Returnless, Supply = 16, MinimumSupply = 8 };
        CircuitState just = CircuitSolver.Solve(task);
        Assert.Equal((RailState.Regulated, volts, Quarter, 0), (just.State, just.FedVoltage, just.RailGauge, just.ReturnFlow));

        // A pascal more or less is over either end.
        CircuitState other = CircuitSolver.Solve(task with { Set = volts == 16 ? Quarter + 1 : Quarter - 1 });
        Assert.Equal((volts == 16 ? RailState.Sagging : RailState.PumpFloor, volts, Quarter), (other.State, other.FedVoltage, other.RailGauge));
    }

    /// <summary>From just the free flow on a rail has no pressure, and a regulator that is shut holds nothing of its own.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(1.25)]
    public void Demand_FromTheFreeFlowOn_LeavesNoPressure(double share)
    {
        CircuitTask task = Task(Pumps(givesFlow: true), share * FreeFlow) with { Held = Constant(Quarter) };
        CircuitState state = CircuitSolver.Solve(task);
        Assert.Equal((RailState.Starved, 0, FreeFlow, 0), (state.State, state.RailGauge, state.Flow, state.ReturnFlow));
        Assert.Equal(double.NaN, state.Held);

        // Nor does a tank over the pump help: nothing says what it pushes through pumps that run freely.
        CircuitState fed = CircuitSolver.Solve(Task(Pumps(givesFlow: true), share * FreeFlow, Plumbing.Of(suction: [new FuelColumn(-4096)])));
        Assert.Equal((RailState.Starved, 0, FreeFlow), (fed.State, fed.RailGauge, fed.Flow));
    }

    /// <summary>At an end of the pumps' curve, with no flow or the free one, secants say nothing: the search does. A pump without any flow meets its circuit nowhere.</summary>
    [Fact]
    public void Meeting_AtAnEndOfTheCurve_IsLeftToTheSearch()
    {
        FormulaPumps pumps = new(FreeFlow, Deadhead, givesFlow: true, bySquare: false);
        Plumbing level = Plumbing.Of(supply: [new FuelColumn(0)]);
        Assert.False(PumpIntersection.TryFind(Task(Pumps(givesFlow: true), 0, level) with { Set = Deadhead }, pumps, held: null, Deadhead, out _));
        Assert.Equal(0, PumpIntersection.AtSet(Task(Pumps(givesFlow: true), 0, level) with { Set = Deadhead }, pumps).Flow);
        Assert.False(PumpIntersection.TryFind(Task(Pumps(givesFlow: true), 0, level) with { Set = 0 }, pumps, held: null, 0, out _));
        Assert.Equal(FreeFlow, PumpIntersection.AtSet(Task(Pumps(givesFlow: true), 0, level) with { Set = 0 }, pumps).Flow);
        Assert.Equal(default, PumpIntersection.AtSet(Task(Pumps(givesFlow: true), 0, Plumbing.Of(supply: [new FuelColumn(512)])), new FormulaPumps(0, Deadhead, givesFlow: true, bySquare: false)));
    }

    /// <summary>A first guess at the deadhead, where nothing flows, says nothing of how the loss of a line that climbs changes: the next is the rise that is asked for, and is right. 2¹⁸ + 2¹⁷ Pa.</summary>
    [Fact]
    public void Guess_AtTheDeadhead_LeadsToTheRiseAskedFor()
    {
        FormulaPumps pumps = new(FreeFlow, Deadhead, givesFlow: true, bySquare: false);
        FuelColumn climb = new(Deadhead / 8);
        Assert.True(PumpIntersection.TryFind(Task(Pumps(givesFlow: true), 0, Plumbing.Of(supply: [climb])), pumps, held: null, Deadhead, out Intersection met));
        Assert.Equal((0.625 * FreeFlow, Deadhead / 8), (met.Flow, met.Losses.Total));
        Assert.Equal(2, climb.Asked);
    }

    /// <summary>A lift pump that brings just what is drawn does not make its tank overflow; one that brings a trace more does.</summary>
    [Fact]
    public void LiftPumpThatBringsJustWhatIsDrawn_DoesNotMakeTheTankOverflow()
    {
        FormulaPumps pumps = new(FreeFlow, Deadhead, givesFlow: true, bySquare: false);
        FuelColumn overflow = new(Quarter);
        CircuitTask lift = Task(Pumps(givesFlow: true), 0.75 * FreeFlow, Plumbing.Of(returnLine: [overflow]));
        Assert.Null(LiftCircuit.Full(lift, pumps, PumpIntersection.AtSet(lift, pumps)));
        CircuitTask less = lift with { Injected = 0.5 * FreeFlow };
        CircuitState full = LiftCircuit.Full(less, pumps, PumpIntersection.AtSet(less, pumps))!.Value;
        Assert.Equal((Quarter, 0.75 * FreeFlow, 0.25 * FreeFlow), (full.RailGauge, full.Flow, full.ReturnFlow));

        // The overflow line asks for just what stands in it already: once is enough.
        Assert.Equal(1, overflow.Asked);
    }

    /// <summary>
    /// Lines that fall by just the pressure in the tank leave a pump its free flow and no more; that it stands at the end of its curve is no fault. A pump that gets nothing out passes nothing, though its lines
    /// fall.
    /// </summary>
    [Fact]
    public void LiftPumpWithLinesThatFall_IsPushedOnlyByWhatIsOverTheTank()
    {
        FormulaPumps pumps = new(FreeFlow, Deadhead, givesFlow: true, bySquare: false);
        CircuitTask lift = Task(Pumps(givesFlow: true), 0, Plumbing.Of(supply: [new FuelColumn(-2048)])) with { Set = 2048 };
        CircuitState level = LiftCircuit.Filling(lift, pumps);
        Assert.Equal((RailState.Regulated, FreeFlow), (level.State, level.Flow));
        Assert.Equal(RailState.NotCovered, LiftCircuit.Filling(lift with { Set = 2047 }, pumps).State);
        Assert.Equal(RailState.Regulated, LiftCircuit.Filling(lift with { Set = 2049 }, pumps).State);
        CircuitState still = LiftCircuit.Filling(lift with { Set = 0 }, new FormulaPumps(0, 0, givesFlow: true, bySquare: false));
        Assert.Equal((RailState.Regulated, 0), (still.State, still.Flow));
    }

    private static FormulaAssembly Pumps(bool givesFlow, bool surely = true) =>
        FormulaAssembly.Always(new FormulaPumps(FreeFlow, Deadhead, givesFlow, bySquare: false) { SaysSo = surely });

    private static CircuitTask Task(PumpAssembly pumps, double injected, Plumbing? lines = null) =>
        new(LineLayout.Return, pumps, lines ?? Plumbing.None, 13.5, null, Quarter, 0, injected, 740, 5e-7);

    private static HeldPressure Constant(double pascals) => new(Fixed.At(Pressure.FromPascals(pascals)).WithFlow(RegulatorFlow.Constant), 0);
}
