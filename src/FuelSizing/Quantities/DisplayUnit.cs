using System.Globalization;
using UnitsNet;

namespace FuelSizing.Quantities;

/// <summary>Makes display units.</summary>
public static class DisplayUnit
{
    /// <summary>A unit, how it is written, and both conversions.</summary>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <param name="unit">Its symbol, for instance <c>kPa</c>; empty for a pure number.</param>
    /// <param name="format">How many figures, as .NET writes it: <c>N0</c>, <c>0.0</c>, <c>+0;−0;0</c>.</param>
    /// <param name="value">The number in this unit.</param>
    /// <param name="quantity">The quantity that a number in this unit stands for.</param>
    /// <returns>The unit.</returns>
    /// <exception cref="ArgumentException">The symbol has more than 20 characters, or the format is none.</exception>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    /// <example>
    /// <code>
    /// DisplayUnit&lt;Pressure&gt; bar = DisplayUnit.Of("bar", "N2", p => p.Bars, value => Pressure.FromBars(value));
    /// TextStyle mine = TextStyle.Metric.With(FigureUnits.Metric with { Pressure = bar });
    /// </code>
    /// </example>
    public static DisplayUnit<T> Of<T>(string unit, string format, Func<T, double> value, Func<double, T> quantity)
        where T : struct, IQuantity
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentException.ThrowIfNullOrWhiteSpace(format);
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(quantity);
        if (unit.Length > 20 || unit.Any(char.IsControl))
        {
            throw new ArgumentException($"unit was \"{unit}\"; give a symbol of up to 20 characters on one line.", nameof(unit));
        }

        try
        {
            _ = 1.5.ToString(format, CultureInfo.InvariantCulture);
        }
        catch (FormatException wrong)
        {
            throw new ArgumentException($"format was \"{format}\"; give a numeric format such as N1 or 0.00.", nameof(format), wrong);
        }

        return new(unit, format, value, quantity);
    }
}

/// <summary>The unit in which one kind of figure is written for people.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public sealed class DisplayUnit<T>
    where T : struct, IQuantity
{
    private readonly Func<T, double> _value;
    private readonly Func<double, T> _quantity;
    private readonly Func<T, DisplayUnit<T>?>? _instead;

    /// <summary>A unit, and for some values another in its stead.</summary>
    internal DisplayUnit(
        string unit, string format, Func<T, double> value, Func<double, T> quantity, Func<T, DisplayUnit<T>?>? instead = null) =>
        (Unit, Format, _value, _quantity, _instead) = (unit, format, value, quantity, instead);

    /// <summary>The unit's symbol, for an axis or the head of a column; empty for a pure number.</summary>
    public string Unit { get; }

    /// <summary>How many figures, as .NET writes it.</summary>
    public string Format { get; }

    /// <summary>The number to write before the unit, unrounded.</summary>
    /// <param name="quantity">Any value.</param>
    /// <returns>The number.</returns>
    public double ValueOf(T quantity) => _value(quantity);

    /// <summary>The quantity that a number in this unit stands for.</summary>
    /// <param name="value">A finite number.</param>
    /// <returns>The quantity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    public T Quantity(double value) =>
        _quantity(Guard.Number(value, double.MinValue, double.MaxValue, "Give a finite number.", nameof(value)));

    /// <summary>The unit's symbol.</summary>
    /// <returns>For instance <c>kPa</c>.</returns>
    public override string ToString() => Unit;

    /// <summary>Number and unit.</summary>
    internal string Text(T quantity, NumberFormatInfo numbers, FigureRounding? rounding = null)
    {
        if (_instead?.Invoke(quantity) is { } other)
        {
            return other.Text(quantity, numbers, rounding);
        }

        double value = _value(quantity);
        return rounding is null
            ? TextStyle.Text(value, Format, Unit, numbers)
            : rounding.Text(
                value, rounding.Bound is T bound ? _value(bound) : null, Format, Unit, numbers, number => Base(_quantity(number)).CompareTo(Base(quantity)));
    }

    /// <summary>The nearest quantity of seven figures in this unit.</summary>
    internal T Tidy(T quantity)
    {
        double value = _value(quantity);
        if (value == 0 || !double.IsFinite(value))
        {
            return quantity;
        }

        double scale = Math.Pow(10, 7 - Math.Ceiling(Math.Log10(Math.Abs(value))));
        return _quantity(Math.Round(value * scale) / scale);
    }

    // In the unit that all others of the quantity are converted by, so that the unit in which a figure was given does not matter.
    private static double Base(T quantity) => (double)quantity.As(quantity.QuantityInfo.BaseUnitInfo.Value);

    /// <summary>The same unit with another number of figures.</summary>
    internal DisplayUnit<T> With(string format) => new(Unit, format, _value, _quantity);
}
