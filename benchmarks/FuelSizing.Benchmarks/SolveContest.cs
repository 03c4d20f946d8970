using FuelSizing.Circuits;
using FuelSizing.Points;
using FuelSizing.Systems;

namespace FuelSizing.Benchmarks;

/// <summary>One typed point against the same chain in plain doubles, in turns of processor time.</summary>
internal static class SolveContest
{
    private const int Turns = 101;
    private const int Repeats = 2_000;

    private static OperatingResult? _last;
    private static PlainNumbers _numbers;
    private static double _sum;

    public static void Run()
    {
        OperatingPoint point = OperatingPoint.At(InventedCar.Rpm(6000), InventedCar.Kpa(50));
        FuelSystem bare = InventedCar.System;
        FuelSystem lines = InventedCar.WithLines;
        PlainPoint plain = new();
        void Plainly() => plain.At(
            point.RevolutionsPerSecond,
            point.BoostPascals,
            point.Conditions.Atmosphere.Pascals,
            point.Conditions.Atmosphere.Kelvins,
            point.Conditions.SupplyVolts,
            point.Conditions.FuelKelvins,
            ref _numbers);
        Plainly();
        Agree(bare.Solve(point), _numbers);
        CircuitTask task = lines.Parts.TaskAt(lines.Parts.DemandAt(point));
        Against("no lines", () => _last = bare.Solve(point), Plainly);
        Against("lines", () => _last = lines.Solve(point), () =>
        {
            Plainly();
            _sum += CircuitContest.Plain(task);
        });
    }

    private static void Agree(OperatingResult result, PlainNumbers numbers)
    {
        (string What, double One, double Other)[] pairs =
        [
            ("fuel", result.InjectedFlow.CubicMetersPerSecond, numbers.Injected),
            ("power", (double)result.Demand.BrakePower.Watts, numbers.Brake),
            ("rail", result.RailGauge.Pascals, numbers.Set),
            ("pump", result.PumpFlow!.Value.CubicMetersPerSecond, numbers.Delivered),
            ("duty cycle", result.DutyCycle!.Value.DecimalFractions, numbers.Duty),
            ("capacity", result.Actual.Capacity!.Value, numbers.Capacity),
        ];
        foreach ((string what, double one, double other) in pairs)
        {
            if (!(Math.Abs(one - other) <= 1e-12 * one))
            {
                throw new InvalidOperationException(FormattableString.Invariant($"The contestants disagree on {what}: {one} and {other}."));
            }
        }
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
