using FuelSizing.Points;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Benchmarks;

/// <summary>Whole sweeps and Monte Carlo runs on one thread, verdict and words included, by the point and by the sample.</summary>
internal static class WholeRuns
{
    private const int Side = 64;
    private const int Samples = 4_096;
    private const int Turns = 51;

    private static object? _last;

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
            Say($"{name}, sweep", "point", Side * Side, () => _last = system.Sweep(speeds, boosts));
            Say($"{name}, Monte Carlo", "sample", Samples, () => _last = uncertain.MonteCarlo(sampling));
        }
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
