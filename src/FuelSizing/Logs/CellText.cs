namespace FuelSizing.Logs;

/// <summary>A file's own text in a message: short, and on one line whatever it holds.</summary>
internal static class CellText
{
    private const int Longest = 40;

    /// <summary>The text's beginning, control characters and halves of characters made visible.</summary>
    public static string Shown(ReadOnlySpan<char> text)
    {
        Span<char> shown = stackalloc char[Longest];
        ReadOnlySpan<char> start = text[..Math.Min(text.Length, Longest)];
        for (int i = 0; i < start.Length; i++)
        {
            shown[i] = char.IsControl(start[i]) || char.IsSurrogate(start[i]) || start[i] >= '\uFFFD' ? '\uFFFD' : start[i];
        }

        return text.Length > Longest ? $"{shown}…" : new string(shown[..start.Length]);
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
