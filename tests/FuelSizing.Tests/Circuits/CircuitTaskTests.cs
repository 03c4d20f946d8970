using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>What a circuit to be solved, and a solved one, say of themselves: worked by hand, for a pump of 6e-5 m³/s and 800 kPa whose flow falls in a straight line.</summary>
public class CircuitTaskTests
{
    private const double FreeFlow = 6e-5;
    private const double Deadhead = 8e5;

    /// <summary>A pressure is small or not beside the set pressure; a tank without any is at ambient pressure, about 100 kPa.</summary>
    [Fact]
    public void Scale_IsTheSetPressureOrAmbient()
    {
        CircuitTask task = Task(Straight());
        Assert.Equal(3e5, task.Scale);
        Assert.InRange((task with { Set = 0 }).Scale, 9e4, 1.1e5);
        Assert.InRange((task with { Set = -2e4 }).Scale, 9e4, 1.1e5);
    }

    /// <summary>A pump draws from the tank itself where no line lies between them: neither a common one nor its own.</summary>
    [Fact]
    public void Pump_DrawsFromTheTank_WhereNoLineLiesBetween()
    {
        FuelColumn line = new(0);
        PumpAssembly own = PumpParallel.Of(Straight(), PumpBranch.Of(Straight(), suction: [line]));
        Assert.True(Task(Straight()).DrawsFromTank);
        Assert.True(Task(PumpParallel.Of(Straight(), PumpBranch.Of(Straight(), discharge: [line]))).DrawsFromTank);
        Assert.False(Task(own).DrawsFromTank);
        Assert.False(Task(Straight(), Plumbing.Of(suction: [line])).DrawsFromTank);
    }

    /// <summary>What leads to a regulator before the rail counts where there is one before the rail; where the pressure is held at the rail the whole supply line does.</summary>
    [Fact]
    public void PartsBeforeARegulator_CountWhereItSitsBeforeTheRail()
    {
        Plumbing lines = Plumbing.Of(supply: [new SquareLawResistance(1e14)], toRegulator: [new SquareLawResistance(3e14)]);
        CircuitTask before = Task(Straight(), lines) with { Layout = LineLayout.Returnless };
        Assert.Equal(3e14 * 4e-10, before.ToRegulator(2e-5), 1e-6);
        Assert.Equal(3e14 * 4e-10, before.LossesAt(2e-5).Total, 1e-6);
        Assert.Equal(0, Task(Straight(), lines).ToRegulator(2e-5));
        Assert.Equal(1e14 * 4e-10, Task(Straight(), lines).LossesAt(2e-5).Total, 1e-6);
        Assert.Equal(0, (before with { MinimumSupply = 8 }).ToRegulator(2e-5));
    }

    /// <summary>
    /// A quarter of the pressure at its outlet adds to what a regulator holds, over ambient: in a tank under 15 kPa, from which the circuit counts, its return line of 40 kPa at 2e-5 m³/s ends at 15 kPa.
    /// 300 kPa + 55 kPa / 4, less the tank's 15.
    /// </summary>
    [Fact]
    public void RegulatorsOutlet_IsOverAmbient()
    {
        CircuitTask task = Task(Straight(), Plumbing.Of(returnLine: [new SquareLawResistance(1e14)])) with
        {
            Held = new(Fixed.At(Wren.Kpa(300)).WithFlow(RegulatorFlow.Constant.WithOutletShare(0.25)), 0),
            Origin = 15e3,
        };
        Assert.Equal(300e3 + (55e3 / 4) - 15e3, task.RegulatedAt(1e-5 + 2e-5, RegulatorReading.Estimate), 1e-6);
    }

    /// <summary>Where the pumps' data does not cover the point their flow is not known, but what is injected goes through the supply line of a regulator at the tank all the same.</summary>
    [Fact]
    public void Flows_OfAPointThatIsNotCovered_AreWhatIsKnown()
    {
        (FuelColumn suction, FuelColumn supply, FuelColumn back) = (new(0), new(0), new(0));
        CircuitTask task = Task(Late(), Plumbing.Of([suction], [supply], [back])) with { Set = 1e5, Layout = LineLayout.Returnless };
        CircuitState state = CircuitSolver.Solve(task);
        Assert.Equal(RailState.NotCovered, state.State);
        Assert.Equal(
            [((IFlowLoss)suction, 0.0), (supply, 1e-5), (back, 0.0)],
            task.Flows(state));
        Assert.Equal((null, null), (state.PumpFlow, state.Returned));
    }

    /// <summary>Of branches nothing is told where their pumps' data does not cover the point; where it does, each line of theirs is.</summary>
    [Fact]
    public void OwnLines_AreToldWhereTheFlowIsKnown()
    {
        (FuelColumn own, FuelColumn back) = (new(0), new(0));
        CircuitTask Of(Pump pump, double set)
        {
            PumpBranch branch = PumpBranch.Of(pump, discharge: [own]);
            return Task(PumpParallel.Of(branch, branch).InLiquid(new(740, 5e-7)), Plumbing.Of(returnLine: [back])) with { Set = set };
        }

        CircuitTask known = Of(Straight(), 3e5);
        CircuitTask open = Of(Late(), 1e5);
        Assert.Equal(3, AllFlows(known).Count);
        Assert.Equal([(IFlowLoss)back], AllFlows(open).Select(way => way.Part));
        CircuitTask plain = known with { Pump = Straight() };
        Assert.Equal([(IFlowLoss)back], AllFlows(plain).Select(way => way.Part));

        static List<(IFlowLoss Part, double Flow)> AllFlows(in CircuitTask task)
        {
            FlowList flows = new([]);
            task.EachFlow(CircuitSolver.Solve(task), ref flows);
            return flows.Parts;
        }
    }

    /// <summary>A point that is not covered has the regulator's word for its rail; one that is has its own.</summary>
    [Fact]
    public void Rail_OfAPointThatIsNotCovered_IsTheRegulators()
    {
        CircuitState open = CircuitSolver.Solve(Task(Late()) with { Injected = 5.5e-5 });
        Assert.Equal(RailState.NotCovered, open.State);
        Assert.NotEqual(3e5, open.RailGauge);
        Assert.Equal(3e5, open.RailOr(3e5));
        Assert.Equal(open.RailGauge, (open with { State = RailState.Sagging }).RailOr(3e5));
    }

    /// <summary>
    /// A pump against more than its deadhead stands at its deadhead, whatever is behind its check valve; one whose curve ends open with 2e-5 m³/s at 500 kPa may give that much against more, and by the most
    /// that is known works against all of it.
    /// </summary>
    [Fact]
    public void PumpsRise_IsItsOwnWhereNothingFlows_AndTheCircuitsWhereItDoes()
    {
        CircuitTask lift = Task(Straight()) with { Set = Deadhead * 1.25, Injected = 0 };
        CircuitState shut = LiftCircuit.Filling(lift, Straight().Running(13.5));
        Assert.Equal((0, Deadhead * 1.25), (shut.Flow, shut.PumpRise));
        Assert.Equal(Deadhead, Assert.Single(shut.Pumps).Rise, Deadhead * 1e-9);
        PumpPlace place = Assert.Single(shut.Places);
        Assert.Equal((0, 0, Deadhead * 1.25), (place.Flow, place.Inlet, place.Outlet));

        CircuitState most = CircuitSolver.SolveBounds(Task(Late()) with { Set = 6e5 }).Upper;
        Assert.Equal((RailState.Regulated, 2e-5), (most.State, most.Flow));
        Assert.Equal(6e5, Assert.Single(most.Pumps).Rise, 1e-3);
        Assert.Equal(RailState.Regulated, LiftCircuit.Filling(Task(Late()) with { Set = 6e5 }, Late().Running(13.5, PumpReading.Upper)).State);
    }

    /// <summary>Nothing that runs leaves the pressures before and behind all of the pumps; of those that run the lowest inlet and the highest outlet count.</summary>
    [Fact]
    public void PressuresAtPumps_AreTheirOwn()
    {
        RunningPumps running = Straight().Running(13.5);
        Assert.Equal((-5e3, 3e5), PumpEnds.Of([], -5e3, 3e5));
        Assert.Equal((-5e3, 3e5), PumpEnds.Of([new(new StoppedPump(Straight()), 0, -9e3, 4e5)], -5e3, 3e5));
        Assert.Equal((-8e3, 3.5e5), PumpEnds.Of([new(running, 1e-5, -6e3, 3.5e5), new(running, 1e-5, -8e3, 3.2e5)], -5e3, 3e5));
    }

    /// <summary>A result of a point that is not covered shows no flows through lines, no pumps and no heat.</summary>
    [Fact]
    public void Result_OfAPointThatIsNotCovered_ShowsNeitherPathsNorPumps()
    {
        FuelSystem system = Wren.System().With(Late()).With(Plumbing.Of(supply: [new FuelColumn(0)], returnLine: [new FuelColumn(0)]));
        OperatingResult open = system.With(Fixed.At(Wren.Kpa(150))).Solve(Wren.At(2000, 0));
        Assert.Equal(RailState.NotCovered, open.RailState);
        Assert.Empty(open.Circuit.Paths);
        Assert.Empty(open.Circuit.Pumps);
        Assert.Null(open.Circuit.HeatToTank);
        OperatingResult known = system.With(Fixed.At(Wren.Kpa(300))).Solve(Wren.At(2000, 0));
        Assert.Equal((2, 1), (known.Circuit.Paths.Count, known.Circuit.Pumps.Count));
    }

    private static CircuitTask Task(PumpAssembly pumps, Plumbing? lines = null) => new(LineLayout.Return, pumps, lines ?? Plumbing.None, 13.5, null, 3e5, 0, 1e-5, 740, 5e-7);

    private static Pump Straight() => PumpOf((0, FreeFlow), (Deadhead, 0));

    /// <summary>Measured from 200 to 500 kPa, at both of which there is flow: nothing is known of lower pressures, and not much of higher ones.</summary>
    private static Pump Late() => PumpOf((2e5, 5e-5), (5e5, 2e-5));

    private static Pump PumpOf(params (double Pascals, double Flow)[] points) => Pump.From(PumpCurve.At(
        "pump", Wren.Volt(13.5), [.. points.Select(point => (Pressure.FromPascals(point.Pascals), VolumeFlow.FromCubicMetersPerSecond(point.Flow)))]));
}
