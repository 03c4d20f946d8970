using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>Runs without scatter of a car with one known fault: the fault, its size and its evidence, in figures and in words.</summary>
public class DiagnosisTests
{
    private static readonly RecordedRun Sound = ExactRun.Of(PulledWren.Plan);

    /// <summary>What was put in, 30 % less flow, 150 mΩ and so on, is what comes out; of the wiring but for 0.3 mΩ that the pump's table rounds.</summary>
    public static TheoryData<RunFault, string> Faults => new()
    {
        { RunFault.WeakPump, "the pump delivers 70 % (" },
        { RunFault.VoltageDrop, "149.7 mΩ more than planned in the pump's feed (±" },
        { RunFault.CloggedFilter, "the filter's pressure drop exceeds the plan by " },
        { RunFault.WrongGain, "the regulator's gain is 3.60 (±" },
        { RunFault.WrongOnset, "the gain sets in at 0.35 bar (±" },
        { RunFault.WrongInjectorSize, "the injectors pass 115 % (" },
        { RunFault.AirOffPlan, "the engine draws 85 % (" },
        { RunFault.FlowMeterOff, "the flow meter reads 112 % (" },
        { RunFault.RailSensorOffset, "rail pressure reads +" },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void Fault_OfAKnownSize_IsNamedWithItsSize(RunFault fault, string size)
    {
        RunFindings findings = RunFindings.Of(PulledWren.Check, RunWith(fault));
        Assert.Equal(fault, findings.Fault);
        Assert.Empty(findings.Rivals);
        Assert.Equal(fault, findings.Faults[0].Fault);
        Assert.StartsWith(size, findings.Faults[0].Size.ToString(), StringComparison.Ordinal);
        Assert.True(findings.IsDiagnosed);

        // What is taken for likely before the run draws a size towards it by less than the run leaves open.
        if (fault is RunFault.CloggedFilter or RunFault.RailSensorOffset)
        {
            RunFit fit = Diagnosis.Of(PulledWren.Check, PulledWren.Check.Model(RunWith(fault)), null, CancellationToken.None)!.Best;
            RunQuantity quantity = fault == RunFault.CloggedFilter ? RunQuantity.FilterLoss : RunQuantity.RailSensor;
            Assert.Equal(fault == RunFault.CloggedFilter ? 10 : 60e3, fit.Value(quantity), fit.Error(quantity));
        }

        Assert.True(findings.IsComplete);

        // All eleven were tried, in the order of their probability; no evidence is under nought.
        Assert.Equal(11, findings.Faults.Count);
        Assert.Equal(findings.Faults.OrderByDescending(one => one.Probability).Select(one => one.Fault), findings.Faults.Select(one => one.Fault));
        Assert.All(findings.Faults, one => Assert.True(one.Evidence >= 0));
        Assert.Equal([findings.Faults[0].Change], findings.WhatToChange.Where(change => change.Code is not "remedy.lean" and not "remedy.duty-cycle-run"));
    }

    [Theory]
    [MemberData(nameof(Faults))]
    public void Evidence_IsWhatTheFaultTakesOffTheCost(RunFault fault, string size)
    {
        Assert.NotEmpty(size);
        RunModel model = PulledWren.Check.Model(RunWith(fault));
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.Check, model, null, CancellationToken.None)!;
        Suspect likeliest = diagnosis.Suspects[0];
        Assert.Equal(fault, likeliest.Fault);
        Assert.Equal(fault, diagnosis.Likeliest);
        Assert.Same(model, diagnosis.Model);
        Assert.Same(likeliest.Fit, diagnosis.Best);
        Hypothesis alone = diagnosis.Hypotheses.First(one => one.Fault == fault && one.Second is null && one.Fit is not null);
        Assert.Equal(2 * alone.LogFactor, likeliest.Evidence, 1e-9);
        Assert.Same(alone.Fit, likeliest.Fit);

        // The best fit leaves hardly any scatter, so that evidence counts in full.
        Assert.InRange(likeliest.Fit!.Cost, 0, 25);
        Assert.Equal(1, diagnosis.Lack);
        Assert.Empty(diagnosis.Rivals);
    }

    /// <summary>Nothing off, nothing found: the sound fit is the best.</summary>
    [Fact]
    public void SoundCar_HasNoFault()
    {
        RunModel model = PulledWren.Check.Model(Sound);
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.Check, model, null, CancellationToken.None)!;
        Assert.Equal(RunFault.None, diagnosis.Likeliest);
        Assert.Same(diagnosis.Sound, diagnosis.Best);
        Assert.All(diagnosis.Suspects, one => Assert.InRange(one.Probability, 0, 0.05));
        Assert.InRange(diagnosis.NoFault, 0.9, 1);
        Assert.Empty(diagnosis.Rivals);
        Assert.Null(diagnosis.Second);
        Assert.Equal(1, diagnosis.Lack);
    }

    /// <summary>A gain of 3.2, a little over three tolerances off: evidence for it, but not the 14 that name a fault; what is best known is the sound fit.</summary>
    [Fact]
    public void GainALittleOff_IsNoFault()
    {
        FuelSystem car = PulledWren.Plan.With(RisingRate.From(Wren.Kpa(300), 3.19, Wren.Kpa(20)));
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.Check, PulledWren.Check.Model(ExactRun.Of(car)), null, CancellationToken.None)!;
        Assert.Equal(RunFault.None, diagnosis.Likeliest);
        Assert.InRange(diagnosis.NoFault, 0.1, 1);
        Assert.Same(diagnosis.Sound, diagnosis.Best);
        Assert.Empty(diagnosis.Rivals);
    }

    /// <summary>Where a plan has capacity, the sound fit is tried from the best of the pump's starts too, and the cheaper of both counts.</summary>
    [Theory]
    [InlineData(RunFault.WeakPump)]
    [InlineData(RunFault.VoltageDrop)]
    [InlineData(RunFault.CloggedFilter)]
    public void SoundFit_IsTheCheaperOfTwoStarts(RunFault fault)
    {
        RunCheck check = PumpSurfaceTests.Ample;
        RunModel model = check.Model(ExactRun.Of(PumpSurfaceTests.Off(fault)));
        RunFit plain = RunFit.From(model, new double[RunModel.Quantities]);
        RunFit[] started = [.. PumpStarts.Of(check, model, plain).Select(start =>
        {
            double[] from = new double[RunModel.Quantities];
            from[(int)start.Key] = start.Value;
            return RunFit.From(model, from, start.Key);
        })];
        RunFit other = RunFit.From(model, started.MinBy(fit => fit.Cost)!.Off);
        Diagnosis diagnosis = Diagnosis.Of(check, model, null, CancellationToken.None)!;
        double cheaper = Math.Min(plain.Cost, other.Cost);
        Assert.InRange(diagnosis.Sound.Cost, cheaper - 0.1, 1.02 * cheaper);
        Assert.NotEqual(plain.Cost, other.Cost, 0.01);
        Assert.Equal(fault, diagnosis.Suspects[0].Fault);
    }

    /// <summary>A pump, a feed or a filter better than planned is no fault of it.</summary>
    [Fact]
    public void PumpBetterThanPlanned_IsNoWeakPump()
    {
        FuelSystem plan = PulledWren.Plan;
        FuelSystem car = plan.With(((FuelSizing.Pumps.Pump)plan.Pump).WithCondition(Ratio.FromPercent(100 * 0.9 * 1.1)));
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.Check, PulledWren.Check.Model(ExactRun.Of(car)), null, CancellationToken.None)!;
        Assert.True(diagnosis.Sound.Value(RunQuantity.PumpFlow) > 0.02);
        Assert.Equal(0, diagnosis.Suspects.Single(one => one.Fault == RunFault.WeakPump).Evidence);
        Assert.Equal(0, diagnosis.Suspects.Single(one => one.Fault == RunFault.CloggedFilter).Evidence);
    }

    /// <summary>
    /// The supply at 12.6 V in every row is 0.9 V under the planned 13.5 V, three tolerances of 0.3 V, and 1.4 deviations of 0.5 V off the 1.6 V of a
    /// supply that fails: twice ln of the two densities' ratio is 3² − 1.4² + 2 ln(0.3/0.5) = 6.02. At 12.3 V it is 4² − 0.8² + 2 ln 0.6 = 14.34, which
    /// names the fault; over the planned it is none.
    /// </summary>
    [Theory]
    [InlineData(12.6, 6.018, RunFault.None)]
    [InlineData(12.3, 14.338, RunFault.VoltageDrop)]
    [InlineData(14.1, 0, RunFault.None)]
    public void LowSupply_IsReadOffItsChannel(double volts, double evidence, RunFault named)
    {
        RecordedRun run = RunOf(Rows(8).Select(cells => cells with { Volts = Wren.Volt(volts) }));
        RunFindings findings = RunFindings.Of(PulledWren.Check, run);
        FaultFinding drop = findings.Faults.Single(one => one.Fault == RunFault.VoltageDrop);
        Assert.Equal(evidence, drop.Evidence, 0.01);
        Assert.Equal(named, findings.Fault);
        if (evidence > 0)
        {
            Assert.Equal("the supply is lower than the planned 13.5 V", drop.Size.ToString());
        }
    }

    /// <summary>Four points with a voltage show the supply, three do not.</summary>
    [Theory]
    [InlineData(4, 14.338)]
    [InlineData(3, 0)]
    public void LowSupply_NeedsFourPoints(int points, double evidence)
    {
        RecordedRun run = RunOf(Rows(8).Select((cells, i) => cells with { Volts = i < points ? Wren.Volt(12.3) : null }));
        Assert.Equal(evidence, RunFindings.Of(PulledWren.Check, run).Faults.Single(one => one.Fault == RunFault.VoltageDrop).Evidence, 0.01);
    }

    /// <summary>
    /// At rest the manifold reads 5 kPa over the barometer: five accuracies of 1 kPa, and 1.375 deviations of 4 kPa off the 10.5 kPa of a sensor that is off,
    /// one way of two. Twice ln of the densities' ratio is 5² − 1.375² + 2 ln(1/4) − 2 ln 2 = 18.95.
    /// </summary>
    [Theory]
    [InlineData(5, 18.950, "+5 kPa")]
    [InlineData(-5, 18.950, "−5 kPa")]
    public void ManifoldSensor_IsReadOffTheEngineAtRest(double off, double evidence, string words)
    {
        Cells rest = new() { Speed = RotationalSpeed.Zero, Manifold = PulledWren.Air.Pressure + Wren.Kpa(off), Time = Duration.FromSeconds(0) };
        RecordedRun run = RecordedRun.Of(
            "rest",
            PulledWren.Air,
            [
                .. Enumerable.Range(1, 6).Select(i => (rest with { Time = Duration.FromSeconds(i - 10) }).Row(i)),
                .. Rows(8).Select((cells, i) => (cells with { Manifold = cells.Manifold + Wren.Kpa(off) }).Row(i + 7)),
            ]);
        RunFindings findings = RunFindings.Of(PulledWren.Check, run);
        Assert.Equal(RunFault.ManifoldSensorOffset, findings.Fault);
        Assert.Equal(evidence, findings.Faults[0].Evidence, 0.01);
        Assert.Equal($"manifold pressure reads {words} with the engine at rest", findings.Faults[0].Size.ToString());
        Assert.Equal("Compare the manifold sensor with the barometer at rest, and correct or change it.", Assert.Single(findings.WhatToChange).ToString());
    }

    /// <summary>What may be wrong of a run without rail pressure, without a meter, without lambda, and of a regulator without an onset.</summary>
    [Fact]
    public void Faults_ThatTheChannelsCannotShow_AreNotTried()
    {
        Assert.Equal(
            [RunFault.VoltageDrop, RunFault.WrongInjectorSize, RunFault.AirOffPlan, RunFault.FlowMeterOff],
            Tried(PulledWren.Check, cells => cells with { Rail = null }));
        Assert.Equal(
            [
                RunFault.WeakPump, RunFault.VoltageDrop, RunFault.CloggedFilter, RunFault.WrongBasePressure, RunFault.WrongGain, RunFault.WrongOnset, RunFault.WrongInjectorSize,
                RunFault.AirOffPlan, RunFault.RailSensorOffset, RunFault.ManifoldSensorOffset,
            ],
            Tried(PulledWren.Check, cells => cells with { Flow = null }));
        Assert.Equal(
            [
                RunFault.WeakPump, RunFault.VoltageDrop, RunFault.CloggedFilter, RunFault.WrongBasePressure, RunFault.WrongGain, RunFault.WrongOnset,
                RunFault.RailSensorOffset, RunFault.ManifoldSensorOffset,
            ],
            Tried(PulledWren.Check, cells => cells with { Flow = null, Lambda = null }));
        Assert.Equal(
            [
                RunFault.WeakPump, RunFault.VoltageDrop, RunFault.CloggedFilter, RunFault.WrongBasePressure, RunFault.WrongGain, RunFault.WrongOnset,
                RunFault.AirOffPlan, RunFault.RailSensorOffset, RunFault.ManifoldSensorOffset,
            ],
            Tried(PulledWren.Check, cells => cells with { Pulse = null }));
        Assert.Equal(
            [
                RunFault.WeakPump, RunFault.VoltageDrop, RunFault.CloggedFilter, RunFault.WrongBasePressure, RunFault.WrongGain, RunFault.WrongOnset, RunFault.WrongInjectorSize,
                RunFault.RailSensorOffset, RunFault.ManifoldSensorOffset, RunFault.FlowMeterOff,
            ],
            Tried(PulledWren.Check, cells => cells with { Lambda = null }));
        Assert.DoesNotContain(
            RunFault.WrongOnset,
            Tried(RunCheck.Of(PulledWren.Plan.With(ManifoldReferenced.From(Wren.Kpa(300))), Wren.Hill), cells => cells));

        static IEnumerable<RunFault> Tried(RunCheck check, Func<Cells, Cells> change) =>
            RunFindings.Of(check, ExactRun.Changed(Sound, (cells, _) => change(cells))).Faults.Select(one => one.Fault).Order();
    }

    /// <summary>Shares that rise from nought to all, and never fall; stopped at any of them there is no diagnosis.</summary>
    [Theory]
    [InlineData(RunFault.None)]
    [InlineData(RunFault.WrongGain)]
    [InlineData(RunFault.WeakPump)]
    public void Diagnosis_TellsHowFarItIs_AndStops(RunFault fault)
    {
        RunModel model = PulledWren.Check.Model(fault == RunFault.None ? Sound : RunWith(fault));
        List<double> shares = [];
        Assert.NotNull(Diagnosis.Of(PulledWren.Check, model, new Told(share => shares.Add(share)), CancellationToken.None));
        Assert.Equal(Enumerable.Range(0, shares.Count).Select(i => i / 16.0), shares);
        Assert.InRange(shares.Count, fault == RunFault.None ? 0 : 1, 15);
        for (int stop = 0; stop < shares.Count; stop++)
        {
            using CancellationTokenSource source = new();
            int told = 0;
            int at = stop;
            Assert.Null(Diagnosis.Of(
                PulledWren.Check,
                model,
                new Told(_ =>
                {
                    if (told++ == at)
                    {
                        source.Cancel();
                    }
                }),
                source.Token));
            Assert.Equal(stop + 1, told);
        }
    }

    /// <summary>
    /// Injectors of 80 % of their size and a meter that reads 18 % high together look like more air: by the meter and by the pulse as much more fuel than there
    /// was. Both are named, whichever is the likelier.
    /// </summary>
    [Fact]
    public void TwoFaultsThatLookLikeAThird_AreNamed()
    {
        FuelSystem car = PulledWren.Plan.With(PulledWren.Plan.Injectors.Scaled(0.8));
        RunModel model = PulledWren.DefaultCheck.Model(ExactRun.Changed(ExactRun.Of(car), (cells, _) => cells with { Flow = cells.Flow * 1.18, Power = null }));
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.DefaultCheck, model, null, CancellationToken.None)!;
        Hypothesis[] pairs = [.. diagnosis.Hypotheses.Where(one => one.Second is not null)];
        Assert.Equal(pairs.Length, pairs.Select(pair => (Min(pair), Max(pair))).Distinct().Count());
        Assert.Contains(pairs, pair => (Min(pair), Max(pair)) == (RunFault.WrongInjectorSize, RunFault.FlowMeterOff));
        RunFault[] named = [diagnosis.Likeliest, .. diagnosis.Second is { } second ? (RunFault[])[second] : [], .. diagnosis.Rivals.Select(rival => rival.Fault)];
        Assert.Contains(RunFault.WrongInjectorSize, named);
        Assert.Contains(RunFault.FlowMeterOff, named);

        static RunFault Min(Hypothesis pair) => pair.Fault < pair.Second!.Value ? pair.Fault : pair.Second.Value;
        static RunFault Max(Hypothesis pair) => pair.Fault < pair.Second!.Value ? pair.Second.Value : pair.Fault;
    }

    /// <summary>
    /// Three points in four fifths of the tolerances off at random: much more scatter than stated, which divides all evidence; if nothing is
    /// named although it is more than twice, the fault is unexplained.
    /// </summary>
    [Fact]
    public void Scatter_OverTheStated_DividesTheEvidence()
    {
        RecordedRun wild = ExactRun.Changed(
            Sound, (cells, i) => cells with { Rail = cells.Rail + Wren.Kpa(i % 2 == 0 ? 14 : -14), Power = Power.FromWatts((double)cells.Power!.Value.Watts * (i % 4 < 2 ? 1.06 : 0.94)) });
        RunModel model = PulledWren.Check.Model(wild);
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.Check, model, null, CancellationToken.None)!;
        double best = diagnosis.Hypotheses.Min(one => one.Fit?.Cost ?? diagnosis.Sound.Cost);
        Assert.True(best / model.Comparisons > 2);
        Assert.Equal(best / model.Comparisons, diagnosis.Lack, 1e-9);

        RunFindings findings = RunFindings.Of(PulledWren.Check, wild);
        Assert.Equal(RunFault.Unexplained, findings.Fault);
        Assert.Equal(
            "Do not run the car harder. Look for more than one fault, and for a wrong figure in the plan.", findings.WhatToChange[^1].ToString());
        Assert.Contains(
            findings.Notes,
            note => note.ToString() == FormattableString.Invariant(
                $"the run scatters {Math.Sqrt(diagnosis.Lack):0.0} times as much as the stated accuracy allows; evidence was scaled down for it"));
        Assert.Contains(
            findings.Judgements, one => one.ToString() == "faults: off the plan, and no single fault explains it");
    }

    internal static RecordedRun RunWith(RunFault fault)
    {
        FuelSystem plan = PulledWren.Plan;
        FuelSizing.Pumps.Pump pump = (FuelSizing.Pumps.Pump)plan.Pump;
        return fault switch
        {
            RunFault.WeakPump => ExactRun.Of(plan.With(pump.WithCondition(Ratio.FromPercent(0.7 * 90)))),
            RunFault.VoltageDrop => ExactRun.Of(plan.With(pump.WithFeed(pump.Feed!.Plus(0.15)))),
            RunFault.CloggedFilter => ExactRun.Of(MeasuredCar.Filtering(plan, 10)),
            RunFault.WrongGain => ExactRun.Of(plan.With(RisingRate.From(Wren.Kpa(300), 3.6, Wren.Kpa(20)))),
            RunFault.WrongOnset => ExactRun.Of(plan.With(RisingRate.From(Wren.Kpa(300), 3, Wren.Kpa(35)))),
            RunFault.WrongBasePressure => ExactRun.Of(plan.With(RisingRate.From(Wren.Kpa(345), 3, Wren.Kpa(20)))),
            RunFault.WrongInjectorSize => ExactRun.Of(plan.With(plan.Injectors.Scaled(1.15))),

            // Less air at the same lambda is less fuel and less power.
            RunFault.AirOffPlan => ExactRun.Of(plan.With(plan.Demand.With(
                plan.Demand.VolumetricEfficiency.Scaled(0.85), plan.Demand.MeasuredPower, plan.Demand.Consumption))),
            RunFault.RailSensorOffset => ExactRun.Changed(Sound, (cells, _) => cells with { Rail = cells.Rail + Wren.Kpa(60) }),
            RunFault.FlowMeterOff => ExactRun.Changed(Sound, (cells, _) => cells with { Flow = cells.Flow * 1.12 }),
            _ => Sound,
        };
    }

    /// <summary>The rows of the first voltage with boost, so few that no pump is ever the limit.</summary>
    private static Cells[] Rows(int count) => [.. Sound.Rows.Skip(8).Take(count).Select(Cells.Of)];

    private static RecordedRun RunOf(IEnumerable<Cells> cells) => RecordedRun.Of("rows", PulledWren.Air, cells.Select((one, i) => one.Row(i + 1)));

    private static RunQuantity Quantity(RunFault fault) => fault switch
    {
        RunFault.WeakPump => RunQuantity.PumpFlow,
        RunFault.CloggedFilter => RunQuantity.FilterLoss,
        RunFault.WrongBasePressure => RunQuantity.RegulatorBase,
        RunFault.WrongGain => RunQuantity.RegulatorGain,
        RunFault.WrongOnset => RunQuantity.RegulatorOnset,
        RunFault.WrongInjectorSize => RunQuantity.InjectorFlow,
        RunFault.AirOffPlan => RunQuantity.VolumetricEfficiency,
        RunFault.RailSensorOffset => RunQuantity.RailSensor,
        RunFault.FlowMeterOff => RunQuantity.FlowMeter,
        _ => throw new ArgumentOutOfRangeException(nameof(fault)),
    };

    private sealed class Told(Action<double> tell) : IProgress<Ratio>
    {
        public void Report(Ratio value) => tell(value.DecimalFractions);
    }
}
