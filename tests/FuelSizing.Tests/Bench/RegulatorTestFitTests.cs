using CsCheck;
using FuelSizing.Bench;
using FuelSizing.Injectors;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace FuelSizing.Tests.Bench;

/// <summary>
/// Base, gain and onset by gauge readings. Intervals are checked against benches that an independent program makes (<c>tests/peer/bench_parts.py</c>), their ends here by the sums of squares worked in the test.
/// </summary>
public class RegulatorTestFitTests
{
    private static readonly double[] Steps = [0, 5, 10, 15, 20, 25, 30, 40, 50, 60];

    // Standard normal figures of a table, none of them chosen: the first of a sequence that repeats itself nowhere here.
    private static readonly double[] Noise = [0.41, -1.12, 0.63, 0.08, -0.35, 1.24, -0.77, 0.29, -0.55, 0.72];

    /// <summary>Readings on a broken line: base, gain and onset are found, and the description sets what was put in at every boost.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void RisingRate_ReadExactly_IsFound(bool follows)
    {
        RegulatorTestFit fit = RegulatorTestFit.Of(Test(Steps, applied => Rail(300, 5, 18, follows, applied), follows));
        Assert.Equal(300, fit.Base.Kilopascals, 1e-6);
        Assert.Equal(5, fit.Gain, 1e-6);
        Assert.Equal(18, fit.Onset!.Value.Kilopascals, 1e-5);
        Assert.Equal("bench.regulator-rising", fit.Text.Code);
        Assert.Empty(fit.Outliers);
        foreach (double applied in new[] { 0.0, 9, 18, 33, 60 })
        {
            Assert.Equal(Rail(300, 5, 18, follows, applied), fit.Regulator!.RailGauge(Wren.Kpa(applied)).Kilopascals, 1e-4);
        }

        Assert.Equal(follows, fit.Regulator is RisingRate);
    }

    /// <summary>A unit in series that acts from 60 kPa on, with a gain of 6: over its own base of none it holds more than 300 kPa only there.</summary>
    [Fact]
    public void UnitInSeries_ThatStartsUnderItsOwnLine_IsDescribed()
    {
        double[] steps = [0, 20, 40, 50, 55, 65, 70, 80, 90, 100];
        RegulatorTestFit fit = RegulatorTestFit.Of(Test(steps, applied => Rail(300, 6, 60, false, applied), follows: false));
        RegulatorSeries series = Assert.IsType<RegulatorSeries>(fit.Regulator);
        Assert.Equal(Pressure.Zero, series.Unit.Base);
        Assert.Equal(12, series.Unit.Onset.Kilopascals, 1e-4);
        foreach (double applied in steps)
        {
            Assert.Equal(Rail(300, 6, 60, false, applied), series.RailGauge(Wren.Kpa(applied)).Kilopascals, 1e-4);
        }
    }

    /// <summary>
    /// The ends of the intervals, worked anew: at each the smallest sum of squares over the other figures is that of the best fit plus F(1, 7; 95 %) = 5.591 (NIST/SEMATECH e-Handbook, table of F: 5.591) of its mean square.
    /// </summary>
    [Fact]
    public void Ends_OfTheIntervals_AreThoseOfTheProfile()
    {
        double[] rail = [.. Steps.Select((applied, at) => Rail(300, 5, 18, true, applied) + (3 * Noise[at]))];
        RegulatorTestFit fit = RegulatorTestFit.Of(Test(Steps, applied => rail[Array.IndexOf(Steps, applied)]));
        double best = Squares(rail, fit.Onset!.Value.Kilopascals);
        Assert.True(Enumerable.Range(0, 501).All(step => Squares(rail, step * 0.1) >= best - 1e-9));
        double bound = best * (1 + (FisherSnedecor.InvCDF(1, 7, 0.95) / 7));
        Assert.Equal(5.591, FisherSnedecor.InvCDF(1, 7, 0.95), 0.0005);
        Assert.Equal(bound, Squares(rail, fit.MinimumOnset!.Value.Kilopascals), 1e-4 * bound);
        Assert.Equal(bound, Squares(rail, fit.MaximumOnset!.Value.Kilopascals), 1e-4 * bound);
        double[] onsets = [.. Enumerable.Range(0, 5001).Select(step => 0.01 * step)];
        foreach (double gain in new[] { fit.MinimumGain!.Value, fit.MaximumGain!.Value })
        {
            Assert.Equal(bound, onsets.Min(onset => SquaresWithGain(rail, onset, gain)), 2e-3 * bound);
        }

        foreach (Pressure ofBase in new[] { fit.MinimumBase!.Value, fit.MaximumBase!.Value })
        {
            Assert.Equal(bound, onsets.Min(onset => SquaresWithBase(rail, onset, ofBase.Kilopascals)), 2e-3 * bound);
        }
    }

    /// <summary>What is read of a regulator that follows, or that is fixed, is told from a gain; and one that follows is found where it was stated not to.</summary>
    [Fact]
    public void Regulators_WithoutAGain_AreTold()
    {
        double Noisy(double value, double applied) => value + (2 * Noise[Array.IndexOf(Steps, applied)]);
        RegulatorTestFit follows = RegulatorTestFit.Of(Test(Steps, applied => Noisy(300 + applied, applied), gauge: 2));
        Assert.Equal("bench.regulator-follows", follows.Text.Code);
        Assert.Null(follows.Onset);
        Assert.InRange(300, follows.MinimumBase!.Value.Kilopascals, follows.MaximumBase!.Value.Kilopascals);
        Assert.InRange(1, follows.MinimumGain!.Value, follows.MaximumGain!.Value);
        Assert.IsType<ManifoldReferenced>(follows.Regulator);
        Assert.Single(follows.ToUncertainInputs());

        RegulatorTestFit still = RegulatorTestFit.Of(Test(Steps, applied => Noisy(300, applied), follows: false, gauge: 2));
        Assert.Equal("bench.regulator-fixed", still.Text.Code);
        Assert.IsType<Fixed>(still.Regulator);

        RegulatorTestFit unstated = RegulatorTestFit.Of(Test(Steps, applied => Noisy(300 + applied, applied), follows: false, gauge: 2));
        Assert.Equal("bench.regulator-follows", unstated.Text.Code);
        Assert.IsType<ManifoldReferenced>(unstated.Regulator);

        RegulatorTestFit torn = RegulatorTestFit.Of(Test(Steps, applied => Noisy(300 + (0.4 * applied), applied), gauge: 2));
        Assert.Null(torn.Regulator);
        Assert.Contains("less than one for one", torn.ToString(), StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(torn.ToUncertainInputs);
    }

    /// <summary>Without a reading below the onset neither onset nor base is told, and no regulator is described.</summary>
    [Fact]
    public void Onset_BelowTheFirstReading_IsNotTold()
    {
        double[] steps = [30, 35, 40, 45, 50, 55, 60, 70];
        RegulatorTestFit fit = RegulatorTestFit.Of(Test(steps, applied => Rail(300, 5, 18, true, applied) + Noise[Array.IndexOf(steps, applied)]));
        Assert.Equal("bench.regulator-onset-below", fit.Text.Code);
        Assert.Null(fit.MinimumOnset);
        Assert.Null(fit.MinimumBase);
        Assert.Null(fit.MaximumBase);
        Assert.Null(fit.Regulator);
        Assert.InRange(5, fit.MinimumGain!.Value, fit.MaximumGain!.Value);

        // From no boost on the base is read, and an onset under the first step is between it and none.
        double[] from = [0, 30, 35, 40, 45, 50, 60, 70];
        RegulatorTestFit read = RegulatorTestFit.Of(Test(from, applied => Rail(300, 5, 18, true, applied) + Noise[Array.IndexOf(from, applied)]));
        Assert.InRange(18, read.MinimumOnset!.Value.Kilopascals, read.MaximumOnset!.Value.Kilopascals);
        Assert.NotNull(read.Regulator);
    }

    /// <summary>Where only the last pressure lies over the onset the gain may be any that is steeper, and the interval has no upper end.</summary>
    [Fact]
    public void Gain_AtOnePressureOnly_IsOpenAbove()
    {
        double[] steps = [0, 0, 10, 10, 20, 20, 30, 30, 40, 40];
        RegulatorTestFit fit = RegulatorTestFit.Of(RegulatorTest.Of(
            "unit Q", true, Gauge(1), Gauge(0.001), [.. steps.Select((applied, at) => Reading(applied, Rail(300, 6, 33, true, applied) + Noise[at]))]));
        Assert.Null(fit.MaximumGain);
        Assert.Equal("bench.regulator-gain-open", fit.Text.Code);
        Assert.Null(fit.Regulator);
        Assert.InRange(33, fit.MinimumOnset!.Value.Kilopascals, fit.MaximumOnset!.Value.Kilopascals);
        Assert.True(fit.MinimumGain <= 6);
    }

    /// <summary>The slope with the returned flow is found beside the gain, and described; flow that goes with the pressure is refused.</summary>
    [Fact]
    public void Slope_WithReturnedFlow_IsFound()
    {
        double[] flows = [40, 120, 60, 110, 50, 90, 130, 45, 100, 70];
        RegulatorTest With(Func<int, double> flow) => RegulatorTest.Of(
            "unit Q",
            true,
            Gauge(1),
            Gauge(0.01),
            [
                .. Steps.Select((applied, at) => RegulatorGaugeReading.Of(
                    Wren.Kpa(applied), Wren.Kpa(Rail(300, 5, 18, true, applied) + (0.2 * (flow(at) - 81.5)) + (0.3 * Noise[at])), VolumeFlow.FromLitersPerHour(flow(at)))),
            ]);
        RegulatorTestFit fit = RegulatorTestFit.Of(With(at => flows[at]));
        Assert.InRange(20, fit.MinimumFlowRise!.Value.Kilopascals, fit.MaximumFlowRise!.Value.Kilopascals);
        Assert.InRange(fit.FlowRise!.Value.Kilopascals, 17, 23);
        Assert.Equal(81.5, fit.StatedAt!.Value.LitersPerHour, 1e-9);
        Assert.InRange(5, fit.MinimumGain!.Value, fit.MaximumGain!.Value);
        Assert.Equal(fit.FlowRise.Value.Kilopascals, fit.Regulator!.Flow!.Rise.Kilopascals, 1e-9);
        Assert.Contains("neither's effect can be told", Assert.Throws<ArgumentException>(() => RegulatorTestFit.Of(With(at => 40 + Steps[at]))).Message, StringComparison.Ordinal);
        Assert.Null(RegulatorTestFit.Of(With(_ => 81.5)).FlowRise);
    }

    /// <summary>What a gauge's readings have in common widens its figures: zero the base, span the gain, the other gauge's zero the onset.</summary>
    [Fact]
    public void SharedErrors_OfGauges_WidenTheirFigures()
    {
        RegulatorTestFit Of(GaugeAccuracy rail, GaugeAccuracy applied) => RegulatorTestFit.Of(RegulatorTest.Of(
            "unit Q", true, rail, applied, [.. Steps.Select((step, at) => Reading(step, Rail(300, 5, 18, true, step) + (0.01 * Noise[at])))]));
        GaugeAccuracy fine = Gauge(0.01);
        RegulatorTestFit plain = Of(fine, fine);
        RegulatorTestFit off = Of(GaugeAccuracy.Of(Wren.Kpa(0.01), Wren.Kpa(4), Ratio.Zero), GaugeAccuracy.Of(Wren.Kpa(0.01), Wren.Kpa(0.5), Wren.Percent(1)));
        double Wider(double narrow, double wide) => Math.Sqrt((wide * wide) - (narrow * narrow)) / 1.959963984540054;
        Assert.Equal(Math.Sqrt(16.25), Wider((plain.MaximumBase - plain.Base)!.Value.Kilopascals, (off.MaximumBase - off.Base)!.Value.Kilopascals), 1e-4);
        Assert.Equal(0.05, Wider(plain.MaximumGain!.Value - plain.Gain, off.MaximumGain!.Value - off.Gain), 1e-4);
        Assert.Equal(Math.Sqrt(0.25 + (0.18 * 0.18)), Wider((plain.MaximumOnset - plain.Onset)!.Value.Kilopascals, (off.MaximumOnset - off.Onset)!.Value.Kilopascals), 1e-4);

        // Readings without scatter are as sure as the gauges, and no surer.
        Assert.True(plain.MaximumGain > plain.Gain && plain.MaximumOnset > plain.Onset && plain.MaximumBase > plain.Base);
    }

    /// <summary>One blunder is named, in whichever order readings stand, and a ceiling shows in that the line is not broken but once.</summary>
    [Fact]
    public void Blunder_IsNamed_AndACeilingIsSeen()
    {
        double[] steps = [.. Steps, .. Enumerable.Reverse(Steps)];
        RegulatorGaugeReading[] readings = [.. steps.Select((applied, at) => Reading(applied, Rail(300, 5, 18, true, applied) + Noise[at % 10] + (at == 7 ? 25 : 0)))];
        RegulatorTest test = RegulatorTest.Of("unit Q", true, Gauge(1), Gauge(0.01), readings);
        Assert.Equal([7], RegulatorTestFit.Of(test).Outliers);
        Assert.Equal([12], RegulatorTestFit.Of(RegulatorTest.Of("unit Q", true, Gauge(1), Gauge(0.01), [.. Enumerable.Reverse(readings)])).Outliers);
        RegulatorTestFit without = RegulatorTestFit.Of(test.Without(7));
        Assert.Empty(without.Outliers);
        Assert.True(without.IsBrokenLine);

        RegulatorTestFit ceiling = RegulatorTestFit.Of(RegulatorTest.Of(
            "unit Q", true, Gauge(1), Gauge(0.01), [.. steps.Select((applied, at) => Reading(applied, Math.Min(420, Rail(300, 5, 18, true, applied)) + Noise[at % 10] + (at / 10 * 0.4)))]));
        Assert.False(ceiling.IsBrokenLine);
    }

    /// <summary>The order of readings changes nothing; a base that is higher by so much is found higher by so much.</summary>
    [Fact]
    public void Fit_HasNoOrder_AndFollowsTheBase() =>
        Gen.Select(Gen.Double[-2, 2].Array[10], Gen.Double[2, 9], Gen.Double[6, 40], Gen.Double[-80, 200], Gen.Int[0, 9]).Sample(
            (noise, gain, onset, higher, turn) =>
            {
                RegulatorGaugeReading[] readings = [.. Steps.Select((applied, at) => Reading(applied, Rail(300, gain, onset, true, applied) + noise[at]))];
                RegulatorTestFit fit = Fit(readings);
                RegulatorTestFit turned = Fit([.. readings[turn..], .. readings[..turn]]);
                RegulatorTestFit raised = Fit([.. readings.Select(reading => RegulatorGaugeReading.Of(reading.Applied, reading.RailGauge + Wren.Kpa(higher)))]);
                Assert.Equal(fit.Gain, turned.Gain, 1e-5);
                Assert.Equal(fit.MaximumOnset?.Kilopascals ?? 0, turned.MaximumOnset?.Kilopascals ?? 0, 1e-4);
                Assert.Equal(fit.Base.Kilopascals + higher, raised.Base.Kilopascals, 1e-4);
                Assert.Equal(fit.MinimumGain ?? 0, raised.MinimumGain ?? 0, 1e-4);
                Assert.True(!(fit.MinimumOnset > fit.Onset) && !(fit.Onset > fit.MaximumOnset) && !(fit.MinimumGain > fit.Gain) && !(fit.Gain > fit.MaximumGain));
            },
            iter: 40);

    /// <summary>The description found, and its uncertain inputs, go through a system and a Monte Carlo run.</summary>
    [Fact]
    public void Regulator_AndItsInputs_AreTakenByASystem()
    {
        RegulatorTestFit fit = RegulatorTestFit.Of(Test(Steps, applied => Rail(300, 3, 18, true, applied) + Noise[Array.IndexOf(Steps, applied)]));
        FuelSystem system = FuelSystem.Return(Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(360), 4), fit.Regulator!, FuelSizing.Pumps.Pump.From(Wren.Pump), null, null);
        UncertainInput[] inputs = [.. fit.ToUncertainInputs()];
        Assert.Equal(3, inputs.Length);
        Assert.Equal((fit.MaximumGain!.Value / fit.Gain) - 1, ((Ratio)inputs[1].ValueAt(Wren.Percent(97.5))).DecimalFractions - 1, 0.2 * ((fit.MaximumGain.Value / fit.Gain) - 1));
        Assert.NotNull(UncertainSystem.Of(system, Wren.At(5000, 0.5), inputs));

        // An onset that may be none at all.
        RegulatorTestFit early = RegulatorTestFit.Of(Test(Steps, applied => Rail(300, 3, 1, true, applied) + (2 * Noise[Array.IndexOf(Steps, applied)])));
        Assert.Equal(0, early.MinimumOnset!.Value.Pascals);
        Assert.NotNull(UncertainSystem.Of(system.With(early.Regulator!), Wren.At(5000, 0.5), [.. early.ToUncertainInputs()]));
    }

    [Fact]
    public void Tests_ThatCannotTell_AreRefused()
    {
        void Missing(string words, Func<object> make) => Assert.Contains(words, Assert.Throws<ArgumentException>(make).Message, StringComparison.Ordinal);
        Missing("of 3 applied pressures, 2 of them over 0", () => Test([0, 0, 10, 10, 20, 20], applied => 300 + applied));
        Missing("of 4 applied pressures, 2 of them over 0", () => Test([-20, -20, 0, 10, 10, 20], applied => 300 + applied));
        Missing("of 1 of 7. Give it of all, or of none", () => RegulatorTest.Of(
            "unit Q",
            true,
            Gauge(1),
            Gauge(1),
            [.. new[] { 0.0, 10, 20, 30, 40, 50 }.Select(applied => Reading(applied, 300 + applied)), RegulatorGaugeReading.Of(Wren.Kpa(60), Wren.Kpa(360), VolumeFlow.FromLitersPerHour(50))]));
        Refused.OutOfRange("readings", () => Test([0, 10, 20, 30, 40], applied => 300 + applied));
    }

    private static double Rail(double ofBase, double gain, double onset, bool follows, double applied) =>
        ofBase + (follows ? Math.Min(applied, onset) : 0) + (gain * Math.Max(0, applied - onset));

    private static RegulatorTestFit Fit(RegulatorGaugeReading[] readings) => RegulatorTestFit.Of(RegulatorTest.Of("unit Q", true, Gauge(1), Gauge(0.001), readings));

    private static GaugeAccuracy Gauge(double kilopascals) => GaugeAccuracy.Of(Wren.Kpa(kilopascals), Pressure.Zero, Ratio.Zero);

    private static RegulatorGaugeReading Reading(double applied, double rail) => RegulatorGaugeReading.Of(Wren.Kpa(applied), Wren.Kpa(rail));

    private static RegulatorTest Test(double[] steps, Func<double, double> rail, bool follows = true, double gauge = 1) =>
        RegulatorTest.Of("unit Q", follows, Gauge(gauge), Gauge(0.001), [.. steps.Select(applied => Reading(applied, rail(applied)))]);

    // Of rail − applied = base + (gain − 1) · max(0, applied − onset), all readings alike.
    private static (double[] Above, double[] Left) Parts(double[] rail, double onset) =>
        ([.. Steps.Select(applied => Math.Max(0, applied - onset))], [.. rail.Zip(Steps, (one, applied) => one - applied)]);

    private static double Squares(double[] rail, double onset)
    {
        (double[] above, double[] rest) = Parts(rail, onset);
        (double middle, double level) = (above.Average(), rest.Average());
        double slope = above.Zip(rest, (one, value) => (one - middle) * (value - level)).Sum() / above.Sum(one => (one - middle) * (one - middle));
        return above.Zip(rest, (one, value) => Math.Pow(value - level - (slope * (one - middle)), 2)).Sum();
    }

    private static double SquaresWithGain(double[] rail, double onset, double gain)
    {
        (double[] above, double[] rest) = Parts(rail, onset);
        double[] left = [.. above.Zip(rest, (one, value) => value - ((gain - 1) * one))];
        return left.Sum(value => Math.Pow(value - left.Average(), 2));
    }

    private static double SquaresWithBase(double[] rail, double onset, double ofBase)
    {
        (double[] above, double[] rest) = Parts(rail, onset);
        double slope = above.Zip(rest, (one, value) => one * (value - ofBase)).Sum() / above.Sum(one => one * one);
        return above.Zip(rest, (one, value) => Math.Pow(value - ofBase - (slope * one), 2)).Sum();
    }
}
