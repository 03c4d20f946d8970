using CsCheck;
using FuelSizing.Files;
using FuelSizing.Logs;
using FuelSizing.Tests.Sources;
using UnitsNet.Units;

namespace FuelSizing.Tests.Logs;

public class RunMappingTests
{
    private const string Full = """
        {
          "$schema": "https://example.org/recorded-run-mapping.schema.json",
          "mapping": 1,
          "separator": "semicolon",
          "decimal_mark": "comma",
          "heading_line": 2,
          "units_row": "skip",
          "channels": {
            "time": { "column": "t", "unit": "ms" },
            "speed": { "column": 2, "unit": "rev/min" },
            "manifold_pressure": { "column": "Boost", "unit": "bar", "reference": "gauge" },
            "rail_pressure": { "column": "Rail", "unit": "psi", "reference": "absolute" },
            "injector_pulse": { "column": "Pulse", "unit": "µs" },
            "duty_cycle": { "column": "Duty", "unit": "%" },
            "lambda": { "column": "AFR", "unit": "AFR", "stoichiometric": 14.7 },
            "battery_voltage": { "column": "Volts", "unit": "V" },
            "power": { "column": "P", "unit": "PS" },
            "torque": { "column": "M", "unit": "N·m" },
            "fuel_temperature": { "column": "Fuel", "unit": "°F" },
            "fuel_volume_flow": { "column": "Flow", "unit": "L/h" },
            "fuel_mass_flow": { "column": "Mass", "unit": "kg/h" }
          }
        }
        """;

    [Fact]
    public void File_WithEveryField_SaysWhatCodeWouldSay()
    {
        var fromFile = RunMappingFile.Parse("mapping.json", Full);
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
        var mapping = RunMappingFile.Parse("mapping.json", """{"mapping":1,"channels":{"speed":{"column":"Speed","unit":"rpm"}}}""");
        Assert.Equal((CellSeparator.Comma, DecimalMark.Point, 1, UnitsRow.None), (mapping.Separator, mapping.DecimalMark, mapping.HeadingLine, mapping.UnitsRow));
        Assert.Equal(3000, LogText.Read("Speed\n3000\n", mapping).Rows[0].Speed.RevolutionsPerMinute, 9);
    }

    // A change to the full file, the place that must be named (line and field), and what the message must say.
    [Theory]
    [InlineData("\"heading_line\"", "\"heading\"", 6, "heading", "not a field")]
    [InlineData("\"power\"", "\"powr\"", 17, "channels.powr", "not a field")]
    [InlineData("\"column\": \"P\"", "\"colum\": \"P\"", 17, "channels.power.colum", "not a field")]
    [InlineData("\"PS\"", "\"ch\"", 17, "channels.power.unit", "was \"ch\". Give one of kW, W, hp, PS.")]
    [InlineData("\"unit\": \"rev/min\"", "\"unit\": \"kPa\"", 10, "channels.speed.unit", "was \"kPa\". Give one of rev/min, rpm")]
    [InlineData("\"mapping\": 1", "\"mapping\": 2", 3, "mapping", "must be 1")]
    [InlineData("\"mapping\": 1", "\"mapping\": \"1\"", 3, "mapping", "must be 1")]
    [InlineData("  \"mapping\": 1,\n", "", 22, "mapping", "is missing")]
    [InlineData("\"semicolon\"", "\"comma\"", 5, "decimal_mark", "both a comma")]
    [InlineData("\"semicolon\"", "\";\"", 4, "separator", "Give one of comma, semicolon, tab")]
    [InlineData("\"heading_line\": 2", "\"heading_line\": 0", 6, "heading_line", "0")]
    [InlineData("\"heading_line\": 2", "\"heading_line\": 1.5", 6, "heading_line", "Give a whole number")]
    [InlineData("\"column\": 2", "\"column\": 0", 10, "channels.speed.column", "was 0; it must be between 1 and 1,000")]
    [InlineData("\"column\": 2", "\"column\": [2]", 10, "channels.speed.column", "must be a text, a number")]
    [InlineData("\"column\": \"t\"", "\"column\": \" \"", 9, "channels.time.column", "1 to 80 characters")]
    [InlineData("\"column\": \"t\"", "\"column\": \"\\ud800\"", 9, "channels.time.column", "half of a character")]
    [InlineData("\"column\": \"t\", ", "", 9, "channels.time.column", "is missing")]
    [InlineData(", \"unit\": \"V\"", "", 16, "channels.battery_voltage.unit", "is missing. Give one of V, mV")]
    [InlineData(", \"reference\": \"gauge\"", "", 11, "channels.manifold_pressure.reference", "is missing. Give one of gauge, absolute")]
    [InlineData("\"gauge\"", "\"boost\"", 11, "channels.manifold_pressure.reference", "was \"boost\". Give one of gauge, absolute")]
    [InlineData(", \"stoichiometric\": 14.7", "", 15, "channels.lambda.stoichiometric", "Unit AFR needs it")]
    [InlineData("\"unit\": \"AFR\"", "\"unit\": \"1\"", 15, "channels.lambda.stoichiometric", "goes with unit AFR only")]
    [InlineData("14.7", "147", 15, "channels.lambda.stoichiometric", "147")]
    [InlineData("\"unit\": \"%\"", "\"unit\": \"%\", \"stoichiometric\": 14.7", 14, "channels.duty_cycle.stoichiometric", "not a field")]
    [InlineData("\"duty_cycle\"", "\"speed\"", 14, "channels.speed", "given twice")]
    [InlineData("    \"speed\": { \"column\": 2, \"unit\": \"rev/min\" },\n", "", 8, "channels.speed", "is missing")]
    [InlineData("\"unit\": \"ms\" }", "\"unit\": \"ms\" ]", 9, "byte 43", "not JSON")]
    [InlineData("\"mapping\": 1,", "\"mapping\": 1,,", 3, "byte 16", "not JSON")]
    [InlineData("\"mapping\": 1,", "\"mapping\": f\u0001,", 3, "byte 15", "not JSON")]
    public void File_WithAFault_IsRefusedWithItsPlace(string found, string put, int line, string field, string reason)
    {
        string text = Full.ReplaceLineEndings("\n");
        Assert.Contains(found, text, StringComparison.Ordinal);
        var refused = Assert.Throws<RunMappingException>(() => RunMappingFile.Parse("mapping.json", text.Replace(found, put, StringComparison.Ordinal)));
        Assert.Contains(
            refused.Problems,
            problem => problem.File == "mapping.json" && problem.Line == line && problem.Field == field && problem.Reason.ToString().Contains(reason, StringComparison.Ordinal));
    }

    [Fact]
    public void File_WithManyFaults_NamesAllInTheirOrder()
    {
        string text = Full.Replace("semicolon", "colon", StringComparison.Ordinal).Replace("\"ms\"", "\"hours\"", StringComparison.Ordinal).Replace("14.7", "\"14.7\"", StringComparison.Ordinal);
        Assert.Equal(
            ["separator", "channels.time.unit", "channels.lambda.stoichiometric"],
            Assert.Throws<RunMappingException>(() => RunMappingFile.Parse("mapping.json", text)).Problems.Select(problem => problem.Field));
    }

    /// <summary>A mapping written and read again reads a run to the same bits.</summary>
    [Fact]
    public void Mapping_WrittenAndReadBack_IsTheSame()
    {
        const string run = "a run\nt;Speed;Boost;Rail;Pulse;Duty;AFR;Volts;P;M;Fuel;Flow;Mass\n\n"
            + "500;3000;0,5;65,5;8500;42,5;12,05;13,4;150;230;104;50;37\n";
        var read = RunMappingFile.Parse("mapping.json", Full);
        string written = RunMappingFile.ToJson(read);
        var again = RunMappingFile.Parse("again.json", written);
        Assert.Equal(Shape(read), Shape(again));
        Assert.Equal(Rows(run, read), Rows(run, again));
        Assert.Equal(written, RunMappingFile.ToJson(again));
    }

    [Theory]
    [InlineData("1")]
    [InlineData("lambda")]
    [InlineData("λ")]
    public void Lambda_InAUnitOfItsOwn_IsReadAsItStands(string unit)
    {
        var mapping = RunMappingFile.Parse(
            "mapping.json",
            """{"mapping":1,"channels":{"speed":{"column":"Speed","unit":"rpm"},"lambda":{"column":"L","unit":"?"}}}""".Replace("?", unit, StringComparison.Ordinal));
        Assert.Equal(0.82, LogText.Read("Speed,L\n3000,0.82\n", mapping).Rows[0].Lambda);
        Assert.Equal(RunMappingFile.ToJson(mapping), RunMappingFile.ToJson(RunMappingFile.Parse("again.json", RunMappingFile.ToJson(mapping))));
    }

    [Fact]
    public void Mapping_InAUnitThatFilesDoNotHave_IsNotWritten()
    {
        RunMapping odd = RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.DegreePerSecond));
        Assert.Contains("rev/min", Assert.Throws<ArgumentException>(() => RunMappingFile.ToJson(odd)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("{} {}")]
    [InlineData("Speed,Lambda\n3000,0.8\n")]
    public void Text_ThatIsNoMapping_IsRefused(string text) => Assert.Throws<RunMappingException>(() => RunMappingFile.Parse("mapping.json", text));

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
                        return RunMappingFile.Parse("mapping.json", System.Text.Encoding.UTF8.GetString(bytes.ToArray())).Columns.Count > 0;
                    }
                    catch (RunMappingException refusal)
                    {
                        return refusal.Problems.Count > 0
                            && refusal.Problems.All(problem => problem.Line >= 1 && problem.Line <= 1 + bytes.Count(b => b == '\n') && problem.Field.Length > 0);
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
            File.WriteAllText(path, new string(' ', (1 << 20) + 1));
            Assert.Contains("Is it the run itself?", Assert.Throws<RunMappingException>(() => RunMappingFile.Read(path)).Message, StringComparison.Ordinal);
            File.WriteAllBytes(path, [0xEF, 0xBB, 0xBF, .. System.Text.Encoding.UTF8.GetBytes(Full)]);
            Assert.Equal(13, RunMappingFile.Read(path).Columns.Count);
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
        Published.Value(Works.Nist811.At(text), si, unit.Scale, text == "hp" ? 2e-5 : 5e-7);
    }

    private static List<RunRow> Rows(string run, RunMapping mapping) => [.. LogText.Read(run, mapping).Rows];

    private static IEnumerable<(Channel Channel, ColumnPlace Place, PressureReference? Reference)> Shape(RunMapping mapping) =>
        mapping.Columns.Select(column => (column.Channel, column.Place, column.Reference));
}
