using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>A boost line as it was measured: boost against engine speed at full throttle.</summary>
/// <remarks>
/// It stays as it was measured, whatever the ambient air: a compressor on a belt makes less boost in thin or hot air, which
/// <see cref="CentrifugalBoost"/> and <see cref="DisplacementBoost"/> count.
/// </remarks>
public sealed record MeasuredBoost : BoostLine
{
    private static readonly Identity<MeasuredBoost> _identity = new Identity<MeasuredBoost>()
        .Value(line => line.BySpeed);

    private MeasuredBoost(Curve bySpeed, IReadOnlyList<(RotationalSpeed Speed, Pressure Boost)> points) =>
        (BySpeed, Points) = (bySpeed, points);

    /// <summary>The lowest speed that the line covers.</summary>
    public RotationalSpeed MinimumSpeed => RotationalSpeed.FromRevolutionsPerSecond(BySpeed.First);

    /// <summary>The highest speed that the line covers.</summary>
    public RotationalSpeed MaximumSpeed => RotationalSpeed.FromRevolutionsPerSecond(BySpeed.Last);

    /// <inheritdoc/>
    public override Statement Text => Statement.Of(
        "boost-line.measured", $"measured, up to {Points.Max(point => point.Boost):boost}, {MinimumSpeed} to {MaximumSpeed}");

    /// <summary>The points as they were given.</summary>
    internal IReadOnlyList<(RotationalSpeed Speed, Pressure Boost)> Points { get; }

    internal Curve BySpeed { get; }

    private protected override string Cure => "Extend it by measured points.";

    /// <summary>A line through measured points; between them it is monotone.</summary>
    /// <param name="points">Two points or more, speeds rising, 100 to 25,000 rev/min; manifold gauge pressure, −95 to 400 kPa.</param>
    /// <returns>The line, which gives no data beyond its first and last speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the speeds do not rise.</exception>
    public static MeasuredBoost Of(params (RotationalSpeed Speed, Pressure Boost)[] points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return new(
            new(
                Guard.Rising(Array.ConvertAll(points, point => EngineSpeed.Within(point.Speed, nameof(points))), nameof(points)),
                Array.ConvertAll(points, point => ManifoldPressure.Within(point.Boost, nameof(points)).Pascals),
                Interpolation.Monotone),
            [.. points]);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(MeasuredBoost? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override double PascalsAt(double revolutionsPerSecond, FuelDemandModel demand, Atmosphere atmosphere) =>
        BySpeed.Covers(revolutionsPerSecond) ? BySpeed.At(revolutionsPerSecond) : double.NaN;

    internal override (double First, double Last) SpeedsFor(FuelDemandModel demand) => (BySpeed.First, BySpeed.Last);

    internal override IReadOnlyList<double> KnotsFor(FuelDemandModel demand, Atmosphere atmosphere) =>
        [.. BySpeed.Points.Select(point => point.X)];
}
