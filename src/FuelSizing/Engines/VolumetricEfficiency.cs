using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>
/// Volumetric efficiency against speed: the air drawn ÷ the air that would fill the displacement at the density in the
/// inlet manifold.
/// </summary>
public sealed class VolumetricEfficiency
{
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
    /// <returns>The curve, which says nothing beyond its first and last speed.</returns>
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

    internal static Ratio Within(Ratio efficiency, string name) =>
        Guard.Between(
            efficiency,
            Ratio.FromPercent(20),
            Ratio.FromPercent(150),
            "Refer it to the density in the inlet manifold, not to the ambient air.",
            name);

    internal VolumetricEfficiency Scaled(double factor) => new(BySpeed.Scaled(factor), Points);
}
