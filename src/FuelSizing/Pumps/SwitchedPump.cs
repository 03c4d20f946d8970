using FuelSizing.Engines;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Pumps;

/// <summary>A pump that a pressure switch runs at full speed above a boost, and below it not at all or at low speed.</summary>
/// <remarks>
/// <para>The switch has hysteresis: as boost rises the pump stays as it was until <see cref="On"/>, as boost falls until <see cref="Off"/>. From the
/// one to the other both happen, so a result there is judged in both: see <c>OperatingResult.Falling</c>. How long the pump takes to come to
/// speed is not modelled: set <see cref="On"/> so much lower.</para>
/// <para>A pump that stands still passes nothing. In parallel its check valve keeps fuel from running back; in series it needs a check valve
/// around it (<see cref="SeriesBypass.CheckValve"/>).</para>
/// </remarks>
/// <example>
/// <code>
/// Pump second = system.Pump.Pumps[0];
/// PumpAssembly staged = PumpParallel.Of(
///     system.Pump, SwitchedPump.Above(Pressure.FromKilopascals(40), Pressure.FromKilopascals(30), second));
/// </code>
/// </example>
public sealed record SwitchedPump : PumpAssembly
{
    private static readonly Identity<SwitchedPump> _identity = new Identity<SwitchedPump>()
        .Number(pump => pump.On.Pascals)
        .Number(pump => pump.Off.Pascals)
        .Value(pump => pump.Pump)
        .Value(pump => pump.LowSpeed);

    private readonly PumpAtLowSpeed _low;

    private SwitchedPump(Pressure on, Pressure off, Pump pump, PumpLowSpeed lowSpeed)
    {
        (On, Off, Pump, LowSpeed) = (on, off, pump, lowSpeed);
        _low = new(pump, lowSpeed);
    }

    /// <summary>Boost above which it runs at full speed, whatever came before.</summary>
    public Pressure On { get; }

    /// <summary>Boost below which it does not, whatever came before.</summary>
    public Pressure Off { get; }

    /// <summary>The pump at full speed, with its feed.</summary>
    public Pump Pump { get; }

    /// <summary>What it does until it is switched on.</summary>
    public PumpLowSpeed LowSpeed { get; }

    /// <inheritdoc/>
    public override string Name => LowSpeed.IsStopped
        ? $"{Pump.Name} from {Readable.Boost(On)} on"
        : $"{Pump.Name}, full speed from {Readable.Boost(On)} on";

    /// <inheritdoc/>
    public override IReadOnlyList<Pump> Pumps => [Pump];

    /// <summary>Switches a pump by boost.</summary>
    /// <param name="on">Boost at which the switch closes as boost rises, −95 to 400 kPa.</param>
    /// <param name="off">Boost at which it opens as boost falls, from −95 kPa to below <paramref name="on"/>.</param>
    /// <param name="pump">The pump, with its feed.</param>
    /// <param name="lowSpeed">What it does until it is switched on; stopped if not given.</param>
    /// <returns>The switched pump.</returns>
    /// <exception cref="ArgumentException">
    /// The pump runs through a resistor, and its curves have no current; or its low speed does not go with its having, or not having, a converter.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A boost is outside its range, or the switch has no hysteresis.</exception>
    public static SwitchedPump Above(Pressure on, Pressure off, Pump pump, PumpLowSpeed? lowSpeed = null)
    {
        ArgumentNullException.ThrowIfNull(pump);
        ManifoldPressure.Within(on, nameof(on));
        ManifoldPressure.Within(off, nameof(off));
        if (off >= on)
        {
            throw Guard.OutOfRange(
                nameof(off),
                Readable.Boost(off),
                $"below the {Readable.Boost(on)} at which the pump is switched on",
                "Give the lower boost at which the switch opens again: without such a difference it would chatter.");
        }

        PumpLowSpeed low = lowSpeed ?? PumpLowSpeed.Stopped;
        if (!low.IsStopped && low.IsConverterBypassed != pump.Converter is not null)
        {
            throw new ArgumentException(
                pump.Converter is { } converter
                    ? $"{nameof(lowSpeed)} was {low}, and {pump.Name} has a converter, {converter.Name}, which would make up for it. Let the switch bypass the converter, or stop the pump."
                    : $"{nameof(lowSpeed)} was {low}, and {pump.Name} has no converter. Give it one, or another low speed.",
                nameof(lowSpeed));
        }

        if (low.Share is not null && pump.Feed?.Shared is { } shared)
        {
            throw new ArgumentException(
                $"{nameof(lowSpeed)} was {low}, and the feed of {pump.Name} shares {shared.Name} with other pumps: what pulses in a shared part take of their voltage is not modelled. Give it a feed of its own.",
                nameof(lowSpeed));
        }

        return low.Resistor is null || pump.Curves[0].HasCurrent
            ? new(on, off, pump, low)
            : throw new ArgumentException(
                $"{nameof(lowSpeed)} was {low}, and the curves of {pump.Name} have no current: what the resistor takes is not known. Describe them with PumpCurve.WithCurrent.",
                nameof(lowSpeed));
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(SwitchedPump? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The same switch with another pump.</summary>
    internal SwitchedPump With(Pump pump) => new(On, Off, pump, LowSpeed);

    /// <summary>The pump as it is until it is switched on.</summary>
    internal PumpAssembly Low => _low;

    internal override IEnumerable<SwitchedPump> Switches => [this];

    internal override bool MayStop => LowSpeed.IsStopped;

    internal override bool HasOpenEnd => Pump.HasOpenEnd;

    internal override PumpAssembly At(double boost, bool falling) =>
        boost > On.Pascals || (falling && boost >= Off.Pascals) ? Pump : _low;

    // By itself it may be either way: the least is that of low speed, the most that of full speed.
    internal override bool IsMeasuredAt(double supply) => false;

    internal override PumpAssembly WithPumps(Func<Pump, Pump> change) => With(change(Pump));

    internal override RunningPumps Fed(SpliceVoltages volts, PumpReading reading) =>
        reading == PumpReading.Upper ? Pump.Fed(volts, reading) : _low.Fed(volts, reading);
}

/// <summary>What a switched pump does until it is switched on.</summary>
public sealed record PumpLowSpeed : IReadable
{
    private static readonly Identity<PumpLowSpeed> _identity = new Identity<PumpLowSpeed>()
        .Number(low => low.Resistor?.Ohms)
        .Number(low => low.Share?.DecimalFractions)
        .Value(low => low.IsConverterBypassed);

    private PumpLowSpeed(ElectricResistance? resistor, Ratio? share, bool isConverterBypassed = false) =>
        (Resistor, Share, IsConverterBypassed) = (resistor, share, isConverterBypassed);

    /// <summary>It stands still.</summary>
    public static PumpLowSpeed Stopped { get; } = new(null, null);

    /// <summary>Its converter is bypassed: it runs on the supply's voltage.</summary>
    public static PumpLowSpeed ConverterBypassed { get; } = new(null, null, true);

    /// <summary>True if its converter is bypassed.</summary>
    public bool IsConverterBypassed { get; }

    /// <summary>Resistor that it runs through, if it does.</summary>
    public ElectricResistance? Resistor { get; }

    /// <summary>Share of the supply's voltage that a pulsed supply gives it on average, if it is fed so.</summary>
    public Ratio? Share { get; }

    /// <summary>What it does, as a code with its figures.</summary>
    public Statement Text => IsConverterBypassed ? Statement.Of("pump.low-speed-bypassed", $"its converter bypassed")
        : Resistor is { } ohms ? Statement.Of("pump.low-speed-resistor", $"low speed through {ohms}")
        : Share is { } share ? Statement.Of("pump.low-speed-share", $"low speed at {share} of the supply")
        : Statement.Of("pump.stopped", $"stopped");

    /// <summary>It runs through a resistor, which the switch bypasses.</summary>
    /// <param name="resistor">Warm, 0.01 to 5 Ω. Current and pressure drop in it are solved together; its heat is up to you.</param>
    /// <returns>The low speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is outside its range.</exception>
    public static PumpLowSpeed Through(ElectricResistance resistor) => new(
        Guard.Between(
            resistor,
            ElectricResistance.FromOhms(0.01),
            ElectricResistance.FromOhms(5),
            "Give the drop across the resistor divided by the pump's current.",
            nameof(resistor)),
        null);

    /// <summary>A pulse-width modulated supply gives it a share of the voltage on average, or a controller a lower voltage.</summary>
    /// <param name="share">Of the supply's voltage, 30 to 100 %.</param>
    /// <returns>The low speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    /// <remarks>
    /// The motor is taken as running on the mean voltage, which holds where it is pulsed so fast that its current does not stop between pulses. The
    /// wire before the controller then carries less on average; it is judged with the motor's current.
    /// </remarks>
    public static PumpLowSpeed At(Ratio share) => new(
        null,
        Guard.Between(
            share, Ratio.FromPercent(30), Ratio.FromPercent(100), "Give mean voltage at the pump's feed ÷ supply voltage.", nameof(share)));

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>What it does.</summary>
    /// <returns>For instance <c>stopped</c>.</returns>
    public override string ToString() => Text.ToString();

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PumpLowSpeed? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal bool IsStopped => Resistor is null && Share is null && !IsConverterBypassed;
}

/// <summary>A switched pump that is not switched on.</summary>
internal sealed record PumpAtLowSpeed : PumpAssembly
{
    private readonly Pump _pump;
    private readonly double _share;

    public PumpAtLowSpeed(Pump pump, PumpLowSpeed low)
    {
        Ohms = low.Resistor?.Ohms ?? 0;
        _pump = low.Resistor is { } resistor ? pump.Behind(resistor.Ohms)
            : low.IsConverterBypassed ? pump.WithoutConverter()
            : pump;
        _share = low.IsStopped ? 0 : low.Share?.DecimalFractions ?? 1;
    }

    public override string Name => _pump.Name;

    public override IReadOnlyList<Pump> Pumps => [_pump];

    /// <summary>The pump, behind its resistor if it has one.</summary>
    internal Pump Pump => _pump;

    /// <summary>Share of the supply's voltage that its feed is given; zero where it stands still.</summary>
    internal double Share => _share;

    /// <summary>Resistor that it runs through, Ω.</summary>
    internal double Ohms { get; }

    internal override IEnumerable<SwitchedPump> Switches => [];

    internal override bool HasOpenEnd => _share > 0 && _pump.HasOpenEnd;

    internal override bool MayStop => _share == 0;

    internal override bool IsMeasuredAt(double supply) => _share == 0 || _pump.IsMeasuredAt(_share * supply);

    // Rewiring is asked of the pumps of a system, which hold the switched pump itself.
    internal override PumpAssembly WithPumps(Func<Pump, Pump> change) => this;

    internal override RunningPumps Fed(SpliceVoltages volts, PumpReading reading) =>
        _share == 0 ? new StoppedPump(_pump) : new RunningPump(_pump, _share * volts.Of(_pump), reading, isSlowed: true);
}
