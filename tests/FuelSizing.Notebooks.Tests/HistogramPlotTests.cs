using System.Globalization;
using System.Xml.Linq;
using FuelSizing.Interactive;

namespace FuelSizing.Notebooks.Tests;

public class HistogramPlotTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly PlotAxis Duty = new("Duty cycle", "%");

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 20)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Bins_OfAnySamples_HoldEachSampleOnceAndEndAtTheLimit(int seed)
    {
        var random = new Random(seed);
        double scale = Math.Pow(10, random.Next(-3, 4));
        double[] sorted = [.. Enumerable.Range(0, random.Next(1, 3000)).Select(_ => scale * (random.NextDouble() + random.NextDouble())).Order()];
        double limit = scale * random.NextDouble() * 2;
        var bins = new HistogramBins(sorted, limit, closedAbove: true);

        Assert.Equal(sorted.Length, bins.All.Sum(bin => bin.Samples));
        foreach (var (from, to, samples) in bins.All)
        {
            double slack = 1e-9 * scale;
            Assert.False(from < limit - slack && to > limit + slack, "A bar reaches over the limit.");
            Assert.InRange(samples, sorted.Count(v => v > from + slack && v < to - slack), sorted.Count(v => v > from - slack && v < to + slack));
        }

        Assert.Equal(sorted.Count(v => v > limit), bins.All.Where(bin => (bin.From + bin.To) / 2 > limit).Sum(bin => bin.Samples));
        Assert.InRange(bins.Count, 1, 45);
    }

    [Fact]
    public void Bins_OfASampleOnTheLimit_CountItAsWithin()
    {
        double[] sorted = [80, 82, 85, 85, 88, 90];

        Assert.Equal(4, new HistogramBins(sorted, 85, closedAbove: true).All.Where(bin => bin.To <= 85).Sum(bin => bin.Samples));
        Assert.Equal(2, new HistogramBins(sorted, 85, closedAbove: false).All.Where(bin => bin.To <= 85).Sum(bin => bin.Samples));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    [InlineData(84.25)]
    public void Bins_OfSamplesAllAlike_AreOneBar(double value) =>
        Assert.Equal(3, Assert.Single(new HistogramBins([value, value, value], null, true).All).Samples);

    [Fact]
    public void Beyond_OfEachSide_LeavesOutTheLimitItself()
    {
        var plot = new HistogramPlot("Duty", Duty, [90, 80, 85, 70]);

        Assert.Equal(25, plot.WithUpperLimit("limit", 85).Beyond.Percent, 9);
        Assert.Equal(50, plot.WithLowerLimit("limit", 85).Beyond.Percent, 9);
        Assert.Equal(0, plot.Beyond.Percent);
    }

    [Fact]
    public void ToSvg_WithALimit_DrawsEveryBarAndTellsTheShareBeyond()
    {
        double[] values = [.. Enumerable.Range(0, 100).Select(i => 80 + (0.1 * i))];
        string svg = new HistogramPlot("Duty", Duty, values).WithUpperLimit("limit 85 %", 85).ToSvg();
        var texts = XElement.Parse(svg).Descendants(Svg + "text").Select(text => text.Value).ToList();

        // 85.1 to 89.9: 49 of 100.
        Assert.Contains("over the limit: 49.0 % of the samples", texts);
        Assert.Contains("within the limit", texts);
        Assert.Contains("limit 85 %", texts);
    }

    [Fact]
    public void Limit_FarFromEverySample_IsToldInsteadOfDrawn()
    {
        var plot = new HistogramPlot("Lambda", new PlotAxis("Lambda", "1"), [0.82, 0.821, 0.822]).WithUpperLimit("accepted 0.86", 0.86);

        Assert.Contains("accepted 0.86: far above every value shown.", plot.ToHtml(), StringComparison.Ordinal);
        Assert.DoesNotContain(XElement.Parse(plot.ToSvg()).Descendants(Svg + "text"), text => text.Value.Contains("accepted", StringComparison.Ordinal));
        Assert.Contains("0.0 % of the samples are over it", plot.ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Values_ThatCannotBeDrawn_AreRefused()
    {
        Assert.Equal("values", Assert.Throws<ArgumentException>(() => new HistogramPlot("Duty", Duty, [])).ParamName);
        Assert.Equal("values", Assert.Throws<ArgumentOutOfRangeException>(() => new HistogramPlot("Duty", Duty, [1, double.NaN])).ParamName);
        Assert.Throws<ArgumentOutOfRangeException>(() => new HistogramPlot("Duty", Duty, [1]).WithUpperLimit("limit", double.PositiveInfinity));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Flags_OfMarksAnywhere_LieOnNoOtherLabelOrPole(int seed)
    {
        var random = new Random(seed);
        string[] labels = ["limit 85 %", "median 77.2", "5 % under 71.9", "5 % over 84.1", "no margin"];
        (double Pole, string Label)[] flags = [.. labels.Take(random.Next(1, 6)).Select(label => (60 + (360 * random.NextDouble()), label))];
        var places = FlagLayout.Of(flags);
        var ruler = new PlotRuler();
        (double Left, double Right)[] extents = [.. flags.Zip(places).Select(one =>
        {
            double width = ruler.MeasureText(one.First.Label, "Arial", PlotStyle.FontSize, 700).Width;
            return one.Second.ToTheRight ? (one.First.Pole + FlagLayout.Gap, one.First.Pole + FlagLayout.Gap + width) : (one.First.Pole - FlagLayout.Gap - width, one.First.Pole - FlagLayout.Gap);
        })];

        for (int i = 0; i < flags.Length; i++)
        {
            Assert.InRange(extents[i].Left, 0, PlotStyle.Width);
            Assert.InRange(extents[i].Right, 0, PlotStyle.Width);
            foreach (int j in Enumerable.Range(0, flags.Length).Where(j => j != i))
            {
                Assert.False(
                    places[i].Lane == places[j].Lane && extents[i].Left < extents[j].Right && extents[j].Left < extents[i].Right,
                    string.Create(CultureInfo.InvariantCulture, $"Labels {i} and {j} lie on one another."));
                Assert.False(
                    places[i].Lane >= places[j].Lane && flags[i].Pole > extents[j].Left && flags[i].Pole < extents[j].Right,
                    string.Create(CultureInfo.InvariantCulture, $"Pole {i} crosses label {j}."));
            }
        }
    }
}
