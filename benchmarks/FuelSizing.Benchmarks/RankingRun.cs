using BenchmarkDotNet.Attributes;
using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Selection;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Benchmarks;

/// <summary>
/// Ranks 100,000 combinations of invented parts over two stages of six points each, against solving combinations forward
/// one by one (a thousandth of them, timed per combination).
/// </summary>
[MemoryDiagnoser]
public class RankingRun
{
    private const int Combinations = 100_000;
    private const int OneByOne = 100;

    private Stage[] _plan = [];
    private CandidateParts _parts = null!;
    private Combination[] _few = [];

    [Params(1, 2)]
    public int Threads { get; set; }

    [GlobalSetup]
    public void Prepare()
    {
        FuelDemandModel Burning(FuelConsumption consumption) => FuelDemandModel.Of(
            Engine.Of("2.4 L", Volume.FromLiters(2.4), 4, EngineCycle.FourStroke, Rpm(7200)),
            Induction.Turbocharged(Ratio.FromPercent(72), Ratio.FromPercent(70), Kpa(5)),
            VolumetricEfficiency.Of((Rpm(800), Ratio.FromPercent(72)), (Rpm(5000), Ratio.FromPercent(101)), (Rpm(7200), Ratio.FromPercent(91))),
            PowerCurve.AtWheels(
                Atmosphere.Standard,
                Ratio.FromPercent(15),
                (Rpm(800), Power.FromKilowatts(9)),
                (Rpm(5000), Power.FromKilowatts(105)),
                (Rpm(7200), Power.FromKilowatts(128))),
            Ratio.FromPercent(85),
            consumption);
        FuelSystem System(FuelConsumption consumption) => FuelSystem.Return(
            Burning(consumption),
            InjectorSet.Of(InjectorOf(360), 4),
            ManifoldReferenced.From(Kpa(300)),
            Pump.From(PumpOf(1)));
        OperatingPoint[] Points(double boost) =>
        [
            OperatingPoint.At(Rpm(900), Pressure.FromBars(-0.6)),
            .. new[] { 3000, 4500, 5500, 6500, 7200 }.Select(speed => OperatingPoint.At(Rpm(speed), Pressure.FromBars(boost))),
        ];

        _plan =
        [
            Stage.Of("0.6 bar on petrol", System(FuelConsumption.Of(Fuel.Petrol, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315))), Points(0.6)),
            Stage.Of("0.9 bar on E85", System(FuelConsumption.Of(Fuel.E85, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(440))), Points(0.9)),
        ];
        _parts = CandidateParts.Of(
            [.. Enumerable.Range(0, 50).Select(step => Candidate.Of($"injector {step}", InjectorOf(250 + (30 * step)), 100 + step))],
            [.. Enumerable.Range(0, 50).Select(step => Candidate.Of<PumpAssembly>($"pump {step}", Pump.From(PumpOf(0.8 + (0.05 * step))), 100 + (3 * step)))],
            [
                .. Enumerable.Range(0, 20).Select(step => Candidate.Of<PressureRegulator>($"regulator {step}", ManifoldReferenced.From(Kpa(250 + (10 * step))), 60)),
                .. Enumerable.Range(0, 20).Select(step => Candidate.Of<PressureRegulator>($"unit {step}", RisingRate.From(Kpa(300), 1.5 + (0.25 * step), Kpa(5), Kpa(600)), 120)),
            ]);
        Ranking ranking = Ranking.Of(_plan, _parts, Threads);
        if (ranking.Combinations.Count != Combinations || ranking.Serving.Count == 0)
        {
            throw new InvalidOperationException(ranking.Headline.ToString());
        }

        _few = [.. ranking.Combinations.Where((_, place) => place % (Combinations / OneByOne) == 0)];
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = OneByOne)]
    public int SolvedOneByOne() =>
        _few.Sum(combination => _plan.Sum(stage => combination.Solve(stage).Count(result => result.Outcome == Outcome.Holds)));

    [Benchmark(OperationsPerInvoke = Combinations)]
    public int Ranked() => Ranking.Of(_plan, _parts, Threads).Serving.Count;

    [Benchmark(OperationsPerInvoke = Combinations)]
    public int RankedWithParetoSet() => Ranking.Of(_plan, _parts, Threads).Pareto.Count;

    private static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);

    private static Pressure Kpa(double pressure) => Pressure.FromKilopascals(pressure);

    private static Injector InjectorOf(double millilitresPerMinute) => Injector.Of(
        "injector",
        VolumeFlow.FromMillilitersPerMinute(millilitresPerMinute),
        Kpa(300),
        TestFluid.Heptane,
        DeadTimeTable.ByVoltage(
            (ElectricPotential.FromVolts(8), Duration.FromMilliseconds(2.4)),
            (ElectricPotential.FromVolts(12), Duration.FromMilliseconds(1.1)),
            (ElectricPotential.FromVolts(16), Duration.FromMilliseconds(0.7))),
        Duration.FromMilliseconds(1.4),
        Kpa(700));

    private static PumpCurve PumpOf(double scale) => PumpCurve.At(
        "pump",
        ElectricPotential.FromVolts(13.5),
        (Kpa(0), VolumeFlow.FromLitersPerHour(215 * scale)),
        (Kpa(200), VolumeFlow.FromLitersPerHour(185 * scale)),
        (Kpa(400), VolumeFlow.FromLitersPerHour(140 * scale)),
        (Kpa(650), VolumeFlow.FromLitersPerHour(50 * scale)),
        (Kpa(750), VolumeFlow.Zero));
}
