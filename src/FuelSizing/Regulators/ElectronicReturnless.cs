using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Regulators;

/// <summary>
/// A controller that slows the pump until the rail has the pressure it should have: nothing returns.
/// </summary>
/// <remarks>
/// It can do no more than the full supply, and no less than its lowest voltage: under small demand the rail may then stand
/// above its target. The controller is taken as giving the pump a steady voltage, which a pulsed one gives on average.
/// </remarks>
public sealed record ElectronicReturnless : PressureRegulator
{
    private static readonly Identity<ElectronicReturnless> _identity = new Identity<ElectronicReturnless>()
        .Number(regulator => regulator.Base.Pascals)
        .Value(regulator => regulator.FollowsManifold)
        .Number(regulator => regulator.MinimumVoltage.Volts)
        .Number(regulator => regulator.OffsetPascals)
        .Number(regulator => regulator.MinimumReturnFlow.CubicMetersPerSecond);

    private ElectronicReturnless(Pressure basePressure, bool followsManifold, ElectricPotential minimumVoltage)
        : base(VolumeFlow.Zero, new(basePressure.Pascals, followsManifold ? 1 : 0, followsManifold ? 1 : 0, 0)) =>
        (Base, FollowsManifold, MinimumVoltage) = (basePressure, followsManifold, minimumVoltage);

    /// <summary>Rail gauge pressure with the manifold at atmospheric pressure.</summary>
    public Pressure Base { get; }

    /// <summary>True if the target follows the manifold one for one.</summary>
    public bool FollowsManifold { get; }

    /// <summary>Lowest voltage at which the pump is still run.</summary>
    public ElectricPotential MinimumVoltage { get; }

    /// <inheritdoc/>
    public override Statement Text => FollowsManifold
        ? Statement.Of(
            "regulator.pump-speed-following", $"pump speed held for {Base}, following the manifold, down to {MinimumVoltage}")
        : Statement.Of("regulator.pump-speed", $"pump speed held for {Base}, down to {MinimumVoltage}");

    /// <summary>Describes the controller.</summary>
    /// <param name="basePressure">Rail gauge pressure with the manifold at atmospheric pressure, 100 to 1,500 kPa.</param>
    /// <param name="followsManifold">True if the target follows the manifold one for one, so that the differential is constant.</param>
    /// <param name="minimumVoltage">Lowest voltage at which the pump is still run, 3 to 20 V.</param>
    /// <returns>The controller.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static ElectronicReturnless Holding(
        Pressure basePressure, bool followsManifold, ElectricPotential minimumVoltage) =>
        new(
            WithinBase(basePressure, nameof(basePressure)),
            followsManifold,
            Guard.Between(
                minimumVoltage,
                ElectricPotential.FromVolts(3),
                ElectricPotential.FromVolts(20),
                "Give the lowest voltage at which the controller still runs the pump.",
                nameof(minimumVoltage)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(ElectronicReturnless? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override PressureRegulator WithBase(Pressure basePressure) => Holding(basePressure, FollowsManifold, MinimumVoltage);
}
