namespace FuelSizing.Interactive;

/// <summary>The colours of blocks, sheets and diagrams, in the light and in the dark, in one place.</summary>
/// <remarks>
/// <para>A block states each colour as a variable of the page with the light colour behind it: <c>var(--fs-ink,#1c2530)</c>. A report and a sheet on a page of its own give the
/// variables their dark colours where the reader's system is dark (<see cref="InTheDark"/>), on a screen alone: paper is white. A notebook's front end does not know of the variables,
/// so a block there is light on its own ground whatever the front end is.</para>
/// <para>Ink, muted ink and the words of a verdict have a contrast of 4.5 and more on their ground, in both.</para>
/// </remarks>
internal static class Palette
{
    public const string Ink = "#1c2530";
    public const string Muted = "#4a5663";
    public const string Rule = "#c3cad2";
    public const string Ground = "#ffffff";

    /// <summary>Fuel that stands in a tank.</summary>
    public const string Wet = "#d9e6ee";
    public const string Holds = "#0b5d4b";
    public const string AsJudged = "#2f5d7c";
    public const string Fails = "#9b2c0a";
    public const string CannotSay = "#4a4f8c";
    public const string Caution = "#755300";

    private static readonly (string Name, string Light, string Dark)[] _all =
    [
        ("ink", Ink, "#e6ebf0"),
        ("muted", Muted, "#aab5c0"),
        ("rule", Rule, "#46515c"),
        ("ground", Ground, "#14181d"),
        ("wet", Wet, "#2a4656"),
        ("holds", Holds, "#6ed0b6"),
        ("holds-ground", "#eef7f4", "#12241f"),
        ("as-judged", AsJudged, "#8ec1e4"),
        ("as-judged-ground", "#eff5f9", "#14222c"),
        ("fails", Fails, "#f59a78"),
        ("fails-ground", "#fdf1ec", "#2b1812"),
        ("cannot-say", CannotSay, "#b4b8f2"),
        ("cannot-say-ground", "#f1f1f9", "#1d1e2f"),
        ("caution", Caution, "#e6bf5c"),
        ("caution-ground", "#fcf6e6", "#262010"),
    ];

    /// <summary>The rule by which a page of its own goes dark with the reader's system; in print it stays light.</summary>
    public static string InTheDark { get; } =
        $"@media screen and (prefers-color-scheme:dark){{:root{{color-scheme:dark;background:var(--fs-ground);{string.Join(';', _all.Select(colour => $"--fs-{colour.Name}:{colour.Dark}"))}}}}}";

    /// <summary>A colour as a style states it: the page's own where the page has one.</summary>
    /// <param name="light">One of the palette's.</param>
    public static string Of(string light) => $"var(--fs-{_all.Single(colour => colour.Light == light).Name},{light})";

    /// <summary>True of a colour of the palette.</summary>
    public static bool Has(string colour) => _all.Any(one => one.Light == colour);
}
