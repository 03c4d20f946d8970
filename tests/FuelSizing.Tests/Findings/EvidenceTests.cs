using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>
/// The probability of a run under a hypothesis, everything that may be off averaged over, against the closed form of a linear model: what the comparisons
/// say of one quantity is a normal distribution, and its product with a normal prior integrates to a normal density.
/// </summary>
public class EvidenceTests
{
    [Theory]
    [InlineData(nameof(RunQuantity.FlowMeter), 15, 6)]
    [InlineData(nameof(RunQuantity.FlowMeter), 3, 1)]
    [InlineData(nameof(RunQuantity.FlowMeter), -4, 0.5)]
    [InlineData(nameof(RunQuantity.VolumetricEfficiency), 4, 2)]
    [InlineData(nameof(RunQuantity.BrakeSpecificFuelConsumption), 2, 3)]
    public void LogEvidence_OfALinearModel_IsTheClosedForm(string name, double mean, double deviation)
    {
        RunQuantity quantity = Enum.Parse<RunQuantity>(name);
        RunModel model = PulledWren.DefaultCheck.Model(ExactRun.Changed(
            ExactRun.Of(PulledWren.Plan), (cells, _) => cells with { Flow = cells.Flow * 1.01, Rail = null }));
        double[] nothing = new double[RunModel.Quantities];
        RunFit sound = RunFit.From(model, nothing);
        RunFit under = RunFit.From(model, nothing, [new Freed(quantity, mean, deviation)]);

        // Free, the comparisons alone are left.
        RunFit free = RunFit.From(model, nothing, quantity);
        double said = free.Off[(int)quantity];
        double variance = free.Covariance[(int)quantity, (int)quantity];
        double expected = Normal.PDFLn(mean, Math.Sqrt((deviation * deviation) + variance), said) - Normal.PDFLn(0, Math.Sqrt(1 + variance), said);
        Assert.Equal(expected, under.LogEvidence - sound.LogEvidence, 0.02 * (1 + Math.Abs(expected)));
    }

    /// <summary>A run of fuel flow, pulse, lambda and power alone, whose comparisons are linear in what is off; the meter reads 1 % high, lambda 1 % rich.</summary>
    private static readonly RunModel Linear = PulledWren.DefaultCheck.Model(ExactRun.Changed(
        ExactRun.Of(PulledWren.Plan), (cells, _) => cells with { Flow = cells.Flow * 1.01, Lambda = 0.99 * cells.Lambda, Rail = null }));

    public static TheoryData<int, double, double, bool> Priors => new()
    {
        { (int)RunQuantity.FlowMeter, 0.03, 0.02, true }, { (int)RunQuantity.FlowMeter, -0.03, 0.02, false }, { (int)RunQuantity.FlowMeter, 0.12, 0.03, false },
        { (int)RunQuantity.VolumetricEfficiency, 0.04, 0.03, true }, { (int)RunQuantity.VolumetricEfficiency, 0.06, 0.02, false }, { (int)RunQuantity.InjectorFlow, 0.05, 0.03, true },
    };

    /// <summary>
    /// What a fault is expected to explain, and where its fit would be, from the sound fit alone: of a linear model it is what the fit with the fault's own prior finds.
    /// Of a fault that may go either way it is the better of the two, one way of two.
    /// </summary>
    [Theory]
    [MemberData(nameof(Priors))]
    public void Expected_OfALinearModel_IsWhatTheFitFinds(int quantity, double mean, double deviation, bool either)
    {
        RunFit sound = RunFit.From(Linear, new double[RunModel.Quantities]);
        FaultPrior prior = new(RunFault.Unexplained, (RunQuantity)quantity, mean, deviation, either);
        (int Sign, RunFit Fit)[] fits =
            [.. (either ? (int[])[1, -1] : [1]).Select(sign => (sign, RunFit.From(Linear, new double[RunModel.Quantities], [prior.In(Linear, sign)])))];
        (int sign, RunFit best) = fits.MaxBy(one => one.Fit.LogEvidence);
        (FaultPrior of, int found, double log) = Diagnosis.Expected(sound, prior);
        Assert.Same(prior, of);
        Assert.Equal(sign, found);
        Assert.Equal(best.LogEvidence - sound.LogEvidence - (either ? Math.Log(2) : 0), log, 0.02 * (1 + Math.Abs(log)));
        foreach ((int way, RunFit fit) in fits)
        {
            double[] start = Diagnosis.Start(sound, prior.In(Linear, way));
            Assert.All(Enumerable.Range(0, RunModel.Quantities), i => Assert.Equal(fit.Off[i], start[i], 0.03));
        }
    }

    /// <summary>The same of two faults at once, each by its prior.</summary>
    [Theory]
    [InlineData(true, true)]
    [InlineData(true, false)]
    [InlineData(false, false)]
    public void Together_OfALinearModel_IsWhatTheFitOfBothFinds(bool firstEither, bool secondEither)
    {
        RunFit sound = RunFit.From(Linear, new double[RunModel.Quantities]);
        FaultPrior first = new(RunFault.FlowMeterOff, RunQuantity.FlowMeter, 0.03, 0.02, firstEither);
        FaultPrior second = new(RunFault.AirOffPlan, RunQuantity.VolumetricEfficiency, 0.05, 0.03, secondEither);
        Diagnosis.Pair pair = Diagnosis.Together(sound, first, second);
        (int First, int Second, RunFit Fit)[] fits =
        [
            .. from one in firstEither ? (int[])[1, -1] : [1]
               from other in secondEither ? (int[])[1, -1] : [1]
               select (one, other, RunFit.From(Linear, new double[RunModel.Quantities], [first.In(Linear, one), second.In(Linear, other)])),
        ];
        (int First, int Second, RunFit Fit) best = fits.MaxBy(one => one.Fit.LogEvidence);
        Assert.Equal((best.First, best.Second), (pair.FirstSign, pair.SecondSign));
        Assert.Equal((first, second), (pair.First, pair.Second));
        double ways = fits.Length;
        Assert.Equal(best.Fit.LogEvidence - sound.LogEvidence - Math.Log(ways), pair.Log, 0.02 * (1 + Math.Abs(pair.Log)));
        Assert.All(Enumerable.Range(0, RunModel.Quantities), i => Assert.Equal(best.Fit.Off[i], pair.Start[i], 0.03));
    }

    /// <summary>Of what no comparison says anything, no fault explains anything: a base pressure without a rail.</summary>
    [Fact]
    public void Expected_OfWhatTheRunDoesNotShow_IsNothing()
    {
        RunFit sound = RunFit.From(Linear, new double[RunModel.Quantities]);
        FaultPrior prior = new(RunFault.WrongBasePressure, RunQuantity.RegulatorBase, 42e3, 15e3, true);
        Assert.Equal((prior, 1, 0.0), Diagnosis.Expected(sound, prior));
    }

    public static TheoryData<string> Diagnosed => ["weak pump and injectors", "injectors and meter", "more scatter than stated", "a supply that sags"];

    /// <summary>
    /// Bayes' theorem by hand over all that was tried: sound a half, one fault 45 % over the kinds of them, and of one with two ways half of that each, two faults 5 %
    /// over the pairs; each times what it makes the run more probable than a sound car does, of which scatter over the stated takes its share.
    /// </summary>
    [Theory]
    [MemberData(nameof(Diagnosed))]
    public void Probabilities_AreThoseOfBayesTheorem(string kind)
    {
        FuelSystem plan = PulledWren.Plan;
        RecordedRun run = kind switch
        {
            "weak pump and injectors" => ExactRun.Of(
                plan.With(plan.Injectors.Scaled(1.16)).With(((FuelSizing.Pumps.Pump)plan.Pump).WithCondition(Ratio.FromPercent(0.6 * 90)))),
            "injectors and meter" => ExactRun.Changed(ExactRun.Of(plan.With(plan.Injectors.Scaled(0.8))), (cells, _) => cells with { Flow = cells.Flow * 1.18, Power = null }),
            "a supply that sags" => ExactRun.Changed(ExactRun.Of(plan), (cells, _) => cells with { Volts = Wren.Volt(12.55) }),
            _ => ExactRun.Changed(ExactRun.Of(plan), (cells, i) => cells with { Rail = cells.Rail + Wren.Kpa(i % 2 == 0 ? 14 : -14) }),
        };
        RunModel model = PulledWren.DefaultCheck.Model(run);
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.DefaultCheck, model, null, CancellationToken.None)!;
        Hypothesis[] all = [.. diagnosis.Hypotheses];
        RunFault[] kinds = [.. all.Where(one => one.Second is null).Select(one => one.Fault).Distinct()];
        Assert.Equal(11, kinds.Length);
        double[] weights = [.. all.Select(one =>
        {
            double prior = one.Second is null ? 0.45 / 11 / all.Count(other => other.Second is null && other.Fault == one.Fault) : 0.05 / 55;
            return prior * Math.Exp(one.LogDirect + (one.LogFactor / diagnosis.Lack));
        })];
        double sum = 0.5 + weights.Sum();
        double Of(Func<Hypothesis, bool> which) => all.Zip(weights).Where(one => which(one.First)).Sum(one => one.Second) / sum;
        Assert.Equal(0.5 / sum, diagnosis.NoFault, 1e-9);
        Assert.Equal(kinds.Order(), diagnosis.Suspects.Select(one => one.Fault).Order());
        Assert.All(diagnosis.Suspects, one => Assert.Equal(Of(h => h.Fault == one.Fault || h.Second == one.Fault), one.Probability, 1e-9));
        Assert.Equal(diagnosis.Suspects.OrderByDescending(one => one.Probability), diagnosis.Suspects);

        // Twice ln of the Bayes factor of its likeliest way, none under nought.
        Assert.All(diagnosis.Suspects, one => Assert.Equal(
            Math.Max(0, 2 * all.Where(h => h.Second is null && h.Fault == one.Fault).Max(h => h.LogDirect + (h.LogFactor / diagnosis.Lack))), one.Evidence, 1e-9));

        // A fault is named where any is there with 90 %; a second where two are likelier than one.
        Assert.Equal(diagnosis.NoFault <= 0.1 ? diagnosis.Suspects[0].Fault : RunFault.None, diagnosis.Likeliest);
        double pairs = Of(one => one.Second is not null);
        bool two = diagnosis.Likeliest != RunFault.None && pairs > 1 - diagnosis.NoFault - pairs;
        Assert.Equal(two, diagnosis.Second is not null);
        if (two)
        {
            Hypothesis pair = all.Zip(weights).Where(one => one.First.Second is not null
                && new[] { one.First.Fault, one.First.Second!.Value }.Contains(diagnosis.Likeliest)).MaxBy(one => one.Second).First;
            Assert.Equal(new[] { pair.Fault, pair.Second!.Value }.Order(), new[] { diagnosis.Likeliest, diagnosis.Second!.Value }.Order());
            Assert.Same(pair.Fit, diagnosis.Best);
        }
        else
        {
            Assert.Same(diagnosis.Likeliest == RunFault.None ? diagnosis.Sound : diagnosis.Suspects[0].Fit ?? diagnosis.Sound, diagnosis.Best);
        }

        // What was fitted is as probable as the fit says, one way of two where a fault may go either way.
        foreach (Hypothesis one in all.Where(one => one.Fit is not null && one.LogDirect == 0))
        {
            int ways = new RunFault?[] { one.Fault, one.Second }.Count(fault => fault is not null and not RunFault.WeakPump and not RunFault.VoltageDrop and not RunFault.CloggedFilter);
            Assert.Equal(one.Fit!.LogEvidence - diagnosis.Sound.LogEvidence - (ways * Math.Log(2)), one.LogFactor, 1e-9);
        }

        Assert.Equal(kind is "weak pump and injectors" or "injectors and meter", two);
        Assert.Equal(kind is "more scatter than stated", diagnosis.Lack > 1.5);
    }

    /// <summary>Of a run just as planned: probabilities of sound, single faults and pairs are one together, and sound is likelier than before the run.</summary>
    [Fact]
    public void Probabilities_OfASoundRun_AreOneTogether()
    {
        RunModel model = PulledWren.DefaultCheck.Model(ExactRun.Of(PulledWren.Plan));
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.DefaultCheck, model, null, CancellationToken.None)!;
        double pairs = diagnosis.Suspects.Sum(one => one.Probability) - (1 - diagnosis.NoFault);

        // A pair counts in both its faults.
        Assert.InRange(pairs, -1e-9, 0.05);
        Assert.InRange(diagnosis.NoFault, FaultPrior.Sound, 1);
        Assert.Equal(RunFault.None, diagnosis.Likeliest);
    }

    /// <summary>
    /// A pump at 60 % and injectors of 116 % at once: both are named, and the pair is as probable as by a fit with the priors of the page, 62 to 84 % of a weak pump's
    /// flow, which is never more for being weak, and 19 % more of the injectors', one way of two.
    /// </summary>
    [Fact]
    public void WeakPumpWithAnother_IsWeakInBoth()
    {
        FuelSystem plan = PulledWren.Plan;
        FuelSystem car = plan.With(plan.Injectors.Scaled(1.16)).With(((FuelSizing.Pumps.Pump)plan.Pump).WithCondition(Ratio.FromPercent(0.6 * 90)));
        RunModel model = PulledWren.DefaultCheck.Model(ExactRun.Of(car));
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.DefaultCheck, model, null, CancellationToken.None)!;
        Assert.Equal(RunFault.WeakPump, diagnosis.Hypotheses.Where(one => one.Second is null && one.Fit is not null).MaxBy(one => one.LogFactor)!.Fault);
        Hypothesis both = diagnosis.Hypotheses.Single(one => one.Second is { } second
            && new[] { one.Fault, second }.Order().SequenceEqual([RunFault.WeakPump, RunFault.WrongInjectorSize]));
        RunFit fit = RunFit.From(
            model, both.Fit!.Off, [new Freed(RunQuantity.PumpFlow, -0.32 / 0.03, 0.15 / 0.03), new Freed(RunQuantity.InjectorFlow, 0.19 / 0.015, 0.06 / 0.015)]);
        Assert.Equal(fit.LogEvidence - diagnosis.Sound.LogEvidence - Math.Log(2), both.LogFactor, 0.1);
        Assert.Equal([RunFault.WeakPump, RunFault.WrongInjectorSize], new[] { diagnosis.Likeliest, diagnosis.Second!.Value }.Order());
    }

    /// <summary>Pumps that never reach the base pressure have nothing return, so that a regulator's slope shows nowhere; the run is compared all the same.</summary>
    [Fact]
    public void PumpsThatNeverReachTheBase_LeaveNoShareToReturn()
    {
        FuelSystem plan = PulledWren.Plan;
        RunCheck check = RunCheck.Of(plan.With(RisingRate.From(Wren.Kpa(900), 3, Wren.Kpa(20))), Wren.Hill);
        RunModel model = check.Model(ExactRun.Of(plan));
        Assert.All(model.Inputs, input => Assert.Equal(0, input.InjectedShare));
        RunFit fit = RunFit.From(model, new double[RunModel.Quantities]);
        Assert.True(double.IsFinite(fit.Cost));
        Assert.All(fit.Off, off => Assert.True(double.IsFinite(off)));
    }

    /// <summary>
    /// Air at one place: with boost of 100 kPa and the correlation that a run leaves (air and its slope over boost, −0.8 of each other), what was measured there
    /// together is known better than either: variance 1 + 1 − 2 · 0.8.
    /// </summary>
    [Fact]
    public void Posterior_AtAPlace_HasWhatWasMeasuredTogether()
    {
        RunCheck check = PulledWren.DefaultCheck;
        RunModel model = check.Model(ExactRun.Of(PulledWren.Plan));
        double[] off = new double[RunModel.Quantities];
        (int air, int slope) = ((int)RunQuantity.VolumetricEfficiency, (int)RunQuantity.AirByBoost);
        (off[air], off[slope]) = (1, -2);
        var covariance = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseIdentity(RunModel.Quantities) * 1e-12;
        (double ofAir, double ofSlope) = (1 / 0.025, 1 / 0.04);
        (covariance[air, air], covariance[slope, slope]) = (ofAir * ofAir, ofSlope * ofSlope);
        covariance[air, slope] = covariance[slope, air] = -0.8 * ofAir * ofSlope;
        RunPosterior at = new RunPosterior(off, covariance).At(check, model, new(100, 100e3, -1 / 320.0, 0));
        Assert.Equal((0.025 - (2 * 0.04)) / 0.025, at.Off[air], 1e-9);
        Assert.Equal((1 + 1 - (2 * 0.8)) * ofAir * ofAir, at.Covariance[air, air], 1e-6);
        Assert.Equal(off[slope], at.Off[slope]);
    }

    /// <summary>The regulator is lower by the injected share of its slope, and half of the fuel's density is injectors' flow by mass.</summary>
    [Fact]
    public void Posterior_AtAPlace_HasTheSlopeInTheBase()
    {
        RunCheck check = PulledWren.DefaultCheck;
        RunModel model = check.Model(ExactRun.Of(PulledWren.Plan));
        double[] off = new double[RunModel.Quantities];
        (off[(int)RunQuantity.RegulatorSlope], off[(int)RunQuantity.FuelDensity]) = (1, 1);
        RunPosterior at = new RunPosterior(off, MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseIdentity(RunModel.Quantities))
            .At(check, model, new(100, 0, -1 / 320.0, 0.5));
        Assert.Equal(-0.5 * 10e3 / 5e3, at.Off[(int)RunQuantity.RegulatorBase], 1e-9);
        Assert.Equal(0.5 * 0.008 / 0.015, at.Off[(int)RunQuantity.InjectorFlow], 1e-9);
    }
}
