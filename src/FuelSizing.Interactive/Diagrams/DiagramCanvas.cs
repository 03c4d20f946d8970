using System.Globalization;
using System.Xml.Linq;
using FuelSizing.Checks;

namespace FuelSizing.Interactive;

/// <summary>How a line of a diagram is drawn: each kind differs by dash and width, not by colour alone.</summary>
internal enum DiagramStroke
{
    /// <summary>A fuel line.</summary>
    Fuel,

    /// <summary>The outline of a symbol.</summary>
    Outline,

    /// <summary>A pilot line: pressure, no flow.</summary>
    Pilot,

    /// <summary>An electrical signal.</summary>
    Signal,

    /// <summary>A detail within a symbol.</summary>
    Thin,
}

/// <summary>Takes the shapes and texts of a diagram: lines of flow below, parts above them, each part a group with its title.</summary>
internal sealed class DiagramCanvas
{
    /// <summary>Height of a line of text.</summary>
    public const double LineHeight = 17;

    /// <summary>Of the ground, inside symbols that fuel lines end at.</summary>
    public const string Ground = Palette.Ground;

    public const string Ink = Palette.Ink;

    /// <summary>Fuel that stands in a tank.</summary>
    public const string Wet = Palette.Wet;

    public static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private readonly XElement _lines = new(Svg + "g");
    private readonly XElement _parts = new(Svg + "g");
    private XElement _current;

    public DiagramCanvas() => _current = _lines;

    public IEnumerable<XElement> Content => [_lines, _parts];

    /// <summary>Draws a part: a group of its own, with its title.</summary>
    public void Part(DiagramPart part, Action draw)
    {
        XElement outer = _current;
        _current = new XElement(Svg + "g", new XAttribute("data-part", Code(part.Symbol)), new XElement(Svg + "title", part.Title));
        _parts.Add(_current);
        draw();
        _current = outer;
    }

    public void Line(DiagramStroke stroke, params (double X, double Y)[] points) =>
        Add("polyline", stroke, "none", new XAttribute("points", Points(points)));

    public void Polygon(string fill, params (double X, double Y)[] points) =>
        Add("polygon", DiagramStroke.Outline, fill, new XAttribute("points", Points(points)));

    public void Circle(double x, double y, double radius, string fill, DiagramStroke stroke = DiagramStroke.Outline) =>
        Add("circle", stroke, fill, new XAttribute("cx", Number(x)), new XAttribute("cy", Number(y)), new XAttribute("r", Number(radius)));

    public void Rectangle(double x, double y, double width, double height, string fill, DiagramStroke stroke = DiagramStroke.Outline) => Add(
        "rect",
        stroke,
        fill,
        new XAttribute("x", Number(x)),
        new XAttribute("y", Number(y)),
        new XAttribute("width", Number(width)),
        new XAttribute("height", Number(height)));

    /// <summary>A filled area without an outline.</summary>
    public void Area(string fill, params (double X, double Y)[] points) =>
        _current.Add(new XElement(Svg + "polygon", new XAttribute("points", Points(points)), new XAttribute("fill", fill)));

    /// <summary>A joint of lines, as against lines that cross.</summary>
    public void Joint(double x, double y) => Area(Ink, x, y, 3.2);

    /// <summary>A filled arrowhead on a line, its middle at a point.</summary>
    /// <param name="x">Across.</param>
    /// <param name="y">Down.</param>
    /// <param name="toX">1 to the right, −1 to the left, 0 else.</param>
    /// <param name="toY">1 down, −1 up, 0 else.</param>
    public void Arrow(double x, double y, int toX, int toY) => Area(
        Ink,
        (x + (toX * 5), y + (toY * 5)),
        (x - (toX * 5) - (toY * 4.5), y - (toY * 5) - (toX * 4.5)),
        (x - (toX * 5) + (toY * 4.5), y - (toY * 5) + (toX * 4.5)));

    public void Text(string text, double x, double baseline, bool bold, string colour = Ink, string anchor = "start", double size = PlotStyle.FontSize) => _current.Add(new XElement(
        Svg + "text",
        new XAttribute("x", Number(x)),
        new XAttribute("y", Number(baseline)),
        new XAttribute("font-size", Number(size)),
        new XAttribute("fill", colour),
        bold ? new XAttribute("font-weight", "bold") : null,
        anchor == "start" ? null : new XAttribute("text-anchor", anchor),
        text));

    /// <summary>A frame that points at the symbol of the part that is marked: heavy where it fails, dashed where it cannot be judged, thin else.</summary>
    public void Frame(DiagramMark mark, double left, double top, double right, double bottom, double? at)
    {
        const double Point = 7;
        (double X, double Y)[] pointer = at is { } height && Math.Clamp(height, top + Point, bottom - Point) is var near
            ? [(left, near + Point), (left - Point, near), (left, near - Point)]
            : [];
        XElement frame = new(
            Svg + "polygon",
            new XAttribute("points", Points([(left, top), (right, top), (right, bottom), (left, bottom), .. pointer])),
            new XAttribute("fill", "none"),
            new XAttribute("stroke", ColourOf(mark)),
            new XAttribute("stroke-width", mark.Outcome == Outcome.Fails ? "3" : mark.Outcome == Outcome.CannotSay ? "2" : "1.2"),
            mark.Outcome == Outcome.CannotSay ? new XAttribute("stroke-dasharray", "6 4") : null);
        _current.Add(frame);
    }

    /// <summary>The colour of a mark, which its words and its frame say too.</summary>
    public static string ColourOf(DiagramMark mark) => mark.Outcome switch
    {
        Outcome.Fails => Palette.Fails,
        Outcome.CannotSay => Palette.CannotSay,
        _ => Palette.AsJudged,
    };

    /// <summary>Lets a drawing follow the page's colours. Attributes keep the light ones, for a renderer that knows no variables.</summary>
    public static void TakeThePagesColours(XElement root)
    {
        foreach (XElement shape in root.Descendants())
        {
            string[] styles =
            [
                .. from attribute in shape.Attributes()
                   where attribute.Name.LocalName is "fill" or "stroke" && Palette.Has(attribute.Value)
                   select $"{attribute.Name.LocalName}:{Palette.Of(attribute.Value)}",
            ];
            if (styles.Length > 0)
            {
                shape.SetAttributeValue("style", string.Join(';', styles));
            }
        }
    }

    private static string Code(DiagramSymbol symbol) => symbol switch
    {
        DiagramSymbol.CheckValve => "check-valve",
        DiagramSymbol.PumpController => "pump-controller",
        DiagramSymbol.SurgeTank => "surge-tank",
        _ => symbol.ToString().ToLowerInvariant(),
    };

    private static string Points(params (double X, double Y)[] points) => string.Join(' ', points.Select(point => $"{Number(point.X)},{Number(point.Y)}"));

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private void Area(string fill, double x, double y, double radius) => _current.Add(new XElement(
        Svg + "circle", new XAttribute("cx", Number(x)), new XAttribute("cy", Number(y)), new XAttribute("r", Number(radius)), new XAttribute("fill", fill)));

    private void Add(string element, DiagramStroke stroke, string fill, params XAttribute[] place)
    {
        (string width, string? dash) = stroke switch
        {
            DiagramStroke.Fuel => ("2.4", null),
            DiagramStroke.Outline => ("1.8", null),
            DiagramStroke.Pilot => ("1.5", "6 4"),
            DiagramStroke.Signal => ("1.8", "1.5 4"),
            _ => ("1.2", (string?)null),
        };
        _current.Add(new XElement(
            Svg + element,
            place,
            new XAttribute("fill", fill),
            new XAttribute("stroke", Ink),
            new XAttribute("stroke-width", width),
            dash is null ? null : new XAttribute("stroke-dasharray", dash)));
    }
}
