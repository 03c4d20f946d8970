using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace FuelSizing.Benchmarks;

/// <summary>A sweep of circuits by the solver and by a plain root finder a point, in turns of processor time.</summary>
internal static class CircuitContest
{
    private const int Turns = 101;
    private const int Points = 4_096;
    private const int Part = 64;

    public static void Run()
    {
        Pump wired = Pump.Of(
            [
                .. new[] { 12.0, 14.0 }.Select(volts => PumpCurve.WithCurrent(
                    "pump",
                    InventedCar.Volt(volts),
                    [.. Enumerable.Range(0, 6).Select(i => (
                        InventedCar.Kpa(150 * i * volts * volts / 182),
                        VolumeFlow.FromLitersPerHour((330 - (11 * i * i) - (11 * i)) * volts / 13.5),
                        ElectricCurrent.FromAmperes((5 + (1.6 * i)) * volts * volts / 182)))])),
            ],
            feed: Feed.Of(
                "feed",
                Conductor.Metric(Area.FromSquareMillimeters(2.5)),
                Length.FromMeters(5),
                Length.FromMeters(2),
                Temperature.FromDegreesCelsius(60),
                Contact.Of("fuse and relay", ElectricResistance.FromMilliohms(12))));
        Pump plain = Pump.From(InventedCar.Pump);
        (string Name, PumpAssembly Pump, Plumbing Plumbing)[] circuits =
        [
            ("no lines, no wiring", plain, Plumbing.None),
            ("lines", plain, InventedCar.Plumbing),
            ("lines and wiring", wired, InventedCar.Plumbing),
            ("two wired pumps in parallel, lines", PumpParallel.Of(wired, wired), InventedCar.Plumbing),
            ("two pumps in series, lines", PumpSeries.Of(SeriesBypass.CheckValve, Pump.From(InventedCar.Pump), plain), InventedCar.Plumbing),
        ];
        foreach ((string name, PumpAssembly pump, Plumbing plumbing) in circuits)
        {
            CircuitTask[] tasks = Sweep(InventedCar.System.With(pump).With(plumbing));
            CircuitTask[] some = [.. tasks.Where((_, i) => i % Part == 0)];
            double free = pump.Bounds(tasks[0].Supply).Lower.FreeFlow;
            CircuitTable? table = TableOf(tasks);
            double off = some.Max(task => Math.Abs(Plain(task) - CircuitSolver.Solve(task, table).PumpFlow!.Value) / free);
            double cold = some.Max(task => Math.Abs(Plain(task) - CircuitSolver.Solve(task).PumpFlow!.Value) / free);
            for (double spent = 0; spent < 1;)
            {
                spent += ThreadClock.Of(() => Solve(tasks), 1) + ThreadClock.Of(() => Singly(some), 4) + ThreadClock.Of(() => Plainly(some), 1);
            }

            long before = GC.GetAllocatedBytesForCurrentThread();
            Solve(tasks, table);
            Singly(some);
            long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
            double[] sweep = new double[Turns];
            double[] alone = new double[Turns];
            double[] there = new double[Turns];
            double[] making = new double[Turns];
            for (int turn = -5; turn < Turns; turn++)
            {
                CircuitTask[] few = [.. tasks.Where((_, i) => i % Part == (turn + Part) % Part)];
                double one = ThreadClock.Of(() => Solve(tasks), 1) / tasks.Length * 1e6;
                double single = ThreadClock.Of(() => Singly(few), 1) / few.Length * 1e6;
                double other = ThreadClock.Of(() => Plainly(few), 1) / few.Length * 1e6;
                double made = ThreadClock.Of(() => TableOf(tasks), 1) * 1e6;
                if (turn >= 0)
                {
                    (sweep[turn], alone[turn], there[turn], making[turn]) = (one, single, other, made);
                }
            }

            Console.WriteLine(FormattableString.Invariant(
                $"{name}: in a sweep {Medians.Of(sweep):F3} µs a circuit, {Medians.Of([.. there.Zip(sweep, (a, b) => a / b)]):F1} times as fast; alone {Medians.Of(alone):F2} µs, {Medians.Of([.. there.Zip(alone, (a, b) => a / b)]):F1} times; a plain root finder {Medians.Of(there):F2} µs"));
            Console.WriteLine(FormattableString.Invariant(
                $"  {tasks.Length} circuits, table in {Medians.Of(making):F0} µs; {bytes} bytes but for the table; off by {off:E1} and {cold:E1} of the free flow"));
        }
    }

    /// <summary>Every circuit with a boost of its own, and so a set pressure of its own.</summary>
    private static CircuitTask[] Sweep(FuelSystem system) =>
    [
        .. from point in Enumerable.Range(0, Points)
           select system.Parts.CircuitAt(system.Parts.DemandAt(OperatingPoint.At(
               InventedCar.Rpm(2000 + (4500 * Spread(point, 0.7548776662466927))), InventedCar.Kpa(60 * Spread(point, 0.5698402909980532))))) into solved
           where solved.State.State is RailState.Regulated or RailState.AtRegulatorLimit
           select solved.Task,
    ];

    // Even over the square, and never the same twice (Roberts' sequence).
    private static double Spread(int point, double step) => point * step % 1;

    private static CircuitTable? TableOf(CircuitTask[] tasks)
    {
        (double minimum, double maximum) = (double.PositiveInfinity, 0);
        foreach (CircuitTask task in tasks)
        {
            (minimum, maximum) = (Math.Min(minimum, task.Set), Math.Max(maximum, task.Set));
        }

        return CircuitTable.Of(tasks[0], minimum, maximum, tasks.Length);
    }

    /// <summary>As a sweep does, the making of its table included.</summary>
    private static void Solve(CircuitTask[] tasks) => Solve(tasks, TableOf(tasks));

    private static void Solve(CircuitTask[] tasks, CircuitTable? table)
    {
        foreach (ref readonly CircuitTask task in tasks.AsSpan())
        {
            CircuitSolver.Solve(task, table);
        }
    }

    private static void Singly(CircuitTask[] tasks)
    {
        foreach (ref readonly CircuitTask task in tasks.AsSpan())
        {
            CircuitSolver.Solve(task);
        }
    }

    private static void Plainly(CircuitTask[] tasks)
    {
        foreach (CircuitTask task in tasks)
        {
            Plain(task);
        }
    }

    /// <summary>
    /// Brent's method over the flow; within it Brent's over the rise where pumps give flow by rise, Chandrupatla's over the rise of
    /// each stage where they are in series.
    /// </summary>
    public static double Plain(CircuitTask task)
    {
        RunningPumps pumps = task.Pump.Bounds(task.Supply).Lower;
        double Rise(double flow) => flow <= 0 ? pumps.Deadhead
            : flow >= pumps.FreeFlow ? 0
            : pumps.GivesFlow ? pumps.Deadhead * Brent.FindRoot(share => (pumps.FlowAt(share * pumps.Deadhead) - flow) / pumps.FreeFlow, 0, 1, 1e-14, 200)
            : Searched(pumps, flow);
        return pumps.FreeFlow * Brent.FindRoot(
            share => (Rise(share * pumps.FreeFlow) - task.RiseToPass(share * pumps.FreeFlow)) / task.Set, 0, 1, 1e-14, 200);
    }

    private static double Searched(RunningPumps pumps, double flow) =>
        pumps is RunningSeries series ? series.Stages.Sum(stage => Searched(stage, flow))
        : flow >= pumps.FreeFlow || pumps.Deadhead <= 0 ? 0
        : pumps.Deadhead * Bracket.Of(new OverFlow(pumps, flow), 0, 1);

    private readonly struct OverFlow(RunningPumps pumps, double flow) : IFalling
    {
        public double At(double x) => (pumps.FlowAt(x * pumps.Deadhead) - flow) / pumps.FreeFlow;
    }
}
