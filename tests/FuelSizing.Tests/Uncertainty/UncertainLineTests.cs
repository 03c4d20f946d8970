using FuelSizing.Checks;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;
using static FuelSizing.Tests.Uncertainty.UncertainWren;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>How sure the mixture is along a boost line, against a count of systems that are built and scanned here one by one.</summary>
public class UncertainLineTests
{
    private static readonly RotationalSpeed Slowest = Wren.Rpm(3000);
    private static readonly RotationalSpeed Fastest = Wren.Rpm(6300);
    private static readonly Conditions Day = Conditions.Of(
        Atmosphere.Of(Wren.Kpa(98.1), Temperature.FromDegreesCelsius(14)), Wren.Volt(13.6), Temperature.FromDegreesCelsius(37));

    private static readonly double[] Scanned = [.. Enumerable.Range(0, 201).Select(step => 3000 + (3300.0 * step / 200))];
    private static readonly FuelSystem Car = Built(6, 0);

    [Fact]
    public void ChanceOfALeanPlace_ByInjectorFlowAlone_IsThatOfTheDistribution()
    {
        // Delivered fuel goes with the flow while the rail holds, so the leanest place decides: flow under λ/λ_allowed is too little.
        double needed = Scanned.Select(rpm => Solve(Car, rpm)).Where(result => result.Point.Boost.Bars >= 0.05).Max(result => result.Mixture.Lambda!.Value) / 0.88;
        double expected = (1.12 - needed) / 0.24;
        Assert.InRange(expected, 0.2, 0.8);
        Chance chance = Chances(UncertainInput.InjectorFlowFactor(Uniform(0.88, 1.12))).Single(part => part.Part == Part.Mixture).Chance;
        Assert.InRange(chance.Holds.DecimalFractions, expected - (4 * Error(expected, 1500)), expected + (4 * Error(expected, 1500)));
    }

    [Fact]
    public void ChanceOfEveryCheck_AlongTheLine_IsThatOfSystemsBuiltOneByOne()
    {
        IReadOnlyList<PartChance> chances = Chances(
            UncertainInput.RegulatorGainFactor(Uniform(0.85, 1.15)),
            UncertainInput.RegulatorOnsetOffset(Distribution.Uniform(Pressure.Zero, Wren.Kpa(6))),
            UncertainInput.BoostFactor(Uniform(0.9, 1.1)),
            UncertainInput.AmbientTemperature(Distribution.Uniform(Temperature.FromDegreesCelsius(-5), Temperature.FromDegreesCelsius(30))),
            UncertainInput.AmbientPressure(Distribution.Uniform(Wren.Kpa(94), Wren.Kpa(102))),
            UncertainInput.SupplyVoltage(Distribution.Uniform(Wren.Volt(12.8), Wren.Volt(14.2))));
        Random random = new(20261129);
        double Between(double from, double to) => from + ((to - from) * random.NextDouble());
        const int Systems = 250;
        Dictionary<Part, int> holding = [];
        for (int system = 0; system < Systems; system++)
        {
            FuelSystem built = Built(6 * Between(0.85, 1.15), Between(0, 6));
            double boosted = Between(0.9, 1.1);
            Conditions day = Conditions.Of(
                Atmosphere.Of(Wren.Kpa(Between(94, 102)), Temperature.FromDegreesCelsius(Between(-5, 30))), Wren.Volt(Between(12.8, 14.2)), Day.FuelTemperature);
            HashSet<Part> failing = [.. Scanned.Where((_, place) => place % 4 == 0)
                .SelectMany(rpm => built.Solve(OperatingPoint.At(
                    Wren.Rpm(rpm), Dunnock.Centrifugal.At(Wren.Rpm(rpm), built.Demand, day.Atmosphere) * boosted, day)).Margins)
                .Where(margin => margin.Outcome != Outcome.Holds)
                .Select(margin => margin.Part)];
            foreach (Part part in Car.Solve(OperatingPoint.At(Slowest, Pressure.Zero, Day)).Margins.Select(margin => margin.Part).Where(part => !failing.Contains(part)))
            {
                holding[part] = holding.GetValueOrDefault(part) + 1;
            }
        }

        int open = 0;
        foreach (PartChance part in chances.Where(part => part.Part != Part.CompressorSpeed))
        {
            double counted = (double)holding.GetValueOrDefault(part.Part) / Systems;
            double error = Math.Sqrt(Math.Pow(Error(counted, Systems), 2) + Math.Pow(Error(counted, 1500), 2));
            Assert.InRange(part.Chance.Holds.DecimalFractions, counted - (4 * error), counted + (4 * error));
            open += counted is > 0.05 and < 0.95 ? 1 : 0;
        }

        Assert.True(open > 0, "every check holds always or never, which proves little");
    }

    [Fact]
    public void EachPlaceOfALine_ScattersAsAPointThereDoes()
    {
        UncertainInput[] inputs = [Flow, Matching, Volts, UncertainInput.RegulatorGainFactor(Uniform(0.9, 1.1))];
        MonteCarloResult along = UncertainSystem.Along(Car, Dunnock.Centrifugal, Slowest, Fastest, Day, inputs).MonteCarlo(Sampling.Of(200, 5));
        Assert.True(along.Mixture.Count >= 25);
        foreach (MixtureSpread place in along.Mixture)
        {
            MonteCarloResult there = UncertainSystem.Of(Car, place.Point, inputs).MonteCarlo(Sampling.Of(200, 5));
            Assert.Equal(there.Injectors.LeanestLambda.Sorted, place.Lambda.Sorted);
            Assert.True(along.All.Holding <= there.All.Holding);
            Assert.True(along.Injectors.LeanestLambda.Sorted[^1] >= there.Injectors.LeanestLambda.Sorted[^1]);
            Assert.True(along.MinimumReserve.Sorted[0].DecimalFractions <= there.MinimumReserve.Sorted[0].DecimalFractions);
        }
    }

    [Fact]
    public void LeanestLambda_IsWhatTheControllerGives_NotItsTarget()
    {
        OperatingResult starved = Solve(Built(2, 0), 6000);
        MonteCarloResult result = UncertainSystem.Of(starved.System, starved.Point, UncertainInput.InjectorFlowFactor(Distribution.Fixed(Fraction(1))))
            .MonteCarlo(Sampling.Of(20));
        Assert.True(starved.Mixture.Lambda > 1.05);
        Assert.Equal(starved.Mixture.Lambda!.Value, result.Injectors.LeanestLambda.Mean!.Value, 12);
        Assert.Equal(starved.Mixture.Lambda!.Value, result.Injectors.RichestLambda.Mean!.Value, 12);
    }

    [Fact]
    public void Tornado_AlongALine_TakesTheLeanestPlaceOfEachEnd()
    {
        TornadoBar bar = Assert.Single(Along(UncertainInput.RegulatorGainFactor(Uniform(0.8, 1.2))).Tornado(SystemOutput.LeanestLambda, Wren.Percent(10)).Bars);
        double Leanest(double gain) => Scanned.Max(rpm => Solve(Built(gain, 0), rpm).Mixture.Lambda!.Value);
        Assert.Equal(Leanest(6 * 0.84), ((Ratio)bar.AtLow!).DecimalFractions, 3);
        Assert.Equal(Leanest(6 * 1.16), ((Ratio)bar.AtHigh!).DecimalFractions, 3);
    }

    [Fact]
    public void InputsThatLeadNowhere_AreRefused()
    {
        ArgumentException noUnit = Assert.Throws<ArgumentException>(() => UncertainSystem.Along(
            Car.With(ManifoldReferenced.From(Wren.Kpa(300))), Dunnock.Centrifugal, Slowest, Fastest, Day, UncertainInput.RegulatorGainFactor(Uniform(0.9, 1.1))));
        Assert.Contains("regulator gain", noUnit.Message);
        Assert.Contains("rising-rate", noUnit.Message);
        ArgumentException below = Assert.Throws<ArgumentOutOfRangeException>(() => Along(
            UncertainInput.RegulatorOnsetOffset(Distribution.Uniform(Wren.Kpa(-5), Wren.Kpa(5)))));
        Assert.Contains("onset", below.Message);
        ArgumentException order = Assert.Throws<ArgumentOutOfRangeException>(() => UncertainSystem.Along(Car, Dunnock.Centrifugal, Fastest, Slowest, Day, Flow));
        Assert.Contains("rising order", order.Message);
        ArgumentException much = Assert.Throws<ArgumentOutOfRangeException>(() => UncertainSystem.Along(
            Car, HeldBoost.Of(Pressure.FromBars(3), Slowest, Fastest), Slowest, Fastest, Day, UncertainInput.BoostFactor(Uniform(0.9, 1.4))));
        Assert.Contains("boost", much.Message);
    }

    [Fact]
    public void LineThatDoesNotReachASpeed_IsRefusedAsThat_NotAsAnInput()
    {
        HeldBoost line = HeldBoost.Of(Pressure.FromBars(0.4), Wren.Rpm(4000), Wren.Rpm(6000), Wren.Rpm(3500));
        foreach (UncertainInput input in new[] { Flow, UncertainInput.BoostFactor(Uniform(0.9, 1.1)) })
        {
            ArgumentException refused = Assert.Throws<ArgumentOutOfRangeException>(() => UncertainSystem.Along(Car, line, Slowest, Fastest, Day, input));
            Assert.Contains("boost line covers no more", refused.Message, StringComparison.Ordinal);
            Assert.DoesNotContain("inputs has", refused.Message, StringComparison.Ordinal);
        }
    }

    private static UncertainSystem Along(params UncertainInput[] inputs) =>
        UncertainSystem.Along(Car, Dunnock.Centrifugal, Slowest, Fastest, Day, inputs);

    private static IReadOnlyList<PartChance> Chances(params UncertainInput[] inputs) => Along(inputs).MonteCarlo(Sampling.Of(1500, 7, 2)).Parts;

    private static OperatingResult Solve(FuelSystem system, double rpm) => system.Solve(OperatingPoint.At(
        Wren.Rpm(rpm), Dunnock.Centrifugal.At(Wren.Rpm(rpm), system.Demand, Day.Atmosphere), Day));

    private static double Error(double share, int samples) => Math.Sqrt(Math.Max(share * (1 - share), 0.25 / samples) / samples);

    /// <summary>Pulses as recorded without boost, of injectors that then give lambda 0.84, and a unit of a gain and an onset in kPa.</summary>
    private static FuelSystem Built(double gain, double onset)
    {
        FuelSystem unboosted = FuelSystem.Return(
            Dunnock.Demand(),
            InjectorSet.Of(Wren.InjectorOf(280), 6),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(PumpCurve.At(
                "ample", Wren.Volt(13.5), (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(400)), (Wren.Kpa(900), VolumeFlow.FromLitersPerHour(250)))),
            SizingLimits.Default.With(MixtureLimits.Of(0.88, Pressure.FromBars(0.05), 0.6)));
        double[] recorded = [2500, 3500, 4500, 5500, 6600];
        return unboosted
            .With(RecordedPulseController.BySpeed([.. recorded.Select(rpm => (
                Wren.Rpm(rpm), unboosted.Solve(OperatingPoint.At(Wren.Rpm(rpm), Pressure.Zero, Day)).Mixture.CommandedPulse!.Value))]))
            .With(RisingRate.From(Wren.Kpa(300), gain, Wren.Kpa(onset)));
    }
}
