using FuelSizing.Circuits;
using FuelSizing.Points;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Benchmarks;

/// <summary>
/// Whole sweeps and Monte Carlo runs on one thread, verdict and words included, by the point and by the sample; of sweeps beside the same points judged bare, in the same turns.
/// </summary>
internal static class WholeRuns
{
    private const int Side = 64;
    private const int Samples = 4_096;
    private const int Turns = 51;

    private static object? _last;
    private static double _sum;

    public static void Run()
    {
        foreach ((string name, FuelSystem system) in new[] { ("no lines", InventedCar.System), ("lines", InventedCar.WithLines) })
        {
            RotationalSpeed[] speeds = [.. Enumerable.Range(0, Side).Select(i => InventedCar.Rpm(2000 + (4500.0 * i / Side)))];
            UnitsNet.Pressure[] boosts = [.. Enumerable.Range(0, Side).Select(i => InventedCar.Kpa(60.0 * i / Side))];
            UncertainSystem uncertain = UncertainSystem.Of(
                system,
                OperatingPoint.At(InventedCar.Rpm(6000), InventedCar.Kpa(50)),
                UncertainInput.SupplyVoltage(Distribution.Uniform(InventedCar.Volt(12.5), InventedCar.Volt(14))),
                UncertainInput.InjectorFlowFactor(Distribution.Uniform(Ratio.FromPercent(97), Ratio.FromPercent(103))));
            Sampling sampling = Sampling.Of(Samples);
            AgainstBare($"{name}, sweep", system, speeds, boosts);
            Say($"{name}, Monte Carlo", "sample", Samples, () => _last = uncertain.MonteCarlo(sampling));
        }
    }

    /// <summary>A sweep with refinement and verdict, by the point that it looks at, beside its grid's points judged one after the other: circuit, injection, checks, and nothing else.</summary>
    private static void AgainstBare(string name, FuelSystem system, RotationalSpeed[] speeds, UnitsNet.Pressure[] boosts)
    {
        OperatingPoint[] points = [.. boosts.SelectMany(boost => speeds.Select(speed => OperatingPoint.At(speed, boost)))];
        double[] sets = [.. boosts.Select(boost => system.Regulator.SetPascals(boost.Pascals))];
        int looked = system.Sweep(speeds, boosts).PointsSolved;
        void Sweep() => _last = system.Sweep(speeds, boosts);
        void Bare()
        {
            CircuitTable? table = CircuitTable.Of(system.Parts.TaskAt(system.Parts.DemandAt(points[0])), sets.Min(), sets.Max(), points.Length);
            PointJudge judge = new(system.Applicable, system.Parts, table);
            foreach (OperatingPoint point in points)
            {
                judge.Judge(point.Place, point.Boost);
                _sum += judge.Figure(0);
            }
        }

        for (double spent = 0; spent < 2;)
        {
            spent += ThreadClock.Of(Sweep, 1) + ThreadClock.Of(Bare, 1);
        }

        double[] swept = new double[Turns];
        double[] bare = new double[Turns];
        for (int turn = 0; turn < Turns; turn++)
        {
            swept[turn] = ThreadClock.Of(Sweep, 1) / looked * 1e6;
            bare[turn] = ThreadClock.Of(Bare, 1) / points.Length * 1e6;
        }

        long before = GC.GetAllocatedBytesForCurrentThread();
        Sweep();
        long bytes = (GC.GetAllocatedBytesForCurrentThread() - before) / looked;
        Console.WriteLine(FormattableString.Invariant(
            $"{name}: {Medians.Of(swept):F2} µs a point of {looked}, bare {Medians.Of(bare):F2} µs; {Medians.Of([.. swept.Zip(bare, (a, b) => a / b)]):F2} times as long, {bytes} bytes"));
    }

    private static void Say(string name, string unit, int count, Action run)
    {
        for (double spent = 0; spent < 2;)
        {
            spent += ThreadClock.Of(run, 1);
        }

        double[] times = new double[Turns];
        for (int turn = 0; turn < Turns; turn++)
        {
            times[turn] = ThreadClock.Of(run, 1) / count * 1e6;
        }

        long before = GC.GetAllocatedBytesForCurrentThread();
        run();
        long bytes = (GC.GetAllocatedBytesForCurrentThread() - before) / count;
        Console.WriteLine(FormattableString.Invariant($"{name}: {Medians.Of(times):F2} µs a {unit}, {bytes} bytes"));
    }
}
