using System.Text.Json;
using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Lines;
using FuelSizing.Numerics;

namespace FuelSizing.Tests.Circuits;

/// <summary>The circuits that an independent program solves too; .ci/peer runs both and compares.</summary>
public class PeerCircuitsTests
{
    /// <summary>Names the file to write the circuits and answers to; nothing is written where it is not set.</summary>
    private const string FileVariable = "FUELSIZING_PEER";

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    [Fact]
    public void Solve_OfThePeersCircuits_MeetsEveryStateAndFlowRegime()
    {
        List<CircuitState> states = [.. PeerCircuits.All.Select(circuit => CircuitSolver.Solve(circuit.Task))];
        Assert.InRange(states.Count, 60, 200);
        Assert.Equal(
            Enum.GetValues<RailState>().Order(),
            states.Select(state => state.State).Distinct().Order());

        // In supply lines alone: laminar, in transition and turbulent.
        double[] reynolds = [.. PeerCircuits.All.Zip(states).SelectMany(each => Reynolds(each.First.Task, each.Second))];
        Assert.Contains(reynolds, each => each is > 100 and < PipeFriction.TurbulenceOnset);
        Assert.Contains(reynolds, each => each is > PipeFriction.TurbulenceOnset and < PipeFriction.TurbulenceComplete);
        Assert.Contains(reynolds, each => each > PipeFriction.TurbulenceComplete);
    }

    [Fact]
    public void Names_OfThePeersCircuits_AreUnique() =>
        Assert.Equal(PeerCircuits.All.Count, PeerCircuits.All.Select(circuit => circuit.Name).Distinct().Count());

    [Fact]
    public void Description_OfThePeersCircuits_IsWrittenWhereAskedFor()
    {
        string text = JsonSerializer.Serialize(
            PeerCircuits.All.Select(circuit => PeerDescription.Of(circuit.Name, circuit.Task)), Indented);
        using JsonDocument read = JsonDocument.Parse(text);
        Assert.Equal(PeerCircuits.All.Count, read.RootElement.GetArrayLength());
        if (Environment.GetEnvironmentVariable(FileVariable) is { Length: > 0 } file)
        {
            File.WriteAllText(file, text);
        }
    }

    private static IEnumerable<double> Reynolds(CircuitTask task, CircuitState state)
    {
        double flow = task.Layout == LineLayout.Return && state.PumpFlow is { } pump ? pump : task.Injected;
        return task.Plumbing.Supply.OfType<Line>().Select(line => (double)PipeFlow.Reynolds<Real>(
            PipeFlow.Velocity<Real>(flow, line.Bore.Meters), line.Bore.Meters, task.KinematicViscosity));
    }
}
