using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>Limits whose default figures are rules of thumb: common practice, no source.</summary>
public enum RuleOfThumb
{
    /// <summary>Highest duty cycle, 85 %.</summary>
    DutyCycle,

    /// <summary>Pump flow held in reserve, 10 % of the injected flow.</summary>
    PumpReserve,

    /// <summary>Voltage lost in a pump's feed, 5 % of the supply's.</summary>
    FeedDrop,

    /// <summary>Pressure over the fuel's vapour pressure at the pump's inlet, 10 kPa.</summary>
    SuctionMargin,
}

/// <summary>The limits a fuel system is held to.</summary>
public sealed record SizingLimits
{
    private static readonly Identity<SizingLimits> _identity = new Identity<SizingLimits>()
        .Number(limits => limits.DutyCycle.DecimalFractions)
        .Number(limits => limits.PumpReserve.DecimalFractions)
        .Number(limits => limits.RailCeiling?.Pascals)
        .Number(limits => limits.FeedDrop.DecimalFractions)
        .Number(limits => limits.SuctionMargin.Pascals)
        .Value(limits => limits.Mixture);

    private SizingLimits(
        Ratio dutyCycle, Ratio pumpReserve, Pressure? railCeiling, Ratio feedDrop, Pressure suctionMargin)
    {
        (DutyCycle, PumpReserve, RailCeiling) = (dutyCycle, pumpReserve, railCeiling);
        (FeedDrop, SuctionMargin) = (feedDrop, suctionMargin);
        (DutyCycleShare, FeedDropShare, SuctionMarginPascals) = (dutyCycle.DecimalFractions, feedDrop.DecimalFractions, suctionMargin.Pascals);
    }

    /// <summary>
    /// Duty cycle 85 %, pump reserve 10 %, no rail ceiling, 5 % of the supply lost in a pump's feed, 10 kPa over the
    /// fuel's vapour pressure at the pump's inlet: common practice, no source.
    /// </summary>
    public static SizingLimits Default { get; } = Of(Injectors.DutyCycle.DefaultLimit, Ratio.FromPercent(10));

    /// <summary>Highest duty cycle.</summary>
    public Ratio DutyCycle { get; }

    /// <summary>Pump flow held in reserve, as a share of the injected flow.</summary>
    public Ratio PumpReserve { get; }

    /// <summary>Highest rail gauge pressure that hoses, fittings and filter are rated for, if known.</summary>
    public Pressure? RailCeiling { get; }

    /// <summary>Most of the supply's voltage that a pump's feed may lose.</summary>
    public Ratio FeedDrop { get; }

    /// <summary>Least pressure over the fuel's vapour pressure at the pump's inlet.</summary>
    public Pressure SuctionMargin { get; }

    // The same in numbers, for checks that are read by the thousand.
    internal double DutyCycleShare { get; }

    internal double FeedDropShare { get; }

    internal double SuctionMarginPascals { get; }

    /// <summary>The leanest and the richest mixture that the engine may get; none where that is not judged.</summary>
    public MixtureLimits? Mixture { get; private init; }

    /// <summary>The same limits with those of the mixture.</summary>
    /// <param name="mixture">The leanest on boost, and the richest.</param>
    /// <returns>The limits.</returns>
    public SizingLimits With(MixtureLimits mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        return this with { Mixture = mixture };
    }

    /// <summary>The same limits with another highest duty cycle.</summary>
    /// <param name="dutyCycle">10 to 100 %.</param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The duty cycle is outside its range.</exception>
    public SizingLimits WithDutyCycle(Ratio dutyCycle) => Of(dutyCycle, PumpReserve, RailCeiling, FeedDrop, SuctionMargin) with { Mixture = Mixture };

    /// <summary>The same limits with another pump reserve.</summary>
    /// <param name="pumpReserve">Share of the injected flow, 0 to 100 %.</param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The reserve is outside its range.</exception>
    public SizingLimits WithPumpReserve(Ratio pumpReserve) => Of(DutyCycle, pumpReserve, RailCeiling, FeedDrop, SuctionMargin) with { Mixture = Mixture };

    /// <summary>The same limits with what hoses, fittings and filter are rated for.</summary>
    /// <param name="railCeiling">Rail gauge pressure, 100 to 2,000 kPa.</param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is outside its range.</exception>
    public SizingLimits WithRailCeiling(Pressure railCeiling) => Of(DutyCycle, PumpReserve, railCeiling, FeedDrop, SuctionMargin) with { Mixture = Mixture };

    /// <summary>The same limits with another share of the supply's voltage that a pump's feed may lose.</summary>
    /// <param name="feedDrop">0.1 to 30 %.</param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    public SizingLimits WithFeedDrop(Ratio feedDrop) => Of(DutyCycle, PumpReserve, RailCeiling, feedDrop, SuctionMargin) with { Mixture = Mixture };

    /// <summary>The same limits with another margin over the fuel's vapour pressure at the pump's inlet.</summary>
    /// <param name="suctionMargin">0 to 100 kPa.</param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The margin is outside its range.</exception>
    public SizingLimits WithSuctionMargin(Pressure suctionMargin) => Of(DutyCycle, PumpReserve, RailCeiling, FeedDrop, suctionMargin) with { Mixture = Mixture };

    /// <summary>What a message, a table or a sheet says behind a limit that is a rule of thumb.</summary>
    /// <param name="rule">Which limit.</param>
    /// <returns>
    /// <c> (common practice, no source)</c> while the limit stands where <see cref="Default"/> has it, whoever wrote it there; none for another figure, which
    /// is your own.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such rule.</exception>
    public Statement? MarkOf(RuleOfThumb rule)
    {
        (double own, double common) = rule switch
        {
            RuleOfThumb.DutyCycle => (DutyCycle.DecimalFractions, Default.DutyCycle.DecimalFractions),
            RuleOfThumb.PumpReserve => (PumpReserve.DecimalFractions, Default.PumpReserve.DecimalFractions),
            RuleOfThumb.FeedDrop => (FeedDrop.DecimalFractions, Default.FeedDrop.DecimalFractions),
            RuleOfThumb.SuctionMargin => (SuctionMargin.Pascals, Default.SuctionMargin.Pascals),
            _ => throw new ArgumentOutOfRangeException(
                nameof(rule), rule, $"rule is {(int)rule}; it must be one of {string.Join(", ", Enum.GetNames<RuleOfThumb>())}. Name one of these limits."),
        };

        // Units convert back and forth with an error in the last digits.
        return Math.Abs(own - common) <= 1e-9 * common ? Statement.Of("limit.rule-of-thumb", $" (common practice, no source)") : null;
    }

    /// <summary>Describes the limits.</summary>
    /// <param name="dutyCycle">Highest duty cycle, 10 to 100 %.</param>
    /// <param name="pumpReserve">Pump flow held in reserve for wear, hot fuel and low voltage, 0 to 100 %.</param>
    /// <param name="railCeiling">Highest rail gauge pressure of hoses, fittings and filter, 100 to 2,000 kPa.</param>
    /// <param name="feedDrop">Most of the supply's voltage that a pump's feed may lose, 0.1 to 30 %; 5 % if not given.</param>
    /// <param name="suctionMargin">
    /// Least pressure over the fuel's vapour pressure at the pump's inlet, 0 to 100 kPa; 10 kPa if not given.
    /// </param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static SizingLimits Of(
        Ratio dutyCycle,
        Ratio pumpReserve,
        Pressure? railCeiling = null,
        Ratio? feedDrop = null,
        Pressure? suctionMargin = null)
    {
        Injectors.DutyCycle.WithinLimit(dutyCycle, nameof(dutyCycle));
        return new(
            dutyCycle,
            Guard.Between(
                pumpReserve,
                Ratio.Zero,
                Ratio.FromPercent(100),
                "Give the pump reserve as a share of the injected flow; 10 to 20 % is common practice, no source.",
                nameof(pumpReserve)),
            railCeiling is { } ceiling
                ? Guard.Between(
                    ceiling,
                    Pressure.FromKilopascals(100),
                    Pressure.FromKilopascals(2000),
                    "Give the rating of the weakest of hoses, fittings and filter.",
                    nameof(railCeiling))
                : null,
            Guard.Between(
                feedDrop ?? Ratio.FromPercent(5),
                Ratio.FromPercent(0.1),
                Ratio.FromPercent(30),
                "Give the share of the supply's voltage that wire, joints, fuse and relay may take.",
                nameof(feedDrop)),
            Guard.Between(
                suctionMargin ?? Pressure.FromKilopascals(10),
                Pressure.Zero,
                Pressure.FromKilopascals(100),
                "Give the pressure that the pump's inlet keeps over the fuel's vapour pressure.",
                nameof(suctionMargin)));
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(SizingLimits? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The limits.</summary>
    /// <returns>For instance <c>duty cycle 85 %, pump reserve 10 %, feed drop 5 %, suction margin 10 kPa</c>.</returns>
    public override string ToString() =>
        $"duty cycle {Readable.Of(DutyCycle)}, pump reserve {Readable.Of(PumpReserve)}, feed drop {Readable.Of(FeedDrop)}, suction margin {Readable.Of(SuctionMargin)}";
}
