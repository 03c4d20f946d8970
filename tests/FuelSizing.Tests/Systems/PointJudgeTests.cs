using FuelSizing.Checks;
using FuelSizing.Files;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using FuelSizing.Tests.Files.Setups;

namespace FuelSizing.Tests.Systems;

/// <summary>Searches judge in numbers, and results show them: both are one judgement, to the last bit.</summary>
public class PointJudgeTests
{
    /// <summary>Random systems of every kind, surge tanks, second streams, two sets of injectors, described controllers and switched pumps among them.</summary>
    [Fact]
    public void Judge_OfAnySystem_ReadsWhatTheResultReads()
    {
        int read = 0;
        FuelSystem plain = Wren.System(pump: 1.3);
        foreach (FuelSystem system in (FuelSystem[])[plain, plain.Aiming(0.85), plain.With(Staged.Of()), plain.With(Staged.Of(Staged.ByDutyCycle)), SurgeTanks.Wren(SurgeTanks.Everything)])
        {
            foreach ((double speed, double boost) in ((double, double)[])[(1200, -0.5), (4000, 0.2), (6500, 0.6), (6500, 2.5)])
            {
                read += Alike(system, Wren.At(speed, boost));
            }
        }

        for (int seed = 0; seed < 12; seed++)
        {
            Setup setup = new SystemBuilder(seed, deepest: 0).Setup();
            foreach (OperatingPoint point in setup.Points.Select(named => named.Point).Where(setup.System.Covers))
            {
                read += Alike(setup.System, point);
            }
        }

        Assert.True(read > 100, $"{read} readings");
    }

    /// <summary>Between its switch-off and switch-on boost a switched pump may run or not: both ways are judged, and each check by its worse.</summary>
    [Fact]
    public void Judge_WhereAPumpIsOnOrOff_TakesTheWorseOfBoth()
    {
        FuelSystem system = Wren.System(injector: 420).With(PumpParallel.Of(
            Pump.From(Wren.PumpOf(0.9)), SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Pump.From(Wren.PumpOf(0.8)))));
        OperatingPoint point = Wren.At(6500, 0.35);
        Assert.NotNull(system.Solve(point).Falling);
        Alike(system, point);
    }

    /// <summary>What is made when it is asked for is made once, by whichever thread asks first.</summary>
    [Fact]
    public void Figures_AskedForOnManyThreads_AreOne()
    {
        OperatingResult result = SurgeTanks.Wren(SurgeTanks.Everything).Solve(Wren.At(5000, 0.4));
        object[][] asked = new object[16][];
        Parallel.For(0, asked.Length, thread => asked[thread] = [result.Mixture, result.Demand, result.Circuit, result.SurgeTank!]);
        Assert.All(asked, figures => Assert.All(figures, (figure, at) => Assert.Same(asked[0][at], figure)));
    }

    /// <summary>A controller that is assumed to command whatever is needed makes no mixture that a check could read, whichever way a point is judged.</summary>
    [Fact]
    public void Mixture_OfAnAssumedController_IsNotForChecksToRead()
    {
        OperatingResult result = Wren.System().Solve(Wren.At(4000, 0.2));
        Assert.NotNull(result.Mixture.Lambda);
        Assert.True(double.IsNaN(PointReading.Of(result).MaximumLambda));
        Assert.True(double.IsNaN(PointReading.Of(result).MinimumLambda));
    }

    private static int Alike(FuelSystem system, OperatingPoint point)
    {
        CheckReading<Real>[] readings = PointJudge.At(system.Applicable, system.Parts, point);
        Assert.Equal(Bits(system.Solve(point).Margins.Select(margin => margin.Reading)), Bits(readings));
        return readings.Length;
    }

    private static long[] Bits(IEnumerable<CheckReading<Real>> readings) =>
    [
        .. readings.SelectMany(reading => (double[])[reading.Used, reading.Allowed, reading.Margin, reading.BestMargin])
            .Select(BitConverter.DoubleToInt64Bits),
    ];
}
