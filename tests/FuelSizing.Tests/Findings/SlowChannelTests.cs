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

    private static SlowChannel Of(Func<int, double> recorded, Func<int, bool>? moves = null) =>
        SlowChannel.Of(recorded, row => row * 0.1, Rows, moves ?? (row => row > 0));
}
