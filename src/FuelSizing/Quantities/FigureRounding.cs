using System.Globalization;

namespace FuelSizing.Quantities;

/// <summary>How a figure is rounded where it is written, if not to the nearest.</summary>
/// <param name="Way">Which way.</param>
/// <param name="Bound">Up or down: how far at most; apart: from which figure. None where nothing bounds it.</param>
/// <remarks>
/// A figure that somebody fits by must still be adequate as it is printed: a minimum is rounded up, a maximum down, and never past the far
/// end of what holds. A figure that breaks a limit is written with as many digits as tell it from the limit.
/// </remarks>
internal sealed record FigureRounding(RoundingWay Way, object? Bound = null)
{
    // More than a double holds are never needed.
    private const int MaximumMore = 12;

    private const double MaximumValue = 1e12;

    private static readonly FigureRounding _up = new(RoundingWay.Up);

    private static readonly FigureRounding _down = new(RoundingWay.Down);

    /// <summary>Takes the end of a kind or a number format apart: <c>pump-flow:up</c> is rounded up, <c>0.00:down</c> down.</summary>
    /// <param name="format">A kind or a format; without its end afterwards.</param>
    /// <returns>The rounding; none where the format names none.</returns>
    public static FigureRounding? TakenFrom(ref string format)
    {
        foreach ((string end, FigureRounding rounding) in ((string, FigureRounding)[])[(":up", _up), (":down", _down)])
        {
            if (format.EndsWith(end, StringComparison.Ordinal))
            {
                format = format[..^end.Length];
                return rounding;
            }
        }

        return null;
    }

    /// <summary>Number and unit, rounded this way.</summary>
    /// <param name="value">In the unit.</param>
    /// <param name="bound">The bound in the unit; none where there is none.</param>
    /// <param name="format">How many figures, as .NET writes it; more are added where they are needed.</param>
    /// <param name="unit">The unit's symbol.</param>
    /// <param name="numbers">Separators.</param>
    /// <param name="compared">The sign of what a number in the unit stands for, less the figure itself.</param>
    public string Text(double value, double? bound, string format, string unit, NumberFormatInfo numbers, Func<double, int> compared)
    {
        if (!(Math.Abs(value) < MaximumValue))
        {
            return TextStyle.Text(value, format, unit, numbers);
        }

        if (Decimals(format) is not { } decimals)
        {
            return TextStyle.Text(value, "R", unit, numbers);
        }

        for (int more = 0; more <= MaximumMore; more++)
        {
            if (Way == RoundingWay.Apart)
            {
                double other = bound ?? value;
                if (AsWritten(value, decimals + more).CompareTo(AsWritten(other, decimals + more)) == value.CompareTo(other))
                {
                    return TextStyle.Text(value, WithMore(format, more, optional: true), unit, numbers);
                }

                continue;
            }

            double rounded = Rounded(value, decimals + more, compared);
            if (bound is not { } end || (Way == RoundingWay.Up ? rounded <= end : rounded >= end))
            {
                return TextStyle.Text(rounded, WithMore(format, more, optional: false), unit, numbers);
            }
        }

        return TextStyle.Text(value, "R", unit, numbers);
    }

    /// <summary>The nearest number of so many decimals that is not short of the figure.</summary>
    private double Rounded(double value, int decimals, Func<double, int> compared)
    {
        decimal step = 1;
        for (int place = 0; place < decimals; place++)
        {
            step /= 10;
        }

        // Decimal, for 1.1 · 10 in binary is over 11; it takes 15 figures of the double, so that what it came to is compared once more.
        decimal steps = (decimal)value / step;
        bool up = Way == RoundingWay.Up;
        decimal rounded = (up ? Math.Ceiling(steps) : Math.Floor(steps)) * step;
        int off = compared((double)rounded);
        return (double)(up && off < 0 ? rounded + step : !up && off > 0 ? rounded - step : rounded);
    }

    // By a format of the kind that is written by: standard ones round a tie the other way.
    private static decimal AsWritten(double value, int decimals) => decimal.Parse(
        value.ToString($"0.{new string('0', decimals)}", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>How many decimals a format writes at most; none where it is not a plain one.</summary>
    private static int? Decimals(string format)
    {
        if (format[0] is 'N' or 'F' && int.TryParse(format.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out int decimals))
        {
            return decimals;
        }

        if (format.Any(letter => char.IsLetterOrDigit(letter) && letter != '0') || format.AsSpan().ContainsAny('%', '‰'))
        {
            return null;
        }

        string first = format.Split(';')[0];
        int point = first.IndexOf('.', StringComparison.Ordinal);
        return point < 0 ? 0 : first.AsSpan(point + 1).Count('0') + first.AsSpan(point + 1).Count('#');
    }

    private static string WithMore(string format, int more, bool optional)
    {
        if (more == 0 && !optional)
        {
            return format;
        }

        if (char.IsLetter(format[0]))
        {
            int decimals = int.Parse(format.AsSpan(1), CultureInfo.InvariantCulture);
            format = $"{(format[0] == 'N' ? "#,##0" : "0")}{(decimals > 0 ? "." : string.Empty)}{new string('0', decimals)}";
        }

        return more == 0 ? format : string.Join(';', format.Split(';').Select(section =>
        {
            int last = section.LastIndexOfAny(['0', '#']) + 1;
            string point = section.Contains('.', StringComparison.Ordinal) ? string.Empty : ".";
            return section.Insert(last, $"{point}{new string(optional || section[last - 1] == '#' ? '#' : '0', more)}");
        }));
    }
}

/// <summary>Which way a figure is rounded.</summary>
internal enum RoundingWay
{
    /// <summary>To the next number that is no smaller: of a minimum.</summary>
    Up,

    /// <summary>To the next number that is no larger: of a maximum.</summary>
    Down,

    /// <summary>To the nearest, with as many digits as tell it from another figure: of what breaks a limit, and of the limit.</summary>
    Apart,
}

/// <summary>A figure with the rounding it needs, to be written in a statement.</summary>
/// <typeparam name="T">A quantity, or a number.</typeparam>
/// <param name="Figure">The figure.</param>
/// <param name="Rounding">How it is rounded; to the nearest where there is none.</param>
internal readonly record struct RoundedFigure<T>(T Figure, FigureRounding? Rounding)
    where T : struct;

/// <summary>Gives a figure its rounding.</summary>
internal static class RoundedFigure
{
    /// <summary>An end of a range of figures that hold: rounded into the range, by as many digits as it takes to stay within.</summary>
    /// <param name="end">The end.</param>
    /// <param name="other">The other end; none for a figure that is no end, and is rounded to the nearest.</param>
    public static RoundedFigure<T> Towards<T>(this T end, T? other)
        where T : struct, IComparable<T> =>
        new(end, other is { } bound ? new(end.CompareTo(bound) <= 0 ? RoundingWay.Up : RoundingWay.Down, bound) : null);

    /// <summary>A figure, or the limit that it breaks, written so that they are told apart.</summary>
    /// <param name="figure">One of them.</param>
    /// <param name="other">The other.</param>
    public static RoundedFigure<T> ApartFrom<T>(this T figure, T other)
        where T : struct => new(figure, new(RoundingWay.Apart, other));
}
