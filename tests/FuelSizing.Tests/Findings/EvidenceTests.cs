using FuelSizing.Findings;
using MathNet.Numerics.Distributions;

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

    /// <summary>Bayes' theorem over all hypotheses: probabilities of sound, single faults and pairs are one together, and those of the page before the run.</summary>
    [Fact]
    public void Probabilities_OfARunThatSaysNothing_AreThoseBefore()
    {
        // One voltage, no boost, no flow, no lambda: few comparisons of the rail, all as planned.
        RunModel model = PulledWren.DefaultCheck.Model(ExactRun.Of(PulledWren.Plan));
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.DefaultCheck, model, null, CancellationToken.None)!;
        double pairs = diagnosis.Suspects.Sum(one => one.Probability) - (1 - diagnosis.NoFault);

        // A pair counts in both its faults.
        Assert.InRange(pairs, -1e-9, 0.05);
        Assert.InRange(diagnosis.NoFault, FaultPrior.Sound, 1);
        Assert.Equal(RunFault.None, diagnosis.Likeliest);
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
