using System.Globalization;
using System.Text;
using UnitsNet;

namespace FuelSizing.Quantities;

/// <summary>
/// The one gate of the public API: a value outside its allowed range goes no further, and the message says which
/// argument, what it was, what is allowed and what to do.
/// </summary>
internal static class Guard
{
    /// <summary>A quantity within a closed range.</summary>
    public static T Between<T>(T value, T minimum, T maximum, string advice, string name)
        where T : struct, IQuantity, IComparable<T> =>
        value.CompareTo(minimum) >= 0 && value.CompareTo(maximum) <= 0
            ? value
            : throw OutOfRange(name, Text(value), $"between {Text(minimum, value)} and {Text(maximum, value)}", advice);

    /// <summary>A quantity above one end of a range (the end itself refused) and up to the other.</summary>
    public static T Above<T>(T value, T over, T maximum, string advice, string name)
        where T : struct, IQuantity, IComparable<T> =>
        value.CompareTo(over) > 0 && value.CompareTo(maximum) <= 0
            ? value
            : throw OutOfRange(name, Text(value), $"over {Text(over, value)} and up to {Text(maximum, value)}", advice);

    /// <summary>A plain number within a closed range; NaN and infinities are never within.</summary>
    public static double Number(double value, double minimum, double maximum, string advice, string name) =>
        value >= minimum && value <= maximum
            ? value
            : throw OutOfRange(name, Text(value), $"between {Text(minimum)} and {Text(maximum)}", advice);

    /// <summary>A count within a closed range.</summary>
    public static int Count(int value, int minimum, int maximum, string advice, string name) =>
        value >= minimum && value <= maximum
            ? value
            : throw OutOfRange(
                name,
                Whole(value),
                $"between {Whole(minimum)} and {Whole(maximum)}",
                advice);

    /// <summary>Abscissas of a table: two or more, rising strictly.</summary>
    public static double[] Rising(double[] x, string name)
    {
        Count(x.Length, 2, 1000, "Give the curve by two points or more.", name);
        for (int point = 1; point < x.Length; point++)
        {
            if (!(x[point] > x[point - 1]))
            {
                throw OutOfRange(
                    name,
                    string.Create(CultureInfo.InvariantCulture, $"not rising at point {point + 1}"),
                    "points in rising order",
                    "Sort the points and give each abscissa once.");
            }
        }

        return x;
    }

    /// <summary>A defined member of an enumeration.</summary>
    public static T Member<T>(T value, string advice, string name)
        where T : struct, Enum =>
        Enum.IsDefined(value)
            ? value
            : throw OutOfRange(name, value.ToString(), $"one of {string.Join(", ", Enum.GetNames<T>())}", advice);

    /// <summary>A name that can be shown: not blank, one line, at most 80 characters.</summary>
    public static string Name(string value, string name)
    {
        ArgumentNullException.ThrowIfNull(value, name);
        return !string.IsNullOrWhiteSpace(value) && value.Length <= 80 && !value.Any(char.IsControl) && IsWhole(value)
            ? value
            : throw new ArgumentException(
                $"{name} must be a name of 1 to 80 characters on one line; it is \"{value}\". Give the part a name that a reader of the report will know.",
                name);
    }

    // Half of a surrogate pair is no character, and no file could hold it.
    private static bool IsWhole(string text) =>
        text.EnumerateRunes().Count(rune => rune == Rune.ReplacementChar) == text.Count(letter => letter == '\uFFFD');

    /// <summary>The exception that every refused value gets.</summary>
    public static ArgumentOutOfRangeException OutOfRange(string name, string value, string range, string advice) =>
        new(name, value, $"{name} is {value}; it must be {range}. {advice}");

    /// <summary>A quantity as it was given, with a true minus sign.</summary>
    public static string Text(IQuantity value) =>
        value is RotationalSpeed speed ? Readable.Of(speed) : WithMinus(value.ToString("S6", CultureInfo.InvariantCulture));

    // One unit in a message: an end of the range is written as the value was given.
    private static string Text<T>(T end, T given)
        where T : struct, IQuantity => Text((T)end.ToUnit(given.Unit));

    private static string Text(double value) => WithMinus(value.ToString("G6", CultureInfo.InvariantCulture));

    private static string Whole(int value) => WithMinus(value.ToString(CultureInfo.InvariantCulture));

    private static string WithMinus(string text) => text.StartsWith('-') ? $"−{text[1..]}" : text;
}

/// <summary>Checks on the voltage of a vehicle's supply.</summary>
internal static class SupplyVoltage
{
    private static readonly ElectricPotential Minimum = ElectricPotential.FromVolts(6);
    private static readonly ElectricPotential Maximum = ElectricPotential.FromVolts(20);

    /// <summary>A voltage that a vehicle of 12 V may have.</summary>
    public static ElectricPotential Within(ElectricPotential supply, string name) =>
        Guard.Between(supply, Minimum, Maximum, "Give the voltage under load, engine running.", name);

    /// <summary>True for a voltage that a vehicle of 12 V may have.</summary>
    public static bool IsDefault(ElectricPotential supply) => supply >= Minimum && supply <= Maximum;
}
