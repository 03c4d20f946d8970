using System.Globalization;
using System.Text;

namespace FuelSizing.Quantities;

/// <summary>Names composed of others, which together may be longer than a name can be.</summary>
internal static class ShortName
{
    private const int Maximum = 80;

    /// <summary>A name, shortened in its middle where it is over 80 characters, and numbered where another was shortened to the same.</summary>
    /// <param name="taken">Names that are there already; the new one is added.</param>
    /// <param name="name">The whole name.</param>
    public static string Among(ISet<string> taken, string name)
    {
        string shortened = Fit(name, Maximum);
        for (int number = 2; shortened.Length < name.Length && taken.Contains(shortened); number++)
        {
            string end = string.Create(CultureInfo.InvariantCulture, $" ({number})");
            shortened = Fit(name, Maximum - end.Length) + end;
        }

        taken.Add(shortened);
        return shortened;
    }

    /// <summary>The beginning and the end of a text, with an ellipsis between them; the text itself where it is short enough.</summary>
    private static string Fit(string text, int length)
    {
        if (text.Length <= length)
        {
            return text;
        }

        int side = (length - 1) / 2;
        return $"{Whole(text.EnumerateRunes(), side)}…{Reversed(Whole(text.EnumerateRunes().Reverse(), side))}";
    }

    // No half of a surrogate pair.
    private static string Whole(IEnumerable<Rune> runes, int length)
    {
        StringBuilder whole = new();
        foreach (Rune rune in runes)
        {
            if (whole.Length + rune.Utf16SequenceLength > length)
            {
                break;
            }

            whole.Append(rune.ToString());
        }

        return whole.ToString();
    }

    private static string Reversed(string text) => string.Concat(text.EnumerateRunes().Reverse().Select(rune => rune.ToString()));
}
