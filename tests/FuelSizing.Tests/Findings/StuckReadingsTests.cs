using FuelSizing.Findings;

namespace FuelSizing.Tests.Findings;

/// <summary>Which readings a channel would give whatever the truth is.</summary>
public class StuckReadingsTests
{
    private const double None = double.NaN;

    /// <summary>Twenty readings alike, over more than 500 rev/min: the channel never moves.</summary>
    [Theory]
    [InlineData(20, 501, true)]
    [InlineData(19, 501, false)]
    [InlineData(20, 499, false)]
    [InlineData(40, 0, false)]
    public void OneReadingThroughout_WhileSpeedChanges_NeverMoves(int rows, double revolutions, bool never)
    {
        double[] values = [.. Enumerable.Repeat(0.82, rows)];
        StuckReadings stuck = Of(values, Speeds(rows, revolutions), isMaximum: false, _ => false);
        Assert.Equal(never, stuck.NeverMoves);
        Assert.True(stuck.Holds(0.82));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    [InlineData(24)]
    public void OneOtherReading_AnywhereAmongThem_IsAMove(int other)
    {
        double[] values = [.. Enumerable.Repeat(0.82, 25)];
        values[other] = 0.83;
        Assert.False(Of(values, Speeds(25, 2000), isMaximum: false, _ => false).NeverMoves);
        values[other] = 0.81;
        Assert.False(Of(values, Speeds(25, 2000), isMaximum: false, _ => false).NeverMoves);
    }

    /// <summary>Blank cells are no readings: neither do they move, nor do their speeds count.</summary>
    [Fact]
    public void BlankCells_AreNoReadings()
    {
        double[] values = [None, .. Enumerable.Repeat(0.82, 20), None];
        Assert.True(Of(values, Speeds(22, 2000), isMaximum: false, _ => false).NeverMoves);
        double[] speeds = [300, .. Enumerable.Repeat(50.0, 20), 10];
        Assert.False(Of(values, speeds, isMaximum: false, _ => false).NeverMoves);
        StuckReadings none = Of([None, None], [1, 2], isMaximum: false, _ => true);
        Assert.False(none.NeverMoves);
        Assert.False(none.Holds(0.82));
        Assert.False(Of([], [], isMaximum: false, _ => true).Holds(0.82));
    }

    /// <summary>At an end that is surely one three readings in a row are enough, two are not.</summary>
    [Fact]
    public void EndThatIsSurelyOne_NeedsThreeReadingsInARow()
    {
        Assert.True(Of([0.9, 0.65, 0.65, 0.65, 0.8], Speeds(5, 900), isMaximum: false, end => end <= 0.7).Holds(0.65));
        Assert.False(Of([0.9, 0.65, 0.65, 0.8, 0.65], Speeds(5, 900), isMaximum: false, end => end <= 0.7).Holds(0.65));
        Assert.False(Of([0.9, 0.75, 0.75, 0.75, 0.8], Speeds(5, 900), isMaximum: false, end => end <= 0.7).Holds(0.75));
        Assert.False(Of([0.9, 0.65, 0.65, 0.65, 0.8], Speeds(5, 900), isMaximum: false, end => end <= 0.7).Holds(0.9));
        Assert.False(Of([0.9, 0.65, 0.65, 0.65, 0.8], Speeds(5, 900), isMaximum: false, end => end <= 0.7).NeverMoves);
    }

    /// <summary>A blank cell between them does not break the row.</summary>
    [Fact]
    public void ReadingsInARow_MayHaveABlankBetween() =>
        Assert.True(Of([0.9, 0.65, None, 0.65, 0.65, 0.8], Speeds(6, 900), isMaximum: false, end => end <= 0.7).Holds(0.65));

    /// <summary>Any end counts at five in a row, where no other value comes three times in a row.</summary>
    [Theory]
    [InlineData(5, 2, true)]
    [InlineData(4, 2, false)]
    [InlineData(5, 3, false)]
    [InlineData(8, 3, false)]
    [InlineData(8, 1, true)]
    public void AnyEnd_NeedsFiveInARow_AndNoOtherValueThree(int ofEnd, int ofOther, bool holds)
    {
        double[] values = [0.9, .. Enumerable.Repeat(0.76, ofEnd), 0.85, .. Enumerable.Repeat(0.8, ofOther), 0.83];
        StuckReadings stuck = Of(values, Speeds(values.Length, 900), isMaximum: false, _ => false);
        Assert.Equal(holds, stuck.Holds(0.76));
        Assert.Equal(holds ? 0.76 : double.NaN, stuck.End);

        // The same at the upper end.
        stuck = Of(Array.ConvertAll(values, value => 2 - value), Speeds(values.Length, 900), isMaximum: true, _ => false);
        Assert.Equal(holds, stuck.Holds(2 - 0.76));
    }

    /// <summary>Longest rows count, not the last ones.</summary>
    [Fact]
    public void LongestRow_Counts()
    {
        double[] values = [.. Enumerable.Repeat(0.76, 5), 0.8, 0.8, 0.9, 0.76, 0.9, 0.8];
        Assert.True(Of(values, Speeds(values.Length, 900), isMaximum: false, _ => false).Holds(0.76));
        double[] others = [0.8, 0.8, 0.8, .. Enumerable.Repeat(0.76, 5), 0.8, 0.9];
        Assert.False(Of(others, Speeds(others.Length, 900), isMaximum: false, _ => false).Holds(0.76));
    }

    private static double[] Speeds(int rows, double revolutions) =>
        [.. Enumerable.Range(0, rows).Select(i => 50 + (revolutions / 60 * i / Math.Max(1, rows - 1)))];

    private static StuckReadings Of(double[] values, double[] speeds, bool isMaximum, Func<double, bool> surely) =>
        StuckReadings.Of(values, speeds, isMaximum, surely);
}
