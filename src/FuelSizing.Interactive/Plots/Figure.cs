using System.Xml.Linq;

namespace FuelSizing.Interactive;

/// <summary>The HTML around a plot: its title above, its note below, both at the page's own text size.</summary>
internal static class Figure
{
    public static string Html(string title, XElement svg, IEnumerable<string> notes) =>
        new XElement("figure",
            new XAttribute("style", BlockStyle.Figure),
            new XElement("figcaption", new XAttribute("style", BlockStyle.Caption), VisibleText.Unbroken(title)),
            svg,
            notes.Select(note => new XElement("p", new XAttribute("style", BlockStyle.Note), VisibleText.Unbroken(note))))
        .ToString(SaveOptions.DisableFormatting);
}
