using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Injectors;

/// <summary>The injectors of an engine: all alike, sharing its fuel evenly.</summary>
public sealed record InjectorSet
{
    private static readonly Identity<InjectorSet> _identity = new Identity<InjectorSet>()
        .Value(set => set.Injector)
        .Value(set => set.Count)
        .Value(set => set.InjectionsPerCycle);

    private InjectorSet(Injector injector, int count, int injectionsPerCycle) =>
        (Injector, Count, InjectionsPerCycle) = (injector, count, injectionsPerCycle);

    /// <summary>Each of them.</summary>
    public Injector Injector { get; }

    /// <summary>How many.</summary>
    public int Count { get; }

    /// <summary>Pulses in one working cycle: one if fired in sequence, two if fired once a turn of a four-stroke.</summary>
    public int InjectionsPerCycle { get; }

    /// <summary>Describes the set.</summary>
    /// <param name="injector">Each of them.</param>
    /// <param name="count">1 to 48.</param>
    /// <param name="injectionsPerCycle">Pulses in one working cycle, 1 to 4; each pulse has its dead time.</param>
    /// <returns>The set.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static InjectorSet Of(Injector injector, int count, int injectionsPerCycle = 1)
    {
        ArgumentNullException.ThrowIfNull(injector);
        return new(
            injector,
            Guard.Count(count, 1, 48, "Count the injectors that feed the engine.", nameof(count)),
            Guard.Count(
                injectionsPerCycle, 1, 4, "Count each injector's pulses in a working cycle.", nameof(injectionsPerCycle)));
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(InjectorSet? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>How many of which.</summary>
    /// <returns>For instance <c>4 × injector A, 580 mL/min each</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Count} × {Injector.Name}, {Readable.InjectorFlow(Injector.StaticFlow)} each");

    internal InjectorSet Later(double seconds) => new(Injector.Later(seconds), Count, InjectionsPerCycle);

    internal InjectorSet Scaled(double factor) => new(Injector.Scaled(factor), Count, InjectionsPerCycle);
}

/// <summary>The static flow that a demand needs.</summary>
public static class SizeInjector
{
    /// <summary>
    /// The short rule: Q_s = P · b/(N · D · ρ), static flow of one injector at its own differential pressure on this
    /// fuel. Dead time is not in it: the duty limit must leave room for it.
    /// </summary>
    /// <param name="crankPower">P, 0 to 3,000 kW.</param>
    /// <param name="consumption">BSFC and fuel (density at 15 °C).</param>
    /// <param name="injectors">z, 1 to 48.</param>
    /// <param name="dutyLimit">D, 10 to 100 %.</param>
    /// <returns>Static flow of one injector.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static VolumeFlow ForPower(Power crankPower, FuelConsumption consumption, int injectors, Ratio dutyLimit)
    {
        ArgumentNullException.ThrowIfNull(consumption);
        Real fuel = FuelDemandFlow.FromPower<Real>(
            (double)Drivetrain.Within(crankPower, nameof(crankPower)).Watts,
            consumption.BrakeSpecificFuelConsumption.KilogramsPerJoule);
        return VolumeFlow.FromCubicMetersPerSecond((double)InjectorFlow.RequiredStatic<Real>(
            FuelDemandFlow.Volume(fuel, (Real)consumption.Fuel.ReferenceDensity),
            Guard.Count(injectors, 1, 48, "Count the injectors that feed the engine.", nameof(injectors)),
            1,
            DutyCycle.WithinLimit(dutyLimit, nameof(dutyLimit)),
            0));
    }
}
