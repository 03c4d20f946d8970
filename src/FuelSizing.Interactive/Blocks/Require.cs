using System.Globalization;

namespace FuelSizing.Interactive;

/// <summary>Checks arguments once, at the public edge, with messages that say what to do.</summary>
internal static class Require
{
    /// <summary>A longer text is prose and belongs beside the block.</summary>
    private const int LongestText = 1_000;

    public static string Text(string? value, string argument)
    {
        if (string.IsNullOrWhiteSpace(value))
        {
            throw new ArgumentException($"{argument} is empty. Give it at least one visible character.", argument);
        }

        return OptionalText(value, argument)!;
    }

    public static string? OptionalText(string? value, string argument)
    {
        if (value is null)
        {
            return null;
        }

        if (value.Length > LongestText)
        {
            throw new ArgumentException(
                $"{argument} has {value.Length} characters; at most {LongestText} fit. Shorten it, or write the rest as prose beside the block.",
                argument);
        }

        // XML has no way to carry these, so they could not be escaped later.
        int control = value.AsSpan().IndexOfAnyInRange('\0', '\u001f');
        if (control >= 0 && value.Any(c => c < ' ' && c is not ('\n' or '\t')))
        {
            throw new ArgumentException($"{argument} holds a control character. Remove it; line feeds and tabs are allowed.", argument);
        }

        for (int i = 0; i < value.Length; i++)
        {
            bool paired = char.IsHighSurrogate(value[i]) && i + 1 < value.Length && char.IsLowSurrogate(value[i + 1]);
            if (paired)
            {
                i++;
            }
            else if (char.IsSurrogate(value[i]) || value[i] is '\ufffe' or '\uffff')
            {
                throw new ArgumentException($"{argument} holds half of a character at position {i}. Give whole Unicode characters.", argument);
            }
        }

        return value;
    }

    public static double Finite(double value, string argument)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(argument, value, $"{argument} must be a finite number. Leave the item out when there is no value for it.");
        }

        return value;
    }

    public static double[] Ascending(IReadOnlyList<double> values, string argument)
    {
        ArgumentNullException.ThrowIfNull(values, argument);
        if (values.Count < 2)
        {
            throw new ArgumentException($"{argument} has {values.Count} value(s); a map needs at least 2. Add grid points.", argument);
        }

        double[] copy = [.. values];
        for (int i = 0; i < copy.Length; i++)
        {
            Finite(copy[i], argument);
            if (i > 0 && copy[i] <= copy[i - 1])
            {
                throw new ArgumentException(
                    string.Create(CultureInfo.InvariantCulture, $"{argument} must rise from each value to the next, but value {i} is {copy[i]} after {copy[i - 1]}. Sort the grid and drop repeats."),
                    argument);
            }
        }

        return copy;
    }

    public static T[] Some<T>(IReadOnlyList<T> items, int atMost, string argument)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(items, argument);
        if (items.Count == 0)
        {
            throw new ArgumentException($"{argument} is empty. Give at least one.", argument);
        }

        if (items.Count > atMost)
        {
            throw new ArgumentException($"{argument} has {items.Count} items; at most {atMost} can be told apart. Split them over two blocks.", argument);
        }

        T[] copy = [.. items];
        if (Array.IndexOf(copy, null) is var hole and >= 0)
        {
            throw new ArgumentException($"{argument} has no value at position {hole}. Leave the item out instead.", argument);
        }

        return copy;
    }
}
