using CsCheck;
using FuelSizing.Circuits;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>A sweep's table changes how fast circuits are solved, and nothing else.</summary>
public class CircuitTableTests
{
    /// <summary>Of the pumps' free flow.</summary>
    private const double Tolerance = 1e-12;

    /// <summary>Of the pressure: a loss grows with more than the flow, and a small flow may be a small share of the free one.</summary>
    private const double PressureTolerance = 1e-11;

    private const int Points = 128;

    // Ends at 500 kPa with flow left: no data above.
    private static readonly Pump OpenEnded = Pump.From(PumpCurve.At(
        "open-ended pump",
        Wren.Volt(13.5),
        (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(215)),
        (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(170)),
        (Wren.Kpa(500), VolumeFlow.FromLitersPerHour(120))));

    [Fact]
    public void Solve_ByASweepsTable_EndsWhereASingleSolveEnds() =>
        Gen.Select(Sweeps, Gen.Double[0, 1].Array[8], Gen.Double[0, 1].Array[8]).Sample(
            (sweep, places, shares) =>
            {
                CircuitTable? table = sweep.Table;
                for (int point = 0; point < places.Length; point++)
                {
                    CircuitTask task = sweep.At(places[point], shares[point]);
                    Agree(CircuitSolver.Solve(task), CircuitSolver.Solve(task, table), task);
                }
            },
            iter: 500);

    [Fact]
    public void Solve_ByATable_IsTheSameToTheLastBitInAnyOrderAndOnTwoThreads() =>
        Gen.Select(Sweeps, Gen.Double[0, 1].Array[64], Gen.Double[0, 1].Array[64], Gen.Int[1, int.MaxValue]).Sample(
            (sweep, places, shares, seed) =>
            {
                CircuitTable? table = sweep.Table;
                CircuitTask[] tasks = [.. places.Zip(shares, sweep.At)];
                CircuitState[] inOrder = Array.ConvertAll(tasks, task => CircuitSolver.Solve(task, table));
                int[] order = [.. Enumerable.Range(0, tasks.Length)];
                new Random(seed).Shuffle(order);
                CircuitState[] shuffled = new CircuitState[tasks.Length];
                CircuitState[] threaded = new CircuitState[tasks.Length];
                foreach (int point in order)
                {
                    shuffled[point] = CircuitSolver.Solve(tasks[point], table);
                }

                Parallel.For(
                    0,
                    tasks.Length,
                    new ParallelOptions { MaxDegreeOfParallelism = 2 },
                    point => threaded[point] = CircuitSolver.Solve(tasks[point], table));

                for (int point = 0; point < tasks.Length; point++)
                {
                    Assert.Equal(inOrder[point], shuffled[point]);
                    Assert.Equal(inOrder[point], threaded[point]);
                }
            },
            iter: 60,
            threads: 1);

    [Fact]
    public void Solve_OfACircuit_AllocatesNothing()
    {
        // Pumps of this test's own: they keep what depends on their voltage, and other tests ask at others.
        Pump wired = Pump.Of([Wren.WiredCurve(12, 0.85), Wren.WiredCurve(13.5, 1)], feed: PumpAssemblyTests.FeedOf(3));
        Pump plain = Pump.Of([Wren.Pump]);
        CircuitTask like = PeerCircuits.All.Select(circuit => circuit.Task).First(task => task.HasPathToRegulator && task.MinimumSupply is null);
        PumpAssembly[] pumps =
        [
            plain, wired, PumpParallel.Of(wired, wired), PumpSeries.Of(SeriesBypass.CheckValve, plain, wired), Pump.Of([Wren.Pump], Wren.Kpa(330)),
        ];
        foreach (CircuitTask task in pumps.SelectMany(pump => new[] { 1e-5, 5e-5 }, (pump, injected) => like with { Pump = pump, Injected = injected }))
        {
            CircuitTable? table = CircuitTable.Of(task, task.Set * 0.9, task.Set * 1.1, Points);
            double sum = CircuitSolver.Solve(task).Flow + CircuitSolver.Solve(task, table).Flow;
            long before = GC.GetAllocatedBytesForCurrentThread();
            sum += CircuitSolver.Solve(task).Flow + CircuitSolver.Solve(task, table).Flow;
            Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
            Assert.True(sum >= 0);
        }
    }

    [Fact]
    public void Table_OfAnotherCircuit_IsNotRead()
    {
        CircuitTask task = PeerCircuits.All.Select(circuit => circuit.Task).First(task => task.HasPathToRegulator && task.MinimumSupply is null);
        CircuitTable table = CircuitTable.Of(task, task.Set * 0.9, task.Set * 1.1, Points)!;
        CircuitTask warmer = task with { KinematicViscosity = task.KinematicViscosity * 0.9 };
        CircuitTask lighter = task with { Density = task.Density * 0.99 };
        CircuitTask weaker = task with { Supply = task.Supply - 0.5 };
        CircuitTask bare = task with { Plumbing = Plumbing.Of(task.Plumbing.Suction, task.Plumbing.Supply, task.Plumbing.ReturnLine) };
        CircuitTask other = task with { Pump = Pump.From(Wren.PumpOf(1.5)) };
        Assert.True(table.Serves(task with { Set = task.Set * 1.05, Injected = 0 }));
        foreach (CircuitTask unlike in new[] { warmer, lighter, weaker, bare, other })
        {
            Assert.False(table.Serves(unlike));
            CircuitState alone = CircuitSolver.Solve(unlike);
            Assert.Equal(alone, CircuitSolver.Solve(unlike, table));
        }
    }

    [Fact]
    public void Table_OfFewPoints_IsNotMade()
    {
        CircuitTask task = PeerCircuits.All.Select(circuit => circuit.Task).First(task => task.HasPathToRegulator);
        Assert.Null(CircuitTable.Of(task, task.Set * 0.9, task.Set * 1.1, 20));
    }

    [Fact]
    public void Sweep_OfManyPoints_SaysWhatSingleSolvesSay()
    {
        FuelSystem system = FuelSystem.Return(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(440), 4),
            RisingRate.From(Wren.Kpa(300), 2, Wren.Kpa(10), Wren.Kpa(480)),
            Wren.WiredPump,
            plumbing: Plumbing.Of(
                suction: [Line.Of("suction", Length.FromMillimeters(10), Length.FromMeters(0.5), Roughness.RubberHose)],
                supply: [Line.Of("supply", Length.FromMillimeters(6), Length.FromMeters(4), Roughness.DrawnTube)],
                returnLine: [Line.Of("back", Length.FromMillimeters(6), Length.FromMeters(4), Roughness.DrawnTube)]));
        SweepResult sweep = system.Sweep(
            [.. Enumerable.Range(0, 16).Select(i => Wren.Rpm(1500 + (330 * i)))],
            [.. Enumerable.Range(0, 12).Select(i => Wren.Kpa(7 * i))],
            Wren.Hill);
        foreach (OperatingResult swept in sweep.Results)
        {
            OperatingResult alone = system.Solve(swept.Point);
            Assert.Equal(alone.RailState, swept.RailState);
            Assert.Equal(alone.PumpFlow!.Value.LitersPerHour, swept.PumpFlow!.Value.LitersPerHour, 9);
            Assert.Equal(alone.RailGauge.Kilopascals, swept.RailGauge.Kilopascals, 9);
            Assert.Equal(alone.DutyCycle!.Value.Percent, swept.DutyCycle!.Value.Percent, 9);
        }
    }

    private static Gen<Sweep> Sweeps =>
        Gen.Select(CircuitTests.Any, Gen.Bool, Gen.Double[0, 0.5]).Select((like, open, range) => new Sweep(
            open ? like with { Pump = OpenEnded } : like, like.Set * (1 - range), like.Set * (1 + range)));

    private static void Agree(in CircuitState alone, in CircuitState swept, in CircuitTask task)
    {
        double free = alone.Running.FreeFlow;
        Assert.Equal(alone.State, swept.State);
        Close(alone.Flow, swept.Flow, free);
        Close(alone.ReturnFlow, swept.ReturnFlow, free);
        Close(alone.MinimumAtSet, swept.MinimumAtSet, free);
        Close(alone.MaximumAtSet, swept.MaximumAtSet, free);
        foreach ((double one, double other) in new[]
        {
            (alone.RailGauge, swept.RailGauge),
            (alone.InletGauge, swept.InletGauge),
            (alone.OutletGauge, swept.OutletGauge),
            (alone.ReturnGauge, swept.ReturnGauge),
        })
        {
            Close(one, other, Math.Max(task.Set, Math.Abs(one)) * PressureTolerance / Tolerance);
        }
    }

    private static void Close(double expected, double actual, double scale) =>
        Assert.InRange(actual - expected, -Tolerance * scale, Tolerance * scale);

    /// <summary>Circuits that differ in set pressure and injected flow.</summary>
    private sealed record Sweep(CircuitTask Like, double Minimum, double Maximum)
    {
        public CircuitTable? Table => CircuitTable.Of(Like, Minimum, Maximum, Points);

        public CircuitTask At(double place, double share) => Like with
        {
            Set = Math.Min(Maximum, Minimum + (place * (Maximum - Minimum))),
            Injected = share * 6e-5,
        };
    }
}
