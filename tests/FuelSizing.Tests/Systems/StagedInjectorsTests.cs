using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Selection;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>A secondary set of injectors takes part of the fuel above a hand-over: what each set carries, and how both are judged.</summary>
public class StagedInjectorsTests
{
    private static readonly Part[] Parts = [Part.SecondaryInjectors, Part.SecondaryMinimumPulse, Part.SecondaryOpeningPressure];

    private static readonly Gen<(double Rpm, double Boost)> Points = Gen.Select(Gen.Double[1000, 7000], Gen.Double[-0.5, 1]);

    [Fact]
    public void OfOneSet_NothingIsSaidOfAnother()
    {
        OperatingResult one = Wren.System().Solve(Wren.At(5000, 0.4));
        Assert.Null(one.SecondaryInjection);
        Assert.Null(Wren.System().StagedInjectors);
        Assert.Equal(one.InjectedFlow, one.PrimaryFlow);
        Assert.DoesNotContain(one.Margins, margin => Parts.Contains(margin.Part));
        Assert.Equal(Wren.System(pump: 1.6), Staged.Wren2().WithoutStagedInjectors());
    }

    /// <summary>A share of nothing, and a hand-over that is not reached, leave the primary set as it is alone, bit for bit.</summary>
    [Fact]
    public void NotReached_OrOfNoShare_IsAsWithoutIt() => Gen.Select(Staged.Any, Points).Sample((staged, at) =>
    {
        FuelSystem system = Wren.System(pump: 1.6);
        OperatingResult alone = system.Solve(Wren.At(at.Rpm, at.Boost));
        HandOver none = staged.HandOver.WithShareAtBegin(Ratio.Zero).WithShare(Ratio.Zero);
        SameAs(alone, system.With(staged.WithHandOver(none)).Solve(alone.Point));
        HandOver far = HandOver.ByBoost(Pressure.FromBars(1.2), Pressure.FromBars(1.4), staged.HandOver.Share, staged.HandOver.ShareAtBegin);
        SameAs(alone, system.With(staged.WithHandOver(far)).Solve(alone.Point));
        if (alone.DutyCycle is { } duty && duty < Wren.Percent(70))
        {
            SameAs(alone, system.With(staged.WithHandOver(HandOver.ByDutyCycle(Wren.Percent(70), staged.HandOver.Share))).Solve(alone.Point));
        }

        static void SameAs(OperatingResult alone, OperatingResult staged)
        {
            Assert.True(staged.SecondaryInjection!.IsIdle);
            Assert.Equal(Duration.Zero, staged.SecondaryInjection.Pulse);
            Assert.Equal(alone.PrimaryFlow, staged.PrimaryFlow);
            Assert.Equal(alone.Pulse, staged.Pulse);
            Assert.Equal(alone.DutyCycle, staged.DutyCycle);
            Assert.Equal(alone.StaticFlow, staged.StaticFlow);
            Assert.Equal(alone.RailGauge, staged.RailGauge);
            foreach (Margin margin in alone.Margins)
            {
                Margin same = ByPart.Find(staged, margin.Part);
                Assert.Equal(margin.Reading, same.Reading);
                Assert.Equal(margin.ToString(), same.ToString());
            }

            Assert.All(Parts, part => Assert.Equal(Outcome.Holds, ByPart.Find(staged, part).Outcome));
            Assert.All(Parts, part => Assert.Null(ByPart.Find(staged, part).Used));
        }
    });

    [Fact]
    public void BothSetsTogether_InjectTheFuelOfTheEngine() => Gen.Select(Staged.Any, Points).Sample((staged, at) =>
    {
        OperatingResult result = Staged.Wren2(staged).Solve(Wren.At(at.Rpm, at.Boost));
        if (result.SecondaryInjection!.Flow is { } secondary)
        {
            double whole = result.InjectedFlow.CubicMetersPerSecond;
            Assert.Equal(whole, result.PrimaryFlow!.Value.CubicMetersPerSecond + secondary.CubicMetersPerSecond, whole * 1e-12);
            Assert.Equal(result.SecondaryInjection.Share!.Value.DecimalFractions, secondary.CubicMetersPerSecond / whole, 1e-12);
        }
    });

    /// <summary>Two equal sets that carry half each are one set of twice as many.</summary>
    [Fact]
    public void TwoEqualSetsOfHalf_AreOneOfTwice() => Gen.Select(Points, Gen.Double[150, 700], Gen.Int[1, 6], Gen.Int[1, 2]).Sample((at, flow, count, perCycle) =>
    {
        InjectorSet half = InjectorSet.Of(Wren.InjectorOf(flow), count, perCycle);
        HandOver always = HandOver.ByBoost(Pressure.FromBars(-0.9), Pressure.FromBars(-0.89), Wren.Percent(50), Wren.Percent(50));
        OperatingPoint point = Wren.At(at.Rpm, at.Boost);
        OperatingResult two = Wren.System().With(half).With(StagedInjectors.Of(half, always)).Solve(point);
        OperatingResult one = Wren.System().With(InjectorSet.Of(Wren.InjectorOf(flow), 2 * count, perCycle)).Solve(point);
        Assert.Equal(one.Pulse is null, two.Pulse is null);
        if (one.Pulse is { } pulse)
        {
            Assert.Equal(pulse.Seconds, two.Pulse!.Value.Seconds, pulse.Seconds * 1e-12);
            Assert.Equal(pulse.Seconds, two.SecondaryInjection!.Pulse!.Value.Seconds, pulse.Seconds * 1e-12);
        }

        foreach ((Part whole, Part second) in ((Part, Part)[])[(Part.Injectors, Part.SecondaryInjectors), (Part.MinimumPulse, Part.SecondaryMinimumPulse), (Part.OpeningPressure, Part.SecondaryOpeningPressure)])
        {
            double? share = ByPart.Find(one, whole).Share;
            foreach (Margin margin in (Margin[])[ByPart.Find(two, whole), ByPart.Find(two, second)])
            {
                Assert.Equal(ByPart.Find(one, whole).Outcome, margin.Outcome);
                Assert.Equal(share ?? 0, margin.Share ?? 0, 1e-10 * Math.Max(1, Math.Abs(share ?? 0)));
            }
        }
    });

    [Fact]
    public void ByBoost_TheShareRisesStraight_FromItsBeginToItsFull()
    {
        double Share(double bar) => Staged.Wren2().Solve(Wren.At(5000, bar)).SecondaryInjection!.Share!.Value.Percent;
        Assert.Equal(0, Share(0.3));
        Assert.Equal(30, Share(0.3 + 1e-9), 1e-6);
        Assert.Equal(37.5, Share(0.425), 1e-9);
        Assert.Equal(45, Share(0.55), 1e-9);
        Assert.Equal(45, Share(0.9), 1e-9);
    }

    [Fact]
    public void ByDutyCycle_ThePrimarySetIsHeld_UntilTheLargestShareIsCarried() => Gen.Select(Points, Gen.Double[0.35, 0.85], Gen.Double[0.3, 0.9], Gen.Double[0, 1], Gen.Double[200, 800]).Sample((at, begin, share, atBegin, size) =>
    {
        HandOver handOver = HandOver.ByDutyCycle(Ratio.FromDecimalFractions(begin), Ratio.FromDecimalFractions(share), Ratio.FromDecimalFractions(share * atBegin));
        OperatingResult alone = Wren.System(injector: size, pump: 1.6).Solve(Wren.At(at.Rpm, at.Boost));
        OperatingResult result = Staged.Wren2(Staged.Of(handOver), injector: size).Solve(alone.Point);
        if (alone.DutyCycle is not { } own || Math.Abs(own.DecimalFractions - begin) < 1e-9)
        {
            return;
        }

        double carried = result.SecondaryInjection!.Share!.Value.DecimalFractions;
        Assert.Equal(own.DecimalFractions <= begin, result.SecondaryInjection.IsIdle);
        if (result.SecondaryInjection.IsIdle)
        {
            return;
        }

        Assert.InRange(carried, (share * atBegin) - 1e-12, share + 1e-12);
        double primary = result.DutyCycle!.Value.DecimalFractions;
        if (carried > (share * atBegin) + 1e-9 && carried < share - 1e-9)
        {
            Assert.Equal(begin, primary, 1e-9);
        }

        // At its least the share relieves the primary set by more than it need, at its most by less.
        bool isLeast = carried <= (share * atBegin) + 1e-9;
        Assert.True(!isLeast || carried >= share - 1e-9 || primary <= begin + 1e-9);
        Assert.True(isLeast || carried < share - 1e-9 || primary >= begin - 1e-9);
    });

    /// <summary>Worked by hand: 40 % of 5e-5 m³/s at 2,400 rev/min, a static flow of 8e-6 m³/s, four injectors, 1 ms.</summary>
    [Fact]
    public void Pulse_OfTheSecondarySet_IsThatOfItsShare()
    {
        OperatingResult result = Staged.Wren2().Solve(Wren.At(5000, 0.425));
        SecondaryInjection secondary = result.SecondaryInjection!;
        double cycle = 120.0 / 5000;
        double each = 0.375 * result.InjectedFlow.CubicMetersPerSecond * cycle / 4;
        Assert.Equal(cycle, secondary.AvailableTime.Seconds, 1e-12);
        Assert.Equal(secondary.DeadTime!.Value.Seconds + (each / secondary.StaticFlow!.Value.CubicMetersPerSecond), secondary.Pulse!.Value.Seconds, 1e-12);
        Assert.Equal(secondary.Pulse.Value.Seconds / cycle, secondary.DutyCycle!.Value.DecimalFractions, 1e-12);
        Assert.Equal(Staged.Secondary.DeadTime.At(Wren.Volt(13.5), result.InjectorDifferential).Seconds, secondary.DeadTime.Value.Seconds, 1e-15);
        Assert.Equal(
            Staged.Secondary.StaticFlowAt(result.InjectorDifferential, FuelSizing.Fuels.Fuel.Petrol, Wren.Hill.FuelTemperature).CubicMetersPerSecond,
            secondary.StaticFlow.Value.CubicMetersPerSecond,
            1e-15);
    }

    [Fact]
    public void Checks_OfTheSecondarySet_FailByItsOwnLimits()
    {
        OperatingResult small = Staged.Wren2(Staged.Of(flow: 60)).Solve(Wren.At(6500, 0.7));
        Assert.Equal(Outcome.Fails, ByPart.Find(small, Part.SecondaryInjectors).Outcome);
        Assert.Equal(Outcome.Holds, ByPart.Find(small, Part.Injectors).Outcome);
        OperatingResult large = Staged.Wren2(Staged.Of(HandOver.ByBoost(Pressure.FromBars(0.1), Pressure.FromBars(0.5), Wren.Percent(45), Wren.Percent(3)))).Solve(Wren.At(3000, 0.101));
        Assert.Equal(Outcome.Fails, ByPart.Find(large, Part.SecondaryMinimumPulse).Outcome);
        Assert.Equal(Outcome.Holds, ByPart.Find(large, Part.MinimumPulse).Outcome);
        FuelSystem high = Staged.Wren2(regulator: Fixed.At(Wren.Kpa(960)), pump: 3);
        Assert.Equal(Outcome.Holds, ByPart.Find(high.Solve(Wren.At(3000, 0)), Part.SecondaryOpeningPressure).Outcome);
        Assert.Equal(Outcome.Fails, ByPart.Find(Wren.System(Fixed.At(Wren.Kpa(1000)), pump: 3).With(Staged.Of()).Solve(Wren.At(3000, 0.35)), Part.SecondaryOpeningPressure).Outcome);
    }

    /// <summary>A share that starts at nothing starts with a pulse of nothing: a sweep finds it, though no point of its own lies there.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Sweep_FindsThePulseJustAboveTheHandOver(bool byBoost)
    {
        HandOver handOver = byBoost
            ? HandOver.ByBoost(Pressure.FromBars(0.31), Pressure.FromBars(0.33), Wren.Percent(45))
            : HandOver.ByDutyCycle(Wren.Percent(60), Wren.Percent(60));
        SweepResult sweep = Staged.Wren2(Staged.Of(handOver)).Sweep([Wren.Rpm(3000), Wren.Rpm(5000), Wren.Rpm(6500)], [Pressure.FromBars(0), Pressure.FromBars(0.3), Pressure.FromBars(0.7)], Wren.Hill);
        PartStanding standing = sweep.Standings.Single(one => one.Part == Part.SecondaryMinimumPulse);
        Assert.Equal(Outcome.Fails, standing.Outcome);
        Assert.NotNull(standing.LimitReachedAt);
        if (byBoost)
        {
            Assert.Equal(0.31, standing.LimitReachedAt.Boost.Bars, 1e-5);
        }

        Assert.Equal(Outcome.Fails, sweep.Verdict.Outcome);
        LineSweepResult pull = Staged.Wren2(Staged.Of(handOver)).Pull(HeldBoost.Of(Pressure.FromBars(0.6), Wren.Rpm(3500), Wren.Rpm(6500), Wren.Rpm(2000)), Wren.Rpm(2000), Wren.Rpm(6500), Wren.Hill);
        Assert.Equal(Outcome.Fails, pull.Standings.Single(one => one.Part == Part.SecondaryMinimumPulse).Outcome);
    }

    /// <summary>A verdict over a range is true over the range: a dense scan finds no failure where it holds, nor an earlier one.</summary>
    [Fact]
    public void Holds_OverARange_IsTrueAtEveryPointOfIt()
    {
        int holding = 0;
        int open = 0;
        Gen.Select(Staged.Any, Gen.Double[0, 0.2], Gen.Double[0.5, 1], Gen.Double[250, 600], Gen.Int[2, 4]).Sample(
            (staged, low, high, size, count) =>
            {
                FuelSystem system = Staged.Wren2(staged, injector: size, pump: 2.4);
                RotationalSpeed[] speeds = [.. Enumerable.Range(0, count).Select(at => Wren.Rpm(2500 + (4000.0 * at / (count - 1))))];
                SweepResult sweep = system.Sweep(speeds, [Pressure.FromBars(low), Pressure.FromBars(high)], Wren.Hill);
                bool[] holds = [.. system.Checks.Where(check => sweep.Standings.Any(one => one.Part == check.Part)).Select(check => sweep.Standings.Single(one => one.Part == check.Part).Outcome == Outcome.Holds)];
                Interlocked.Add(ref holding, sweep.Standings.Count(one => Parts.Contains(one.Part) && one.Outcome == Outcome.Holds));
                Interlocked.Add(ref open, sweep.Standings.Count(one => one.IsOpen));
                for (int speed = 0; speed <= 40; speed++)
                {
                    for (int boost = 0; boost <= 60; boost++)
                    {
                        OperatingResult result = system.Solve(Wren.At(2500 + (100.0 * speed), low + ((high - low) * boost / 60)));
                        for (int check = 0; check < holds.Length; check++)
                        {
                            Assert.False(
                                holds[check] && result.Margins[check].Outcome == Outcome.Fails,
                                holds[check] && result.Margins[check].Outcome == Outcome.Fails ? $"{result.Margins[check]} at {result.Point}: {system}, {staged}" : null);
                        }
                    }
                }
            },
            iter: 40);
        Assert.True(holding > 40, $"only {holding} hold");
        Assert.True(open < 20, $"{open} are too near to say");
    }

    /// <summary>Every remedy of either set, put back at the points where it fails, serves.</summary>
    [Fact]
    public void Remedies_PutBack_Serve()
    {
        Dictionary<string, int> seen = [];
        object gate = new();
        Gen.Select(Staged.Any, Gen.Double[80, 700], Gen.Double[0.3, 0.9], Gen.Double[60, 2500]).Sample(
            (staged, size, high, second) =>
            {
                FuelSystem system = Staged.Wren2(Staged.Of(staged.HandOver, second, staged.Secondary.Count, staged.Secondary.InjectionsPerCycle), injector: size, pump: 2.4);
                SweepResult sweep = system.Sweep([Wren.Rpm(2500), Wren.Rpm(4500), Wren.Rpm(6500)], [Pressure.FromBars(0), Pressure.FromBars(high)], Wren.Hill);
                foreach (Remedy remedy in sweep.Remedies.Where(remedy => remedy.Needed is not null && remedy.Text.Code != "boost.less"))
                {
                    if (PutBackOf(system, remedy) is not { } changed)
                    {
                        continue;
                    }

                    Outcome outcome = changed.Sweep(sweep.Speeds, sweep.Boosts, Wren.Hill).Standings.Single(one => one.Part == remedy.Part).Outcome;
                    Assert.True(outcome == Outcome.Holds, outcome == Outcome.Holds ? null : $"{outcome}: {remedy}; {system}, {system.StagedInjectors}");
                    lock (gate)
                    {
                        seen[remedy.Text.Code] = seen.GetValueOrDefault(remedy.Text.Code) + 1;
                    }
                }
            },
            iter: 100);
        Assert.All(
            (string[])["injectors.larger", "injectors.larger-secondary-of-a-kind", "minimum-pulse.larger-share-or-smaller-injectors-of-a-kind"],
            code => Assert.True(seen.GetValueOrDefault(code) >= 5, $"{code}: {string.Join(", ", seen)}"));
    }

    private static FuelSystem? PutBackOf(FuelSystem system, Remedy remedy)
    {
        StagedInjectors staged = system.StagedInjectors!;
        InjectorSet second = staged.Secondary;
        InjectorSet Sized(InjectorSet set, VolumeFlow flow) => InjectorSet.Of(set.Injector.WithStaticFlow(flow), set.Count, set.InjectionsPerCycle);
        static bool IsInjector(VolumeFlow flow) => flow.MillilitersPerMinute is >= 20 and <= 10_000;
        return remedy switch
        {
            { Needed: VolumeFlow flow } when remedy.Part == Part.SecondaryInjectors || remedy.Part == Part.SecondaryMinimumPulse =>
                IsInjector(flow) ? system.With(staged.WithSecondary(Sized(second, flow))) : null,
            { Needed: VolumeFlow flow } when remedy.Part == Part.Injectors || remedy.Part == Part.MinimumPulse => IsInjector(flow) ? system.With(Sized(system.Injectors, flow)) : null,
            { Needed: Ratio share } => system.With(staged.WithHandOver(staged.HandOver.WithShare(share > staged.HandOver.Share ? share : staged.HandOver.Share).WithShareAtBegin(share))),
            _ => null,
        };
    }

    [Fact]
    public void Controller_WithPulsesOfItsOwn_IsRefused()
    {
        RecordedPulseController recorded = RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(9)), (Wren.Rpm(7200), Wren.Ms(7.5)));
        ArgumentException refused = Assert.Throws<ArgumentException>(() => Staged.Wren2().With(recorded));
        Assert.Contains("knows nothing of a secondary set", refused.Message, StringComparison.Ordinal);
        Assert.Equal("controller", refused.ParamName);
        Assert.Throws<ArgumentException>(() => Wren.System().With(recorded).With(Staged.Of()));
    }

    [Fact]
    public void Begin_OverTheDutyLimit_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Staged.Wren2(Staged.Of(HandOver.ByDutyCycle(Wren.Percent(90), Wren.Percent(50)))));

    [Fact]
    public void Mixture_IsAtTheTarget_UnlessASetDoesNotClose()
    {
        OperatingResult result = Staged.Wren2().Solve(Wren.At(5000, 0.4));
        Assert.Equal(0.82, result.Mixture.Lambda!.Value, 1e-12);
        OperatingResult open = Staged.Wren2(Staged.Of(flow: 60)).Solve(Wren.At(6500, 0.7));
        Assert.True(open.SecondaryInjection!.DutyCycle > Wren.Percent(100));
        Assert.Null(open.Mixture.Lambda);
        Assert.Contains("cannot be said", open.Mixture.ToString(), StringComparison.Ordinal);
        Assert.Null(Staged.Wren2(pump: 0.2).Solve(Wren.At(6500, 0.7)).Mixture.Lambda);
    }

    [Fact]
    public void WhatTakesOneSetOnly_RefusesByNameAndCure()
    {
        FuelSystem system = Staged.Wren2();
        OperatingPoint point = Wren.At(5000, 0.4);
        Refuses(() => PointBatch.Of(system.Parts), "one by one");
        Refuses(() => UncertainSystem.Of(system, point, UncertainInput.InjectorFlowFactor(Distribution.Uniform(Wren.Percent(96), Wren.Percent(104)))), "WithoutStagedInjectors");
        Refuses(() => RunCheck.Of(system), "WithoutStagedInjectors");
        Refuses(() => BoostSizing.InjectorsInstead(system, HeldBoost.Of(Wren.Kpa(40), Wren.Rpm(2000), Wren.Rpm(6500)), Wren.Rpm(3000), Wren.Rpm(6000), Wren.Hill), "WithoutStagedInjectors");
        FuelSystem byDuty = Staged.Wren2(Staged.Of(Staged.ByDutyCycle));
        Refuses(() => SystemSizing.MinimumStaticFlow(byDuty, point), "HandOver.ByBoost");
        Refuses(() => SystemSizing.MinimumBasePressure(byDuty, point), "HandOver.ByBoost");
        Refuses(() => SystemSizing.MaximumBoost(byDuty, [Wren.Rpm(5000)], Wren.Hill), "HandOver.ByBoost");
        Refuses(() => SystemSizing.MaximumPower(byDuty, Wren.Rpm(5000), Wren.Hill), "HandOver.ByBoost");
        Refuses(() => SystemSizing.MaximumSpeed(byDuty, Wren.Kpa(40), Wren.Rpm(2000), Wren.Hill), "HandOver.ByBoost");
        Refuses(() => byDuty.FindWorstCorner([Wren.Rpm(3000), Wren.Rpm(5000)], [Wren.Kpa(0), Wren.Kpa(40)], OperatingRanges.Around(Wren.Hill)), "HandOver.ByBoost");

        static void Refuses(Func<object> call, string cure)
        {
            ArgumentException refused = Assert.Throws<ArgumentException>(call);
            Assert.Contains(cure, refused.Message, StringComparison.Ordinal);
        }
    }

    /// <summary>With a hand-over by boost the inverse questions take both sets: the answer holds, and less does not.</summary>
    [Fact]
    public void MinimumStaticFlow_OfThePrimarySet_Holds()
    {
        OperatingPoint[] points = [Wren.At(5000, 0.5), Wren.At(6500, 0.6)];
        VolumeFlow flow = SystemSizing.MinimumStaticFlow(Staged.Wren2(pump: 2), points).Value!.Value;
        FuelSystem With(double factor) => Staged.Wren2(pump: 2).With(InjectorSet.Of(Wren.InjectorOf(flow.MillilitersPerMinute * factor), 4));
        Assert.All(points, point => Assert.Equal(Outcome.Holds, ByPart.Find(With(1).Solve(point), Part.Injectors).Outcome));
        Assert.Contains(points, point => ByPart.Find(With(0.99).Solve(point), Part.Injectors).Outcome == Outcome.Fails);
        VolumeFlow alone = SystemSizing.MinimumStaticFlow(Wren.System(pump: 2), points).Value!.Value;
        Assert.True(flow < alone * 0.7);
    }

    /// <summary>A ranking exchanges the primary injectors, and judges both sets as the whole system does.</summary>
    [Fact]
    public void Ranking_JudgesBothSets()
    {
        FuelSystem system = Staged.Wren2();
        Candidate<Injector>[] injectors = [.. new double[] { 150, 300, 500, 900 }.Select(size => Candidate.Of($"{size}", Wren.InjectorOf(size)))];
        Ranking ranking = Ranking.Of([Stage.Of("hill", system, Wren.At(2500, 0.2), Wren.At(6500, 0.6))], CandidateParts.Of(injectors: injectors));
        foreach (Combination combination in ranking.Combinations)
        {
            FuelSystem with = system.With(InjectorSet.Of(combination.Injectors!.Part, 4));
            OperatingResult[] results = [with.Solve(Wren.At(2500, 0.2)), with.Solve(Wren.At(6500, 0.6))];
            Assert.Equal(results.All(result => result.Limiting.Margin.Outcome == Outcome.Holds), Urgency.IsHolding(combination.Outcome));
            Assert.Equal(results.SelectMany(result => result.Margins).Min(margin => margin.Share ?? double.PositiveInfinity), combination.SolveWeakest().Margin.Share ?? double.PositiveInfinity, 1e-12);
        }
    }

    /// <summary>Where the regulator's pressure is known between bounds, a split by duty cycle is known between bounds too: both ends of it are within what is judged.</summary>
    [Fact]
    public void ByDutyCycle_WithABandOfPressure_JudgesTheShortestPulseOfIt() => Gen.Select(Points, Gen.Double[0.4, 0.8], Gen.Double[0.2, 0.8], Gen.Double[0, 1], Gen.Double[200, 500]).Sample((at, begin, share, atBegin, size) =>
    {
        StagedInjectors staged = Staged.Of(HandOver.ByDutyCycle(Ratio.FromDecimalFractions(begin), Ratio.FromDecimalFractions(share), Ratio.FromDecimalFractions(share * atBegin)));
        ManifoldReferenced plain = ManifoldReferenced.From(Wren.Kpa(300));
        OperatingResult banded = Staged.Wren2(staged, plain.WithFlow(RegulatorFlow.Constant.WithHysteresis(Wren.Kpa(30))), size).Solve(Wren.At(at.Rpm, at.Boost));
        PointValues<FuelSizing.Numerics.Real> values = PointReading.Of(banded);
        double[] offsets = [0, 0.2, 0.5, 0.8, 1];
        foreach (double offset in offsets)
        {
            double across = values.Minimum.Differential.Value + (offset * (values.Maximum.Differential.Value - values.Minimum.Differential.Value));
            OperatingResult exact = Staged.Wren2(staged, ManifoldReferenced.From(Pressure.FromPascals(across)), size, pump: 3).Solve(banded.Point);
            if (exact.RailState != RailState.Regulated)
            {
                return;
            }

            foreach (Part part in (Part[])[Part.MinimumPulse, Part.SecondaryMinimumPulse])
            {
                Margin margin = ByPart.Find(banded, part);
                Margin own = ByPart.Find(exact, part);
                Assert.False(margin.Outcome == Outcome.Holds && own.Outcome == Outcome.Fails && !banded.SecondaryInjection!.IsIdle, $"{part}: {margin}, {own}");
                Assert.False(margin.Outcome == Outcome.Fails && own.Outcome == Outcome.Holds && !exact.SecondaryInjection!.IsIdle, $"{part}: {margin}, {own}");
            }
        }
    });
}
