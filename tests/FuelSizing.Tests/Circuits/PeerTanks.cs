using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Random circuits joined by a surge tank, the same ones on each run, that an independent program solves too (tests/peer): full tanks and others, return to either tank,
/// pumps with and without wiring, alone, in series and in parallel.
/// </summary>
internal static class PeerTanks
{
    private const int Count = 60;
    private const int Seed = 20;

    /// <summary>Every pair of circuits.</summary>
    public static IReadOnlyList<(string Name, SurgeTank Tank, CircuitTask Task)> All { get; } = [.. Made()];

    private static IEnumerable<(string Name, SurgeTank Tank, CircuitTask Task)> Made()
    {
        Random random = new(Seed);
        double Between(double from, double to) => from + ((to - from) * random.NextDouble());
        for (int number = 1; number <= Count; number++)
        {
            double supply = Between(12, 13.5);
            Pump main = random.Next(2) == 0 ? Pump.From(PeerCircuits.Unwired(13.5, Between(0.7, 1.2))) : PeerCircuits.Wired(Between(2, 5), 12, [10.5, 12, 13.5]);
            PumpAssembly pumps = random.Next(3) == 0 ? PumpParallel.Of(main, Pump.From(PeerCircuits.Unwired(13.5, 0.6))) : main;
            double pressure = Between(0.12, 0.3);
            Pump small = random.Next(2) == 0
                ? Pump.From(PeerCircuits.Unwired(13.5, Between(0.12, 1.3), pressure))
                : PeerCircuits.Wired(Between(2, 5), 14, [10.5, 12, 13.5], Between(0.15, 1.3), pressure);
            PumpAssembly lift = random.Next(4) switch
            {
                0 => PumpParallel.Of(small, Pump.From(PeerCircuits.Unwired(13.5, 0.2, pressure))),
                1 => PumpSeries.Of(SeriesBypass.CheckValve, small, Pump.From(PeerCircuits.Unwired(13.5, 0.5, 0.15))),
                _ => small,
            };
            SurgeTank tank = SurgeTank.Of(
                Volume.FromLiters(1),
                lift,
                random.Next(2) == 0 ? ReturnDestination.SurgeTank : ReturnDestination.MainTank,
                random.Next(2) == 0 ? [PeerCircuits.FilterOf(400, 2, Between(1, 3)), PeerCircuits.Hose(12, Between(0.2, 1), Between(-0.05, 0.3))] : null,
                [PeerCircuits.Tube(Between(6, 10), Between(1, 3), Between(0.06, 0.4), Fitting.Elbow90)],
                random.Next(5) == 0 ? null : [PeerCircuits.Hose(Between(4.5, 9), Between(1, 3), random.Next(2) == 0 ? 0 : Between(0, 0.5), Fitting.Exit)]);
            Plumbing lines = Plumbing.Of(
                [PeerCircuits.Tube(10, Between(0.1, 0.6), Between(-0.2, 0.1))],
                [PeerCircuits.Tube(Between(6.5, 9), Between(1, 4), Between(0, 0.5), Fitting.Bend90.Times(2))],
                [PeerCircuits.Hose(Between(5, 9), Between(1, 4), Between(-0.4, 0.2), Fitting.Exit)]);
            (double density, double viscosity) = PeerCircuits.Liquids[number % PeerCircuits.Liquids.Length];
            yield return (
                FormattableString.Invariant($"tank {number}, return to the {tank.ReturnsTo}"),
                tank,
                new(LineLayout.Return, pumps, lines, supply, null, Between(2.5e5, 4.5e5), 0, Between(0.05, 0.8) * pumps.Running(supply).FreeFlow, density, viscosity));
        }
    }
}
