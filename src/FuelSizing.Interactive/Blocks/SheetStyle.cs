namespace FuelSizing.Interactive;

/// <summary>The look of a sizing sheet: small print on one page, plain enough for grey paper.</summary>
internal static class SheetStyle
{
    /// <summary>The class of a sheet that stands among other blocks.</summary>
    public const string BlockClass = "sizing-sheet";

    /// <summary>All texts are escaped; a browser is told besides to run nothing and to load nothing.</summary>
    public const string ContentPolicy = "default-src 'none'; style-src 'unsafe-inline'; form-action 'none'; base-uri 'none'";

    private const string Text =
        $"background:{BlockStyle.Ground};color:{BlockStyle.Ink};font:9.8px/1.28 Arial,Helvetica,'Liberation Sans',sans-serif";

    /// <summary>For a page of its own.</summary>
    public static string Page { get; } =
        $"{Palette.InTheDark}@page{{size:auto;margin:9mm}}body{{margin:0 auto;padding:12px;max-width:196mm;{Text}}}"
        + "@media print{body{padding:0;max-width:none}}"
        + Parts("body");

    /// <summary>For a block among others, which it must leave alone.</summary>
    public static string Block { get; } =
        $".{BlockClass}{{margin:1em 0;padding:10px;border:1px solid {BlockStyle.Rule};{Text}}}" + Parts($".{BlockClass}");

    private static string Parts(string scope) =>
        $"{scope} h1{{font-size:15px;margin:0}}{scope} header p{{margin:1px 0 0;color:{BlockStyle.Muted}}}"
        + $"{scope} .verdict{{margin:6px 0;padding:5px 8px;border:1px solid;border-left-width:5px;font-size:11px}}"
        + $"{scope} h2{{font-size:11px;margin:7px 0 2px;border-bottom:1.5px solid {BlockStyle.Ink}}}"
        + $"{scope} table{{border-collapse:collapse;width:100%;margin:0}}"
        + $"{scope} th,{scope} td{{padding:1px 8px 1px 0;border-bottom:.5px solid {BlockStyle.Rule};vertical-align:top;text-align:left;font-weight:normal}}"
        + $"{scope} .short{{white-space:nowrap}}{scope} th{{white-space:nowrap;color:{BlockStyle.Muted}}}{scope} tr{{break-inside:avoid}}"
        + $"{scope} .form th{{white-space:normal;text-align:right;vertical-align:bottom}}{scope} .form td{{text-align:right;padding:3px 6px 3px 0;white-space:nowrap}}"
        + $"{scope} .form .blank{{border:1px solid {BlockStyle.Muted};min-width:5.5em;height:1.28em}}"

        // Where there is less room than on paper, in a notebook or on a phone: cells wrap, and then stand under each other with their column's name.
        + $"{scope}{{container-type:inline-size}}@container (max-width:735px){{{scope} .form td,{scope} .short,{scope} th{{white-space:normal}}}}"
        + $"@container (max-width:560px){{{scope} .form,{scope} .form tbody,{scope} .form tr{{display:block}}{scope} .form thead{{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}}"
        + $"{scope} .form tr{{padding:4px 0;border-bottom:1px solid {BlockStyle.Muted}}}{scope} .form td{{display:flex;justify-content:space-between;gap:12px;border:0;padding:1px 0}}"
        + $"{scope} .form td::before{{content:attr(data-of);color:{BlockStyle.Muted};text-align:left}}{scope} .form .blank{{border:0;border-bottom:1px solid {BlockStyle.Muted}}}"
        + $"{scope} section table:not(.form) tr{{display:block;padding:2px 0}}{scope} section table:not(.form) :is(th,td){{display:block;border:0;padding:0}}}}";
}
