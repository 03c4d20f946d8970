using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>A test planned before it is made: which pulse widths, how many pulses a weighing, how often each, so that the time offset is known within a wanted interval.</summary>
/// <remarks>
/// The interval is the one <see cref="PulseFit"/> would give: Student's t by the widths and the scatter of a weighing, m = ρ Q (t − t_o). First as many pulses a weighing as the vessel and patience allow, then more
/// repeats. Above the shortest pulse taken for linear lie as many widths as below it: the lower ones show where the linear flow range ends, and are not counted on for the line.
/// Readings that scatter more than the scale was said to need more of them.
/// </remarks>
/// <example>
/// <code>
/// PulsePlan plan = PulsePlan.For(
///     offsetWithin: Duration.FromMicroseconds(3),
///     flow: VolumeFlow.FromMillilitersPerMinute(460),
///     density: Density.FromKilogramsPerCubicMeter(683.8),
///     offset: Duration.FromMilliseconds(1),
///     linearFrom: Duration.FromMilliseconds(1.6),
///     longest: Duration.FromMilliseconds(10),
///     scale: Mass.FromMilligrams(10),
///     period: Duration.FromMilliseconds(20),
///     vessel: Mass.FromGrams(150));
/// Console.WriteLine(plan);
/// </code>
/// </example>
public sealed record PulsePlan : IReadable
{
    private const double Confidence = 0.95;
    private const int Widths = 5;
    private const int FirstRepeats = 2;
    private const int MaximumRepeats = 50;
    private const int MinimumPulses = 100;
    private const int MaximumPulses = 100_000;

    private static readonly Identity<PulsePlan> _identity = new Identity<PulsePlan>()
        .Numbers(plan => [.. plan.Pulses.Select(pulse => pulse.Seconds)])
        .Value(plan => plan.Injections)
        .Value(plan => plan.Repeats)
        .Number(plan => plan.OffsetWithin.Seconds)
        .Number(plan => plan.SlopeWithin.DecimalFractions)
        .Number(plan => plan.Time.Seconds)
        .Value(plan => plan.IsEnough);

    private PulsePlan(Duration[] pulses, int injections, int repeats, double offset, double slope, Duration time, bool isEnough)
    {
        (Pulses, Injections, Repeats) = (Array.AsReadOnly(pulses), injections, repeats);
        (OffsetWithin, SlopeWithin, Time, IsEnough) = (Duration.FromSeconds(offset), Ratio.FromDecimalFractions(slope), time, isEnough);
    }

    /// <summary>The pulse widths, rising.</summary>
    public IReadOnlyList<Duration> Pulses { get; }

    /// <summary>How many pulses a weighing.</summary>
    public int Injections { get; }

    /// <summary>How often each width is weighed.</summary>
    public int Repeats { get; }

    /// <summary>Half the interval of 95 % that the time offset will have, if weighings scatter as was said.</summary>
    public Duration OffsetWithin { get; }

    /// <summary>Half that of the slope, as a share of it, without what all readings have in common.</summary>
    public Ratio SlopeWithin { get; }

    /// <summary>How long the injector will pulse, without the weighing.</summary>
    public Duration Time { get; }

    /// <summary>False where even the longest test does not bring the offset within what was wanted.</summary>
    public bool IsEnough { get; }

    /// <summary>Plans a test.</summary>
    /// <param name="offsetWithin">Half the interval of 95 % wanted of the time offset, 0.1 to 1,000 µs.</param>
    /// <param name="flow">What the injector is thought to pass, 20 to 10,000 mL/min.</param>
    /// <param name="density">Of the test liquid, 600 to 1,200 kg/m³.</param>
    /// <param name="offset">What its time offset is thought to be, 0 to 5 ms.</param>
    /// <param name="linearFrom">The shortest pulse thought to be linear, over the offset.</param>
    /// <param name="longest">The longest that will be weighed: at least 1 ms over the shortest linear one, under the period.</param>
    /// <param name="scale">Standard deviation of one weighing, 0.1 mg to 100 g.</param>
    /// <param name="period">From one pulse to the next, over 1 to 1,000 ms.</param>
    /// <param name="vessel">The most that is collected in one weighing, 1 g to 20 kg.</param>
    /// <returns>The plan; where no test would do, the longest there is, and <see cref="IsEnough"/> is false.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or 100 of the longest pulses are too much for the vessel.</exception>
    public static PulsePlan For(
        Duration offsetWithin,
        VolumeFlow flow,
        Density density,
        Duration offset,
        Duration linearFrom,
        Duration longest,
        Mass scale,
        Duration period,
        Mass vessel)
    {
        double wanted = Guard.Between(
            offsetWithin, Duration.FromMicroseconds(0.1), Duration.FromMicroseconds(1000), "Give half the interval within which the time offset is wanted.", nameof(offsetWithin)).Seconds;
        double slope = Guard.Between(flow, VolumeFlow.FromMillilitersPerMinute(20), VolumeFlow.FromMillilitersPerMinute(10_000), "Give the flow of one injector, roughly.", nameof(flow)).CubicMetersPerSecond
            * Guard.Between(
                density, Density.FromKilogramsPerCubicMeter(600), Density.FromKilogramsPerCubicMeter(1200), "Give the liquid's density at its temperature.", nameof(density)).KilogramsPerCubicMeter;
        double at = Guard.Between(offset, Duration.Zero, Duration.FromMilliseconds(5), "Give the time offset, roughly.", nameof(offset)).Seconds;
        double from = Guard.Above(linearFrom, offset, Duration.FromMilliseconds(50), "Give the shortest pulse thought to be linear.", nameof(linearFrom)).Seconds;
        double every = Guard.Between(period, Duration.FromMilliseconds(1), Duration.FromSeconds(1), "Give the time from one pulse to the next.", nameof(period)).Seconds;
        double last = Guard.Between(
            longest, linearFrom + Duration.FromMilliseconds(1), Duration.FromMilliseconds(100), "Weigh pulses at least 1 ms longer than the shortest linear one.", nameof(longest)).Seconds;
        Guard.Above(period, longest, Duration.FromSeconds(1), "The injector must close between two pulses.", nameof(period));
        double weighing = Guard.Between(scale, Mass.FromMilligrams(0.1), Mass.FromGrams(100), "Give the standard deviation of one weighing.", nameof(scale)).Kilograms;
        double most = Guard.Between(vessel, Mass.FromGrams(1), Mass.FromKilograms(20), "Give the most that is collected in one weighing.", nameof(vessel)).Kilograms;
        double each = slope * (last - at);
        int injections = (int)Math.Min(MaximumPulses, Math.Floor(most / each));
        if (injections < MinimumPulses)
        {
            throw Guard.OutOfRange(
                nameof(vessel),
                Readable.Of(vessel),
                $"at least {Readable.Of(Mass.FromKilograms(each * MinimumPulses))}, which {MinimumPulses} of the longest pulses deliver",
                "Take a larger vessel or a shorter longest pulse.");
        }

        double[] linear = [.. Enumerable.Range(0, Widths).Select(place => from + ((last - from) * place / (Widths - 1)))];
        double[] shorter = [.. Enumerable.Range(1, Widths - 2).Select(place => from - ((from - at) * place / (Widths - 1)))];
        int repeats = FirstRepeats;
        while (repeats < MaximumRepeats && Within(repeats, injections).Offset > wanted)
        {
            repeats++;
        }

        // No more pulses than are needed, in round numbers.
        if (Within(repeats, injections).Offset <= wanted && repeats == FirstRepeats)
        {
            injections = Math.Clamp(RoundUp(injections * Within(repeats, injections).Offset / wanted), MinimumPulses, injections);
        }

        (double offsetHalf, double slopeHalf) = Within(repeats, injections);
        return new(
            [.. shorter.Concat(linear).Order().Select(seconds => Duration.FromMicroseconds(Math.Round(seconds * 1e6)))],
            injections,
            repeats,
            offsetHalf,
            slopeHalf,
            Duration.FromSeconds(every * injections * repeats * (linear.Length + shorter.Length)),
            offsetHalf <= wanted);

        // Of the widths on the line alone: whether the others are linear is what the test is to show.
        (double Offset, double Slope) Within(int count, int pulses)
        {
            double[] widths = [.. Enumerable.Repeat(linear, count).SelectMany(all => all)];
            double mean = widths.Average();
            double squares = widths.Sum(width => Math.Pow(width - mean, 2));
            double student = MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, widths.Length - 2, (1 + Confidence) / 2);
            double deviation = weighing / pulses / slope;
            return (
                student * deviation * Math.Sqrt((1.0 / widths.Length) + (Math.Pow(mean - at, 2) / squares)),
                student * deviation / Math.Sqrt(squares));
        }
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PulsePlan? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Widths, pulses, repeats, and what they will show.</summary>
    /// <returns>For instance <c>8 widths from 1.15 ms to 10.00 ms, 2 times 500 pulses each: offset within 2.9 µs, 160 s of pulsing</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => IsEnough
        ? Statement.Of(
            "bench.plan",
            $"{Pulses.Count} widths from {Pulses[0]} to {Pulses[^1]}, {Repeats} times {Injections} pulses each: offset within {OffsetWithin.Microseconds:N1} µs, {Time:time} of pulsing")
        : Statement.Of(
            "bench.plan-not-enough",
            $"{Pulses.Count} widths from {Pulses[0]} to {Pulses[^1]}, {Repeats} times {Injections} pulses each, bring the offset within {OffsetWithin.Microseconds:N1} µs and no closer: take a better scale or a larger vessel");

    private static int RoundUp(double count)
    {
        double unit = Math.Pow(10, Math.Max(0, Math.Floor(Math.Log10(Math.Max(count, 1))) - 1));
        return (int)(Math.Ceiling(count / unit) * unit);
    }
}
