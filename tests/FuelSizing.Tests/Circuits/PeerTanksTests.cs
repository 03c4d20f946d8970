using System.Text.Json;
using FuelSizing.Circuits;

namespace FuelSizing.Tests.Circuits;

/// <summary>The circuits joined by a surge tank that an independent program solves too; .ci/peer runs both and compares.</summary>
public class PeerTanksTests
{
    /// <summary>Names the file to write the circuits and answers to; nothing is written where it is not set.</summary>
    private const string FileVariable = "FUELSIZING_PEER_TANKS";

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    [Fact]
    public void Tanks_OfThePeer_AreOfEveryKind()
    {
        JoinedCircuits[] all = [.. PeerTanks.All.Select(tank => JoinedCircuits.Of(tank.Tank, tank.Task, CircuitSolver.SolveBounds(tank.Task)))];
        Assert.InRange(all.Count(joined => joined.Balance.Lift is null), 5, all.Length / 2);
        Assert.InRange(all.Count(joined => joined.Balance.Pressure > 2e3), 10, all.Length);
        Assert.InRange(PeerTanks.All.Count(tank => tank.Tank.ReturnsTo == ReturnDestination.MainTank), 15, 45);
        Assert.All(all, joined => Assert.NotEqual(RailState.NotCovered, joined.Balance.Main.State));
        Assert.All(all, joined => Assert.NotEqual(RailState.NotCovered, joined.Filling.Estimate.State));
        Assert.Contains(all, joined => joined.Balance.Main.State == RailState.Sagging);
    }

    [Fact]
    public void Description_OfThePeersTanks_IsWrittenWhereAskedFor()
    {
        string text = JsonSerializer.Serialize(PeerTanks.All.Select(tank => PeerDescription.Of(tank.Name, tank.Tank, tank.Task)), Indented);
        using JsonDocument read = JsonDocument.Parse(text);
        Assert.Equal(PeerTanks.All.Count, read.RootElement.GetArrayLength());
        if (Environment.GetEnvironmentVariable(FileVariable) is { Length: > 0 } file)
        {
            File.WriteAllText(file, text);
        }
    }
}
