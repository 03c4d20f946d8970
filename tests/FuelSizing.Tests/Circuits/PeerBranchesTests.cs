using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// The circuits with branches and dead-headed rails that an independent program solves too; .ci/peer runs both and compares. And the laws that each of them obeys.
/// </summary>
public class PeerBranchesTests
{
    /// <summary>Names the file to write the circuits and answers to; nothing is written where it is not set.</summary>
    private const string FileVariable = "FUELSIZING_PEER_BRANCHES";

    private static readonly int Count = PeerFile.Count(40);

    [Fact]
    public void Description_OfThePeersBranches_IsWrittenWhereAskedFor()
    {
        IReadOnlyList<(string Name, CircuitTask Task)> circuits = PeerBranches.Of(Count);
        Assert.All(circuits, circuit => Assert.True(circuit.Task.Pump.HasOwnLines));
        Assert.InRange(circuits.Count(circuit => circuit.Task.Plumbing.HasToRegulator), Count / 5, Count);
        PeerFile.Write(FileVariable, Count, circuits);
    }

    /// <summary>
    /// At the joint, to 1e-9: the branches' flows add up to the whole; each branch that passes fuel gives the joint's rise, its pumps' less what its lines lose; one that
    /// is shut gives no more than the joint has and its lines and valve hold; and what the pumps put in is what the joint gets and the lines turn to heat.
    /// </summary>
    [Fact]
    public void EveryCircuit_BalancesMassPressureAndEnergyAtItsJoint()
    {
        int shut = 0;
        Assert.All(PeerBranches.Of(Count), circuit =>
        {
            CircuitState state = CircuitSolver.Solve(circuit.Task);
            if (state.State == RailState.NotCovered || state.Running.FreeFlow <= state.Flow)
            {
                return;
            }

            CircuitTask task = circuit.Task;
            double free = state.Running.FreeFlow;
            double scale = state.Running.Deadhead;
            IReadOnlyList<PumpPlace> places = state.Places;
            IReadOnlyList<PumpPoint> pumps = state.Pumps;
            double put = pumps.Sum(pump => pump.Flow * pump.Rise);
            double lost = 0;
            foreach (PumpPlace place in places.Where(place => place.Element is RunningBranch))
            {
                PumpBranch branch = ((RunningBranch)place.Element).Branch;
                double Lost(IReadOnlyList<IFlowLoss> path) => PathLoss.Of(path, place.Flow, task.Density, task.KinematicViscosity);
                double own = Lost(branch.Suction) + Lost(branch.Discharge);
                PumpPlace[] inside = [.. places.Skip(places.ToList().IndexOf(place) + 1).Take(branch.Pumps.Count)];
                double rise = inside[^1].Outlet - inside[0].Inlet;
                lost += place.Flow * own;
                if (place.Flow > 0)
                {
                    Assert.Equal(state.PumpRise, rise - own, 1e-9 * scale);
                }
                else
                {
                    shut++;
                    Assert.InRange(rise - own, double.NegativeInfinity, state.PumpRise + (1e-9 * scale));
                }
            }

            double[] flows = [.. TopFlows(task.Pump, places)];
            Assert.Equal(state.Flow, flows.Sum(), 1e-9 * free);
            Assert.Equal(task.Injected, state.Flow - state.ReturnFlow, 1e-9 * free);
            Assert.Equal(put, (state.Flow * state.PumpRise) + lost, 1e-9 * free * scale);
            Assert.InRange(state.Residual, 0, 1e-6);
        });
        Assert.True(shut > 3, $"Only {shut} shut.");

        // The members of a parallel set, or the one branch that there is, whose pumps are not in a row.
        static IEnumerable<double> TopFlows(PumpAssembly pump, IReadOnlyList<PumpPlace> places)
        {
            int at = 0;
            foreach (PumpAssembly member in pump is PumpParallel set ? set.Branches : [pump])
            {
                yield return places[at].Flow;
                at += (member is PumpBranch ? 1 : 0) + member.Pumps.Count;
            }
        }
    }

    /// <summary>Lines of no length with no fittings and no rise take nothing: to the last bit the answer of the same pumps without them.</summary>
    [Fact]
    public void BranchesWithoutLoss_ChangeNoBit() => Assert.All(PeerBranches.Of(Count), circuit =>
    {
        Line none = Line.Of("nothing", Length.FromMillimeters(20), Length.Zero, Length.Zero);
        PumpAssembly bare = Without(circuit.Task.Pump);
        PumpAssembly lossless = With(circuit.Task.Pump, none).InLiquid(new(circuit.Task.Density, circuit.Task.KinematicViscosity));
        Assert.True(lossless.HasOwnLines);
        CircuitBounds one = CircuitSolver.SolveBounds(circuit.Task with { Pump = bare });
        CircuitBounds other = CircuitSolver.SolveBounds(circuit.Task with { Pump = lossless });
        Assert.Equal(one, other);
        Assert.Equal(one.Estimate.Pumps.Select(Numbers), other.Estimate.Pumps.Select(Numbers));
        Assert.Equal(one.Estimate.AtPumps.Inlet, other.Estimate.AtPumps.Inlet);

        static (double, double, double, double, double?) Numbers(PumpPoint pump) => (pump.Flow, pump.Rise, pump.Given, pump.Voltage, pump.Current);
    });

    /// <summary>A branch whose valve opens over all that its pump gives is no branch, to 1e-12, where its pump does not take the others' voltage.</summary>
    [Fact]
    public void BranchThatCannotOpen_IsNone() => Assert.All(PeerBranches.Of(Count).Where(circuit => circuit.Task.Pump.SharedFeeds.Length == 0), circuit =>
    {
        CheckValve tight = CheckValve.OfCoefficient("tight", Wren.Kpa(500), 1, Length.FromMillimeters(8));
        Pump extra = PeerCircuits.Wired(2, 10, [9, 11.5, 13.5], 1, 0.6);
        CircuitTask task = circuit.Task;
        PumpAssembly with = PumpParallel.Of(task.Pump, PumpBranch.Of(extra, discharge: [tight])).InLiquid(new(task.Density, task.KinematicViscosity));
        CircuitState one = CircuitSolver.Solve(task);
        CircuitState other = CircuitSolver.Solve(task with { Pump = with });
        Assert.Equal(one.State, other.State);
        Assert.Equal(one.Flow, other.Flow, 1e-12 * one.Running.FreeFlow);
        Assert.Equal(one.RailGauge, other.RailGauge, 1e-12 * task.Set);
        PumpPoint shut = other.Pumps[^1];
        Assert.Equal(0, shut.Flow);
        Assert.Equal(PumpBranch.Of(extra).Running(task.Supply).Deadhead, shut.Rise, 1e-9 * task.Set);
    });

    /// <summary>Flow against a rise falls with it, and the rise at that flow is that rise; so does the bracketed search rest on it.</summary>
    [Fact]
    public void Branches_GiveLessTheMoreTheyPress() => Assert.All(PeerBranches.Of(Count), circuit =>
    {
        RunningPumps running = circuit.Task.Pump.Running(circuit.Task.Supply);
        double before = double.PositiveInfinity;
        for (int step = 0; step <= 24; step++)
        {
            double rise = running.Deadhead * step / 24;
            double flow = running.FlowAt(rise);
            Assert.InRange(flow, 0, before * (1 + 1e-12));
            if (flow > 1e-6 * running.FreeFlow && flow < running.FreeFlow)
            {
                Assert.Equal(rise, running.RiseAt(flow), 1e-7 * running.Deadhead);
            }

            before = flow;
        }
    });

    /// <summary>A regulator before the rail: what leads to it passes all, the line behind it only what is injected, and the rail is what it holds less that line's loss.</summary>
    [Fact]
    public void DeadHeadedRail_HasWhatTheRegulatorHoldsLessItsLine() => Assert.All(PeerBranches.Of(Count).Where(circuit => circuit.Task.Layout == LineLayout.Returnless), circuit =>
    {
        CircuitTask task = circuit.Task;
        CircuitState state = CircuitSolver.Solve(task);
        if (state.State is not (RailState.Regulated or RailState.AtRegulatorLimit or RailState.ReturnFloor))
        {
            return;
        }

        double held = Math.Max(task.RegulatedAt(state.Flow, RegulatorReading.Estimate), state.ReturnGauge);
        double line = PathLoss.Of(task.Plumbing.Supply, task.Injected, task.Density, task.KinematicViscosity);
        double before = PathLoss.Of(task.Plumbing.ToRegulator, state.Flow, task.Density, task.KinematicViscosity);
        Assert.Equal(held - line, state.RailGauge, 1e-9 * task.Set);
        Assert.Equal(held + before, state.OutletGauge, 1e-9 * task.Set);
    });

    /// <summary>Of two equal branches each gives half of what one of them gives at half the flow.</summary>
    [Fact]
    public void TwoAlike_ShareAlike()
    {
        Pump pump = PeerCircuits.Wired(2, 10, [9, 11.5, 13.5]);
        PumpBranch one = PumpBranch.Of(pump, discharge: [PeerCircuits.Hose(6, 1, 0.2), CheckValve.OfCoefficient("valve", Wren.Kpa(9), 4, Length.FromMillimeters(6))]);
        RunningPumps single = PeerBranches.Wetted(one, 1).Running(13);
        RunningPumps pair = PeerBranches.Wetted(PumpParallel.Of(one, one), 1).Running(13);
        for (double rise = 0; rise < single.Deadhead; rise += 4e4)
        {
            Assert.Equal(2 * single.FlowAt(rise), pair.FlowAt(rise), 1e-15);
        }
    }

    private static PumpAssembly Without(PumpAssembly pump) => pump switch
    {
        PumpParallel set => PumpParallel.Of([.. set.Branches.Select(Without)]),
        PumpBranch branch => Without(branch.Pump),
        _ => pump,
    };

    private static PumpAssembly With(PumpAssembly pump, Line line) => pump switch
    {
        PumpParallel set => PumpParallel.Of([.. set.Branches.Select(member => With(member, line))]),
        PumpBranch branch => PumpBranch.Of(branch.Pump, [line], [line]),
        _ => PumpBranch.Of(pump, discharge: [line]),
    };
}
