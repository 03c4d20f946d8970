using FuelSizing.Circuits;
using FuelSizing.Files;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using FuelSizing.Tests.Files.Setups;
using FuelSizing.Tests.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>Runs keep numbers of their samples, and results show them: both are one, to the last bit.</summary>
public class SampledPointTests
{
    /// <summary>Systems of every kind, switched pumps between their boosts among them, where each figure that counts is the worse of both states.</summary>
    [Fact]
    public void Sample_OfAnySystem_KeepsWhatTheResultSays()
    {
        int kept = 0;
        FuelSystem plain = Wren.System(pump: 1.3);
        FuelSystem switched = Wren.System(injector: 420).Aiming(0.85).With(PumpParallel.Of(
            Pump.From(Wren.PumpOf(0.9)), SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Pump.From(Wren.PumpOf(0.8)))));
        Assert.NotNull(switched.Solve(Wren.At(6500, 0.35)).Falling);
        foreach (FuelSystem system in (FuelSystem[])[plain, plain.Aiming(0.85), switched, SurgeTanks.Wren(SurgeTanks.Everything)])
        {
            foreach ((double speed, double boost) in ((double, double)[])[(1200, -0.5), (4000, 0.2), (6500, 0.35), (6500, 2.5)])
            {
                kept += Alike(system.Solve(Wren.At(speed, boost)));
            }
        }

        for (int seed = 0; seed < 12; seed++)
        {
            Setup setup = new SystemBuilder(seed, deepest: 0).Setup();
            kept += setup.Points.Select(named => named.Point).Where(setup.System.Covers).Sum(point => Alike(setup.System.Solve(point)));
        }

        Assert.True(kept > 100, $"{kept} margins");
    }

    private static int Alike(OperatingResult result)
    {
        SampledPoint sample = UncertainWren.Sampled(result);
        OperatingResult[] states = [.. result.States];
        Assert.Equal(result.Margins.Select(margin => margin.Reading), sample.Readings);
        Assert.Equal(result.Margins.Select(margin => margin.Check), sample.Checks);
        Assert.Equal(result.DutyCycle?.DecimalFractions ?? double.NaN, sample.DutyCycle);
        Assert.Equal(Worst(states.Select(state => state.DutyCycle?.DecimalFractions ?? double.NaN), Math.Max), sample.MaximumDutyCycle);
        Assert.Equal(result.Demand.KilogramsPerSecond, sample.FuelFlow);
        Assert.Equal(result.RailState == RailState.NotCovered ? double.NaN : result.RailGauge.Pascals, sample.RailGauge);
        if (result.System.Injectors.Count % result.System.Demand.Engine.Cylinders == 0)
        {
            Assert.Equal(Worst(states.Select(state => state.SolvedMixture.MaximumLambda), Math.Max), sample.LeanestLambda);
            double richest = Worst(states.Select(state => state.SolvedMixture.MinimumLambda), Math.Min);
            Assert.Equal(result.SecondStream is { Acts: true } stream ? Math.Min(richest, stream.MinimumLambda ?? double.NaN) : richest, sample.RichestLambda);
        }

        return sample.Readings.Length;
    }

    // What is not a number in one state is none of both.
    private static double Worst(IEnumerable<double> figures, Func<double, double, double> worse) => figures.Aggregate(worse);
}
