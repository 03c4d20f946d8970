using FuelSizing.Findings;

namespace FuelSizing.Tests.Findings;

/// <summary>Channels that are read less often than the log is written, worked by hand: a reading every fifth row, ten rows a second.</summary>
public class SlowChannelTests
{
    private const int Rows = 100;

    /// <summary>Blank between its readings: row 12 lies two fifths of the way from row 10 to row 15.</summary>
    [Fact]
    public void BlankChannel_GoesStraightBetweenItsReadings()
    {
        SlowChannel channel = Of(row => row % 5 == 0 ? row * row : double.NaN);
        Assert.False(channel.IsHeld);
        Assert.True(channel.IsRead(10));
        Assert.False(channel.IsRead(12));
        Assert.Equal(100, channel.At(10));
        Assert.Equal(100 + (0.4 * (225 - 100)), channel.At(12), 1e-9);

        // After the last reading there is none to go to.
        Assert.Equal(double.NaN, channel.At(99));
        Assert.Equal(double.NaN, Of(row => row >= 50 ? row : double.NaN).At(49));
    }

    /// <summary>Held between its readings while the engine's speed moves: what it holds is old, and is left out for the line between.</summary>
    [Fact]
    public void HeldChannel_IsToldByItsChanges_AndReadWhereItChanges()
    {
        SlowChannel channel = Of(row => row / 5 * 5);
        Assert.True(channel.IsHeld);
        Assert.True(channel.IsRead(15));
        Assert.False(channel.IsRead(16));
        Assert.Equal(16, channel.At(16), 1e-9);
        Assert.Equal(18.5, channel.At(16, 0.25), 1e-9);
    }

    /// <summary>A channel that changes in every row is not held, nor one that changes while the engine's speed stays, nor one of few changes.</summary>
    [Fact]
    public void OtherChannels_AreNotHeld()
    {
        Assert.False(Of(row => row).IsHeld);
        Assert.False(Of(row => row / 5 * 5, row => row % 5 == 0).IsHeld);
        Assert.False(Of(row => row < 50 ? 1 : 2).IsHeld);

        // Ten changes are enough, nine are not; of fifty, one just after another is as a clock drifts, two are not.
        Assert.True(Of(row => Math.Min(row / 5, 10)).IsHeld);
        Assert.False(Of(row => Math.Min(row / 5, 9)).IsHeld);
    }

    /// <summary>Readings more than a second apart say nothing of what is between; a held one stays what it is.</summary>
    [Fact]
    public void Gap_IsNotBridged()
    {
        Assert.Equal(double.NaN, Of(row => row is 10 or 21 ? row : double.NaN).At(15));
        Assert.Equal(15, Of(row => row is 10 or 20 ? row : double.NaN).At(15), 1e-9);
        SlowChannel held = Of(row => row < 60 ? row / 5 : row < 90 ? 12 : 13);
        Assert.True(held.IsHeld);
        Assert.Equal(12, held.At(75));
    }

    /// <summary>What is read a quarter of a second later lies between two rows; after the end there is nothing, and without times it is the row's own.</summary>
    [Fact]
    public void Later_IsReadBetweenTheRowsAboutIt()
    {
        SlowChannel channel = Of(row => row * row);
        Assert.Equal(((12 * 12) + (13 * 13)) / 2.0, channel.At(10, 0.25), 1e-9);
        Assert.Equal(100, channel.At(10, 0));
        Assert.Equal(double.NaN, channel.At(98, 0.25));
        Assert.Equal(100, SlowChannel.Of(row => row * row, _ => double.NaN, Rows, _ => true).At(10, 0.25));
    }

    /// <summary>
    /// Time counts, not rows: with row r at r² · 4 ms a value of r² is straight in time, so that row 12 reads 144 between 10² at 0.4 s and 15² at 0.9 s. Of a clock
    /// in whole seconds, which stands still between two readings, the rows count: two fifths of the way.
    /// </summary>
    [Fact]
    public void Gap_IsBridgedByTime_AndByRowsWhereTheClockStands()
    {
        double Blank(int row) => row % 5 == 0 ? row * row : double.NaN;
        SlowChannel uneven = SlowChannel.Of(Blank, row => 0.004 * row * row, Rows, _ => true);
        Assert.Equal(144, uneven.At(12), 1e-9);
        Assert.Equal(4, uneven.At(2), 1e-9);
        Assert.Equal(0, uneven.At(0));
        SlowChannel coarse = SlowChannel.Of(Blank, row => row / 10, Rows, _ => true);
        Assert.Equal(100 + (0.4 * (225 - 100)), coarse.At(12), 1e-9);
    }

    /// <summary>Fifty changes: one that comes just after another is as a device's clock drifts, two are a channel that changes as it likes.</summary>
    [Theory]
    [InlineData(1, true)]
    [InlineData(2, false)]
    public void HeldChannel_MayHaveOneChangeOfFiftyTooSoon(int soon, bool held)
    {
        // A change in every fifth row, of which the first ones come four rows sooner, just after the one before.
        int[] changes = [.. Enumerable.Range(1, 50).Select(i => (5 * i) - (i % 2 == 0 && i <= 2 * soon ? 4 : 0))];
        Assert.Equal(held, SlowChannel.Of(row => changes.Count(change => change <= row), row => row * 0.1, 260, row => row > 0).IsHeld);
    }

    /// <summary>Ten changes, and a channel that stood still for eight rows of a moving engine is held; for seven it may be as the engine was.</summary>
    [Theory]
    [InlineData(8, true)]
    [InlineData(7, false)]
    public void HeldChannel_StandsWhileTheEngineMoves(int moving, bool held) =>
        Assert.Equal(held, Of(row => Math.Min(row / 5, 10), row => row % 5 == 1 && row / 5 < moving).IsHeld);

    /// <summary>
    /// A thousand rows a second: 200 ms later is 200 rows on, and a device with four readings a second leaves 250 rows between two. Over a second, 1,100 rows,
    /// says nothing of what is between, in so fast a log as in any other.
    /// </summary>
    [Fact]
    public void FastLog_IsReadByTime()
    {
        SlowChannel every = SlowChannel.Of(row => row * row, row => row * 0.001, 3000, _ => true);
        Assert.Equal(300 * 300, every.At(100, 0.2), 1e-6);
        Assert.Equal(((300 * 300) + (301 * 301)) / 2.0, every.At(100, 0.2005), 1e-6);
        SlowChannel blank = SlowChannel.Of(row => row % 250 == 0 ? row : double.NaN, row => row * 0.001, 3000, _ => true);
        Assert.Equal(1125, blank.At(1125), 1e-9);
        Assert.Equal(double.NaN, SlowChannel.Of(row => row % 1100 == 0 ? row : double.NaN, row => row * 0.001, 3000, _ => true).At(1650));

        // Without times a hundred rows are looked through, and what lies between two readings is not known.
        Assert.Equal(double.NaN, SlowChannel.Of(row => row % 250 == 0 ? row : double.NaN, _ => double.NaN, 3000, _ => true).At(1125));
    }

    /// <summary>A log that stops for 1.1 s says nothing of what came meanwhile; one that stops for a second is read straight through it.</summary>
    [Theory]
    [InlineData(1.0, 16.5)]
    [InlineData(1.1, double.NaN)]
    public void Later_AfterAStop_IsReadOverASecondAtTheMost(double stop, double expected)
    {
        SlowChannel channel = SlowChannel.Of(row => row, row => (0.1 * row) + (row > 16 ? stop - 0.1 : 0), Rows, _ => true);
        Assert.Equal(expected, channel.At(16, 0.5), 1e-9);
        Assert.Equal(16, channel.At(15, 0.1), 1e-9);
    }

    private static SlowChannel Of(Func<int, double> recorded, Func<int, bool>? moves = null) =>
        SlowChannel.Of(recorded, row => row * 0.1, Rows, moves ?? (row => row > 0));
}
