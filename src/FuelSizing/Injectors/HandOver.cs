using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Injectors;

/// <summary>When a secondary set of injectors takes part of the fuel, and how much: by boost, or by the duty cycle of the primary set.</summary>
/// <remarks>
/// <para>At the begin and below it the secondary set is idle, and the primary set injects all the fuel. Just above it the secondary set carries
/// <see cref="ShareAtBegin"/>: a share that starts at nothing starts with pulses shorter than any injector follows.</para>
/// <para>By boost the share then goes straight up to <see cref="Share"/> at the boost of full hand-over, and stays there. By duty cycle the
/// primary set is held at the duty cycle at which the hand-over begins, and the secondary set carries the rest, no less than
/// <see cref="ShareAtBegin"/> and no more than <see cref="Share"/>; past that the primary set's duty cycle rises again.</para>
/// </remarks>
public sealed record HandOver : IReadable
{
    private static readonly Identity<HandOver> _identity = new Identity<HandOver>()
        .Number(handOver => handOver._begin)
        .Number(handOver => handOver._full)
        .Number(handOver => handOver._beginDuty)
        .Number(handOver => handOver._share)
        .Number(handOver => handOver._shareAtBegin);

    private static readonly Pressure NarrowestRamp = Pressure.FromKilopascals(1);

    private readonly double? _begin;
    private readonly double? _full;
    private readonly double? _beginDuty;
    private readonly double _share;
    private readonly double _shareAtBegin;

    private HandOver(Pressure? beginBoost, Pressure? fullBoost, Ratio? beginDutyCycle, Ratio share, Ratio shareAtBegin)
    {
        (BeginBoost, FullBoost, BeginDutyCycle, Share, ShareAtBegin) = (beginBoost, fullBoost, beginDutyCycle, share, shareAtBegin);
        _begin = beginBoost?.Pascals;
        _full = fullBoost?.Pascals;
        _beginDuty = beginDutyCycle?.DecimalFractions;
        _share = share.DecimalFractions;
        _shareAtBegin = shareAtBegin.DecimalFractions;
    }

    /// <summary>The largest share that a secondary set may carry, 95 %: the primary set always injects.</summary>
    public static Ratio MaximumShare { get; } = Ratio.FromPercent(95);

    /// <summary>Manifold gauge pressure up to which the secondary set is idle; none where the hand-over follows the duty cycle.</summary>
    public Pressure? BeginBoost { get; }

    /// <summary>Manifold gauge pressure from which the secondary set carries <see cref="Share"/>; none where the hand-over follows the duty cycle.</summary>
    public Pressure? FullBoost { get; }

    /// <summary>Duty cycle of the primary set up to which the secondary set is idle, and at which the primary set is held above; none where the hand-over follows boost.</summary>
    public Ratio? BeginDutyCycle { get; }

    /// <summary>Share of the fuel that the secondary set carries at full hand-over; zero where it never injects.</summary>
    public Ratio Share { get; }

    /// <summary>Share of the fuel that the secondary set carries just above the begin.</summary>
    public Ratio ShareAtBegin { get; }

    /// <summary>True where the hand-over follows the duty cycle of the primary set.</summary>
    public bool IsByDutyCycle => _beginDuty is not null;

    internal double? BeginPascals => _begin;

    internal double? FullPascals => _full;

    internal double? BeginDuty => _beginDuty;

    internal double ShareFraction => _share;

    internal double ShareAtBeginFraction => _shareAtBegin;

    /// <summary>A hand-over by boost.</summary>
    /// <param name="begin">Manifold gauge pressure up to which the secondary set is idle, −95 to 399 kPa.</param>
    /// <param name="full">Manifold gauge pressure at which it carries its whole share, 1 kPa or more over the begin, up to 400 kPa.</param>
    /// <param name="share">Share of the fuel that the secondary set carries from there on, 0 to 95 %.</param>
    /// <param name="shareAtBegin">Share just above the begin, from 0 to the share at full hand-over; 0 if not given.</param>
    /// <returns>The hand-over.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static HandOver ByBoost(Pressure begin, Pressure full, Ratio share, Ratio? shareAtBegin = null)
    {
        ManifoldPressure.Within(begin, nameof(begin));
        ManifoldPressure.Within(full, nameof(full));
        if (!(full.Pascals - begin.Pascals >= NarrowestRamp.Pascals))
        {
            throw Guard.OutOfRange(
                nameof(full),
                Readable.Boost(full),
                $"{Readable.Of(NarrowestRamp)} or more over the begin of the hand-over, {Readable.Boost(begin)}",
                "Give the boost at which the secondary set carries its whole share; for a step give shareAtBegin the same value as share.");
        }

        return new(begin, full, null, WithinShare(share, nameof(share)), AtBegin(shareAtBegin, share));
    }

    /// <summary>A hand-over by the duty cycle of the primary set, which is held there: the secondary set carries what is above it.</summary>
    /// <param name="begin">Duty cycle of the primary set up to which the secondary set is idle, 10 to 100 %.</param>
    /// <param name="share">The largest share of the fuel that the secondary set carries, 0 to 95 %.</param>
    /// <param name="shareAtBegin">Share just above the begin, from 0 to the largest share; 0 if not given.</param>
    /// <returns>The hand-over.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static HandOver ByDutyCycle(Ratio begin, Ratio share, Ratio? shareAtBegin = null)
    {
        DutyCycle.WithinLimit(begin, nameof(begin));
        return new(null, null, begin, WithinShare(share, nameof(share)), AtBegin(shareAtBegin, share));
    }

    /// <summary>The same hand-over with another share at its full.</summary>
    /// <param name="share">From the share at the begin to 95 %.</param>
    /// <returns>The hand-over.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    public HandOver WithShare(Ratio share) => new(
        BeginBoost,
        FullBoost,
        BeginDutyCycle,
        Guard.Between(share, ShareAtBegin, MaximumShare, "Give a share that is no less than the one at the begin; lower that first.", nameof(share)),
        ShareAtBegin);

    /// <summary>The same hand-over with another share at its begin.</summary>
    /// <param name="shareAtBegin">From 0 to the share at full hand-over.</param>
    /// <returns>The hand-over.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    public HandOver WithShareAtBegin(Ratio shareAtBegin) => new(BeginBoost, FullBoost, BeginDutyCycle, Share, AtBegin(shareAtBegin, Share));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(HandOver? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>When the secondary set begins, and what it carries.</summary>
    /// <returns>For instance <c>from 0.30 bar, 20 % of the fuel rising to 45 % at 0.50 bar</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <summary>When the secondary set begins, and what it carries, as a code with its figures.</summary>
    public Statement Text => this switch
    {
        { BeginDutyCycle: { } duty } => Statement.Of("hand-over.by-duty-cycle", $"above {duty:duty-cycle} duty cycle of the primary set, {ShareAtBegin:share} to {Share:share} of the fuel"),
        _ => Statement.Of("hand-over.by-boost", $"above {BeginBoost!.Value:boost}, {ShareAtBegin:share} of the fuel rising to {Share:share} at {FullBoost!.Value:boost}"),
    };

    /// <summary>The share of the fuel that the secondary set carries; zero where it is idle, not a number where that is not known.</summary>
    /// <param name="boost">Pa.</param>
    /// <param name="fuel">Of the whole engine, m³/s.</param>
    /// <param name="primary">What the primary set passes at the duty cycle at which the hand-over begins, m³/s; of no account where it follows boost.</param>
    internal double ShareAt(double boost, double fuel, double primary) =>
        _share == 0 ? 0
        : _begin is { } begin ? boost > begin
            ? StagedFlow.ShareByBoost<Real>(boost, begin, _full!.Value, _shareAtBegin, _share).Value
            : 0
        : fuel <= primary ? 0
        : StagedFlow.ShareByDutyCycle<Real>(fuel, primary, _shareAtBegin, _share).Value;

    private static Ratio AtBegin(Ratio? shareAtBegin, Ratio share) => Guard.Between(
        shareAtBegin ?? Ratio.Zero, Ratio.Zero, share, "Give the share just above the begin, no more than the share at full hand-over.", nameof(shareAtBegin));

    private static Ratio WithinShare(Ratio share, string name) => Guard.Between(
        share, Ratio.Zero, MaximumShare, "Give the share of all the fuel that the secondary set carries; the primary set always injects.", name);
}
