using FuelSizing.Files;
using FuelSizing.Points;
using FuelSizing.Systems;

namespace FuelSizing.Benchmarks;

/// <summary>
/// One solved point of a setup, with margins, limiting component and outcome read once and read three times. To compare two
/// commits, build this file in both and give each the same setup.
/// </summary>
internal static class MarginReads
{
    private const int Turns = 201;
    private const int Repeats = 200;

    private static double _sum;

    public static void Run(string file)
    {
        Setup setup = Setup.Read(file);
        FuelSystem system = setup.System;
        OperatingPoint[] points = [.. setup.Points.Select(named => named.Point)];
        double[] once = new double[Turns];
        double[] thrice = new double[Turns];
        double[] none = new double[Turns];
        for (int turn = 0; turn < Turns; turn++)
        {
            none[turn] = ThreadClock.Of(() => Solve(system, points, 0), Repeats);
            once[turn] = ThreadClock.Of(() => Solve(system, points, 1), Repeats);
            thrice[turn] = ThreadClock.Of(() => Solve(system, points, 3), Repeats);
        }

        double each = 1e6 / Repeats / points.Length;
        double one = Medians.Of(once) * each;
        double three = Medians.Of(thrice) * each;
        Console.WriteLine(FormattableString.Invariant(
            $"solve {Medians.Of(none) * each:0.000} µs; with margins, limiting and outcome read once {one:0.000} µs, three times {three:0.000} µs: {three / one:0.000} of once ({_sum:0})"));
    }

    private static void Solve(FuelSystem system, OperatingPoint[] points, int reads)
    {
        foreach (OperatingPoint point in points)
        {
            OperatingResult result = system.Solve(point);
            for (int read = 0; read < reads; read++)
            {
                _sum += result.Margins.Count + (result.Limiting.Margin.Reserve?.DecimalFractions ?? 0) + (int)result.Outcome;
            }

            _sum += result.RailGauge.Pascals;
        }
    }
}
