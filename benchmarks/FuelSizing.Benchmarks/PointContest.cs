using System.Diagnostics;
using System.Runtime.InteropServices;

namespace FuelSizing.Benchmarks;

/// <summary>
/// Times the batch and its peers in turns of processor time, so that whatever else the machine does falls on all alike, and
/// gives medians and the median of the ratios within a turn.
/// </summary>
internal static class PointContest
{
    private const int Turns = 201;
    private const double TurnSeconds = 0.002;
    private const double WarmSeconds = 0.5;

    public static void Run(int points)
    {
        PointPeers peers = new(points);
        string folder = Directory.CreateTempSubdirectory().FullName;
        string answers = Path.Combine(folder, "answers.bin");
        using NumPyPeer python = new(peers.Written(folder), answers);
        (string Name, Func<int, double> Seconds)[] contestants =
        [
            ("batch", repeats => ThreadClock.Of(() => peers.Batch(), repeats)),
            ("C, g++ -O3 -march=native", repeats => ThreadClock.Of(peers.Strict, repeats)),
            ("C, the same with -ffast-math", repeats => ThreadClock.Of(peers.Fast, repeats)),
            ("C#, plain doubles", repeats => ThreadClock.Of(peers.Plain, repeats)),
            ("C#, UnitsNet everywhere", repeats => ThreadClock.Of(peers.Units, repeats)),
            ($"NumPy ({python.Version})", python.Run),
        ];
        Agree(peers, answers);
        int[] repeats = Array.ConvertAll(contestants, contestant =>
        {
            int runs = 0;
            double spent = 0;
            while (spent < WarmSeconds)
            {
                spent += contestant.Seconds(4);
                runs += 4;
            }

            return Math.Max(1, (int)(runs * TurnSeconds / spent));
        });
        double[][] times = [.. contestants.Select(_ => new double[Turns])];
        for (int turn = 0; turn < Turns; turn++)
        {
            for (int i = 0; i < contestants.Length; i++)
            {
                times[i][turn] = contestants[i].Seconds(repeats[i]) / repeats[i] / points * 1e9;
            }
        }

        Console.WriteLine($"{points:N0} points, {Turns} turns, medians");
        for (int i = 0; i < contestants.Length; i++)
        {
            double ratio = Medians.Of([.. times[i].Zip(times[0], (its, batch) => its / batch)]);
            double low = times[i].Min();
            Console.WriteLine(FormattableString.Invariant(
                $"{contestants[i].Name,-32} {Medians.Of(times[i]),9:F2} ns a point (least {low:F2}), {ratio,7:F2} times the batch"));
        }

        Directory.Delete(folder, recursive: true);
    }

    /// <summary>
    /// How the batch's cost grows with the points; and what two threads take together, from which follows how much faster they
    /// are where both have a core of their own; and how much faster they were by the clock on the wall.
    /// </summary>
    public static void Grow(int maximum)
    {
        for (long points = 1_000; points <= maximum; points *= 10)
        {
            PointPeers peers = new((int)points);
            int repeats = (int)Math.Max(1, 1_000_000 / points);
            int turns = points > 10_000_000 ? 5 : 41;
            double[] one = new double[turns];
            double[] two = new double[turns];
            double[] gain = new double[turns];
            for (double spent = 0; spent < WarmSeconds;)
            {
                spent += ThreadClock.Of(() => peers.Batch(), repeats) + ThreadClock.Of(() => peers.Batch(2), repeats);
            }

            for (int turn = 0; turn < turns; turn++)
            {
                long begin = Stopwatch.GetTimestamp();
                one[turn] = ThreadClock.Of(() => peers.Batch(), repeats) / repeats / points * 1e9;
                TimeSpan alone = Stopwatch.GetElapsedTime(begin);
                double start = ThreadClock.AllThreads;
                begin = Stopwatch.GetTimestamp();
                for (int i = 0; i < repeats; i++)
                {
                    peers.Batch(2);
                }

                gain[turn] = alone / Stopwatch.GetElapsedTime(begin);
                two[turn] = (ThreadClock.AllThreads - start) / repeats / points * 1e9;
            }

            Console.WriteLine(FormattableString.Invariant(
                $"{points,11:N0} points: {Medians.Of(one):F1} ns a point (least {one.Min():F1}); two threads together {Medians.Of(two):F1} (least {two.Min():F1}): at best {2 * Medians.Of([.. one.Zip(two, (a, b) => a / b)]):F2} times as fast, by the clock on the wall {Medians.Of(gain):F2}"));
        }
    }

    private static void Agree(PointPeers peers, string answers)
    {
        peers.Plain();
        double[] plain = peers.Outputs;
        double Off(double[] other) => plain.Zip(other, (a, b) => Math.Abs(b - a) / Math.Abs(a)).Max();
        foreach (Action run in new Action[] { () => peers.Batch(), peers.Strict, peers.Fast, peers.Units })
        {
            run();
            Console.Write(FormattableString.Invariant($"{Off(peers.Outputs):E1} "));
        }

        Console.WriteLine(FormattableString.Invariant(
            $"{Off(MemoryMarshal.Cast<byte, double>(File.ReadAllBytes(answers)).ToArray()):E1}: largest differences from plain doubles (batch, C, C fast, units, NumPy)"));
    }
}
