using FuelSizing.Electrical;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace FuelSizing.Benchmarks;

/// <summary>A sweep of circuits by the solver and by a plain root finder a point, in turns of processor time.</summary>
internal static class CircuitContest
{
    private const int Turns = 101;

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
        Pump plain = Pump.By(InventedCar.Pump);
        (string Name, PumpAssembly Pump, Plumbing Plumbing)[] circuits =
        [
            ("no lines, no wiring", plain, Plumbing.None),
            ("lines", plain, InventedCar.Plumbing),
            ("lines and wiring", wired, InventedCar.Plumbing),
            ("two wired pumps in parallel, lines", PumpParallel.Of(wired, wired), InventedCar.Plumbing),
            ("two pumps in series, lines", PumpSeries.Of(SeriesBypass.CheckValve, Pump.By(InventedCar.Pump), plain), InventedCar.Plumbing),
        ];
        foreach ((string name, PumpAssembly pump, Plumbing plumbing) in circuits)
        {
            CircuitTask[] tasks = Sweep(InventedCar.System.With(pump).With(plumbing));
            double[] here = new double[Turns];
            double[] there = new double[Turns];
            double off = tasks.Max(task => Math.Abs(Plain(task) - CircuitSolver.Solve(task).PumpFlow!.Value) / task.Pump.Kept(task.Supply).Surely.FreeFlow);
            for (double spent = 0; spent < 1;)
            {
                spent += ThreadClock.Of(() => Solve(tasks), 4) + ThreadClock.Of(() => Plainly(tasks), 1);
            }

            long before = GC.GetAllocatedBytesForCurrentThread();
            Solve(tasks);
            long bytes = (GC.GetAllocatedBytesForCurrentThread() - before) / tasks.Length;
            for (int turn = -5; turn < Turns; turn++)
            {
                double one = ThreadClock.Of(() => Solve(tasks), 1) / tasks.Length * 1e6;
                CircuitTask[] few = [.. tasks.Where((_, i) => i % 16 == (turn + 16) % 16)];
                double other = ThreadClock.Of(() => Plainly(few), 1) / few.Length * 1e6;
                if (turn >= 0)
                {
                    (here[turn], there[turn]) = (one, other);
                }
            }

            Console.WriteLine(FormattableString.Invariant(
                $"{name}: {Medians.Of(here):F2} µs a circuit, {bytes} bytes; a plain root finder {Medians.Of(there):F2} µs, {Medians.Of([.. there.Zip(here, (a, b) => a / b)]):F1} times; largest difference {off:E1} of the free flow"));
        }
    }

    private static CircuitTask[] Sweep(FuelSystem system) =>
    [
        .. from boost in Enumerable.Range(0, 16)
           from speed in Enumerable.Range(0, 16)
           select system.CircuitAt(system.DemandAt(OperatingPoint.At(
               InventedCar.Rpm(2000 + (300 * speed)), InventedCar.Kpa(4 * boost)))) into solved
           where solved.State.State is RailState.Regulated or RailState.AtRegulatorLimit
           select solved.Task,
    ];

    private static void Solve(CircuitTask[] tasks)
    {
        foreach (CircuitTask task in tasks)
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

    /// <summary>Brent's method over the flow, and within it over the rise where pumps give flow by rise.</summary>
    public static double Plain(CircuitTask task)
    {
        RunningPumps pumps = task.Pump.Kept(task.Supply).Surely;
        double Rise(double flow) => flow <= 0 ? pumps.Deadhead
            : flow >= pumps.FreeFlow ? 0
            : pumps.GivesFlow ? pumps.Deadhead * Brent.FindRoot(share => (pumps.FlowAt(share * pumps.Deadhead) - flow) / pumps.FreeFlow, 0, 1, 1e-14, 200)
            : pumps.RiseAt(flow);
        return pumps.FreeFlow * Brent.FindRoot(
            share => (Rise(share * pumps.FreeFlow) - CircuitSolver.Asked(task, share * pumps.FreeFlow)) / task.Set, 0, 1, 1e-14, 200);
    }
}
