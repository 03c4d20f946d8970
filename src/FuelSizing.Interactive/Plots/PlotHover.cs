using System.Globalization;
using System.Xml.Linq;
using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>Areas of a drawing that nothing is seen of, each with a title that a browser shows where the pointer rests: values without a script.</summary>
internal static class PlotHover
{
    /// <summary>Strips across a plot of lines; more would be too narrow to point at, and each costs the page some bytes.</summary>
    public const int Strips = 32;

    /// <summary>All areas of a drawing, in one group.</summary>
    public static XElement Group(IEnumerable<XElement> areas) => new(
        SvgDocument.Svg + "g",
        new XAttribute("class", "values"),
        new XAttribute("fill", "none"),
        new XAttribute("pointer-events", "all"),
        areas);

    /// <summary>One area; at least so large that it can be pointed at.</summary>
    public static XElement Area(OxyRect box, string title)
    {
        const double Smallest = 6;
        double width = Math.Max(box.Width, Smallest);
        double height = Math.Max(box.Height, Smallest);
        static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
        return new XElement(
            SvgDocument.Svg + "rect",
            new XAttribute("x", Number(box.Center.X - (width / 2))),
            new XAttribute("y", Number(box.Center.Y - (height / 2))),
            new XAttribute("width", Number(width)),
            new XAttribute("height", Number(height)),
            new XElement(SvgDocument.Svg + "title", title));
    }

    /// <summary>Where strips stand over a plot of lines: at the lines' own positions where these are few, else evenly.</summary>
    /// <returns>The middle of each, and its ends half way to its neighbours.</returns>
    public static IReadOnlyList<(double From, double Middle, double To)> StripsOver(IEnumerable<double> positions, double low, double high)
    {
        double[] places = [.. positions.Where(place => place >= low && place <= high).Distinct().Order()];
        if (places.Length == 0)
        {
            return [];
        }

        if (places.Length > Strips)
        {
            (double first, double last) = (places[0], places[^1]);
            places = [.. Enumerable.Range(0, Strips).Select(strip => first + ((last - first) * strip / (Strips - 1)))];
        }

        return [.. places.Select((place, i) => (
            i == 0 ? low : (places[i - 1] + place) / 2,
            place,
            i == places.Length - 1 ? high : (place + places[i + 1]) / 2))];
    }
}
