using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Circuits;

/// <summary>Into which of two tanks a regulator returns its surplus.</summary>
public enum ReturnDestination
{
    /// <summary>Into the surge tank: the net draw from it is what is injected, and the fuel in it warms up.</summary>
    SurgeTank,

    /// <summary>Into the main tank: the net draw from the surge tank is all that the main pumps pass.</summary>
    MainTank,
}

/// <summary>
/// A surge tank between the main tank and the main pumps, and the lift circuit that fills it: lift pump, suction line, lift line, overflow line.
/// </summary>
/// <remarks>
/// <para>The main pumps draw from the surge tank. The lift pump brings fuel from the main tank, and what is too much runs back to it by the overflow
/// line, whose loss is pressure in the surge tank. While the lift pump's pickup in the main tank is uncovered, the surge tank feeds the engine alone.</para>
/// <para>Taken for granted: the surge tank is full and free of air at the start, its level falls uniformly (no slosh), and it is vented at its top
/// while it is not full. A partly uncovered pickup counts as uncovered.</para>
/// </remarks>
/// <example>
/// <code>
/// Pump lift = Pump.From(PumpCurve.At(
///     "lift pump",
///     ElectricPotential.FromVolts(13.5),
///     (Pressure.Zero, VolumeFlow.FromLitersPerHour(196)),
///     (Pressure.FromKilopascals(62), VolumeFlow.Zero)));
/// SurgeTank tank = SurgeTank.Of(usableVolume: Volume.FromLiters(1.4), liftPump: lift, returnsTo: ReturnDestination.SurgeTank);
/// FuelSystem fed = system.With(tank);
/// </code>
/// </example>
public sealed record SurgeTank
{
    private static readonly Identity<SurgeTank> _identity = new Identity<SurgeTank>()
        .Number(tank => tank.UsableVolume.CubicMeters)
        .Value(tank => tank.LiftPump)
        .Value(tank => tank.ReturnsTo)
        .Value(tank => tank.Plumbing)
        .Number(tank => tank.MaximumPressure?.Pascals)
        .Number(tank => tank.PrimingTime.Seconds);

    private SurgeTank(
        Volume usableVolume, PumpAssembly liftPump, ReturnDestination returnsTo, Plumbing plumbing, Pressure? maximumPressure, Duration primingTime)
    {
        (UsableVolume, LiftPump, ReturnsTo) = (usableVolume, liftPump, returnsTo);
        (Plumbing, MaximumPressure, PrimingTime) = (plumbing, maximumPressure, primingTime);
    }

    /// <summary>What the main pumps can draw from the full tank before their pickup in it takes in air.</summary>
    public Volume UsableVolume { get; }

    /// <summary>The lift pump or pumps.</summary>
    public PumpAssembly LiftPump { get; }

    /// <summary>Where the main circuit's surplus goes.</summary>
    public ReturnDestination ReturnsTo { get; }

    /// <summary>From the main tank to the lift pump; empty for a pump in the tank.</summary>
    public IReadOnlyList<IFlowLoss> Suction => Plumbing.Suction;

    /// <summary>From the lift pump to the surge tank.</summary>
    public IReadOnlyList<IFlowLoss> LiftLine => Plumbing.Supply;

    /// <summary>From the top of the surge tank back to the main tank.</summary>
    public IReadOnlyList<IFlowLoss> Overflow => Plumbing.ReturnLine;

    /// <summary>Highest gauge pressure that the surge tank stands, if known.</summary>
    public Pressure? MaximumPressure { get; }

    /// <summary>From the moment at which the pickup is covered again until the lift pump delivers.</summary>
    public Duration PrimingTime { get; }

    /// <summary>The lift circuit's lines: suction line, lift line, and for a return line the overflow line.</summary>
    internal Plumbing Plumbing { get; }

    /// <summary>Describes a surge tank and its lift circuit.</summary>
    /// <param name="usableVolume">
    /// What the main pumps can draw from the full tank before their pickup in it takes in air, 0.05 to 50 L: less than the tank holds.
    /// </param>
    /// <param name="liftPump">The lift pump or pumps, with their feed.</param>
    /// <param name="returnsTo">Where the main circuit's surplus goes.</param>
    /// <param name="suction">From the main tank to the lift pump; none for a pump in the tank.</param>
    /// <param name="liftLine">From the lift pump to the surge tank.</param>
    /// <param name="overflow">From the top of the surge tank back to the main tank.</param>
    /// <param name="maximumPressure">Highest gauge pressure that the surge tank stands, 1 to 1,000 kPa; not judged if not given.</param>
    /// <param name="primingTime">
    /// From the moment at which the pickup is covered again until the lift pump delivers, 0 to 60 s; none if not given, and a note then says so.
    /// </param>
    /// <returns>The surge tank.</returns>
    /// <exception cref="ArgumentException">A lift pump has a voltage converter, or lines of its own.</exception>
    /// <exception cref="ArgumentNullException">The pump, or a part of a line, is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static SurgeTank Of(
        Volume usableVolume,
        PumpAssembly liftPump,
        ReturnDestination returnsTo,
        IReadOnlyList<IFlowLoss>? suction = null,
        IReadOnlyList<IFlowLoss>? liftLine = null,
        IReadOnlyList<IFlowLoss>? overflow = null,
        Pressure? maximumPressure = null,
        Duration? primingTime = null)
    {
        ArgumentNullException.ThrowIfNull(liftPump);
        return new(
            Guard.Between(
                usableVolume,
                Volume.FromLiters(0.05),
                Volume.FromLiters(50),
                "Give what can be drawn from the full tank before its pickup takes in air.",
                nameof(usableVolume)),
            Modelled(liftPump),
            Guard.Member(returnsTo, "Say into which tank the surplus returns.", nameof(returnsTo)),
            PlumbingOf(suction, liftLine, overflow),
            maximumPressure is { } pressure
                ? Guard.Between(
                    pressure,
                    Pressure.FromKilopascals(1),
                    Pressure.FromKilopascals(1000),
                    "Give the gauge pressure that the surge tank stands, by its maker or by a test.",
                    nameof(maximumPressure))
                : null,
            Guard.Between(
                primingTime ?? Duration.Zero,
                Duration.Zero,
                Duration.FromSeconds(60),
                "Give the time that the lift pump takes to deliver again once its pickup is covered.",
                nameof(primingTime)));
    }

    /// <summary>The same tank with another lift pump.</summary>
    /// <param name="liftPump">The lift pump or pumps.</param>
    /// <returns>The surge tank.</returns>
    /// <exception cref="ArgumentException">A lift pump has a voltage converter, or lines of its own.</exception>
    public SurgeTank With(PumpAssembly liftPump)
    {
        ArgumentNullException.ThrowIfNull(liftPump);
        return new(UsableVolume, Modelled(liftPump), ReturnsTo, Plumbing, MaximumPressure, PrimingTime);
    }

    /// <summary>The same tank with the main circuit's return to the other tank, or to the same.</summary>
    /// <param name="returnsTo">Where the main circuit's surplus goes.</param>
    /// <returns>The surge tank.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public SurgeTank WithReturnTo(ReturnDestination returnsTo) =>
        Of(UsableVolume, LiftPump, returnsTo, Suction, LiftLine, Overflow, MaximumPressure, PrimingTime);

    /// <summary>A tank of another size in its place.</summary>
    /// <param name="usableVolume">0.05 to 50 L.</param>
    /// <returns>The surge tank.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The volume is outside its range.</exception>
    public SurgeTank WithUsableVolume(Volume usableVolume) =>
        Of(usableVolume, LiftPump, ReturnsTo, Suction, LiftLine, Overflow, MaximumPressure, PrimingTime);

    /// <summary>The same tank with other lines.</summary>
    /// <param name="suction">From the main tank to the lift pump; none for a pump in the tank.</param>
    /// <param name="liftLine">From the lift pump to the surge tank.</param>
    /// <param name="overflow">From the top of the surge tank back to the main tank.</param>
    /// <returns>The surge tank.</returns>
    /// <exception cref="ArgumentNullException">A part of a line is missing.</exception>
    public SurgeTank WithLines(
        IReadOnlyList<IFlowLoss>? suction = null, IReadOnlyList<IFlowLoss>? liftLine = null, IReadOnlyList<IFlowLoss>? overflow = null) =>
        Of(UsableVolume, LiftPump, ReturnsTo, suction, liftLine, overflow, MaximumPressure, PrimingTime);

    /// <summary>The same tank, of which it is known what pressure it stands.</summary>
    /// <param name="maximumPressure">Gauge, 1 to 1,000 kPa.</param>
    /// <returns>The surge tank.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is outside its range.</exception>
    public SurgeTank WithMaximumPressure(Pressure maximumPressure) =>
        Of(UsableVolume, LiftPump, ReturnsTo, Suction, LiftLine, Overflow, maximumPressure, PrimingTime);

    /// <summary>The same tank with a lift pump that takes so long to deliver again.</summary>
    /// <param name="primingTime">From the moment at which the pickup is covered again until the lift pump delivers, 0 to 60 s.</param>
    /// <returns>The surge tank.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside its range.</exception>
    public SurgeTank WithPrimingTime(Duration primingTime) =>
        Of(UsableVolume, LiftPump, ReturnsTo, Suction, LiftLine, Overflow, MaximumPressure, primingTime);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(SurgeTank? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Usable volume, lift pump and return.</summary>
    /// <returns>For instance <c>1.40 L usable, lift pump L, return to the surge tank</c>.</returns>
    public override string ToString() =>
        $"{TextStyle.Metric.Of(UsableVolume)} usable, {LiftPump.Name}, return to the {(ReturnsTo == ReturnDestination.SurgeTank ? "surge" : "main")} tank";

    // A converter's load is judged in the main circuit alone, and so are branches.
    private static PumpAssembly Modelled(PumpAssembly liftPump) => liftPump.HasOwnLines
        ? throw new ArgumentException(
            $"{nameof(liftPump)} has {liftPump.OwnBranches.First().Name} with lines of its own (PumpBranch), which are not modelled in a lift circuit. Give them as its suction and lift line.",
            nameof(liftPump))
        : liftPump.Pumps.FirstOrDefault(pump => pump.Converter is not null) is { Converter: { } converter } pump
            ? throw new ArgumentException(
                $"{nameof(liftPump)} has {pump.Name} behind a voltage converter, {converter.Name}, whose load is not judged in a lift circuit. Give the pump without it.",
                nameof(liftPump))
            : liftPump;

    private static Plumbing PlumbingOf(
        IReadOnlyList<IFlowLoss>? suction, IReadOnlyList<IFlowLoss>? liftLine, IReadOnlyList<IFlowLoss>? overflow)
    {
        Complete(suction, nameof(suction));
        Complete(liftLine, nameof(liftLine));
        Complete(overflow, nameof(overflow));
        return Plumbing.Of(suction, liftLine, overflow);
    }

    private static void Complete(IReadOnlyList<IFlowLoss>? parts, string name)
    {
        foreach (IFlowLoss part in parts ?? [])
        {
            ArgumentNullException.ThrowIfNull(part, name);
        }
    }
}
