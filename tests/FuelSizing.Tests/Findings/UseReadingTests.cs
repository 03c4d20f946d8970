using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Points;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>Duty cycle and pressure across the injectors, each as a whole result. At 3,000 rev/min there are 40 ms, at 6,000 rev/min 20 ms.</summary>
public class UseReadingTests
{
    [Fact]
    public void Duty_IsTheMaximumWithItsPlace()
    {
        DutyUse use = Duty(
            Row(3000) with { Pulse = Wren.Ms(10) },
            Row(6000) with { Pulse = Wren.Ms(16) },
            Row(6000) with { Pulse = Wren.Ms(15) },
            Row(3000) with { Pulse = Wren.Ms(12) }).Answer!;
        Assert.Equal(80, use.Maximum.Percent, 6);
        Assert.Equal(2, use.Place.Line);
        Assert.Equal(6000, use.Place.Speed.RevolutionsPerMinute, 6);
        Assert.Equal((0, 4, 4), (use.RowsOver, use.RowsJudged, use.Rows));
        Assert.Equal(85, use.Limit.Percent, 6);
        Assert.Null(use.Gap);
        Assert.Equal("duty cycle up to 80.0 % at 6,000 rev/min, 0.30 bar, limit 85 % (common practice, no source)", use.ToString());
    }

    /// <summary>Just at its limit a duty cycle is not over it; a limit of one's own is no rule of thumb.</summary>
    [Theory]
    [InlineData(85, 0)]
    [InlineData(85.1, 2)]
    public void Duty_OverItsLimit_IsCounted(double percent, int over)
    {
        Cells row = Row(3000) with { Duty = Ratio.FromPercent(percent) };
        DutyUse use = Duty(row, Row(3000) with { Duty = Ratio.FromPercent(40) }, row).Answer!;
        Assert.Equal(over, use.RowsOver);
        Assert.Equal(1, use.Place.Line);
        DutyUse own = Read(
            RunCheck.Of(PulledWren.Plan.With(SizingLimits.Of(Ratio.FromPercent(80), SizingLimits.Default.PumpReserve))), row).Duty().Answer!;
        Assert.Equal(1, own.RowsOver);
        Assert.DoesNotContain("common practice", own.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Of two channels the higher counts in each row, and each where the other is blank.</summary>
    [Fact]
    public void Duty_OfTwoChannels_IsTheHigher()
    {
        DutyUse use = Duty(
            Row(3000) with { Pulse = Wren.Ms(20), Duty = Ratio.FromPercent(60) },
            Row(3000) with { Pulse = Wren.Ms(28), Duty = Ratio.FromPercent(60) },
            Row(3000) with { Duty = Ratio.FromPercent(72) },
            Row(3000) with { Pulse = Wren.Ms(26) }).Answer!;
        Assert.Equal(72, use.Maximum.Percent, 6);
        Assert.Equal(3, use.Place.Line);
        Assert.Equal(4, use.RowsJudged);
        Assert.Equal(70, Duty(Row(3000) with { Pulse = Wren.Ms(28), Duty = Ratio.FromPercent(60) }).Answer!.Maximum.Percent, 6);
        Assert.Equal(60, Duty(Row(3000) with { Pulse = Wren.Ms(20), Duty = Ratio.FromPercent(60) }).Answer!.Maximum.Percent, 6);
    }

    /// <summary>Rows at rest are none of those that are judged; rows without either channel are counted.</summary>
    [Fact]
    public void Duty_OfSomeRows_IsJudgedInPart()
    {
        DutyUse use = Duty(
            Row(0) with { Pulse = Wren.Ms(3) },
            Row(3000) with { Pulse = Wren.Ms(10) },
            Row(3000),
            Row(3000) with { Pulse = Wren.Ms(9) }).Answer!;
        Assert.Equal((2, 3), (use.RowsJudged, use.Rows));
        Assert.Equal("duty cycle is known of 2 of 3 rows with the engine turning", use.Gap!.ToString());
        Assert.Equal(
            "duty cycle up to 25.0 % at 3,000 rev/min, 0.30 bar, limit 85 % (common practice, no source); judged in part: duty cycle is known of 2 of 3 rows with the engine turning",
            use.ToString());
    }

    /// <summary>
    /// A channel at the upper end of its range hides what is over it: five readings in a row of 80 % do not count, nor five pulses alike; over
    /// the limit a duty cycle says enough.
    /// </summary>
    [Fact]
    public void Duty_OfAChannelAtItsEnd_IsNotKnown()
    {
        Cells[] rows = [.. Enumerable.Range(0, 12).Select(i => Row(3000 + (20 * i)))];
        DutyUse share = Duty([.. rows.Select((row, i) => row with { Duty = Ratio.FromPercent(i < 6 ? 50 + i : 80) })]).Answer!;
        Assert.Equal(55, share.Maximum.Percent, 6);
        Assert.Equal(6, share.RowsJudged);
        DutyUse pulse = Duty([.. rows.Select((row, i) => row with { Pulse = Wren.Ms(i < 6 ? 10 + i : 20) })]).Answer!;
        Assert.Equal(6, pulse.RowsJudged);
        Assert.Equal(15e-3 * 3100 / 120, pulse.Maximum.DecimalFractions, 9);
        DutyUse limit = Duty([.. rows.Select((row, i) => row with { Duty = Ratio.FromPercent(i < 6 ? 50 + i : 85) })]).Answer!;
        Assert.Equal(6, limit.RowsJudged);

        // Three readings alike may well be the engine's.
        Assert.Equal(80, Duty([.. rows.Take(9).Select((row, i) => row with { Duty = Ratio.FromPercent(i < 6 ? 50 + i : 80) })]).Answer!.Maximum.Percent, 6);
        DutyUse over = Duty([.. rows.Select((row, i) => row with { Duty = Ratio.FromPercent(i < 6 ? 50 + i : 90) })]).Answer!;
        Assert.Equal(90, over.Maximum.Percent, 6);
        Assert.Equal((6, 12), (over.RowsOver, over.RowsJudged));
    }

    [Fact]
    public void Duty_ThatCannotBeTold_HasItsReason()
    {
        Finding<DutyUse> none = Duty(Row(3000));
        Assert.Equal("cannot tell: neither pulse nor duty cycle was recorded", none.ToString());
        Assert.Equal([Channel.InjectorPulse, Channel.DutyCycle], none.Missing);
        Assert.Equal("cannot tell: the engine never turned while pulses were recorded", Duty(Row(0) with { Pulse = Wren.Ms(3) }).ToString());
        Assert.Equal(
            "cannot tell: no row with the engine turning has a usable pulse or duty cycle", Duty(Row(0) with { Pulse = Wren.Ms(3) }, Row(3000)).ToString());
        Cells[] rows = [.. Enumerable.Range(0, 22).Select(i => Row(3000 + (50 * i)))];
        Assert.Equal(
            "cannot tell: duty cycle or pulse reads the same throughout while engine speed changes",
            Duty([.. rows.Select(row => row with { Duty = Ratio.FromPercent(60) })]).ToString());
        Assert.Equal(
            "cannot tell: duty cycle or pulse reads the same throughout while engine speed changes",
            Duty([.. rows.Select(row => row with { Pulse = Wren.Ms(9) })]).ToString());
    }

    /// <summary>Rail gauge less boost: 300 − 30, 350 − 20, 310 + 50 and 305 − 10 kPa.</summary>
    [Fact]
    public void Differential_IsLowestAndHighestWithTheirPlaces()
    {
        (double Boost, double? Rail)[] rows = [(30, 300), (20, 350), (0, null), (-50, 310), (10, 305)];
        DifferentialUse use = Read(PulledWren.Check, [.. rows.Select((row, i) => Row(3000 + (700 * i)) with
        {
            Manifold = PulledWren.Air.Pressure + Wren.Kpa(row.Boost),
            Rail = row.Rail is { } rail ? Wren.Kpa(rail) : null,
        })]).Differential().Answer!;
        Assert.Equal(270, use.Minimum.Kilopascals, 6);
        Assert.Equal(1, use.MinimumPlace.Line);
        Assert.Equal(360, use.Maximum.Kilopascals, 6);
        Assert.Equal(4, use.MaximumPlace.Line);
        Assert.Equal("270 kPa at 3,000 rev/min, 0.30 bar to 360 kPa at 5,100 rev/min, −0.50 bar across the injectors", use.ToString());
    }

    /// <summary>The first row may be the highest; of rows alike the first counts.</summary>
    [Fact]
    public void Differential_OfARailThatFalls_IsHighestAtFirst()
    {
        double?[] rail = [340, null, 340, 310, 310];
        DifferentialUse use = Read(PulledWren.Check, [.. rail.Select((one, i) => Row(3000 + (700 * i)) with { Rail = one is { } kilopascals ? Wren.Kpa(kilopascals) : null })]).Differential().Answer!;
        Assert.Equal((4, 1), (use.MinimumPlace.Line, use.MaximumPlace.Line));
        Assert.Equal(280, use.Minimum.Kilopascals, 6);
        Assert.Equal(310, use.Maximum.Kilopascals, 6);
    }

    [Fact]
    public void Differential_ThatCannotBeTold_HasItsReason()
    {
        Finding<DifferentialUse> none = Read(PulledWren.Check, Row(3000) with { Manifold = null }).Differential();
        Assert.Equal("cannot tell: rail and manifold pressure must both be recorded", none.ToString());
        Assert.Equal([Channel.RailGauge, Channel.ManifoldAbsolute], none.Missing);
        Assert.Equal([Channel.RailGauge], Read(PulledWren.Check, Row(3000)).Differential().Missing);
        Assert.Equal(
            "cannot tell: no row with both lies within the plan's tables",
            Read(PulledWren.Check, Row(9000) with { Rail = Wren.Kpa(300) }).Differential().ToString());
    }

    private static Cells Row(double rpm) => new() { Speed = Wren.Rpm(rpm), Manifold = PulledWren.Air.Pressure + Wren.Kpa(30) };

    private static Finding<DutyUse> Duty(params Cells[] rows) => Read(PulledWren.Check, rows).Duty();

    private static UseReading Read(RunCheck check, params Cells[] rows)
    {
        RecordedRun run = RecordedRun.Of("rows", PulledWren.Air, rows.Select((cells, i) => cells.Row(i + 1)));
        return new(check, run, check.Model(run));
    }
}
