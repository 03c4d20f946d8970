using FuelSizing.Engines;
using FuelSizing.Quantities;

namespace FuelSizing.Controllers;

/// <summary>A controller that knows throttle and speed and no pressure at all: boost changes nothing of what it commands.</summary>
/// <remarks>
/// It believes in the air that the engine took when it was calibrated: ambient pressure and temperature of that day, and under throttle the
/// share of ambient pressure that the manifold has. With a barometer or an air temperature sensor it follows the ambient air of today.
/// </remarks>
/// <example>
/// <code>
/// ThrottleController controller = ThrottleController.Of(data, table, calibratedAt: Atmosphere.Standard);
/// Console.WriteLine(controller);
/// </code>
/// </example>
public sealed record ThrottleController : CalculatingController
{
    private static readonly Identity<ThrottleController> _identity = new Identity<ThrottleController>()
        .Value(controller => controller.Data)
        .Value(controller => controller.VolumetricEfficiency)
        .Value(controller => controller.CalibratedAt)
        .Value(controller => controller.HasBarometer)
        .Value(controller => controller.HasAirTemperature);

    private ThrottleController(
        ControllerData data, VolumetricEfficiency table, Atmosphere calibratedAt, bool hasBarometer, bool hasAirTemperature)
        : base(data) =>
        (VolumetricEfficiency, CalibratedAt, HasBarometer, HasAirTemperature) = (table, calibratedAt, hasBarometer, hasAirTemperature);

    /// <summary>The table that it believes in; beyond its speeds its ends hold.</summary>
    public VolumetricEfficiency VolumetricEfficiency { get; }

    /// <summary>The ambient air at which it was calibrated.</summary>
    public Atmosphere CalibratedAt { get; }

    /// <summary>True if it measures ambient pressure.</summary>
    public bool HasBarometer { get; }

    /// <summary>True if it measures the temperature of the ambient air.</summary>
    public bool HasAirTemperature { get; }

    /// <inheritdoc/>
    public override Statement Text => Statement.Of(
        "controller.throttle", $"a controller by throttle and speed, which knows no pressure, {Data.Injector.Name} in its data");

    /// <summary>Describes the controller.</summary>
    /// <param name="data">What it takes for true.</param>
    /// <param name="volumetricEfficiency">Its table against speed, referred to manifold density.</param>
    /// <param name="calibratedAt">The ambient air at which it was calibrated, without boost.</param>
    /// <param name="hasBarometer">True if it measures ambient pressure.</param>
    /// <param name="hasAirTemperature">True if it measures the temperature of the ambient air.</param>
    /// <returns>The controller.</returns>
    /// <exception cref="ArgumentNullException">One of them is missing.</exception>
    public static ThrottleController Of(
        ControllerData data,
        VolumetricEfficiency volumetricEfficiency,
        Atmosphere calibratedAt,
        bool hasBarometer = false,
        bool hasAirTemperature = false)
    {
        ArgumentNullException.ThrowIfNull(volumetricEfficiency);
        ArgumentNullException.ThrowIfNull(calibratedAt);
        return new(data, volumetricEfficiency, calibratedAt, hasBarometer, hasAirTemperature);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(ThrottleController? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override IEnumerable<double> SpeedKnots => VolumetricEfficiency.BySpeed.Points.Select(point => point.X);

    private protected override (double Air, bool IsAtEnd) AirAt(in ControllerInput at)
    {
        // Under throttle its opening stands for the share of ambient pressure; boost it cannot see.
        double open = Math.Min(1, at.ManifoldAbsolute / at.Ambient);
        double ambient = HasBarometer ? at.Ambient : CalibratedAt.Pascals;
        double temperature = HasAirTemperature ? at.AmbientTemperature : CalibratedAt.Kelvins;
        return (BelievedAir.From(VolumetricEfficiency, open * ambient, temperature, at), at.ManifoldAbsolute > at.Ambient);
    }
}
