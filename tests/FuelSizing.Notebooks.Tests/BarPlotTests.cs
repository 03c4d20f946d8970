using System.Globalization;
using System.Xml.Linq;
using FuelSizing.Interactive;

namespace FuelSizing.Notebooks.Tests;

public class BarPlotTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly PlotAxis Duty = new("Duty cycle", "%");

    [Fact]
    public void Bars_OnEitherSideOfTheBase_ShareALane()
    {
        double[] heights = Heights(new PlotBarRow("BSFC", new PlotBar(0, 80, 76), new PlotBar(1, 80, 84)));

        Assert.Equal(heights[0], heights[1], 2);
    }

    [Fact]
    public void Bars_OverOneAnother_GetALaneEach()
    {
        double apart = Heights(new PlotBarRow("BSFC", new PlotBar(0, 80, 76), new PlotBar(1, 80, 84)))[0];
        var svg = XElement.Parse(Plot(new PlotBarRow("BSFC", new PlotBar(0, 80, 82), new PlotBar(1, 80, 84))).ToSvg());
        var bars = Outlines(svg).ToList();

        Assert.All(bars, bar => Assert.Equal(apart / 2, Of(bar, "height"), 1));
        Assert.True(Math.Abs(Of(bars[0], "y") - Of(bars[1], "y")) >= Of(bars[0], "height") - 0.01);
    }

    [Fact]
    public void Kinds_DifferWithoutColour()
    {
        var svg = XElement.Parse(Plot(new PlotBarRow("BSFC", new PlotBar(0, 80, 76), new PlotBar(1, 80, 84))).ToSvg());

        // Hatching: slanted strokes, of the second kind alone.
        var slanted = svg.Descendants(Svg + "line").Concat(svg.Descendants(Svg + "polyline")).Count(IsSlanted);
        Assert.InRange(slanted, 10, 200);
        var plain = XElement.Parse(new BarPlot("Duty", Duty, ["low"], [new PlotBarRow("BSFC", new PlotBar(0, 80, 76))]).ToSvg());
        Assert.DoesNotContain(plain.Descendants(Svg + "line").Concat(plain.Descendants(Svg + "polyline")), IsSlanted);
    }

    [Fact]
    public void Limit_FarFromEveryBar_IsToldInsteadOfDrawn()
    {
        var row = new PlotBarRow("BSFC", new PlotBar(0, 40, 39), new PlotBar(1, 40, 41));

        Assert.Contains("limit 85\u00A0%: far above every value shown.", Plot(row).WithLimit("limit 85 %", 85).ToHtml(), StringComparison.Ordinal);
        Assert.DoesNotContain("far above", Plot(row).WithLimit("limit 42 %", 42).ToHtml(), StringComparison.Ordinal);
    }

    [Fact]
    public void PlainText_NamesEveryBarAndItsInterval()
    {
        string text = Plot(new PlotBarRow("BSFC", new PlotBar(0, 0, 40, (35, 45)))).WithBase("as described", 0).WithNote("A note.").ToPlainText();

        Assert.Contains("BSFC: low from 0 to 40 % (35 to 45).", text, StringComparison.Ordinal);
        Assert.Contains("Base, as described: 0 %.", text, StringComparison.Ordinal);
        Assert.EndsWith("A note.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_ThatCannotBeDrawn_AreRefused()
    {
        Assert.Equal("rows", Assert.Throws<ArgumentException>(() => Plot(new PlotBarRow("BSFC"))).ParamName);
        Assert.Contains("kind 2", Assert.Throws<ArgumentException>(() => Plot(new PlotBarRow("BSFC", new PlotBar(2, 0, 1)))).Message, StringComparison.Ordinal);
        Assert.Equal("bars", Assert.Throws<ArgumentException>(() => new PlotBarRow("BSFC", new PlotBar(0, 0, 1), new PlotBar(0, 0, 2))).ParamName);
        Assert.Throws<ArgumentOutOfRangeException>(() => new PlotBar(-1, 0, 1));
        Assert.Equal("to", Assert.Throws<ArgumentOutOfRangeException>(() => new PlotBar(0, 0, double.NaN)).ParamName);
        Assert.Equal("interval", Assert.Throws<ArgumentOutOfRangeException>(() => new PlotBar(0, 0, 1, (0, double.NaN))).ParamName);
        Assert.Equal("kinds", Assert.Throws<ArgumentException>(() => new BarPlot("Duty", Duty, ["a", "b", "c"], [new PlotBarRow("BSFC", new PlotBar(0, 0, 1))])).ParamName);
    }

    private static BarPlot Plot(params IReadOnlyList<PlotBarRow> rows) => new("What moves the duty cycle", Duty, ["low", "high"], rows);

    private static double[] Heights(PlotBarRow row) => [.. Outlines(XElement.Parse(Plot(row).ToSvg())).Select(bar => Of(bar, "height"))];

    /// <summary>The outlines of the bars: those of the key are less than half as wide.</summary>
    private static IEnumerable<XElement> Outlines(XElement svg) => svg.Descendants(Svg + "rect").Where(rect =>
        rect.Attribute("style")?.Value.Contains("stroke-width:1.2", StringComparison.Ordinal) == true && Of(rect, "width") > 60);

    private static double Of(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    private static bool IsSlanted(XElement stroke)
    {
        double[] at = stroke.Name.LocalName == "line"
            ? [Of(stroke, "x1"), Of(stroke, "y1"), Of(stroke, "x2"), Of(stroke, "y2")]
            : [.. stroke.Attribute("points")!.Value.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Select(part => double.Parse(part, CultureInfo.InvariantCulture))];
        return Math.Abs(at[0] - at[^2]) > 0.5 && Math.Abs(at[1] - at[^1]) > 0.5;
    }
}
