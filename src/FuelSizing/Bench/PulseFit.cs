using FuelSizing.Injectors;
using FuelSizing.Quantities;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>
/// The straight line of delivered fuel over pulse width: its slope, its time offset, and down to which pulse an injector follows it.
/// <para><c>m = ρ Q (t − t_o)</c></para>
/// </summary>
/// <remarks>
/// <para><c>m</c> (kg): delivered in one pulse; <c>ρ</c> (kg/m³): density of the test fluid; <c>Q</c> (m³/s): slope, as a flow of test fluid; <c>t</c> (s): pulse width;
/// <c>t_o</c> (s): time offset, the pulse at which the line reaches no delivery. Slope, time offset and linear flow range are defined as SAE J1832 defines them (recalled: its text was not
/// read), the linear flow range as that within 5 % of the line.</para>
/// <para>The line goes through the longest pulses and as many shorter ones as lie on it within what readings scatter; a pulse that follows no more is left out, with all that are shorter.
/// Intervals hold the truth in 95 of 100 tests: Student's t by the scatter of the readings, for the offset by Fieller's theorem, since it is a ratio of two fitted figures; the calibration that all
/// readings share widens the slope's and leaves the offset's.</para>
/// <para>Range: readings of one injector, liquid, pressure and voltage. Outside: nothing is said of pulses longer than the longest that was weighed, nor of other pressures and voltages.</para>
/// </remarks>
public sealed class PulseFit : IReadable
{
    private const double Confidence = 0.95;

    // A reading in a hundred lies further from a line that it follows.
    private const double Departure = 0.99;
    private const double MinimumChance = 0.01;
    private const int MinimumOnLine = 3;
    private const int LeftOut = 2;
    private const double LastDigits = 1e-11;
    private const double Certain = 0.9999;

    // s, a pulse of no length.
    private const double Tiny = 1e-9;

    private readonly double _lackOfFit;

    private PulseFit(PulseTest test, LinearFit fit, PulseReading[] onLine, double linearity, int[] outliers)
    {
        Followed = Array.AsReadOnly(onLine);
        (Test, OnLine, Linearity, Outliers) = (test, onLine.Length, Ratio.FromDecimalFractions(linearity), Array.AsReadOnly(outliers));
        (double slope, double delivery) = (fit.Factors[0], fit.Factors[1]);
        double density = test.Fluid.Density.KilogramsPerCubicMeter;
        double student = fit.Student(Confidence);
        double offset = delivery / slope;
        Slope = VolumeFlow.FromCubicMetersPerSecond(slope / density);

        // What all readings have in common is no part of their scatter.
        double spread = Math.Sqrt(Math.Pow(student * fit.Deviation(0) / slope, 2) + Math.Pow(PooledMeans.StatedReach * test.Calibration.DecimalFractions, 2));
        (MinimumSlope, MaximumSlope) = (Slope * Math.Max(0, 1 - spread), Slope * (1 + spread));
        TimeOffset = Duration.FromSeconds(offset);
        if (Fieller(fit, student) is { } interval)
        {
            (MinimumTimeOffset, MaximumTimeOffset) = (Duration.FromSeconds(interval.Minimum), Duration.FromSeconds(interval.Maximum));
        }

        double offsetVariance = (fit.Covariance(1, 1) - (2 * offset * fit.Covariance(0, 1)) + (offset * offset * fit.Covariance(0, 0))) / (slope * slope);
        Correlation = Ratio.FromDecimalFractions(
            (fit.Covariance(0, 1) - (offset * fit.Covariance(0, 0))) / slope / Math.Sqrt(offsetVariance * fit.Covariance(0, 0)));
        Scatter = Mass.FromKilograms(fit.Scale * test.Scale.Kilograms);
        _lackOfFit = fit.LackOfFit([.. onLine.Select(reading => reading.SecondsOpen)]);

        Widths = Array.AsReadOnly<(Duration, Mass, Ratio?)>(
        [
            .. from reading in test.Readings
               group reading by reading.SecondsOpen into width
               orderby width.Key
               let mean = width.Sum(reading => reading.Collected.Kilograms) / width.Sum(reading => (double)reading.Injections)
               let line = slope * (width.Key - offset)
               select (width.First().Pulse, Mass.FromKilograms(mean), line > Tiny * slope ? Ratio.FromDecimalFractions((mean - line) / line) : (Ratio?)null),
        ]);
        int from = Widths.Count;
        while (from > 0 && Widths[from - 1].Deviation is { } deviation && Math.Abs(deviation.DecimalFractions) <= linearity)
        {
            from--;
        }

        LinearFrom = from < Widths.Count ? Widths[from].Pulse : null;
        IsLinearEndSeen = from > 0;
    }

    /// <summary>The test.</summary>
    public PulseTest Test { get; }

    /// <summary>Slope of the line, as a flow of test fluid: what one more second of pulse delivers.</summary>
    public VolumeFlow Slope { get; }

    /// <summary>Lower end of its interval of 95 %.</summary>
    public VolumeFlow MinimumSlope { get; }

    /// <summary>Upper end.</summary>
    public VolumeFlow MaximumSlope { get; }

    /// <summary>Time offset: the pulse at which the line reaches no delivery. What a controller calls dead time.</summary>
    public Duration TimeOffset { get; }

    /// <summary>Lower end of its interval of 95 %; none where the readings bound it on neither side.</summary>
    public Duration? MinimumTimeOffset { get; }

    /// <summary>Upper end.</summary>
    public Duration? MaximumTimeOffset { get; }

    /// <summary>Correlation of slope and time offset, −1 to 1: a steeper line reaches no delivery later.</summary>
    public Ratio Correlation { get; }

    /// <summary>Standard deviation of a weighing by the scatter about the line; the stated one is <see cref="PulseTest.Scale"/>.</summary>
    public Mass Scatter { get; }

    /// <summary>How many readings the line goes through.</summary>
    public int OnLine { get; }

    /// <summary>Those readings.</summary>
    internal IReadOnlyList<PulseReading> Followed { get; }

    /// <summary>Deviation from the line that still counts as linear.</summary>
    public Ratio Linearity { get; }

    /// <summary>The shortest pulse weighed from which on all lie within <see cref="Linearity"/> of the line; none where not even the longest does.</summary>
    public Duration? LinearFrom { get; }

    /// <summary>True if a shorter pulse was weighed that does not: else the linear flow range may go on further down.</summary>
    public bool IsLinearEndSeen { get; }

    /// <summary>
    /// Each pulse width with the mean mass of a pulse and how far that is from the line: below the linear flow range, the correction for short pulses. No deviation at widths up to the time offset, at which
    /// the line delivers nothing.
    /// </summary>
    public IReadOnlyList<(Duration Pulse, Mass Each, Ratio? Deviation)> Widths { get; }

    /// <summary>Places in <see cref="PulseTest.Readings"/> of readings further off than chance brings one in a hundred tests.</summary>
    public IReadOnlyList<int> Outliers { get; }

    /// <summary>False where readings of one width agree better among each other than with the line, in less than one of 100 tests by chance; none without repeats.</summary>
    public bool? IsStraight => double.IsNaN(_lackOfFit) ? null : _lackOfFit >= MinimumChance;

    /// <summary>Slope, offset and linear flow range, as a code with its figures.</summary>
    public Statement Text => (MinimumTimeOffset, MaximumTimeOffset) is not ({ } least, { } most)
        ? Statement.Of("bench.pulse-line-unbounded", $"{Slope:injector-flow} ({MinimumSlope:injector-flow} to {MaximumSlope:injector-flow}), the offset is not bounded: weigh more, or longer pulses")
        : LinearFrom is not { } from ? Statement.Of("bench.pulse-line-nowhere", $"no pulse lies within {Linearity} of one line")
        : IsLinearEndSeen ? Statement.Of(
            "bench.pulse-line",
            $"{Slope:injector-flow} ({MinimumSlope:injector-flow} to {MaximumSlope:injector-flow}), offset {TimeOffset} ({least} to {most}), linear from {from}")
        : Statement.Of(
            "bench.pulse-line-further",
            $"{Slope:injector-flow} ({MinimumSlope:injector-flow} to {MaximumSlope:injector-flow}), offset {TimeOffset} ({least} to {most}), linear from {from} or less: no shorter pulse was weighed");

    /// <summary>Fits the line.</summary>
    /// <param name="test">The readings.</param>
    /// <param name="linearity">Deviation from the line that still counts as linear, 0.5 to 20 %; 5 % if not given (SAE J1832, recalled).</param>
    /// <returns>The fit.</returns>
    /// <exception cref="ArgumentException">The longest pulses do not deliver more than the shorter ones.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The linearity is outside its range.</exception>
    public static PulseFit Of(PulseTest test, Ratio? linearity = null)
    {
        ArgumentNullException.ThrowIfNull(test);
        double within = Guard.Between(
            linearity ?? Ratio.FromPercent(5), Ratio.FromPercent(0.5), Ratio.FromPercent(20), "Give the deviation from the line that still counts as linear.", nameof(linearity)).DecimalFractions;
        double[] widths = [.. test.Readings.Select(reading => reading.SecondsOpen).Distinct().OrderDescending()];

        // From the longest half on, as far down as the next width lies on the line.
        int count = Math.Max(MinimumOnLine, (widths.Length + 1) / 2);
        PulseReading[] onLine = NotShorter(test, widths[count - 1]);
        LinearFit fit = Through(test, onLine);
        int longest = count;
        while (count < widths.Length && !IsBent(test, fit, widths[count]))
        {
            onLine = NotShorter(test, widths[count]);
            fit = Through(test, onLine);
            count++;
        }

        if (count < widths.Length && count > longest)
        {
            // The last widths before the bend may have begun to bend, by less than readings show.
            onLine = NotShorter(test, widths[Math.Max(longest, count - LeftOut) - 1]);
            fit = Through(test, onLine);
        }

        if (!(fit.Factors[0] > 0))
        {
            throw new ArgumentException(
                $"{nameof(test)}: longer pulses do not deliver more. Check the widths and masses of {test.Name}, and whether the injector was held open.", nameof(test));
        }

        double shortest = onLine.Min(reading => reading.SecondsOpen);
        int[] places = [.. Enumerable.Range(0, test.Readings.Count).Where(place => test.Readings[place].SecondsOpen >= shortest)];
        return new(test, fit, onLine, within, [.. fit.Outliers().Select(outlier => places[outlier])]);
    }

    /// <summary>
    /// The line as uncertain inputs of a system with such injectors: a factor on their flow and an offset of their dead time, correlated as they were measured. Each is normal, with the standard deviation
    /// of a normal whose 95 % are as wide as the interval.
    /// </summary>
    /// <param name="described">The injector as the system has it: the factor multiplies its flow, the offset is added to its dead times. Those of <see cref="MeasuredInjector"/> have this line's.</param>
    /// <returns>The pair, for <see cref="UncertainSystem"/>.</returns>
    /// <exception cref="ArgumentException">The readings do not bound the time offset.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The described dead times do not cover this test's voltage and pressure, or what was measured is further from the described injector than the inputs may be.
    /// </exception>
    public CorrelatedInputs InputsOn(Injector described)
    {
        ArgumentNullException.ThrowIfNull(described);
        if ((MinimumTimeOffset, MaximumTimeOffset) is not ({ } least, { } most))
        {
            throw new ArgumentException($"The readings of {Test.Name} do not bound the time offset, so that no dead time can be drawn. Weigh more, or longer pulses.", nameof(described));
        }

        double there = described.StaticAt(Test.Differential.Pascals, Test.Fluid.Density.KilogramsPerCubicMeter);
        double share = (MaximumSlope - Slope) / Slope / PooledMeans.StatedReach;
        double own = Math.Sqrt(Math.Max(0, (share * share) - Math.Pow(Test.Calibration.DecimalFractions, 2)));
        return CorrelatedInputs.Of(
            UncertainInput.InjectorFlowFactor(MeasuredDistribution.Share(Slope.CubicMetersPerSecond / there, share)),
            UncertainInput.DeadTimeOffset(MeasuredDistribution.About(
                (TimeOffset - described.DeadTime.At(Test.Voltage, Test.Differential)).Seconds, (most - least).Seconds / 2 / PooledMeans.StatedReach, Duration.FromSeconds)),

            // What all readings have in common moves the slope alone.
            Ratio.FromDecimalFractions(share > 0 ? Math.Clamp(Correlation.DecimalFractions * own / share, -Certain, Certain) : 0));
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Slope, offset and linear flow range.</summary>
    /// <returns>For instance <c>458 mL/min (455 mL/min to 461 mL/min), offset 1.001 ms (0.998 ms to 1.004 ms), linear from 1.500 ms</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);


    private static PulseReading[] NotShorter(PulseTest test, double shortest) => [.. test.Readings.Where(reading => reading.SecondsOpen >= shortest)];

    private static LinearFit Through(PulseTest test, PulseReading[] onLine) => LinearFit.Of(
        [.. onLine.Select(reading => new[] { reading.SecondsOpen, -1 })],
        [.. onLine.Select(reading => reading.KilogramsEach)],
        [.. onLine.Select(reading => test.Scale.Kilograms / reading.Injections)]);

    // The mean of a width is known better than one of its readings.
    private static bool IsBent(PulseTest test, LinearFit fit, double width)
    {
        PulseReading[] readings = [.. test.Readings.Where(reading => reading.SecondsOpen.Equals(width))];
        (double line, double deviation) = fit.At([width, -1]);
        double[] weights = [.. readings.Select(reading => Math.Pow(reading.Injections / test.Scale.Kilograms, 2))];
        double mean = readings.Zip(weights, (reading, weight) => reading.KilogramsEach * weight).Sum() / weights.Sum();
        double own = fit.Scale / Math.Sqrt(weights.Sum());
        return Math.Abs(mean - line) > (fit.Student(Departure) * Math.Sqrt((deviation * deviation) + (own * own))) + (LastDigits * mean);
    }

    /// <summary>The offsets t_o at which slope · t_o differs from the fitted delivery by no more than t standard deviations of that difference.</summary>
    private static (double Minimum, double Maximum)? Fieller(LinearFit fit, double student)
    {
        double square = student * student;
        double a = (fit.Factors[0] * fit.Factors[0]) - (square * fit.Covariance(0, 0));
        double b = (fit.Factors[0] * fit.Factors[1]) - (square * fit.Covariance(0, 1));
        double c = (fit.Factors[1] * fit.Factors[1]) - (square * fit.Covariance(1, 1));
        double root = (b * b) - (a * c);

        // Readings without any scatter leave a last bit of either sign.
        return a > 0 && root >= -LastDigits * b * b ? ((b - Math.Sqrt(Math.Max(0, root))) / a, (b + Math.Sqrt(Math.Max(0, root))) / a) : null;
    }
}
