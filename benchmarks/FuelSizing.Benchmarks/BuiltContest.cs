using FuelSizing.Points;
using FuelSizing.Systems;

namespace FuelSizing.Benchmarks;

/// <summary>Circuits with a part that not every car has, against a plain one with as many pumps, in turns of processor time.</summary>
internal static class BuiltContest
{
    private const int Turns = 61;

    private static SolvedCircuit _last;
    private static Injection _injected;

    /// <param name="part">Of the names of those to time; all if empty.</param>
    public static void Run(string part = "")
    {
        foreach (BuiltPair pair in BuiltSystems.All().Where(pair => pair.Name.Contains(part, StringComparison.Ordinal)))
        {
            Action plainly = Solve(pair.Plain, pair.WithInjectors);
            Action built = Solve(pair.Built, pair.WithInjectors);
            int repeats = RepeatsOf(plainly);
            int fewer = RepeatsOf(built);
            double[] ours = new double[Turns];
            double[] theirs = new double[Turns];
            for (int turn = 0; turn < Turns; turn++)
            {
                ours[turn] = ThreadClock.Of(built, fewer) / fewer * 1e6;
                theirs[turn] = ThreadClock.Of(plainly, repeats) / repeats * 1e6;
            }

            Console.WriteLine(FormattableString.Invariant(
                $"{pair.Name}: {Medians.Of(ours):F1} µs a circuit, plain {Medians.Of(theirs):F1} µs; {Medians.Of([.. ours.Zip(theirs, (a, b) => a / b)]):F2} times as long"));
        }
    }

    /// <summary>The circuit; where a switched pump may be on or off, both.</summary>
    private static Action Solve(FuelSystem system, bool withInjectors)
    {
        OperatingPoint point = BuiltSystems.Point;
        SystemParts parts = system.Parts;
        if (withInjectors)
        {
            return () =>
            {
                PointDemand demand = parts.DemandAt(point);
                _last = parts.CircuitAt(demand);
                _injected = parts.InjectionAt(demand, _last).Judged;
            };
        }

        PointDemand demand = parts.DemandAt(point);
        if (parts.FallingAt(point.BoostPascals) is not { } falling)
        {
            return () => _last = parts.CircuitAt(demand);
        }

        return () =>
        {
            _last = parts.CircuitAt(demand);
            _last = falling.CircuitAt(demand);
        };
    }

    // Ten milliseconds a turn, after half a second that lets the runtime compile for good.
    private static int RepeatsOf(Action run)
    {
        double spent = 0;
        int count = 0;
        for (; spent < 0.5; count++)
        {
            spent += ThreadClock.Of(run, 1);
        }

        return Math.Max(1, (int)(0.01 * count / spent));
    }
}
