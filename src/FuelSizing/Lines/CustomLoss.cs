using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Lines;

/// <summary>A pressure loss of your own: of a cooler, a sieve, a flow meter, of whatever has been measured or calculated elsewhere.</summary>
/// <remarks>
/// <para>It must be pure: the same flow and fuel give the same loss, on any thread, with nothing kept in between. <see cref="CustomLoss"/> makes a part of it.</para>
/// <para>The solver relies on three things, which <c>ConformanceKit.Of(IFlowLossLaw)</c> tries: a loss is never below zero, never falls as the flow grows, and has no jump.</para>
/// </remarks>
/// <example>
/// <code>
/// sealed record FuelCooler : IFlowLossLaw
/// {
///     public string Name => "fuel cooler";
///
///     public VolumeFlow MaximumFlow => VolumeFlow.FromLitersPerHour(300);
///
///     // Measured: 12 kPa at 200 L/h of petrol, with the square of the flow and with density.
///     public Pressure LossAt(VolumeFlow flow, Density density, KinematicViscosity viscosity)
///     {
///         double share = flow / VolumeFlow.FromLitersPerHour(200);
///         return Pressure.FromKilopascals(12 * share * share) * (density / Density.FromKilogramsPerCubicMeter(745));
///     }
/// }
/// </code>
/// </example>
public interface IFlowLossLaw
{
    /// <summary>The name shown in results; 1 to 80 characters.</summary>
    string Name { get; }

    /// <summary>Flow up to which the loss is known, 1 to 10,000 L/h. Past it the law is still asked, and the check of filters says that it was not known.</summary>
    VolumeFlow MaximumFlow { get; }

    /// <summary>Pressure lost at a flow.</summary>
    /// <param name="flow">Not below zero; against the direction of flow the loss is taken to be the same the other way.</param>
    /// <param name="density">Of the fuel at its temperature.</param>
    /// <param name="viscosity">Of the fuel at its temperature.</param>
    /// <returns>The loss, height apart.</returns>
    Pressure LossAt(VolumeFlow flow, Density density, KinematicViscosity viscosity);
}

/// <summary>A part of a path whose loss is a law of your own.</summary>
/// <example>
/// <code>
/// Plumbing lines = Plumbing.Of(returnLine: [CustomLoss.Of(new Sieve())]);
///
/// sealed record Sieve : IFlowLossLaw
/// {
///     public string Name => "sieve";
///     public VolumeFlow MaximumFlow => VolumeFlow.FromLitersPerHour(250);
///     public Pressure LossAt(VolumeFlow flow, Density density, KinematicViscosity viscosity) => Pressure.FromKilopascals(3) * (flow / VolumeFlow.FromLitersPerHour(100));
/// }
/// </code>
/// </example>
public sealed record CustomLoss : ILimitedLoss
{
    private static readonly Identity<CustomLoss> _identity = new Identity<CustomLoss>()
        .Value(part => part.Law);

    private readonly double _maximumFlow;

    private CustomLoss(IFlowLossLaw law, string name, VolumeFlow maximumFlow)
    {
        (Law, Name, MaximumFlow) = (law, name, maximumFlow);
        _maximumFlow = maximumFlow.CubicMetersPerSecond;
    }

    /// <summary>The law.</summary>
    public IFlowLossLaw Law { get; }

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Flow up to which the loss is known.</summary>
    public VolumeFlow MaximumFlow { get; }

    /// <inheritdoc/>
    double ILimitedLoss.MaximumKnownFlow => _maximumFlow;

    /// <summary>A part by a law.</summary>
    /// <param name="law">What it loses.</param>
    /// <returns>The part.</returns>
    /// <exception cref="ArgumentException">The law's name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The flow up to which it is known is outside its range.</exception>
    public static CustomLoss Of(IFlowLossLaw law)
    {
        ArgumentNullException.ThrowIfNull(law);
        return new(
            law,
            Guard.Name(law.Name, nameof(law)),
            Guard.Between(
                law.MaximumFlow,
                VolumeFlow.FromLitersPerHour(1),
                VolumeFlow.FromLitersPerHour(10_000),
                "Give the flow up to which the loss is known.",
                nameof(law)));
    }

    /// <summary>Pressure lost at a flow.</summary>
    /// <param name="flow">0 L/h to <see cref="MaximumFlow"/>.</param>
    /// <param name="density">Of the fuel, 500 to 1,200 kg/m³.</param>
    /// <param name="viscosity">Of the fuel, 0.05 to 20 mm²/s.</param>
    /// <returns>The loss.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The law gave a loss that is none.</exception>
    public Pressure PressureLoss(VolumeFlow flow, Density density, KinematicViscosity viscosity)
    {
        Guard.Between(flow, VolumeFlow.Zero, MaximumFlow, "The law is not known past that.", nameof(flow));
        Guard.Between(density, Density.FromKilogramsPerCubicMeter(500), Density.FromKilogramsPerCubicMeter(1200), "Give the density of the fuel.", nameof(density));
        Guard.Between(viscosity, KinematicViscosity.FromCentistokes(0.05), KinematicViscosity.FromCentistokes(20), "Give the kinematic viscosity of the fuel.", nameof(viscosity));
        return Pressure.FromPascals(LossPascals(flow.CubicMetersPerSecond, density.KilogramsPerCubicMeter, viscosity.SquareMetersPerSecond));
    }

    /// <summary>True if the other has an equal law.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(CustomLoss? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name, and how far it is known.</summary>
    /// <returns>For instance <c>fuel cooler, known up to 300 L/h</c>.</returns>
    public override string ToString() => $"{Name}, known up to {Readable.PumpFlow(MaximumFlow)}";

    double IFlowLoss.LossPascals(double flow, double density, double kinematicViscosity) => LossPascals(flow, density, kinematicViscosity);

    double IFlowLoss.ElevationPascals(double density) => 0;

    /// <inheritdoc cref="IFlowLoss.LossPascals"/>
    internal double LossPascals(double flow, double density, double kinematicViscosity)
    {
        double loss = Law.LossAt(
            VolumeFlow.FromCubicMetersPerSecond(Math.Abs(flow)),
            Density.FromKilogramsPerCubicMeter(density),
            KinematicViscosity.FromSquareMetersPerSecond(kinematicViscosity)).Pascals;
        return loss is >= 0 and < Endless
            ? Math.CopySign(loss, flow)
            : throw new InvalidOperationException(
                $"{Name} gave a pressure loss of {Term.Text(loss)} Pa at {Readable.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(Math.Abs(flow)))}; it must give one that is not below zero and ends. Try the law with ConformanceKit.Of.");
    }

    // Far over any pump, and finite so that sums and root finding stay so, Pa.
    private const double Endless = 1e9;
}
