using System.Diagnostics;

namespace FuelSizing.Fuzz;

/// <summary>
/// Ends the process when one input takes too long: time of the processor, so that a busy machine is no hang, or far more
/// time of the clock, so that waiting for nothing is one.
/// </summary>
internal sealed class Watchdog : IDisposable
{
    /// <summary>The most of the processor's time that an input may take.</summary>
    public static readonly TimeSpan MaximumBusy = TimeSpan.FromSeconds(5);

    /// <summary>The most of the clock's time.</summary>
    public static readonly TimeSpan Maximum = TimeSpan.FromSeconds(60);

    private readonly Timer _timer;
    private readonly Stopwatch _clock = new();
    private readonly Action<long> _hangs;
    private long _watched;
    private long _seen = -1;
    private TimeSpan _busyAtSight;

    /// <summary>Begins to watch.</summary>
    /// <param name="hangs">Told the number of the input that hangs; must not return.</param>
    public Watchdog(Action<long> hangs)
    {
        _hangs = hangs;
        _timer = new(_ => Look(), null, TimeSpan.FromMilliseconds(200), TimeSpan.FromMilliseconds(200));
    }

    /// <summary>Says which input is at hand.</summary>
    public void Begin(long number) => Volatile.Write(ref _watched, number);

    public void Dispose() => _timer.Dispose();

    private void Look()
    {
        lock (_clock)
        {
            long watched = Volatile.Read(ref _watched);
            TimeSpan busy = Environment.CpuUsage.TotalTime;
            if (watched != _seen)
            {
                (_seen, _busyAtSight) = (watched, busy);
                _clock.Restart();
            }
            else if (busy - _busyAtSight > MaximumBusy || _clock.Elapsed > Maximum)
            {
                _hangs(watched);
            }
        }
    }
}
