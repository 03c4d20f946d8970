using System.Globalization;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>How long a fuse of a class carries a multiple of its rating: the limits between which it opens, as its data sheet or standard states them.</summary>
/// <remarks>
/// <para>The figures are the user's: the library holds none, for none could be read in published text (those of ISO 8820-3 for blade fuses are not freely to be
/// had). Times are for a fuse at the temperature of its data sheet; one that sits hot opens sooner.</para>
/// <para>A fuse opens the sooner the more it carries. Between two stated multiples it surely carries as long as at the higher one, and has surely opened as soon as at
/// the lower one; above the highest nothing says how long it carries, below the lowest nothing says that it opens at all.</para>
/// </remarks>
/// <example>
/// <code>
/// FuseTimeCurrent times = FuseTimeCurrent.Of(
///     (1.5, Duration.FromSeconds(2), Duration.FromSeconds(400)),
///     (2.5, Duration.FromSeconds(0.2), Duration.FromSeconds(6)),
///     (5, Duration.FromSeconds(0.05), Duration.FromSeconds(0.4)));
/// Feed feed = Feed.Of(
///         "to the tank", Conductor.Awg(12), Length.FromMeters(4.5), Length.FromMeters(4.5), Temperature.FromDegreesCelsius(60), Contact.DefaultFuse)
///     .WithFuse(ElectricCurrent.FromAmperes(20), times)
///     .WithStart(MotorStart.Of(ElectricCurrent.FromAmperes(46), Duration.FromSeconds(0.08), opensWithin: Duration.FromSeconds(10)));
/// </code>
/// </example>
public sealed record FuseTimeCurrent
{
    private static readonly Identity<FuseTimeCurrent> _identity = new Identity<FuseTimeCurrent>()
        .List(times => times.Points);

    private FuseTimeCurrent(FuseTime[] points) => Points = Array.AsReadOnly(points);

    /// <summary>The stated limits, multiples rising.</summary>
    public IReadOnlyList<FuseTime> Points { get; }

    /// <summary>The limits of a class of fuses.</summary>
    /// <param name="points">
    /// Current as a multiple of the rating, 1 to 50, rising; the shortest time after which the fuse may open there, and the longest within which it opens, 10 ms to
    /// 1,000 h, each falling with the multiple or equal; 1 to 50 points.
    /// </param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or out of order.</exception>
    public static FuseTimeCurrent Of(params (double Multiple, Duration Minimum, Duration Maximum)[] points)
    {
        ArgumentNullException.ThrowIfNull(points);
        Guard.Count(points.Length, 1, 50, "Give the opening times at one multiple of the rating or more.", nameof(points));
        FuseTime[] made = [.. points.Select(point => FuseTime.Within(point.Multiple, point.Minimum, point.Maximum, nameof(points)))];
        return From(made);
    }

    /// <summary>The same from points made before.</summary>
    /// <param name="points">1 to 50, multiples rising, times falling or equal.</param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The points are out of order.</exception>
    public static FuseTimeCurrent From(params FuseTime[] points)
    {
        ArgumentNullException.ThrowIfNull(points);
        Guard.Count(points.Length, 1, 50, "Give the opening times at one multiple of the rating or more.", nameof(points));
        ArgumentNullException.ThrowIfNull(points[0], nameof(points));
        for (int at = 1; at < points.Length; at++)
        {
            ArgumentNullException.ThrowIfNull(points[at], nameof(points));
            (FuseTime before, FuseTime here) = (points[at - 1], points[at]);
            if (here.Multiple <= before.Multiple || here.Minimum > before.Minimum || here.Maximum > before.Maximum)
            {
                throw Guard.OutOfRange(
                    nameof(points),
                    here.ToString(),
                    $"a higher multiple than, and times no longer than, {before}",
                    "Sort the points by their multiple; a fuse opens no later where it carries more.");
            }
        }

        return new([.. points]);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(FuseTimeCurrent? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Every point.</summary>
    /// <returns>For instance <c>1.5 × rating: 2.00 s to 400.00 s; 5 × rating: 0.05 s to 0.40 s</c>.</returns>
    public override string ToString() => string.Join("; ", Points);

    /// <summary>How long it surely carries a multiple of its rating, s: as long as at the next higher one that is stated; not a number above all of them.</summary>
    internal double SurelyCarries(double multiple)
    {
        foreach (FuseTime point in Points)
        {
            if (point.Multiple >= multiple)
            {
                return point.Minimum.Seconds;
            }
        }

        return double.NaN;
    }

    /// <summary>Within what it has surely opened, s: as soon as at the next lower multiple that is stated; infinite below all of them.</summary>
    internal double SurelyOpened(double multiple)
    {
        double opened = double.PositiveInfinity;
        foreach (FuseTime point in Points)
        {
            opened = point.Multiple <= multiple ? point.Maximum.Seconds : opened;
        }

        return opened;
    }
}

/// <summary>Between which times a fuse opens at one multiple of its rating.</summary>
public sealed record FuseTime
{
    private static readonly Identity<FuseTime> _identity = new Identity<FuseTime>()
        .Number(time => time.Multiple)
        .Number(time => time.Minimum.Seconds)
        .Number(time => time.Maximum.Seconds);

    private FuseTime(double multiple, Duration minimum, Duration maximum) => (Multiple, Minimum, Maximum) = (multiple, minimum, maximum);

    /// <summary>Current ÷ rating.</summary>
    public double Multiple { get; }

    /// <summary>The shortest time after which it may open.</summary>
    public Duration Minimum { get; }

    /// <summary>The longest within which it opens.</summary>
    public Duration Maximum { get; }

    /// <summary>The limits at one multiple.</summary>
    /// <param name="multiple">Current ÷ rating, 1 to 50.</param>
    /// <param name="minimum">The shortest time after which it may open, 10 ms to 1,000 h.</param>
    /// <param name="maximum">The longest within which it opens, from that to 1,000 h.</param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static FuseTime Of(double multiple, Duration minimum, Duration maximum) => Within(multiple, minimum, maximum, null);

    /// <summary>The same; a value that is refused is named as one of a list where it stands in one.</summary>
    internal static FuseTime Within(double multiple, Duration minimum, Duration maximum, string? list) => new(
        Guard.Number(multiple, 1, 50, "Give the current as a multiple of the fuse's rating.", list ?? nameof(multiple)),
        Guard.Between(
            minimum, Duration.FromMilliseconds(10), Duration.FromHours(1000), "Give the shortest opening time that the fuse's data states there.", list ?? nameof(minimum)),
        Guard.Between(maximum, minimum, Duration.FromHours(1000), "Give the longest opening time that the fuse's data states there.", list ?? nameof(maximum)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(FuseTime? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Multiple and times.</summary>
    /// <returns>For instance <c>2.5 × rating: 0.20 s to 6.00 s</c>.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Multiple:0.###} × rating: {TextStyle.Metric.Time(Minimum)} to {TextStyle.Metric.Time(Maximum)}");
}

/// <summary>What a motor draws while it does not turn yet, or cannot: its start, and a locked rotor.</summary>
/// <remarks>
/// Measure the current with the rotor held for a moment at the highest supply that the car has, or take the maker's figure: it is counted as it is given, at any supply. At a start it
/// falls as the motor speeds up; it is counted as standing for the whole duration, which is the conservative side for the fuse.
/// </remarks>
public sealed record MotorStart
{
    private static readonly Identity<MotorStart> _identity = new Identity<MotorStart>()
        .Number(start => start.LockedRotor.Amperes)
        .Number(start => start.Time?.Seconds)
        .Number(start => start.OpensWithin?.Seconds);

    private MotorStart(ElectricCurrent lockedRotor, Duration? time, Duration? opensWithin) => (LockedRotor, Time, OpensWithin) = (lockedRotor, time, opensWithin);

    /// <summary>Current with the rotor locked.</summary>
    public ElectricCurrent LockedRotor { get; }

    /// <summary>How long a start takes; none where it is not stated.</summary>
    public Duration? Time { get; }

    /// <summary>Within what a fuse has to open on a locked rotor; none where it is not stated.</summary>
    public Duration? OpensWithin { get; }

    /// <summary>Describes a start.</summary>
    /// <param name="lockedRotor">Current with the rotor locked, 0.5 to 500 A.</param>
    /// <param name="time">How long a start takes, 10 ms to 60 s; the start is not judged if not given.</param>
    /// <param name="opensWithin">
    /// Within what a fuse has to open on a locked rotor, before motor or wire is too hot, 10 ms to 1 h; not judged if not given.
    /// </param>
    /// <returns>The start.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static MotorStart Of(ElectricCurrent lockedRotor, Duration? time = null, Duration? opensWithin = null) => new(
        Guard.Between(
            lockedRotor,
            ElectricCurrent.FromAmperes(0.5),
            ElectricCurrent.FromAmperes(500),
            "Give the current that the motor draws with its rotor held.",
            nameof(lockedRotor)),
        time is { } starting
            ? Guard.Between(
                starting, Duration.FromMilliseconds(10), Duration.FromSeconds(60), "Give the time until the motor's current has come down.", nameof(time))
            : null,
        opensWithin is { } limit
            ? Guard.Between(
                limit, Duration.FromMilliseconds(10), Duration.FromHours(1), "Give the time that motor and wire stand a locked rotor.", nameof(opensWithin))
            : null);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(MotorStart? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Current and times.</summary>
    /// <returns>For instance <c>46.0 A with its rotor locked, start 0.08 s, to be opened within 10.00 s</c>.</returns>
    public override string ToString() =>
        $"{Readable.Of(LockedRotor)} with its rotor locked{(Time is { } time ? $", start {TextStyle.Metric.Time(time)}" : string.Empty)}{(OpensWithin is { } limit ? $", to be opened within {TextStyle.Metric.Time(limit)}" : string.Empty)}";
}
