namespace FuelSizing.Logs;

/// <summary>A file's own text in a message: short, and on one line whatever it holds.</summary>
internal static class CellText
{
    private const int Longest = 40;

    /// <summary>The text's beginning, control characters and halves of characters made visible.</summary>
    public static string Shown(ReadOnlySpan<char> text) =>
        text.Length > Longest ? $"{OnOneLine(text[..Longest])}…" : OnOneLine(text);

    /// <summary>The whole text, control characters and halves of characters made visible.</summary>
    public static string OnOneLine(ReadOnlySpan<char> text)
    {
        char[] shown = text.ToArray();
        foreach (ref char letter in shown.AsSpan())
        {
            letter = char.IsControl(letter) || char.IsSurrogate(letter) || letter >= '\uFFFD' ? '\uFFFD' : letter;
        }

        return new(shown);
    }

    /// <summary>Whether a cell says in words that there is no number: not a number, or infinity.</summary>
    public static bool SaysNoNumber(ReadOnlySpan<char> cell)
    {
        cell = cell.Trim().TrimStart("+-");
        return cell.Equals("nan", StringComparison.OrdinalIgnoreCase)
            || cell.Equals("inf", StringComparison.OrdinalIgnoreCase)
            || cell.Equals("infinity", StringComparison.OrdinalIgnoreCase)
            || cell.SequenceEqual("∞");
    }
}
