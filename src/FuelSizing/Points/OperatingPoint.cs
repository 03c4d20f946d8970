using FuelSizing.Engines;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>One point at which the engine runs: speed, boost and conditions.</summary>
public sealed record OperatingPoint : IReadable
{
    private static readonly Identity<OperatingPoint> _identity = new Identity<OperatingPoint>()
        .Number(point => point.RevolutionsPerSecond)
        .Number(point => point.BoostPascals)
        .Value(point => point.Conditions);

    private OperatingPoint(RotationalSpeed speed, double turns, Pressure boost, Conditions conditions) =>
        (Speed, Boost, Conditions, RevolutionsPerSecond, BoostPascals) = (speed, boost, conditions, turns, boost.Pascals);

    /// <summary>Engine speed.</summary>
    public RotationalSpeed Speed { get; }

    /// <summary>Manifold gauge pressure, negative under throttle.</summary>
    public Pressure Boost { get; }

    /// <summary>Air, supply voltage, fuel temperature.</summary>
    public Conditions Conditions { get; }

    internal double RevolutionsPerSecond { get; }

    internal double BoostPascals { get; }

    /// <summary>Describes the point.</summary>
    /// <param name="speed">100 to 25,000 rev/min.</param>
    /// <param name="boost">Manifold gauge pressure, negative under throttle, −95 to 400 kPa.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature; <see cref="Conditions.Default"/> if not given.</param>
    /// <returns>The point.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static OperatingPoint At(RotationalSpeed speed, Pressure boost, Conditions? conditions = null)
    {
        double turns = EngineSpeed.Within(speed, nameof(speed));
        return new(speed, turns, ManifoldPressure.Within(boost, nameof(boost)), conditions ?? Conditions.Default);
    }

    /// <summary>The same in numbers.</summary>
    internal PointPlace Place => new(Speed, RevolutionsPerSecond, BoostPascals, Conditions);

    /// <summary>The same speed and conditions at another boost.</summary>
    internal OperatingPoint With(Pressure boost) => new(Speed, RevolutionsPerSecond, ManifoldPressure.Within(boost, nameof(boost)), Conditions);

    /// <inheritdoc/>
    public string In(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return $"{style.Of(Speed)}, {style.Boost(Boost)}";
    }

    /// <summary>The point in words, for instance <c>6,800 rev/min, 0.60 bar</c>.</summary>
    /// <returns>Speed and boost.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(OperatingPoint? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);
}

/// <summary>An operating point in numbers, for searches that look at many: it is no object.</summary>
/// <param name="Speed">As it was given.</param>
/// <param name="RevolutionsPerSecond">The same, rev/s.</param>
/// <param name="BoostPascals">Pa.</param>
/// <param name="Conditions">Air, supply voltage, fuel temperature.</param>
internal readonly record struct PointPlace(RotationalSpeed Speed, double RevolutionsPerSecond, double BoostPascals, Conditions Conditions)
{
    /// <summary>A place that an operating point could have.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Speed or boost is out of its range.</exception>
    public static PointPlace At(RotationalSpeed speed, Pressure boost, Conditions conditions) =>
        new(speed, EngineSpeed.Within(speed, nameof(speed)), ManifoldPressure.Within(boost, nameof(boost)).Pascals, conditions);
}
