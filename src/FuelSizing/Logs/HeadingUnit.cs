namespace FuelSizing.Logs;

/// <summary>Units that a heading holds: in brackets, or as its last word.</summary>
internal static class HeadingUnit
{
    /// <summary>What opens and closes a bracket.</summary>
    private const string Opening = "([{";
    private const string Closing = ")]}";

    /// <summary>Each unit with the text that says it.</summary>
    public static IEnumerable<(string Text, WrittenUnit Unit)> In(Channel channel, string heading)
    {
        foreach (string text in Bracketed(heading))
        {
            if (WrittenUnit.TryFind(channel, text, out WrittenUnit unit) && IsMeant(channel, text, unit))
            {
                yield return (text, unit);
            }
        }

        // "Fuel pressure psi": a last word that is a longer unit of pressure, temperature or flow is hardly anything else.
        string last = LastWord(heading);
        if (last.Length >= 3
            && !Closing.Contains(last[^1], StringComparison.Ordinal)
            && last.Length < heading.Length
            && WrittenUnit.TryFind(channel, last, out WrittenUnit found)
            && found.Of is UnitOf.Pressure or UnitOf.Temperature or UnitOf.VolumeFlow or UnitOf.MassFlow)
        {
            yield return (last, found);
        }
    }

    /// <summary>Gauge or absolute, where a bracket or the last word says so by itself.</summary>
    public static PressureReference? ReferenceIn(string heading)
    {
        foreach (string text in Bracketed(heading).Append(LastWord(heading)))
        {
            if (WrittenUnit.ReferenceIn(text) is { } reference)
            {
                return reference;
            }
        }

        return null;
    }

    // (1) is the first cylinder or bank, and (F) the front one, unless it is of the channel's own quantity; (V) and (%) are hardly else.
    private static bool IsMeant(Channel channel, string text, WrittenUnit unit) =>
        text.Trim() is not "1" && (text.Trim().Length > 1 || text.Trim() is "V" or "v" or "%" || unit.Of == WrittenUnit.QuantityOf(channel));

    private static IEnumerable<string> Bracketed(string heading)
    {
        for (int start = 0; start < heading.Length; start++)
        {
            int kind = Opening.IndexOf(heading[start], StringComparison.Ordinal);
            int end = kind < 0 ? -1 : heading.IndexOf(Closing[kind], start + 1);
            if (end > start)
            {
                yield return heading[(start + 1)..end];
            }
        }
    }

    private static string LastWord(string heading)
    {
        string trimmed = heading.TrimEnd();
        return trimmed[(trimmed.LastIndexOfAny([' ', '_', '.', ',', ';', ':', '\u00A0']) + 1)..];
    }
}
