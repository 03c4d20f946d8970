using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Controllers;

/// <summary>The lambda that a controller aims at, against the load that it believes.</summary>
/// <remarks>
/// Load is the air of a working cycle that the controller believes in ÷ the air that would fill the displacement at 101.325 kPa and 15 °C:
/// about 80 to 100 % at full throttle without boost. Between the points the table is linear; beyond them it holds its end, as a controller's table does.
/// </remarks>
/// <example>
/// <code>
/// TargetLambda target = TargetLambda.Of((Ratio.FromPercent(50), 1.0), (Ratio.FromPercent(85), 0.88));
/// Console.WriteLine(target.LambdaAt(Ratio.FromPercent(140)).ToString("0.00", System.Globalization.CultureInfo.InvariantCulture)); // 0.88
/// </code>
/// </example>
public sealed record TargetLambda
{
    private static readonly Identity<TargetLambda> _identity = new Identity<TargetLambda>().Value(target => target._byLoad);

    private readonly Curve _byLoad;

    private TargetLambda(Curve byLoad, (Ratio Load, double Lambda)[] points) => (_byLoad, Points) = (byLoad, Array.AsReadOnly(points));

    /// <summary>The points, load and lambda.</summary>
    public IReadOnlyList<(Ratio Load, double Lambda)> Points { get; }

    /// <summary>One lambda at every load.</summary>
    /// <param name="lambda">0.6 to 1.2.</param>
    /// <returns>The target.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Lambda is outside its range.</exception>
    public static TargetLambda At(double lambda)
    {
        double within = Within(lambda, nameof(lambda));
        return Of((Ratio.Zero, within), (Ratio.FromDecimalFractions(1), within));
    }

    /// <summary>A table against load.</summary>
    /// <param name="points">Two or more, loads rising, 0 to 400 %; lambda 0.6 to 1.2.</param>
    /// <returns>The target.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the loads do not rise.</exception>
    public static TargetLambda Of(params (Ratio Load, double Lambda)[] points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return new(new Curve(
            Guard.Rising(
                Array.ConvertAll(points, point => Guard.Between(
                    point.Load,
                    Ratio.Zero,
                    Ratio.FromPercent(400),
                    "Give the air of a cycle ÷ the air that fills the displacement at 101.325 kPa and 15 °C.",
                    nameof(points)).DecimalFractions),
                nameof(points)),
            Array.ConvertAll(points, point => Within(point.Lambda, nameof(points))),
            Interpolation.Linear), [.. points]);
    }

    /// <summary>The lambda aimed at.</summary>
    /// <param name="load">0 to 1,000 %; beyond the table its end holds.</param>
    /// <returns>Air–fuel ratio ÷ stoichiometric ratio.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The load is outside its range.</exception>
    public double LambdaAt(Ratio load) => AtLoad(Guard.Between(
        load, Ratio.Zero, Ratio.FromPercent(1000), "Give the air of a cycle ÷ the air that fills the displacement.", nameof(load)).DecimalFractions);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(TargetLambda? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Lambda at the lowest and at the highest load.</summary>
    /// <returns>For instance <c>target lambda 1.00 to 0.88</c>.</returns>
    public override string ToString() => _byLoad.FirstValue.Equals(_byLoad.LastValue)
        ? FormattableString.Invariant($"target lambda {_byLoad.FirstValue:0.00}")
        : FormattableString.Invariant($"target lambda {_byLoad.FirstValue:0.00} to {_byLoad.LastValue:0.00}");

    internal double AtLoad(double load) => _byLoad.At(Math.Clamp(load, _byLoad.First, _byLoad.Last));

    private static double Within(double lambda, string name) =>
        Guard.Number(lambda, 0.6, 1.2, "Give air–fuel ratio ÷ stoichiometric ratio, not the ratio itself.", name);
}
