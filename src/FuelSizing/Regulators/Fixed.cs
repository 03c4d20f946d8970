using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Regulators;

/// <summary>
/// A regulator that knows nothing of the manifold, as in most tanks: rail gauge pressure is constant, so the injector's
/// differential pressure falls by 1 for each 1 of boost.
/// </summary>
public sealed record Fixed : PressureRegulator
{
    private static readonly Identity<Fixed> _identity = new Identity<Fixed>()
        .Number(regulator => regulator.Gauge.Pascals)
        .Number(regulator => regulator.OffsetPascals)
        .Number(regulator => regulator.MinimumReturnFlow.CubicMetersPerSecond)
        .Value(regulator => regulator.Flow);

    private Fixed(Pressure gauge, VolumeFlow minimumReturnFlow)
        : base(minimumReturnFlow, new(gauge.Pascals, 0, 0, 0)) => Gauge = gauge;

    /// <summary>The pressure it holds.</summary>
    public Pressure Gauge { get; }

    /// <inheritdoc/>
    public override Statement Text => WithFlowText(Statement.Of("regulator.fixed", $"fixed at {Gauge}"));

    /// <summary>Describes the regulator.</summary>
    /// <param name="gauge">The pressure it holds, 100 to 1,500 kPa.</param>
    /// <param name="minimumReturnFlow">Smallest returned flow at which it governs, 0 to 500 L/h; zero if not given.</param>
    /// <returns>The regulator.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Fixed At(Pressure gauge, VolumeFlow? minimumReturnFlow = null) =>
        new(WithinBase(gauge, nameof(gauge)), WithinReturn(minimumReturnFlow, nameof(minimumReturnFlow)));

    /// <summary>The same regulator with how its pressure changes with what returns through it.</summary>
    /// <param name="flow">Slope or measured curve, hysteresis, what acts on its outlet.</param>
    /// <returns>The regulator.</returns>
    public Fixed WithFlow(RegulatorFlow flow)
    {
        ArgumentNullException.ThrowIfNull(flow);
        return With(flow);
    }

    /// <summary>The same with a flow description, or without.</summary>
    internal Fixed With(RegulatorFlow? flow) => this with { Flow = flow };

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Fixed? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override PressureRegulator WithBase(Pressure basePressure) => At(basePressure, MinimumReturnFlow).With(Flow);
}
