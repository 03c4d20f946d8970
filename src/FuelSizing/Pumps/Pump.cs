using FuelSizing.Electrical;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Pumps;

/// <summary>One pump by its measured curves, at whatever voltage reaches it.</summary>
/// <remarks>
/// <para>Between two measured voltages both curves are carried to the voltage by the affinity laws (flow with voltage,
/// pressure and current with its square) and taken in proportion. Where the measured voltages end, what a pump delivers is known
/// between two bounds only, and each check takes the one that is conservative for it. Above the highest voltage the pump delivers no less
/// than by its highest curve, and no more than at the speed of a motor that loses <see cref="MaximumResistiveShare"/> of
/// its voltage in its winding (<see cref="Equations.PumpMotor.SpeedRatio"/>); below the lowest no more than by its lowest curve, and no less
/// than at the speed of such a motor. Results show the highest curve unchanged, and the lowest (down to 70 % of its voltage) by the
/// affinity laws, and say so.</para>
/// <para>A relief valve inside the pump ends the curve at its pressure. <see cref="Condition"/> takes off for wear or hot
/// fuel.</para>
/// </remarks>
public sealed record Pump : PumpAssembly
{
    private static readonly Identity<Pump> _identity = new Identity<Pump>()
        .List(pump => pump.Curves)
        .Number(pump => pump.Relief?.Pascals)
        .Number(pump => pump._condition)
        .Value(pump => pump.Feed)
        .Value(pump => pump.Drive)
        .Value(pump => pump.Converter)
        .Number(pump => pump._resistor);

    /// <summary>The lowest voltage, as a share of a measured one, to which the affinity laws are trusted.</summary>
    private const double MinimumScale = 0.7;

    private const double VoltageTolerance = 0.05;

    /// <summary>
    /// The largest share of its voltage that a motor is taken to lose in its winding, one half: with more, it would give more power if
    /// it turned more slowly, and no motor is made to run so. Common practice, no source.
    /// </summary>
    public const double MaximumResistiveShare = 0.5;

    private static readonly bool[] TurbineOrNot = [true, false];
    private static readonly double[] WindingShares = [0, MaximumResistiveShare];

    private readonly PumpCurve[] _curves;
    private readonly double _condition;
    private readonly double _relief;
    private readonly double _feedOhms;
    private readonly double _resistor;
    private readonly bool _hasOpenEnd;
    private readonly bool _beginsAtNothing;

    // For each curve the kinds and windings that bound it; none where nothing is said of the drive.
    private readonly DrivenCurve[][]? _driven;

    private Pump(
        PumpCurve[] curves, Pressure? relief, Ratio condition, Feed? feed, PumpDrive? drive, VoltageConverter? converter = null, double resistor = 0)
    {
        (_curves, Relief, Condition, Feed, Drive, Converter) = (curves, relief, condition, feed, drive, converter);
        _driven = drive is null ? null : [.. curves.Select(curve => Laws(curve, drive))];
        Curves = Array.AsReadOnly(curves);
        _relief = relief?.Pascals ?? double.PositiveInfinity;
        _condition = condition.DecimalFractions;
        _resistor = resistor;
        _feedOhms = (feed?.LoopOhms ?? 0) + resistor;
        _beginsAtNothing = curves.All(curve => curve.Flow.First == 0);
        _hasOpenEnd = curves.Any(curve => !curve.EndsAtDeadhead && curve.Flow.Last < _relief);
    }

    /// <inheritdoc/>
    public override string Name => _curves[0].Name;

    /// <inheritdoc/>
    public override IReadOnlyList<Pump> Pumps => [this];

    /// <summary>The measured curves, voltage rising.</summary>
    public IReadOnlyList<PumpCurve> Curves { get; }

    /// <summary>Pressure rise at which a relief valve inside the pump opens, if it has one.</summary>
    public Pressure? Relief { get; }

    /// <summary>Flow that is left of the measured one: wear, hot fuel.</summary>
    public Ratio Condition { get; }

    /// <summary>The wiring between the supply and the motor; none where the supply's voltage is that at the motor.</summary>
    public Feed? Feed { get; }

    /// <summary>How it moves fuel, and its motor's winding; none where nothing is said of it.</summary>
    public PumpDrive? Drive { get; }

    /// <summary>The converter between its feed and its motor; none where there is none.</summary>
    public VoltageConverter? Converter { get; }

    /// <summary>Describes a pump.</summary>
    /// <param name="curves">One or more, voltages rising, flow growing with voltage at each pressure.</param>
    /// <param name="relief">Pressure rise at which a relief valve inside it opens, 50 to 2,000 kPa; none if not given.</param>
    /// <param name="condition">Flow left of the measured one, 30 to 100 %; 100 % if not given.</param>
    /// <param name="feed">The wiring between the supply and the motor; none if not given. Needs curves with current.</param>
    /// <param name="drive">
    /// How it moves fuel, for what it delivers at voltages at which it was not measured; if not given, the widest bounds hold. A winding needs
    /// curves with current, and any kind but a turbine curves from 0 kPa on.
    /// </param>
    /// <returns>The pump.</returns>
    /// <exception cref="ArgumentException">
    /// Current is given at one voltage and not at another, or a feed or a winding is given but a curve has no current, or the drive needs a
    /// curve from 0 kPa on.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A value is outside its range, the curves are out of order, or the winding would take half of the voltage or more.
    /// </exception>
    public static Pump Of(
        IReadOnlyList<PumpCurve> curves, Pressure? relief = null, Ratio? condition = null, Feed? feed = null, PumpDrive? drive = null)
    {
        ArgumentNullException.ThrowIfNull(curves);
        Guard.Count(curves.Count, 1, 20, "Give the pump's curve at one voltage or more.", nameof(curves));
        ArgumentNullException.ThrowIfNull(curves[0], nameof(curves));
        for (int i = 1; i < curves.Count; i++)
        {
            Ordered(curves[i - 1], curves[i], nameof(curves));
        }

        return new(
            [.. curves],
            relief is { } opens
                ? Guard.Between(
                    opens,
                    Pressure.FromKilopascals(50),
                    Pressure.FromKilopascals(2000),
                    "Give the pressure rise at which the pump's own relief valve opens.",
                    nameof(relief))
                : null,
            Guard.Between(
                condition ?? Ratio.FromPercent(100),
                Ratio.FromPercent(30),
                Ratio.FromPercent(100),
                "Give the flow that is left of the measured one.",
                nameof(condition)),
            Needing(feed, curves, nameof(feed)),
            Driving(drive, curves, nameof(drive)));
    }

    /// <summary>A pump by one measured curve, as new, fed without loss.</summary>
    /// <param name="curve">The curve.</param>
    /// <returns>The pump.</returns>
    public static Pump From(PumpCurve curve)
    {
        ArgumentNullException.ThrowIfNull(curve);
        return Of([curve]);
    }

    /// <summary>The same pump with other wiring.</summary>
    /// <param name="feed">The wiring between the supply and the motor.</param>
    /// <returns>The pump.</returns>
    /// <exception cref="ArgumentException">A curve has no current.</exception>
    public Pump WithFeed(Feed feed)
    {
        ArgumentNullException.ThrowIfNull(feed);
        Alone(feed, Converter, nameof(feed));
        return new(_curves, Relief, Condition, Needing(feed, _curves, nameof(feed)), Drive, Converter);
    }

    /// <summary>The same pump, with what is known of how it moves fuel.</summary>
    /// <param name="drive">Its kind, and its motor's winding.</param>
    /// <returns>The pump.</returns>
    /// <exception cref="ArgumentException">A winding needs curves with current; any kind but a turbine needs curves from 0 kPa on.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The winding would take half of the voltage or more.</exception>
    public Pump WithDrive(PumpDrive drive)
    {
        ArgumentNullException.ThrowIfNull(drive);
        return new(_curves, Relief, Condition, Feed, Driving(drive, _curves, nameof(drive)), Converter);
    }

    /// <summary>The same pump with a converter between its feed and its motor.</summary>
    /// <param name="converter">The converter.</param>
    /// <returns>The pump.</returns>
    /// <exception cref="ArgumentException">A curve has no current.</exception>
    public Pump WithConverter(VoltageConverter converter)
    {
        ArgumentNullException.ThrowIfNull(converter);
        Alone(Feed, converter, nameof(converter));
        return _curves[0].HasCurrent
            ? new(_curves, Relief, Condition, Feed, Drive, converter)
            : throw new ArgumentException(
                $"The converter {converter.Name} needs the current that {Name} draws. Describe its curves with PumpCurve.WithCurrent.",
                nameof(converter));
    }

    /// <summary>The same pump in another condition: wear, hot fuel.</summary>
    /// <param name="condition">Flow left of the measured one, 30 to 100 %.</param>
    /// <returns>The pump.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The condition is outside its range.</exception>
    public Pump WithCondition(Ratio condition) =>
        Of(_curves, Relief, condition, Feed, Drive) is var worn && Converter is null ? worn : worn.WithConverter(Converter);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Pump? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The same pump passing a multiple of its flow, also more than it was measured with: a figure found, not a condition given.</summary>
    internal Pump Worn(double factor) => new(_curves, Relief, Ratio.FromDecimalFractions(_condition * factor), Feed, Drive, Converter);

    /// <summary>The same pump behind a resistor, Ω, which is meant to take voltage and is no part of its feed.</summary>
    internal Pump Behind(double resistor) => new(_curves, Relief, Condition, Feed, Drive, null, resistor);

    /// <summary>The same pump with its converter bypassed.</summary>
    internal Pump WithoutConverter() => new(_curves, Relief, Condition, Feed, Drive);

    internal override IEnumerable<SwitchedPump> Switches => [];

    internal override bool MayStop => false;

    internal override bool HasOpenEnd => _hasOpenEnd;

    internal override PumpAssembly WithPumps(Func<Pump, Pump> change) => change(this);

    internal override RunningPumps Fed(SpliceVoltages volts, PumpReading reading) => new RunningPump(this, volts.Of(this), reading);

    /// <summary>The maximum current that was measured, carried to a supply by the upper reading, A; zero where none was measured.</summary>
    internal double HighestCurrent(double supply) => _curves[0].HasCurrent
        ? _curves.Max(curve => PumpScaling.Current<Real>(curve.MaximumCurrent, HighestSpeed(curve, supply)).Value)
        : 0;

    // A displacement pump draws the same at a lower voltage.
    private Real HighestSpeed(PumpCurve curve, double supply)
    {
        Real speed = SpeedOf(curve, Unloaded(supply), PumpReading.Upper);
        return IsDriven ? Real.Max(1, speed) : speed;
    }

    /// <summary>A rise that nothing is delivered above with a supply, Pa.</summary>
    internal double MaximumRise(double supply, PumpReading reading)
    {
        if (_driven is not null)
        {
            double highest = Math.Max(Unloaded(supply), _curves[^1].Volts);
            return Math.Min(_relief, _driven.Max(laws => laws.Max(law => law.EndAt(highest, reading))));
        }

        double maximum = 0;
        foreach (PumpCurve curve in _curves)
        {
            maximum = Math.Max(maximum, EndAt(curve, Math.Max(Unloaded(supply), _curves[^1].Volts), reading));
        }

        return Math.Min(maximum, _relief);
    }

    private const double HalfPascal = 0.5;

    /// <summary>Under this share of the supply a motor does not turn.</summary>
    internal const double MinimumMotorShare = 0.01;

    private static void Ordered(PumpCurve lower, PumpCurve higher, string name)
    {
        ArgumentNullException.ThrowIfNull(lower, name);
        ArgumentNullException.ThrowIfNull(higher, name);
        if (higher.HasCurrent != lower.HasCurrent)
        {
            throw new ArgumentException(
                $"{name} had the current at one voltage and not at another ({Readable.Of(lower.Voltage)}, {Readable.Of(higher.Voltage)}). Give it for every curve, or for none.",
                name);
        }

        if (higher.Volts <= lower.Volts)
        {
            throw Guard.OutOfRange(
                name,
                Readable.Of(higher.Voltage),
                $"over the {Readable.Of(lower.Voltage)} of the curve before it",
                "Sort the curves by voltage and give each voltage once.");
        }

        foreach ((double pressure, double flow) in higher.Flow.Points)
        {
            if (lower.Flow.Covers(pressure) && lower.Flow.At(pressure) > flow + (Curve.EndTolerance * lower.Flow.FirstValue))
            {
                throw Guard.OutOfRange(
                    name,
                    $"{Readable.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(flow))} at {Readable.Of(higher.Voltage)} and {Readable.Of(Pressure.FromPascals(pressure))}",
                    $"at least the {Readable.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(lower.Flow.At(pressure)))} of the lower voltage",
                    "A pump delivers no less at a higher voltage; check the curves.");
            }
        }
    }

    // A converter draws the more the less voltage it gets: on a splice there may be two answers, or none.
    private static void Alone(Feed? feed, VoltageConverter? converter, string name)
    {
        if (feed?.Shared is { } shared && converter is not null)
        {
            throw new ArgumentException(
                $"{name} puts {converter.Name} behind {feed.Name}, which shares {shared.Name} with other pumps: a voltage converter on a shared part is not modelled. Give the pump a feed of its own.",
                name);
        }
    }

    private static Feed? Needing(Feed? feed, IReadOnlyList<PumpCurve> curves, string name) =>
        feed is null || curves.All(curve => curve.HasCurrent)
            ? feed
            : throw new ArgumentException(
                $"The feed {feed.Name} needs the current that {curves[0].Name} draws. Describe its curves with PumpCurve.WithCurrent.",
                name);

    private static PumpDrive? Driving(PumpDrive? drive, IReadOnlyList<PumpCurve> curves, string name)
    {
        foreach (PumpCurve curve in drive is null ? [] : curves)
        {
            if (drive!.Kind != PumpKind.Turbine && curve.Flow.First > 0)
            {
                throw new ArgumentException(
                    $"{name} was a {drive}, and the curve of {curve.Name} begins at {Readable.Of(curve.MinimumPressure)}: what is displaced is seen against no pressure. Give the flow at 0 kPa, or say that it is a turbine.",
                    name);
            }

            if (drive.Winding is not { } winding)
            {
                continue;
            }

            if (!curve.HasCurrent)
            {
                throw new ArgumentException(
                    $"{name} was a {drive}, and the curve of {curve.Name} has no current: what the winding takes is not known. Describe it with PumpCurve.WithCurrent.",
                    name);
            }

            if (winding.Ohms * curve.MaximumCurrent >= MaximumResistiveShare * curve.Volts)
            {
                throw Guard.OutOfRange(
                    name,
                    $"a winding of {Readable.Of(winding)}, which takes {Readable.Of(ElectricPotential.FromVolts(winding.Ohms * curve.MaximumCurrent))} of {Readable.Of(curve.Voltage)} at {Readable.Of(ElectricCurrent.FromAmperes(curve.MaximumCurrent))}",
                    "one that takes less than half of the voltage",
                    "Measure it with the motor at rest, less the resistance of the leads.");
            }
        }

        return drive;
    }

    private static DrivenCurve[] Laws(PumpCurve curve, PumpDrive drive) =>
    [
        .. from isTurbine in TurbineOrNot
           where drive.Kind == PumpKind.Unknown || isTurbine == (drive.Kind == PumpKind.Turbine)
           from share in WindingShares.Take(drive.Winding is null ? 2 : 1)
           select new DrivenCurve(curve, isTurbine, drive.Winding?.Ohms ?? double.NaN, share),
    ];

    private static double EndOf(PumpCurve curve, PumpReading reading) =>
        reading.GoesOn() && !curve.EndsAtDeadhead ? PumpCurve.EndlessRise : curve.Flow.Last;

    /// <summary>Delivered flow at a rise and motor voltage, m³/s.</summary>
    internal double FlowAtMotor(double rise, double volts, PumpReading reading)
    {
        if (rise > _relief)
        {
            return 0;
        }

        if (_driven is not null)
        {
            return _condition * Driven(DrivenFigure.Flow, rise, volts, reading);
        }

        (PumpCurve lower, PumpCurve upper) = Around(volts);
        Real flow = ReferenceEquals(lower, upper)
            ? CarriedFlow(lower, rise, volts, reading)
            : Between(lower, CarriedFlow(lower, rise, volts, reading), upper, CarriedFlow(upper, rise, volts, reading), volts);
        return Real.Max(0, flow * _condition);
    }

    /// <summary>How many numbers that takes to be guessed: the motor's voltage, and what its kind needs.</summary>
    internal int Guesses => _driven is null ? 1 : 1 + DrivenTangents.Guesses;


    /// <summary>
    /// Delivered flow at a rise behind the feed, and its slope, to the first order in what a guess of the motor's voltage is off by; false where a curve ends above
    /// zero flow, a relief valve opens, or the current would not grow with the voltage.
    /// </summary>
    /// <param name="rise">Pa.</param>
    /// <param name="supply">V.</param>
    /// <param name="reading">Which bound.</param>
    /// <param name="guesses">The guess, V, and what its kind needs, which are corrected.</param>
    /// <param name="tangent">What is delivered.</param>
    internal bool TryTangent(double rise, double supply, PumpReading reading, Span<double> guesses, out PumpTangent tangent)
    {
        tangent = default;
        ref double volts = ref guesses[0];
        SpeedsMoved speeds = default;
        if (!(_driven is null
            ? TryCarry(rise, volts, reading, withCurrent: !IsFedWithoutLoss, out CarriedCurve at)
            : rise >= 0 && rise <= _relief && DrivenTangents.TryCarry(_driven, PlacesAround(volts), rise, volts, reading, guesses[1..], out at, out speeds)))
        {
            return false;
        }

        double full = supply;
        (double move, double voltsByRise) = (0, 0);
        if (Converter is not null)
        {
            (double spare, double byVolts, double byRise) =
                Converter.SpareAt(supply, _feedOhms, volts, at.Current, at.CurrentByVolts, at.CurrentByRise);
            (move, voltsByRise) = (-spare / byVolts, -byRise / byVolts);
            full = Unloaded(supply) * (1 + Curve.EndTolerance);
            if (!(byVolts < 0))
            {
                return false;
            }
        }
        else if (_feedOhms > 0)
        {
            double stiffness = 1 + (_feedOhms * at.CurrentByVolts);
            move = (VoltageDrop.AtMotor<Real>(supply, at.Current, _feedOhms) - volts) / stiffness;
            voltsByRise = -_feedOhms * at.CurrentByRise / stiffness;
        }

        volts += move;
        tangent = new(
            Math.Max(0, _condition * (at.Flow + (at.FlowByVolts * move))),
            _condition * (at.FlowByRise + (at.FlowByVolts * voltsByRise)),
            Math.Max(Math.Abs(move) / full, speeds.Furthest));
        return at.CurrentByVolts >= 0
            && volts >= MinimumMotorShare * full
            && volts <= full
            && (_driven is null || speeds.TryMove(move, guesses[1..]));
    }

    /// <summary>Delivered flow and current at a rise and motor voltage, with slopes, as new; false where a curve ends above zero flow, or a relief valve opens.</summary>
    /// <param name="rise">Pa.</param>
    /// <param name="volts">V.</param>
    /// <param name="reading">Which bound.</param>
    /// <param name="withCurrent">True if the current is asked for, by the reading that leaves the motor what goes with this one's flow.</param>
    /// <param name="carried">What is delivered and drawn.</param>
    internal bool TryCarry(double rise, double volts, PumpReading reading, bool withCurrent, out CarriedCurve carried)
    {
        (PumpCurve lower, PumpCurve upper) = Around(volts);
        carried = default;
        if (!(rise >= 0 && rise <= _relief) || !TryCarry(lower, rise, volts, reading, withCurrent, out carried))
        {
            return false;
        }

        if (ReferenceEquals(lower, upper))
        {
            return true;
        }

        if (!TryCarry(upper, rise, volts, reading, withCurrent, out CarriedCurve other))
        {
            return false;
        }

        double width = upper.Volts - lower.Volts;
        carried = CarriedCurve.Between(carried, other, (volts - lower.Volts) / width, width);
        return true;
    }

    /// <summary>Share of the measured flow that is left.</summary>
    internal double FlowLeft => _condition;

    private bool TryCarry(PumpCurve curve, double rise, double volts, PumpReading reading, bool withCurrent, out CarriedCurve carried)
    {
        (double speed, double byVolts) = (SpeedOf(curve, volts, reading), SpeedByVolts(curve, volts, reading));
        double measured = PumpScaling.MeasuredPressure<Real>(rise, speed);
        carried = default;
        bool isShut = measured > curve.Flow.Last;
        if (isShut && !curve.EndsAtDeadhead)
        {
            return false;
        }

        (double flow, double slope) = isShut ? (0, 0) : curve.Flow.NearestWithSlope(measured);
        double flowBySpeed = flow - (2 * measured * slope);
        if (!withCurrent)
        {
            carried = new(PumpScaling.Flow<Real>(flow, speed), slope / speed, flowBySpeed * byVolts, 0, 0, 0);
            return true;
        }

        (double drawing, double drawingByVolts, double at) = (speed, byVolts, measured);
        if (reading.Opposite() is var opposite && opposite != reading)
        {
            (drawing, drawingByVolts) = (SpeedOf(curve, volts, opposite), SpeedByVolts(curve, volts, opposite));
            at = PumpScaling.MeasuredPressure<Real>(rise, drawing);
        }

        (double current, double byRise) = curve.CurrentWithSlope(at);
        carried = new(
            PumpScaling.Flow<Real>(flow, speed),
            slope / speed,
            flowBySpeed * byVolts,
            PumpScaling.Current<Real>(current, drawing),
            byRise,
            2 * drawing * (current - (at * byRise)) * drawingByVolts);
        return true;
    }

    /// <summary>
    /// Between which rises a flow is delivered at a motor voltage, by the curves on either side of it, Pa; both the same where
    /// one curve counts. Curves that end above zero flow, and the relief valve, apart.
    /// </summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="volts">V.</param>
    /// <param name="reading">Which bound.</param>
    internal (double Minimum, double Maximum) RisesAround(double flow, double volts, PumpReading reading)
    {
        (PumpCurve lower, PumpCurve upper) = Around(volts);
        double one = CarriedRise(lower, flow, volts, reading);
        double other = ReferenceEquals(lower, upper) ? one : CarriedRise(upper, flow, volts, reading);
        return (Math.Min(one, other), Math.Max(one, other));
    }

    private double CarriedRise(PumpCurve curve, double flow, double volts, PumpReading reading)
    {
        Real speed = SpeedOf(curve, volts, reading);
        return PumpScaling.Pressure<Real>(curve.RiseAt(flow / PumpScaling.Flow<Real>(_condition, speed)), speed);
    }

    /// <summary>Current at a rise and motor voltage, A; null where it was not measured.</summary>
    internal double? CurrentAtMotor(double rise, double volts, PumpReading reading = PumpReading.Estimate) =>
        _curves[0].HasCurrent ? Current(rise, volts, reading) : null;

    /// <summary>True if its current is the same by every reading: within the measured voltages, or of a kind and winding that are known.</summary>
    internal bool HasOneCurrent(double volts) => _driven is null ? volts >= _curves[0].Volts && volts <= _curves[^1].Volts : _driven[0].Length == 1;

    private double Current(double rise, double volts, PumpReading reading)
    {
        if (_driven is not null)
        {
            return Driven(DrivenFigure.Current, rise, volts, reading);
        }

        (PumpCurve lower, PumpCurve upper) = Around(volts);
        return ReferenceEquals(lower, upper)
            ? CarriedCurrent(lower, rise, volts, reading)
            : Between(
                lower, CarriedCurrent(lower, rise, volts, reading), upper, CarriedCurrent(upper, rise, volts, reading), volts);
    }

    // Both neighbours are carried to the voltage by the affinity laws, so that their deadheads meet, and then taken in
    // proportion; at a measured voltage that is the measured curve itself.
    private static Real Between(PumpCurve lower, Real below, PumpCurve upper, Real above, double volts) =>
        StraightLine.Through<Real>(lower.Volts, below, upper.Volts, above, volts);

    private Real CarriedFlow(PumpCurve curve, double rise, double volts, PumpReading reading)
    {
        Real speed = SpeedOf(curve, volts, reading);
        return PumpScaling.Flow<Real>(curve.FlowBeyond(PumpScaling.MeasuredPressure<Real>(rise, speed), reading.GoesOn()), speed);
    }

    private Real CarriedCurrent(PumpCurve curve, double rise, double volts, PumpReading reading)
    {
        Real speed = SpeedOf(curve, volts, reading);
        return PumpScaling.Current<Real>(curve.CurrentNear(PumpScaling.MeasuredPressure<Real>(rise, speed)), speed);
    }

    // Past the measured voltages one curve alone counts: unchanged on the one side, by the motor that changes its speed most on the other.
    private Real SpeedOf(PumpCurve curve, double volts, PumpReading reading)
    {
        bool above = volts > _curves[^1].Volts;
        bool below = volts < _curves[0].Volts;
        return reading == PumpReading.Upper && above ? Extreme(_curves[^1], volts)
            : reading == PumpReading.Lower && below ? Extreme(_curves[0], volts)
            : reading == PumpReading.Upper && below ? 1
            : PumpScaling.SpeedRatio<Real>(Math.Min(volts, _curves[^1].Volts), curve.Volts);
    }

    /// <summary>How <see cref="SpeedOf"/> changes with the voltage, 1/V.</summary>
    private double SpeedByVolts(PumpCurve curve, double volts, PumpReading reading)
    {
        bool above = volts > _curves[^1].Volts;
        bool below = volts < _curves[0].Volts;
        if ((reading == PumpReading.Upper && above) || (reading == PumpReading.Lower && below))
        {
            PumpCurve last = above ? _curves[^1] : _curves[0];
            return Extreme(last, volts) > MinimumMotorShare ? 1 / (last.Volts * (1 - MaximumResistiveShare)) : 0;
        }

        return above || (reading == PumpReading.Upper && below) ? 0 : 1 / curve.Volts;
    }

    // A motor that would stand still turns a little, so that scaled pressures stay finite.
    private static Real Extreme(PumpCurve curve, double volts) =>
        Real.Max(MinimumMotorShare, PumpMotor.SpeedRatio<Real>(volts, curve.Volts, MaximumResistiveShare));

    // The measured voltages on either side; one twice where it is met, or where there is none on the other side. Met, it must
    // count alone: the other, carried there, may end at a higher rise.
    private (PumpCurve Lower, PumpCurve Upper) Around(double volts)
    {
        (int lower, int upper) = PlacesAround(volts);
        return (_curves[lower], _curves[upper]);
    }

    private (int Lower, int Upper) PlacesAround(double volts)
    {
        PumpCurve[] curves = _curves;
        if (volts <= curves[0].Volts)
        {
            return (0, 0);
        }

        for (int upper = 1; upper < curves.Length; upper++)
        {
            if (curves[upper].Volts >= volts)
            {
                return (curves[upper].Volts == volts ? upper : upper - 1, upper);
            }
        }

        return (curves.Length - 1, curves.Length - 1);
    }

    private enum DrivenFigure
    {
        Flow,
        Current,
        End,
    }

    /// <summary>
    /// What kinds and windings that the pump may have agree on, or the bound that a reading asks for: the most of flow and end by the upper
    /// reading, of current by all but the lower one.
    /// </summary>
    private double Driven(DrivenFigure figure, double rise, double volts, PumpReading reading)
    {
        (int lower, int upper) = PlacesAround(volts);
        (DrivenCurve[] below, DrivenCurve[] above) = (_driven![lower], _driven[upper]);
        bool most = reading == PumpReading.Upper || (figure == DrivenFigure.Current && reading != PumpReading.Lower);
        double found = most ? double.NegativeInfinity : double.PositiveInfinity;
        for (int law = 0; law < below.Length; law++)
        {
            for (int winding = 0; winding < below.Length; winding++)
            {
                if (winding != law && (figure != DrivenFigure.Current || below[winding].IsTurbine != below[law].IsTurbine))
                {
                    continue;
                }

                double one = Of(below[law], below[winding]);
                double value = lower == upper ? one
                    : Of(above[law], above[winding]) is var other && figure == DrivenFigure.End ? Math.Max(one, other)
                    : Between(_curves[lower], one, _curves[upper], other, volts);
                found = most ? Math.Max(found, value) : Math.Min(found, value);
            }
        }

        return found;

        double Of(DrivenCurve curve, DrivenCurve winding) => figure switch
        {
            DrivenFigure.Flow => curve.FlowAt(rise, volts, reading),
            DrivenFigure.Current => curve.CurrentAt(rise, volts, winding),
            _ => curve.EndAt(volts, reading),
        };
    }

    /// <summary>The curves that count at a motor voltage, V, for its working: one twice where but one does.</summary>
    internal (PumpCurve Lower, PumpCurve Upper) CurvesAround(double volts) => Around(volts);

    /// <summary>At how many times the speed of a curve it runs at a motor voltage, V, as results take it.</summary>
    internal double SpeedRatio(PumpCurve curve, double volts) => SpeedOf(curve, volts, PumpReading.Estimate).Value;

    /// <summary>True if every curve that counts at a motor voltage, V, was measured at the rise, Pa, that it is read at.</summary>
    internal bool CurvesCover(double rise, double volts)
    {
        (PumpCurve lower, PumpCurve upper) = Around(volts);
        return rise <= _relief && Covers(lower) && Covers(upper);

        bool Covers(PumpCurve curve) => PumpScaling.MeasuredPressure<Real>(rise, SpeedOf(curve, volts, PumpReading.Estimate)).Value is var at && at >= curve.Flow.First && at <= curve.Flow.Last;
    }

    /// <summary>True if a kind of pump says how its curves are carried, which leaves no rise in closed form.</summary>
    internal bool IsDriven => _driven is not null;

    /// <summary>Resistance of its own feed, and of a resistor that it runs through, Ω.</summary>
    internal double FeedOhms => _feedOhms;

    /// <summary>True if the motor gets the supply's voltage.</summary>
    internal bool IsFedWithoutLoss => _feedOhms == 0 && Converter is null;

    /// <summary>The highest voltage that its motor may get, V: that of the supply, or of the converter with nothing drawn.</summary>
    internal double Unloaded(double supply) => Converter?.Unloaded(supply) ?? supply;

    /// <summary>Voltage and current at the end of its feed, V and A: the motor's own, or those at its converter's input.</summary>
    internal (double Voltage, double Current) FeedEndOf(double given, double volts, double amperes) =>
        Converter?.InputOf(given, _feedOhms, volts, amperes) ?? (volts, amperes);

    /// <summary>Current that it would draw against a rise with its converter at full voltage, A.</summary>
    internal double CurrentAtFullVoltage(double rise, double supply, PumpReading reading) => Current(rise, Unloaded(supply), reading);

    /// <summary>The most current that its converter gives at full voltage, A; not a number without one.</summary>
    internal double MaximumConverted(double supply) => Converter?.MaximumAt(supply, _feedOhms) ?? double.NaN;

    /// <summary>Voltage that its feed is given: the supply's, or what a resistor leaves of it, V.</summary>
    internal double GivenVoltage(double supply, double? current) =>
        _resistor > 0 ? VoltageDrop.AtMotor<Real>(supply, current ?? double.NaN, _resistor) : supply;

    /// <summary>Voltage left at the motor by its feed, V.</summary>
    internal double MotorVoltage(double rise, double supply, PumpReading reading = PumpReading.Estimate)
    {
        if (Converter is not null)
        {
            return ConvertedVoltage(new(this, rise, supply, reading.Opposite()));
        }

        if (_feedOhms == 0)
        {
            return supply;
        }

        if (_driven is not null && DrivenMotor.TryVoltage(_driven, supply, _feedOhms, rise, most: reading.Opposite() != PumpReading.Lower, out double volts))
        {
            return volts;
        }

        LeftVoltage left = new(this, rise, supply, reading.Opposite());
        return supply * (Secant.TryNear(left, 1, out double share) && share is >= MinimumMotorShare and <= 1
            ? share
            : Bracket.Of(left, MinimumMotorShare, 1));
    }

    // A converter at its limit lowers its voltage until the motor draws no more: of several voltages at which it would not, the highest.
    private static double ConvertedVoltage(in SpareVoltage spare)
    {
        const int Steps = 32;
        double over = 1;
        for (int step = Steps; step > 0 && spare.At(over) < 0; step--)
        {
            double under = MinimumMotorShare + ((1 - MinimumMotorShare) * (step - 1) / Steps);
            if (spare.At(under) >= 0)
            {
                return spare.Full * Bracket.Of(spare, under, over);
            }

            over = under;
        }

        return spare.Full * over;
    }

    /// <summary>What the curves give at a rise and motor voltage, their upper ends apart.</summary>
    internal PumpCoverage CoverageAt(double rise, double volts)
    {
        PumpCoverage coverage =
            volts < MinimumScale * _curves[0].Volts ? PumpCoverage.VoltageBelow
            : volts < _curves[0].Volts - VoltageTolerance ? PumpCoverage.Scaled
            : volts > _curves[^1].Volts + VoltageTolerance ? PumpCoverage.VoltageAbove
            : PumpCoverage.Measured;
        return rise < BeginsAt(volts) ? coverage | PumpCoverage.PressureBelow : coverage;
    }

    /// <summary>
    /// True if every curve begins against no rise, and the motor's voltage is never too far under the lowest measured one:
    /// not even with the maximum current that was measured.
    /// </summary>
    /// <param name="supply">V.</param>
    internal bool IsCoveredBelow(double supply) =>
        _beginsAtNothing && LowestMotorVoltage(supply, PumpReading.Estimate) >= MinimumScale * _curves[0].Volts;

    /// <summary>True if the motor's voltage is within the measured ones whatever the pump delivers.</summary>
    /// <param name="supply">V.</param>
    internal override bool IsMeasuredAt(double supply) =>
        Unloaded(supply) <= _curves[^1].Volts + VoltageTolerance && LowestMotorVoltage(supply, PumpReading.Upper) >= _curves[0].Volts - VoltageTolerance;

    /// <summary>Voltage that is left at the motor by the maximum current that was measured, V.</summary>
    private double LowestMotorVoltage(double supply, PumpReading reading)
    {
        double maximum = 0;
        foreach (PumpCurve curve in _curves)
        {
            if (!IsFedWithoutLoss)
            {
                // A displacement pump draws the same at a lower voltage.
                Real speed = SpeedOf(curve, Unloaded(supply), reading);
                maximum = Math.Max(maximum, PumpScaling.Current<Real>(curve.MaximumCurrent, IsDriven ? Real.Max(1, speed) : speed));
            }
        }

        return Converter is null
            ? VoltageDrop.AtMotor<Real>(supply, maximum, _feedOhms)
            : ConvertedVoltage(new(this, double.NaN, supply, reading, maximum));
    }

    /// <summary>The highest rise at which something is delivered at a motor voltage, Pa.</summary>
    internal double EndsAt(double volts, PumpReading reading)
    {
        if (_driven is not null)
        {
            return Math.Min(_relief, Driven(DrivenFigure.End, 0, volts, reading));
        }

        (PumpCurve lower, PumpCurve upper) = Around(volts);
        return Math.Min(_relief, Math.Max(EndAt(lower, volts, reading), EndAt(upper, volts, reading)));
    }

    private double EndAt(PumpCurve curve, double volts, PumpReading reading) =>
        PumpScaling.Pressure<Real>(EndOf(curve, reading), SpeedOf(curve, volts, reading));

    /// <summary>The lowest rise that the curves used at a motor voltage cover, Pa; zero if they start there.</summary>
    internal double BeginsAt(double volts)
    {
        (PumpCurve lower, PumpCurve upper) = Around(volts);
        double first = Math.Max(
            PumpScaling.Pressure<Real>(lower.Flow.First, SpeedOf(lower, volts, PumpReading.Estimate)),
            PumpScaling.Pressure<Real>(upper.Flow.First, SpeedOf(upper, volts, PumpReading.Estimate)));

        // Half a pascal, so that the first point itself counts as covered however it was reached.
        return Math.Max(0, first - HalfPascal);
    }

    /// <summary>What a converter has to spare, by share of its full voltage: falls as the motor's voltage, and so its current, rises.</summary>
    /// <param name="pump">The pump.</param>
    /// <param name="rise">Against which it delivers, Pa.</param>
    /// <param name="supply">V.</param>
    /// <param name="reading">How much it draws.</param>
    /// <param name="drawn">Current that it draws at any voltage, A; by its curves if not given.</param>
    private readonly struct SpareVoltage(Pump pump, double rise, double supply, PumpReading reading, double? drawn = null) : IFalling
    {
        /// <summary>The converter's voltage with nothing drawn, V.</summary>
        public double Full { get; } = pump.Unloaded(supply);

        /// <inheritdoc/>
        public double At(double x)
        {
            double volts = x * Full;
            return pump.Converter!.SpareAt(supply, pump._feedOhms, volts, drawn ?? pump.Current(rise, volts, reading)) / Full;
        }
    }

    /// <summary>
    /// Voltage left over once the feed has taken its share, by share of the supply: falls as the motor's voltage, and so its
    /// current, rises.
    /// </summary>
    private readonly struct LeftVoltage(Pump pump, double rise, double supply, PumpReading reading) : IFalling
    {
        /// <inheritdoc/>
        public double At(double x)
        {
            Real volts = x * supply;
            return (VoltageDrop.AtMotor<Real>(supply, pump.Current(rise, volts, reading), pump._feedOhms) - volts) / supply;
        }
    }
}
