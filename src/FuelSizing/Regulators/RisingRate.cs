using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Regulators;

/// <summary>
/// A rising-rate unit: over its onset the rail rises by the gain for each 1 of boost, so the injector's differential
/// pressure rises by (gain − 1); up to its onset it follows the manifold one for one.
/// </summary>
/// <remarks>
/// rail = min(ceiling, base + min(b, o) + g · max(0, b − o)), b boost, o onset, g gain. Gain 1 is a manifold-referenced
/// regulator. Gains from about 4 to 12 are common practice, no source. Every pump, hose, filter and injector sees the
/// pressure: set a ceiling that all of them are rated for.
/// </remarks>
public sealed record RisingRate : PressureRegulator
{
    private static readonly Identity<RisingRate> _identity = new Identity<RisingRate>()
        .Number(regulator => regulator.Base.Pascals)
        .Number(regulator => regulator.Gain)
        .Number(regulator => regulator.Onset.Pascals)
        .Number(regulator => regulator.Ceiling?.Pascals)
        .Number(regulator => regulator.OffsetPascals)
        .Number(regulator => regulator.MinimumReturnFlow.CubicMetersPerSecond)
        .Value(regulator => regulator.Flow);

    internal const double MinimumGain = 1;

    internal const double MaximumGain = 15;

    private RisingRate(
        Pressure basePressure, double gain, Pressure onset, Pressure? ceiling, VolumeFlow minimumReturnFlow)
        : base(
            minimumReturnFlow,
            new(basePressure.Pascals, 1, gain, onset.Pascals, ceiling?.Pascals ?? double.PositiveInfinity))
    {
        (Base, Gain, Onset, Ceiling) = (basePressure, gain, onset, ceiling);
    }

    /// <summary>Rail gauge pressure with the manifold at atmospheric pressure; zero for a unit that only adds.</summary>
    public Pressure Base { get; }

    /// <summary>Rise of rail pressure for each 1 of boost over the onset.</summary>
    public double Gain { get; }

    /// <summary>Boost at which the gain sets in.</summary>
    public Pressure Onset { get; }

    /// <summary>Highest rail gauge pressure that the unit sets, if it has such a stop.</summary>
    public Pressure? Ceiling { get; }

    /// <inheritdoc/>
    public override Statement Text => WithFlowText(Ceiling is { } ceiling
        ? Statement.Of(
            "regulator.rising-rate-with-ceiling", $"rising-rate, base {Base}, gain {Gain:0.##} from {Onset:boost}, ceiling {ceiling}")
        : Statement.Of("regulator.rising-rate", $"rising-rate, base {Base}, gain {Gain:0.##} from {Onset:boost}"));

    /// <summary>Describes the unit.</summary>
    /// <param name="basePressure">
    /// Rail gauge pressure with the manifold at atmospheric pressure, 0 to 1,500 kPa. Zero only for a unit in series
    /// with a base regulator.
    /// </param>
    /// <param name="gain">Rise of rail pressure for each 1 of boost, 1 to 15.</param>
    /// <param name="onset">Boost at which the gain sets in, 0 to 200 kPa.</param>
    /// <param name="ceiling">Highest rail gauge pressure it sets, from the base to 2,000 kPa; none if not given.</param>
    /// <param name="minimumReturnFlow">Smallest returned flow at which it governs, 0 to 500 L/h; zero if not given.</param>
    /// <returns>The unit.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static RisingRate From(
        Pressure basePressure,
        double gain,
        Pressure onset,
        Pressure? ceiling = null,
        VolumeFlow? minimumReturnFlow = null) =>
        new(
            Guard.Between(
                basePressure,
                Pressure.Zero,
                Pressure.FromKilopascals(1500),
                "Give the rail's gauge pressure with the manifold at atmospheric pressure.",
                nameof(basePressure)),
            Guard.Number(gain, MinimumGain, MaximumGain, "Give the rise of rail pressure for each 1 of boost.", nameof(gain)),
            Guard.Between(
                onset,
                Pressure.Zero,
                Pressure.FromKilopascals(200),
                "Give the boost at which the rail starts to rise faster than the manifold.",
                nameof(onset)),
            ceiling is { } maximum
                ? Guard.Between(
                    maximum,
                    basePressure,
                    Pressure.FromKilopascals(2000),
                    "Give the gauge pressure that the unit never passes.",
                    nameof(ceiling))
                : null,
            WithinReturn(minimumReturnFlow, nameof(minimumReturnFlow)));

    /// <summary>The same regulator with how its pressure changes with what returns through it.</summary>
    /// <param name="flow">Slope or measured curve, hysteresis, what acts on its outlet.</param>
    /// <returns>The regulator.</returns>
    public RisingRate WithFlow(RegulatorFlow flow)
    {
        ArgumentNullException.ThrowIfNull(flow);
        return With(flow);
    }

    /// <summary>The same with a flow description, or without.</summary>
    internal RisingRate With(RegulatorFlow? flow) => this with { Flow = flow };

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(RisingRate? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override PressureRegulator WithBase(Pressure basePressure) => From(basePressure, Gain, Onset, Ceiling, MinimumReturnFlow).With(Flow);

    internal override RisingRate RisingUnit => this;

    /// <summary>The same unit as found: base and onset off by so many Pa, the gain by so much, wherever that leads.</summary>
    internal override RisingRate Found(double offBase, double offGain, double offOnset) =>
        new(
            Base + Pressure.FromPascals(offBase),
            Gain + offGain,
            Onset + Pressure.FromPascals(offOnset),
            Ceiling,
            MinimumReturnFlow)
        { OffsetPascals = OffsetPascals, Flow = Flow };
}

/// <summary>
/// A rising-rate unit on the return line, in series with a base regulator: the higher of the two pressures governs.
/// </summary>
/// <remarks>
/// The unit throttles what the base regulator lets back to the tank. While it asks for less than the base regulator, it
/// stands open and does nothing; once it asks for more, the rail follows the unit. The pressure that the unit holds is at the base
/// regulator's outlet: where a share of it acts on that one's seat (<see cref="RegulatorFlow.WithOutletShare"/>), it adds to the base
/// pressure, all of it at a share of 1.
/// </remarks>
public sealed record RegulatorSeries : PressureRegulator
{
    private static readonly Identity<RegulatorSeries> _identity = new Identity<RegulatorSeries>()
        .Value(regulator => regulator.BaseRegulator)
        .Value(regulator => regulator.Unit)
        .Value(regulator => regulator.IsGainQuoted)
        .Number(regulator => regulator.OffsetPascals)
        .Number(regulator => regulator.MinimumReturnFlow.CubicMetersPerSecond);

    private RegulatorSeries(PressureRegulator baseRegulator, RisingRate unit)
        : base(UnitMath.Max(baseRegulator.MinimumReturnFlow, unit.MinimumReturnFlow), null) =>
        (BaseRegulator, Unit) = (baseRegulator, unit);

    /// <summary>The regulator at the rail.</summary>
    public PressureRegulator BaseRegulator { get; }

    /// <summary>The unit in series with it.</summary>
    public RisingRate Unit { get; }

    /// <summary>True if of the unit only a quoted gain is known, which may be counted over the base pressure or from none.</summary>
    public bool IsGainQuoted { get; private init; }

    /// <inheritdoc/>
    public override Statement Text => IsGainQuoted
        ? Statement.Of("regulator.series-quoted", $"{BaseRegulator}; in series with it {Unit}, its gain quoted: over the base pressure, or the higher of the two")
        : Statement.Of("regulator.series", $"{BaseRegulator}; in series with it {Unit}");

    /// <summary>Describes the pair.</summary>
    /// <param name="baseRegulator">The regulator at the rail.</param>
    /// <param name="unit">The rising-rate unit on the return line.</param>
    /// <returns>The pair.</returns>
    /// <exception cref="ArgumentNullException">One of them is missing.</exception>
    public static RegulatorSeries Of(PressureRegulator baseRegulator, RisingRate unit)
    {
        ArgumentNullException.ThrowIfNull(baseRegulator);
        ArgumentNullException.ThrowIfNull(unit);
        return new(baseRegulator, unit);
    }

    /// <summary>The same pair where of the unit only the quoted gain is known.</summary>
    /// <remarks>
    /// By common practice, no source, a gain is quoted over base pressure: base pressure + gain × boost. A unit in series may also hold gain × boost alone, the rail then
    /// being the higher of base regulator and unit. Each check takes the reading that is conservative for it: the lower for lean mixture, injectors and supply,
    /// the higher for ratings and rich mixture. Results show the lower.
    /// </remarks>
    /// <returns>The pair.</returns>
    public RegulatorSeries WithQuotedGain() => this with { IsGainQuoted = true };

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(RegulatorSeries? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override RisingRate RisingUnit => Unit;

    internal override PressureRegulator Found(double offBase, double offGain, double offOnset) =>
        Of(BaseRegulator.Found(offBase, 0, 0), Unit.Found(offBase, offGain, offOnset)) with { OffsetPascals = OffsetPascals, IsGainQuoted = IsGainQuoted };

    internal override bool ChangesWithFlow => BaseRegulator.ChangesWithFlow || Unit.ChangesWithFlow || IsGainQuoted;

    internal override bool HasBand => BaseRegulator.HasBand || Unit.HasBand || IsGainQuoted;

    internal override bool IsFlowStated => BaseRegulator.IsFlowStated || Unit.IsFlowStated;

    internal override RegulatorFlow? FlowAtRail => BaseRegulator.FlowAtRail;

    internal override bool IsPastEnd(double returned) => BaseRegulator.IsPastEnd(returned) || Unit.IsPastEnd(returned);

    internal override double HeldPascals(double boost, double returned, double outlet, RegulatorReading reading)
    {
        // Between the two there is what the unit holds, or what the return line takes where the unit stands open.
        double between = Math.Max(Unit.HeldPascals(boost, returned, outlet, reading), outlet);
        double held = RailPressure.InSeries<Real>(BaseRegulator.HeldPascals(boost, returned, between, reading), between);
        double over = Unit.Flow is { } flow ? RailPressure.Held<Real>(OverBase(boost), flow.RisePascals(returned, reading), flow.OutletShare, outlet) : OverBase(boost);
        return WithQuoted(held, over, reading);
    }

    internal override double StatedPascals(double boost, RegulatorReading reading)
    {
        double between = Unit.StatedPascals(boost, reading);
        double atRail = BaseRegulator.StatedPascals(boost, reading) + ((Real)(BaseRegulator.Flow?.OutletShare ?? 0) * Math.Max(0, between));
        double over = OverBase(boost) + (Real)(Unit.Flow?.BandPascals(reading) ?? 0);
        return WithQuoted(RailPressure.InSeries<Real>(atRail, between), over, reading);
    }

    /// <summary>What the unit holds where its gain counts over the base regulator's pressure without boost, Pa.</summary>
    internal double OverBase(double boost) => SettingOverBase.At<Real>(boost) + (Real)Unit.OffsetPascals;

    /// <summary>The same as base, gain, onset and ceiling, the unit's own offset apart.</summary>
    internal RailSetting SettingOverBase
    {
        get
        {
            RailSetting own = Unit.Setting!.Value;
            return own with { Base = own.Base + BaseRegulator.SetPascals(0) };
        }
    }

    private double WithQuoted(double held, double over, RegulatorReading reading) =>
        (Real)(IsGainQuoted && reading == RegulatorReading.Upper ? Math.Max(held, over) : held) + OffsetPascals;

    internal override bool IsByLaw => BaseRegulator.IsByLaw;

    private protected override Real KindPascals(double boost) =>
        RailPressure.InSeries<Real>(BaseRegulator.SetPascals(boost), Unit.SetPascals(boost));

    internal override PressureRegulator WithBase(UnitsNet.Pressure basePressure) =>
        throw new ArgumentException(
            $"The regulator is a series of two ({Description}), each with a base of its own. Ask of one regulator.",
            nameof(basePressure));
}
