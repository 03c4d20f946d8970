using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>Turns a plot model into an SVG element fit for inlining in a page.</summary>
internal static partial class SvgDocument
{
    public static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>Draws a model.</summary>
    /// <param name="model">What to draw.</param>
    /// <param name="height">Of the picture.</param>
    /// <param name="title">Of the picture.</param>
    /// <param name="description">What it shows, in words.</param>
    /// <param name="over">What lies over the drawing, once it is laid out: marks and values.</param>
    public static XElement Render(PlotModel model, double height, string title, string description, Func<PlotModel, IEnumerable<XElement>> over)
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
        root.SetAttributeValue("font-family", PlotStyle.Font);
        root.SetAttributeValue("font-size", PlotStyle.FontSize);
        root.Elements(Svg + "rect").FirstOrDefault()?.Remove();
        root.AddFirst(new XElement(Svg + "title", title), new XElement(Svg + "desc", description));
        RoundCoordinates(root);
        MergePolygons(root);
        PlainTexts(root);
        TakeThePagesInk(root);
        KeepOnlyPlotClips(root, model.PlotArea);
        MakeIdsUnique(root, raw + title);
        root.Elements(Svg + "g").Where(group => !group.HasElements).Remove();
        root.Add(over(model));
        return root;
    }

    /// <summary>A hundredth of a pixel cannot be seen; more digits only make the page larger.</summary>
    private static void RoundCoordinates(XElement root)
    {
        foreach (var points in root.Descendants().Attributes("points"))
        {
            points.Value = SpareDigits().Replace(points.Value, "");
        }
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

    /// <summary>What all texts share stands once, at the root. A light edge behind each letter keeps labels on a map readable over its lines.</summary>
    private static void PlainTexts(XElement root)
    {
        foreach (var text in root.Descendants(Svg + "text"))
        {
            text.Attribute("font-family")?.Remove();
            text.Attribute("font-size")?.Remove();
            text.Attributes("font-weight").Where(weight => weight.Value == "400").Remove();
            if (text.Attribute("fill")?.Value == Rgb(PlotStyle.MapInk))
            {
                text.SetAttributeValue("stroke", "#ffffff");
                text.SetAttributeValue("stroke-width", "3");
                text.SetAttributeValue("stroke-linejoin", "round");
                text.SetAttributeValue("paint-order", "stroke");
            }
        }
    }

    /// <summary>Two colours of the model stand for the page's own ink, full and thin.</summary>
    private static void TakeThePagesInk(XElement root)
    {
        string ink = Rgb(PlotStyle.Ink);
        string grid = $"stroke:{Rgb(PlotStyle.Grid)}";
        foreach (var attribute in root.DescendantsAndSelf().Attributes().Where(a => a.Name == "style" || a.Name == "fill" || a.Name == "stroke"))
        {
            attribute.Value = attribute.Value
                .Replace(grid, "stroke:currentColor;stroke-opacity:.17", StringComparison.Ordinal)
                .Replace(ink, "currentColor", StringComparison.Ordinal);
        }
    }

    private static string Rgb(OxyColor color) => string.Create(CultureInfo.InvariantCulture, $"rgb({color.R},{color.G},{color.B})");

    /// <summary>Only curves need cutting, at the plot's border. A key must not be cut where the reader's font runs wider than measured.</summary>
    private static void KeepOnlyPlotClips(XElement root, OxyRect area)
    {
        bool IsPlotArea(XElement clip)
        {
            double Of(string name) => double.Parse(clip.Element(Svg + "rect")!.Attribute(name)!.Value, CultureInfo.InvariantCulture);
            const double Near = 0.01;
            return Math.Abs(Of("x") - area.Left) < Near && Math.Abs(Of("y") - area.Top) < Near && Math.Abs(Of("width") - area.Width) < Near && Math.Abs(Of("height") - area.Height) < Near;
        }

        foreach (var clip in root.Descendants(Svg + "clipPath").Where(clip => !IsPlotArea(clip)).ToList())
        {
            string use = $"url(#{clip.Attribute("id")!.Value})";
            root.Descendants().Attributes("clip-path").Where(a => a.Value == use).Remove();
            clip.Remove();
        }

        root.Descendants(Svg + "defs").Where(defs => !defs.HasElements).Remove();
    }

    /// <summary>Several plots share one page, so the clip paths of one must not answer for another.</summary>
    private static void MakeIdsUnique(XElement root, string content)
    {
        string prefix = "fs" + Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(content)))[..10].ToLowerInvariant() + "-";
        foreach (var id in root.Descendants().Attributes("id"))
        {
            id.Value = prefix + id.Value;
        }

        foreach (var use in root.Descendants().Attributes().Where(a => a.Value.StartsWith("url(#", StringComparison.Ordinal)))
        {
            use.Value = use.Value.Replace("url(#", $"url(#{prefix}", StringComparison.Ordinal);
        }
    }

    [GeneratedRegex(@"(?<=\.\d\d)\d+")]
    private static partial Regex SpareDigits();
}
