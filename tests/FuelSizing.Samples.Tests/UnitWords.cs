using System.Text.RegularExpressions;

namespace FuelSizing.Samples.Tests;

/// <summary>Units that only one of the two systems has. Injectors' flows, bores, wires, voltages and pulses are the same in both.</summary>
internal static partial class UnitWords
{
    /// <summary>The units of the other system in a sentence; none where it is not mixed.</summary>
    public static string? Foreign(string sentence, string units)
    {
        Match found = units == "us" ? Metric().Match(sentence) : Us().Match(sentence);
        return found.Success ? found.Value : null;
    }

    [GeneratedRegex(@".{0,40}[0-9(] *(kPa|bar|L/h|g/s|kW|°C|kg/m³|g/kWh|m)(?![\w/²³])", RegexOptions.CultureInvariant)]
    private static partial Regex Metric();

    [GeneratedRegex(@".{0,40}[0-9(] *(psi|US gal/h|lb/h|hp|°F|lb/ft³|ft)(?![\w/²³])", RegexOptions.CultureInvariant)]
    private static partial Regex Us();
}
