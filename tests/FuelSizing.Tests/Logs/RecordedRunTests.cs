using FuelSizing.Engines;
using FuelSizing.Logs;
using UnitsNet;

namespace FuelSizing.Tests.Logs;

public class RecordedRunTests
{
    [Fact]
    public void Run_MadeInCode_GivesBackItsRows()
    {
        RunRow[] rows =
        [
            RunRow.Of(1, Wren.Rpm(3000), Duration.FromSeconds(0), manifoldAbsolute: Wren.Kpa(150)),
            RunRow.Of(2, Wren.Rpm(3100), Duration.FromSeconds(0.1)),
            RunRow.Of(3, Wren.Rpm(3200), Duration.FromSeconds(0.2), manifoldAbsolute: Wren.Kpa(155), lambda: 0.82),
        ];
        var run = RecordedRun.Of("pull 1", Atmosphere.Standard, rows);
        Assert.Equal(rows, run.Rows);
        Assert.Equal(rows[2], run.Rows[2]);
        Assert.Equal([Channel.Time, Channel.Speed, Channel.ManifoldAbsolute, Channel.Lambda], run.Channels);
        Assert.Equal([150e3, double.NaN, 155e3], run.Si(Channel.ManifoldAbsolute).ToArray());
        Assert.True(run.Si(Channel.RailGauge).IsEmpty);
        Assert.Empty(run.Problems);
        Assert.Equal(3, run.Account.RowsUsed);
    }

    [Fact]
    public void Row_WithEveryChannel_SaysEachInItsUnit()
    {
        RunRow row = RunRow.Of(
            7,
            Wren.Rpm(6800),
            Duration.FromSeconds(1.5),
            Wren.Kpa(155),
            Wren.Kpa(360),
            Wren.Ms(12.4),
            Wren.Percent(84),
            0.82,
            Wren.Volt(13.4),
            Power.FromKilowatts(190),
            Torque.FromNewtonMeters(267),
            Temperature.FromDegreesCelsius(41),
            VolumeFlow.FromLitersPerHour(88),
            MassFlow.FromGramsPerSecond(18));
        Assert.Equal(
            "line 7: Time 1.5 s, Speed 6800 rev/min, ManifoldAbsolute 155 kPa, RailGauge 360 kPa, InjectorPulse 12.4 ms, DutyCycle 84 %, "
            + "Lambda 0.82, BatteryVoltage 13.4 V, Power 190 kW, Torque 267 N·m, FuelTemperature 41 °C, FuelVolumeFlow 88 L/h, FuelMassFlow 18 g/s",
            row.ToString());
        Assert.Equal(155, row.ManifoldAbsolute!.Value.Kilopascals, 9);
        Assert.Equal(360, row.RailGauge!.Value.Kilopascals, 9);
        Assert.Equal(12.4, row.InjectorPulse!.Value.Milliseconds, 9);
        Assert.Equal(84, row.DutyCycle!.Value.Percent, 9);
        Assert.Equal(13.4, row.BatteryVoltage!.Value.Volts, 9);
        Assert.Equal(190, (double)row.Power!.Value.Kilowatts, 9);
        Assert.Equal(267, row.Torque!.Value.NewtonMeters, 9);
        Assert.Equal(41, row.FuelTemperature!.Value.DegreesCelsius, 9);
        Assert.Equal(88, row.FuelVolumeFlow!.Value.LitersPerHour, 9);
        Assert.Equal(18, row.FuelMassFlow!.Value.GramsPerSecond, 9);
    }

    [Fact]
    public void Row_WithoutAChannel_HasNone()
    {
        RunRow row = RunRow.Of(1, Wren.Rpm(3000));
        Assert.Null(row.Time);
        Assert.Null(row.Lambda);
        Assert.Null(row.RailGauge);
        Assert.True(row.Has(Channel.Speed));
        Assert.False(row.Has(Channel.Lambda));
        Assert.False(row.Has((Channel)99));
    }

    // Seconds since 1970 are a time; a date in milliseconds called seconds is none.
    [Fact]
    public void Time_OutOfAllReason_IsRefused()
    {
        Assert.Equal(1.8e9, RunRow.Of(1, Wren.Rpm(3000), Duration.FromSeconds(1.8e9)).Time!.Value.Seconds);
        foreach (double seconds in new[] { -1.8e12, 1.8e12 })
        {
            var error = Assert.Throws<ArgumentOutOfRangeException>(() => RunRow.Of(1, Wren.Rpm(3000), Duration.FromSeconds(seconds)));
            Assert.Equal("time", error.ParamName);
            Assert.Contains("it must be between −1E+10 s and 1E+10 s", error.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Rows_OutOfTime_AreRefused()
    {
        RunRow first = RunRow.Of(1, Wren.Rpm(3000), Duration.FromSeconds(1));
        foreach (RunRow second in new[]
        {
            RunRow.Of(2, Wren.Rpm(3000), Duration.FromSeconds(1)),
            RunRow.Of(2, Wren.Rpm(3000), Duration.FromSeconds(0.5)),
            RunRow.Of(2, Wren.Rpm(3000)),
            default,
        })
        {
            var error = Assert.Throws<ArgumentException>(() => RecordedRun.Of("r", Atmosphere.Standard, [first, second]));
            Assert.Equal("rows", error.ParamName);
        }
    }

    [Fact]
    public void Run_OfNoRows_IsARun() => Assert.Empty(RecordedRun.Of("r", Atmosphere.Standard, []).Channels);
}
