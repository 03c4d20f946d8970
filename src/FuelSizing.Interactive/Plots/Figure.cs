using System.Xml.Linq;
using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>The HTML around a plot: its title above, its note below, both at the page's own text size.</summary>
internal static class Figure
{
    // Written in every figure, for each may stand on a page alone. Cells are named by their kind: a style of its own in each would double a table.
    private const string PlotRules =
        ".fuel-plot table :is(th,td){padding:2px 10px 2px 0;text-align:right;vertical-align:bottom;border-bottom:1px solid rgba(128,136,146,.45);background:none;color:inherit;max-width:none}"
        + ".fuel-plot table td{white-space:nowrap}.fuel-plot table .text{text-align:left;white-space:normal;min-width:7em}"
        + "@media print{.fuel-plot{color:#000!important;background:#fff!important;print-color-adjust:exact}.fuel-plot svg{max-width:420px!important}.fuel-plot details:not([open]),.fuel-plot details a{display:none}}";

    /// <summary>A drawing on a ground of its own.</summary>
    public static string Html(string title, XElement svg, IEnumerable<string> notes) =>
        new XElement("figure",
            new XAttribute("style", BlockStyle.Figure),
            new XElement("figcaption", new XAttribute("style", BlockStyle.Caption), VisibleText.Unbroken(title)),
            svg,
            notes.Select(note => new XElement("p", new XAttribute("style", BlockStyle.Note), VisibleText.Unbroken(note))))
        .ToString(SaveOptions.DisableFormatting);

    /// <summary>A plot in the page's own ink, with its data to unfold.</summary>
    public static string Html(string title, XElement svg, IEnumerable<string> notes, PlotData data, TextStyle style) =>
        new XElement("figure",
            new XAttribute("class", "fuel-plot"),
            new XAttribute("style", BlockStyle.Plot),
            new XElement("style", PlotRules),
            new XElement("figcaption", new XAttribute("style", BlockStyle.Caption), VisibleText.Unbroken(title)),
            svg,
            notes.Select(note => new XElement("p", new XAttribute("style", BlockStyle.PlotNote), VisibleText.Unbroken(note))),
            data.Html(title, style))
        .ToString(SaveOptions.DisableFormatting);
}
