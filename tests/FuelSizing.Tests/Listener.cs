using UnitsNet;

namespace FuelSizing.Tests;

/// <summary>Hears the share that is done at once, on the thread that does the work.</summary>
internal sealed class Listener(Action<Ratio> heard) : IProgress<Ratio>
{
    public void Report(Ratio value) => heard(value);
}
