using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FuelSizing.Interactive;

namespace FuelSizing.Notebooks.Tests;

public partial class PlotTests
{
    private const string Hostile = "</svg><script>alert(\"1\")</script> & 'x'";

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly PlotAxis Speed = new("Engine speed", "rev/min");
    private static readonly PlotAxis Duty = new("Duty cycle", "%");
    private static readonly PlotAxis Boost = new("Boost, gauge", "bar");

    public static TheoryData<string> Kinds => ["line", "map", "histogram", "bars"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void ToSvg_AnyPlot_ScalesAndNamesItself(string kind)
    {
        var svg = XElement.Parse(SvgOf(kind, "Duty over speed"));

        Assert.Matches(@"^0 0 \d+(\.\d+)? \d+(\.\d+)?$", svg.Attribute("viewBox")?.Value);
        Assert.Null(svg.Attribute("width"));
        Assert.Equal("img", svg.Attribute("role")?.Value);
        Assert.Equal("Duty over speed", svg.Elements().First().Value);
        Assert.Equal(Svg + "title", svg.Elements().First().Name);
        Assert.NotEqual("", svg.Element(Svg + "desc")?.Value);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void ToSvg_AnyPlot_WritesTheUnitInEachAxisTitle(string kind)
    {
        string[] texts = [.. XElement.Parse(SvgOf(kind)).Descendants(Svg + "text").Select(text => text.Value)];

        Assert.Contains("Duty cycle (%)", texts);
        foreach (string other in kind switch
        {
            "line" => (string[])["Engine speed (rev/min)"],
            "map" => ["Engine speed (rev/min)", "Boost, gauge (bar)"],
            "histogram" => ["Share of samples (%)"],
            _ => [],
        })
        {
            Assert.Contains(other, texts);
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void ToSvg_PlotWithGaps_HasOnlyFiniteCoordinates(string kind)
    {
        string svg = SvgOf(kind);

        Assert.DoesNotMatch(NotANumber(), svg);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void ToSvg_AnyPlot_RefersToNothingOutsideItself(string kind)
    {
        var svg = XElement.Parse(SvgOf(kind));
        var ids = svg.Descendants().Attributes("id").Select(id => id.Value).ToHashSet();

        Assert.DoesNotContain(svg.Descendants(), element => element.Name.LocalName is "image" or "use" or "script" or "a" or "foreignObject");
        foreach (var attribute in svg.DescendantsAndSelf().Attributes().Where(a => !a.IsNamespaceDeclaration))
        {
            Assert.DoesNotContain("http", attribute.Value, StringComparison.Ordinal);
            foreach (Match reference in Reference().Matches(attribute.Value))
            {
                Assert.Contains(reference.Groups["id"].Value, ids);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void ToSvg_HostileTexts_StayText(string kind)
    {
        var svg = XElement.Parse(SvgOf(kind, Hostile, Hostile));

        Assert.DoesNotContain(svg.Descendants(), element => element.Name.LocalName == "script");
        Assert.Equal(Hostile, svg.Element(Svg + "title")?.Value);
    }

    [Fact]
    public void ToSvg_TwoPlotsOnOnePage_ShareNoIds()
    {
        static IEnumerable<string> Ids(string svg) => XElement.Parse(svg).Descendants().Attributes("id").Select(id => id.Value);

        Assert.Empty(Ids(SvgOf("line")).Intersect(Ids(SvgOf("map"))));
        Assert.NotEmpty(Ids(SvgOf("line")));
    }

    [Fact]
    public void ToSvg_SixSeries_DifferWithoutColour()
    {
        var lines = Enumerable.Range(0, 6).Select(i => new PlotLine($"series {i}", [0, 1000], [i, i + 1])).ToArray();
        var svg = XElement.Parse(new LinePlot("Six", Speed, Duty, lines).ToSvg());

        // The key draws one stroke a series; six different dash patterns tell them apart in grey.
        var strokes = svg.Descendants(Svg + "polyline").Select(line => line.Attribute("style")!.Value).Where(style => style.Contains("stroke-width:2.2", StringComparison.Ordinal));
        var dashes = strokes.Select(style => Dash().Match(style).Value).Distinct();
        Assert.Equal(6, dashes.Count());
    }

    [Fact]
    public void ToSvg_LongTexts_StayInsideThePicture()
    {
        string words = string.Join(' ', Enumerable.Repeat("pressure", 20));
        var axis = new PlotAxis(words, "kPa");
        string[] plots =
        [
            new LinePlot("Long", axis, Duty, [new PlotLine(words, [0, 1], [0, 1])]).WithLimit(words, 0.5).WithPoint(words, 0.4, 0.4).ToSvg(),
            new HistogramPlot("Long", axis, [0, 1, 2]).WithUpperLimit(words, 1.5).WithMark(words, 1).ToSvg(),
            new BarPlot("Long", axis, [words], [new PlotBarRow(words, new PlotBar(0, 0, 1))]).WithBase(words, 0).WithLimit(words, 1.2).ToSvg(),
        ];
        var ruler = new PlotRuler();

        foreach (var text in plots.SelectMany(plot => XElement.Parse(plot).Descendants(Svg + "text")))
        {
            double weight = text.Attribute("font-weight")?.Value == "bold" ? 700 : 400;
            Assert.InRange(ruler.MeasureText(text.Value, "Arial", PlotStyle.FontSize, weight).Width, 0, PlotStyle.Width);
        }
    }

    [Fact]
    public void PlotRuler_KnownText_LeavesRoomForAWiderFont()
    {
        // The sum of the published Helvetica advance widths of these letters, in thousandths of the size.
        const double Exact = 5.225 * 14;

        Assert.InRange(new PlotRuler().MeasureText("not covered", "Arial", 14, 400).Width, 1.1 * Exact, 1.25 * Exact);
    }

    [Fact]
    public void MapPlot_LimitAboveEveryValue_SaysSoInsteadOfDrawingIt()
    {
        var map = new MapPlot("Duty", Speed, Boost, Duty, [0, 1], [0, 1], new double[,] { { 1, 2 }, { 3, 4 } }).WithLimit("limit 85 %", 85);

        Assert.Contains("limit 85\u00A0%: above every value shown.", map.ToHtml(), StringComparison.Ordinal);
        Assert.Contains("above every value shown", map.ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void MapPlot_WithHoles_NamesWhatIsNotCovered()
    {
        Assert.Contains("not covered", SvgOf("map"), StringComparison.Ordinal);
        Assert.Contains("Not covered: 1 of 4 cells.", Map("Duty", "limit").ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void MapPlot_FlatValues_IsDrawn()
    {
        var map = new MapPlot("Flat", Speed, Boost, Duty, [0, 1], [0, 1], new double[,] { { 0, 0 }, { 0, 0 } });

        Assert.DoesNotMatch(NotANumber(), map.ToSvg());
    }

    [Fact]
    public void MapPlot_LargestGrid_StaysSmallEnoughToEmbed()
    {
        double[] grid = [.. Enumerable.Range(0, 201).Select(i => (double)i)];
        var values = new double[201, 201];
        for (int i = 0; i < 201; i++)
        {
            for (int j = 0; j < 201; j++)
            {
                values[i, j] = i * j;
            }
        }

        Assert.InRange(new MapPlot("Large", Speed, Boost, Duty, grid, grid, values).ToSvg().Length, 1, 6_000_000);
    }

    [Fact]
    public void MapPlot_ValuesOfAnotherSize_AreRefusedWithBothSizes()
    {
        var error = Assert.Throws<ArgumentException>(() => new MapPlot("Duty", Speed, Boost, Duty, [0, 1, 2], [0, 1], new double[2, 2]));

        Assert.Equal("values", error.ParamName);
        Assert.Contains("2 by 2", error.Message, StringComparison.Ordinal);
        Assert.Contains("3 by 2", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void MapPlot_NothingCovered_IsRefused() =>
        Assert.Throws<ArgumentException>(() => new MapPlot("Duty", Speed, Boost, Duty, [0, 1], [0, 1], new double[,] { { 1, 2 }, { 3, double.NaN } }));

    [Fact]
    public void MapPlot_GridThatFalls_IsRefused() =>
        Assert.Equal("xs", Assert.Throws<ArgumentException>(() => new MapPlot("Duty", Speed, Boost, Duty, [1, 0], [0, 1], new double[2, 2])).ParamName);

    [Fact]
    public void MapPlot_PointOutsideTheGrid_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Map("Duty", "limit").WithPoint("far", 1e6, 0));

    [Fact]
    public void MapPlot_ValuesChangedAfterwards_KeepsItsOwn()
    {
        var values = new double[,] { { 1, 2 }, { 3, 4 } };
        var map = new MapPlot("Duty", Speed, Boost, Duty, [0, 1], [0, 1], values);
        values[0, 0] = 99;

        Assert.Equal(1, map.At(0, 0));
    }

    [Fact]
    public void PlotLine_CountsThatDiffer_AreRefused() =>
        Assert.Equal("y", Assert.Throws<ArgumentException>(() => new PlotLine("a", [1, 2], [1])).ParamName);

    [Theory]
    [InlineData(double.PositiveInfinity, 1)]
    [InlineData(double.NaN, 1)]
    [InlineData(1, double.NegativeInfinity)]
    public void PlotLine_PointThatIsNotFinite_IsRefused(double x, double y) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new PlotLine("a", [0, x], [0, y]));

    [Fact]
    public void LinePlot_SevenSeries_AreRefused() =>
        Assert.Equal("lines", Assert.Throws<ArgumentException>(() => new LinePlot("Seven", Speed, Duty, [.. Enumerable.Range(0, 7).Select(i => new PlotLine($"{i}", [0], [0]))])).ParamName);

    [Theory]
    [InlineData(0, 100)]
    [InlineData(-3, 7)]
    [InlineData(1e-6, 2e-6)]
    [InlineData(99.99, 100.01)]
    [InlineData(5, 5)]
    [InlineData(0, 0)]
    public void Levels_AnyRange_EncloseItInFewRisingSteps(double low, double high)
    {
        double[] levels = NiceScale.Levels(low, high, 8);

        Assert.True(levels[0] <= low + (1e-9 * Math.Abs(low)), levels[0].ToString(CultureInfo.InvariantCulture));
        Assert.True(levels[^1] >= high - (1e-9 * Math.Abs(high)), levels[^1].ToString(CultureInfo.InvariantCulture));
        Assert.InRange(levels.Length, 2, 12);
        Assert.Equal(levels.Order(), levels);
    }

    private static string SvgOf(string kind, string title = "Duty", string label = "limit 85 %") =>
        kind switch
        {
            "line" => Line(title, label).ToSvg(),
            "map" => Map(title, label).ToSvg(),
            "histogram" => new HistogramPlot(title, Duty, [81, 84, 82, 90, 83, 83.5]).WithUpperLimit(label, 85).WithMark(label, 83).ToSvg(),
            _ => new BarPlot(
                title, Duty, [label, "high"], [new PlotBarRow(label, new PlotBar(0, 80, 78), new PlotBar(1, 80, 84, (83, 86))), new PlotBarRow("no bar")])
                .WithBase(label, 80).WithLimit(label, 85).ToSvg(),
        };

    private static LinePlot Line(string title, string label) =>
        new LinePlot(title, Speed, Duty, [new PlotLine(label, [1000, 2000, 3000, 4000], [10, double.NaN, 30, 90])]).WithLimit(label, 85).WithPoint(label, 3000, 30);

    private static MapPlot Map(string title, string label) =>
        new MapPlot(title, Speed, Boost, Duty, [1000, 2000, 4000], [0, 0.5, 1.2], new double[,] { { 10, 20, double.NaN }, { 30, 50, 80 }, { 60, 95, 130 } })
            .WithLimit(label, 85).WithPoint(label, 4000, 0);

    [GeneratedRegex("NaN|Infinity|\u221e")]
    private static partial Regex NotANumber();

    [GeneratedRegex("""url\((?!#)|url\(#(?<id>[^)]+)\)""")]
    private static partial Regex Reference();

    [GeneratedRegex("stroke-dasharray:[^;]*")]
    private static partial Regex Dash();
}
