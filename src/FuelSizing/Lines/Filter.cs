using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Lines;

/// <summary>A filter by its rated flow and pressure loss, and how far it is clogged.</summary>
/// <remarks>
/// Darcy's law: Δp_F = c_F Δp_Fr (Q/Q_Fr) (μ/μ_r). In the medium's fine pores the flow is laminar, so the loss goes with flow and
/// with dynamic viscosity, which is why a filter costs more on ethanol than on petrol. What its housing and ports add grows
/// with the square of the flow and is within the rated point only: well over the rated flow the law reads low, under it
/// high.
/// </remarks>
public sealed record Filter : ILimitedLoss
{
    private static readonly Identity<Filter> _identity = new Identity<Filter>()
        .Value(filter => filter.Name)
        .Number(filter => filter._ratedFlow)
        .Number(filter => filter._ratedLoss)
        .Number(filter => filter.Clogging)
        .Number(filter => filter._ratedViscosity);

    /// <summary>How far over its rated flow the law is trusted: common practice, no source.</summary>
    private const double MaximumOverRating = 3;

    private readonly double _ratedFlow;
    private readonly double _ratedLoss;
    private readonly double _ratedViscosity;
    private readonly double _maximumFlow;

    private Filter(
        string name, VolumeFlow ratedFlow, Pressure ratedLoss, double clogging, DynamicViscosity ratedViscosity)
    {
        (Name, RatedFlow, RatedLoss, Clogging, RatedViscosity) = (name, ratedFlow, ratedLoss, clogging, ratedViscosity);
        _ratedFlow = ratedFlow.CubicMetersPerSecond;
        _ratedLoss = ratedLoss.Pascals;
        _ratedViscosity = ratedViscosity.PascalSeconds;
        _maximumFlow = MaximumFlow.CubicMetersPerSecond;
    }

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Flow of the rated point.</summary>
    public VolumeFlow RatedFlow { get; }

    /// <summary>Pressure lost by the new filter at the rated point.</summary>
    public Pressure RatedLoss { get; }

    /// <summary>Factor on the loss: 1 for a new filter.</summary>
    public double Clogging { get; }

    /// <summary>Dynamic viscosity of the liquid at the rated point.</summary>
    public DynamicViscosity RatedViscosity { get; }

    /// <summary>Flow up to which the law is held, three times the rated one.</summary>
    public VolumeFlow MaximumFlow => RatedFlow * MaximumOverRating;

    /// <inheritdoc/>
    double ILimitedLoss.MaximumKnownFlow => _maximumFlow;

    /// <summary>A filter.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="flow">Of the rated point, 1 to 10,000 L/h.</param>
    /// <param name="pressureLoss">Of the new filter at the rated point, 0 to 200 kPa.</param>
    /// <param name="clogging">Factor on the loss: 1 new, 100 at most.</param>
    /// <param name="ratedViscosity">
    /// Of the liquid at the rated point, 0.1 to 20 mPa·s; if not given, that of petrol at 20 °C. Filters rated on test oil
    /// need the oil's.
    /// </param>
    /// <returns>The filter.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Filter Of(
        string name,
        VolumeFlow flow,
        Pressure pressureLoss,
        double clogging = 1,
        DynamicViscosity? ratedViscosity = null) =>
        new(
            Guard.Name(name, nameof(name)),
            Guard.Between(
                flow,
                VolumeFlow.FromLitersPerHour(1),
                VolumeFlow.FromLitersPerHour(10_000),
                "Give the flow at which the filter's loss was measured.",
                nameof(flow)),
            Guard.Between(
                pressureLoss,
                Pressure.FromKilopascals(0),
                Pressure.FromKilopascals(200),
                "Give the new filter's loss at that flow.",
                nameof(pressureLoss)),
            Guard.Number(
                clogging,
                1,
                100,
                "It multiplies the new filter's loss; 1 is a new filter, 2 a typical limit of service.",
                nameof(clogging)),
            Guard.Between(
                ratedViscosity ?? Fuel.Petrol.DynamicViscosityAt(Temperature.FromDegreesCelsius(20)),
                DynamicViscosity.FromMillipascalSeconds(0.1),
                DynamicViscosity.FromMillipascalSeconds(20),
                "Give the dynamic viscosity of the liquid on which the filter was rated.",
                nameof(ratedViscosity)));

    /// <summary>Pressure lost at a flow.</summary>
    /// <param name="flow">0 to three times the rated flow.</param>
    /// <param name="fuel">It must have a viscosity.</param>
    /// <param name="temperature">Of the fuel, −30 to 80 °C.</param>
    /// <returns>The loss.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The fuel has no viscosity.</exception>
    public Pressure PressureLoss(VolumeFlow flow, Fuel fuel, Temperature temperature)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        Guard.Between(
            flow,
            VolumeFlow.FromLitersPerHour(0),
            MaximumFlow,
            "The rated point gives no data for flows so far over it; take a larger filter.",
            nameof(flow));
        double kelvins = Fuel.WithinRange(temperature, nameof(temperature)).Kelvins;
        return Pressure.FromPascals(LossPascals(
            flow.CubicMetersPerSecond, fuel.DensityAtKelvins(kelvins), fuel.KinematicViscosityAtKelvins(kelvins)));
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Filter? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name and rated point.</summary>
    /// <returns>For instance <c>filter, 8 kPa at 200 L/h, clogging 1.0</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Name}, {Readable.Of(RatedLoss)} at {Readable.PumpFlow(RatedFlow)}, clogging {Clogging:0.0}");

    double IFlowLoss.LossPascals(double flow, double density, double kinematicViscosity) =>
        LossPascals(flow, density, kinematicViscosity);

    double IFlowLoss.ElevationPascals(double density) => 0;

    /// <inheritdoc cref="IFlowLoss.LossPascals"/>
    /// <summary>The same filter, its loss more by so many times that of the new one, or less: a figure found.</summary>
    /// <summary>The same filter with half of it blocked: what is left passes twice the flow for its area, and the loss goes with that.</summary>
    internal Filter HalfBlocked() => Found(Clogging);

    internal Filter Found(double times) => new(Name, RatedFlow, RatedLoss, Math.Max(0, Clogging + times), RatedViscosity);

    internal double LossPascals(double flow, double density, double kinematicViscosity) =>
        FilterLoss.Loss<Real>(
            Clogging, _ratedLoss, _ratedFlow, _ratedViscosity, flow, density, kinematicViscosity);
}
