using System.Collections.Concurrent;
using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Random circuits, the same ones on each run, of pumps with lines, filters and check valves of their own, some on one splice, and of regulators before a dead-headed rail, some of
/// which hold a pressure that changes with what returns: an independent program solves them too (tests/peer).
/// </summary>
internal static class PeerBranches
{
    private const double Boost = 20e3;

    // They are what several tests look at, and not made in no time.
    private static readonly ConcurrentDictionary<int, Lazy<CircuitTask>> Made = new();

    /// <summary>So many circuits.</summary>
    /// <param name="count">The first ones are the same whatever the count.</param>
    public static IReadOnlyList<(string Name, CircuitTask Task)> Of(int count) =>
        [.. Enumerable.Range(1, count).Select(seed => (FormattableString.Invariant($"branches {seed}"), Made.GetOrAdd(seed, each => new(() => TaskOf(each))).Value))];

    /// <summary>One of them.</summary>
    public static CircuitTask TaskOf(int seed)
    {
        Random random = new(seed);
        double Any(double least, double most) => least + ((most - least) * random.NextDouble());
        double supply = Any(12, 14.5);
        int liquid = random.Next(4);
        PumpAssembly pump;
        do
        {
            pump = Assembly(random).At(Boost, falling: false);
        }
        while (!(Wetted(pump, liquid).Running(supply) is { FreeFlow: > 1e-5, Deadhead: > 1.5e5 }));

        bool returns = random.Next(5) < 2;
        Plumbing lines = PeerCircuits.Paths[random.Next(PeerCircuits.Paths.Count)];
        CircuitTask task = PeerCircuits.Task(
            returns ? LineLayout.Return : LineLayout.Returnless,
            pump,
            returns ? lines : Plumbing.Of(lines.Suction, lines.Supply, lines.ReturnLine, random.Next(4) == 0 ? [] : Path(random)),
            supply,
            Any(2e5, 4.5e5),
            0,
            liquid);
        task = task with { Pump = Wetted(pump, liquid), Injected = Any(0.03, 0.7) * Wetted(pump, liquid).Running(supply).FreeFlow };
        if (random.Next(3) == 0)
        {
            Fixed regulator = Fixed.At(Pressure.FromPascals(task.Set)).WithFlow(
                RegulatorFlow.Rising(Wren.Kpa(Any(1, 60)), VolumeFlow.FromLitersPerHour(Any(60, 150)), VolumeFlow.FromLitersPerHour(Any(0, 120))).WithOutletShare(Any(-0.12, 0.5)));
            task = task with { Set = regulator.SetPascals(Boost), Held = regulator.HeldAt(Boost) };
        }

        // A rail without pressure is found by the peer to a pascal only.
        while (CircuitSolver.Solve(task).State == RailState.Starved)
        {
            task = task with { Injected = task.Injected / 2 };
            Assert.True(task.Injected > 1e-9, $"Seed {seed} starves whatever is injected.");
        }

        return task;
    }

    /// <summary>Pumps with one of the peer's liquids in their own lines.</summary>
    public static PumpAssembly Wetted(PumpAssembly pump, int liquid) => pump.InLiquid(new(PeerCircuits.Liquids[liquid].Density, PeerCircuits.Liquids[liquid].Viscosity));

    private static PumpAssembly Assembly(Random random)
    {
        Feed trunk = Feed.Of(
            "trunk", Conductor.Awg(8), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(60), Contact.Of("all of it", ElectricResistance.FromMilliohms(2 + (20 * random.NextDouble()))));
        PumpAssembly One() => Branch(random, OneOf(random, trunk));
        return random.Next(10) switch
        {
            0 or 1 or 2 or 3 or 4 => PumpParallel.Of(One(), One()),
            5 or 6 => PumpParallel.Of(One(), One(), One()),
            7 => PumpParallel.Of(One(), OneOf(random, trunk)),
            8 => PumpParallel.Of(Branch(random, PumpSeries.Of(SeriesBypass.CheckValve, OneOf(random, trunk), OneOf(random, trunk))), One()),
            _ => One(),
        };
    }

    private static PumpAssembly OneOf(Random random, Feed trunk)
    {
        double Any(double least, double most) => least + ((most - least) * random.NextDouble());
        double[] volts = random.Next(2) == 0 ? [9, 11.5, 13.5] : [8.5, 10, 12, 14, 16];
        Pump pump = PeerCircuits.Wired(Any(1, 6), random.Next(8, 14), volts, Any(0.6, 1.4), Any(0.7, 1.2));
        pump = random.Next(8) == 0 ? pump.WithFeed(pump.Feed!.WithShared(trunk)) : pump;
        return random.Next(8) == 0 ? SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), pump) : pump;
    }

    private static PumpBranch Branch(Random random, PumpAssembly pump) => PumpBranch.Of(
        pump,
        random.Next(3) == 0 ? Path(random) : null,
        [.. Path(random), .. random.Next(3) == 0 ? Array.Empty<IFlowLoss>() : [Valve(random)]]);

    private static IFlowLoss[] Path(Random random)
    {
        double Any(double least, double most) => least + ((most - least) * random.NextDouble());
        Line line = random.Next(2) == 0
            ? PeerCircuits.Tube(Any(5.5, 10), Any(0.2, 2.5), Any(-0.4, 0.4), Fitting.Bend90.Times(3))
            : PeerCircuits.Hose(Any(5.5, 9), Any(0.2, 2), Any(-0.3, 0.3), Fitting.Elbow45);
        return random.Next(2) == 0 ? [line] : [PeerCircuits.FilterOf(Any(120, 400), Any(2, 25), Any(1, 2.5)), line];
    }

    private static CheckValve Valve(Random random)
    {
        double Any(double least, double most) => least + ((most - least) * random.NextDouble());
        Pressure opening = Wren.Kpa(random.Next(8) == 0 ? Any(200, 500) : Any(1, 40));
        return random.Next(2) == 0
            ? CheckValve.OfCoefficient("peer valve", opening, Any(0.5, 20), Length.FromMillimeters(Any(5, 9)))
            : CheckValve.Of("peer valve", opening, VolumeFlow.FromLitersPerHour(Any(60, 300)), opening + Wren.Kpa(Any(1, 40)), Density.FromKilogramsPerCubicMeter(Any(700, 1000)));
    }
}
