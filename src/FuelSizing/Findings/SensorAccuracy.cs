using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>How well the run was recorded: the scatter of single readings, and how far a whole channel may be off.</summary>
/// <remarks>
/// Both are standard deviations. Scatter averages out over many rows; an error of the whole channel does not, and bounds what can
/// be found. The usual figures are common practice, no source: look up your own sensors.
/// </remarks>
public sealed record SensorAccuracy
{
    private static readonly Identity<SensorAccuracy> _identity = new Identity<SensorAccuracy>()
        .Number(accuracy => accuracy.Rail.Pascals)
        .Number(accuracy => accuracy.Manifold.Pascals)
        .Number(accuracy => accuracy.Pulse.Seconds)
        .Number(accuracy => accuracy.Lambda.DecimalFractions)
        .Number(accuracy => accuracy.FuelFlow.DecimalFractions)
        .Number(accuracy => accuracy.Power.DecimalFractions)
        .Number(accuracy => accuracy.RailOffset.Pascals)
        .Number(accuracy => accuracy.ManifoldOffset.Pascals)
        .Number(accuracy => accuracy.FuelFlowFactor.DecimalFractions);

    private SensorAccuracy(
        Pressure rail,
        Pressure manifold,
        Duration pulse,
        Ratio lambda,
        Ratio fuelFlow,
        Ratio power,
        Pressure railOffset,
        Pressure manifoldOffset,
        Ratio fuelFlowFactor)
    {
        Rail = rail;
        Manifold = manifold;
        Pulse = pulse;
        Lambda = lambda;
        FuelFlow = fuelFlow;
        Power = power;
        RailOffset = railOffset;
        ManifoldOffset = manifoldOffset;
        FuelFlowFactor = fuelFlowFactor;
    }

    /// <summary>Scatter: rail 2 kPa, manifold 0.5 kPa, pulse 0.01 ms, lambda, fuel flow and power 1 %. Whole channel: rail 3 kPa, manifold 1 kPa, fuel flow 1 %.</summary>
    public static SensorAccuracy Default { get; } = Of();

    /// <summary>Scatter of rail pressure.</summary>
    public Pressure Rail { get; }

    /// <summary>Scatter of manifold pressure.</summary>
    public Pressure Manifold { get; }

    /// <summary>Scatter of the recorded pulse.</summary>
    public Duration Pulse { get; }

    /// <summary>Scatter of lambda, as a share of it.</summary>
    public Ratio Lambda { get; }

    /// <summary>Scatter of fuel flow, as a share of it.</summary>
    public Ratio FuelFlow { get; }

    /// <summary>Scatter of power or torque, as a share of it.</summary>
    public Ratio Power { get; }

    /// <summary>Error of the whole channel of rail pressure.</summary>
    public Pressure RailOffset { get; }

    /// <summary>Error of the whole channel of manifold pressure.</summary>
    public Pressure ManifoldOffset { get; }

    /// <summary>Error of the whole channel of fuel flow, as a share of it.</summary>
    public Ratio FuelFlowFactor { get; }

    /// <summary>Describes them; what is not given is as in <see cref="Default"/>.</summary>
    /// <param name="rail">Scatter of rail pressure, 0.05 to 50 kPa; 2 kPa if not given.</param>
    /// <param name="manifold">Scatter of manifold pressure, 0.01 to 20 kPa; 0.5 kPa if not given.</param>
    /// <param name="pulse">Scatter of the recorded pulse, 0.0001 to 1 ms; 0.01 ms if not given.</param>
    /// <param name="lambda">Scatter of lambda, as a share of it, 0.05 to 20 %; 1 % if not given.</param>
    /// <param name="fuelFlow">Scatter of fuel flow, as a share of it, 0.05 to 20 %; 1 % if not given.</param>
    /// <param name="power">Scatter of power or torque, as a share of it, 0.05 to 20 %; 1 % if not given.</param>
    /// <param name="railOffset">Error of the whole channel of rail pressure, 0.05 to 50 kPa; 3 kPa if not given.</param>
    /// <param name="manifoldOffset">Error of the whole channel of manifold pressure, 0.05 to 20 kPa; 1 kPa if not given.</param>
    /// <param name="fuelFlowFactor">Error of the whole channel of fuel flow, as a share of it, 0.05 to 20 %; 1 % if not given.</param>
    /// <returns>Them.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static SensorAccuracy Of(
        Pressure? rail = null,
        Pressure? manifold = null,
        Duration? pulse = null,
        Ratio? lambda = null,
        Ratio? fuelFlow = null,
        Ratio? power = null,
        Pressure? railOffset = null,
        Pressure? manifoldOffset = null,
        Ratio? fuelFlowFactor = null) =>
        new(
            Guard.Between(
                rail ?? Pressure.FromKilopascals(2), Pressure.FromKilopascals(0.05), Pressure.FromKilopascals(50), "Give the standard deviation of single readings on a steady engine.", nameof(rail)),
            Guard.Between(
                manifold ?? Pressure.FromKilopascals(0.5), Pressure.FromKilopascals(0.01), Pressure.FromKilopascals(20), "Give the standard deviation of single readings on a steady engine.", nameof(manifold)),
            Guard.Between(
                pulse ?? Duration.FromMilliseconds(0.01), Duration.FromMilliseconds(0.0001), Duration.FromMilliseconds(1), "Give the standard deviation of single readings on a steady engine.", nameof(pulse)),
            Guard.Between(
                lambda ?? Ratio.FromPercent(1), Ratio.FromPercent(0.05), Ratio.FromPercent(20), "Give the standard deviation of single readings on a steady engine.", nameof(lambda)),
            Guard.Between(
                fuelFlow ?? Ratio.FromPercent(1), Ratio.FromPercent(0.05), Ratio.FromPercent(20), "Give the standard deviation of single readings on a steady engine.", nameof(fuelFlow)),
            Guard.Between(
                power ?? Ratio.FromPercent(1), Ratio.FromPercent(0.05), Ratio.FromPercent(20), "Give the standard deviation of single readings on a steady engine.", nameof(power)),
            Guard.Between(
                railOffset ?? Pressure.FromKilopascals(3), Pressure.FromKilopascals(0.05), Pressure.FromKilopascals(50), "Give the standard deviation of the whole channel's error.", nameof(railOffset)),
            Guard.Between(
                manifoldOffset ?? Pressure.FromKilopascals(1), Pressure.FromKilopascals(0.05), Pressure.FromKilopascals(20), "Give the standard deviation of the whole channel's error.", nameof(manifoldOffset)),
            Guard.Between(
                fuelFlowFactor ?? Ratio.FromPercent(1), Ratio.FromPercent(0.05), Ratio.FromPercent(20), "Give the standard deviation of the whole channel's error.", nameof(fuelFlowFactor)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(SensorAccuracy? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Accuracy of the main sensors.</summary>
    /// <returns>For instance <c>rail 2.0 kPa, manifold 0.5 kPa, lambda 1 %</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"rail {Readable.PressureLoss(Rail)}, manifold {Readable.PressureLoss(Manifold)}, lambda {Lambda.Percent:0.##} %");
}
