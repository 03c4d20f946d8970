using CsCheck;
using FuelSizing.Circuits;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;

namespace FuelSizing.Tests.Sizing;

/// <summary>
/// The search behind every inverse question, on reserves written down as formulas of the figure: where the edge lies is
/// then known beforehand. The figure goes from 0 to 96, so that the scan's steps are the whole numbers.
/// </summary>
public class SizingSearchTests
{
    private const double End = 96;

    private static readonly FuelSystem Wide = Wren.System(injector: 900, pump: 4);

    private static readonly OperatingPoint At = Wren.At(3000, 0);

    private static readonly PointDemand Demand = Wide.Parts.DemandAt(At);

    private static readonly CircuitState Circuit = CircuitSolver.Solve(Wide.Parts.TaskAt(Demand));

    [Fact]
    public void Minimum_OfAReserveThatRises_IsWhereItReachesNought() =>
        Gen.Select(Gen.Double[0.01, 95.99], Gen.Double[0.001, 0.9]).Sample((edge, slope) =>
        {
            SizingAnswer<double> answer = Minimum(figure => slope * (figure - edge));
            Assert.InRange(answer.Value!.Value, edge, edge + 1e-7);
            Assert.StartsWith($"At least {Text(answer.Value.Value, End)}: limited by injectors (", answer.Text.ToString(), StringComparison.Ordinal);
        });

    [Fact]
    public void Maximum_OfAReserveThatFalls_IsWhereItReachesNought() =>
        Gen.Select(Gen.Double[0.01, 95.99], Gen.Double[0.001, 0.9]).Sample((edge, slope) =>
        {
            SizingAnswer<double> answer = Maximum(figure => slope * (edge - figure));
            Assert.InRange(answer.Value!.Value, edge - 1e-7, edge);
            Assert.StartsWith($"At most {Text(answer.Value.Value, 0)}: limited by injectors (", answer.Text.ToString(), StringComparison.Ordinal);
        });

    /// <summary>The weakest of all points decides, wherever it stands in the list.</summary>
    [Fact]
    public void Edge_OfSeveralPoints_IsThatOfTheWeakest()
    {
        Assert.Equal(20.5, Minimum(figure => figure - 3.5, figure => figure - 20.5, figure => figure - 10.5).Value!.Value, 6);
        Assert.Equal(3.5, Maximum(figure => 20.5 - figure, figure => 3.5 - figure, figure => 10.5 - figure).Value!.Value, 6);
    }

    /// <summary>
    /// Where nothing holds the figure that comes nearest is the best of the worst of all points: one that always fails by as much, and so decides the scan alone, does not hide where
    /// the other is at its best.
    /// </summary>
    [Theory]
    [InlineData(30.2)]
    [InlineData(71.7)]
    public void Nearest_OfSeveralPoints_IsThatOfTheirWorst(double best)
    {
        string text = Minimum(_ => -0.1, figure => -0.2 - (Math.Abs(figure - best) / 200)).Text.ToString();
        Assert.Contains($"at {Text(best, double.NaN)}, where it comes nearest", text, StringComparison.Ordinal);
        Assert.Equal(text, Minimum(figure => -0.2 - (Math.Abs(figure - best) / 200), _ => -0.1).Text.ToString());
    }

    /// <summary>A narrow peak beside one of the scan's steps, and all else rising slowly towards the far end, which is nearly as good as that step: the peak is what comes nearest.</summary>
    [Fact]
    public void Nearest_BesideANarrowPeak_IsThePeakAndNotTheFarEnd() => Assert.Contains(
        $"at {Text(20.3, double.NaN)}, where it comes nearest",
        Minimum(figure => Math.Max(-0.9 + (0.002 * figure), -0.3 - (0.5 * Math.Abs(figure - 20.3)))).Text.ToString(),
        StringComparison.Ordinal);

    /// <summary>The scan steps over it, and finds it beside the step that comes nearest, whichever side it lies on.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.7)]
    [InlineData(30.4)]
    [InlineData(30.6)]
    [InlineData(95.3)]
    [InlineData(95.7)]
    public void Minimum_OfANarrowRangeBetweenTwoSteps_IsItsLowerEnd(double middle)
    {
        SizingAnswer<double> answer = Minimum(figure => 0.2 - Math.Abs(figure - middle));
        Assert.Equal(middle - 0.2, answer.Value!.Value, 7);
        SizingRange<double> range = Assert.Single(answer.Ranges);
        Assert.Equal(middle - 0.2, range.Minimum, 7);
        Assert.Equal(middle + 0.2, range.Maximum, 7);

        // Not "at least": what lies beyond fails.
        Assert.Matches(@"^Holds from [0-9.]+ to [0-9.]+: limited by injectors \(", answer.Text.ToString());
    }

    /// <summary>A failing gap far narrower than a step of the scan, at any place and of any shape, ends what "at most" claims.</summary>
    [Fact]
    public void Maximum_OverANarrowFailingGap_EndsBeforeIt() =>
        Gen.Select(Gen.Double[0.5, 95.5], Gen.Double[-5, -0.5], Gen.Double[0.02, 2], Gen.Double[0.02, 2]).Sample((middle, digits, left, right) =>
        {
            // A kink that dips under zero by so much; how steep it is on either side differs up to a hundredfold.
            double depth = Math.Pow(10, digits);
            double Reserve(double figure) => (figure < middle ? left * (middle - figure) : right * (figure - middle)) - depth;
            SizingAnswer<double> answer = Maximum(Reserve);
            double edge = middle - (depth / left);
            double again = middle + (depth / right);
            if (edge < 0)
            {
                // The start itself fails; what holds beyond it is said, but is no maximum counted up from the start.
                Assert.Null(answer.Value);
                Assert.True(again > End ? answer.Ranges.Count == 0 : Math.Abs(answer.Ranges.Single().Minimum - again) < 1e-6);
                return;
            }

            Assert.InRange(answer.Value!.Value, edge - 1e-7, edge + 1e-10);
            Assert.Equal(again < End ? 2 : 1, answer.Ranges.Count);
            Assert.Equal(again < End, answer.Text.ToString().Contains("not everything holds, and again it does from", StringComparison.Ordinal));
        });

    /// <summary>What holds may begin after the start and end before the end: both ends are said, and neither is passed in print.</summary>
    [Fact]
    public void Range_ThatReachesNeitherEnd_IsAnsweredByBothItsEnds() =>
        Gen.Select(Gen.Double[0.2, 95], Gen.Double[-4, 1]).Sample((from, digits) =>
        {
            double to = from + Math.Pow(10, digits);
            if (to > 95.8)
            {
                return;
            }

            double Reserve(double figure) => Math.Min(figure - from, to - figure) / 10;
            SizingAnswer<double> maximum = Maximum(Reserve);
            Assert.Null(maximum.Value);
            Assert.StartsWith("No maximum counted up from 0.0, where injectors: ", maximum.Text.ToString(), StringComparison.Ordinal);
            string words = Minimum(Reserve).Text.ToString();
            double[] printed = [.. System.Text.RegularExpressions.Regex.Matches(words.Split(':')[0], "[0-9.]+").Select(found => double.Parse(found.Value, System.Globalization.CultureInfo.InvariantCulture))];
            Assert.Equal(2, printed.Length);
            Assert.All(printed, figure => Assert.True(Reserve(figure) >= -1e-12, $"{words}: {figure} is not in {from:R} to {to:R}"));
            Assert.Contains(words.Split(':')[0]["Holds ".Length..], maximum.Text.ToString(), StringComparison.Ordinal);
        });

    [Fact]
    public void Ranges_ThatHold_AreAllSaid()
    {
        SizingAnswer<double> answer = Minimum(figure => Math.Sin(figure / 96 * 6 * Math.PI) - 0.3);
        Assert.Equal(3, answer.Ranges.Count);
        Assert.Matches(@"^Holds from [0-9.]+ to [0-9.]+, and from [0-9.]+ to [0-9.]+, and from [0-9.]+ to [0-9.]+: ", answer.Text.ToString());
        Assert.Equal(answer.Ranges[0].Minimum, answer.Value);
    }

    /// <summary>
    /// However narrow the range that holds, the answer lies inside it, though double precision is coarse there: at its edge, or at a figure of
    /// six decimals within 10⁻¹⁰ of the range searched.
    /// </summary>
    [Fact]
    public void Minimum_OfAVeryNarrowRange_HoldsWhenPutBack() => NarrowRange(null);

    /// <summary>An edge at 61.9999979997, for which 61.999998 is given.</summary>
    [Fact]
    public void Minimum_OfANarrowRangeBesideAFigureOfFewDigits_HoldsWhenPutBack() => NarrowRange("bXu1_tx4yOw1");

    private static void NarrowRange(string? seed) =>
        Gen.Select(Gen.Double[0.5, 95.5], Gen.Double[-7, -1]).Sample(
            (middle, digits) =>
            {
                double half = Math.Pow(10, digits);
                double minimum = Minimum(figure => half - Math.Abs(figure - middle)).Value!.Value;
                double inside = minimum == Math.Round(minimum, 6) ? 1e-10 * End : half * 1e-6;

                // Equal to twelve figures is equal.
                return half - Math.Abs(minimum - middle) >= -1e-12 && minimum <= middle - half + inside;
            },
            seed: seed);

    /// <summary>Where data begins or ends just at a step of the scan, what holds jumps there; the answer is on the side that holds.</summary>
    [Fact]
    public void Edge_ThatIsAJumpAtAStepOfTheScan_HoldsWhenPutBack()
    {
        for (int edge = 1; edge < End; edge++)
        {
            double from = Minimum(figure => figure >= edge ? 1 : -1).Value!.Value;
            double over = Minimum(figure => figure > edge ? 1 : -1).Value!.Value;
            double upTo = Maximum(figure => figure <= edge ? 1 : -1).Value!.Value;
            double under = Maximum(figure => figure < edge ? 1 : -1).Value!.Value;
            Assert.True(from >= edge && over > edge && upTo <= edge && under < edge, $"{edge}: {from:R}, {over:R}, {upTo:R}, {under:R}");
            Assert.All([from, over, upTo, under], found => Assert.Equal(edge, found, 7));
        }
    }

    /// <summary>Where another part holds with nothing to spare at any figure, the edge is still found.</summary>
    [Fact]
    public void Edge_WhereAnotherHasNothingToSpareAllAlong_IsFound()
    {
        Assert.Equal(30.37, Minimum(figure => figure - 30.37, _ => 0).Value!.Value, 7);
        Assert.Equal(30.37, Maximum(figure => 30.37 - figure, _ => 0).Value!.Value, 7);
    }

    [Fact]
    public void Figure_WithNothingToSpare_Serves()
    {
        // At 48 alone, and again from 60 on.
        Assert.Equal(48, Minimum(figure => figure == 48 ? 0 : figure > 60 ? 0.5 : -0.5).Value!.Value);

        // Between two steps of the scan.
        Assert.InRange(Minimum(figure => Math.Min(0, 0.1 - Math.Abs(figure - 30.4))).Value!.Value, 30.3, 30.5);

        // Down to nothing at 48, and up again.
        Assert.Equal(End, Maximum(figure => Math.Abs(figure - 48)).Value!.Value);
    }

    [Fact]
    public void Edge_InTheLastStepOfTheRange_IsFound()
    {
        Assert.Equal(End, Minimum(figure => figure < End ? -0.5 : 0.5).Value!.Value, 9);
        Assert.Equal(95.5, Maximum(figure => 95.5 - figure).Value!.Value, 6);
    }

    [Fact]
    public void Range_ThatHoldsThroughout_IsAnsweredByItsEnd()
    {
        SizingAnswer<double> minimum = Minimum(_ => 0.2);
        Assert.Equal(0, minimum.Value);
        Assert.StartsWith("At least 0.0: the tightest margin is that of injectors (", minimum.Text.ToString(), StringComparison.Ordinal);
        SizingAnswer<double> maximum = Maximum(_ => 0.2);
        Assert.Equal(End, maximum.Value);
        Assert.StartsWith("At most 96.0: the tightest margin is that of injectors (", maximum.Text.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Range_ThatServesNowhere_IsAnsweredByWhereItComesNearest()
    {
        Assert.StartsWith("Nothing from 0.0 to 96.0 is adequate: at 40.4, where it comes nearest, injectors: ", Nearest(Minimum(figure => -0.1 - Math.Abs(figure - 40.4))), StringComparison.Ordinal);

        // Where no figure is nearer than another, the first is named.
        Assert.StartsWith("Nothing from 0.0 to 96.0 is adequate: at 96.0, ", Nearest(Maximum(figure => figure - 97)), StringComparison.Ordinal);
        Assert.StartsWith("Nothing from 0.0 to 96.0 is adequate: at 0.0, ", Nearest(Minimum(_ => -0.5)), StringComparison.Ordinal);

        static string Nearest(SizingAnswer<double> answer)
        {
            Assert.Null(answer.Value);
            return answer.Text.ToString();
        }
    }

    /// <summary>
    /// A straight reserve is decided by the scan alone, ends and middles of its steps; a secant then lands at once, where halving to the last
    /// figure would take over forty solves.
    /// </summary>
    [Fact]
    public void Minimum_OfAStraightReserve_IsFoundInAFewSolves()
    {
        int solves = 0;
        Minimum(figure =>
        {
            solves++;
            return 0.3 * (figure - 10.5);
        });

        const int Scan = (2 * HoldingRanges.Steps) + 1;
        Assert.InRange(solves, Scan, Scan + 15);
    }

    /// <summary>A pump at minimum speed that holds exactly the set pressure is not short of it, but does not govern.</summary>
    [Fact]
    public void Part_ThatFailsByNothing_DoesNotServe()
    {
        FuelSystem held = FuelSystem.Returnless(
            Wren.Demand(), Wide.Injectors, ElectronicReturnless.Holding(Wren.Kpa(300), followsManifold: true, Wren.Volt(13)), Wide.Pump);
        CircuitState floor = CircuitSolver.Solve(held.Parts.TaskAt(Demand)) with { State = RailState.PumpFloor, RailGauge = 300e3 };
        SizingSearch search = new(
            0, End, 1, _ => Sized(_ => new(held, At, Demand, held.Parts.CircuitOf(held.Parts.TaskAt(Demand), CircuitBounds.Exactly(floor)), (ReserveOf(1), ReserveOf(1)))));
        Assert.Null(search.Minimum(Figure).Value);
        Assert.Null(search.Maximum(Figure).Value);
    }

    /// <summary>An edge right beside a figure of six decimals is that figure where it holds too, and is left as it is where it does not, or is not so near.</summary>
    [Theory]
    [InlineData(30.37, 30.37, 0)]
    [InlineData(30.369999996, 30.37, 0)]
    [InlineData(30.370000004, 30.370000004, 1e-6)]
    [InlineData(30.3700004, 30.3700004, 1e-6)]
    public void Edge_BesideAFigureOfFewDigits_IsThatFigureWhereItHolds(double edge, double expected, double tolerance)
    {
        double minimum = Minimum(figure => figure - edge).Value!.Value;
        Assert.InRange(minimum, expected, expected + tolerance);
        Assert.NotEqual(tolerance > 0, minimum == 30.37);

        // The same from above, about 96 − 30.37 = 65.63.
        double maximum = Maximum(figure => End - edge - figure).Value!.Value;
        Assert.InRange(maximum, End - expected - tolerance, End - expected + 1e-12);
        Assert.NotEqual(tolerance > 0, maximum == 65.63);
    }

    /// <summary>Ends that are no figures of six decimals, the nearest of which do not hold, stay as they are.</summary>
    [Fact]
    public void Range_WithoutAFigureOfFewDigits_KeepsItsOwnEnds()
    {
        SizingRange<double> range = Assert.Single(Minimum(figure => figure < 30 || figure > 31 ? -1 : Math.Min(figure - 30.2000004, 30.7000004 - figure)).Ranges);
        Assert.InRange(range.Minimum, 30.2000004, 30.2000005);
        Assert.InRange(range.Maximum, 30.7000003, 30.7000004);
    }

    /// <summary>
    /// What follows from the figure is 100 − (x − 30.26)²/10, and all holds up to x = 60.57: the highest is 100, at 30.26, the lowest at 0, 8.4.
    /// </summary>
    [Fact]
    public void MaximumOf_AnOutputWithItsPeakWithinTheRange_IsThePeak()
    {
        SizingAnswer<double> answer = MaximumOf(figure => 100 - (Math.Pow(figure - 30.26, 2) / 10), figure => 60.57 - figure);
        Assert.Equal(100, answer.Value!.Value, 1e-9);
        SizingRange<double> range = Assert.Single(answer.Ranges);
        Assert.Equal(100 - (Math.Pow(60.57 - 30.26, 2) / 10), range.Minimum, 1e-6);
        Assert.Equal(100, range.Maximum, 1e-9);
        Assert.StartsWith("At most 100.00, reached at 30.3: ", answer.ToString().Replace("99.99,", "100.00,", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.True(answer.IsFeasible);
    }

    /// <summary>An output that rises with the figure is highest at its end, which is rounded down; the output too.</summary>
    [Fact]
    public void MaximumOf_AnOutputThatRises_IsThatAtTheEnd()
    {
        SizingAnswer<double> answer = MaximumOf(figure => 3 + (2 * figure), figure => 60.57 - figure);
        Assert.Equal(124.14, answer.Value!.Value, 1e-6);
        SizingRange<double> range = Assert.Single(answer.Ranges);
        Assert.Equal(3, range.Minimum, 1e-6);
        Assert.Equal(124.14, range.Maximum, 1e-6);
        Assert.Matches(@"^At most 124\.1[34], reached at 60\.5: limited by injectors \(", answer.ToString());

        // One that falls is highest with none.
        SizingAnswer<double> falls = MaximumOf(figure => 50 - figure, figure => 60.57 - figure);
        Assert.Equal(50, falls.Value!.Value, 1e-6);
        Assert.Equal(50 - 60.57, falls.Ranges[0].Minimum, 1e-6);
    }

    /// <summary>Only the range from the start on counts for the answer; of the one that follows the lowest and highest are given too.</summary>
    [Fact]
    public void MaximumOf_AnOutputOverTwoRanges_IsThatOfTheFirst()
    {
        SizingAnswer<double> answer = MaximumOf(figure => 2 * figure, figure => Math.Abs(figure - 40) - 10);
        Assert.Equal(60, answer.Value!.Value, 1e-6);
        Assert.Equal(2, answer.Ranges.Count);
        Assert.Equal((100, 192), (Math.Round(answer.Ranges[1].Minimum, 5), Math.Round(answer.Ranges[1].Maximum, 5)));
        Assert.Contains("; over 30.0 not everything holds, and again it does from 50.0 to 96.0.", answer.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Where nothing holds, or not from the start on, there is no answer, and the words are those of the figure.</summary>
    [Fact]
    public void MaximumOf_WhereNothingHoldsFromTheStart_IsNone()
    {
        SizingAnswer<double> none = MaximumOf(figure => 2 * figure, _ => -0.5);
        Assert.Null(none.Value);
        Assert.Empty(none.Ranges);
        Assert.Equal(Minimum(_ => -0.5).ToString(), none.ToString());

        SizingAnswer<double> late = MaximumOf(figure => 2 * figure, figure => figure - 10.5);
        Assert.Null(late.Value);
        Assert.Null(late.Figure);
        SizingRange<double> range = Assert.Single(late.Ranges);
        Assert.Equal(21, range.Minimum, 1e-6);
        Assert.Equal(192, range.Maximum, 1e-6);
        Assert.Equal(Maximum(figure => figure - 10.5).ToString(), late.ToString());
    }

    private static SizingAnswer<double> MaximumOf(Func<double, double> amount, params Func<double, double>[] reserves) => Over(reserves).MaximumOf(
        new SizedFigure<double>(amount, (output, other) => Statement.Of("output", $"{output.Towards(other):0.00}"), figure => figure), Figure, amount);

    private static SizingAnswer<double> Minimum(params Func<double, double>[] reserves) =>
        Over(reserves).Minimum(Figure);

    private static SizingAnswer<double> Maximum(params Func<double, double>[] reserves) =>
        Over(reserves).Maximum(Figure);

    private static SizedFigure<double> Figure { get; } =
        new(figure => figure, (figure, other) => Statement.Of("figure", $"{figure.Towards(other):0.0}"), figure => Math.Round(figure, 6));

    private static Statement Text(double figure, double towards) => Statement.Of("figure", $"{figure.Towards(towards):0.0}");

    /// <summary>A search among results that have these reserves, one result for each; no figure outside the range may be asked for.</summary>
    private static SizingSearch Over(params Func<double, double>[] reserves) => new(0, End, reserves.Length, figure =>
    {
        Assert.InRange(figure, 0, End);
        return Sized(point => WithReserve(reserves[point](figure)));
    });

    private static SizedSystem Sized(Func<int, OperatingResult> solve) =>
        new(point => [.. solve(point).Margins.Select(margin => margin.Reading)], solve);

    /// <summary>A result in which the injectors have this margin, and every other part much more.</summary>
    private static OperatingResult WithReserve(double reserve) =>
        new(Wide, At, Demand, Wide.Parts.CircuitOf(Wide.Parts.TaskAt(Demand), CircuitBounds.Exactly(Circuit)), (ReserveOf(reserve), ReserveOf(reserve)));

    private static Injection ReserveOf(double reserve) =>
        new(250e3, 15e-6, 0.04, 1e-3, 1, 0.5, (1 + reserve) * Demand.Injected);
}
