using FuelSizing.Injectors;
using FuelSizing.Numerics;
using UnitsNet;

namespace FuelSizing.Tests.Injectors;

public class DeadTimeTableTests
{
    private static readonly DeadTimeTable OneKnownAtTwoPressures = DeadTimeTable.Of(
        [Wren.Volt(8), Wren.Volt(12), Wren.Volt(14)],
        [Wren.Kpa(200), Wren.Kpa(400)],
        [[Wren.Ms(2), Wren.Ms(1), Wren.Ms(1)], [Wren.Ms(3), Wren.Ms(1.5), Wren.Ms(1.2)]]);

    /// <summary>At 12 V the two rows hold 1 and 1.5 ms at 200 and 400 kPa: a straight line between them.</summary>
    [Theory]
    [InlineData(200, 1)]
    [InlineData(250, 1.125)]
    [InlineData(300, 1.25)]
    [InlineData(400, 1.5)]
    public void At_BetweenTwoRows_IsTheStraightLine(double kilopascals, double milliseconds)
    {
        Assert.Equal(
            milliseconds, OneKnownAtTwoPressures.At(Wren.Volt(12), Wren.Kpa(kilopascals)).Milliseconds, 9);
        Assert.False(OneKnownAtTwoPressures.IgnoresPressure);
    }

    /// <summary>An end of the table reached through other units may be off in its last digit; no more than that is forgiven.</summary>
    [Theory]
    [InlineData(200 - 1e-7, true)]
    [InlineData(400 + 1e-7, true)]
    [InlineData(200 - 1e-3, false)]
    [InlineData(400 + 1e-3, false)]
    public void At_AHairBeyondTheEnds_IsTheEndOrNothing(double kilopascals, bool covered)
    {
        Assert.Equal(covered, OneKnownAtTwoPressures.TryAt(Wren.Volt(12), Wren.Kpa(kilopascals), out Duration time));
        double expected = covered ? (kilopascals < 300 ? 1 : 1.5) : 0;
        Assert.Equal(expected, time.Milliseconds, 6);
    }

    [Fact]
    public void TryAt_OffVoltage_HasNoTime()
    {
        Assert.False(OneKnownAtTwoPressures.TryAt(Wren.Volt(7.9), Wren.Kpa(300), out Duration below));
        Assert.False(OneKnownAtTwoPressures.TryAt(Wren.Volt(14.1), Wren.Kpa(300), out Duration above));
        Assert.Equal((Duration.Zero, Duration.Zero), (below, above));
    }

    [Fact]
    public void Refusal_BeyondTheTable_SaysWhatTheTableCovers()
    {
        ArgumentOutOfRangeException offVoltage = Assert.Throws<ArgumentOutOfRangeException>(
            () => OneKnownAtTwoPressures.At(Wren.Volt(7), Wren.Kpa(900)));
        Assert.StartsWith(
            "voltage is 7.0 V; it must be within 8.0 V to 14.0 V, 200 kPa to 400 kPa.", offVoltage.Message, StringComparison.Ordinal);
        ArgumentOutOfRangeException offPressure = Assert.Throws<ArgumentOutOfRangeException>(
            () => OneKnownAtTwoPressures.At(Wren.Volt(12), Wren.Kpa(900)));
        Assert.StartsWith("differential is 900 kPa; it must be ", offPressure.Message, StringComparison.Ordinal);

        DeadTimeTable overVoltage = DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(2)), (Wren.Volt(16), Wren.Ms(1)));
        Assert.StartsWith(
            "voltage is 17.0 V; it must be within 8.0 V to 16.0 V.",
            Assert.Throws<ArgumentOutOfRangeException>(() => overVoltage.At(Wren.Volt(17), Wren.Kpa(300))).Message,
            StringComparison.Ordinal);
        Assert.False(overVoltage.TryAt(Wren.Volt(17), Wren.Kpa(300), out _));
    }

    [Theory]
    [InlineData(300, 300)]
    [InlineData(300, 200)]
    public void Pressures_NotRising_AreRefused(double first, double second)
    {
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => DeadTimeTable.Of(
            [Wren.Volt(8), Wren.Volt(12)],
            [Wren.Kpa(first), Wren.Kpa(second)],
            [[Wren.Ms(2), Wren.Ms(1)], [Wren.Ms(2), Wren.Ms(1)]]));
        Assert.StartsWith(
            $"differentials is {second} kPa; it must be over the {first} kPa before it.", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Pressures_ThatAreOne_AreRefused() =>
        Assert.Equal(
            "differentials",
            Assert.Throws<ArgumentOutOfRangeException>(() => DeadTimeTable.Of(
                [Wren.Volt(8), Wren.Volt(12)], [Wren.Kpa(300)], [[Wren.Ms(2), Wren.Ms(1)]])).ParamName);

    [Fact]
    public void Rows_OfTheWrongNumberOrLength_AreRefusedByWhatIsWrong()
    {
        Assert.StartsWith(
            "times had 1 rows for 2 differential pressures; give one row for each.",
            Assert.Throws<ArgumentException>(() => DeadTimeTable.Of(
                [Wren.Volt(8), Wren.Volt(12)], [Wren.Kpa(200), Wren.Kpa(300)], [[Wren.Ms(2), Wren.Ms(1)]])).Message,
            StringComparison.Ordinal);
        Assert.StartsWith(
            "times had a row of 3 for 2 voltages; give one time for each.",
            Assert.Throws<ArgumentException>(() => DeadTimeTable.Of(
                [Wren.Volt(8), Wren.Volt(12)],
                [Wren.Kpa(200), Wren.Kpa(300)],
                [[Wren.Ms(2), Wren.Ms(1)], [Wren.Ms(2), Wren.Ms(1), Wren.Ms(1)]])).Message,
            StringComparison.Ordinal);
        Assert.Equal(
            "times",
            Assert.Throws<ArgumentNullException>(() => DeadTimeTable.Of(
                [Wren.Volt(8), Wren.Volt(12)], [Wren.Kpa(200), Wren.Kpa(300)], [[Wren.Ms(2), Wren.Ms(1)], null!])).ParamName);
    }

    [Fact]
    public void Times_ThatGrowWithVoltage_AreRefusedAndEqualOnesAreTaken()
    {
        Assert.StartsWith(
            "points is 1.20 ms; it must be at most 1.00 ms, the time at the voltage below.",
            Assert.Throws<ArgumentOutOfRangeException>(
                () => DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1)), (Wren.Volt(12), Wren.Ms(1.2)))).Message,
            StringComparison.Ordinal);
        DeadTimeTable flat = DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1)), (Wren.Volt(12), Wren.Ms(1)));
        Assert.Equal(1, flat.At(Wren.Volt(10), Wren.Kpa(300)).Milliseconds, 9);
    }

    [Fact]
    public void Points_OfATable_AreTheMeasuredOnes()
    {
        Assert.Equal(
            [
                new DeadTimePoint(Wren.Volt(8), Wren.Kpa(200), Wren.Ms(2)),
                new DeadTimePoint(Wren.Volt(12), Wren.Kpa(200), Wren.Ms(1)),
                new DeadTimePoint(Wren.Volt(14), Wren.Kpa(200), Wren.Ms(1)),
                new DeadTimePoint(Wren.Volt(8), Wren.Kpa(400), Wren.Ms(3)),
                new DeadTimePoint(Wren.Volt(12), Wren.Kpa(400), Wren.Ms(1.5)),
                new DeadTimePoint(Wren.Volt(14), Wren.Kpa(400), Wren.Ms(1.2)),
            ],
            OneKnownAtTwoPressures.Points);
        Assert.Equal(
            [new DeadTimePoint(Wren.Volt(8), null, Wren.Ms(2)), new DeadTimePoint(Wren.Volt(16), null, Wren.Ms(1))],
            DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(2)), (Wren.Volt(16), Wren.Ms(1))).Points);
    }

    /// <summary>A row at one voltage, eight pressures at a time, is the table asked one pressure at a time.</summary>
    [Fact]
    public void Row_AtOneVoltage_IsTheTableThere()
    {
        double[] kilopascals = [50, 199.99, 200 - 1e-8, 200, 333, 400, 400 + 1e-8, 400.01];
        double[] into = new double[8];
        OneKnownAtTwoPressures.RowAt(11)!.At<Lanes>(Array.ConvertAll(kilopascals, p => 1000 * p), into);
        for (int at = 0; at < into.Length; at++)
        {
            bool covered = OneKnownAtTwoPressures.TryAt(Wren.Volt(11), Wren.Kpa(kilopascals[at]), out Duration time);
            Assert.Equal(covered ? time.Seconds : double.NaN, into[at], 12);
        }

        Assert.Equal([0, 1, 7], Enumerable.Range(0, into.Length).Where(at => double.IsNaN(into[at])));
        Assert.Null(OneKnownAtTwoPressures.RowAt(7.9));
        Assert.Null(OneKnownAtTwoPressures.RowAt(14.1));
    }

    [Fact]
    public void Row_OfATableThatIgnoresPressure_IsTheSameAtAll()
    {
        double[] into = new double[8];
        DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(2)), (Wren.Volt(16), Wren.Ms(1))).RowAt(12)!
            .At<Lanes>([1, 2, 3, 4, 5, 6, 7, 8], into);
        Assert.All(into, time => Assert.Equal(1.5e-3, time, 12));
    }

    [Fact]
    public void Table_WithAPieceMissing_IsRefusedByName()
    {
        Refused.Missing("voltages", () => DeadTimeTable.Of(null!, [Wren.Kpa(200), Wren.Kpa(300)], [[], []]));
        Refused.Missing("differentials", () => DeadTimeTable.Of([Wren.Volt(8), Wren.Volt(12)], null!, []));
        Refused.Missing("times", () => DeadTimeTable.Of([Wren.Volt(8), Wren.Volt(12)], [Wren.Kpa(200), Wren.Kpa(300)], null!));
        Refused.Missing("points", () => DeadTimeTable.ByVoltage(null!));
    }
}
