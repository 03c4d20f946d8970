namespace FuelSizing.Interactive;

/// <summary>The look of the HTML around tables, figures and callouts, in one place.</summary>
/// <remarks>
/// Styles are inline because a notebook front end gives an output no style sheet of its own.
/// Each block states both ink and ground, so it stays readable in a dark front end; a page of our own has both in the dark too (<see cref="Palette"/>).
/// </remarks>
internal static class BlockStyle
{
    public const string Ink = $"var(--fs-ink,{Palette.Ink})";
    public const string Muted = $"var(--fs-muted,{Palette.Muted})";
    public const string Rule = $"var(--fs-rule,{Palette.Rule})";
    public const string Ground = $"var(--fs-ground,{Palette.Ground})";

    /// <summary>Widest a plot grows; its text would look oversized beyond.</summary>
    public const int FigureWidth = 540;

    private const string Font = "font-family:Arial,Helvetica,'Liberation Sans',sans-serif;";

    public const string Figure = $"margin:1em 0;padding:4px;max-width:548px;box-sizing:border-box;background:{Ground};color:{Ink};{Font}break-inside:avoid";
    public const string Caption = "font-weight:bold;font-size:1em;line-height:1.35;margin:0 0 6px;text-align:left;break-after:avoid";
    public const string Note = $"font-size:0.875em;line-height:1.4;color:{Muted};margin:6px 0 0;text-align:left";

    /// <summary>A plot has the page's own ground and ink, whatever makes these dark; a page's print may not know of it.</summary>
    public const string Plot = $"margin:1em 0;padding:4px;max-width:548px;box-sizing:border-box;background:none;color:inherit;{Font}break-inside:avoid";
    public const string PlotNote = "font-size:0.875em;line-height:1.4;margin:6px 0 0;text-align:left";
    public const string PlotTable = "border-collapse:collapse;font-size:0.8125em;line-height:1.35;font-variant-numeric:tabular-nums;background:none;color:inherit;margin:0;border:none";

    public const string TableBox = $"margin:1em 0;padding:8px;max-width:100%;box-sizing:border-box;background:{Ground};color:{Ink};{Font}";
    /// <summary>A box by whose own width its table is laid out.</summary>
    public const string Measured = "container-type:inline-size";

    public const string TableScroll = "overflow-x:auto;overflow-wrap:normal;word-break:normal";
    public const string TableGrid = "border-collapse:collapse;font-size:0.9375em;line-height:1.35;font-variant-numeric:tabular-nums;margin:0";
    public const string CalloutTitle = "margin:0;font-weight:bold;line-height:1.4";
    public const string CalloutLine = "margin:4px 0 0;line-height:1.45";

    public const string ProgressLine = $"margin:4px 0;padding:2px 4px;background:{Ground};color:{Ink};{Font}font-size:0.875em;font-variant-numeric:tabular-nums";
    public const string ProgressBar = "vertical-align:middle;width:12em";

    public const string Lines = "list-style:none;margin:4px 0;padding:0";
    public const string Line = $"margin:0;padding:5px 0;border-bottom:1px solid {Rule};break-inside:avoid";
    public const string LineHead = "display:flex;flex-wrap:wrap;justify-content:space-between;gap:0 16px;line-height:1.35;font-size:0.9375em;font-variant-numeric:tabular-nums";
    public const string LineFormula = "line-height:1.9;overflow-wrap:anywhere";
    public const string LineSource = $"font-size:0.8125em;line-height:1.35;color:{Muted};overflow-wrap:anywhere";

    public static string HeadCell(CellAlignment alignment) =>
        $"padding:5px 12px 5px 4px;background:{Ground};color:{Ink};border-bottom:2px solid {Ink};vertical-align:bottom;font-weight:bold;text-align:{Side(alignment)}";

    /// <param name="alignment">How the column lines up.</param>
    /// <param name="longest">Characters in the column's longest cell: long words get a readable width before the table scrolls.</param>
    /// <param name="columns">In the table: one of many scrolls on a phone in any case, and a narrow column of sentences would only make its rows tall.</param>
    public static string BodyCell(CellAlignment alignment, int longest, int columns) =>
        $"padding:5px 12px 5px 4px;background:{Ground};color:{Ink};border-bottom:1px solid {Rule};vertical-align:top;font-weight:normal;text-align:{Side(alignment)}"
        + (alignment == CellAlignment.Number ? ";white-space:nowrap" : longest > 60 && columns > 3 ? ";min-width:34ch" : longest > 24 ? ";min-width:18ch" : longest > 12 ? ";min-width:12ch" : ";white-space:nowrap");

    public static string CalloutBox(string edge, string ground) =>
        $"margin:1em 0;padding:10px 14px;box-sizing:border-box;border:1px solid {edge};border-left-width:6px;background:{ground};color:{Ink};{Font}overflow-wrap:break-word;break-inside:avoid";

    public static string CalloutWord(string edge) => $"color:{edge};margin-right:4px";

    public static (string Word, string Sign, string Edge, string Ground) For(CalloutKind kind) => kind switch
    {
        CalloutKind.Holds => ("Holds", "\u2713", Palette.Of(Palette.Holds), Palette.Of("#eef7f4")),
        CalloutKind.HoldsAsFarAsJudged => ("Holds as far as judged", "\u25d1", Palette.Of(Palette.AsJudged), Palette.Of("#eff5f9")),
        CalloutKind.Fails => ("Fails", "\u2717", Palette.Of(Palette.Fails), Palette.Of("#fdf1ec")),
        CalloutKind.CannotSay => ("Cannot say", "?", Palette.Of(Palette.CannotSay), Palette.Of("#f1f1f9")),
        _ => ("Caution", "!", Palette.Of(Palette.Caution), Palette.Of("#fcf6e6")),
    };

    private static string Side(CellAlignment alignment) => alignment == CellAlignment.Number ? "right" : "left";
}
