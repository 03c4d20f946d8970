using System.Globalization;
using UnitsNet;

namespace FuelSizing.Quantities;

/// <summary>The unit in which one kind of figure is written for people, in either style.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public sealed class DisplayUnit<T>
    where T : struct, IQuantity
{
    private readonly (string Unit, string Format, Func<T, double> Value, Func<double, T> Quantity)[] _styles;

    internal DisplayUnit(
        (string Unit, string Format, Func<T, double> Value, Func<double, T> Quantity) metric,
        (string Unit, string Format, Func<T, double> Value, Func<double, T> Quantity) usCustomary) =>
        _styles = [metric, usCustomary];

    /// <summary>The unit's symbol, for an axis or the head of a column.</summary>
    public string Unit => Now.Unit;

    private (string Unit, string Format, Func<T, double> Value, Func<double, T> Quantity) Now =>
        _styles[(int)DisplayUnits.Style];

    /// <summary>The number to write before the unit, unrounded.</summary>
    /// <param name="quantity">Any value.</param>
    /// <returns>The number.</returns>
    public double ValueOf(T quantity) => Now.Value(quantity);

    /// <summary>The quantity that a number in this unit stands for.</summary>
    /// <param name="value">A finite number.</param>
    /// <returns>The quantity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    public T Quantity(double value) =>
        Now.Quantity(Guard.Number(value, double.MinValue, double.MaxValue, "Give a finite number.", nameof(value)));

    internal string Text(T quantity, string? format = null) => Text(ValueOf(quantity), format ?? Now.Format, Unit);

    internal static string Text(double value, string format, string unit)
    {
        string digits = value.ToString(format, CultureInfo.InvariantCulture).Replace('-', '−');

        // A rounded zero carries no sign.
        return $"{(digits.Any(c => c is >= '1' and <= '9') ? digits : digits.TrimStart('−', '+'))} {unit}";
    }
}
