using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Regulators;

/// <summary>
/// A regulator whose spring chamber is piped to the manifold: rail pressure follows boost one for one, so the injector's
/// differential pressure is constant.
/// </summary>
public sealed record ManifoldReferenced : PressureRegulator
{
    private static readonly Identity<ManifoldReferenced> _identity = new Identity<ManifoldReferenced>()
        .Number(regulator => regulator.Base.Pascals)
        .Number(regulator => regulator.OffsetPascals)
        .Number(regulator => regulator.MinimumReturnFlow.CubicMetersPerSecond)
        .Value(regulator => regulator.Flow);

    private ManifoldReferenced(Pressure basePressure, VolumeFlow minimumReturnFlow)
        : base(minimumReturnFlow, new(basePressure.Pascals, 1, 1, 0)) => Base = basePressure;

    /// <summary>Rail gauge pressure with the manifold at atmospheric pressure.</summary>
    public Pressure Base { get; }

    /// <inheritdoc/>
    public override Statement Text => WithFlowText(Statement.Of("regulator.manifold-referenced", $"manifold-referenced, base {Base}"));

    /// <summary>Describes the regulator.</summary>
    /// <param name="basePressure">Rail gauge pressure with the manifold at atmospheric pressure, 100 to 1,500 kPa.</param>
    /// <param name="minimumReturnFlow">Smallest returned flow at which it governs, 0 to 500 L/h; zero if not given.</param>
    /// <returns>The regulator.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static ManifoldReferenced From(Pressure basePressure, VolumeFlow? minimumReturnFlow = null) =>
        new(WithinBase(basePressure, nameof(basePressure)), WithinReturn(minimumReturnFlow, nameof(minimumReturnFlow)));

    /// <summary>The same regulator with how its pressure changes with what returns through it.</summary>
    /// <param name="flow">Slope or measured curve, hysteresis, what acts on its outlet.</param>
    /// <returns>The regulator.</returns>
    public ManifoldReferenced WithFlow(RegulatorFlow flow)
    {
        ArgumentNullException.ThrowIfNull(flow);
        return With(flow);
    }

    /// <summary>The same with a flow description, or without.</summary>
    internal ManifoldReferenced With(RegulatorFlow? flow) => this with { Flow = flow };

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(ManifoldReferenced? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override PressureRegulator WithBase(Pressure basePressure) => From(basePressure, MinimumReturnFlow).With(Flow);
}
