using FuelSizing.Circuits;
using FuelSizing.Pumps;

namespace FuelSizing.Tests.Circuits;

/// <summary>The circuits with shared feeds that an independent program solves too; .ci/peer runs both and compares.</summary>
public class PeerSharedTests
{
    /// <summary>Names the file to write the circuits and answers to; nothing is written where it is not set.</summary>
    private const string FileVariable = "FUELSIZING_PEER_SHARED";

    private static readonly int Count = PeerFile.Count(40);

    [Fact]
    public void Description_OfThePeersSharedFeeds_IsWrittenWhereAskedFor()
    {
        PeerFile.Write(FileVariable, Count, PeerShared.Of(Count));
    }

    /// <summary>
    /// Kirchhoff's laws, to 1e-9 of the supply: what a trunk takes is its resistance times the sum of what hangs on it, and round each loop supply = trunk + branch
    /// + resistor + motor. The pumps' flow is that of their rises to 1e-9 as well.
    /// </summary>
    [Fact]
    public void EveryCircuit_KeepsKirchhoffsLaws()
    {
        int coupled = 0;
        Assert.All(PeerShared.Of(Count), circuit =>
        {
            CircuitState state = CircuitSolver.Solve(circuit.Task);
            IReadOnlyList<PumpPoint> pumps = state.Pumps;
            foreach (PumpPoint pump in pumps)
            {
                if (pump.IsStopped)
                {
                    Assert.Equal((0, 0, 0), (pump.SharedDrop, pump.Current, pump.FeedDrop));
                    continue;
                }

                double splice = state.FedVoltage;
                if (pump.Pump.Feed?.Shared is { } trunk)
                {
                    double sum = pumps.Where(other => !other.IsStopped && trunk.Equals(other.Pump.Feed?.Shared)).Sum(other => other.Current!.Value);
                    Assert.Equal(trunk.LoopOhms * sum, pump.SharedDrop, 1e-9 * state.FedVoltage);
                    splice -= pump.SharedDrop;
                    coupled += pumps.Count(other => !other.IsStopped && trunk.Equals(other.Pump.Feed?.Shared)) > 1 ? 1 : 0;
                }

                // What a resistor for low speed takes lies between the splice and what its feed is given.
                Assert.InRange(pump.Given, 0, splice * (1 + 1e-12));
                Assert.Equal(pump.Pump.Feed!.LoopOhms * pump.Current!.Value, pump.Given - pump.Voltage, 5e-9 * state.FedVoltage);
                Assert.Equal(pump.FeedDrop, pump.Given - pump.Voltage + pump.SharedDrop, 1e-12 * state.FedVoltage);
            }
        });
        Assert.True(coupled > Count / 2, $"Only {coupled}.");
    }

    /// <summary>A trunk that takes nothing is none: to the last bit the answer of pumps with a feed each.</summary>
    [Fact]
    public void TrunkWithoutResistance_ChangesNoBit() => Assert.All(Enumerable.Range(1, Count), seed =>
    {
        (CircuitTask shared, CircuitTask alone) = PeerShared.WithoutResistance(seed);
        CircuitBounds one = CircuitSolver.SolveBounds(shared);
        CircuitBounds other = CircuitSolver.SolveBounds(alone);
        Assert.Equal(other, one);
        Assert.Equal(other.Estimate.Pumps.Select(Numbers), one.Estimate.Pumps.Select(Numbers));

        static (double, double, double, double, double?) Numbers(PumpPoint pump) => (pump.Flow, pump.Rise, pump.Given, pump.Voltage, pump.Current);
    });
}
