using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Random circuits, the same ones on each run, of pumps that hang on one splice or two, some switched off: an independent program solves them too (tests/peer).
/// </summary>
internal static class PeerShared
{
    private const double Boost = 20e3;

    /// <summary>So many circuits.</summary>
    /// <param name="count">The first ones are the same whatever the count.</param>
    public static IReadOnlyList<(string Name, CircuitTask Task)> Of(int count) =>
        [.. Enumerable.Range(1, count).Select(seed => (FormattableString.Invariant($"shared {seed}"), TaskOf(new Random(seed), null)))];

    /// <summary>A circuit whose trunks have no resistance, and the same with a feed of its own for every pump.</summary>
    public static (CircuitTask Shared, CircuitTask Alone) WithoutResistance(int seed)
    {
        CircuitTask shared = TaskOf(new Random(seed), 0);
        return (shared, shared with { Pump = shared.Pump.WithEach(pump => pump is Pump { Feed: { } feed } alone ? alone.WithFeed(Branch(feed)) : pump) });
    }

    private static Feed Branch(Feed feed) =>
        Feed.Of(feed.Name, feed.Conductor, feed.OutwardLength, feed.ReturnLength, feed.ConductorTemperature, [.. feed.Contacts]);

    private static CircuitTask TaskOf(Random random, double? milliohms)
    {
        double Any(double least, double most) => least + ((most - least) * random.NextDouble());
        double supply = Any(12, 14.5);
        Feed[] trunks = [Trunk("trunk", milliohms ?? Any(2, 40)), Trunk("other trunk", milliohms ?? Any(2, 40))];
        PumpAssembly pump;
        do
        {
            pump = Assembly(random, trunks).At(Boost, falling: false);
        }
        while (pump.Running(supply).FreeFlow == 0);

        double injected = Any(0.03, 0.9) * pump.Running(supply).FreeFlow;
        CircuitTask task = PeerCircuits.Task(
            random.Next(2) == 0 ? LineLayout.Return : LineLayout.Returnless,
            pump,
            PeerCircuits.Paths[random.Next(PeerCircuits.Paths.Count)],
            supply,
            Any(2e5, 5e5),
            injected,
            random.Next(4));

        // A rail without pressure is found by the peer to a pascal only.
        while (CircuitSolver.Solve(task).State == RailState.Starved)
        {
            task = task with { Injected = task.Injected / 2 };
        }

        return task;
    }

    private static PumpAssembly Assembly(Random random, Feed[] trunks)
    {
        PumpAssembly One() => OneOf(random, trunks);
        return random.Next(10) switch
        {
            0 or 1 or 2 or 3 => PumpParallel.Of(One(), One()),
            4 or 5 => PumpParallel.Of(One(), One(), One()),
            6 or 7 => PumpSeries.Of(SeriesBypass.CheckValve, One(), One()),
            8 => PumpSeries.Of(SeriesBypass.CheckValve, One(), PumpParallel.Of(One(), One())),
            _ => PumpParallel.Of(PumpSeries.Of(SeriesBypass.CheckValve, One(), One()), One()),
        };
    }

    private static PumpAssembly OneOf(Random random, Feed[] trunks)
    {
        double Any(double least, double most) => least + ((most - least) * random.NextDouble());
        double[] volts = random.Next(2) == 0 ? [9, 11.5, 13.5] : [8.5, 10, 12, 14, 16];
        Pump pump = PeerCircuits.Wired(Any(1, 6), random.Next(8, 14), volts, Any(0.6, 1.4), Any(0.7, 1.2));
        pump = random.Next(5) switch
        {
            0 => pump,
            1 => pump.WithFeed(pump.Feed!.WithShared(trunks[1])),
            _ => pump.WithFeed(pump.Feed!.WithShared(trunks[0])),
        };
        return random.Next(6) switch
        {
            0 => SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), pump),
            1 => SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), pump, PumpLowSpeed.Through(ElectricResistance.FromOhms(Any(0.02, 0.2)))),
            2 => SwitchedPump.Above(Wren.Kpa(10), Wren.Kpa(5), pump),
            _ => pump,
        };
    }

    private static Feed Trunk(string name, double milliohms) => Feed.Of(
        name, Conductor.Awg(8), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(60), Contact.Of("all of it", ElectricResistance.FromMilliohms(milliohms)));
}
