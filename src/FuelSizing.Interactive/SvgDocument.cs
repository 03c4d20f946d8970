using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Xml.Linq;
using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>Turns a plot model into an SVG element fit for inlining in a page.</summary>
internal static class SvgDocument
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static XElement Render(PlotModel model, double height, string title, string description)
    {
        string raw = new SvgExporter { Width = PlotStyle.Width, Height = height, IsDocument = false, TextMeasurer = new PlotRuler() }.ExportToString(model);
        if (model.GetLastPlotException() is { } failure)
        {
            // The plot library draws its own failure into the picture; a reader must not take that for a result.
            throw new InvalidOperationException($"The plot '{title}' could not be drawn: {failure.Message}", failure);
        }

        var root = XElement.Parse(raw);
        root.Attributes().Where(a => a.Name == "width" || a.Name == "height" || a.Name == "version").Remove();
        root.SetAttributeValue("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {PlotStyle.Width:0.##} {height:0.##}"));
        root.SetAttributeValue("role", "img");
        root.SetAttributeValue("style", $"display:block;width:100%;height:auto;max-width:{BlockStyle.FigureWidth}px");
        root.AddFirst(new XElement(Svg + "title", title), new XElement(Svg + "desc", description));
        MergePolygons(root);
        HaloTexts(root);
        MakeIdsUnique(root, raw + title);
        return root;
    }

    /// <summary>Joins neighbouring polygons of one style into one path: far smaller, and without hairlines between them.</summary>
    private static void MergePolygons(XElement root)
    {
        foreach (var parent in root.Descendants(Svg + "polygon").Select(polygon => polygon.Parent!).Distinct().ToList())
        {
            var merged = new List<XElement>();
            var path = new StringBuilder();
            string? style = null;
            void Close()
            {
                if (path.Length > 0)
                {
                    merged.Add(new XElement(Svg + "path", new XAttribute("d", path.ToString()), style is null ? null : new XAttribute("style", style)));
                    path.Clear();
                }
            }

            foreach (var child in parent.Elements())
            {
                bool isPolygon = child.Name == Svg + "polygon";
                if (!isPolygon || child.Attribute("style")?.Value != style)
                {
                    Close();
                    style = child.Attribute("style")?.Value;
                }

                if (isPolygon)
                {
                    path.Append('M').AppendJoin('L', child.Attribute("points")!.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Append('Z');
                }
                else
                {
                    merged.Add(child);
                }
            }

            Close();
            parent.ReplaceNodes(merged);
        }
    }

    /// <summary>A white edge behind each letter keeps labels readable over lines and dark map colours.</summary>
    private static void HaloTexts(XElement root)
    {
        foreach (var text in root.Descendants(Svg + "text"))
        {
            text.SetAttributeValue("stroke", "#ffffff");
            text.SetAttributeValue("stroke-width", "3");
            text.SetAttributeValue("stroke-linejoin", "round");
            text.SetAttributeValue("paint-order", "stroke");
        }
    }

    /// <summary>Several plots share one page, so the clip paths of one must not answer for another.</summary>
    private static void MakeIdsUnique(XElement root, string content)
    {
        string prefix = "fs" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(content)))[..10] + "-";
        foreach (var id in root.Descendants().Attributes("id"))
        {
            id.Value = prefix + id.Value;
        }

        foreach (var use in root.Descendants().Attributes().Where(a => a.Value.StartsWith("url(#", StringComparison.Ordinal)))
        {
            use.Value = use.Value.Replace("url(#", $"url(#{prefix}", StringComparison.Ordinal);
        }
    }
}
