using System.Globalization;
using System.Text;
using System.Xml.Linq;
using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>Readings as one path of strokes without length, whose ends are the marks: a few bytes a reading.</summary>
/// <param name="points">Readings, in the units of the axes.</param>
/// <param name="color">Of the marks.</param>
/// <param name="shape">Place in the shapes: dots, squares, upright crosses, slanted crosses.</param>
internal sealed class ReadingMarks(IReadOnlyList<(double X, double Y)> points, OxyColor color, int shape)
{
    private const int Many = 120;

    /// <summary>Where the key shows a mark, once it is laid out.</summary>
    public ScreenPoint? KeyAt { get; set; }

    /// <summary>Writes the marks, and two in the key.</summary>
    public IEnumerable<XElement> Paths(PlotModel model)
    {
        yield return Path(
            "readings",
            points.Select(point => new ScreenPoint(model.DefaultXAxis.Transform(point.X), model.DefaultYAxis.Transform(point.Y))),
            points.Count > Many ? 1.5 : 3);
        if (KeyAt is { } key)
        {
            yield return Path("key", [key, new ScreenPoint(key.X + 14, key.Y)], 2.5);
        }
    }

    private XElement Path(string name, IEnumerable<ScreenPoint> places, double size)
    {
        var path = new StringBuilder();
        foreach (ScreenPoint place in places)
        {
            Append(path, place, size);
        }

        bool isCross = shape % 4 > 1;
        return new XElement(
            SvgDocument.Svg + "path",
            new XAttribute("class", name),
            new XAttribute("d", path.ToString()),
            new XAttribute("fill", "none"),
            new XAttribute("stroke", $"#{color.R:x2}{color.G:x2}{color.B:x2}"),
            new XAttribute("stroke-width", (isCross ? 1.8 : 2 * size).ToString("0.#", CultureInfo.InvariantCulture)),
            new XAttribute("stroke-linecap", shape % 4 == 0 ? "round" : "square"));
    }

    private void Append(StringBuilder path, ScreenPoint at, double size) => path.Append((shape % 4) switch
    {
        2 => string.Create(CultureInfo.InvariantCulture, $"M{at.X - size:0.#} {at.Y:0.#}h{2 * size:0.#}M{at.X:0.#} {at.Y - size:0.#}v{2 * size:0.#}"),
        3 => string.Create(CultureInfo.InvariantCulture, $"M{at.X - size:0.#} {at.Y - size:0.#}l{2 * size:0.#} {2 * size:0.#}M{at.X - size:0.#} {at.Y + size:0.#}l{2 * size:0.#} {-2 * size:0.#}"),
        _ => string.Create(CultureInfo.InvariantCulture, $"M{at.X:0.#} {at.Y:0.#}h0"),
    });
}
