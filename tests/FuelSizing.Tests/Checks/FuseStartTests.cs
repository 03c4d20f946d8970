using FuelSizing.Checks;
using FuelSizing.Electrical;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Checks;

/// <summary>
/// A fuse of 20 A that at 1.5 times its rating opens between 2 and 400 s, at 2.5 times between 0.2 and 6 s, at 5 times between 0.05 and 0.4 s, all invented: by hand, what it surely carries, and has
/// surely opened within, at currents on and between the stated ones.
/// </summary>
public class FuseStartTests
{
    private static readonly FuseTimeCurrent Times = FuseTimeCurrent.Of(
        (1.5, Seconds(2), Seconds(400)), (2.5, Seconds(0.2), Seconds(6)), (5, Seconds(0.05), Seconds(0.4)));

    /// <summary>46 A are 2.3 times: the fuse carries them at least as long as 2.5 times, 0.2 s, and opens no later than at 1.5 times, within 400 s.</summary>
    [Theory]
    [InlineData(46, 0.19, Outcome.Holds)]
    [InlineData(46, 0.2, Outcome.Holds)]
    [InlineData(46, 0.21, Outcome.CannotSay)]
    [InlineData(50, 0.2, Outcome.Holds)]
    [InlineData(51, 0.06, Outcome.CannotSay)]
    [InlineData(51, 7, Outcome.Fails)]
    [InlineData(100, 0.05, Outcome.Holds)]
    [InlineData(100, 0.41, Outcome.Fails)]
    [InlineData(101, 0.02, Outcome.CannotSay)]
    [InlineData(101, 0.41, Outcome.Fails)]
    [InlineData(25, 1.9, Outcome.Holds)]
    [InlineData(25, 59, Outcome.CannotSay)]
    public void Start_IsJudgedByTheTimesOnEitherSide(double amperes, double seconds, Outcome expected) =>
        Assert.Equal(expected, Find(Solve(MotorStart.Of(Amperes(amperes), Seconds(seconds))), Part.FuseStart).Outcome);

    /// <summary>The other way round: it has to have opened.</summary>
    [Theory]
    [InlineData(46, 400, Outcome.Holds)]
    [InlineData(46, 399, Outcome.CannotSay)]
    [InlineData(46, 0.19, Outcome.Fails)]
    [InlineData(50, 6, Outcome.Holds)]
    [InlineData(100, 0.4, Outcome.Holds)]
    [InlineData(100, 0.04, Outcome.Fails)]
    [InlineData(300, 0.4, Outcome.Holds)]
    [InlineData(300, 0.1, Outcome.CannotSay)]
    [InlineData(29, 3000, Outcome.CannotSay)]
    [InlineData(29, 1.9, Outcome.Fails)]
    public void LockedRotor_IsJudgedByTheTimesOnEitherSide(double amperes, double seconds, Outcome expected) =>
        Assert.Equal(expected, Find(Solve(MotorStart.Of(Amperes(amperes), opensWithin: Seconds(seconds))), Part.LockedRotor).Outcome);

    /// <summary>Of what is not given nothing is judged: with nothing at all it is not missed, with the one it is said that the other is.</summary>
    [Fact]
    public void WithHalfOfIt_IsNotJudgedAndSaysSo()
    {
        Feed feed = FeedOf();
        OperatingResult none = Wren.System(pump: 1).With(Wren.WiredPump.WithFeed(feed.WithFuse(Amperes(20)))).Solve(Wren.At(4000, 0.3));
        Assert.DoesNotContain(none.System.NotJudged, open => open.Part == Part.FuseStart || open.Part == Part.LockedRotor);
        OperatingResult half = Wren.System(pump: 1).With(Wren.WiredPump.WithFeed(feed.WithFuse(Amperes(20), Times))).Solve(Wren.At(4000, 0.3));
        Assert.Contains(half.System.NotJudged, open => open.Part == Part.FuseStart);
        Assert.Contains(half.System.NotJudged, open => open.Part == Part.LockedRotor);
        Assert.Contains(Solve(MotorStart.Of(Amperes(46), Seconds(0.1))).System.NotJudged, open => open.Part == Part.LockedRotor);
    }

    /// <summary>The same pump twice has a feed and a fuse each: 46 A for 0.2 s through either, as by itself.</summary>
    [Fact]
    public void SamePumpTwice_HasAFuseEach()
    {
        Pump own = Wren.WiredPump.WithFeed(FeedOf().WithFuse(Amperes(20), Times).WithStart(MotorStart.Of(Amperes(46), Seconds(0.2))));
        Assert.Equal(Outcome.Holds, Find(Wren.System(pump: 1).With(PumpParallel.Of(own, own)).Solve(Wren.At(4000, 0.3)), Part.FuseStart).Outcome);
    }

    /// <summary>Two motors on one fuse start together: 2 × 46 A are 4.6 times, which it surely carries for 0.05 s; one that is locked counts by itself.</summary>
    [Fact]
    public void MotorsOnOneFuse_StartTogetherAndLockAlone()
    {
        Feed trunk = FeedOf().WithFuse(Amperes(20), Times);
        Pump Hung(double seconds) => Wren.WiredPump.WithFeed(
            Feed.Of("branch", Conductor.Awg(14), Length.FromMeters(0.5), Length.FromMeters(0.5), Temperature.FromDegreesCelsius(60))
                .WithStart(MotorStart.Of(Amperes(46), Seconds(seconds), Seconds(400)))
                .WithShared(trunk));
        FuelSystem Both(double one, double other) => Wren.System(pump: 1).With(PumpParallel.Of(Hung(one), Hung(other)));
        Assert.Equal(Outcome.Holds, Find(Both(0.04, 0.05).Solve(Wren.At(4000, 0.3)), Part.FuseStart).Outcome);
        Assert.Equal(Outcome.CannotSay, Find(Both(0.04, 0.06).Solve(Wren.At(4000, 0.3)), Part.FuseStart).Outcome);
        Assert.Equal(Outcome.Holds, Find(Both(0.04, 0.05).Solve(Wren.At(4000, 0.3)), Part.LockedRotor).Outcome);
    }

    [Fact]
    public void Times_OutOfOrder_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => FuseTimeCurrent.Of((2, Seconds(1), Seconds(2)), (1.5, Seconds(1), Seconds(2))));
        Assert.Throws<ArgumentOutOfRangeException>(() => FuseTimeCurrent.Of((2, Seconds(1), Seconds(2)), (3, Seconds(1), Seconds(3))));
        Assert.Throws<ArgumentOutOfRangeException>(() => FuseTimeCurrent.Of((2, Seconds(2), Seconds(1))));
        Assert.Throws<ArgumentException>(() => FeedOf().WithShared(FeedOf().WithStart(MotorStart.Of(Amperes(40)))));
    }

    private static OperatingResult Solve(MotorStart start) => Wren.System(pump: 1)
        .With(Wren.WiredPump.WithFeed(FeedOf().WithFuse(Amperes(20), Times).WithStart(start)))
        .Solve(Wren.At(4000, 0.3));

    private static Feed FeedOf() => Feed.Of(
        "feed", Conductor.Awg(12), Length.FromMeters(4), Length.FromMeters(4), Temperature.FromDegreesCelsius(60), Contact.DefaultFuse);

    private static ElectricCurrent Amperes(double amperes) => ElectricCurrent.FromAmperes(amperes);

    private static Duration Seconds(double seconds) => Duration.FromSeconds(seconds);
}
