using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Controllers;

/// <summary>A controller of which nothing is known but its pulses, logged over speed, or over speed and manifold pressure.</summary>
/// <remarks>
/// <para>Recorded over speed alone, at full throttle without boost, they are taken not to change with boost: what a controller does that
/// knows nothing of it. Where it may know something, record them over manifold pressure too.</para>
/// <para>Between the points they are linear; beyond them they give no data, and the mixture cannot be said. They are taken to be the same at
/// every voltage, unless <see cref="WithVoltageCorrection"/> says how they follow it.</para>
/// </remarks>
/// <example>
/// <code>
/// RecordedPulseController controller = RecordedPulseController.BySpeed(
///     (RotationalSpeed.FromRevolutionsPerMinute(2000), Duration.FromMilliseconds(9.4)),
///     (RotationalSpeed.FromRevolutionsPerMinute(6000), Duration.FromMilliseconds(10.1)));
/// Console.WriteLine(controller);
/// </code>
/// </example>
public sealed record RecordedPulseController : EngineController
{
    private static readonly Identity<RecordedPulseController> _identity = new Identity<RecordedPulseController>()
        .List(controller => controller._bySpeed)
        .Numbers(controller => controller._manifold)
        .Value(controller => controller.Correction);

    private readonly Curve[] _bySpeed;
    private readonly double[] _manifold;

    private RecordedPulseController(Curve[] bySpeed, double[] manifold, RecordedPulse[] rows, VoltageCorrection? correction) =>
        (_bySpeed, _manifold, Rows, Correction) = (bySpeed, manifold, rows, correction);

    /// <summary>The pulses as they were given.</summary>
    internal IReadOnlyList<RecordedPulse> Rows { get; }

    /// <summary>True if they were recorded over manifold pressure too.</summary>
    internal bool FollowsManifold => _manifold.Length > 0;

    /// <summary>How they follow the voltage; none where they do not.</summary>
    internal VoltageCorrection? Correction { get; }

    /// <inheritdoc/>
    public override Statement Text => _manifold.Length == 0
        ? Statement.Of("controller.recorded", $"pulses recorded over speed, taken not to change with boost")
        : Statement.Of(
            "controller.recorded-over-pressure",
            $"pulses recorded over speed and manifold pressure, {Pressure.FromPascals(_manifold[0])} to {Pressure.FromPascals(_manifold[^1])} absolute");

    /// <summary>Pulses recorded over speed at full throttle, taken not to change with boost.</summary>
    /// <param name="points">Two or more, speeds rising; pulses 0.1 to 200 ms, dead time included.</param>
    /// <returns>The controller.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the speeds do not rise.</exception>
    public static RecordedPulseController BySpeed(params (RotationalSpeed Speed, Duration Pulse)[] points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return new(
            [RowOf([.. points.Select(point => point.Speed)], [.. points.Select(point => point.Pulse)], nameof(points), nameof(points))],
            [],
            [.. points.Select(point => new RecordedPulse(point.Speed, null, point.Pulse))],
            null);
    }

    /// <summary>Pulses recorded over speed and manifold pressure.</summary>
    /// <param name="speeds">Two or more, rising.</param>
    /// <param name="manifoldAbsolute">Two or more, rising, 10 to 500 kPa absolute.</param>
    /// <param name="pulses">A row for each pressure, in it a pulse for each speed: 0.1 to 200 ms, dead time included.</param>
    /// <returns>The controller.</returns>
    /// <exception cref="ArgumentException">The rows do not match the speeds and pressures.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or a list does not rise.</exception>
    public static RecordedPulseController Of(
        IReadOnlyList<RotationalSpeed> speeds, IReadOnlyList<Pressure> manifoldAbsolute, IReadOnlyList<IReadOnlyList<Duration>> pulses)
    {
        ArgumentNullException.ThrowIfNull(speeds);
        ArgumentNullException.ThrowIfNull(manifoldAbsolute);
        ArgumentNullException.ThrowIfNull(pulses);
        double[] manifold = Guard.Rising(
            [.. manifoldAbsolute.Select(pressure => ManifoldAbsolute.Within(pressure, nameof(manifoldAbsolute)).Pascals)], nameof(manifoldAbsolute));
        return pulses.Count == manifold.Length
            ? new(
                [.. pulses.Select(row => RowOf(speeds, row, nameof(speeds), nameof(pulses)))],
                manifold,
                [.. pulses.SelectMany((row, at) => row.Zip(speeds, (pulse, speed) => new RecordedPulse(speed, manifoldAbsolute[at], pulse)))],
                null)
            : throw new ArgumentException(
                $"pulses had {pulses.Count} rows for {manifold.Length} manifold pressures; give one row for each.", nameof(pulses));
    }

    /// <summary>The same pulses, made longer or shorter with voltage as the dead time is: what a controller does that corrects for it.</summary>
    /// <param name="deadTime">The dead times in the controller's data.</param>
    /// <param name="recordedAt">Voltage at the injectors when the pulses were recorded, 5 to 20 V.</param>
    /// <param name="differential">Pressure across the injector whose dead times it uses, 50 to 2,000 kPa.</param>
    /// <returns>The controller.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public RecordedPulseController WithVoltageCorrection(DeadTimeTable deadTime, ElectricPotential recordedAt, Pressure differential)
    {
        ArgumentNullException.ThrowIfNull(deadTime);
        return new(
            _bySpeed,
            _manifold,
            [.. Rows],
            new(
                deadTime,
                DeadTimeTable.WithinVoltage(recordedAt, nameof(recordedAt)),
                DeadTimeTable.WithinDifferential(differential, nameof(differential))));
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(RecordedPulseController? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override IEnumerable<double> ManifoldKnots => _manifold;

    internal override IEnumerable<double> SpeedKnots => _bySpeed[0].Points.Select(point => point.X);

    internal override FuelWanted Want(in ControllerInput at) => new(double.NaN, double.NaN, double.NaN, false);

    internal override PulseCommanded Command(in ControllerInput at, in FuelWanted wanted, double trim, double differential)
    {
        double pulse = RecordedAt(at.Speed, at.ManifoldAbsolute);
        if (Correction is { DeadTime: { } table, Differential.Pascals: var pascals, RecordedAt.Volts: var recordedAt })
        {
            pulse += (Real)table.Nearest(at.Volts, pascals) - table.Nearest(recordedAt, pascals);
        }

        return new(pulse, pulse, double.NaN, double.NaN);
    }

    private double RecordedAt(double speed, double manifold)
    {
        if (!_bySpeed[0].Covers(speed))
        {
            return double.NaN;
        }

        if (_manifold.Length == 0)
        {
            return _bySpeed[0].At(speed);
        }

        double inside = Math.Clamp(manifold, _manifold[0], _manifold[^1]);
        if (Math.Abs(manifold - inside) > Curve.EndTolerance * (_manifold[^1] - _manifold[0]))
        {
            return double.NaN;
        }

        int upper = 1;
        while (_manifold[upper] < inside)
        {
            upper++;
        }

        return StraightLine.Through<Real>(
            _manifold[upper - 1], _bySpeed[upper - 1].At(speed), _manifold[upper], _bySpeed[upper].At(speed), inside);
    }

    private static Curve RowOf(
        IReadOnlyList<RotationalSpeed> speeds, IReadOnlyList<Duration> pulses, string speedsName, string pulsesName)
    {
        ArgumentNullException.ThrowIfNull(pulses, pulsesName);
        return pulses.Count == speeds.Count
            ? new(
                Guard.Rising([.. speeds.Select(speed => EngineSpeed.Within(speed, speedsName))], speedsName),
                [.. pulses.Select(pulse => Guard.Between(
                    pulse,
                    Duration.FromMilliseconds(0.1),
                    Duration.FromMilliseconds(200),
                    "Give the pulse as the log has it, dead time included.",
                    pulsesName).Seconds)],
                Interpolation.Linear)
            : throw new ArgumentException(
                $"{pulsesName} had a row of {pulses.Count} for {speeds.Count} speeds; give one pulse for each.", pulsesName);
    }
}

/// <summary>A recorded pulse.</summary>
/// <param name="Speed">Engine speed.</param>
/// <param name="Manifold">Manifold pressure, absolute; none in pulses over speed alone.</param>
/// <param name="Pulse">Dead time included.</param>
internal sealed record RecordedPulse(RotationalSpeed Speed, Pressure? Manifold, Duration Pulse);

/// <summary>How recorded pulses follow the voltage: by the dead times of the controller's data.</summary>
internal sealed record VoltageCorrection
{
    private static readonly Identity<VoltageCorrection> _identity = new Identity<VoltageCorrection>()
        .Value(correction => correction.DeadTime)
        .Number(correction => correction.RecordedAt.Volts)
        .Number(correction => correction.Differential.Pascals);

    /// <summary>Takes what has been checked.</summary>
    public VoltageCorrection(DeadTimeTable deadTime, ElectricPotential recordedAt, Pressure differential) =>
        (DeadTime, RecordedAt, Differential) = (deadTime, recordedAt, differential);

    /// <summary>In the controller's data.</summary>
    public DeadTimeTable DeadTime { get; }

    /// <summary>Voltage at the injectors when the pulses were recorded.</summary>
    public ElectricPotential RecordedAt { get; }

    /// <summary>Whose dead times it uses.</summary>
    public Pressure Differential { get; }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    public bool Equals(VoltageCorrection? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);
}
