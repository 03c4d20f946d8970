using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>Distributions of a quantity that is not known exactly.</summary>
/// <remarks>
/// Every distribution has ends: a part whose flow is normal without end would now and then be negative. The physical range
/// of a value is checked where the distribution is given to an input, see <see cref="UncertainInput"/>.
/// </remarks>
/// <example>
/// <code>Distribution&lt;Ratio&gt; flow = Distribution.Uniform(Ratio.FromPercent(96), Ratio.FromPercent(104));</code>
/// </example>
public static class Distribution
{
    private const string OrderAdvice = "Give the values from low to high.";

    /// <summary>A value known exactly.</summary>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <param name="value">The value.</param>
    /// <returns>The distribution.</returns>
    public static Distribution<T> Fixed<T>(T value)
        where T : struct, IQuantity, IComparable<T> => new(value, value, _ => new FixedShape(InBaseUnit(value)));

    /// <summary>Any value between two ends, all equally likely: x = a + p (b − a) at cumulative probability p.</summary>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <param name="minimum">a.</param>
    /// <param name="maximum">b, over a.</param>
    /// <returns>The distribution.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The maximum is not over the minimum.</exception>
    public static Distribution<T> Uniform<T>(T minimum, T maximum)
        where T : struct, IQuantity, IComparable<T> =>
        new(minimum, Rising(minimum, maximum, nameof(maximum)), (a, b) => new UniformShape(a, b));

    /// <summary>Between two ends, likeliest at a third value, falling off straight to the ends.</summary>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <param name="minimum">Lower end.</param>
    /// <param name="likeliest">From the lower to the upper end.</param>
    /// <param name="maximum">Upper end, over the lower.</param>
    /// <returns>The distribution.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The values are out of order.</exception>
    public static Distribution<T> Triangular<T>(T minimum, T likeliest, T maximum)
        where T : struct, IQuantity, IComparable<T>
    {
        Rising(minimum, maximum, nameof(maximum));
        double mode = InBaseUnit(
            Quantities.Guard.Between(likeliest, minimum, maximum, OrderAdvice, nameof(likeliest)));
        return new(minimum, maximum, (a, b) => new TriangularShape(a, mode, b));
    }

    /// <summary>
    /// Normal, cut off at two bounds: x = μ + σ Φ⁻¹(Φ(a') + p (Φ(b') − Φ(a'))), a' and b' the bounds in standard deviations
    /// from μ, Φ the standard normal's cumulative probability.
    /// </summary>
    /// <typeparam name="T">The quantity; for a temperature use <see cref="NormalTemperature"/>.</typeparam>
    /// <param name="mean">μ of the whole normal, within the bounds.</param>
    /// <param name="standardDeviation">σ of the whole normal, over zero.</param>
    /// <param name="minimum">Lower bound.</param>
    /// <param name="maximum">Upper bound, over the lower.</param>
    /// <returns>The distribution.</returns>
    /// <exception cref="ArgumentException">The quantity is a temperature.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Distribution<T> Normal<T>(T mean, T standardDeviation, T minimum, T maximum)
        where T : struct, IQuantity, IComparable<T> =>
        standardDeviation is Temperature
            ? throw new ArgumentException(
                $"standardDeviation was a temperature, {standardDeviation}; a spread is a difference. Use Distribution.NormalTemperature.",
                nameof(standardDeviation))
            : Bounded(mean, standardDeviation, InBaseUnit(standardDeviation), minimum, maximum);

    /// <summary>Normal temperature, cut off at two bounds, as <see cref="Normal"/>.</summary>
    /// <param name="mean">μ of the whole normal, within the bounds.</param>
    /// <param name="standardDeviation">σ of the whole normal, over zero.</param>
    /// <param name="minimum">Lower bound.</param>
    /// <param name="maximum">Upper bound, over the lower.</param>
    /// <returns>The distribution.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Distribution<Temperature> NormalTemperature(
        Temperature mean, TemperatureDelta standardDeviation, Temperature minimum, Temperature maximum) =>
        Bounded(mean, standardDeviation, standardDeviation.Kelvins, minimum, maximum);

    internal static double InBaseUnit<T>(T value)
        where T : struct, IQuantity => (double)value.As(value.QuantityInfo.BaseUnitInfo.Value);

    private static Distribution<T> Bounded<T>(T mean, IQuantity standardDeviation, double deviation, T minimum, T maximum)
        where T : struct, IQuantity, IComparable<T>
    {
        Rising(minimum, maximum, nameof(maximum));
        double middle = InBaseUnit(Quantities.Guard.Between(
            mean, minimum, maximum, "The bounds must hold the mean between them.", nameof(mean)));
        return deviation > 0
            ? new(minimum, maximum, (a, b) => new NormalShape(middle, deviation, a, b))
            : throw Quantities.Guard.OutOfRange(
                nameof(standardDeviation),
                Guard.Text(standardDeviation),
                "over zero",
                "Use Distribution.Fixed for a value known exactly.");
    }

    private static T Rising<T>(T minimum, T maximum, string name)
        where T : struct, IQuantity, IComparable<T> =>
        maximum.CompareTo(minimum) > 0
            ? maximum
            : throw Quantities.Guard.OutOfRange(
                name, Text(maximum), $"over {Text(minimum)}", $"{OrderAdvice} Use Distribution.Fixed for a value known exactly.");

    private static string Text<T>(T value)
        where T : struct, IQuantity => Guard.Text(value);
}
