using FuelSizing.Engines;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Controllers;

/// <summary>A controller's strategy of your own: the pulse that it commands, from what it measures.</summary>
/// <remarks>
/// <para>It must be pure: the same inputs give the same pulse, on any thread, with nothing kept in between. <see cref="CustomController"/> makes a controller of it.</para>
/// <para>The solver relies on three things, which <c>ConformanceKit.Of(IControllerLaw, FuelSystem)</c> tries: a pulse is not below zero, it has no jump, and every kink is named.
/// What the law is not given it cannot know: without <see cref="ReadsRailPressure"/> the pressure across the injector is not there.</para>
/// </remarks>
/// <example>
/// <code>
/// sealed record PulseByManifold : IControllerLaw
/// {
///     public Statement Text => Statement.Of("own.controller.map", $"a pulse in proportion to manifold pressure up to {Pressure.FromKilopascals(250)}");
///
///     public bool ReadsRailPressure => false;
///
///     public IReadOnlyList&lt;RotationalSpeed&gt; SpeedKinks => [];
///
///     public IReadOnlyList&lt;Pressure&gt; ManifoldKinks => [Pressure.FromKilopascals(250)];
///
///     public Duration? PulseAt(ControllerReading at) => Duration.FromMilliseconds(
///         1.0 + (0.055 * Math.Min(250, at.ManifoldAbsolute.Kilopascals)));
/// }
/// </code>
/// </example>
public interface IControllerLaw
{
    /// <summary>What it is and knows, as a code of your own with its figures.</summary>
    Statement Text { get; }

    /// <summary>True if it measures the pressure across the injectors.</summary>
    bool ReadsRailPressure { get; }

    /// <summary>Engine speeds at which it has a kink, in any order; empty if there is none.</summary>
    IReadOnlyList<RotationalSpeed> SpeedKinks { get; }

    /// <summary>Manifold pressures, absolute, at which it has a kink, or its sensor ends, in any order; empty if there is none.</summary>
    IReadOnlyList<Pressure> ManifoldKinks { get; }

    /// <summary>The pulse that it commands.</summary>
    /// <param name="at">What a controller may measure.</param>
    /// <returns>The pulse, dead time included, 0 to 500 ms; none where its data ends, and the mixture cannot be said.</returns>
    Duration? PulseAt(ControllerReading at);
}

/// <summary>What a controller may measure at an operating point.</summary>
public sealed class ControllerReading
{
    private readonly ControllerInput _input;

    internal ControllerReading(in ControllerInput input, double? differential) =>
        (_input, Differential) = (input, differential is { } pascals ? Pressure.FromPascals(pascals) : null);

    /// <summary>Engine speed.</summary>
    public RotationalSpeed Speed => RotationalSpeed.FromRevolutionsPerSecond(_input.Speed);

    /// <summary>Manifold pressure, absolute.</summary>
    public Pressure ManifoldAbsolute => Pressure.FromPascals(_input.ManifoldAbsolute);

    /// <summary>Of the charge in the manifold.</summary>
    public Temperature ChargeTemperature => Temperature.FromKelvins(_input.ChargeTemperature);

    /// <summary>Ambient pressure, absolute.</summary>
    public Pressure AmbientPressure => Pressure.FromPascals(_input.Ambient);

    /// <summary>Of the ambient air.</summary>
    public Temperature AmbientTemperature => Temperature.FromKelvins(_input.AmbientTemperature);

    /// <summary>Air that the engine takes, as a meter before it would read.</summary>
    public MassFlow AirMassFlow => MassFlow.FromKilogramsPerSecond(_input.Air);

    /// <summary>Voltage at the injectors.</summary>
    public ElectricPotential SupplyVoltage => ElectricPotential.FromVolts(_input.Volts);

    /// <summary>Time from the beginning of one injection to that of the next: the longest pulse.</summary>
    public Duration AvailableTime => Duration.FromSeconds(_input.AvailableTime);

    /// <summary>Pressure across the injectors; none where the law does not read it.</summary>
    public Pressure? Differential { get; }

    /// <summary>Speed and manifold pressure.</summary>
    /// <returns>For instance <c>6,800 rev/min, 161 kPa absolute</c>.</returns>
    public override string ToString() => $"{Readable.Of(Speed)}, {Readable.Of(ManifoldAbsolute)} absolute";
}

/// <summary>A controller whose pulse is a law of your own.</summary>
/// <remarks>A lean or rich mixture is then put down to its pulse as a whole: what in the law causes it the library does not know. A setup file cannot hold it.</remarks>
/// <example>
/// <code>
/// FuelSystem controlled = system.With(CustomController.Of(new OnePulse()));
/// Console.WriteLine(controlled.Solve(point).Mixture);
///
/// sealed record OnePulse : IControllerLaw
/// {
///     public Statement Text => Statement.Of("own.controller.one", $"a pulse of {Duration.FromMilliseconds(9)}");
///     public bool ReadsRailPressure => false;
///     public IReadOnlyList&lt;RotationalSpeed&gt; SpeedKinks => [];
///     public IReadOnlyList&lt;Pressure&gt; ManifoldKinks => [];
///     public Duration? PulseAt(ControllerReading at) => Duration.FromMilliseconds(9);
/// }
/// </code>
/// </example>
public sealed record CustomController : EngineController
{
    private static readonly Identity<CustomController> _identity = new Identity<CustomController>()
        .Value(controller => controller.Law);

    // Longer than any cycle.
    private const double MaximumPulse = 0.5;

    private readonly double[] _speeds;
    private readonly double[] _manifolds;

    private CustomController(IControllerLaw law) => (Law, _speeds, _manifolds) = (
        law,
        [.. law.SpeedKinks.Select(speed => EngineSpeed.Within(speed, nameof(law)))],
        [.. law.ManifoldKinks.Select(pressure => ManifoldAbsolute.Within(pressure, nameof(law)).Pascals)]);

    /// <summary>The law.</summary>
    public IControllerLaw Law { get; }

    /// <inheritdoc/>
    public override Statement Text => Law.Text;

    /// <summary>A controller by a law.</summary>
    /// <param name="law">What it commands.</param>
    /// <returns>The controller.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A kink of the law is outside the range of speed or manifold pressure.</exception>
    public static CustomController Of(IControllerLaw law)
    {
        ArgumentNullException.ThrowIfNull(law);
        ArgumentNullException.ThrowIfNull(law.Text, nameof(law));
        ArgumentNullException.ThrowIfNull(law.SpeedKinks, nameof(law));
        ArgumentNullException.ThrowIfNull(law.ManifoldKinks, nameof(law));
        return new(law);
    }

    /// <summary>True if the other has an equal law.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(CustomController? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override bool FollowsDifferential => Law.ReadsRailPressure;

    internal override IEnumerable<double> ManifoldKnots => _manifolds;

    internal override IEnumerable<double> SpeedKnots => _speeds;

    internal override FuelWanted Want(in ControllerInput at) => new(double.NaN, double.NaN, double.NaN, false);

    internal override PulseCommanded Command(in ControllerInput at, in FuelWanted wanted, double trim, double differential)
    {
        if (Law.PulseAt(new(at, Law.ReadsRailPressure ? differential : null)) is not { Seconds: var pulse })
        {
            return new(double.NaN, double.NaN, double.NaN, double.NaN);
        }

        return pulse is >= 0 and <= MaximumPulse
            ? new(Math.Min(pulse, at.AvailableTime), pulse, double.NaN, double.NaN)
            : throw new InvalidOperationException(
                $"The controller's law ({Law.Text}) commanded {Term.Text(pulse)} s at {new ControllerReading(at, null)}; it must command 0 to 500 ms, or none where its data ends. Try the law with ConformanceKit.Of.");
    }
}
