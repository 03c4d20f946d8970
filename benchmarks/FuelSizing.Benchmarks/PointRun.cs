using BenchmarkDotNet.Attributes;

namespace FuelSizing.Benchmarks;

/// <summary>
/// Fuel, rail pressure, static flow and duty cycle of many points: the batch against the same maths by hand in plain doubles,
/// in C, and with units on everything. <see cref="PointContest"/> times them in turns, and NumPy too.
/// </summary>
[MemoryDiagnoser]
public class PointRun
{
    private PointPeers _peers = null!;

    [Params(8_192, 1_000_000)]
    public int Points { get; set; }

    [GlobalSetup]
    public void Prepare()
    {
        PointPeers.FindLibraries();
        _peers = new(Points);
    }

    [Benchmark(Baseline = true, Description = "plain doubles")]
    public void Plain() => _peers.Plain();

    [Benchmark(Description = "batch")]
    public void Batch() => _peers.Batch();

    [Benchmark(Description = "batch, two threads")]
    public void BatchOnTwoThreads() => _peers.Batch(2);

    [Benchmark(Description = "C, -O3 -march=native")]
    public void Strict() => _peers.Strict();

    [Benchmark(Description = "C, -ffast-math too")]
    public void Fast() => _peers.Fast();

    [Benchmark(Description = "units on everything")]
    public void Units() => _peers.Units();
}
