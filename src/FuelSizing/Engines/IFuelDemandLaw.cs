using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>How much fuel an engine burns, by a law of your own: a table from a dynamometer, or another calculation.</summary>
/// <remarks>
/// <para>It must be pure: the same place gives the same fuel, on any thread, with nothing kept in between. <see cref="FuelDemandModel.With(IFuelDemandLaw)"/> takes it.</para>
/// <para>The solver relies on three things, which <c>ConformanceKit.Of(IFuelDemandLaw, FuelDemandModel)</c> tries: there is fuel at every place that the engine's tables cover,
/// it has no jump, and every kink is named. Between two kinks it may be curved.</para>
/// </remarks>
/// <example>
/// <code>
/// sealed record RicherOnBoost : IFuelDemandLaw
/// {
///     public Statement Text => Statement.Of("own.demand.richer", $"the library's estimate, {Ratio.FromPercent(4)} more from {Pressure.FromKilopascals(50)} of boost on");
///
///     public bool FollowsEstimate => true;
///
///     public IReadOnlyList&lt;RotationalSpeed&gt; SpeedKinks => [];
///
///     public IReadOnlyList&lt;Pressure&gt; BoostKinks => [Pressure.FromKilopascals(40), Pressure.FromKilopascals(50)];
///
///     public MassFlow FuelAt(DemandPlace place) =>
///         place.Estimate.MassFlow * (1 + (0.04 * Math.Clamp((place.Boost.Kilopascals - 40) / 10, 0, 1)));
/// }
/// </code>
/// </example>
public interface IFuelDemandLaw
{
    /// <summary>What it is, as a code of your own with its figures.</summary>
    Statement Text { get; }

    /// <summary>
    /// True if the law is worked out from <see cref="DemandPlace.Estimate"/>, so that it follows volumetric efficiency, BSFC and fuel where these are uncertain. Where it is
    /// false those inputs are refused, for they would change nothing.
    /// </summary>
    bool FollowsEstimate { get; }

    /// <summary>Engine speeds at which it has a kink, in any order; empty if there is none.</summary>
    IReadOnlyList<RotationalSpeed> SpeedKinks { get; }

    /// <summary>Boosts at which it has a kink, in any order; empty if there is none.</summary>
    IReadOnlyList<Pressure> BoostKinks { get; }

    /// <summary>The fuel that the engine burns.</summary>
    /// <param name="place">Where, and what the library would say there.</param>
    /// <returns>Over 0, up to 1 kg/s.</returns>
    MassFlow FuelAt(DemandPlace place);
}

/// <summary>Where fuel demand is asked for.</summary>
public sealed class DemandPlace
{
    internal DemandPlace(RotationalSpeed speed, Pressure boost, Atmosphere atmosphere, FuelConsumption consumption, double targetLambda, FuelDemand estimate) =>
        (Speed, Boost, Atmosphere, Consumption, TargetLambda, Estimate) = (speed, boost, atmosphere, consumption, targetLambda, estimate);

    /// <summary>Engine speed.</summary>
    public RotationalSpeed Speed { get; }

    /// <summary>Manifold gauge pressure.</summary>
    public Pressure Boost { get; }

    /// <summary>The ambient air.</summary>
    public Atmosphere Atmosphere { get; }

    /// <summary>Fuel, lambda and BSFC at full load.</summary>
    public FuelConsumption Consumption { get; }

    /// <summary>The lambda that the engine is meant to have there.</summary>
    public double TargetLambda { get; }

    /// <summary>The fuel from air and from power, as it is without a law.</summary>
    public FuelDemand Estimate { get; }

    /// <summary>Speed and boost.</summary>
    /// <returns>For instance <c>6,800 rev/min, 0.60 bar</c>.</returns>
    public override string ToString() => $"{Readable.Of(Speed)}, {Readable.Boost(Boost)}";
}
