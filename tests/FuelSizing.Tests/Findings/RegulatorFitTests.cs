using FuelSizing.Findings;
using MathNet.Numerics.Distributions;

namespace FuelSizing.Tests.Findings;

/// <summary>Base, gain and onset from noisy points, and the runs that do not hold them.</summary>
public class RegulatorFitTests
{
    private const double Noise = 2e3;

    /// <summary>The definition of a 95 % interval: it holds the truth in 95 of 100 runs.</summary>
    [Theory]
    [InlineData(120, 3, 20, 0.0, 0.25)]
    [InlineData(200, 6, 10, 0.04, 0.25)]
    [InlineData(200, 2, 25, 0.04, 0.1)]
    public void Intervals_OfGainAndOnset_HoldTheTruthInNinetyFiveOfAHundredRuns(
        int points, double gain, double onset, double outliers, double boostNoise)
    {
        const int Runs = 1000;
        (int gains, int onsets) = (0, 0);
        for (int seed = 0; seed < Runs; seed++)
        {
            RegulatorFit fit = Fit(seed, points, gain, onset, outliers, boostNoise * 1e3).Answer!;
            gains += fit.Gain.Minimum <= gain && gain <= fit.Gain.Maximum ? 1 : 0;
            onsets += fit.Onset!.Minimum.Kilopascals <= onset && onset <= fit.Onset.Maximum.Kilopascals ? 1 : 0;
        }

        Assert.InRange(gains, 0.93 * Runs, 0.97 * Runs);
        Assert.InRange(onsets, 0.93 * Runs, 0.97 * Runs);
    }

    [Fact]
    public void Points_WithoutNoise_GiveTheRegulatorBack()
    {
        double[] boost = [.. Enumerable.Range(0, 60).Select(i => (-40 + (i * 1.75)) * 1e3)];
        RegulatorFit fit = RegulatorFit.Of(
            boost, Array.ConvertAll(boost, b => Rail(b, 300e3, 4, 17e3)), 0.1, 17e3).Answer!;
        Assert.Equal(RegulatorBehaviour.RisingRate, fit.Behaviour);
        Assert.Equal(300, fit.Base.Value.Kilopascals, 3);
        Assert.Equal(4, fit.Gain.Value, 5);
        Assert.Equal(17, fit.Onset!.Value.Kilopascals, 3);
    }

    /// <summary>
    /// Points just on the regulator's course, few of them at full boost: no scatter is no reason to have no interval. A variance of a rounding
    /// error under zero once made the whole run fail.
    /// </summary>
    [Fact]
    public void Points_WithoutNoise_AtAFewBoosts_HaveAnIntervalOfNoWidth()
    {
        double[] boost = [.. new[] { (-30, 16), (5, 16), (35, 12), (60, 3) }.SelectMany(held => Enumerable.Repeat(held.Item1 * 1e3, held.Item2))];
        RegulatorFit fit = RegulatorFit.Of(boost, Array.ConvertAll(boost, b => Rail(b, 300e3, 3, 20e3)), 0.25, 20e3).Answer!;
        Assert.Equal(300, fit.Base.Value.Kilopascals, 3);
        Assert.Equal(0, (fit.Base.Maximum - fit.Base.Minimum).Pascals, 3);
        Assert.Equal(0, fit.Gain.Maximum - fit.Gain.Minimum, 6);
        Assert.Equal(47, fit.Points);
    }

    [Fact]
    public void GrossOutliers_InATenthOfThePoints_HardlyMoveTheFit()
    {
        RegulatorFit fit = Fit(5, 300, 5, 15, 0.10, 0.2e3).Answer!;
        Assert.InRange(fit.Gain.Value, 4.9, 5.1);
        Assert.InRange(fit.Onset!.Value.Kilopascals, 14, 16);
        Assert.InRange(fit.Outliers, 15, 45);
    }

    [Fact]
    public void ManifoldReferenced_IsSeenAsSuch()
    {
        RegulatorFit fit = Fit(1, 150, 1, 10, 0.03, 0.2e3, plannedOnset: null).Answer!;
        Assert.Equal(RegulatorBehaviour.ManifoldReferenced, fit.Behaviour);
        Assert.InRange(1, fit.Gain.Minimum, fit.Gain.Maximum);
        Assert.Null(fit.Onset);
    }

    [Fact]
    public void Fixed_IsSeenAsSuch()
    {
        Random random = new(2);
        double[] boost = [.. Enumerable.Range(0, 150).Select(_ => ((random.NextDouble() * 100) - 40) * 1e3)];
        RegulatorFit fit = RegulatorFit.Of(
            boost, Array.ConvertAll(boost, _ => 350e3 + Normal.Sample(random, 0, Noise)), 0.1, null).Answer!;
        Assert.Equal(RegulatorBehaviour.Fixed, fit.Behaviour);
        Assert.InRange(350, fit.Base.Minimum.Kilopascals - 0.5, fit.Base.Maximum.Kilopascals + 0.5);
    }

    [Fact]
    public void Boost_AllAboveTheOnset_ShowsTheGainButNoOnset()
    {
        Random random = new(3);
        double[] boost = [.. Enumerable.Range(0, 150).Select(_ => (25 + (random.NextDouble() * 40)) * 1e3)];
        RegulatorFit fit = RegulatorFit.Of(
            boost, Array.ConvertAll(boost, b => Rail(b, 300e3, 4, 10e3) + Normal.Sample(random, 0, Noise)), 0.1, 10e3).Answer!;
        Assert.Equal(RegulatorBehaviour.Proportional, fit.Behaviour);
        Assert.InRange(4, fit.Gain.Minimum - 0.05, fit.Gain.Maximum + 0.05);
        Assert.Null(fit.Onset);
    }

    [Fact]
    public void Boost_AllBelowTheOnset_CannotTellTheGain()
    {
        Random random = new(4);
        double[] boost = [.. Enumerable.Range(0, 150).Select(_ => (-40 + (random.NextDouble() * 50)) * 1e3)];
        Finding<RegulatorFit> finding = RegulatorFit.Of(
            boost, Array.ConvertAll(boost, b => 300e3 + b + Normal.Sample(random, 0, Noise)), 0.1, 20e3);
        Assert.Null(finding.Answer);
        Assert.Contains("boost reached 0.10 bar only", finding.Reason!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Boost_OfOneValueOnly_CannotTell()
    {
        Random random = new(5);
        double[] boost = [.. Enumerable.Range(0, 50).Select(_ => 60e3 + Normal.Sample(random, 0, 500))];
        Finding<RegulatorFit> finding = RegulatorFit.Of(boost, Array.ConvertAll(boost, b => 500e3 + b), 0.1, 20e3);
        Assert.Null(finding.Answer);
        Assert.Contains("boost ran from", finding.Reason!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void SaggingPump_IsNotReadAsALowGain()
    {
        // A pump so weak that the rail sags by up to 200 kPa at full boost.
        PulledWren car = PulledWren.With(RunFault.WeakPump, 3);
        RunFindings findings = RunFindings.Of(PulledWren.Check, car.Recorded(1));
        Assert.True(findings.Sag.Answer!.Maximum.Kilopascals > 100);
        double truth = 3 + car.Off[(int)RunQuantity.RegulatorGain];
        RegulatorFit fit = findings.Regulator.Answer!;
        Assert.Equal(RegulatorBehaviour.RisingRate, fit.Behaviour);
        Assert.InRange(fit.Gain.Value, truth - 0.12, truth + 0.12);
    }

    private static Finding<RegulatorFit> Fit(
        int seed, int points, double gain, double onsetKilopascals, double outliers, double boostNoise, double? plannedOnset = 20e3)
    {
        Random random = new(seed);
        double[] boost = new double[points];
        double[] rail = new double[points];
        for (int i = 0; i < points; i++)
        {
            double b = (-40 + (100 * random.NextDouble())) * 1e3;
            rail[i] = Rail(b, 300e3, gain, onsetKilopascals * 1e3) + Normal.Sample(random, 0, Noise);
            rail[i] += random.NextDouble() < outliers ? 200e3 * (random.NextDouble() - 0.5) : 0;
            boost[i] = b + Normal.Sample(random, 0, boostNoise);
        }

        return RegulatorFit.Of(boost, rail, boostNoise / Noise, plannedOnset);
    }

    private static double Rail(double boost, double atmospheric, double gain, double onset) =>
        atmospheric + Math.Min(boost, onset) + (gain * Math.Max(0, boost - onset));
}
