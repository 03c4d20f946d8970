using UnitsNet;

namespace FuelSizing.Tests;

/// <summary>Hears at once, on the thread that works, how much is done.</summary>
internal sealed class Listener(Action<Ratio> heard) : IProgress<Ratio>
{
    /// <summary>Cancels once so much is done.</summary>
    public static Listener StoppingFrom(double percent, CancellationTokenSource stop) => new(share =>
    {
        if (share.Percent >= percent)
        {
            stop.Cancel();
        }
    });

    public void Report(Ratio value) => heard(value);
}
