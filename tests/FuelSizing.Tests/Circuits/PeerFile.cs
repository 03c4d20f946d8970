using System.Globalization;
using System.Text.Json;
using FuelSizing.Circuits;

namespace FuelSizing.Tests.Circuits;

/// <summary>Circuits that an independent program solves too: how many, and the file that .ci/peer asks for.</summary>
internal static class PeerFile
{
    /// <summary>More by .ci/peer, and by FUELSIZING_PEER_CIRCUITS; a share of them whenever the tests run.</summary>
    public static int Count(int few) => int.TryParse(
        Environment.GetEnvironmentVariable("FUELSIZING_PEER_CIRCUITS"), CultureInfo.InvariantCulture, out int count) ? count : few;

    /// <summary>Writes circuits and answers to the file that a variable names; nothing is written where it is not set. They are described in any case.</summary>
    public static void Write(string variable, int expected, IReadOnlyList<(string Name, CircuitTask Task)> circuits)
    {
        string text = JsonSerializer.Serialize(circuits.Select(circuit => PeerDescription.Of(circuit.Name, circuit.Task)));
        using JsonDocument read = JsonDocument.Parse(text);
        Assert.Equal(expected, read.RootElement.GetArrayLength());
        if (Environment.GetEnvironmentVariable(variable) is { Length: > 0 } file)
        {
            File.WriteAllText(file, text);
        }
    }
}
