using FuelSizing.Circuits;
using FuelSizing.Pumps;

namespace FuelSizing.Tests.Circuits;

/// <summary>The circuits with converters and slowed motors that an independent program solves too; .ci/peer runs both and compares.</summary>
public class PeerMotorsTests
{
    /// <summary>Names the file to write the circuits and answers to; nothing is written where it is not set.</summary>
    private const string FileVariable = "FUELSIZING_PEER_MOTORS";

    private static readonly int Count = PeerFile.Count(100);

    [Fact]
    public void Description_OfThePeersMotors_IsWrittenWhereAskedFor()
    {
        PeerFile.Write(FileVariable, Count, PeerMotors.Of(Count));
    }

    /// <summary>Mass at the regulator and energy at every motor, to 1e-9.</summary>
    [Fact]
    public void EveryCircuit_ConservesMassAndEnergy() => Assert.All(PeerMotors.Of(Count), circuit =>
    {
        CircuitState state = CircuitSolver.Solve(circuit.Task);
        if (state.State is RailState.NotCovered or RailState.Starved)
        {
            return;
        }

        double largest = state.Running.FreeFlow;
        Assert.Equal(circuit.Task.Injected, state.Flow - state.ReturnFlow, 1e-9 * largest);
        foreach (PumpPoint pump in state.Pumps)
        {
            double efficiency = pump.Pump.Converter?.Efficiency.DecimalFractions ?? 1;
            double given = pump.Given * pump.FeedCurrent!.Value;
            double lost = pump.FeedCurrent.Value * pump.FeedDrop;
            Assert.Equal(pump.Voltage * pump.Current!.Value / efficiency, given - lost, 1e-9 * given);

            // The motor's voltage is searched for to a billionth or two of the supply's.
            Assert.Equal(pump.FeedCurrent.Value * pump.Pump.Feed!.LoopResistance.Ohms, pump.FeedDrop, 5e-9 * pump.Given);
        }
    });
}
