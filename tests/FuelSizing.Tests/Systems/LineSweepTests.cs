using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>Sweeps along a boost line: what they claim is true at every speed of it, and no point off it is named.</summary>
public class LineSweepTests
{
    private static readonly Induction Belt = Induction.BeltDriven(Wren.Percent(66), Wren.Percent(60), Wren.Kpa(4), Wren.Percent(95));

    private static readonly Gen<(FuelSystem System, BoostLine Line, double From, double To, int Count)> Any = Gen.Select(
        Gen.Select(Gen.Int[0, 3], Gen.Double[0.15, 0.7], Gen.Double[4000, 6500]),
        Gen.Select(Gen.Double[1.2, 9], Gen.Double[0, 0.3], Gen.Double[450, 900]),
        Gen.Select(Gen.Double[300, 1000], Gen.Double[0.7, 2.4], Gen.Int[0, 2]),
        Gen.Select(Gen.Double[1200, 3500], Gen.Double[4500, 7000], Gen.Int[2, 5])).Select((boost, unit, parts, range) =>
        {
            FuelSystem system = Wren.System(
                RisingRate.From(Wren.Kpa(300), unit.Item1, Pressure.FromBars(unit.Item2), Wren.Kpa(unit.Item3)),
                parts.Item1,
                parts.Item2,
                limits: SizingLimits.Default.With(MixtureLimits.Of(0.9, Pressure.FromBars(0.08), 0.6)))
                .With(Wren.Demand(induction: Belt))
                .With(ControllerOf(parts.Item3));
            BoostLine line = boost.Item1 switch
            {
                0 => MeasuredBoost.Of((Wren.Rpm(1000), Pressure.FromBars(0.02)), (Wren.Rpm(boost.Item3), Pressure.FromBars(boost.Item2)), (Wren.Rpm(7200), Pressure.FromBars(boost.Item2 * 0.8))),
                1 => HeldBoost.Of(Pressure.FromBars(boost.Item2), Wren.Rpm(3600), Wren.Rpm(7200), Wren.Rpm(1500)),
                2 => CentrifugalBoost.From(8.3, Wren.Rpm(boost.Item3), Pressure.FromBars(boost.Item2), Atmosphere.Standard),
                _ => DisplacementBoost.Of(2.1, Volume.FromLiters(0.75 * (1 + boost.Item2)), Wren.Percent(82)),
            };
            return (system, line, range.Item1, range.Item2, range.Item3);
        });

    [Fact]
    public void Claims_AlongALine_AreTrueAtEverySpeedOfIt()
    {
        object gate = new();
        Dictionary<Outcome, int> outcomes = [];
        int open = 0;
        Any.Sample(
            drawn =>
            {
                RotationalSpeed[] speeds = [.. Enumerable.Range(0, drawn.Count).Select(at => Wren.Rpm(drawn.From + ((drawn.To - drawn.From) * at / (drawn.Count - 1))))];
                LineSweepResult sweep = drawn.System.Sweep(drawn.Line, speeds, Wren.Hill);
                lock (gate)
                {
                    outcomes[sweep.Verdict.Outcome] = outcomes.GetValueOrDefault(sweep.Verdict.Outcome) + 1;
                    open += sweep.Standings.Any(standing => standing.IsOpen) ? 1 : 0;
                }

                for (int at = 0; at <= 400; at++)
                {
                    RotationalSpeed speed = Wren.Rpm(drawn.From + ((drawn.To - drawn.From) * at / 400));
                    OperatingResult result = sweep.System.Solve(OperatingPoint.At(speed, drawn.Line.At(speed, drawn.System.Demand, Wren.Hill.Atmosphere), Wren.Hill));
                    foreach (Margin margin in result.Margins.Where(margin => margin.Outcome == Outcome.Fails))
                    {
                        PartStanding standing = sweep.Standings.Single(standing => standing.Part == margin.Part);
                        Assert.True(standing.Outcome != Outcome.Holds, $"{margin} at {result.Point}, but {standing}");
                        double first = standing.LimitReachedAt?.Speed.RevolutionsPerMinute ?? double.PositiveInfinity;
                        Assert.True(speed.RevolutionsPerMinute >= first - 0.5 || standing.IsOpen, $"{margin} at {result.Point}, before {first}: {drawn.System}, {drawn.Line}");
                    }
                }
            },
            iter: 40);
        Assert.True(open <= 1, $"{open} of 40 are too near to say");
        Assert.True(outcomes.GetValueOrDefault(Outcome.Fails) > 10, "too few fail");
        Assert.True(outcomes.GetValueOrDefault(Outcome.HoldsAsFarAsJudged) > 2, $"too few hold: {string.Join(", ", outcomes)}");
    }

    /// <summary>The same over a rectangle of speed and boost, where the limit of the mixture begins within it.</summary>
    [Fact]
    public void Mixture_OverARectangle_HoldsOnlyWhereItDoesEverywhere()
    {
        int holding = 0;
        Any.Sample(
            drawn =>
            {
                Pressure[] boosts = [Pressure.Zero, Pressure.FromBars(0.3), Pressure.FromBars(0.5)];
                RotationalSpeed[] speeds = [Wren.Rpm(drawn.From), Wren.Rpm(drawn.To)];
                PartStanding[] standings = [.. drawn.System.Sweep(speeds, boosts, Wren.Hill).Standings.Where(standing => standing.Part == Part.Mixture || standing.Part == Part.RichMixture)];
                Interlocked.Add(ref holding, standings.Count(standing => standing.Outcome == Outcome.Holds));
                for (int at = 0; at < 60 * 25; at++)
                {
                    OperatingPoint point = OperatingPoint.At(
                        Wren.Rpm(drawn.From + ((drawn.To - drawn.From) * (at % 60) / 59)), Pressure.FromBars(0.5 * (at / 60) / 24), Wren.Hill);
                    foreach (Margin margin in drawn.System.Solve(point).Margins.Where(margin => margin.Outcome == Outcome.Fails))
                    {
                        Assert.DoesNotContain(standings, standing => standing.Part == margin.Part && standing.Outcome == Outcome.Holds);
                    }
                }
            },
            iter: 15);
        Assert.True(holding > 3, $"{holding} hold");
    }

    [Fact]
    public void Points_OfASweep_LieOnTheLine()
    {
        FuelSystem system = Wren.System().With(Wren.Demand(induction: Belt));
        BoostLine line = CentrifugalBoost.From(8.3, Wren.Rpm(6000), Pressure.FromBars(0.5), Atmosphere.Standard);
        LineSweepResult sweep = system.Pull(line, Wren.Rpm(2000), Wren.Rpm(6500), Wren.Hill);
        Assert.Equal(13, sweep.Results.Count);
        Assert.All(
            sweep.Results.Select(result => result.Point).Concat(sweep.Standings.Select(standing => standing.Tightest.Margin.Point)).Concat(sweep.Standings.Select(standing => standing.LimitReachedAt).OfType<OperatingPoint>()),
            point => Assert.Equal(line.At(point.Speed, system.Demand, Wren.Hill.Atmosphere).Pascals, point.Boost.Pascals, 1e-6));
    }

    [Fact]
    public void Compressor_OverItsMaximumSpeed_Fails_AndWithoutOneIsNotJudged()
    {
        FuelSystem system = Wren.System(injector: 800, pump: 2).With(Wren.Demand(induction: Belt));
        BeltDrivenBoost line = CentrifugalBoost.From(8.3, Wren.Rpm(6000), Pressure.FromBars(0.3), Atmosphere.Standard);
        LineSweepResult open = system.Pull(line, Wren.Rpm(2000), Wren.Rpm(6500), Wren.Hill);
        Assert.Contains(open.System.NotJudged, gap => gap.Part == Part.CompressorSpeed);

        LineSweepResult over = system.Pull(line.WithMaximumCompressorSpeed(Wren.Rpm(50_000)), Wren.Rpm(2000), Wren.Rpm(6500), Wren.Hill);
        PartStanding standing = over.Standings.Single(of => of.Part == Part.CompressorSpeed);
        Assert.Equal(Outcome.Fails, standing.Outcome);
        Assert.Equal(50_000 / 8.3, standing.LimitReachedAt!.Speed.RevolutionsPerMinute, 1e-3);
        Assert.Contains(over.Remedies, remedy => remedy.Part == Part.CompressorSpeed);
    }

    /// <summary>A system that was swept keeps no compressor of the line before: the one that turns faster is judged by its own ratio.</summary>
    [Fact]
    public void Compressor_OfASweptSystemOnAnotherLine_IsJudgedByThatLine()
    {
        BeltDrivenBoost line = CentrifugalBoost.From(8.3, Wren.Rpm(6000), Pressure.FromBars(0.3), Atmosphere.Standard).WithMaximumCompressorSpeed(Wren.Rpm(56_000));
        LineSweepResult first = Wren.System(injector: 800, pump: 2).With(Wren.Demand(induction: Belt)).Pull(line, Wren.Rpm(2000), Wren.Rpm(6500), Wren.Hill);
        LineSweepResult faster = first.System.Pull(line.WithCompressorPulley(Wren.Percent(-12)), Wren.Rpm(2000), Wren.Rpm(6500), Wren.Hill);
        Assert.Equal(Outcome.Holds, first.Standings.Single(of => of.Part == Part.CompressorSpeed).Outcome);
        Assert.Equal(Outcome.Fails, faster.Standings.Single(of => of.Part == Part.CompressorSpeed).Outcome);
    }

    [Fact]
    public void Sweep_OfALineThatEnds_IsRefused()
    {
        FuelSystem system = Wren.System().With(Wren.Demand(induction: Belt));
        BoostLine line = MeasuredBoost.Of((Wren.Rpm(2000), Pressure.FromBars(0.1)), (Wren.Rpm(5000), Pressure.FromBars(0.4)));
        Assert.Throws<ArgumentOutOfRangeException>(() => system.Pull(line, Wren.Rpm(2000), Wren.Rpm(6000), Wren.Hill));
        Assert.Throws<ArgumentOutOfRangeException>(() => system.Pull(line, Wren.Rpm(4000), Wren.Rpm(3000), Wren.Hill));
        Assert.Throws<ArgumentException>(() => Wren.System().With(Wren.Demand(induction: Induction.NaturallyAspirated)).Pull(line, Wren.Rpm(2000), Wren.Rpm(4000), Wren.Hill));
    }

    /// <summary>The leanest mixture and the lowest and highest rail along a line, against 2,001 speeds of it: between the speeds that were asked for too.</summary>
    [Theory]
    [InlineData(4, 0.45, 480)]
    [InlineData(4, 0.36, 480)]
    [InlineData(9, 0.4, 700)]
    [InlineData(1, 2, 900)]
    public void Extremes_OfALine_AreThoseOfADenseScan(double gain, double pump, double ceiling)
    {
        FuelSystem system = Wren.System(RisingRate.From(Wren.Kpa(300), gain, Wren.Kpa(8), Wren.Kpa(ceiling)), 420, pump)
            .With(Wren.Demand(induction: Belt))
            .With(RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(9)), (Wren.Rpm(4700), Wren.Ms(8.5)), (Wren.Rpm(7200), Wren.Ms(7.5))));
        BoostLine line = CentrifugalBoost.From(8.3, Wren.Rpm(6000), Pressure.FromBars(0.45), Atmosphere.Standard);
        LineSweepResult sweep = system.Sweep(line, [Wren.Rpm(2600), Wren.Rpm(6500)], Wren.Hill);
        OperatingResult[] scan =
        [
            .. Enumerable.Range(0, 2001).Select(step => Wren.Rpm(2600 + (3900.0 * step / 2000)))
                .Select(speed => system.Solve(OperatingPoint.At(speed, line.At(speed, system.Demand, Wren.Hill.Atmosphere), Wren.Hill))),
        ];
        double leanest = scan.Max(result => result.Mixture.MaximumLambda!.Value);
        Assert.InRange(sweep.Leanest!.Mixture.MaximumLambda!.Value, leanest * (1 - 1e-9), leanest * (1 + 1e-4));
        double lowest = scan.Min(result => result.Mixture.RailGauge.Pascals);
        Assert.InRange(sweep.LowestRail.Mixture.RailGauge.Pascals, lowest * (1 - 1e-4), lowest * (1 + 1e-9));
        double highest = scan.Max(result => result.Mixture.RailGauge.Pascals);
        Assert.InRange(sweep.HighestRail.Mixture.RailGauge.Pascals, highest * (1 - 1e-9), highest * (1 + 1e-4));
        Assert.Equal(sweep.Leanest.Mixture.Lambda, system.Solve(sweep.Leanest.Point).Mixture.Lambda);
    }

    /// <summary>A pull from 2,000 to 6,500 rev/min shows 13 speeds, 375 apart; each check's first limit, the lowest speed first.</summary>
    [Fact]
    public void Pull_ShowsThirteenSpeeds_AndTheFirstLimitFirst()
    {
        BoostLine line = CentrifugalBoost.From(8.3, Wren.Rpm(6000), Pressure.FromBars(0.5), Atmosphere.Standard);
        LineSweepResult sweep = Wren.System(pump: 0.7, injector: 300).With(Wren.Demand(induction: Belt)).Pull(line, Wren.Rpm(2000), Wren.Rpm(6500), Wren.Hill);
        Assert.Equal(Enumerable.Range(0, 13).Select(step => 2000.0 + (375 * step)), sweep.Results.Select(result => Math.Round(result.Point.Speed.RevolutionsPerMinute, 6)));
        double[] limits = [.. sweep.Standings.Select(standing => standing.LimitReachedAt?.Speed.RevolutionsPerMinute ?? double.PositiveInfinity)];
        Assert.True(limits.Count(double.IsFinite) >= 2, string.Join(", ", limits));
        Assert.Equal(limits.Order(), limits);
        Assert.Equal(
            sweep.Standings.Where(standing => standing.LimitReachedAt is null).Select(standing => standing.Tightest.Margin).Order(Urgency.Order),
            sweep.Standings.Where(standing => standing.LimitReachedAt is null).Select(standing => standing.Tightest.Margin));
        Assert.Same(sweep.Standings[0], sweep.Limiting);
        Assert.Equal(Conditions.Default, Wren.System().With(Wren.Demand(induction: Belt)).Sweep(line, [Wren.Rpm(3000), Wren.Rpm(4000)]).Results[0].Point.Conditions);
        Refused.OutOfRange("fastest", () => sweep.System.Pull(line, Wren.Rpm(4000), Wren.Rpm(4000)));
        Refused.Missing("system", () => LineSweep.Pull(null!, line, Wren.Rpm(3000), Wren.Rpm(4000)));
        Refused.Missing("line", () => sweep.System.Pull(null!, Wren.Rpm(3000), Wren.Rpm(4000)));
    }

    private static EngineController ControllerOf(int kind) => kind switch
    {
        0 => RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(9)), (Wren.Rpm(5000), Wren.Ms(8.5)), (Wren.Rpm(7200), Wren.Ms(7.5))),
        1 => SpeedDensityController.Of(
            ControllerData.Of(Wren.InjectorOf(500), FuelSizing.Fuels.Fuel.Petrol, TargetLambda.At(0.84)), Wren.VolumetricEfficiency, Wren.Kpa(115)),
        _ => AirflowMeterController.Of(
            ControllerData.Of(Wren.InjectorOf(500), FuelSizing.Fuels.Fuel.Petrol, TargetLambda.At(0.84)), MassFlow.FromGramsPerSecond(130)),
    };
}
