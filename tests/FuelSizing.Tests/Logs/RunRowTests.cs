using FuelSizing.Engines;
using FuelSizing.Logs;
using UnitsNet;

namespace FuelSizing.Tests.Logs;

/// <summary>A row as a value: what it has, what it lacks, and when two are one.</summary>
public class RunRowTests
{
    /// <summary>Each channel a row may have, by itself.</summary>
    private static readonly (Channel Channel, RunRow Row)[] Single =
    [
        (Channel.Time, RunRow.Of(4, Wren.Rpm(3000), time: Duration.FromSeconds(1.5))),
        (Channel.ManifoldAbsolute, RunRow.Of(4, Wren.Rpm(3000), manifoldAbsolute: Wren.Kpa(150))),
        (Channel.RailGauge, RunRow.Of(4, Wren.Rpm(3000), railGauge: Wren.Kpa(360))),
        (Channel.InjectorPulse, RunRow.Of(4, Wren.Rpm(3000), injectorPulse: Wren.Ms(8))),
        (Channel.DutyCycle, RunRow.Of(4, Wren.Rpm(3000), dutyCycle: Wren.Percent(40))),
        (Channel.Lambda, RunRow.Of(4, Wren.Rpm(3000), lambda: 0.9)),
        (Channel.BatteryVoltage, RunRow.Of(4, Wren.Rpm(3000), batteryVoltage: Wren.Volt(13.5))),
        (Channel.Power, RunRow.Of(4, Wren.Rpm(3000), power: Power.FromKilowatts(70))),
        (Channel.Torque, RunRow.Of(4, Wren.Rpm(3000), torque: Torque.FromNewtonMeters(220))),
        (Channel.FuelTemperature, RunRow.Of(4, Wren.Rpm(3000), fuelTemperature: Temperature.FromDegreesCelsius(30))),
        (Channel.FuelVolumeFlow, RunRow.Of(4, Wren.Rpm(3000), fuelVolumeFlow: VolumeFlow.FromLitersPerHour(60))),
        (Channel.FuelMassFlow, RunRow.Of(4, Wren.Rpm(3000), fuelMassFlow: MassFlow.FromGramsPerSecond(12))),
    ];

    private static readonly Dictionary<Channel, Func<RunRow, object?>> Values = new()
    {
        [Channel.Time] = row => row.Time,
        [Channel.ManifoldAbsolute] = row => row.ManifoldAbsolute,
        [Channel.RailGauge] = row => row.RailGauge,
        [Channel.InjectorPulse] = row => row.InjectorPulse,
        [Channel.DutyCycle] = row => row.DutyCycle,
        [Channel.Lambda] = row => row.Lambda,
        [Channel.BatteryVoltage] = row => row.BatteryVoltage,
        [Channel.Power] = row => row.Power,
        [Channel.Torque] = row => row.Torque,
        [Channel.FuelTemperature] = row => row.FuelTemperature,
        [Channel.FuelVolumeFlow] = row => row.FuelVolumeFlow,
        [Channel.FuelMassFlow] = row => row.FuelMassFlow,
    };

    [Fact]
    public void Row_WithOneChannel_HasThatOneAndSpeedOnly()
    {
        foreach ((Channel channel, RunRow row) in Single)
        {
            Assert.Equal([channel], Values.Where(value => value.Value(row) is not null).Select(value => value.Key));
            Assert.Equal(
                new[] { channel, Channel.Speed }.Order(),
                Enum.GetValues<Channel>().Where(row.Has));
            Assert.Equal(3000, row.Speed.RevolutionsPerMinute, 9);
        }
    }

    [Fact]
    public void Rows_OfTheSameValuesAtOneLine_AreEqual_AndNoOthers()
    {
        RunRow[] rows =
        [
            .. Single.Select(single => single.Row),
            RunRow.Of(4, Wren.Rpm(3000)),
            RunRow.Of(4, Wren.Rpm(3001)),
            RunRow.Of(5, Wren.Rpm(3000)),
            RunRow.Of(4, Wren.Rpm(3000), lambda: 0.91),
            default,
        ];
        for (int one = 0; one < rows.Length; one++)
        {
            for (int other = 0; other < rows.Length; other++)
            {
                Assert.Equal(one == other, rows[one].Equals(rows[other]));
            }
        }

        Assert.Equal(RunRow.Of(4, Wren.Rpm(3000), lambda: 0.9), RunRow.Of(4, Wren.Rpm(3000), lambda: 0.9));
        Assert.Equal(RunRow.Of(4, Wren.Rpm(3000), lambda: 0.9).GetHashCode(), RunRow.Of(4, Wren.Rpm(3000), lambda: 0.9).GetHashCode());
    }

    [Fact]
    public void Row_ThatWasNeverFilled_HasNothing()
    {
        RunRow none = default;
        Assert.All(Enum.GetValues<Channel>(), channel => Assert.False(none.Has(channel)));
        Assert.All(Values.Values, value => Assert.Null(value(none)));
        Assert.Equal("line 0: ", none.ToString());
    }

    [Fact]
    public void Run_OfRowsThatDoNotFollowEachOther_IsRefusedWithTheCure()
    {
        RunRow timed = RunRow.Of(1, Wren.Rpm(3000), Duration.FromSeconds(1.5));
        Refused(
            "rows holds a row that was never filled, after 1 others. Make each with RunRow.Of.", timed, default);
        Refused(
            "rows: line 2 has no time and the one before has one. Give all rows a time, or none.", timed, RunRow.Of(2, Wren.Rpm(3000)));
        Refused(
            "rows: line 2 has a time and the one before has none. Give all rows a time, or none.",
            RunRow.Of(1, Wren.Rpm(3000)),
            RunRow.Of(2, Wren.Rpm(3000), Duration.FromSeconds(2)));
        Refused(
            "rows: line 2 is at 1.5 s, not later than the one before at 1.5 s. Put the rows in time order and let no two have one time.",
            timed,
            RunRow.Of(2, Wren.Rpm(3000), Duration.FromSeconds(1.5)));
        Refused(
            "rows: line 3 is at −2 s, not later than the one before at 2.5 s. Put the rows in time order and let no two have one time.",
            timed,
            RunRow.Of(2, Wren.Rpm(3000), Duration.FromSeconds(2.5)),
            RunRow.Of(3, Wren.Rpm(3000), Duration.FromSeconds(-2)));
        Assert.Equal("name", Assert.Throws<ArgumentException>(() => RecordedRun.Of(" ", Atmosphere.Standard, [timed])).ParamName);
        Assert.Equal("atmosphere", Assert.Throws<ArgumentNullException>(() => RecordedRun.Of("r", null!, [timed])).ParamName);
        Assert.Equal("rows", Assert.Throws<ArgumentNullException>(() => RecordedRun.Of("r", Atmosphere.Standard, null!)).ParamName);

        static void Refused(string message, params RunRow[] rows)
        {
            ArgumentException error = Assert.Throws<ArgumentException>(() => RecordedRun.Of("r", Atmosphere.Standard, rows));
            Assert.StartsWith(message, error.Message, StringComparison.Ordinal);
            Assert.Equal("rows", error.ParamName);
        }
    }

    [Fact]
    public void Run_WithoutTimes_KeepsItsRowsInTheirOrder()
    {
        RunRow[] rows = [RunRow.Of(9, Wren.Rpm(3000)), RunRow.Of(2, Wren.Rpm(3000), lambda: 0.9), RunRow.Of(5, Wren.Rpm(2500))];
        var run = RecordedRun.Of("pull", Atmosphere.Standard, rows);
        Assert.Equal(rows, run.Rows);
        Assert.Equal(3, run.Rows.Count);
        Assert.True(run.IsComplete);
        Assert.True(run.Has(Channel.Lambda));
        Assert.False(run.Has(Channel.Time));
        Assert.False(run.Has((Channel)13));
        Assert.False(run.Has((Channel)(-1)));
        Assert.Equal("pull: 3 rows of Speed, Lambda", run.ToString());
        Assert.Equal("3 rows: 3 used, 0 refused; 0 values left out; 0 problems", run.Account.ToString());
        Assert.All(Enum.GetValues<RunProblemKind>(), kind => Assert.Equal(0, run.Account.CountOf(kind)));
    }
}
