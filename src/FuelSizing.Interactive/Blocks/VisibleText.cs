using System.Text;
using System.Text.RegularExpressions;

namespace FuelSizing.Interactive;

/// <summary>Text that somebody else wrote, made fit for a block: a heading of a log may hold anything.</summary>
/// <remarks>What cannot be written as XML is shown as U+FFFD, and a long text is cut. Escaping is the block's own work.</remarks>
internal static partial class VisibleText
{
    private const int Longest = 600;

    /// <summary>The text, or a dash where nothing of it can be seen.</summary>
    public static string Of(string text) => OrEmpty(text) is var seen && string.IsNullOrWhiteSpace(seen) ? "–" : seen;

    /// <summary>The text, or none.</summary>
    public static string? OrNone(string? text) => text is null ? null : Of(text);

    /// <summary>The text, which may be empty.</summary>
    public static string OrEmpty(string text)
    {
        StringBuilder seen = new(Math.Min(text.Length, Longest));
        foreach (Rune letter in text.EnumerateRunes())
        {
            if (seen.Length >= Longest)
            {
                return seen.Append('…').ToString();
            }

            seen.Append((Rune.IsControl(letter) && letter.Value != '\n') || letter.Value is 0xFFFE or 0xFFFF ? "\uFFFD" : letter.ToString());
        }

        return seen.ToString();
    }

    /// <summary>The text as a page breaks it: never between a number and its unit.</summary>
    public static string Unbroken(string text) => BeforeUnit().Replace(text, "\u00A0");

    [GeneratedRegex(@"(?<=[0-9]) (?=(%|°[CF]|kPa|bar|psi|L/h|US gal/h|mL/min|g/s|lb/h|k?W(/m)?|hp|kg/m³|lb/ft³|MJ/kg|Btu/lb|g/kWh|lb/\(hp·h\)|m?m²?|ft|L|V|A|m?Ω|m?s|rev/min)(?![\w/·(]))", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex BeforeUnit();
}
