using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>
/// What a sweep looks at between its points, and what it finds there: margins that are formulas of speed, rev/min, and boost, kPa, so that every
/// answer is known beforehand. Between 5,000 and 6,000 rev/min Wren has no knots, nor any over boost.
/// </summary>
public class RangeSearchTests
{
    /// <summary>A range that is small and far from every limit costs its own points; one that is wide, or less far, the nine of a rectangle.</summary>
    [Theory]
    [InlineData(5100, 5800, 20, 4)]
    [InlineData(5100, 5866, 20, 9)]
    [InlineData(5100, 5864, 20, 4)]
    [InlineData(5100, 5800, 20.001, 9)]
    [InlineData(5100, 5101, 400, 9)]
    public void Points_FarFromALimit_AreFewWhereTheRangeIsSmall(double slow, double fast, double high, int expected) =>
        Assert.Equal(expected, Over((_, _) => 0.5, [slow, fast], [0, high]).Count);

    /// <summary>
    /// Far is a tenth and what the margin changes by from corner to corner: 0.15 with 0.04 of change is, 0.15 with 0.06 is not. Over +100 % all
    /// margins are one; what cannot be said has none.
    /// </summary>
    [Theory]
    [InlineData(0.101, 0.101, 4)]
    [InlineData(0.099, 0.099, 9)]
    [InlineData(0.15, 0.19, 4)]
    [InlineData(0.15, 0.21, 9)]
    [InlineData(1.2, 5, 4)]
    [InlineData(1.2, double.PositiveInfinity, 4)]
    [InlineData(double.NaN, double.NaN, 4)]
    [InlineData(double.NaN, 0.11, 4)]
    [InlineData(double.NaN, 0.09, 9)]
    [InlineData(-0.3, 0.5, 9)]
    public void Points_OfASmallRange_AreFewWhereItsCornersAreFarFromALimit(double first, double second, int expected)
    {
        Assert.Equal(expected, Over((rpm, _) => rpm < 5150 ? first : second, [5100, 5200], [0, 5]).Count);
        Assert.Equal(expected, Over((_, boost) => boost < 2.5 ? first : second, [5100, 5200], [0, 5]).Count);
    }

    [Fact]
    public void Points_OfOneSpeedOrOneBoost_LieOnItsLine()
    {
        Assert.Equal([(5500, 10)], Places(Over((_, _) => 0.01, [5500], [10])));
        Assert.Equal([(5500, 10), (5500, 25), (5500, 40)], Places(Over((_, _) => 0.01, [5500], [10, 40])));
        Assert.Equal([(5000, 10), (5500, 10), (6000, 10)], Places(Over((_, _) => 0.01, [5000, 6000], [10])));
        Assert.Equal(
            [(5000, 0), (5000, 15), (5000, 30), (5500, 0), (5500, 15), (5500, 30), (6000, 0), (6000, 15), (6000, 30)],
            Places(Over((_, _) => 0.01, [5000, 6000], [0, 30])));
    }

    /// <summary>
    /// A straight margin from 0.5 down to its end over 5,000 to 6,000: a rectangle is halved while its least is under 2 % of its change, then
    /// 2 % · 0.7, 2 % · 0.49 of it. 0.0099 of 0.5; 0.0035 of 0.25; 0.0012 of 0.125.
    /// </summary>
    [Theory]
    [InlineData(0.0100, new double[0])]
    [InlineData(0.0040, new double[] { 5250, 5750 })]
    [InlineData(0.0030, new double[] { 5250, 5625, 5750, 5875 })]
    public void Points_OfAStraightMargin_AreAddedNearItsLimit(double end, double[] between)
    {
        RangeSearch search = Over((rpm, _) => end + ((0.5 - end) * (6000 - rpm) / 1000), [5000, 6000], [10]);
        Assert.Equal([.. between.Concat([5000, 5500, 6000]).Order()], Places(search).Select(place => place.Item1));
        Assert.False(search.IsOpen(0));

        // The same margin over boost, and in the other direction.
        RangeSearch upward = Over((_, boost) => end + ((0.5 - end) * (30 - boost) / 30), [5500], [0, 30]);
        Assert.Equal([.. between.Concat([5000, 5500, 6000]).Order().Select(rpm => (rpm - 5000) * 30 / 1000)], Places(upward).Select(place => place.Item2));
        RangeSearch downward = Over((_, boost) => end + ((0.5 - end) * boost / 30), [5500], [0, 30]);
        Assert.Equal([.. between.Concat([5000, 5500, 6000]).Order().Select(rpm => (6000 - rpm) * 30 / 1000).Order()], Places(downward).Select(place => place.Item2));
    }

    /// <summary>
    /// A bowl of 0.15 from rim to middle is off its straight line by 0.15: it may dip by 1.5 times that and 2 % of the change, 0.228 in all. Of its
    /// halves each is off by a quarter of that.
    /// </summary>
    [Theory]
    [InlineData(0.230, 3)]
    [InlineData(0.226, 5)]
    public void Points_OfABowl_AreAddedWhereItsCurveMightReachItsLimit(double middle, int expected)
    {
        double Bowl(double share) => middle + (0.15 * 4 * (share - 0.5) * (share - 0.5));
        Assert.Equal(expected, Over((rpm, _) => Bowl((rpm - 5000) / 1000), [5000, 6000], [10]).Count);
        Assert.Equal(expected, Over((_, boost) => Bowl(boost / 30), [5500], [0, 30]).Count);

        // Over a rectangle each half has a row of three more.
        int rows = expected == 3 ? 9 : 15;
        RangeSearch across = Over((rpm, _) => Bowl((rpm - 5000) / 1000), [5000, 6000], [0, 30]);
        Assert.Equal((rows, rows / 3, 3), (across.Count, Places(across).Select(place => place.Item1).Distinct().Count(), Places(across).Select(place => place.Item2).Distinct().Count()));
        RangeSearch upward = Over((_, boost) => Bowl(boost / 30), [5000, 6000], [0, 30]);
        Assert.Equal((rows, 3, rows / 3), (upward.Count, Places(upward).Select(place => place.Item1).Distinct().Count(), Places(upward).Select(place => place.Item2).Distinct().Count()));
    }

    /// <summary>A dip between the points, along speed, along boost, and aslant: found where it breaks the limit, and not claimed where it does not.</summary>
    [Theory]
    [InlineData(-0.002, Outcome.Fails)]
    [InlineData(0, Outcome.Holds)]
    [InlineData(0.004, Outcome.Holds)]
    public void Dip_BetweenThePoints_IsFoundAtItsPlace(double bottom, Outcome expected)
    {
        PartStanding alongSpeed = Sweep((rpm, _) => bottom + Square((rpm - 5321) / 500), [5000, 6000], [10]).Limiting;
        PartStanding alongBoost = Sweep((_, boost) => bottom + Square((boost - 17.3) / 20), [5500], [0, 40]).Limiting;
        PartStanding aslant = Sweep(
            (rpm, boost) => bottom + Square((rpm - 5321) / 500) + Square((boost - 17.3) / 20) + ((rpm - 5321) / 500 * (boost - 17.3) / 20), [5000, 6000], [0, 40]).Limiting;
        Assert.Equal((expected, expected, expected), (alongSpeed.Outcome, alongBoost.Outcome, aslant.Outcome));
        Assert.All([alongSpeed, alongBoost, aslant], standing =>
        {
            Assert.False(standing.IsOpen);
            Assert.Equal(bottom, standing.Tightest.Margin.Share!.Value, 1e-6);
            Assert.Equal(expected == Outcome.Fails, standing.LimitReachedAt is not null);
        });
        Assert.Equal(5321, alongSpeed.Tightest.Point.Speed.RevolutionsPerMinute, 1.0);
        Assert.Equal(17.3, alongBoost.Tightest.Point.Boost.Kilopascals, 0.05);
        Assert.Equal(5321, aslant.Tightest.Point.Speed.RevolutionsPerMinute, 1.0);
        Assert.Equal(17.3, aslant.Tightest.Point.Boost.Kilopascals, 0.05);
    }

    /// <summary>Along a kink middles stay off the straight line however small the rectangle: its least is looked for, and it is not left open.</summary>
    [Theory]
    [InlineData(-0.0001, Outcome.Fails)]
    [InlineData(0.0001, Outcome.Holds)]
    public void Kink_BetweenThePoints_IsSettled(double bottom, Outcome expected)
    {
        SweepResult[] sweeps =
        [
            Sweep((rpm, _) => bottom + (Math.Abs(rpm - 5321) / 500), [5000, 6000], [10]),
            Sweep((_, boost) => bottom + (Math.Abs(boost - 17.3) / 20), [5500], [0, 40]),
        ];
        Assert.All(sweeps, sweep =>
        {
            Assert.Equal((expected, false), (sweep.Limiting.Outcome, sweep.Limiting.IsOpen));
            Assert.Equal(bottom, sweep.Limiting.Tightest.Margin.Share!.Value, 2e-5);
            Assert.InRange(sweep.PointsSolved, 10, 100);
        });
    }

    /// <summary>
    /// Where a kink along speed crosses one along boost the margin dips by both: a quarter of the way along each side the nine points stand half of the slope
    /// over the bottom, and each line of three shows a quarter of it.
    /// </summary>
    [Theory]
    [InlineData(-0.01, Outcome.Fails)]
    [InlineData(0.01, Outcome.Holds)]
    public void Kinks_ThatCross_DipByBoth(double bottom, Outcome expected)
    {
        SweepResult sweep = Sweep((rpm, boost) => bottom + (0.6 * ((Math.Abs(rpm - 5250) / 1000) + (Math.Abs(boost - 40) / 160))), [5000, 6000], [0, 160]);
        Assert.Equal((expected, false), (sweep.Limiting.Outcome, sweep.Limiting.IsOpen));
        Assert.Equal(bottom, sweep.Limiting.Tightest.Margin.Share!.Value, 1e-4);
    }

    /// <summary>A margin with more than a tenth left is shown as it is at the points that were solved; a tighter one at its very bottom.</summary>
    [Fact]
    public void Tightest_WithMuchLeft_IsThatOfThePointsSolved()
    {
        PartStanding ample = Sweep((rpm, _) => 0.3 + Square((rpm - 5321) / 500), [5000, 6000], [10]).Limiting;
        Assert.Equal(5500, ample.Tightest.Point.Speed.RevolutionsPerMinute, 1e-9);
        Assert.Equal(0.3 + Square(179 / 500.0), ample.Tightest.Margin.Share!.Value, 1e-9);
        PartStanding tight = Sweep((rpm, _) => 0.05 + Square((rpm - 5321) / 500), [5000, 6000], [10]).Limiting;
        Assert.Equal(0.05, tight.Tightest.Margin.Share!.Value, 1e-8);

        // At the range's end the search stays within it.
        PartStanding rising = Sweep((rpm, boost) => 0.02 + ((rpm - 5000) / 10_000) + (boost / 1000), [5000, 6000], [10, 40]).Limiting;
        Assert.Equal((5000, 10), (rising.Tightest.Point.Speed.RevolutionsPerMinute, rising.Tightest.Point.Boost.Kilopascals));
        PartStanding falling = Sweep((rpm, boost) => 0.02 + ((6000 - rpm) / 10_000) + ((40 - boost) / 1000), [5000, 6000], [10, 40]).Limiting;
        Assert.Equal((6000, 40), (falling.Tightest.Point.Speed.RevolutionsPerMinute, falling.Tightest.Point.Boost.Kilopascals));
    }

    /// <summary>The limit lies at 40 kPa and more, by the square of how far the speed is off: the lowest boost at which it is reached is 40 kPa.</summary>
    [Theory]
    [InlineData(5230)]
    [InlineData(5470)]
    [InlineData(5000)]
    [InlineData(5770)]
    [InlineData(6000)]
    public void FirstLimit_OfAValleyOverSpeed_IsItsBottom(double at)
    {
        OperatingPoint first = Sweep((rpm, boost) => (40 + Square((rpm - at) / 100) - boost) / 100, [5000, 6000], [0, 50, 100]).Limiting.LimitReachedAt!;
        Assert.Equal(40, first.Boost.Kilopascals, 1e-3);
        Assert.Equal(at, first.Speed.RevolutionsPerMinute, 1.0);
    }

    /// <summary>Of two valleys the lower counts, whichever comes first, and whether or not a point of the sweep lies in it.</summary>
    [Theory]
    [InlineData(40, 42, 5140)]
    [InlineData(42, 40, 5860)]
    public void FirstLimit_OfTwoValleys_IsTheLower(double left, double right, double expected)
    {
        double Limit(double rpm) => Math.Min(left + Square((rpm - 5140) / 60), right + Square((rpm - 5860) / 60));
        OperatingPoint first = Sweep((rpm, boost) => (Limit(rpm) - boost) / 100, [5000, 5500, 6000], [0, 50, 100]).Limiting.LimitReachedAt!;
        Assert.Equal(40, first.Boost.Kilopascals, 1e-3);
        Assert.Equal(expected, first.Speed.RevolutionsPerMinute, 1.0);
    }

    /// <summary>Of four valleys the lowest counts, wherever it lies.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void FirstLimit_OfFourValleys_IsTheLowest(int lowest)
    {
        double Limit(double rpm) => Enumerable.Range(0, 4).Min(valley => (valley == lowest ? 40 : 43 + valley) + Square((rpm - (5125 + (250 * valley))) / 40));
        OperatingPoint first = Sweep((rpm, boost) => (Limit(rpm) - boost) / 100, [5000, 5250, 5500, 5750, 6000], [0, 50, 100]).Limiting.LimitReachedAt!;
        Assert.Equal(40, first.Boost.Kilopascals, 1e-3);
        Assert.Equal(5125 + (250 * lowest), first.Speed.RevolutionsPerMinute, 1.0);
    }

    /// <summary>A wide valley has its lowest boost at points side by side; a narrow one, lower but only between points, is looked into all the same.</summary>
    [Theory]
    [InlineData(5200, 5850)]
    [InlineData(5800, 5150)]
    public void FirstLimit_OfANarrowValleyBesideAWideOne_IsFound(double wide, double narrow)
    {
        double Limit(double rpm) => Math.Min(Math.Abs(rpm - wide) < 240 ? 40 + (0.1 * Square((rpm - wide) / 100)) : 60, 39 + Square((rpm - narrow) / 25));
        OperatingPoint first = Sweep(
            (rpm, boost) => (Limit(rpm) - boost) / 100, [5000, 5100, 5200, 5300, 5400, 5500, 5600, 5700, 5800, 5900, 6000], [0, 70]).Limiting.LimitReachedAt!;
        Assert.Equal(39, first.Boost.Kilopascals, 0.01);
        Assert.Equal(narrow, first.Speed.RevolutionsPerMinute, 3.0);
    }

    /// <summary>Where it fails, holds again and fails for good, the limit is reached where it fails first.</summary>
    [Fact]
    public void FirstLimit_OfWhatHoldsAgain_IsTheLowerOne()
    {
        PartStanding standing = Sweep((_, boost) => boost is > 31 and < 36 or > 64 ? -0.2 : 0.5, [5500], [0, 10, 33, 40, 50, 60, 70]).Limiting;
        Assert.Equal(31, standing.LimitReachedAt!.Boost.Kilopascals, 1e-6);
    }

    /// <summary>Where it fails from the start the limit is reached at the lowest boost, at the speed with the worst margin there.</summary>
    [Fact]
    public void FirstLimit_OfWhatFailsAtTheLowestBoost_IsThere()
    {
        OperatingPoint first = Sweep((rpm, boost) => -0.1 - (Square((rpm - 5500) / 500) / 10) + (boost / 1000), [5000, 5500, 6000], [10, 40]).Limiting.LimitReachedAt!;
        Assert.Equal(10, first.Boost.Kilopascals, 1e-9);
        Assert.Contains(first.Speed.RevolutionsPerMinute, new[] { 5000.0, 6000 });
        OperatingPoint one = Sweep((rpm, boost) => (rpm - 5990) / 1000, [5000, 6000], [10, 40]).Limiting.LimitReachedAt!;
        Assert.Equal((5000, 10), (one.Speed.RevolutionsPerMinute, one.Boost.Kilopascals));
    }

    /// <summary>What cannot be said has not failed yet: between 20 and 33 kPa nothing is known, from there on it fails.</summary>
    [Fact]
    public void FirstLimit_PastAGap_IsWhereItIsKnownToFail()
    {
        PartStanding standing = Sweep((_, boost) => boost < 20 ? 0.5 : boost < 33 ? double.NaN : -0.2, [5500], [0, 60]).Limiting;
        Assert.Equal(Outcome.Fails, standing.Outcome);
        Assert.Equal(33, standing.LimitReachedAt!.Boost.Kilopascals, 1e-6);

        // A jump to a margin without a figure is one too.
        PartStanding infinite = Sweep((_, boost) => boost < 33 ? double.PositiveInfinity : double.NegativeInfinity, [5500], [0, 60]).Limiting;
        Assert.Equal((Outcome.Fails, true), (infinite.Outcome, infinite.Tightest.Margin.Share is null));
        Assert.Equal(33, infinite.LimitReachedAt!.Boost.Kilopascals, 1e-6);
    }

    [Fact]
    public void Standing_OfWhatCannotBeSaidSomewhere_CannotBeSaid()
    {
        SweepResult sweep = Sweep((rpm, _) => rpm > 5900 ? double.NaN : 0.01, [5000, 6000], [10]);
        Assert.Equal(Outcome.CannotSay, sweep.Limiting.Outcome);
        Assert.Equal(6000, sweep.Limiting.Tightest.Point.Speed.RevolutionsPerMinute, 1e-9);
        Assert.StartsWith("Cannot be judged over 0.10 bar to 0.10 bar, 5,000 rev/min to 6,000 rev/min", sweep.ToString(), StringComparison.Ordinal);
        Assert.Empty(sweep.Remedies);
    }

    /// <summary>In a small rectangle of which one end cannot be said, a dip under the limit beside it is found all the same.</summary>
    [Fact]
    public void Dip_BesideWhatCannotBeSaid_Fails()
    {
        PartStanding standing = Sweep((rpm, _) => rpm < 5110 ? double.NaN : (Square((rpm - 5150) / 50) / 10) - 0.01, [5100, 5200], [10]).Limiting;
        Assert.Equal(Outcome.Fails, standing.Outcome);
        Assert.Equal(5150, standing.Tightest.Point.Speed.RevolutionsPerMinute, 1.0);
    }

    /// <summary>Along a line the limit is reached at a speed: where the margin falls through nought, jumps under it, or is under it from the start.</summary>
    [Fact]
    public void FirstLimit_AlongALine_IsTheLowestSpeedAtWhichItFails()
    {
        static OperatingPoint? First(Func<double, double> margin) => Along((rpm, _) => margin(rpm)).Limiting.LimitReachedAt;
        Assert.Equal(5234, First(rpm => (5234 - rpm) / 1000)!.Speed.RevolutionsPerMinute, 1e-6);
        Assert.Equal(5234, First(rpm => rpm < 5234 ? 0.5 : -0.5)!.Speed.RevolutionsPerMinute, 1e-6);
        Assert.Equal(5234, First(rpm => rpm < 5180 ? 0.5 : rpm < 5234 ? double.NaN : -0.5)!.Speed.RevolutionsPerMinute, 1e-6);
        Assert.Equal(5234, First(rpm => rpm < 5234 ? double.PositiveInfinity : double.NegativeInfinity)!.Speed.RevolutionsPerMinute, 1e-6);
        Assert.Equal(5000, First(rpm => (rpm - 5990) / 1000)!.Speed.RevolutionsPerMinute, 1e-9);
        Assert.Equal(5321, First(rpm => (Math.Abs(rpm - 5400) - 79) / 1000)!.Speed.RevolutionsPerMinute, 1e-6);
        Assert.Null(First(rpm => 0.001 + Square((rpm - 5321) / 500)));
    }

    /// <summary>Along a line the first limit is that of the check that fails at the lowest speed, and the tightest margin lies on the line.</summary>
    [Fact]
    public void Dip_AlongALine_IsFoundAtItsPlace()
    {
        LineSweepResult holding = Along((rpm, boost) => 0.004 + Square((rpm - 5321) / 500) + ((boost - ((rpm - 4000) / 50)) * 1e3));
        Assert.Equal(0.004, holding.Limiting.Tightest.Margin.Share!.Value, 1e-6);
        Assert.Equal(5321, holding.Limiting.Tightest.Point.Speed.RevolutionsPerMinute, 1.0);
        Assert.Equal((5321 - 4000) / 50.0, holding.Limiting.Tightest.Point.Boost.Kilopascals, 0.02);
        LineSweepResult failing = Along((rpm, _) => -0.002 + Square((rpm - 5321) / 500));
        Assert.Equal(Outcome.Fails, failing.Verdict.Outcome);
        Assert.Equal(-0.002, failing.Limiting.Tightest.Margin.Share!.Value, 1e-6);
        Assert.Equal(5321 - (500 * Math.Sqrt(0.002)), failing.Limiting.LimitReachedAt!.Speed.RevolutionsPerMinute, 1e-5);
        Assert.Equal(Part.Of("own.shape", "shape"), failing.Remedies.Single().Part);
    }

    /// <summary>Half of the way to the farther of the lines beside a place, along each direction; none where there is one line.</summary>
    [Fact]
    public void Steps_AroundAPlace_AreHalfOfTheWayToTheNextLine()
    {
        RangeSearch search = Over((_, _) => 0.5, [5000, 5400, 6000], [10, 30, 100]);
        (double, double) Around(RangeSearch search, double rpm, double boost)
        {
            (double speed, double pascals) = search.StepsAround(search.At(rpm, boost * 1e3));
            return (Math.Round(speed, 6), Math.Round(pascals / 1e3, 6));
        }

        Assert.Equal((300, 35), Around(search, 5400, 30));
        Assert.Equal((200, 10), Around(search, 5000, 10));
        Assert.Equal((300, 35), Around(search, 6000, 100));
        Assert.Equal((150, 5), Around(search, 5300, 20));
        Assert.Equal((0, 0), Around(Over((_, _) => 0.5, [5400], [30]), 5400, 30));
        Assert.Equal((250, 0), Around(Over((_, _) => 0.5, [5000, 5500], [30]), 5500, 30));
        foreach ((double rpm, double boost, bool within) in new[] { (5000.0, 10.0, true), (6000, 100, true), (5200, 50, true), (4999, 50, false), (6001, 50, false), (5200, 9, false), (5200, 101, false) })
        {
            Assert.Equal(within, search.Within(rpm, boost * 1e3) != FiguresByPlace.None);
        }

        Assert.Equal(5200, search.PointAt(search.Within(5200, 50e3)).Speed.RevolutionsPerMinute, 1e-9);
    }

    /// <summary>A line through a bend of the parts is one of the lines: Wren's tables have a point at 5,000 rev/min, whether or not it was asked for.</summary>
    [Fact]
    public void Lines_OfASweep_AreItsOwnAndThoseOfTheKnots()
    {
        Assert.Equal([(4900, 10), (5000, 10), (5500, 10), (6000, 10)], Places(Over((_, _) => 0.5, [4900, 6000], [10])));
        Assert.Equal(4, Over((_, _) => 0.5, [4900, 5000, 6000], [10]).Count);
        PartStanding atKnot = Sweep((rpm, boost) => Math.Abs(rpm - 5000) < 0.1 && Math.Abs(boost) < 0.01 ? -0.1 : 0.5, [4800, 5600], [-20, 30]).Limiting;
        Assert.Equal((Outcome.Fails, 5000), (atKnot.Outcome, Math.Round(atKnot.Tightest.Point.Speed.RevolutionsPerMinute, 6)));

        // Along a line that passes a rising rate's onset of 27 kPa at 5,350 rev/min, and Wren's 5,000.
        foreach (double knot in new[] { 5350.0, 5000 })
        {
            FuelSystem system = ShapedCheck.Judging(at => Math.Abs((at.Speed * 60) - knot) < 0.1 ? -0.1 : 0.5, Wren.System(FuelSizing.Regulators.RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(27))));
            LineSweepResult along = system.Sweep(MeasuredBoost.Of((Wren.Rpm(4000), Pressure.Zero), (Wren.Rpm(6500), Wren.Kpa(50))), [Wren.Rpm(4700), Wren.Rpm(6100)]);
            Assert.Equal((Outcome.Fails, knot), (along.Limiting.Outcome, Math.Round(along.Limiting.Tightest.Point.Speed.RevolutionsPerMinute, 4)));
        }
    }

    private static double Square(double of) => of * of;

    private static RangeSearch Over(Func<double, double, double> margin, double[] speeds, double[] boosts)
    {
        FuelSystem system = ShapedCheck.Judging(margin);
        return RangeSearch.Over(
            system, null, [.. speeds.Select(Wren.Rpm)], [.. boosts.Select(Wren.Kpa)], Conditions.Default, null, CancellationToken.None)!;
    }

    private static SweepResult Sweep(Func<double, double, double> margin, double[] speeds, double[] boosts) =>
        ShapedCheck.Judging(margin).Sweep([.. speeds.Select(Wren.Rpm)], [.. boosts.Select(Wren.Kpa)]);

    /// <summary>From 5,000 to 6,000 rev/min along 20 to 40 kPa.</summary>
    private static LineSweepResult Along(Func<double, double, double> margin) => ShapedCheck.Judging(margin).Sweep(
        MeasuredBoost.Of((Wren.Rpm(4000), Pressure.Zero), (Wren.Rpm(6500), Wren.Kpa(50))), [Wren.Rpm(5000), Wren.Rpm(6000)]);

    private static IEnumerable<(double, double)> Places(RangeSearch search) => search.Results()
        .Select(point => (Math.Round(point.Point.Speed.RevolutionsPerMinute, 6), Math.Round(point.Point.Boost.Kilopascals, 6))).Order();
}
