using FuelSizing.Circuits;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Pumps;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Tests;

/// <summary>What is built may be used from many threads at once, without a lock, and every thread gets what one alone would.</summary>
public class ThreadTests
{
    private const int Threads = 8;

    /// <summary>Voltages differ from point to point, so that the threads contend for whatever a part keeps of its last use.</summary>
    private static readonly OperatingPoint[] Points =
    [
        .. from rpm in new[] { 1500.0, 3000, 4500, 6000, 7000 }
           from boost in new[] { -0.4, 0.0, 0.3, 0.6 }
           from volts in new[] { 12.0, 13.2, 14.0 }
           select OperatingPoint.At(
               Wren.Rpm(rpm),
               Pressure.FromBars(boost),
               Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(volts), Temperature.FromDegreesCelsius(35))),
    ];

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void OneSystem_SolvedFromManyThreadsAtOnce_GivesToTheLastBitWhatOneThreadGives(bool whole)
    {
        IReadOnlyList<long>[] alone = Array.ConvertAll(Points, point => ObjectGraph.Bits(Build(whole).Solve(point)));
        Assert.Equal(Points.Length, alone.Select(bits => string.Join(' ', bits)).Distinct().Count());

        FuelSystem shared = Build(whole);
        IReadOnlyList<long>[][] together = AtOnce(thread =>
        {
            var results = new IReadOnlyList<long>[Points.Length];
            for (int step = 0; step < Points.Length; step++)
            {
                // Each begins elsewhere, so that no two ask for the same at the same time.
                int point = (step + (thread * 7)) % Points.Length;
                results[point] = ObjectGraph.Bits(shared.Solve(Points[point]));
            }

            return results;
        });

        Assert.All(together, results => Assert.All(results.Zip(alone), pair => Assert.Equal(pair.Second, pair.First)));
    }

    [Fact]
    public void OneResult_ReadFromManyThreadsAtOnce_TellsAllTheSame()
    {
        UncertainSystem unsure = UncertainSystem.Of(
            Build(whole: true), Points[^1], UncertainInput.InjectorFlowFactor(Distribution.Uniform(Wren.Percent(96), Wren.Percent(104))));
        Sampling sampling = Sampling.Of(200, seed: 5);
        IReadOnlyList<long> alone = ObjectGraph.Bits(unsure.MonteCarlo(sampling));

        MonteCarloResult shared = unsure.MonteCarlo(sampling);
        Assert.All(AtOnce(_ => ObjectGraph.Bits(shared)), bits => Assert.Equal(alone, bits));
        Assert.All(AtOnce(_ => ObjectGraph.Bits(unsure.MonteCarlo(sampling))), bits => Assert.Equal(alone, bits));
    }

    /// <summary>The same work on every thread, all begun at one moment.</summary>
    private static T[] AtOnce<T>(Func<int, T> work)
    {
        T[] done = new T[Threads];
        using Barrier start = new(Threads);
        Thread[] threads =
        [
            .. Enumerable.Range(0, Threads).Select(thread => new Thread(() =>
            {
                start.SignalAndWait();
                done[thread] = work(thread);
            })),
        ];
        Array.ForEach(threads, thread => thread.Start());
        Array.ForEach(threads, thread => thread.Join());
        return done;
    }

    /// <summary>A system of one pump and a regulator; or one with wiring, two voltages' curves, lines and a filter.</summary>
    internal static FuelSystem Build(bool whole) => whole
        ? FuelSystem.Return(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(600), 4),
            RisingRate.From(Wren.Kpa(300), 2, Wren.Kpa(20), Wren.Kpa(500)),
            Wren.WiredPump.WithFeed(PumpAssemblyTests.FeedOf(4)),
            plumbing: Plumbing.Of(
                suction: [LineOf(8, 0.5)],
                supply: [Filter.Of("filter", VolumeFlow.FromLitersPerHour(200), Wren.Kpa(15)), LineOf(6, 4)],
                returnLine: [LineOf(7, 3)]))
        : Wren.System();

    private static Line LineOf(double millimetres, double metres) =>
        Line.Of("line", Length.FromMillimeters(millimetres), Length.FromMeters(metres), Roughness.RubberHose);
}
