using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>
/// Base, gain and onset of a regulator by gauge readings, with intervals, and the description that a fuel system takes.
/// <para><c>p_s = p_base + G_0 min(p_b; p_on) + G max(0; p_b − p_on) + m_ret (Q_ret − Q_set)</c></para>
/// </summary>
/// <remarks>
/// <para><c>p_s</c> (Pa): rail pressure, gauge; <c>p_base</c> (Pa): base pressure; <c>G_0</c> (1): 1 where the regulator follows, else 0; <c>G</c> (1): gain; <c>p_b</c> (Pa): applied pressure; <c>p_on</c> (Pa): onset;
/// <c>m_ret</c> (Pa·s/m³): slope with the returned flow <c>Q_ret</c> (m³/s) about its mean <c>Q_set</c>.</para>
/// <para>Intervals hold the truth in 95 of 100 tests: by the profile of the sum of squares over the onset and Fisher's F, the scatter never less than that of both gauges; and what the readings of a
/// gauge have in common. Where a line without a kink fits as well (99 %), or the gain is not told from the one below the onset, there is no onset, and gain and base are those of a straight line.</para>
/// <para>Range: the applied pressures of the test. Outside: nothing is said, as of a ceiling that was not reached; one that was reached is not fitted, and shows as readings far off.</para>
/// </remarks>
public sealed class RegulatorTestFit : IReadable
{
    private const double Confidence = 0.95;
    private const double MinimumChance = 0.01;
    private const double LastDigits = 1e-9;
    private const double MinimumApart = 1e-4;

    private readonly double _lackOfFit;
    private readonly bool _follows;

    private RegulatorTestFit(RegulatorTest test, BrokenLine line, LinearFit straight, VolumeFlow? statedAt)
    {
        (Test, StatedAt) = (test, statedAt);
        double below = test.FollowsManifold ? 1 : 0;
        double shared = GainShared(test);
        double slope = below + line.Best.Rise;
        bool isGain = line.IsKinked && !Holds(Widened(line.Slope, slope, shared * Math.Abs(slope)), below);
        LinearFit fit = isGain ? line.Best.Fit : straight;
        double pascals = fit.Factors[0];
        double gain = isGain ? slope : straight.Factors[1];
        double effect = fit.Factors.Count > 2 ? fit.Factors[2] : 0;
        (double?, double?) Straight(int factor) => (
            straight.Factors[factor] - (straight.Reach(Confidence) * straight.StatedDeviation(factor)), straight.Factors[factor] + (straight.Reach(Confidence) * straight.StatedDeviation(factor)));

        Gain = gain;
        (MinimumGain, MaximumGain) = Widened(isGain ? line.Slope : Straight(1), gain, shared * Math.Abs(gain));
        Base = Kilopascals(pascals);
        (MinimumBase, MaximumBase) = Pressures(Widened(
            isGain ? line.Intercept : Straight(0), pascals, Math.Sqrt(Math.Pow(test.Rail.SharedPascals(pascals), 2) + Math.Pow((isGain ? below : gain) * test.Applied.Zero.Pascals, 2))));
        if (isGain)
        {
            Onset = Kilopascals(line.Kink);
            (MinimumOnset, MaximumOnset) = Pressures(Widened(line.KinkInterval, line.Kink, test.Applied.SharedPascals(line.Kink)));

            // A lower end under no boost means the same as one at no boost.
            MinimumOnset = MinimumOnset is { } least && least < Pressure.Zero ? Pressure.Zero : MinimumOnset;
        }

        if (statedAt is not null)
        {
            FlowRise = Kilopascals(effect * FlowStep.CubicMetersPerSecond);
            (double? Minimum, double? Maximum) rise = isGain ? line.Effect : Straight(2);
            (MinimumFlowRise, MaximumFlowRise) = Pressures((rise.Minimum * FlowStep.CubicMetersPerSecond, rise.Maximum * FlowStep.CubicMetersPerSecond));
        }

        // Stated to know nothing of the applied pressure, and it follows from 0 on.
        _follows = test.FollowsManifold ? !isGain : isGain && Holds((MinimumGain, MaximumGain), 1) && MinimumOnset is { Pascals: <= 0 };
        if (isGain && _follows)
        {
            (Onset, MinimumOnset, MaximumOnset) = (null, null, null);
        }

        Scatter = Kilopascals(fit.Scale * Math.Sqrt(Math.Pow(test.Rail.Reading.Pascals, 2) + Math.Pow(below * test.Applied.Reading.Pascals, 2)));
        Outliers = Array.AsReadOnly([.. fit.OutliersBeyondStated()]);
        _lackOfFit = statedAt is null ? fit.LackOfFit([.. test.Readings.Select(reading => reading.Applied.Pascals)]) : double.NaN;
        IsNotTold = !isGain && !Holds((MinimumGain, MaximumGain), below);
        Regulator = Described(below, isGain && !_follows);
    }

    /// <summary>The rise of returned flow that <see cref="FlowRise"/> goes with.</summary>
    public static VolumeFlow FlowStep { get; } = VolumeFlow.FromLitersPerHour(100);

    /// <summary>The test.</summary>
    public RegulatorTest Test { get; }

    /// <summary>Rail gauge pressure with the reference at atmospheric pressure.</summary>
    public Pressure Base { get; }

    /// <summary>Lower end of its interval of 95 %; none where no reading lies below the onset, so that base and onset go together.</summary>
    public Pressure? MinimumBase { get; }

    /// <summary>Upper end; none likewise.</summary>
    public Pressure? MaximumBase { get; }

    /// <summary>Rise of rail pressure for each 1 of applied pressure: over the onset if there is one, else over all readings.</summary>
    public double Gain { get; }

    /// <summary>Lower end of its interval of 95 %.</summary>
    public double? MinimumGain { get; }

    /// <summary>Upper end; none where the onset may lie so high that a single pressure is left over it.</summary>
    public double? MaximumGain { get; }

    /// <summary>Applied pressure from which the gain acts; none where no gain is told from the slope below it.</summary>
    public Pressure? Onset { get; }

    /// <summary>Lower end of its interval of 95 %; none where no reading lies below it.</summary>
    public Pressure? MinimumOnset { get; }

    /// <summary>Upper end.</summary>
    public Pressure? MaximumOnset { get; }

    /// <summary>By how much the pressure rises while the returned flow rises by <see cref="FlowStep"/>; none where the flow was not measured or was the same.</summary>
    public Pressure? FlowRise { get; }

    /// <summary>Lower end of its interval of 95 %.</summary>
    public Pressure? MinimumFlowRise { get; }

    /// <summary>Upper end.</summary>
    public Pressure? MaximumFlowRise { get; }

    /// <summary>Mean returned flow, at which the base is stated; none where it was not measured or was the same.</summary>
    public VolumeFlow? StatedAt { get; }

    /// <summary>Standard deviation of a reading by the scatter about the line, below the onset.</summary>
    public Pressure Scatter { get; }

    /// <summary>Places in <see cref="RegulatorTest.Readings"/> of readings further off than chance brings one in a hundred tests, and than the gauges explain.</summary>
    public IReadOnlyList<int> Outliers { get; }

    /// <summary>False where readings at one applied pressure agree better among each other than with the line, as with a ceiling or hysteresis; none without repeats, or where the returned flow counts.</summary>
    public bool? IsBrokenLine => double.IsNaN(_lackOfFit) ? null : _lackOfFit >= MinimumChance;

    /// <summary>The regulator, by the figures found; none where they are not bounded or are of no regulator that is modelled: <see cref="Text"/> says why.</summary>
    public PressureRegulator? Regulator { get; }

    /// <summary>Base, gain and onset, or why they cannot be told, as a code with its figures.</summary>
    public Statement Text => (MinimumBase, MaximumBase) is not ({ } least, { } most)
        ? Statement.Of("bench.regulator-onset-below", $"{Test.Name}: {GainText} from {MaximumOnset!.Value:boost} or less: no reading lies below the onset, so neither onset nor base is told. Read at lower pressures, from 0 on")
        : Onset is not { } onset ? IsNotTold
            ? Gain > (Test.FollowsManifold ? 1 : 0)
                ? Statement.Of("bench.regulator-gain-unclear", $"{Test.Name}: rises by {GainText} over all applied pressures, which may be more from an onset on that the readings do not tell. Read at more pressures, from 0 on")
                : Statement.Of("bench.regulator-no-kind", $"{Test.Name}: rises by {GainText}, less than one for one: check hose and diaphragm, and what the reference is piped to")
            : _follows
                ? Statement.Of("bench.regulator-follows", $"{Test.Name}: base {Base} ({least} to {most}), follows the applied pressure: {GainText}, no onset found{Outside}")
                : Statement.Of("bench.regulator-fixed", $"{Test.Name}: {Base} ({least} to {most}), the same at any applied pressure: {GainText}{Outside}")
        : MaximumGain is null
            ? Statement.Of("bench.regulator-gain-open", $"{Test.Name}: base {Base} ({least} to {most}), {GainText} from {MinimumOnset ?? Pressure.Zero:boost} to {MaximumOnset!.Value:boost}. Read at more pressures over the onset")
            : Gain < RisingRate.MinimumGain ? Statement.Of("bench.regulator-falls-short", $"{Test.Name}: base {Base} ({least} to {most}), {GainText} over {onset:boost}, less than one for one: check hose and diaphragm")
            : Statement.Of("bench.regulator-rising", $"{Test.Name}: base {Base} ({least} to {most}), {GainText} from {onset:boost} ({MinimumOnset!.Value:boost} to {MaximumOnset!.Value:boost}){Outside}");

    /// <summary>Fits the broken line.</summary>
    /// <param name="test">The readings.</param>
    /// <returns>The fit.</returns>
    /// <exception cref="ArgumentException">The returned flow goes with the applied pressure, so that their effects cannot be told apart.</exception>
    public static RegulatorTestFit Of(RegulatorTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        double[] applied = [.. test.Readings.Select(reading => reading.Applied.Pascals)];
        double[] rail = [.. test.Readings.Select(reading => reading.RailGauge.Pascals)];
        double[]? flows = test.Readings[0].Returned is null ? null : [.. test.Readings.Select(reading => reading.Returned!.Value.CubicMetersPerSecond)];
        VolumeFlow? statedAt = flows is not null && flows.Max() - flows.Min() >= MinimumFlowApart.CubicMetersPerSecond
            ? VolumeFlow.FromCubicMetersPerSecond(flows.Average()).ToUnit(UnitsNet.Units.VolumeFlowUnit.LiterPerHour)
            : null;
        double[]? effect = statedAt is { } mean ? [.. flows!.Select(flow => flow - mean.CubicMetersPerSecond)] : null;
        if (effect is not null)
        {
            LinearFit together = LinearFit.Of([.. applied.Select(pressure => new[] { 1, pressure })], effect, [.. applied.Select(_ => 1.0)]);
            double apart = together.Residuals.Sum(residual => residual * residual) / effect.Sum(flow => flow * flow);
            if (apart < MinimumApart)
            {
                throw new ArgumentException(
                    $"{nameof(test)}: the returned flow of {test.Name} goes with the applied pressure, so that neither's effect can be told from the other's. Read at two flows or more for each of some pressures, or leave the flow out.",
                    nameof(test));
            }
        }

        double below = test.FollowsManifold ? 1 : 0;
        BrokenLine line = BrokenLine.Of(applied, rail, effect, below, test.Applied.Reading.Pascals, test.Rail.Reading.Pascals);
        double deviation = Math.Sqrt(Math.Pow(test.Rail.Reading.Pascals, 2) + Math.Pow(below * test.Applied.Reading.Pascals, 2));
        return new(
            test,
            line,
            LinearFit.Of(
                [.. applied.Select((pressure, reading) => effect is null ? new[] { 1, pressure } : new[] { 1, pressure, effect[reading] })], rail, [.. rail.Select(_ => deviation)]),
            statedAt);
    }

    /// <summary>What was found as uncertain inputs: how far base, gain and onset may be off, normal with the standard deviations that their intervals have, cut off at four of them.</summary>
    /// <remarks>A later onset goes with a higher gain, and a sweep draws them apart: what the rail may be far over the onset is spread more than the readings say, not less.</remarks>
    /// <returns>One input where no gain acts, else three.</returns>
    /// <exception cref="InvalidOperationException">There is no description of the regulator: see <see cref="Text"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A deviation is so wide that it leads beyond what an input takes.</exception>
    public IReadOnlyList<UncertainInput> ToUncertainInputs()
    {
        if (Regulator is null)
        {
            throw new InvalidOperationException($"There is no regulator to draw about: {Text}");
        }

        Pressure wide = Deviation(Base, MinimumBase!.Value, MaximumBase!.Value);
        UncertainInput offset = UncertainInput.RegulatorOffset(MeasuredDistribution.About(0, wide.Pascals, Pressure.FromPascals));
        if (Onset is not { } onset)
        {
            return [offset];
        }

        double factor = Math.Max(MaximumGain!.Value - Gain, Gain - MinimumGain!.Value) / PooledMeans.StatedReach / Gain;
        Pressure early = Deviation(onset, MinimumOnset!.Value, MaximumOnset!.Value);

        // An onset below 0 is none, so it is cut off there.
        Pressure most = Pressure.FromPascals(Math.Min(MeasuredDistribution.Tail * early.Pascals, Regulator.RisingUnit!.Onset.Pascals * (1 - LastDigits)));
        return
        [
            offset,
            UncertainInput.RegulatorGainFactor(MeasuredDistribution.Share(1, factor)),
            UncertainInput.RegulatorOnsetOffset(Distribution.Normal(Pressure.Zero, early, -most, early * MeasuredDistribution.Tail)),
        ];
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Base, gain and onset, or why they cannot be told.</summary>
    /// <returns>For instance <c>unit Q: base 300 kPa (296 kPa to 304 kPa), gain 6.00 (5.83 to 6.18) from 0.16 bar (0.15 bar to 0.17 bar)</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    // What the descriptions of regulators take.
    private static readonly Pressure MinimumDescribed = Pressure.FromKilopascals(100);
    private static readonly Pressure MaximumDescribed = Pressure.FromKilopascals(1500);
    private static readonly Pressure MaximumUnitOnset = Pressure.FromKilopascals(200);
    private static readonly Pressure MaximumFlowRiseDescribed = Pressure.FromKilopascals(500);

    private static readonly VolumeFlow MinimumFlowApart = VolumeFlow.FromLitersPerHour(5);

    /// <summary>True where the slope is neither that stated below the onset nor a gain.</summary>
    private bool IsNotTold { get; }

    private Statement? Outside => Regulator is null
        ? Statement.Of(
            "bench.regulator-outside",
            $"; outside what is described: base {MinimumDescribed} to {MaximumDescribed}, gain {RisingRate.MinimumGain:0} to {RisingRate.MaximumGain:0}, onset to {MaximumUnitOnset:boost}")
        : null;

    private Statement GainText => (MinimumGain, MaximumGain) is ({ } least, { } most)
        ? Statement.Of("bench.regulator-gain", $"gain {Gain:0.00} ({least:0.00} to {most:0.00})")
        : Statement.Of("bench.regulator-gain-over", $"gain {MinimumGain ?? Gain:0.00} or more");

    // Of both gauges: a rail gauge that shows too much shows too much gain, one of boost too little.
    private static double GainShared(RegulatorTest test) => Math.Sqrt(Math.Pow(test.Rail.Span.DecimalFractions, 2) + Math.Pow(test.Applied.Span.DecimalFractions, 2));

    private static bool Holds((double? Minimum, double? Maximum) interval, double value) => !(interval.Minimum > value) && !(interval.Maximum < value);

    /// <summary>An interval, each end as far out as it and what all readings have in common are together.</summary>
    private static (double? Minimum, double? Maximum) Widened((double? Minimum, double? Maximum) interval, double found, double shared)
    {
        double common = PooledMeans.StatedReach * shared;
        double? Out(double? end) => end is { } own ? Math.Sqrt(Math.Pow(own - found, 2) + (common * common)) : null;
        return (found - Out(interval.Minimum), found + Out(interval.Maximum));
    }

    private static Pressure Kilopascals(double pascals) => Pressure.FromPascals(pascals).ToUnit(UnitsNet.Units.PressureUnit.Kilopascal);

    private static (Pressure? Minimum, Pressure? Maximum) Pressures((double? Minimum, double? Maximum) pascals) => (
        pascals.Minimum is { } least ? Kilopascals(least) : null, pascals.Maximum is { } most ? Kilopascals(most) : null);

    private static Pressure Deviation(Pressure found, Pressure least, Pressure most) =>
        Pressure.FromPascals(Math.Max(most.Pascals - found.Pascals, found.Pascals - least.Pascals) / PooledMeans.StatedReach);

    private PressureRegulator? Described(double below, bool isGain)
    {
        if (MinimumBase is null || Base < MinimumDescribed || Base > MaximumDescribed || FlowRise > MaximumFlowRiseDescribed || IsNotTold)
        {
            return null;
        }

        // A pressure that falls with the flow is none that is modelled: held, as far as readings tell.
        RegulatorFlow? flow = FlowRise is not { } rise ? null
            : rise > Pressure.Zero ? RegulatorFlow.Rising(rise, FlowStep, StatedAt!.Value)
            : RegulatorFlow.Constant;
        if (!isGain)
        {
            return _follows ? ManifoldReferenced.From(Base).With(flow) : Fixed.At(Base).With(flow);
        }

        double onset = Onset!.Value.Pascals;
        if (MaximumGain is null || MinimumOnset is null || Gain is < RisingRate.MinimumGain or > RisingRate.MaximumGain || onset > MaximumUnitOnset.Pascals)
        {
            return null;
        }

        if (below > 0)
        {
            return RisingRate.From(Base, Gain, Onset.Value).With(flow);
        }

        // The unit holds G p_b − (G − 1) p_on of its own, or a base over G p_b, and takes over from the base regulator at the onset.
        double missing = Base.Pascals - (Gain * onset);
        double own = Gain > 1 ? -missing / (Gain - 1) : 0;
        return missing > 0 || Gain <= 1 ? RegulatorSeries.Of(Fixed.At(Base).With(flow), RisingRate.From(Kilopascals(Math.Max(0, missing)), Gain, Pressure.Zero).With(flow))
            : own <= MaximumUnitOnset.Pascals ? RegulatorSeries.Of(Fixed.At(Base).With(flow), RisingRate.From(Pressure.Zero, Gain, Kilopascals(own)).With(flow))
            : null;
    }

}
