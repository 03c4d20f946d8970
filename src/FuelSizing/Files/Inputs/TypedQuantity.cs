using System.Globalization;
using System.Text.RegularExpressions;
using FuelSizing.Injectors;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>What a person typed for a quantity.</summary>
/// <param name="Value">The quantity, in the unit that was typed; none where it is refused.</param>
/// <param name="Assumed">What was taken for granted, to be shown; none where nothing was.</param>
/// <param name="Refusal">Why it is refused, and what to type; none where it is not.</param>
internal sealed record TypedQuantity(IQuantity? Value, string? Assumed, string? Refusal)
{
    private static readonly string[] Gallons = ["gal/h", "gal/hr", "gph", "gph.", "gal/min", "gpm", "gal"];

    /// <summary>Reads a number and a unit as people type them: <c>8psi</c>, <c>36 lb/h</c>, <c>95F</c>, <c>5/16in</c>.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="unit">The unit that a bare number is in; it says the kind of quantity too.</param>
    /// <param name="quotedOn">The liquid on which a flow is quoted, by whose density a mass flow is converted; none where a mass flow is refused.</param>
    public static TypedQuantity Read(string text, Enum unit, TestFluid? quotedOn = null)
    {
        InputKind kind = InputKind.Of(unit)!;
        string wanted = $"expected a number with a decimal point and a unit, such as {kind.Examples}";
        Match match = Pattern.NumberAndUnit().Match(text.Trim());
        if (!match.Success || NumberOf(match) is not { } number)
        {
            return Refused(text.Contains(',', StringComparison.Ordinal) ? $"{wanted}; a comma is no decimal point" : wanted);
        }

        string digits = match.Groups["over"].Success ? number.ToString("R", CultureInfo.InvariantCulture) : match.Groups["number"].Value;
        string typed = match.Groups["unit"].Value.Trim();
        if (typed.Length == 0)
        {
            string declared = InputKind.TextOf(unit);
            return kind.TryRead(digits, declared) is { } bare
                ? new(bare, $"no unit given, taken as {ShownUnit(declared)}", null)
                : Refused(wanted);
        }

        string spelt = PlainUnits.Spelt(typed);
        if (Gallons.Contains(spelt.ToLowerInvariant()))
        {
            return Refused($"a gallon is 3.785 L in the US and 4.546 L in the UK: write {(spelt == "gal" ? "US gal or imp gal" : "US gal/h or imp gal/h")}");
        }

        if (kind.TryRead(digits, spelt) is { } value)
        {
            return new(value, AssumedOf(spelt), null);
        }

        return ByMass(digits, spelt, unit, quotedOn) ?? Refused($"{Misfit(typed, spelt, kind)}: {wanted}");
    }

    /// <summary>A mass flow as a volume flow, where the kind is that and the liquid known.</summary>
    public static TypedQuantity? ByMass(string digits, string spelt, Enum unit, TestFluid? quotedOn)
    {
        if (unit is not UnitsNet.Units.VolumeFlowUnit || InputKind.Of(UnitsNet.Units.MassFlowUnit.GramPerSecond)!.TryRead(digits, spelt) is not MassFlow mass)
        {
            return null;
        }

        return quotedOn is { } liquid
            ? new(
                (mass / liquid.Density).ToUnit(UnitsNet.Units.VolumeFlowUnit.MilliliterPerMinute),
                $"{digits} {spelt} converted by the density of {liquid.Name}, {Readable.Of(liquid.Density)}: {Readable.InjectorFlow(mass / liquid.Density)}",
                null)
            : Refused($"{spelt} is a mass flow; without the liquid's density it is no volume flow: expected a value such as {InputKind.Of(unit)!.Examples}");
    }

    private static TypedQuantity Refused(string why) => new(null, null, why);

    private static string Misfit(string typed, string spelt, InputKind wanted)
    {
        string shown = ProblemList.Shown(typed);
        if (Pattern.Reference().IsMatch(typed))
        {
            return $"{shown} says gauge or absolute, which the input's own name does; write {Pattern.Reference().Match(typed).Groups["unit"].Value}";
        }

        string[] others = [.. InputKind.ThatKnow(spelt).Select(kind => kind.Word)];
        return others.Length > 0
            ? $"{shown} is a unit of {string.Join(" or ", others.Select(Bare))}, not of {Bare(wanted.Word)}"
            : $"\"{shown}\" is no unit of {Bare(wanted.Word)}";
    }

    private static string Bare(string word) => word[(word.IndexOf(' ', StringComparison.Ordinal) + 1)..];

    private static string? AssumedOf(string spelt) => spelt switch
    {
        "hp" => "hp is mechanical horsepower, 745.7 W; write PS for the metric one, 735.5 W",
        _ => null,
    };

    private static string ShownUnit(string unit) => unit == "hp(I)" ? "hp" : unit;

    private static double? NumberOf(Match match)
    {
        if (!double.TryParse(match.Groups["number"].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) || !double.IsFinite(number))
        {
            return null;
        }

        if (!match.Groups["over"].Success)
        {
            return number;
        }

        // A fraction, or a whole number and a fraction: 5/16, 1 1/4.
        double below = double.Parse(match.Groups["over"].Value, CultureInfo.InvariantCulture);
        double above = match.Groups["top"].Success ? double.Parse(match.Groups["top"].Value, CultureInfo.InvariantCulture) : number;
        double whole = match.Groups["top"].Success ? number : 0;
        return below > 0 && whole >= 0 ? whole + (above / below) : null;
    }
}

/// <summary>Spellings of units that people type and that no table of abbreviations has.</summary>
internal static class PlainUnits
{
    private static readonly Dictionary<string, string> Spellings = new (string Unit, string[] Typed)[]
    {
        ("°F", ["F", "degF", "deg F", "ºF", "fahrenheit"]),
        ("°C", ["C", "degC", "deg C", "ºC", "celsius"]),
        ("in", ["inch", "inches", "\""]),
        ("ft", ["feet", "foot"]),
        ("m", ["metres", "meters"]),
        ("lb/h", ["lbs/h", "lb/hr", "lbs/hr", "pph", "lbs/hour", "lb/hour"]),
        ("cm³", ["cc", "ccm", "cm3"]),
        ("in³", ["ci", "cid", "cu in", "cuin", "in3"]),
        ("mL/min", ["cc/min", "ccm/min", "cm³/min", "ml/min"]),
        ("L/h", ["lph", "l/hr"]),
        ("L/min", ["lpm"]),
        ("L", ["litre", "litres", "liter", "liters", "l"]),
        ("mm²", ["mm2", "sq mm"]),
        ("%", ["percent", "pct"]),
        ("V", ["volt", "volts"]),
        ("A", ["amp", "amps", "ampere"]),
        ("rpm", ["rev/min", "1/min", "r/min", "revs"]),
        ("rev/s", ["rps"]),
        ("hp", ["bhp", "whp"]),
        ("PS", ["cv", "ch"]),
        ("Ω", ["ohm", "ohms"]),
        ("mΩ", ["mohm"]),
        ("lb/hp·h", ["lb/hp/h", "lb/hph", "lb/hp-h", "lb/hp-hr", "lb/(hp·h)", "lb/hp h", "lb/hp.h", "lb/hp*h"]),
        ("g/kWh", ["g/kW/h", "g/kW·h", "g/(kW·h)"]),
        ("US gal/h", ["us gal/hr", "us gph", "usgph"]),
    }.SelectMany(unit => unit.Typed, (unit, typed) => (typed, unit.Unit)).ToDictionary(pair => pair.typed, pair => pair.Unit, StringComparer.OrdinalIgnoreCase);

    /// <summary>The spelling that the readers of files know; the same text where there is no other.</summary>
    public static string Spelt(string unit) => Spellings.GetValueOrDefault(unit.Trim(), unit.Trim());
}

/// <summary>Patterns of typed values.</summary>
internal static partial class Pattern
{
    /// <summary>A number, perhaps a fraction, and perhaps a unit.</summary>
    [GeneratedRegex(
        @"^(?<number>[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?)(\s+(?<top>[0-9]{1,4}))?(/(?<over>[0-9]{1,4}))?\s*(?<unit>[^\s0-9.,+-][^\n]*)?$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    public static partial Regex NumberAndUnit();

    /// <summary>A unit of pressure with its reference.</summary>
    [GeneratedRegex(@"^(?<unit>psi|bar|kPa)\s*\(?(g|a|gauge|abs|absolute)\)?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase)]
    public static partial Regex Reference();
}
