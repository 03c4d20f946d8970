using FuelSizing.Bench;
using FuelSizing.Injectors;
using UnitsNet;

namespace FuelSizing.Tests.Bench;

/// <summary>A set of injectors put to cylinders: worked by hand, and against every order there is.</summary>
public class MatchedSetTests
{
    /// <summary>
    /// Deliveries of 98, 100, 101 and 101 (mean 100) to cylinders that draw 101, 99, 100 and 100 % of the mean air. By hand: the one of 98 % goes to the cylinder of 99 %, whose lambda is then 1.0 % over the mean; every other
    /// cylinder is leaner. The cylinder of 101 % gets one of 101 %: as rich as the engine.
    /// </summary>
    [Fact]
    public void Order_OfFour_IsTheOneWorkedByHand()
    {
        MatchedSet set = MatchedSet.Of([Fit("A", 98), Fit("B", 100), Fit("C", 101), Fit("D", 101)], [Wren.Ms(6)], Air(101, 99, 100, 100));
        Assert.Equal("A", set.Fits[set.Order[1]].Test.Name);
        Assert.Equal(1.0 / 98, set.Leanest.DecimalFractions, 1e-9);
        Assert.Equal(1 - (100.0 / 101), -set.Richest.DecimalFractions, 1e-9);
        Assert.Equal(3, set.Spread.Percent, 9);
        Assert.Equal([-2.0, 0, 1, 1], set.Shares.Select(row => Math.Round(row[0].Percent, 6)));
        Assert.Equal("bench.matched-set", set.Text.Code);
    }

    /// <summary>Of every order of up to six injectors none has a less lean leanest cylinder, nor at that a less rich richest.</summary>
    [Fact]
    public void Order_AmongAllThereAre_IsTheBest()
    {
        Random random = new(20261130);
        for (int round = 0; round < 60; round++)
        {
            int count = 2 + (round % 5);
            double[] flows = [.. Enumerable.Range(0, count).Select(_ => 95 + (10 * random.NextDouble()))];
            double[] air = [.. Enumerable.Range(0, count).Select(_ => 96 + (8 * random.NextDouble()))];
            double[] offsets = [.. Enumerable.Range(0, count).Select(_ => 0.95 + (0.1 * random.NextDouble()))];
            MatchedSet set = MatchedSet.Of(
                [.. flows.Select((flow, place) => Fit($"injector {place + 1}", flow, offsets[place]))], [Wren.Ms(2), Wren.Ms(8)], Air(air));
            double[][] delivered = [.. flows.Select((flow, place) => new[] { flow * (2 - offsets[place]), flow * (8 - offsets[place]) })];
            double[] means = [delivered.Average(row => row[0]), delivered.Average(row => row[1])];
            double mean = air.Average();
            (double lean, double rich) = Orders([.. Enumerable.Range(0, count)]).Select(Worst).OrderBy(worst => Math.Round(worst.Lean, 9)).ThenByDescending(worst => worst.Rich).First();
            Assert.Equal(lean - 1, set.Leanest.DecimalFractions, 1e-9);
            Assert.Equal(rich - 1, set.Richest.DecimalFractions, 1e-9);
            Assert.Equal(Enumerable.Range(0, count), set.Order.Order());

            (double Lean, double Rich) Worst(int[] order)
            {
                double[] all = [.. order.SelectMany((injector, cylinder) => new[] { 0, 1 }.Select(pulse => air[cylinder] / mean / (delivered[injector][pulse] / means[pulse])))];
                return (all.Max(), all.Min());
            }
        }
    }

    /// <summary>With equal cylinders any order does: the set stays as it was given.</summary>
    [Fact]
    public void Cylinders_ThatAreAlike_TakeAnyOrder()
    {
        MatchedSet set = MatchedSet.Of([Fit("A", 97), Fit("B", 103)], [Wren.Ms(6)]);
        Assert.Equal(3.0 / 97, set.Leanest.DecimalFractions, 1e-9);
        Assert.Equal([0, 1], set.Order.Order());
    }

    /// <summary>Below the linear flow range what was weighed counts, not the line.</summary>
    [Fact]
    public void Pulses_BelowTheLine_AreComparedByWhatWasWeighed()
    {
        double[] widths = [1.3, 1.6, 2, 3, 4, 6, 8, 10];
        PulseFit bent = Fit("A", widths, [.. widths.Select(width => 100 * (width - 1) * (width < 1.5 ? 0.6 : 1))]);
        MatchedSet set = MatchedSet.Of([bent, Fit("B", widths, [.. widths.Select(width => 100 * (width - 1))])], [Wren.Ms(1.3)]);
        Assert.Equal(0.5, set.Spread.DecimalFractions, 1e-9);
    }

    /// <summary>What cannot be compared is refused with what to do.</summary>
    [Fact]
    public void Sets_ThatCannotBeCompared_AreRefused()
    {
        Assert.Contains("its fit once", Assert.Throws<ArgumentException>(() => MatchedSet.Of([Fit("A", 100), Fit("A", 101)], [Wren.Ms(6)])).Message, StringComparison.Ordinal);
        Assert.Contains("Give one for each cylinder", Assert.Throws<ArgumentException>(() => MatchedSet.Of([Fit("A", 100), Fit("B", 101)], [Wren.Ms(6)], Air(100))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => MatchedSet.Of([Fit("A", 100), Fit("B", 101)], [Wren.Ms(30)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => MatchedSet.Of([Fit("A", 100)], [Wren.Ms(6)]));
        PulseFit shut = Fit("A", [0.5, 2, 3, 4, 6, 8, 10], [0, 100, 200, 300, 500, 700, 900]);
        Assert.Contains("a pulse that opens A", Assert.Throws<ArgumentOutOfRangeException>(() => MatchedSet.Of([shut, Fit("B", 100, widths: [0.5, 2, 3, 4, 6, 8, 10])], [Wren.Ms(0.5)])).Message, StringComparison.Ordinal);
    }

    private static IEnumerable<int[]> Orders(int[] left) =>
        left.Length == 0 ? [[]] : left.SelectMany(first => Orders([.. left.Where(other => other != first)]).Select(rest => (int[])[first, .. rest]));

    private static Ratio[] Air(params double[] percent) => [.. percent.Select(Wren.Percent)];

    private static PulseFit Fit(string name, double flow, double offset = 1, double[]? widths = null)
    {
        double[] at = widths ?? [1.5, 2, 3, 4, 6, 8, 10];
        return Fit(name, at, [.. at.Select(width => flow * Math.Max(0, width - offset))]);
    }

    /// <summary>Delivered in µg a pulse.</summary>
    private static PulseFit Fit(string name, double[] widths, double[] each) => PulseFit.Of(PulseTest.Of(
        name,
        TestFluid.Heptane,
        Wren.Kpa(300),
        Wren.Volt(13.5),
        Mass.FromMilligrams(10),
        Ratio.Zero,
        [.. widths.Zip(each, (width, mass) => PulseReading.Of(Wren.Ms(width), 1000, Mass.FromMilligrams(40 * mass)))]));
}
