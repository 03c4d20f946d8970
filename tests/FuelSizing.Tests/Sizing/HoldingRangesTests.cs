using CsCheck;
using FuelSizing.Sizing;

namespace FuelSizing.Tests.Sizing;

/// <summary>
/// What a scan says of margins that are written down as formulas of the figure, from 0 to 48, so that its steps are the whole numbers: between two neighbours that both hold all
/// holds, between two that both fail nothing does.
/// </summary>
public class HoldingRangesTests
{
    private const double End = 48;

    // Ends and middles of 48 steps.
    private const int Plain = (2 * HoldingRanges.Steps) + 1;

    /// <summary>Whatever is straight is decided by the ends and the middle of each step.</summary>
    [Fact]
    public void Scan_OfStraightMargins_TakesEndsAndMiddlesAlone()
    {
        Assert.Equal(Plain, Taken([], _ => [0.5]));
        Assert.Equal(Plain, Taken([], _ => [0]));
        Assert.Equal(Plain, Taken([], _ => [-0.5]));
        Assert.Equal(Plain, Taken([], figure => [figure - 17.3]));
        Assert.Equal(Plain, Taken([], figure => [17.3 - figure, figure + 3]));
        Assert.Equal(Enumerable.Range(0, Plain).Select(place => place / 2.0), Scan([], figure => [figure - 17.3]).Select(place => place.Figure));
    }

    /// <summary>As much under zero at one end of a step as over it at the other, and nothing to spare in the middle.</summary>
    [Fact]
    public void Scan_OfAStraightMarginThatIsZeroInTheMiddleOfAStep_TakesNoMore() => Assert.Equal(Plain, Taken([], figure => [figure - 17.5]));

    /// <summary>A jump is decided by no three samples: the step that has it is halved seven times, with a middle of either half each time.</summary>
    [Theory]
    [InlineData(-1, 1)]
    [InlineData(-1, 0)]
    [InlineData(1, -1)]
    [InlineData(0, -1)]
    public void Scan_OfAJump_HalvesItsStepSevenTimes(double before, double after)
    {
        Assert.Equal(Plain + 14, Taken([], figure => [figure < 20.3 ? before : after]));
        HoldingRanges.Place[] places = [.. Scan([], figure => [figure < 20.3 ? before : after])];
        int at = Array.FindIndex(places, place => place.Figure >= 20.3);
        Assert.InRange(places[at].Figure - places[at - 1].Figure, 1 / 512.0, 1 / 256.0);
    }

    /// <summary>Where one of them fails all along by more than it can hide, the others do not matter, however they bend.</summary>
    [Fact]
    public void Scan_WhereOneFailsClearly_LooksNoFurther() =>
        Assert.Equal(Plain, Taken([], figure => [Math.Sin(90 * figure), -1, Math.Cos(70 * figure)]));

    /// <summary>Knots within the range are ends of steps too, each with a middle of its own; those at or past the ends are not, and one at a step is that step's.</summary>
    [Fact]
    public void Scan_WithKnots_AsksAtThemAndBetween()
    {
        List<HoldingRanges.Place> places = Scan([-3, 0, 10.25, 20, 48, 60], _ => [1]);
        Assert.Equal(Plain + 2, places.Count);
        double[] figures = [.. places.Select(place => place.Figure)];
        Assert.Equal([10, 10.125, 10.25, 10.625, 11], figures.Where(figure => figure is >= 10 and <= 11));
        Assert.Equal((0, 48), (figures[0], figures[^1]));
    }

    /// <summary>The least of several margins is what counts at a place, and nothing to spare holds.</summary>
    [Fact]
    public void Place_HoldsByTheLeastOfItsMargins()
    {
        IReadOnlyList<HoldingRanges.Place> places = Scan([], figure => [figure - 10, 30 - figure, 5]);
        Assert.All(places, place => Assert.Equal(place.Figure is >= 10 and <= 30, place.Holds));
    }

    /// <summary>
    /// A dip, or a peak, with one kink anywhere and of any steepness on either side: as far under zero, or over it, as a hundredth of a step, or a hundred thousandth, it is
    /// found, and between neighbours that agree nothing else is.
    /// </summary>
    [Fact]
    public void Scan_OfAMarginWithOneKink_MissesNothing() =>
        Gen.Select(Gen.Double[0.1, 47.9], Gen.Double[-5, -0.3], Gen.Double[0.05, 2], Gen.Double[0.05, 2], Gen.Int[0, 3]).Sample((at, digits, left, right, kind) =>
        {
            (bool isDip, bool straight) = (kind % 2 == 0, kind > 1);
            double depth = Math.Pow(10, digits);
            int sign = isDip ? 1 : -1;
            double Margin(double figure) => sign * ((figure < at ? left * (at - figure) : right * (figure - at)) - depth);
            IReadOnlyList<HoldingRanges.Place> places = Scan([], figure => straight ? [Margin(figure), 0.2 + (0.01 * figure)] : [Margin(figure)]);
            Rising(places);
            (double from, double to) = (at - (depth / left), at + (depth / right));
            Assert.Contains(places, place => place.Holds != isDip && place.Figure > from - 1e-9 && place.Figure < to + 1e-9);
            IsTrue(places, figure => Margin(figure) >= 0, from, to);
        });

    /// <summary>Where a straight margin begins to hold just before another ceases to, what holds lies between, however narrow.</summary>
    [Fact]
    public void Scan_OfTwoStraightMargins_FindsWhereBothHold() =>
        Gen.Select(Gen.Double[0.5, 47], Gen.Double[-4, -0.5], Gen.Double[0.1, 1], Gen.Double[0.1, 1]).Sample((from, digits, rise, fall) =>
        {
            double to = from + Math.Pow(10, digits);
            IReadOnlyList<HoldingRanges.Place> places = Scan([], figure => [rise * (figure - from), fall * (to - figure)]);
            Rising(places);
            Assert.Contains(places, place => place.Holds);
            IsTrue(places, figure => figure >= from && figure <= to, from, to);
        });

    /// <summary>
    /// A margin that lingers at zero all along is never decided: it ends at some 20,000 samples, and what was taken by then is as the samples have it.
    /// </summary>
    [Fact]
    public void Scan_OfAMarginThatNeverDecides_Ends()
    {
        // Twelve margins over zero without any order.
        int taken = Taken([], figure => [.. Enumerable.Range(1, 12).Select(check => 1e-9 * Math.Abs(Math.Sin(1e6 * check * (figure + check))))]);
        Assert.InRange(taken, 19_000, 21_000);
    }

    /// <summary>
    /// A kink that comes within a millionth of zero and does not pass it: three samples cannot decide that, so that its step is halved seven times, and the extreme of what is left is searched by the golden
    /// section, in 48 steps from two places, of which the last is not asked for.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Scan_OfAKinkThatJustDoesNotPassZero_SearchesItsExtreme(int sign)
    {
        double Margin(double figure) => sign * (Math.Abs(figure - 20.3) + 1e-6);
        Assert.Equal(Plain + 14 + 2 + 47, Taken([], figure => [Margin(figure)]));
        Assert.All(Scan([], figure => [Margin(figure)]), place => Assert.Equal(sign > 0, place.Holds));
    }

    /// <summary>
    /// Of three points the third fails at every figure: once that is seen, at the first figure, the others are not asked for. Where the second fails beyond half the range,
    /// and nothing else does, all three are asked up to there, and beyond it the second alone but for the steps about the crossing.
    /// </summary>
    [Fact]
    public void Scan_OfSeveralPoints_AsksForTheOneThatDecides()
    {
        int[] always = Asked((_, point) => point == 2 ? -1 : 1);
        Assert.Equal((1, 1, Plain), (always[0], always[1], always[2]));
        int[] beyond = Asked((figure, point) => point == 1 ? (End / 2) - 0.1 - figure : 1);
        Assert.Equal(beyond[0], beyond[2]);
        Assert.InRange(beyond[0], (Plain / 2) - 3, (Plain / 2) + 3);
        Assert.Equal(Plain, beyond[1]);

        static int[] Asked(Func<double, int, double> margin)
        {
            int[] asked = new int[3];
            _ = new HoldingRanges(0, End, [], 3, figure => point =>
            {
                asked[point]++;
                return [margin(figure, point)];
            });
            return asked;
        }
    }

    private static List<HoldingRanges.Place> Scan(double[] knots, Func<double, double[]> margins) => [.. new HoldingRanges(0, End, knots, 1, figure => _ => margins(figure)).Places];

    private static int Taken(double[] knots, Func<double, double[]> margins)
    {
        int taken = 0;
        Rising(Scan(knots, figure =>
        {
            taken++;
            Assert.InRange(figure, 0, End);
            return margins(figure);
        }));
        return taken;
    }

    private static void Rising(IReadOnlyList<HoldingRanges.Place> places)
    {
        for (int at = 1; at < places.Count; at++)
        {
            Assert.True(places[at].Figure > places[at - 1].Figure);
        }
    }

    /// <summary>Between neighbours that agree, a hundred figures and the ends of what is otherwise agree too.</summary>
    private static void IsTrue(IReadOnlyList<HoldingRanges.Place> places, Func<double, bool> holds, double from, double to)
    {
        for (int at = 1; at < places.Count; at++)
        {
            (HoldingRanges.Place low, HoldingRanges.Place high) = (places[at - 1], places[at]);
            if (low.Holds == high.Holds)
            {
                double middle = (from + to) / 2;
                Assert.False(low.Figure < from && high.Figure > to && low.Holds != holds(middle), $"missed between {low.Figure:R} and {high.Figure:R}");
                Assert.All(Enumerable.Range(1, 9), tenth => Assert.Equal(low.Holds, holds(low.Figure + ((high.Figure - low.Figure) * tenth / 10))));
            }
        }
    }
}
