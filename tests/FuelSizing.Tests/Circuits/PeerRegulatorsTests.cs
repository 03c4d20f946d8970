using FuelSizing.Circuits;
using FuelSizing.Regulators;

namespace FuelSizing.Tests.Circuits;

/// <summary>The circuits with flow-dependent regulators that an independent program solves too; .ci/peer runs both and compares.</summary>
public class PeerRegulatorsTests
{
    /// <summary>Names the file to write the circuits and answers to; nothing is written where it is not set.</summary>
    private const string FileVariable = "FUELSIZING_PEER_REGULATORS";

    private static readonly int Count = PeerFile.Count(100);

    [Fact]
    public void Description_OfThePeersRegulators_IsWrittenWhereAskedFor()
    {
        IReadOnlyList<(string Name, CircuitTask Task)> circuits = PeerRegulators.Of(Count);
        Assert.All(circuits, circuit => Assert.NotNull(circuit.Task.Held));
        PeerFile.Write(FileVariable, Count, circuits);
    }

    /// <summary>Mass at the regulator and its balance of pressures, to 1e-9.</summary>
    [Fact]
    public void EveryCircuit_ConservesMassAndHoldsWhatItsRegulatorDoes() => Assert.All(PeerRegulators.Of(Count), circuit =>
    {
        CircuitState state = CircuitSolver.Solve(circuit.Task);
        if (state.State is RailState.NotCovered or RailState.Starved)
        {
            return;
        }

        Assert.Equal(circuit.Task.Injected, state.Flow - state.ReturnFlow, 1e-9 * state.Running.FreeFlow);
        Assert.InRange(state.ReturnFlow, -1e-9 * state.Running.FreeFlow, state.Running.FreeFlow);
        if (state.State is RailState.Regulated or RailState.AtRegulatorLimit or RailState.ReturnFloor)
        {
            double held = circuit.Task.Held!.At(state.ReturnFlow, state.ReturnGauge, RegulatorReading.Estimate);
            Assert.Equal(circuit.Task.RailAt(Math.Max(held, state.ReturnGauge)), state.RailGauge, 1e-9 * state.OutletGauge);
        }
    });
}
