using System.Diagnostics;
using FuelSizing.Engines;
using FuelSizing.Logs;

namespace FuelSizing.Benchmarks;

/// <summary>Writes a long log, and reads it once from start to end: rows a second, and the most memory that it took.</summary>
internal static class LongRun
{
    public static void Write(string path, int rows)
    {
        using StreamWriter file = new(path);
        InventedLog.Write(file, rows);
    }

    public static void Read(string path)
    {
        var clock = Stopwatch.StartNew();
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        using RunReader reader = RunReader.Open(path, InventedLog.Mapping, Atmosphere.Standard);
        double maximum = 0;
        while (reader.TryRead(out RunRow row))
        {
            maximum = Math.Max(maximum, row[Channel.Speed]);
        }

        using var process = Process.GetCurrentProcess();
        double seconds = clock.Elapsed.TotalSeconds;
        Console.WriteLine(FormattableString.Invariant(
            $"{reader.Account}; {seconds:F2} s, {reader.Account.Rows / seconds / 1e6:F2} million rows/s, processor {(process.TotalProcessorTime - before).TotalSeconds:F2} s, peak memory {process.PeakWorkingSet64 / 1048576.0:F0} MB, highest speed {maximum * 60:F0} rev/min"));
    }
}
