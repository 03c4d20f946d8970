using FuelSizing.Findings;
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
