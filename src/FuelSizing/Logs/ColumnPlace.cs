using System.Globalization;
using FuelSizing.Quantities;

namespace FuelSizing.Logs;

/// <summary>Which column of a file: by its heading, or by its number where the heading will not do.</summary>
public sealed record ColumnPlace
{
    private ColumnPlace(string? heading, int number) => (Heading, Number) = (heading, number);

    /// <summary>The heading, without blanks at its ends; null where the column is told by number.</summary>
    public string? Heading { get; }

    /// <summary>The column's number, the first being 1; 0 where the column is told by heading.</summary>
    public int Number { get; }

    /// <summary>A column told by its heading, which must stand once; case counts, blanks at its ends do not.</summary>
    /// <param name="heading">1 to 80 characters on one line.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentException">The heading is not such a text.</exception>
    public static ColumnPlace Named(string heading) => new(Guard.Name(heading, nameof(heading)).Trim(), 0);

    /// <summary>A column told by its number, whatever its heading says.</summary>
    /// <param name="number">1 to 1,000, the first being 1.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside its range.</exception>
    public static ColumnPlace Numbered(int number) =>
        new(null, Guard.Count(number, 1, 1000, "Count the columns from the left, the first being 1.", nameof(number)));

    /// <summary>A column told by its heading: <see cref="Named"/>.</summary>
    /// <param name="heading">1 to 80 characters on one line.</param>
    public static implicit operator ColumnPlace(string heading) => Named(heading);

    /// <summary>A column told by its heading: <see cref="Named"/>.</summary>
    /// <param name="heading">1 to 80 characters on one line.</param>
    /// <returns>The place.</returns>
    public static ColumnPlace FromString(string heading) => Named(heading);

    /// <summary>The place in words.</summary>
    /// <returns>For instance <c>"Engine speed"</c> or <c>column 3</c>.</returns>
    public override string ToString() =>
        Heading is null ? string.Create(CultureInfo.InvariantCulture, $"column {Number}") : $"\"{Heading}\"";
}
