using System.Runtime.InteropServices;

namespace FuelSizing.Benchmarks;

/// <summary>
/// Processor time of the calling thread (Linux): on a machine that others use too, the clock on the wall counts their work.
/// </summary>
internal static unsafe class ThreadClock
{
    private const int ProcessCpuTime = 2;
    private const int ThreadCpuTime = 3;

    /// <summary>Seconds of processor time of this thread so far.</summary>
    public static double Seconds => Read(ThreadCpuTime);

    /// <summary>Seconds of processor time of all threads so far.</summary>
    public static double AllThreads => Read(ProcessCpuTime);

    /// <summary>Seconds that so many runs take.</summary>
    public static double Of(Action run, int repeats)
    {
        double start = Seconds;
        for (int i = 0; i < repeats; i++)
        {
            run();
        }

        return Seconds - start;
    }

    private static double Read(int clock)
    {
        long* time = stackalloc long[2];
        return ClockGetTime(clock, time) == 0
            ? time[0] + (time[1] * 1e-9)
            : throw new PlatformNotSupportedException("clock_gettime gives no processor time.");
    }

    [DllImport("libc", EntryPoint = "clock_gettime")]
    private static extern int ClockGetTime(int clock, long* time);
}
