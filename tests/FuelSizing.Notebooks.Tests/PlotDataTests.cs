using System.Globalization;
using System.Xml.Linq;
using FuelSizing.Interactive;
using FuelSizing.Quantities;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The data behind plots, as files and as tables below them.</summary>
public class PlotDataTests
{
    private static readonly PlotAxis Speed = new("Engine speed", "rev/min");
    private static readonly PlotAxis Duty = new("Duty cycle", "%");

    [Fact]
    public void Lines_OverTheSamePositions_AreColumnsBesideOneAnother()
    {
        var commas = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        commas.NumberFormat.NumberDecimalSeparator = ",";
        string csv = new LinePlot(
            "Duty", Speed, Duty, [new PlotLine("0.6 bar, petrol", [1000, 2000.5], [10, double.NaN]), PlotLine.Measured("the \"old\" set", [1000, 2000.5], [1.0 / 3, 1e6])])
            .WithLimit("limit 85 %", 85)
            .With(TextStyle.Metric.With(commas))
            .ToCsv();

        Assert.Equal(
            "Engine speed (rev/min),\"0.6 bar, petrol (%)\",\"the \"\"old\"\" set, measured (%)\",limit 85 % (%)\r\n"
            + "1000,10,0.33333333,85\r\n"
            + "2000.5,,1000000,85\r\n",
            csv);
    }

    [Fact]
    public void Lines_OverTheirOwnPositions_StandOneBelowTheOther()
    {
        string csv = new LinePlot("Duty", Speed, Duty, [new PlotLine("a", [1, 2], [3, 4]), PlotLine.Measured("b", [1.5], [5])])
            .WithReference("aim", 6)
            .WithPoint("here", 2, 4)
            .ToCsv();

        Assert.Equal(
            "Series,Kind,Engine speed (rev/min),Duty cycle (%)\r\na,computed,1,3\r\na,computed,2,4\r\nb,measured,1.5,5\r\naim,aimed at,,6\r\nhere,marked,2,4\r\n",
            csv);
    }

    [Fact]
    public void Bars_Bins_AndMaps_AreWrittenWithTheirUnits()
    {
        Assert.Equal(
            "Row,Bar,From (%),To (%),Interval from (%),Interval to (%)\r\nBSFC,low,80,78,,\r\nBSFC,high,80,84,83,86\r\nnone at all,none,,,,\r\n",
            new BarPlot("Duty", Duty, ["low", "high"], [new PlotBarRow("BSFC", new PlotBar(0, 80, 78), new PlotBar(1, 80, 84, (83, 86))), new PlotBarRow("none at all")]).ToCsv());
        Assert.Equal(
            "Engine speed (rev/min),Duty cycle (%) at 0 bar,Duty cycle (%) at 0.5 bar\r\n1000,10,\r\n2000,30,50\r\n4000,40,60\r\n",
            new MapPlot("Duty", Speed, new PlotAxis("Boost", "bar"), Duty, [1000, 2000, 4000], [0, 0.5], new double[,] { { 10, double.NaN }, { 30, 50 }, { 40, 60 } }).ToCsv());

        string[] bins = new HistogramPlot("Duty", Duty, [81, 81, 82, 90]).ToCsv().Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("Duty cycle from (%),Duty cycle to (%),Samples,Share of samples (%)", bins[0]);
        Assert.Equal(4, bins.Skip(1).Sum(line => int.Parse(line.Split(',')[2], CultureInfo.InvariantCulture)));
        Assert.Equal(100, bins.Skip(1).Sum(line => double.Parse(line.Split(',')[3], CultureInfo.InvariantCulture)), 6);
    }

    /// <summary>Names come from logs, and a spreadsheet calculates what begins so.</summary>
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+x")]
    [InlineData("-x")]
    [InlineData("@x")]
    public void NameThatASpreadsheetWouldCalculate_StaysText(string name) =>
        Assert.Contains($"\r\n'{name},computed,", new LinePlot("Duty", Speed, Duty, [new PlotLine(name, [1], [2]), new PlotLine("b", [3], [4])]).ToCsv(), StringComparison.Ordinal);

    [Fact]
    public void Figure_HoldsTheWholeFileToSave_AndTheTable()
    {
        LinePlot plot = new("Duty cycle, 6,800 rev/min", Speed, Duty, [new PlotLine("a <b> & \"c\" %41 ° #", [1000, 2000], [10, 0.123456])]);

        var details = XElement.Parse(plot.ToHtml()).Element("details")!;
        XElement link = Assert.Single(details.Descendants("a"));

        const string Before = "data:text/csv;charset=utf-8,";
        Assert.StartsWith(Before, link.Attribute("href")!.Value, StringComparison.Ordinal);
        Assert.Equal(plot.ToCsv(), Uri.UnescapeDataString(link.Attribute("href")!.Value[Before.Length..]));
        Assert.Equal("duty-cycle-6-800-rev-min.csv", link.Attribute("download")!.Value);
        Assert.Equal(["Engine speed (rev/min)", "a <b> & \"c\" %41 ° # (%)"], details.Descendants("th").Select(cell => cell.Value));
        Assert.Equal(["1,000", "10", "2,000", "0.12346"], details.Descendants("td").Select(cell => cell.Value));
        Assert.Equal("Data of this plot, 2 rows", details.Element("summary")!.Value);
        Assert.Null(details.Attribute("open"));
    }

    [Fact]
    public void LongTable_SaysWhatItLeavesOut_AndItsFileIsWhole()
    {
        double[] x = [.. Enumerable.Range(0, 500).Select(i => (double)i)];
        LinePlot plot = new("Duty", Speed, Duty, [new PlotLine("a", x, x)]);

        var details = XElement.Parse(plot.ToHtml()).Element("details")!;

        var rows = details.Descendants("tbody").Single().Elements().ToList();
        Assert.Equal(PlotData.MaximumRows, rows.Count);
        Assert.Equal("0", rows[0].Elements().First().Value);
        Assert.Equal("499", rows[^1].Elements().First().Value);
        Assert.Contains("The table shows 40 of 500 rows, evenly picked, the first and the last among them. The file holds everything.", details.Value, StringComparison.Ordinal);
        Assert.Equal(502, Uri.UnescapeDataString(details.Descendants("a").Single().Attribute("href")!.Value).Split("\r\n").Length);
    }

    /// <summary>Ten thousand points are no reason for a page several times as heavy; that the file is missing is said.</summary>
    [Fact]
    public void FileTooLargeForAPage_IsNotInIt_AndTheReaderIsToldWhereItIs()
    {
        double[] x = [.. Enumerable.Range(0, 10_000).Select(i => i / 7.0)];
        LinePlot plot = new("Duty", Speed, Duty, [new PlotLine("a", x, x)]);

        string html = plot.ToHtml();

        Assert.DoesNotContain("data:text/csv", html, StringComparison.Ordinal);
        Assert.Contains("All 10,000 rows are too many for this page: the plot's ToCsv() writes them.", html, StringComparison.Ordinal);
        Assert.Contains("Of 10,000 points of \"a\" the lowest and the highest of each of 300 stretches are drawn", html.Replace('\u00A0', ' '), StringComparison.Ordinal);
        Assert.InRange(html.Length, 1, 60_000);
        Assert.Equal(10_002, plot.ToCsv().Split("\r\n").Length);
    }

    [Fact]
    public void Thinning_KeepsEndsGapsAndTheOneExcursion()
    {
        double[] values = [.. Enumerable.Range(0, 30_000).Select(i => i == 17_777 ? 5 : i is >= 9_000 and < 9_500 ? double.NaN : Math.Sin(i))];

        IReadOnlyList<int> kept = PlotThinning.Of(values);

        Assert.InRange(kept.Count, 300, 610);
        Assert.Equal(kept.Order(), kept);
        Assert.Equal(0, kept[0]);
        Assert.Equal(29_999, kept[^1]);
        Assert.Contains(17_777, kept);
        Assert.Contains(8_999, kept);
        Assert.Contains(9_500, kept);
        Assert.Contains(kept, place => double.IsNaN(values[place]));
    }

    [Fact]
    public void Thinning_OfASeriesMostlyOfGaps_IsBounded()
    {
        double[] values = [.. Enumerable.Range(0, 30_000).Select(i => i % 2 == 0 ? i : double.NaN)];

        IReadOnlyList<int> kept = PlotThinning.Of(values);

        Assert.InRange(kept.Count, 600, 1_210);
        Assert.DoesNotContain(kept.Zip(kept.Skip(1)), pair => double.IsFinite(values[pair.First]) && double.IsFinite(values[pair.Second]) && pair.Second < 29_900);
    }

    [Theory]
    [InlineData(double.NaN, 1)]
    [InlineData(0, double.PositiveInfinity)]
    [InlineData(2, 1)]
    public void RangeThatIsNone_IsRefused(double low, double high) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new LinePlot("Duty", Speed, Duty, [new PlotLine("a", [1], [2])]).WithRange(low, high));
}
