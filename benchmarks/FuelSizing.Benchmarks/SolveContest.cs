using FuelSizing.Systems;

namespace FuelSizing.Benchmarks;

/// <summary>One typed point against the same chain in plain doubles, in turns of processor time.</summary>
internal static class SolveContest
{
    private const int Turns = 101;
    private const int Repeats = 2_000;

    private static OperatingResult? _last;
    private static double _sum;

    public static void Run()
    {
        PointPeers peers = new(1);
        OperatingPoint point = OperatingPoint.At(InventedCar.Rpm(6000), InventedCar.Kpa(50));
        FuelSystem bare = InventedCar.System;
        FuelSystem lines = InventedCar.WithLines;
        CircuitTask task = lines.CircuitAt(lines.DemandAt(point)).Task;
        Against("no lines", () => _last = bare.Solve(point), () =>
        {
            peers.Plain();
            _sum += InventedCar.Pump.Flow.At(3.9e5);
        });
        Against("lines", () => _last = lines.Solve(point), () =>
        {
            peers.Plain();
            _sum += CircuitContest.Plain(task);
        });
    }

    private static void Against(string name, Action typed, Action plain)
    {
        for (double spent = 0; spent < 1;)
        {
            spent += ThreadClock.Of(typed, Repeats) + ThreadClock.Of(plain, Repeats);
        }

        double[] ours = new double[Turns];
        double[] theirs = new double[Turns];
        for (int turn = 0; turn < Turns; turn++)
        {
            ours[turn] = ThreadClock.Of(typed, Repeats) / Repeats * 1e9;
            theirs[turn] = ThreadClock.Of(plain, Repeats) / Repeats * 1e9;
        }

        long before = GC.GetAllocatedBytesForCurrentThread();
        typed();
        long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        Console.WriteLine(FormattableString.Invariant(
            $"{name}: Solve {Medians.Of(ours):F0} ns, {bytes} bytes; plain doubles {Medians.Of(theirs):F0} ns; {Medians.Of([.. ours.Zip(theirs, (a, b) => a / b)]):F2} times as long"));
    }
}
