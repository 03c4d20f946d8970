using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>
/// Volumetric efficiency against speed: the air drawn ÷ the air that would fill the displacement at the density in the
/// inlet manifold.
/// </summary>
public sealed record VolumetricEfficiency
{
    private static readonly Identity<VolumetricEfficiency> _identity = new Identity<VolumetricEfficiency>()
        .Value(table => table.BySpeed);

    private VolumetricEfficiency(Curve bySpeed, IReadOnlyList<(RotationalSpeed Speed, Ratio Efficiency)> points) =>
        (BySpeed, Points) = (bySpeed, points);

    /// <summary>The points as they were given.</summary>
    internal IReadOnlyList<(RotationalSpeed Speed, Ratio Efficiency)> Points { get; }

    /// <summary>The lowest speed that the table covers.</summary>
    public RotationalSpeed MinimumSpeed => RotationalSpeed.FromRevolutionsPerSecond(BySpeed.First);

    /// <summary>The highest speed that the table covers.</summary>
    public RotationalSpeed MaximumSpeed => RotationalSpeed.FromRevolutionsPerSecond(BySpeed.Last);

    internal Curve BySpeed { get; }

    /// <summary>A table of volumetric efficiency against speed; between its points the curve is monotone.</summary>
    /// <param name="points">Two points or more, speeds rising, each efficiency 20 to 150 %.</param>
    /// <returns>The curve, which gives no data beyond its first and last speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the speeds do not rise.</exception>
    public static VolumetricEfficiency Of(params (RotationalSpeed Speed, Ratio Efficiency)[] points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return new(
            new(
                Guard.Rising(Array.ConvertAll(points, point => EngineSpeed.Within(point.Speed, nameof(points))), nameof(points)),
                Array.ConvertAll(points, point => Within(point.Efficiency, nameof(points)).DecimalFractions),
                Interpolation.Monotone),
            [.. points]);
    }

    /// <summary>The efficiency at a speed.</summary>
    /// <param name="speed">Within the table.</param>
    /// <returns>Volumetric efficiency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed lies outside the table.</exception>
    public Ratio At(RotationalSpeed speed) =>
        Ratio.FromDecimalFractions(
            BySpeed.At(EngineSpeed.Covered(speed, BySpeed, "volumetric-efficiency table", nameof(speed))));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(VolumetricEfficiency? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Maximum efficiency and the speeds covered.</summary>
    /// <returns>For instance <c>up to 101 %, 800 rev/min to 7,200 rev/min</c>.</returns>
    public override string ToString() =>
        $"up to {Readable.Of(Ratio.FromDecimalFractions(BySpeed.Points.Max(point => point.Y)))}, {Readable.Of(MinimumSpeed)} to {Readable.Of(MaximumSpeed)}";

    internal static Ratio Within(Ratio efficiency, string name) =>
        Guard.Between(
            efficiency,
            Ratio.FromPercent(20),
            Ratio.FromPercent(150),
            "Refer it to the density in the inlet manifold, not to the ambient air.",
            name);

    internal VolumetricEfficiency Scaled(double factor) => new(BySpeed.Scaled(factor), [.. Points.Select(point => (point.Speed, point.Efficiency * factor))]);
}
