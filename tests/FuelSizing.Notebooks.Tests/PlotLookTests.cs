using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FuelSizing.Interactive;

namespace FuelSizing.Notebooks.Tests;

/// <summary>What a drawing must show, and what it must not, whatever the page around it looks like.</summary>
public partial class PlotLookTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly PlotAxis Speed = new("Engine speed", "rev/min");
    private static readonly PlotAxis Duty = new("Duty cycle", "%");

    [Fact]
    public void ComputedLine_HasNoMarks_AndReadingsHaveNoLine()
    {
        double[] x = [1000, 2000, 3000, 4000];
        var computed = Of(new LinePlot("Duty", Speed, Duty, [new PlotLine("computed", x, [10, 20, 30, 90])]));
        var measured = Of(new LinePlot("Duty", Speed, Duty, [PlotLine.Measured("measured", x, [10, double.NaN, 30, 90])]));

        Assert.Empty(computed.Descendants(Svg + "ellipse").Concat(computed.Descendants(Svg + "circle")).Concat(computed.Descendants(Svg + "polygon")));
        Assert.Empty(Marks(computed));
        Assert.NotEmpty(Curves(computed));

        Assert.Equal(3, Marks(measured).Count);
        Assert.Empty(Curves(measured));
    }

    /// <summary>Dense enough that a thinned drawing would end early, dashed so that the last gap would hide the end.</summary>
    [Fact]
    public void Line_IsDrawnFromItsFirstPointToItsLast()
    {
        double[] x = [.. Enumerable.Range(0, 5000).Select(i => i * 0.4)];
        var svg = Of(new LinePlot("Duty", Speed, Duty, [new PlotLine("a", [0, 1999.6], [0, 0]), new PlotLine("b", x, [.. x.Select(place => place / 100)])]));
        string dashed = Color(svg, 1);
        (double X, double Y)[][] strokes = [.. Curves(svg, dashed)];
        (double X, double Y)[] whole = strokes.MaxBy(stroke => stroke.Length)!;
        (double X, double Y)[] full = Curves(svg, Color(svg, 0)).First();

        Assert.Equal(full[0].X, whole[0].X, 1);
        Assert.Equal(full[^1].X, whole[^1].X, 1);

        // A full stroke at either end.
        Assert.Contains(svg.Descendants(Svg + "polyline"), stroke => IsFull(stroke, dashed) && Near(Points(stroke)[0], whole[0]));
        Assert.Contains(svg.Descendants(Svg + "polyline"), stroke => IsFull(stroke, dashed) && Near(Points(stroke)[0], whole[^1]));

        static bool IsFull(XElement stroke, string color) =>
            stroke.Attribute("style")!.Value is var style && style.Contains(color, StringComparison.Ordinal) && !style.Contains("dasharray", StringComparison.Ordinal);
        static bool Near((double X, double Y) one, (double X, double Y) other) => Math.Abs(one.X - other.X) < 0.2 && Math.Abs(one.Y - other.Y) < 0.2;
    }

    [Fact]
    public void LoneValueBetweenGaps_IsSeen()
    {
        var svg = Of(new LinePlot("Duty", Speed, Duty, [new PlotLine("a", [0, 1, 2, 3, 4], [1, double.NaN, 5, double.NaN, 2])]));

        // Three pieces of one value each, none of no length.
        Assert.Equal(3, Curves(svg).Count(stroke => stroke[^1].X - stroke[0].X > 4));
    }

    [Fact]
    public void Values_StandInTitles_AtTheLinesOwnPoints()
    {
        var svg = Of(new LinePlot(
            "Duty",
            Speed,
            Duty,
            [new PlotLine("dense", [1000, 2000, 3000], [10, 20, 45.5]), new PlotLine("sparse", [1000, 3000], [50, 70]), PlotLine.Measured("read", [2000, 2100], [31, 33])]));

        string[] titles = Titles(svg);
        Assert.Contains("Engine speed 2,000 rev/min\ndense: 20 %\nsparse: 60 %\nread: 31 %", titles);
        Assert.Contains("Engine speed 3,000 rev/min\ndense: 45.5 %\nsparse: 70 %", titles);
    }

    [Fact]
    public void Values_OfBarsBinsAndMaps_StandInTitles()
    {
        Assert.Contains("BSFC\nlow from 80 to 76 %", Titles(Of(new BarPlot("Duty", Duty, ["low"], [new PlotBarRow("BSFC", new PlotBar(0, 80, 76))]))));
        Assert.Contains(Titles(Of(new HistogramPlot("Duty", Duty, [81, 81, 82, 83]))), title => title.EndsWith(": 50 % of the samples", StringComparison.Ordinal));
        string[] map = Titles(Of(new MapPlot("Duty", Speed, new PlotAxis("Boost", "bar"), Duty, [1000, 2000], [0, 0.5, 1], new double[,] { { 10, 20, double.NaN }, { 30, 50, 80 } })));
        Assert.Contains("2,000 rev/min, 0.5 bar: 50 %", map);
        Assert.Contains("1,000 rev/min, 1 bar: not covered", map);
    }

    /// <summary>A plot of thousands of points has no more places to point at than one of a few.</summary>
    [Fact]
    public void Values_OfADensePlot_AreBounded()
    {
        double[] x = [.. Enumerable.Range(0, 20_000).Select(i => (double)i)];
        string svg = new LinePlot("Duty", Speed, Duty, [new PlotLine("a", x, x)]).ToSvg();

        Assert.InRange(Titles(XElement.Parse(svg)).Length, 10, PlotHover.Strips);
        Assert.InRange(svg.Length, 1, 40_000);
    }

    /// <summary>In a dark page, and in print, the ink is the page's: nothing may state its own ground or ink.</summary>
    [Fact]
    public void Plots_TakeThePagesInk()
    {
        foreach (IDisplayBlock plot in Plots())
        {
            var figure = XElement.Parse(plot.ToHtml());
            var svg = figure.Element(Svg + "svg")!;

            Assert.Contains("color:inherit", figure.Attribute("style")!.Value, StringComparison.Ordinal);
            Assert.Contains("background:none", figure.Attribute("style")!.Value, StringComparison.Ordinal);
            Assert.Contains("@media print{.fuel-plot{color:#000!important;background:#fff!important", figure.Element("style")!.Value, StringComparison.Ordinal);
            Assert.DoesNotContain(svg.Descendants().Attributes(), a => a.Value.Contains("rgb(1,2,", StringComparison.Ordinal));
            Assert.DoesNotContain(svg.Elements(Svg + "rect"), _ => true);
            foreach (var text in svg.Descendants(Svg + "text").Where(text => text.Attribute("stroke") is null))
            {
                Assert.Equal("currentColor", text.Attribute("fill")?.Value);
            }
        }
    }

    /// <summary>Lines must be told from a light and from a dark page: a contrast of 3 to either, WCAG 2.2, criterion 1.4.11.</summary>
    [Theory]
    [InlineData(0xff)]
    [InlineData(0x1e)]
    [InlineData(0x11)]
    public void LineColours_StandOutFromLightAndDark(int ground)
    {
        foreach (OxyPlot.OxyColor color in Enumerable.Range(0, PlotStyle.MaximumLines).Select(i => PlotStyle.ForLine(i).Color).Append(PlotStyle.Limit).Append(PlotStyle.Hatch))
        {
            double one = Luminance(color.R, color.G, color.B);
            double other = Luminance((byte)ground, (byte)ground, (byte)ground);
            Assert.InRange((Math.Max(one, other) + 0.05) / (Math.Min(one, other) + 0.05), 3, 21);
        }

        // Relative luminance as WCAG 2.2 defines it.
        static double Luminance(params byte[] rgb)
        {
            double[] linear = [.. rgb.Select(part => part / 255.0).Select(part => part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4))];
            return (0.2126 * linear[0]) + (0.7152 * linear[1]) + (0.0722 * linear[2]);
        }
    }

    /// <summary>At 390 px a report leaves 358 px to a drawing.</summary>
    [Fact]
    public void Texts_OnAPhone_AreAtLeastNinePixels()
    {
        foreach (IDisplayBlock plot in Plots())
        {
            var svg = XElement.Parse(plot.ToHtml()).Element(Svg + "svg")!;
            double width = double.Parse(svg.Attribute("viewBox")!.Value.Split(' ')[2], CultureInfo.InvariantCulture);
            double size = double.Parse(svg.Attribute("font-size")!.Value, CultureInfo.InvariantCulture);

            Assert.DoesNotContain(svg.Descendants(Svg + "text"), text => text.Attribute("font-size") is not null);
            Assert.InRange(size * 358 / width, 9, 20);
        }
    }

    /// <summary>Neither base, limit nor grid runs through the name of a row.</summary>
    [Fact]
    public void NamesOfRows_AreStruckThroughByNoLine()
    {
        string[] names = ["BSFC, 426 to 484 g/kWh, of the engine as it was measured", "injector flow × 96.4 to 103.6 %"];
        var svg = Of(new BarPlot("Duty", Duty, ["low", "high"], [.. names.Select(name => new PlotBarRow(name, new PlotBar(0, 80, 60), new PlotBar(1, 80, 84)))])
            .WithBase("nominal 80 %", 80).WithLimit("limit 66 %", 66));
        var ruler = new PlotRuler();
        int uprights = 0;
        foreach (var stroke in svg.Descendants(Svg + "polyline").Select(Points).Where(points => points.Length == 2 && Math.Abs(points[0].X - points[1].X) < 0.01))
        {
            uprights++;
            foreach (var text in svg.Descendants(Svg + "text").Where(text => names.Contains(text.Value)))
            {
                double[] at = [.. text.Attribute("transform")!.Value["translate(".Length..^1].Split(',').Select(part => double.Parse(part, CultureInfo.InvariantCulture))];
                double width = ruler.MeasureText(text.Value, PlotStyle.Font, PlotStyle.FontSize, 400).Width;
                (double top, double bottom) = (at[1] + 3, at[1] + PlotStyle.FontSize - 2);
                bool over = stroke[0].X > at[0] && stroke[0].X < at[0] + width && Math.Min(stroke[0].Y, stroke[1].Y) < bottom && Math.Max(stroke[0].Y, stroke[1].Y) > top;
                Assert.False(over, $"a line at {stroke[0].X} strikes through '{text.Value}'");
            }
        }

        Assert.InRange(uprights, 8, 60);
    }

    /// <summary>Four labels for which no places without a crossing were found: each was then struck through by another's pole.</summary>
    [Fact]
    public void Flags_ThatHardlyFit_LieOnNoPole()
    {
        (double Pole, string Label)[] flags = [(143, "5th percentile 71.9"), (212, "median 77.2"), (306, "95th percentile 84.1"), (319, "limit 85 %*")];

        IReadOnlyList<FlagPlace> places = FlagLayout.Of(flags);

        var ruler = new PlotRuler();
        for (int one = 0; one < flags.Length; one++)
        {
            // The width of the letters themselves, without the ruler's allowance for wider fonts.
            double width = ruler.MeasureText(flags[one].Label, PlotStyle.Font, PlotStyle.FontSize, 700).Width / 1.15;
            double left = places[one].ToTheRight ? flags[one].Pole + FlagLayout.Gap : flags[one].Pole - FlagLayout.Gap - width;
            Assert.InRange(left, 0, PlotStyle.Width - width);
            for (int other = 0; other < flags.Length; other++)
            {
                Assert.False(
                    other != one && places[other].Lane >= places[one].Lane && flags[other].Pole > left && flags[other].Pole < left + width,
                    $"the pole of '{flags[other].Label}' runs through '{flags[one].Label}'");
            }
        }
    }

    [Theory]
    [InlineData(new double[] { 100, 100, 100 })]
    [InlineData(new double[] { 20, 21, 290, 291, 292 })]
    [InlineData(new double[] { 5 })]
    public void Letters_AtOneHeight_AreMovedApart(double[] wanted)
    {
        double[] places = [.. LineLetters.Spread(wanted, 20, 292).Order()];

        Assert.All(places, place => Assert.InRange(place, 20, 292));
        Assert.All(places.Zip(places.Skip(1)), pair => Assert.True(pair.Second - pair.First > 12.5));
    }

    private static IEnumerable<IDisplayBlock> Plots() =>
    [
        new LinePlot("Duty", Speed, Duty, [new PlotLine("a", [1000, 2000], [10, 20]), PlotLine.Measured("b", [1000, 2000], [11, 19])]).WithLimit("limit 85 %", 85).WithReference("aim", 50).WithPoint("here", 1500, 15),
        new MapPlot("Duty", Speed, new PlotAxis("Boost", "bar"), Duty, [1000, 2000], [0, 1], new double[,] { { 10, 20 }, { 30, 95 } }).WithLimit("limit 85 %", 85).WithPoint("here", 1500, 0.5),
        new HistogramPlot("Duty", Duty, [81, 84, 82, 90, 83, 83.5]).WithUpperLimit("limit 85 %", 85).WithMark("median", 83),
        new BarPlot("Duty", Duty, ["low", "high"], [new PlotBarRow("BSFC", new PlotBar(0, 80, 78), new PlotBar(1, 80, 84, (83, 86)))]).WithBase("nominal", 80).WithLimit("limit", 85),
    ];

    private static XElement Of(IDisplayBlock plot) => XElement.Parse(plot.ToHtml()).Element(Svg + "svg")!;

    private static string[] Titles(XElement svg) => [.. svg.Elements(Svg + "g").Single(group => group.Attribute("class")?.Value == "values").Descendants(Svg + "title").Select(title => title.Value)];

    private static List<string> Marks(XElement svg) =>
        [.. svg.Elements(Svg + "path").Where(path => path.Attribute("class")?.Value == "readings").SelectMany(path => path.Attribute("d")!.Value.Split('M', StringSplitOptions.RemoveEmptyEntries))];

    private static string Color(XElement svg, int line) => PlotStyle.ForLine(line).Color is var color ? $"rgb({color.R},{color.G},{color.B})" : "";

    /// <summary>The strokes of lines on the plot: those of the key lie left of it.</summary>
    private static IEnumerable<(double X, double Y)[]> Curves(XElement svg, string? color = null) => svg.Descendants(Svg + "polyline")
        .Where(stroke => color is null
            ? Enumerable.Range(0, PlotStyle.MaximumLines).Any(line => stroke.Attribute("style")!.Value.Contains(Color(svg, line), StringComparison.Ordinal))
            : stroke.Attribute("style")!.Value.Contains(color, StringComparison.Ordinal))
        .Select(Points)
        .Where(points => points[^1].X > 62);

    private static (double X, double Y)[] Points(XElement stroke) => [.. Number().Matches(stroke.Attribute("points")!.Value).Select(number => double.Parse(number.Value, CultureInfo.InvariantCulture)).Chunk(2).Select(pair => (pair[0], pair[1]))];

    [GeneratedRegex(@"-?\d+(\.\d+)?")]
    private static partial Regex Number();
}
