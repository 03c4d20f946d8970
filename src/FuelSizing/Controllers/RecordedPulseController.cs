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
        .Value(controller => controller._deadTime)
        .Number(controller => controller._volts)
        .Number(controller => controller._differential);

    private readonly Curve[] _bySpeed;
    private readonly double[] _manifold;
    private readonly DeadTimeTable? _deadTime;
    private readonly double? _volts;
    private readonly double _differential;

    private RecordedPulseController(Curve[] bySpeed, double[] manifold, DeadTimeTable? deadTime, double? volts, double differential) =>
        (_bySpeed, _manifold, _deadTime, _volts, _differential) = (bySpeed, manifold, deadTime, volts, differential);

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
        return new([RowOf([.. points.Select(point => point.Speed)], [.. points.Select(point => point.Pulse)], nameof(points), nameof(points))], [], null, null, 0);
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
            ? new([.. pulses.Select(row => RowOf(speeds, row, nameof(speeds), nameof(pulses)))], manifold, null, null, 0)
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
            deadTime,
            DeadTimeTable.WithinVoltage(recordedAt, nameof(recordedAt)).Volts,
            DeadTimeTable.WithinDifferential(differential, nameof(differential)).Pascals);
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
        if (_deadTime is { } table)
        {
            pulse += (Real)table.Nearest(at.Volts, _differential) - table.Nearest(_volts!.Value, _differential);
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
