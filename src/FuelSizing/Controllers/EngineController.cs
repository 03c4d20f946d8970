using FuelSizing.Quantities;

namespace FuelSizing.Controllers;

/// <summary>Who decides the pulse, and what it knows: the mixture that the engine really gets depends on it.</summary>
/// <remarks>
/// <para>Kinds: <see cref="IdealController"/>, which commands whatever is needed; <see cref="SpeedDensityController"/>,
/// <see cref="ThrottleController"/> and <see cref="AirflowMeterController"/>, which calculate the pulse from the air that they believe in;
/// <see cref="RecordedPulseController"/>, whose pulses were logged; <see cref="CustomController"/>, of a law of your own.</para>
/// <para>Acceleration, cold start, and what a controller learns are not modelled: a steady, warm engine.</para>
/// </remarks>
public abstract record EngineController : IReadable
{
    private protected EngineController()
    {
    }

    /// <summary>What the controller is and knows, as a code with its figures.</summary>
    public abstract Statement Text { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>What the controller is and knows.</summary>
    /// <returns>One line, in metric units.</returns>
    public sealed override string ToString() => Text.ToString();

    /// <summary>True if it commands whatever pulse the engine needs, so that the mixture is taken for granted.</summary>
    internal virtual bool IsIdeal => false;

    /// <summary>Its correction by a lambda sensor; none where it has none.</summary>
    internal virtual ClosedLoop? Loop => null;

    /// <summary>True if what it commands depends on the pressure across the injector.</summary>
    internal virtual bool FollowsDifferential => false;

    /// <summary>Manifold pressures, absolute, Pa, at which what it commands has a kink.</summary>
    internal virtual IEnumerable<double> ManifoldKnots => Loop is { } loop ? [loop.MaximumManifoldAbsolute.Pascals] : [];

    /// <summary>Engine speeds, rev/s, at which what it commands has a kink.</summary>
    internal virtual IEnumerable<double> SpeedKnots => [];

    /// <summary>The fuel that it wants, before any correction by a lambda sensor.</summary>
    internal abstract FuelWanted Want(in ControllerInput at);

    /// <summary>The pulse for a fuel that it wants, with a pressure across the injector.</summary>
    /// <param name="at">Where.</param>
    /// <param name="wanted">As wanted there.</param>
    /// <param name="trim">What a lambda sensor multiplies the fuel by; 1 without.</param>
    /// <param name="differential">Across the injector, Pa: what a sensor would read.</param>
    internal abstract PulseCommanded Command(in ControllerInput at, in FuelWanted wanted, double trim, double differential);
}

/// <summary>
/// A controller that commands whatever pulse the engine needs, at the pressure, voltage and fuel that there are, up to the whole cycle. No
/// verdict on the mixture rests on it: it is assumed, and every result says so.
/// </summary>
public sealed record IdealController : EngineController
{
    private IdealController()
    {
    }

    /// <summary>The one that there is.</summary>
    public static IdealController Instance { get; } = new();

    /// <inheritdoc/>
    public override Statement Text => Statement.Of("controller.ideal", $"the controller is assumed to command whatever pulse is needed");

    internal override bool IsIdeal => true;

    internal override bool FollowsDifferential => true;

    internal override FuelWanted Want(in ControllerInput at) => new(at.Required, at.TargetLambda, at.Air, false);

    internal override PulseCommanded Command(in ControllerInput at, in FuelWanted wanted, double trim, double differential) =>
        PulseCommanded.For(
            at, wanted.Fuel * trim / at.Density, at.StaticFlow(differential), at.DeadTime(differential), at.AvailableTime);
}
