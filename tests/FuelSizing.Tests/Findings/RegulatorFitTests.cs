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

    [Theory]
    [InlineData(11, "cannot tell: the regulator governs at 11 points only; at least 12 are needed")]
    [InlineData(12, "manifold-referenced: base 300 kPa, gain 1.00 (1.00 to 1.00)")]
    public void Points_MustBeTwelve(int points, string said)
    {
        double[] boost = [.. Enumerable.Range(0, points).Select(i => 5e3 * i)];
        Assert.Equal(said, RegulatorFit.Of(boost, Array.ConvertAll(boost, b => 300e3 + b), 0.1, null).ToString());
    }

    /// <summary>The two lowest and the two highest boosts do not count; between the others there must be 10 kPa.</summary>
    [Theory]
    [InlineData(9.9, "cannot tell: boost ran from 0.20 bar to 0.30 bar only; a range of at least 10 kPa is needed")]
    [InlineData(10.1, "manifold-referenced: base 300 kPa, gain 1.00 (1.00 to 1.00)")]
    public void Boost_MustSpanTenKilopascals(double range, string said)
    {
        double[] boost = [90e3, .. Enumerable.Range(0, 11).Select(i => 20e3 + (100 * range * i)), -30e3, -20e3, 80e3];
        Assert.Equal(said, RegulatorFit.Of(boost, Array.ConvertAll(boost, b => 300e3 + b), 0.1, null).ToString());
    }

    /// <summary>Slopes within 0.08 of nought or one are taken for it.</summary>
    [Theory]
    [InlineData(0.079, RegulatorBehaviour.Fixed, "fixed: base 300 kPa, gain 0.08 (0.08 to 0.08)")]
    [InlineData(-0.079, RegulatorBehaviour.Fixed, "fixed: base 300 kPa, gain −0.08 (−0.08 to −0.08)")]
    [InlineData(0.081, RegulatorBehaviour.Proportional, "proportional to boost, no onset in the range run: base 300 kPa, gain 0.08 (0.08 to 0.08)")]
    [InlineData(-0.081, RegulatorBehaviour.Proportional, "proportional to boost, no onset in the range run: base 300 kPa, gain −0.08 (−0.08 to −0.08)")]
    [InlineData(0.919, RegulatorBehaviour.Proportional, "proportional to boost, no onset in the range run: base 300 kPa, gain 0.92 (0.92 to 0.92)")]
    [InlineData(0.921, RegulatorBehaviour.ManifoldReferenced, "manifold-referenced: base 300 kPa, gain 0.92 (0.92 to 0.92)")]
    [InlineData(1.079, RegulatorBehaviour.ManifoldReferenced, "manifold-referenced: base 300 kPa, gain 1.08 (1.08 to 1.08)")]
    [InlineData(1.081, RegulatorBehaviour.Proportional, "proportional to boost, no onset in the range run: base 300 kPa, gain 1.08 (1.08 to 1.08)")]
    public void Slope_NearNoughtOrOne_IsTakenForIt(double slope, RegulatorBehaviour behaviour, string said)
    {
        double[] boost = [.. Enumerable.Range(0, 40).Select(i => (-40 + (2.5 * i)) * 1e3)];
        RegulatorFit fit = RegulatorFit.Of(boost, Array.ConvertAll(boost, b => 300e3 + (slope * b)), 0.1, null).Answer!;
        Assert.Equal(behaviour, fit.Behaviour);
        Assert.Equal(slope, fit.Gain.Value, 6);
        Assert.Equal(said, fit.ToString());
        Assert.Equal(40, fit.Points);
        Assert.Equal(0, fit.Outliers);
    }

    /// <summary>A set onset must be passed by 10 kPa before a rail that follows one for one says that there is no gain.</summary>
    [Theory]
    [InlineData(29.9, false)]
    [InlineData(30.1, true)]
    public void Onset_MustBePassedByTenKilopascals(double highest, bool told)
    {
        double[] boost = [.. Enumerable.Range(0, 40).Select(i => (highest - 60 + (1.5 * i)) * 1e3), highest * 1e3, 90e3, 90e3];
        Finding<RegulatorFit> found = RegulatorFit.Of(boost, Array.ConvertAll(boost, b => 300e3 + b), 0.1, 20e3);
        Assert.Equal(told, found.Answer is not null);
        if (!told)
        {
            Assert.Equal(
                "cannot tell: boost reached 0.30 bar only and the gain is set to begin at 0.20 bar; up to there the rail follows the manifold one for one, as it should",
                found.ToString());
        }
    }

    /// <summary>
    /// Intervals are Student's t, of as many degrees of freedom as points less figures, times the standard errors of the regression; about the
    /// value on both sides.
    /// </summary>
    [Fact]
    public void Intervals_AreStudentsTimesTheErrors()
    {
        Random random = new(8);
        double[] boost = [.. Enumerable.Range(0, 24).Select(i => (-40 + (4.2 * i)) * 1e3)];
        double[] noise = [.. boost.Select(_ => Normal.Sample(random, 0, Noise))];
        double[] rail = [.. boost.Zip(noise, (b, off) => Rail(b, 300e3, 4, 15e3) + off)];
        RegulatorFit rising = RegulatorFit.Of(boost, rail, 0.1, 15e3).Answer!;
        KinkFit kink = RobustRegression.Kink(boost, rail, 1, 0.1, 5)!;

        // Of 21 degrees of freedom 2.0796 (any table of t), of 22 2.0739.
        double[] halves = [.. Enumerable.Range(0, 3).Select(i => 2.0796 * Math.Sqrt(kink.Covariance[i, i]))];
        AssertAround(kink.Intercept, halves[0], rising.Base.Value.Pascals, rising.Base.Minimum.Pascals, rising.Base.Maximum.Pascals);
        AssertAround(kink.Gain, halves[1], rising.Gain.Value, rising.Gain.Minimum, rising.Gain.Maximum);
        AssertAround(kink.Onset, halves[2], rising.Onset!.Value.Pascals, rising.Onset.Minimum.Pascals, rising.Onset.Maximum.Pascals);
        Assert.Equal(kink.Scale, rising.Scatter.Pascals, 6);
        Assert.Equal((24, kink.Outliers), (rising.Points, rising.Outliers));
        Assert.Equal(
            FormattableString.Invariant($"rising-rate: base {kink.Intercept / 1e3:0} kPa, gain {kink.Gain:0.00} ({kink.Gain - halves[1]:0.00} to {kink.Gain + halves[1]:0.00}) from {kink.Onset / 1e5:0.00} bar ({(kink.Onset - halves[2]) / 1e5:0.00} bar to {(kink.Onset + halves[2]) / 1e5:0.00} bar)"),
            rising.ToString());

        double[] level = [.. noise.Select(off => 350e3 + off)];
        RegulatorFit flat = RegulatorFit.Of(boost, level, 0.1, null).Answer!;
        LineFit line = RobustRegression.Line(boost, level);
        AssertAround(line.Intercept, 2.0739 * line.InterceptError, flat.Base.Value.Pascals, flat.Base.Minimum.Pascals, flat.Base.Maximum.Pascals);
        AssertAround(line.Slope, 2.0739 * line.SlopeError, flat.Gain.Value, flat.Gain.Minimum, flat.Gain.Maximum);
        Assert.Equal(line.Scale, flat.Scatter.Pascals, 6);

        // Ten times the scatter over a third of the range leaves the gain open.
        double[] near = Array.ConvertAll(boost, b => b / 3);
        double[] wild = [.. noise.Select(off => 350e3 + (10 * off))];
        LineFit open = RobustRegression.Line(near, wild);
        double half = 2.0739 * open.SlopeError;
        Assert.True(half > 0.4);
        Assert.Equal(
            FormattableString.Invariant($"cannot tell: the points scatter so much that the gain is anything from {open.Slope - half:0.0} to {open.Slope + half:0.0}").Replace('-', '−'),
            RegulatorFit.Of(near, wild, 0.1, null).ToString());

        static void AssertAround(double value, double half, double found, double minimum, double maximum)
        {
            Assert.Equal(value, found, 1e-6 * half);
            Assert.Equal(value - half, minimum, 1e-3 * half);
            Assert.Equal(value + half, maximum, 1e-3 * half);
        }
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
