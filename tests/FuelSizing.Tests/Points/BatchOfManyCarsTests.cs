using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>Each kind of car by the column against the same points solved one by one, 19 of them: whole vectors and a rest.</summary>
public class BatchOfManyCarsTests
{
    private static readonly (double Rpm, double Boost)[] Places =
    [
        .. Enumerable.Range(0, 18).Select(at => (1000.0 + (340 * at), -40.0 + (9.3 * (at * 5 % 18)))), (7200, 0),
    ];

    public static TheoryData<int> Cars => [.. Enumerable.Range(0, All.Length)];

    private static FuelSystem[] All { get; } =
    [
        Wren.System(ManifoldReferenced.From(Wren.Kpa(300))),
        Wren.System(Fixed.At(Wren.Kpa(400)), injector: 550),
        Wren.System(RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(10), Wren.Kpa(480))),

        // Found off what they are described as.
        Wren.System(ManifoldReferenced.From(Wren.Kpa(300))).With(ManifoldReferenced.From(Wren.Kpa(300)).Off(7e3)),
        Series(0, 0, 0),
        Series(4e3, 0, 0),
        Series(0, 9e3, 0),
        Series(4e3, 9e3, -2e3),
        FuelSystem.Returnless(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(440), 4),
            Fixed.At(Wren.Kpa(420)),
            Pump.From(Wren.PumpOf(3)),
            plumbing: Plumbing.Of(supply:
            [
                Line.Of("supply", Length.FromMillimeters(7), Length.FromMeters(4), Roughness.DrawnTube),
                Filter.Of("filter", VolumeFlow.FromLitersPerHour(120), Wren.Kpa(12)),
            ])),
        FuelSystem.Return(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(240), 8, injectionsPerCycle: 2),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(Wren.PumpOf(3)),
            SizingLimits.Of(Wren.Percent(70), Wren.Percent(25)),
            Plumbing.Of(supply: [Line.Of("supply", Length.FromMillimeters(8), Length.FromMeters(3), Roughness.DrawnTube)])),
    ];

    [Theory]
    [MemberData(nameof(Cars))]
    public void Points_ByTheColumn_AreThoseSolvedOneByOne(int car)
    {
        FuelSystem system = All[car];
        double[] rail = new double[Places.Length];
        double[] differential = new double[Places.Length];
        double[] fuel = new double[Places.Length];
        double[] flow = new double[Places.Length];
        double[] pulse = new double[Places.Length];
        double[] duty = new double[Places.Length];
        double[] injectors = new double[Places.Length];
        double[] pumps = new double[Places.Length];
        PointBatch.Of(system.Parts, Wren.Hill).Evaluate(
            new() { Speed = [.. Places.Select(place => place.Rpm / 60)], Boost = [.. Places.Select(place => place.Boost * 1e3)] },
            new()
            {
                RailGauge = rail,
                Differential = differential,
                FuelFlow = fuel,
                StaticFlow = flow,
                Pulse = pulse,
                DutyCycle = duty,
                InjectorReserve = injectors,
                PumpReserve = pumps,
            });
        int compared = 0;
        for (int at = 0; at < Places.Length; at++)
        {
            OperatingResult alone = system.Solve(OperatingPoint.At(Wren.Rpm(Places[at].Rpm), Wren.Kpa(Places[at].Boost), Wren.Hill));
            Near(alone.InjectedFlow.CubicMetersPerSecond, fuel[at]);
            Margin pump = alone.Margins.First(margin => margin.Part == Part.Pump);
            Near(1 + (pump.Share ?? double.NaN), 1 + pumps[at]);
            if (alone.RailState != RailState.Regulated)
            {
                continue;
            }

            compared++;
            Near(alone.RailGauge.Pascals, rail[at]);
            Near(alone.InjectorDifferential.Pascals, differential[at]);
            Near(alone.StaticFlow?.CubicMetersPerSecond ?? double.NaN, flow[at]);
            Near(alone.Pulse?.Seconds ?? double.NaN, pulse[at]);
            Near(alone.DutyCycle?.DecimalFractions ?? double.NaN, duty[at]);
            Near(1 + (alone.Margins.First(margin => margin.Part == Part.Injectors).Share ?? double.NaN), 1 + injectors[at]);
        }

        Assert.InRange(compared, 10, Places.Length);
    }

    /// <summary>An engine without a compressor has no boost; one with it up to 400 kPa, and no batch does what a table along speed asks for.</summary>
    [Fact]
    public void Batch_OfAnEngine_TakesTheBoostThatItCanHave()
    {
        double[] rail = new double[1];
        double Rail(FuelSystem system, double pascals)
        {
            PointBatch.Of(system.Parts, Wren.Hill).Evaluate(new() { Speed = [50.0], Boost = [pascals] }, new() { RailGauge = rail });
            return rail[0];
        }

        FuelSystem plain = Wren.System().With(Wren.Demand(induction: Induction.NaturallyAspirated));
        Assert.Equal(300e3, Rail(plain, 0), 1e-6);
        Assert.Throws<ArgumentOutOfRangeException>(() => Rail(plain, 2e3));
        Assert.Equal(700e3, Rail(Wren.System(pump: 3), 400e3), 1e-6);
        FuelSystem along = Wren.System().With(Wren.Demand().With(AlongSpeed.Of(SpeedRow.Of(Wren.Rpm(1000), 0.9), SpeedRow.Of(Wren.Rpm(7000), 0.8))));
        Assert.Contains("which a batch does not carry", Assert.Throws<ArgumentException>(() => PointBatch.Of(along.Parts)).Message, StringComparison.Ordinal);
        VolumetricEfficiency early = VolumetricEfficiency.Of((Wren.Rpm(400), Wren.Percent(80)), (Wren.Rpm(700), Wren.Percent(85)));
        FuelDemandModel apart = FuelDemandModel.Of(Wren.Engine, Wren.Turbocharger, early, Wren.Power, Wren.Percent(85), Wren.Petrol);
        Assert.Contains("without a speed in common", Assert.Throws<ArgumentException>(() => PointBatch.Of(Wren.System().With(apart).Parts)).Message, StringComparison.Ordinal);
    }

    private static FuelSystem Series(double first, double unit, double both) => Wren.System(pump: 2).With(RegulatorSeries.Of(
        Fixed.At(Wren.Kpa(250)).Off(first),
        (RisingRate)RisingRate.From(Wren.Kpa(0), 6, Wren.Kpa(20), Wren.Kpa(450)).Off(unit)).Off(both));

    private static void Near(double expected, double actual) => Assert.True(
        expected.Equals(actual) || Math.Abs(expected - actual) <= 1e-9 * Math.Abs(expected), $"{actual:R} for {expected:R}");
}
