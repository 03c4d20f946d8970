using BenchmarkDotNet.Attributes;
using FuelSizing.Equations;
using UnitsNet;

namespace FuelSizing.Benchmarks;

using Pressure = UnitsNet.Pressure;

/// <summary>Fuel demand over many points: the same equations one number at a time, eight at a time, and with units on everything.</summary>
[MemoryDiagnoser]
public class DemandBatch
{
    private static readonly DemandConstants<Real> EngineAlone = Engine<Real>();
    private static readonly DemandConstants<Lanes> EngineBatch = Engine<Lanes>();

    private double[] _boosts = [];
    private double[] _fuel = [];

    [Params(4096)]
    public int Points { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        _boosts = [.. Enumerable.Range(0, Points).Select(i => 1e5 * i / Points)];
        _fuel = new double[Points];
    }

    [Benchmark(Baseline = true, Description = "one at a time")]
    public void OneAtATime()
    {
        for (int i = 0; i < _boosts.Length; i++)
        {
            DemandState<Real> state = DemandChain.Evaluate(
                EngineAlone, new DemandInput<Real>(100, _boosts[i], 94_322, 284.25, 1.0, 150e3));
            _fuel[i] = Real.Max(state.FromAir, state.FromPower);
        }
    }

    [Benchmark(Description = "eight at a time")]
    public void EightAtATime()
    {
        for (int i = 0; i + Lanes.Count <= _boosts.Length; i += Lanes.Count)
        {
            DemandState<Lanes> state = DemandChain.Evaluate(
                EngineBatch, new DemandInput<Lanes>(100, Lanes.From(_boosts.AsSpan(i)), 94_322, 284.25, 1.0, 150e3));
            Lanes.Max(state.FromAir, state.FromPower).CopyTo(_fuel.AsSpan(i));
        }
    }

    [Benchmark(Description = "units on everything (speed-density only)")]
    public void UnitsOnEverything()
    {
        Pressure ambient = Pressure.FromPascals(94_322);
        for (int i = 0; i < _boosts.Length; i++)
        {
            Pressure manifold = ambient + Pressure.FromPascals(_boosts[i]);
            Ratio ratio = Ratio.FromDecimalFractions(manifold / ambient);
            Temperature charge = Temperature.FromKelvins(
                284.25 * (1 + ((Math.Pow(ratio.DecimalFractions, 2.0 / 7) - 1) / 0.72 * 0.3)));
            Density density = Density.FromKilogramsPerCubicMeter(manifold.Pascals / (287.05287 * charge.Kelvins));
            MassFlow air = density * VolumeFlow.FromCubicMetersPerSecond(2.4e-3 * 50);
            _fuel[i] = (air / (0.82 * 14.6)).KilogramsPerSecond;
        }
    }

    private static DemandConstants<T> Engine<T>()
        where T : struct, IReal<T> =>
        new(2.4e-3, 2, 0.72, 0.7, 5e3, 0, 1, 101_325, 288.15, 0.85, 8.75e-8, 0.82, 14.6);
}
