using CsCheck;
using FuelSizing.Logs;
using UnitsNet.Units;

namespace FuelSizing.Tests.Logs;

public class RunMappingTests
{
    private const string Full = """
        {
          "$schema": "https://example.org/recorded-run-mapping.schema.json",
          "version": 1,
          "separator": "semicolon",
          "decimal": "comma",
          "headingLine": 2,
          "unitsRow": "skip",
          "channels": {
            "time": { "column": "t", "unit": "ms" },
            "speed": { "column": 2, "unit": "rev/min" },
            "manifoldPressure": { "column": "Boost", "unit": "bar", "reference": "gauge" },
            "railPressure": { "column": "Rail", "unit": "psi", "reference": "absolute" },
            "injectorPulse": { "column": "Pulse", "unit": "µs" },
            "dutyCycle": { "column": "Duty", "unit": "%" },
            "lambda": { "column": "AFR", "unit": "AFR", "stoichiometric": 14.7 },
            "batteryVoltage": { "column": "Volts", "unit": "V" },
            "power": { "column": "P", "unit": "PS" },
            "torque": { "column": "M", "unit": "N·m" },
            "fuelTemperature": { "column": "Fuel", "unit": "°F" },
            "fuelVolumeFlow": { "column": "Flow", "unit": "L/h" },
            "fuelMassFlow": { "column": "Mass", "unit": "kg/h" }
          }
        }
        """;

    [Fact]
    public void File_WithEveryField_SaysWhatCodeWouldSay()
    {
        var fromFile = RunMapping.Parse(Full);
        RunMapping fromCode = RunMapping.Of(
            RunColumn.Time("t", DurationUnit.Millisecond),
            RunColumn.Speed(ColumnPlace.Numbered(2), RotationalSpeedUnit.RevolutionPerMinute),
            RunColumn.Boost("Boost", PressureUnit.Bar),
            RunColumn.RailAbsolute("Rail", PressureUnit.PoundForcePerSquareInch),
            RunColumn.InjectorPulse("Pulse", DurationUnit.Microsecond),
            RunColumn.DutyCycle("Duty", RatioUnit.Percent),
            RunColumn.AirFuelRatio("AFR", 14.7),
            RunColumn.BatteryVoltage("Volts", ElectricPotentialUnit.Volt),
            RunColumn.Power("P", PowerUnit.MetricHorsepower),
            RunColumn.Torque("M", TorqueUnit.NewtonMeter),
            RunColumn.FuelTemperature("Fuel", TemperatureUnit.DegreeFahrenheit),
            RunColumn.FuelVolumeFlow("Flow", VolumeFlowUnit.LiterPerHour),
            RunColumn.FuelMassFlow("Mass", MassFlowUnit.KilogramPerHour))
            .Written(CellSeparator.Semicolon, DecimalMark.Comma).WithHeadingLine(2).WithUnitsRow(UnitsRow.Skipped);

        Assert.Equal(Shape(fromCode), Shape(fromFile));
        Assert.Equal(
            (fromCode.Separator, fromCode.DecimalMark, fromCode.HeadingLine, fromCode.UnitsRow),
            (fromFile.Separator, fromFile.DecimalMark, fromFile.HeadingLine, fromFile.UnitsRow));

        const string run = "a run\nt;Speed;Boost;Rail;Pulse;Duty;AFR;Volts;P;M;Fuel;Flow;Mass\n\n"
            + "500;3000;0,5;65,5;8500;42,5;12,05;13,4;150;230;104;50;37\n";
        Assert.Equal(Rows(run, fromCode), Rows(run, fromFile));
        Assert.Equal(
            "line 4: Time 0.5 s, Speed 3000 rev/min, ManifoldAbsolute 145 kPa, RailGauge 356.607 kPa, InjectorPulse 8.5 ms, DutyCycle 42.5 %, "
            + "Lambda 0.819728, BatteryVoltage 13.4 V, Power 110.325 kW, Torque 230 N·m, FuelTemperature 40 °C, FuelVolumeFlow 50 L/h, FuelMassFlow 10.2778 g/s",
            Rows(run, fromFile)[0].ToString());
    }

    [Fact]
    public void File_OfTheMinimum_ReadsCommasAndPoints()
    {
        var mapping = RunMapping.Parse("""{"version":1,"channels":{"speed":{"column":"Speed","unit":"rpm"}}}""");
        Assert.Equal((CellSeparator.Comma, DecimalMark.Point, 1, UnitsRow.None), (mapping.Separator, mapping.DecimalMark, mapping.HeadingLine, mapping.UnitsRow));
        Assert.Equal(3000, LogText.Read("Speed\n3000\n", mapping).Rows[0].Speed.RevolutionsPerMinute, 9);
    }

    // A change to the full file, the place that must be named (line and position), and what the message must say.
    [Theory]
    [InlineData("\"headingLine\"", "\"heading\"", 6, 3, "\"heading\" is no field that is known here. Known are \"$schema\", \"version\"")]
    [InlineData("\"power\"", "\"powr\"", 17, 5, "\"powr\" is no field that is known here")]
    [InlineData("\"column\": \"P\"", "\"colum\": \"P\"", 17, 16, "\"colum\" is no field")]
    [InlineData("\"PS\"", "\"ch\"", 17, 39, "\"ch\" is no unit of this channel. Write one of \"kW\", \"W\", \"hp\", \"PS\".")]
    [InlineData("\"unit\": \"rev/min\"", "\"unit\": \"kPa\"", 10, 37, "\"kPa\" is no unit of this channel")]
    [InlineData("\"version\": 1", "\"version\": 2", 3, 14, "reads version 1")]
    [InlineData("\"version\": 1", "\"version\": \"1\"", 3, 14, "here stands a text; wanted is a whole number")]
    [InlineData("  \"version\": 1,\n", "", 1, 1, "lacks \"version\"")]
    [InlineData("\"semicolon\"", "\"comma\"", 5, 14, "both a comma")]
    [InlineData("\"semicolon\"", "\";\"", 4, 16, "is one of \"comma\", \"semicolon\", \"tab\"")]
    [InlineData("\"headingLine\": 2", "\"headingLine\": 0", 6, 18, "a whole number from 1 to 1000")]
    [InlineData("\"headingLine\": 2", "\"headingLine\": 1.5", 6, 18, "a whole number from 1 to 1000")]
    [InlineData("\"column\": 2", "\"column\": 0", 10, 26, "a whole number from 1 to 1000")]
    [InlineData("\"column\": 2", "\"column\": [2]", 10, 26, "here stands an array")]
    [InlineData("\"column\": \"t\"", "\"column\": \" \"", 9, 25, "1 to 80 characters")]
    [InlineData("\"column\": \"t\"", "\"column\": \"\\ud800\"", 9, 25, "something that is no character")]
    [InlineData("\"column\": \"t\", ", "", 9, 13, "lacks \"column\"")]
    [InlineData(", \"unit\": \"V\"", "", 16, 23, "lacks \"unit\"")]
    [InlineData(", \"reference\": \"gauge\"", "", 11, 25, "lacks \"reference\"")]
    [InlineData("\"gauge\"", "\"boost\"", 11, 74, "is one of \"gauge\", \"absolute\"")]
    [InlineData(", \"stoichiometric\": 14.7", "", 15, 42, "needs \"stoichiometric\"")]
    [InlineData("\"unit\": \"AFR\"", "\"unit\": \"1\"", 15, 65, "goes with")]
    [InlineData("14.7", "147", 15, 67, "from 5 to 20")]
    [InlineData("\"unit\": \"%\"", "\"unit\": \"%\", \"stoichiometric\": 14.7", 14, 51, "\"stoichiometric\" is no field")]
    [InlineData("\"dutyCycle\"", "\"speed\"", 14, 5, "second time")]
    [InlineData("    \"speed\": { \"column\": 2, \"unit\": \"rev/min\" },\n", "", 8, 15, "lack \"speed\"")]
    [InlineData("\"unit\": \"ms\" }", "\"unit\": \"ms\" ]", 9, 43, "no longer JSON")]
    [InlineData("\"version\": 1,", "\"version\": 1,,", 3, 16, "no longer JSON")]
    [InlineData("\"version\": 1,", "\"version\": f\u0001,", 3, 15, "no longer JSON here: 'f\uFFFD")]
    public void File_WithAFault_IsRefusedWithItsPlace(string found, string put, int line, int position, string reason)
    {
        string text = Full.ReplaceLineEndings("\n");
        Assert.Contains(found, text, StringComparison.Ordinal);
        var error = Assert.Throws<RunMappingException>(() => RunMapping.Parse(text.Replace(found, put, StringComparison.Ordinal)));
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
        Assert.Equal((line, position), (error.Line, error.Position));
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("{} {}")]
    [InlineData("Speed,Lambda\n3000,0.8\n")]
    public void Text_ThatIsNoMapping_IsRefused(string text) => Assert.Throws<RunMappingException>(() => RunMapping.Parse(text));

    [Fact]
    public void Bytes_OfAChangedFile_AreAMappingOrRefusedWithAPlace()
    {
        byte[] good = System.Text.Encoding.UTF8.GetBytes(Full);
        Gen.OneOf(Gen.Byte, Gen.OneOfConst("{}[]\",:\\u0123456789.eE-+ \n\0".Select(c => (byte)c).ToArray()))
            .Select(Gen.Int[0, good.Length - 1], Gen.Int[0, 2]).Array[1, 4]
            .Sample(
                changes =>
                {
                    List<byte> bytes = [.. good];
                    foreach ((byte put, int at, int kind) in changes)
                    {
                        int place = Math.Min(at, bytes.Count - 1);
                        if (kind == 0)
                        {
                            bytes[place] = put;
                        }
                        else if (kind == 1)
                        {
                            bytes.Insert(place, put);
                        }
                        else
                        {
                            bytes.RemoveRange(place, Math.Min(put, bytes.Count - place - 1));
                        }
                    }

                    try
                    {
                        return RunMappingJson.Read(bytes.ToArray()).Columns.Count > 0;
                    }
                    catch (RunMappingException refusal)
                    {
                        return refusal.Line >= 1 && refusal.Line <= 1 + bytes.Count(b => b == '\n') && refusal.Position >= 1;
                    }
                },
                iter: 5000);
    }

    [Fact]
    public void File_ThatIsTheRunItself_IsRefusedWithoutBeingReadWhole()
    {
        string path = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.json");
        try
        {
            File.WriteAllText(path, new string(' ', 1_000_001));
            Assert.Contains("Is it the run itself?", Assert.Throws<RunMappingException>(() => RunMapping.Load(path)).Message, StringComparison.Ordinal);
            File.WriteAllBytes(path, [0xEF, 0xBB, 0xBF, .. System.Text.Encoding.UTF8.GetBytes(Full)]);
            Assert.Equal(13, RunMapping.Load(path).Columns.Count);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void Columns_WithoutSpeedOrWithAChannelTwice_AreRefused()
    {
        RunColumn speed = RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute);
        Assert.Equal("columns", Assert.Throws<ArgumentException>(() => RunMapping.Of(RunColumn.Lambda("Lambda"))).ParamName);
        Assert.Equal("columns", Assert.Throws<ArgumentException>(() => RunMapping.Of(speed, RunColumn.Speed("n", RotationalSpeedUnit.RadianPerSecond))).ParamName);
        Assert.Equal(
            "decimalMark",
            Assert.Throws<ArgumentException>(() => RunMapping.Of(speed).Written(CellSeparator.Comma, DecimalMark.Comma)).ParamName);
    }

    // NIST SP 811 (2008), appendix B.8 and B.9, has seven figures; UnitsNet rounds the horsepower to 745.69 W.
    [Theory(DisplayName = "Unit conversions of recorded runs; NIST SP 811")]
    [InlineData(Channel.ManifoldAbsolute, "psi", 6894.757)]
    [InlineData(Channel.ManifoldAbsolute, "inHg", 3386.389)]
    [InlineData(Channel.ManifoldAbsolute, "mmHg", 133.3224)]
    [InlineData(Channel.ManifoldAbsolute, "hPa", 100)]
    [InlineData(Channel.ManifoldAbsolute, "MPa", 1e6)]
    [InlineData(Channel.Power, "hp", 745.6999)]
    [InlineData(Channel.Power, "PS", 735.4988)]
    [InlineData(Channel.Torque, "lbf·ft", 1.355818)]
    [InlineData(Channel.FuelVolumeFlow, "gal/h", 3.785412e-3 / 3600)]
    [InlineData(Channel.FuelVolumeFlow, "cc/min", 1e-6 / 60)]
    [InlineData(Channel.FuelMassFlow, "lb/h", 0.4535924 / 3600)]
    [InlineData(Channel.Speed, "rad/s", 0.1591549)]
    [InlineData(Channel.FuelTemperature, "°F", 1 / 1.8)]
    public void Unit_OfAFile_IsThatOfTheInternationalTable(Channel channel, string text, double si)
    {
        Assert.True(ChannelUnits.TryFind(channel, text, out ChannelUnit unit));
        Published.Value("NIST SP 811 (2008), appendix B", si, unit.Scale, text == "hp" ? 2e-5 : 5e-7);
    }

    private static List<RunRow> Rows(string run, RunMapping mapping) => [.. LogText.Read(run, mapping).Rows];

    private static IEnumerable<(Channel Channel, ColumnPlace Place, PressureReference? Reference)> Shape(RunMapping mapping) =>
        mapping.Columns.Select(column => (column.Channel, column.Place, column.Reference));
}
