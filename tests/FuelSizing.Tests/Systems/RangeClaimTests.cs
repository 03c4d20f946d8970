using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Systems;

/// <summary>
/// A verdict over a range is true over the range: sweeps of few speeds and boosts against a dense scan of the same range, which the sweep knows
/// nothing of.
/// </summary>
public class RangeClaimTests(ITestOutputHelper output)
{
    // More by FUELSIZING_SWEEPS, for the count that docs/full.md states; then the scan is 400 × 100 points, otherwise 80 × 30.
    private static readonly string? More = Environment.GetEnvironmentVariable("FUELSIZING_SWEEPS");
    private static readonly int Sweeps = More is { Length: > 0 } ? int.Parse(More, System.Globalization.CultureInfo.InvariantCulture) : 120;
    private static readonly (int Speeds, int Boosts) Scan = More is { Length: > 0 } ? (400, 100) : (80, 30);

    private static readonly Gen<PressureRegulator> Regulators = Gen.Select(
        Gen.Int[0, 3], Gen.Double[250, 420], Gen.Double[1.2, 9], Gen.Double[0, 0.6], Gen.Double[450, 900]).Select(
            (kind, pressure, gain, onset, ceiling) => kind switch
            {
                0 => Fixed.At(Wren.Kpa(pressure)),
                1 => ManifoldReferenced.From(Wren.Kpa(pressure)),
                2 => (PressureRegulator)RisingRate.From(Wren.Kpa(pressure), gain, Pressure.FromBars(onset), Wren.Kpa(ceiling)),
                _ => RegulatorSeries.Of(Fixed.At(Wren.Kpa(pressure)), RisingRate.From(Pressure.Zero, gain, Pressure.Zero, Wren.Kpa(ceiling))),
            });

    private static readonly Gen<(VolumetricEfficiency Air, PowerCurve Power)> Engines =
        Gen.Select(Gen.Double[60, 110].Array[7], Gen.Double[0.6, 1.1].Array[7]).Select((air, power) =>
        {
            double[] speeds = [800, 2000, 3500, 5000, 6000, 6800, 7200];
            return (
                VolumetricEfficiency.Of([.. speeds.Zip(air, (speed, share) => (Wren.Rpm(speed), Wren.Percent(share)))]),
                PowerCurve.AtWheels(
                    Atmosphere.Standard,
                    Wren.Percent(15),
                    [.. speeds.Zip(power, (speed, share) => (Wren.Rpm(speed), UnitsNet.Power.FromKilowatts(speed / 50 * share)))]));
        });

    private static readonly Gen<Case> Any = Gen.Select(
        Engines,
        Regulators,
        Gen.Select(Gen.Double[250, 1100], Gen.Double[0.7, 2.6], Gen.Bool),
        Gen.Select(Gen.Double[3, 9], Gen.Double[40, 300], Gen.Double[450, 1000]),
        Gen.Select(Gen.Double[900, 4000], Gen.Double[4200, 7200], Gen.Int[2, 5]),
        Gen.Select(Gen.Double[-0.6, 0.3], Gen.Double[0.35, 1.2], Gen.Int[2, 4])).Select(
            (engine, regulator, parts, lines, speeds, boosts) => new Case(engine, regulator, parts, lines, speeds, boosts));

    [Fact]
    public void Holds_OverARange_IsTrueAtEveryPointOfIt()
    {
        object gate = new();
        Dictionary<Outcome, int> outcomes = [];
        Dictionary<Outcome, long> solved = [];
        long own = 0;
        int tooNear = 0;
        Any.Sample(
            drawn =>
            {
                FuelSystem system = drawn.System;
                SweepResult sweep = system.Sweep(drawn.Speeds, drawn.Boosts, Wren.Hill);
                lock (gate)
                {
                    outcomes[sweep.Verdict.Outcome] = outcomes.GetValueOrDefault(sweep.Verdict.Outcome) + 1;
                    solved[sweep.Verdict.Outcome] = solved.GetValueOrDefault(sweep.Verdict.Outcome) + sweep.PointsSolved;
                    own += sweep.Results.Count;
                    tooNear += sweep.Standings.Any(standing => standing.IsOpen) ? 1 : 0;
                }

                IsTrue(sweep, drawn, Scan);
            },
            iter: Sweeps);
        output.WriteLine(
            $"{Sweeps} sweeps of {(double)own / Sweeps:0} points on average, {(double)solved.Values.Sum() / Sweeps:0} solved; {string.Join(", ", outcomes.Select(pair => $"{pair.Key} {pair.Value}, {solved[pair.Key] / pair.Value} points each"))}; too near to say {tooNear}");
        Assert.True(tooNear <= Sweeps / 100, $"{tooNear} of {Sweeps} are too near to say");
        Assert.True(outcomes.GetValueOrDefault(Outcome.HoldsAsFarAsJudged) > Sweeps / 20, "too few hold");
    }

    /// <summary>The boost at which a check begins to fail may have two valleys over speed: the lower is the first limit.</summary>
    [Fact]
    public void FirstLimit_OverTwoValleys_IsTheLower() =>
        Any.Sample(drawn => IsTrue(drawn.System.Sweep(drawn.Speeds, drawn.Boosts, Wren.Hill), drawn, (400, 100)), seed: "cQPdmK_7jES1");

    private static void IsTrue(SweepResult sweep, Case drawn, (int Speeds, int Boosts) scan)
    {
        FuelSystem system = drawn.System;
        bool[] holds = [.. system.Applicable.Select(check => sweep.Standings.Single(standing => standing.Part == check.Part).Outcome == Outcome.Holds)];
        double[] from = [.. system.Applicable.Select(check =>
            sweep.Standings.Single(standing => standing.Part == check.Part).LimitReachedAt?.Boost.Pascals ?? double.PositiveInfinity)];
        foreach (OperatingPoint point in drawn.Dense(scan.Speeds, scan.Boosts))
        {
            OperatingResult result = system.Solve(point);
            for (int check = 0; check < holds.Length; check++)
            {
                Margin margin = result.Margins[check];
                if (margin.Outcome == Outcome.Fails)
                {
                    Assert.False(holds[check], holds[check] ? $"{margin} at {point}; {sweep.PointsSolved} points: {drawn}" : null);

                    // The first limit reached is the first: to a five-hundredth of a bar.
                    bool isEarlier = point.Boost.Pascals < from[check] - 200;
                    Assert.False(isEarlier, isEarlier ? $"{margin} at {point}, before {from[check]} Pa: {drawn}" : null);
                }
            }
        }
    }

    private sealed record Case(
        (VolumetricEfficiency Air, PowerCurve Power) Engine,
        PressureRegulator Regulator,
        (double Injector, double Pump, bool Lined) Parts,
        (double Bore, double Filter, double Rating) Lines,
        (double From, double To, int Count) Speed,
        (double From, double To, int Count) Boost)
    {
        public FuelSystem System
        {
            get
            {
                FuelSystem system = FuelSystem.Return(
                    FuelDemandModel.Of(Wren.Engine, Wren.Turbocharger, Engine.Air, Engine.Power, Wren.Percent(85), Wren.Petrol),
                    FuelSizing.Injectors.InjectorSet.Of(Wren.InjectorOf(Parts.Injector), 4),
                    Regulator,
                    Pump.Of([Wren.WiredCurve(12, 0.85 * Parts.Pump), Wren.WiredCurve(13.5, Parts.Pump)]),
                    SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(Lines.Rating)));
                return Parts.Lined
                    ? system.With(Plumbing.Of(
                        supply: [Filter.Of("filter F", VolumeFlow.FromLitersPerHour(Lines.Filter), Wren.Kpa(10)), Hose("supply", 1.2 * Lines.Bore)],
                        returnLine: [Hose("return", Lines.Bore)]))
                    : system;
            }
        }

        public RotationalSpeed[] Speeds => Even(Speed.From, Speed.To, Speed.Count, rpm => Wren.Rpm(rpm));

        public Pressure[] Boosts => Even(Boost.From, Boost.To, Boost.Count, bar => Pressure.FromBars(bar));

        public IEnumerable<OperatingPoint> Dense(int speeds, int boosts) =>
            from boost in Even(Boost.From, Boost.To, boosts, bar => Pressure.FromBars(bar))
            from speed in Even(Speed.From, Speed.To, speeds, rpm => Wren.Rpm(rpm))
            select OperatingPoint.At(speed, boost, Wren.Hill);

        private static T[] Even<T>(double from, double to, int count, Func<double, T> of) =>
            [.. Enumerable.Range(0, count).Select(place => of(from + ((to - from) * place / (count - 1))))];

        private static Line Hose(string name, double bore) =>
            Line.Of(name, Length.FromMillimeters(bore), Length.FromMeters(4), Roughness.RubberHose);
    }
}
