using FuelSizing.Logs;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Tests.Logs;

/// <summary>What a channel may hold: the ranges that docs/recorded-run.md states, in code and in a file alike.</summary>
public class ChannelRangeTests
{
    private const string Cure = "Give the value as the instrument recorded it, or leave it out.";

    private static readonly Dictionary<string, Func<double, RunRow>> Rows = new()
    {
        ["time"] = seconds => RunRow.Of(1, Wren.Rpm(3000), time: Duration.FromSeconds(seconds)),
        ["speed"] = rpm => RunRow.Of(1, Wren.Rpm(rpm)),
        ["manifoldAbsolute"] = kilopascals => RunRow.Of(1, Wren.Rpm(3000), manifoldAbsolute: Wren.Kpa(kilopascals)),
        ["railGauge"] = kilopascals => RunRow.Of(1, Wren.Rpm(3000), railGauge: Wren.Kpa(kilopascals)),
        ["injectorPulse"] = milliseconds => RunRow.Of(1, Wren.Rpm(3000), injectorPulse: Wren.Ms(milliseconds)),
        ["dutyCycle"] = percent => RunRow.Of(1, Wren.Rpm(3000), dutyCycle: Wren.Percent(percent)),
        ["lambda"] = lambda => RunRow.Of(1, Wren.Rpm(3000), lambda: lambda),
        ["batteryVoltage"] = volts => RunRow.Of(1, Wren.Rpm(3000), batteryVoltage: Wren.Volt(volts)),
        ["power"] = kilowatts => RunRow.Of(1, Wren.Rpm(3000), power: Power.FromKilowatts(kilowatts)),
        ["torque"] = newtonMeters => RunRow.Of(1, Wren.Rpm(3000), torque: Torque.FromNewtonMeters(newtonMeters)),
        ["fuelTemperature"] = celsius => RunRow.Of(1, Wren.Rpm(3000), fuelTemperature: Temperature.FromDegreesCelsius(celsius)),
        ["fuelVolumeFlow"] = liters => RunRow.Of(1, Wren.Rpm(3000), fuelVolumeFlow: VolumeFlow.FromLitersPerHour(liters)),
        ["fuelMassFlow"] = grams => RunRow.Of(1, Wren.Rpm(3000), fuelMassFlow: MassFlow.FromGramsPerSecond(grams)),
    };

    [Theory]
    [InlineData("time", -1e10, 1e10, "−1.00001E+10 s", "1.00001E+10 s", "−1E+10 s and 1E+10 s")]
    [InlineData("speed", 0, 25_000, "−0.25 rev/min", "25000.2 rev/min", "0 rev/min and 25000 rev/min")]
    [InlineData("manifoldAbsolute", 5, 550, "4.9945 kPa", "550.005 kPa", "5 kPa and 550 kPa")]
    [InlineData("railGauge", -110, 3000, "−110.03 kPa", "3000.03 kPa", "−110 kPa and 3000 kPa")]
    [InlineData("injectorPulse", 0, 500, "−0.005 ms", "500.005 ms", "0 ms and 500 ms")]
    [InlineData("dutyCycle", 0, 200, "−0.002 %", "200.002 %", "0 % and 200 %")]
    [InlineData("lambda", 0.3, 30, "0.2997", "30.0003", "0.3 and 30")]
    [InlineData("batteryVoltage", 0, 32, "−0.00032 V", "32.0003 V", "0 V and 32 V")]
    [InlineData("power", -500, 3000, "−500.03 kW", "3000.03 kW", "−500 kW and 3000 kW")]
    [InlineData("torque", -20_000, 20_000, "−20000.2 N·m", "20000.2 N·m", "−20000 N·m and 20000 N·m")]
    [InlineData("fuelTemperature", -50, 150, "−50.002 °C", "150.002 °C", "−50 °C and 150 °C")]
    [InlineData("fuelVolumeFlow", -100, 5000, "−100.05 L/h", "5000.05 L/h", "−100 L/h and 5000 L/h")]
    [InlineData("fuelMassFlow", -20, 1000, "−20.01 g/s", "1000.01 g/s", "−20 g/s and 1000 g/s")]
    public void Value_UpToEitherEnd_IsTakenAndOnePastItIsRefused(
        string name, double minimum, double maximum, string below, string above, string range)
    {
        Func<double, RunRow> row = Rows[name];
        double hair = name == "fuelTemperature" ? 0.002 : 1e-5 * Math.Max(-minimum, maximum);

        // The ends themselves but for the rounding of their units.
        Assert.Equal(1, row(minimum + (1e-9 * hair)).Line);
        Assert.Equal(1, row(maximum - (1e-9 * hair)).Line);
        Refused(minimum - (name == "lambda" ? 3e-4 : hair), below);
        Refused(maximum + hair, above);

        void Refused(double value, string text)
        {
            ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => row(value));
            Assert.Equal(name, error.ParamName);
            Assert.StartsWith($"{name} is {text}; it must be between {range}. {Cure}", error.Message, StringComparison.Ordinal);
        }
    }

    /// <summary>A line is one of 10⁹.</summary>
    [Fact]
    public void Row_WithANumberOutsideItsRange_IsRefused()
    {
        Assert.Equal(1_000_000_000, RunRow.Of(1_000_000_000, Wren.Rpm(3000)).Line);
        Assert.Equal("line", Assert.Throws<ArgumentOutOfRangeException>(() => RunRow.Of(0, Wren.Rpm(3000))).ParamName);
        Assert.Equal("line", Assert.Throws<ArgumentOutOfRangeException>(() => RunRow.Of(1_000_000_001, Wren.Rpm(3000))).ParamName);
    }

    /// <summary>Ends that a file can hit exactly: they are taken, and the next number is too high or too low.</summary>
    [Theory]
    [InlineData("−110 kPa and 3,000 kPa", "Rail", "-110", "-110.1", "log.too-low", "3000", "3000.1", "log.too-high")]
    [InlineData("0.3 and 30", "Lambda", "0.3", "0.29", "log.too-low", "30", "30.1", "log.too-high")]
    [InlineData("−20,000 N·m and 20,000 N·m", "Torque", "-20000", "-20001", "log.too-low", "20000", "20001", "log.too-high")]
    public void Cell_AtAnEnd_IsTakenAndOnePastItIsLeftOut(
        string range, string column, string minimum, string below, string low, string maximum, string above, string high)
    {
        RecordedRun run = LogText.Read(
            $"Speed,{column}\n3000,{minimum}\n3000,{below}\n3000,{maximum}\n3000,{above}\n",
            RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute), Column(column)));
        Assert.Equal([(3L, low), (5L, high)], run.Problems.Select(problem => (problem.Line, problem.Reason.Code)));
        Assert.All(run.Problems, problem => Assert.Contains($"it must be between {range};", problem.ToString(), StringComparison.Ordinal));
        Assert.Equal([true, false, true, false], run.Rows.Select(row => row.Has(Column(column).Channel)));
    }

    /// <summary>
    /// A figure is worth writing up to a thousand times the wider end of its channel: 3 GPa of rail pressure, also under zero; 20 MN·m either way.
    /// </summary>
    [Theory]
    [InlineData("Rail", "3000000", "log.too-high", "3000001", "log.far-outside")]
    [InlineData("Rail", "-3000000", "log.too-low", "-3000001", "log.far-outside")]
    [InlineData("Torque", "20000000", "log.too-high", "20000001", "log.far-outside")]
    [InlineData("Torque", "-20000000", "log.too-low", "-20000001", "log.far-outside")]
    [InlineData("Lambda", "30000", "log.too-high", "30001", "log.far-outside")]
    public void Cell_OfMoreThanAThousandTimesTheEnd_IsNoFigure(string column, string near, string nearly, string far, string none)
    {
        RecordedRun run = LogText.Read(
            $"Speed,{column}\n3000,{near}\n3000,{far}\n",
            RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute), Column(column)));
        Assert.Equal([nearly, none], run.Problems.Select(problem => problem.Reason.Code));
    }

    private static RunColumn Column(string name) => name switch
    {
        "Rail" => RunColumn.RailGauge(name, PressureUnit.Kilopascal),
        "Torque" => RunColumn.Torque(name, TorqueUnit.NewtonMeter),
        _ => RunColumn.Lambda(name),
    };
}
