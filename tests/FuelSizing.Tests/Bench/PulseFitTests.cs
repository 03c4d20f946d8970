using FuelSizing.Bench;
using FuelSizing.Injectors;
using FuelSizing.Tests.Equations;
using FuelSizing.Uncertainty;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Tests.Bench;

/// <summary>
/// The line of an injector on the bench. No published table of weighings of a port injector at short pulses was found; intervals are checked against benches that an independent program
/// makes (<c>tests/peer/bench.py</c>), slope and offset here against what was put in.
/// </summary>
public class PulseFitTests
{
    private const double Slope = 5.22e-3;
    private const double Offset = 1.003e-3;

    /// <summary>Exact readings of a line: its slope and offset, to the last digits of a mass.</summary>
    [Fact]
    public void Line_ReadExactly_IsFound()
    {
        PulseFit fit = PulseFit.Of(Test([1.5, 2, 3, 4, 6, 8, 10], Line));
        Assert.Equal(Slope / 683.8, fit.Slope.CubicMetersPerSecond, 1e-12 * Slope);
        Assert.Equal(Offset, fit.TimeOffset.Seconds, 1e-12);
        Assert.Equal(1.5, fit.LinearFrom!.Value.Milliseconds, 9);
        Assert.False(fit.IsLinearEndSeen);
        Assert.Equal(7, fit.OnLine);
        Assert.Equal("bench.pulse-line-further", fit.Text.Code);
        Assert.Empty(fit.Outliers);
        Assert.Null(fit.IsStraight);
    }

    /// <summary>
    /// A delivery that lies 8 % under the line at 1.6 ms and 20 % at 1.3 ms: neither is on the line, which is that of the rest, and the linear flow range ends at 1.9 ms. The corrections for
    /// short pulses are what was put in.
    /// </summary>
    [Fact]
    public void ShortPulses_ThatFollowNoMore_AreLeftOutAndTold()
    {
        double Delivered(double seconds) => Line(seconds) * (seconds < 1.5e-3 ? 0.8 : seconds < 1.7e-3 ? 0.92 : 1);
        PulseFit fit = PulseFit.Of(Test([1.3, 1.6, 1.9, 2.5, 3, 4, 6, 8, 10], Delivered));
        Assert.Equal(Offset, fit.TimeOffset.Seconds, 1e-9);
        Assert.Equal(1.9, fit.LinearFrom!.Value.Milliseconds, 9);
        Assert.True(fit.IsLinearEndSeen);
        Assert.Equal("bench.pulse-line", fit.Text.Code);
        Assert.Equal([-20.0, -8], fit.Widths.Take(2).Select(width => Math.Round(width.Deviation!.Value.Percent, 6)));
        Assert.Equal(1.3, fit.Widths[0].Pulse.Milliseconds, 9);
        Assert.Equal(Delivered(1.3e-3), fit.Widths[0].Each.Kilograms, 1e-12);

        // At 10 % of the line the 8 % still count as linear.
        Assert.Equal(1.6, PulseFit.Of(fit.Test, Ratio.FromPercent(10)).LinearFrom!.Value.Milliseconds, 9);
    }

    /// <summary>
    /// The working of a line: both sides of the normal equations agree, whatever the readings scatter by; its slope and offset are those of the ordinary formulas of regression, worked here from the
    /// readings themselves; and the width that it names is the one furthest off. Another line leaves a difference between the sides.
    /// </summary>
    [Fact]
    public void Working_OfALine_HasEqualSidesAndTheLargestDeviation()
    {
        double[] widths = [2, 3, 4, 5, 6, 8, 10];
        double[] off = [1e-8, -1e-8, 2e-8, 0, -5e-8, 1e-8, -1e-8];
        PulseFit fit = PulseFit.Of(Test(widths, seconds => Line(seconds) + off[Array.FindIndex(widths, width => Math.Abs(width - (1e3 * seconds)) < 1e-6)]));

        Working working = PulseWorking.Of(fit);

        double[] x = [.. widths.Select(width => width / 1e3)], y = [.. fit.Widths.Select(width => width.Each.Kilograms)];
        double slope = x.Zip(y, (t, m) => (t - x.Average()) * (m - y.Average())).Sum() / x.Sum(t => (t - x.Average()) * (t - x.Average()));
        Assert.Equal(7, fit.OnLine);
        Assert.Equal(slope / 683.8, working.Find("Q_b")!.Si!.Value, 1e-9 * slope);
        Assert.Equal(x.Average() - (y.Average() / slope), working.Find("t_z")!.Si!.Value, 1e-12);
        foreach (string place in new[] { "1", "2" })
        {
            Assert.Equal(1, working.Find($"E_R,{place}")!.Si!.Value / working.Find($"E_L,{place}")!.Si!.Value, 1e-9);
        }

        Assert.Equal(y.Average(), working.Find("E_L,1")!.Si!.Value, 1e-15);
        Assert.Equal(6e-3, working.Find("t_b")!.Si!.Value, 1e-12);
        Assert.Equal((y[4] / (slope * (6e-3 - x.Average() + (y.Average() / slope)))) - 1, working.Find("e_b")!.Si!.Value, 1e-9);
        Assert.Equal(["E_L,1", "E_R,1", "E_L,2", "E_R,2", "e_b"], working.Main.Select(step => step.Symbol));
        Assert.All(working.Given.Concat(working.Steps), step => Assert.True(SymbolList.Has(step.Symbol), step.Symbol));
    }

    /// <summary>At 6 ms three times as many pulses were weighed as at 3 ms: half the deviation is the larger one there, by what the fit goes by.</summary>
    [Fact]
    public void Working_OfALine_MeasuresDeviationsAsTheFitDoes()
    {
        PulseTest test = PulseTest.Of(
            "injector A", TestFluid.Heptane, Pressure.FromKilopascals(300), ElectricPotential.FromVolts(13.5), Mass.FromMilligrams(10), Ratio.FromPercent(0.3),
            [
                .. new[] { (2.0, 1000, -2e-8), (3, 1000, 4.5e-8), (4, 3000, -2e-8), (6, 3000, 2.4e-8), (8, 1000, -4e-8), (9, 1000, 0), (10, 3000, 0) }.Select(row =>
                    PulseReading.Of(Duration.FromMilliseconds(row.Item1), row.Item2, Mass.FromKilograms(row.Item2 * (Line(row.Item1 / 1e3) + row.Item3)))),
            ]);
        PulseFit fit = PulseFit.Of(test);

        Working working = PulseWorking.Of(fit);

        Assert.Equal(7, fit.OnLine);
        Assert.Equal(6e-3, working.Find("t_b")!.Si!.Value, 1e-12);
        Assert.Equal(3, fit.Widths.MaxBy(width => Math.Abs(width.Each.Kilograms - Line(width.Pulse.Seconds))).Pulse.Milliseconds, 9);
        Assert.Equal(1, working.Find("E_R,1")!.Si!.Value / working.Find("E_L,1")!.Si!.Value, 1e-9);
        Assert.Equal(1, working.Find("E_R,2")!.Si!.Value / working.Find("E_L,2")!.Si!.Value, 1e-9);
    }

    /// <summary>
    /// Student's t, Fieller and the correlation, worked by hand for seven readings that scatter by what is known: 10 mg, at 1,000 pulses each.
    /// </summary>
    [Fact]
    public void Intervals_OfScatteredReadings_AreStudents()
    {
        double[] widths = [2, 3, 4, 5, 6, 8, 10];
        double[] off = [1e-5, -1e-5, 2e-5, 0, -2e-5, 1e-5, -1e-5];
        PulseFit fit = PulseFit.Of(Test(widths, Line, off));
        double[] times = [.. widths.Select(width => width / 1000)];
        double[] each = [.. times.Select((time, at) => Line(time) + (off[at] / 1000))];
        (double mean, double level) = (times.Average(), each.Average());
        double sxx = times.Sum(time => (time - mean) * (time - mean));
        double slope = times.Zip(each, (time, mass) => (time - mean) * (mass - level)).Sum() / sxx;
        double scatter = Math.Sqrt(times.Zip(each, (time, mass) => Math.Pow(mass - level - (slope * (time - mean)), 2)).Sum() / 5);
        Assert.Equal(slope / 683.8, fit.Slope.CubicMetersPerSecond, 1e-12 * slope);
        Assert.Equal(mean - (level / slope), fit.TimeOffset.Seconds, 1e-12);
        Assert.Equal(scatter * 1000, fit.Scatter.Kilograms, 1e-9 * scatter * 1000);

        // t of 95 % with 5 to spare is 2.5706 (NIST/SEMATECH e-Handbook, table of Student's t: 2.571).
        const double Student = 2.5705818366;
        double deviation = scatter / Math.Sqrt(sxx);
        Assert.Equal(slope - (Student * deviation), fit.MinimumSlope.CubicMetersPerSecond * 683.8, 1e-9 * slope);
        Assert.Equal(slope + (Student * deviation), fit.MaximumSlope.CubicMetersPerSecond * 683.8, 1e-9 * slope);

        // An offset t_o is within if the mean of the masses is no further from the line through it than t of its deviations.
        foreach (Duration end in new[] { fit.MinimumTimeOffset!.Value, fit.MaximumTimeOffset!.Value })
        {
            double from = mean - end.Seconds;
            Assert.Equal(Student * scatter * Math.Sqrt((1.0 / 7) + (from * from / sxx)), Math.Abs(level - (slope * from)), 1e-9 * level);
        }

        // Of the linearised offset: mean − level/slope.
        double depth = level / slope;
        Assert.Equal(depth / Math.Sqrt((depth * depth) + (sxx / 7)), fit.Correlation.DecimalFractions, 1e-9);
    }

    /// <summary>A calibration in common widens the slope's interval, and leaves the offset's alone.</summary>
    [Fact]
    public void Calibration_InCommon_WidensTheSlopeAlone()
    {
        double[] off = [1e-5, -1e-5, 2e-5, 0, -2e-5, 1e-5, -1e-5];
        PulseFit plain = PulseFit.Of(Test([2, 3, 4, 5, 6, 8, 10], Line, off));
        PulseFit shared = PulseFit.Of(Test([2, 3, 4, 5, 6, 8, 10], Line, off, calibration: 1));
        double Half(PulseFit fit) => (fit.MaximumSlope - fit.MinimumSlope) / (2 * fit.Slope);
        Assert.Equal(Math.Sqrt(Math.Pow(Half(plain), 2) + Math.Pow(0.0195996, 2)), Half(shared), 1e-7);
        Assert.Equal(plain.MinimumTimeOffset, shared.MinimumTimeOffset);
        Assert.Equal(plain.Correlation, shared.Correlation);
    }

    /// <summary>A blunder of 0.3 g among repeats is named by its place; without it the line is as before.</summary>
    [Fact]
    public void Blunder_IsNamed_AndMayBeLeftOut()
    {
        double[] widths = [2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 8, 8, 10, 10];
        double[] off = [.. widths.Select((_, at) => (at % 5 == 0 ? 1.2e-5 : at % 3 == 0 ? -1.1e-5 : 0.4e-5) + (at == 9 ? 3e-4 : 0))];
        PulseFit fit = PulseFit.Of(Test(widths, Line, off));
        Assert.Equal([9], fit.Outliers);
        PulseFit without = PulseFit.Of(fit.Test.Without(9));
        Assert.Empty(without.Outliers);
        Assert.Equal(Offset, without.TimeOffset.Seconds, 5e-6);
        Assert.True(without.IsStraight);
    }

    /// <summary>
    /// As inputs of an uncertain system: the factor and the offset from what is described, with the deviations that the intervals have, and correlated. Without a calibration in common the correlation is the fit's; with one
    /// of 1 % it is smaller by the share of the slope's deviation that the fit has.
    /// </summary>
    [Fact]
    public void Inputs_AreCorrelated_AsTheyWereMeasured()
    {
        double[] off = [1e-5, -1e-5, 2e-5, 0, -2e-5, 1e-5, -1e-5];
        Injector described = Injector.Of(
            "injector",
            VolumeFlow.FromMillilitersPerMinute(450),
            Wren.Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(2)), (Wren.Volt(13.5), Wren.Ms(0.95)), (Wren.Volt(16), Wren.Ms(0.8))),
            Wren.Ms(1.6),
            Wren.Kpa(600));
        PulseFit plain = PulseFit.Of(Test([2, 3, 4, 5, 6, 8, 10], Line, off));
        PulseFit shared = PulseFit.Of(Test([2, 3, 4, 5, 6, 8, 10], Line, off, calibration: 1));
        CorrelatedInputs inputs = plain.InputsOn(described);
        Assert.Equal("injector flow", inputs.One.Name);
        Assert.Equal("dead time", inputs.Other.Name);
        Assert.Equal(plain.Slope.MillilitersPerMinute / 450, ((Ratio)inputs.One.ValueAt(Wren.Percent(50))).DecimalFractions, 9);
        Assert.Equal(plain.TimeOffset.Milliseconds - 0.95, ((Duration)inputs.Other.ValueAt(Wren.Percent(50))).Milliseconds, 9);
        Assert.Equal(
            (plain.MaximumTimeOffset!.Value - plain.MinimumTimeOffset!.Value).Microseconds / 2,
            (((Duration)inputs.Other.ValueAt(Wren.Percent(97.5))) - ((Duration)inputs.Other.ValueAt(Wren.Percent(50)))).Microseconds,
            0.01);
        Assert.Equal(plain.Correlation.DecimalFractions, inputs.Correlation.DecimalFractions, 9);
        double own = (plain.MaximumSlope - plain.Slope) / plain.Slope / 1.959963985;
        Assert.Equal(plain.Correlation.DecimalFractions * own / Math.Sqrt((own * own) + 1e-4), shared.InputsOn(described).Correlation.DecimalFractions, 1e-6);
    }

    /// <summary>A pulse too short to open the injector delivers nothing, and so would the line: no share of it, and no linear pulse.</summary>
    [Fact]
    public void Pulse_ThatDoesNotOpen_HasNoShareOfTheLine()
    {
        PulseFit fit = PulseFit.Of(Test([0.6, 1, 2, 3, 4, 6, 8, 10], seconds => Math.Max(0, Line(seconds))));
        Assert.Null(fit.Widths[0].Deviation);
        Assert.Null(fit.Widths[1].Deviation);
        Assert.Equal(2, fit.LinearFrom!.Value.Milliseconds, 9);
        Assert.True(fit.IsLinearEndSeen);
    }

    /// <summary>What cannot show a line is refused with what is missing.</summary>
    [Fact]
    public void Tests_ThatShowNothing_AreRefused()
    {
        Assert.Contains(
            "of 3 pulse widths: a line goes through any two",
            Assert.Throws<ArgumentException>(() => Test([2, 2, 3, 3, 4, 4], Line)).Message,
            StringComparison.Ordinal);
        Refused.OutOfRange("readings", () => Test([2, 3, 4, 5, 6], Line));
        Refused.OutOfRange("places", () => Test([2, 3, 4, 5, 6, 8, 10], Line).Without(7));
        Refused.OutOfRange("linearity", () => PulseFit.Of(Test([2, 3, 4, 5, 6, 8, 10], Line), Ratio.FromPercent(0.1)));
        Assert.Contains(
            "longer pulses do not deliver more",
            Assert.Throws<ArgumentException>(() => PulseFit.Of(Test([2, 3, 4, 5, 6, 8, 10], seconds => 4e-5 - (1e-3 * seconds)))).Message,
            StringComparison.Ordinal);
    }

    /// <summary>Readings that scatter as much as they deliver leave the offset open, and the words say so.</summary>
    [Fact]
    public void Offset_ThatReadingsDoNotBound_IsSaidToBeOpen()
    {
        PulseFit fit = PulseFit.Of(Test([2, 3, 4, 5, 6, 8, 10], Line, [0.05, -0.004, 0.04, 0.01, -0.02, 0.03, -0.02]));
        Assert.Null(fit.MinimumTimeOffset);
        Assert.Equal("bench.pulse-line-unbounded", fit.Text.Code);
    }

    /// <summary>
    /// Benches at two voltages and two pressures make an injector whose dead times, flows and minimum pulse are what was put in; asked for fuel it commands the pulse that delivers it.
    /// </summary>
    [Fact]
    public void Injector_OfSeveralTests_IsWhatWasPutIn()
    {
        (double Kilopascals, double Volts, double Slope, double Offset)[] put =
            [(300, 12, 5.22e-3, 1.2e-3), (300, 14, 5.22e-3, 0.9e-3), (400, 12, 6.1e-3, 1.3e-3), (400, 14, 6.1e-3, 0.95e-3)];
        PulseFit[] fits =
        [
            .. put.Select(at => PulseFit.Of(PulseTest.Of(
                "injector on the bench",
                TestFluid.Heptane,
                Wren.Kpa(at.Kilopascals),
                Wren.Volt(at.Volts),
                Mass.FromMilligrams(10),
                Ratio.Zero,
                [.. new[] { 1.6, 2, 3, 4, 6, 8, 10 }.Select(width => PulseReading.Of(Wren.Ms(width), 1000, Mass.FromKilograms(at.Slope * (width - (at.Offset * 1000)))))]))),
        ];
        Injector injector = MeasuredInjector.Of([.. Enumerable.Reverse(fits)], Wren.Kpa(300), Wren.Kpa(550));
        Assert.Equal(5.22e-3 / 683.8, injector.StaticFlow.CubicMetersPerSecond, 1e-14);
        Assert.Equal(14, injector.MinimumPulseVoltage.Volts);
        Assert.Equal(1.6, injector.MinimumLinearPulse.Milliseconds, 9);
        foreach ((double kilopascals, double volts, double slope, double offset) in put)
        {
            Assert.Equal(offset * 1000, injector.DeadTime.At(Wren.Volt(volts), Wren.Kpa(kilopascals)).Milliseconds, 9);
            Assert.Contains(injector.MeasuredFlows, point => Math.Abs(point.Differential.Kilopascals - kilopascals) < 1e-9 && Math.Abs((point.Flow.CubicMetersPerSecond * 683.8) - slope) < 1e-14);
        }

        Assert.True(MeasuredInjector.Of(fits[..2], Wren.Kpa(300), Wren.Kpa(550)).DeadTime.IgnoresPressure);
        Assert.Contains("0 tests at 400 kPa and 14.0 V", Assert.Throws<ArgumentException>(() => MeasuredInjector.Of(fits[..3], Wren.Kpa(300), Wren.Kpa(550))).Message, StringComparison.Ordinal);
        Assert.Contains("nothing was weighed", Assert.Throws<ArgumentException>(() => MeasuredInjector.Of(fits, Wren.Kpa(350), Wren.Kpa(550))).Message, StringComparison.Ordinal);
        Assert.Contains("are all at 12.0 V", Assert.Throws<ArgumentException>(() => MeasuredInjector.Of([fits[0], fits[2]], Wren.Kpa(300), Wren.Kpa(550))).Message, StringComparison.Ordinal);
    }

    private static double Line(double seconds) => Slope * (seconds - Offset);

    private static PulseTest Test(double[] milliseconds, Func<double, double> each, double[]? off = null, double calibration = 0) => PulseTest.Of(
        "injector on the bench",
        TestFluid.Heptane,
        Wren.Kpa(300),
        Wren.Volt(13.5),
        Mass.FromMilligrams(10),
        Ratio.FromPercent(calibration),
        [
            .. milliseconds.Select((width, at) => PulseReading.Of(
                Wren.Ms(width), 1000, Mass.FromKilograms((1000 * each(width / 1000)) + (off is null ? 0 : off[at])))),
        ]);
}
