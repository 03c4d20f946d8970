using FuelSizing.Bench;
using FuelSizing.Files;
using UnitsNet;

namespace FuelSizing.Tests.Files.Benches;

/// <summary>Sheets of the bench, typed in and read back.</summary>
public class BenchTestsTests
{
    /// <summary>Of the columns that are blank for a test: those that are not needed are taken out, as one does who fills a sheet in.</summary>
    [Fact]
    public void Blank_FilledIn_IsReadBack()
    {
        Assert.Equal(
            "pulse_tests 1,test_fluid,test_density [kg/m³],differential [kPa],voltage [V],scale [mg],calibration [%],readings.pulse [ms],readings.injections,readings.collected [g]\n",
            BenchTests.Blank(BenchTestKind.PulseTest));
        BenchTests tests = BenchTests.Parse("pulses.csv", BenchFiles.Pulses);
        Assert.Equal(2, tests.PulseTests.Count);
        PulseTest second = tests.PulseTests[1];
        Assert.Equal(("injector C", 11.0, 7), (second.Name, second.Voltage.Volts, second.Readings.Count));
        Assert.Equal(683.8, second.Fluid.Density.KilogramsPerCubicMeter, 9);
        Assert.Equal(10, second.Scale.Milligrams, 9);
        Assert.Equal(PulseReading.Of(Duration.FromMilliseconds(1.9), 1000, Mass.FromGrams(3.2)), second.Readings[0]);
        Assert.Equal("pulse tests: 2", $"{tests}");
    }

    [Fact]
    public void Static_ByMassAndByVolume_IsReadBack()
    {
        Assert.Equal(
            "static_tests 1,test_fluid,test_density [kg/m³],differential [kPa],scale [g],graduation [mL],clock [s],calibration [%],readings.time [s],readings.weighed [g],readings.filled [mL]\n",
            BenchTests.Blank(BenchTestKind.StaticTest));
        BenchTests tests = BenchTests.Parse("static.csv", BenchFiles.Statics);
        Assert.Equal(460, StaticFlow.Of(tests.StaticTests[0]).Flow.MillilitersPerMinute, 2.0);
        Assert.Equal(460, StaticFlow.Of(tests.StaticTests[1]).Flow.MillilitersPerMinute, 1e-9);
        Assert.Equal("club bench oil", tests.StaticTests[1].Fluid.Name);
    }

    /// <summary>Each other sheet, as filled in: its test is the one described in code, and is fitted.</summary>
    [Fact]
    public void OtherParts_FilledIn_AreReadBack()
    {
        PumpFlowTest pump = BenchTests.Parse("pump.csv", BenchFiles.Pumps).PumpTests[0];
        Assert.Equal((6, 7.1), (pump.Readings.Count, pump.Readings[5].Current!.Value.Amperes));
        Assert.Equal(GaugeAccuracy.Of(Wren.Kpa(1), Wren.Kpa(2), Wren.Percent(0.5)), pump.Gauge);
        Assert.Equal(1211.5 / 30 / 683.8 * 3600, PumpFlowFit.Of(pump).Points[0].Flow.LitersPerHour, 1e-6);
        DeadheadFit shut = DeadheadFit.Of(BenchTests.Parse("shut.csv", BenchFiles.Stops).DeadheadTests[0]);
        Assert.Null(shut.Points[1].MaximumPressureRise);
        VoltageDropTest drop = BenchTests.Parse("drop.csv", BenchFiles.Drops).VoltageDropTests[0];
        Assert.Equal(25.3, VoltageDropFit.Of(drop).Resistance.Milliohms, 0.2);
        RegulatorTest unit = BenchTests.Parse("unit.csv", BenchFiles.Regulators).RegulatorTests[0];
        Assert.True(unit.FollowsManifold);
        Assert.Equal(0.3, unit.Applied.Reading.Kilopascals, 9);
        ConsumptionTest runs = BenchTests.Parse("runs.csv", BenchFiles.Runs).ConsumptionTests[0];
        Assert.Equal((3, 0.5), (runs.Readings.Count, Math.Round(runs.Power.Percent, 9)));
    }

    /// <summary>The same tests from JSON: an embedding program writes them, a spreadsheet the other.</summary>
    [Fact]
    public void Json_GivesTheSameTests() =>
        Assert.Equal(BenchTests.Parse("static.csv", BenchFiles.Statics).StaticTests[1], BenchTests.Parse("bench.json", BenchFiles.Json).StaticTests[0]);

    /// <summary>What was read from comma-separated values, written as JSON and read again, is the same.</summary>
    [Theory]
    [InlineData(BenchFiles.Pulses)]
    [InlineData(BenchFiles.Statics)]
    [InlineData(BenchFiles.Pumps)]
    [InlineData(BenchFiles.Stops)]
    [InlineData(BenchFiles.Drops)]
    [InlineData(BenchFiles.Regulators)]
    [InlineData(BenchFiles.Runs)]
    public void Tests_WrittenAsJson_AreReadAsTheSame(string sheet)
    {
        BenchTests read = BenchTests.Parse("sheet.csv", sheet);
        Assert.Equal(read, BenchTests.Parse("bench.json", BenchForm.File.Text(read)));
    }

    [Theory]
    [InlineData("300,0.1,,0.1", "300,0.1,1,0.1", 2, "static_tests.scale", "stands beside graduation. Give one of them")]
    [InlineData("300,0.1,,0.1", "300,,,0.1", 2, "static_tests.scale", "Give one of them")]
    [InlineData("20,105.9,", "20,,", 2, "static_tests.readings.weighed", "Give one of them")]
    [InlineData("20,106.2,", "20,,155.3", 2, "static_tests.readings", "Give all by mass or all by volume")]
    [InlineData("60,316.4,", "60,316.4 kg,", 4, "static_tests.readings.weighed", "Give the unit in one place")]
    [InlineData("60,316.4,", "60,abc,", 4, "static_tests.readings.weighed", "Give a number")]
    [InlineData("60,316.4,", "0.2,316.4,", 4, "static_tests.readings.time", "held open")]
    [InlineData("[kPa]", "[V]", 2, "static_tests.differential", "does not fit")]
    [InlineData("300,0.1,,0.1", "3,0.1,,0.1", 2, "static_tests.differential", "between")]
    [InlineData("static_tests 1", "static_tests 2", 1, "column 1", "pulse_tests 1")]
    [InlineData("static_tests 1", "injectors 1", 1, "column 1", "Give one of pulse_tests, static_tests, pump_tests")]
    public void Sheets_FilledInWrong_AreRefusedByLineAndField(string good, string bad, int line, string field, string advice)
    {
        string text = BenchFiles.Statics;
        int at = text.IndexOf(good, StringComparison.Ordinal);
        BenchTestsException refused = Assert.Throws<BenchTestsException>(() => BenchTests.Parse("static.csv", text[..at] + bad + text[(at + good.Length)..]));
        FileProblem problem = refused.Problems[0];
        Assert.Equal((line, field), (problem.Line, problem.Field));
        Assert.Contains(advice, problem.Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Files_OfOtherKinds_AreRefused()
    {
        Assert.Throws<ArgumentException>(() => BenchTests.Parse("bench.txt", string.Empty));
        Assert.Throws<ArgumentException>(() => BenchTests.Read());
        Assert.Throws<BenchTestsException>(() => BenchTests.Parse("bench.csv", string.Empty));
        Assert.Throws<ArgumentOutOfRangeException>(() => BenchTests.Blank((BenchTestKind)99));
    }
}
