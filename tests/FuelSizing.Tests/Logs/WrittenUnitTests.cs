using FuelSizing.Logs;
using UnitsNet.Units;

namespace FuelSizing.Tests.Logs;

/// <summary>Spellings of units, each read as what one of it is in SI, and texts that must not be taken for a unit.</summary>
public class WrittenUnitTests
{
    /// <summary>A newton metre is a newton metre, whatever stands for the point or the brackets.</summary>
    [Theory]
    [InlineData("N·m")]
    [InlineData("N⋅m")]
    [InlineData("N∙m")]
    [InlineData("N*m")]
    [InlineData("N.m")]
    [InlineData("N_m")]
    [InlineData("N-m")]
    [InlineData("N–m")]
    [InlineData("N−m")]
    [InlineData("N,m")]
    [InlineData("N^m")]
    [InlineData("N m")]
    [InlineData("N\u00A0m")]
    [InlineData("[Nm]")]
    [InlineData("(Nm)")]
    [InlineData("{Nm}")]
    [InlineData("newton-metres")]
    public void Torque_InAnyPunctuation_IsTheNewtonMetre(string text) => Same(Channel.Torque, text, UnitOf.Torque, 1, 0);

    // What is one of the unit in SI: definitions, and NIST SP 811 (2008), appendix B.8, to its figures.
    [Theory]
    [InlineData(Channel.InjectorPulse, "µs", 1e-6)]
    [InlineData(Channel.InjectorPulse, "μs", 1e-6)]
    [InlineData(Channel.InjectorPulse, "us", 1e-6)]
    [InlineData(Channel.Time, "Minutes", 60)]
    [InlineData(Channel.Time, "h", 3600)]
    [InlineData(Channel.Speed, "revs per min", 1 / 60.0)]
    [InlineData(Channel.Speed, "rev\\min", 1 / 60.0)]
    [InlineData(Channel.Speed, "rev⁄min", 1 / 60.0)]
    [InlineData(Channel.Speed, "rev∕min", 1 / 60.0)]
    [InlineData(Channel.Speed, "min-1", 1 / 60.0)]
    [InlineData(Channel.Speed, "rad/s", 1 / (2 * Math.PI))]
    [InlineData(Channel.RailGauge, "kgf/cm²", 98_066.5)]
    [InlineData(Channel.RailGauge, "kgf/cm^2", 98_066.5)]
    [InlineData(Channel.RailGauge, "lb per sq. in.", 6894.757)]
    [InlineData(Channel.RailGauge, "″Hg", 3386.389)]
    [InlineData(Channel.RailGauge, "”Hg", 3386.389)]
    [InlineData(Channel.RailGauge, "\"Hg", 3386.389)]
    [InlineData(Channel.RailGauge, "Torr", 133.3224)]
    [InlineData(Channel.RailGauge, "atm", 101_325)]
    [InlineData(Channel.DutyCycle, "% DC", 0.01)]
    [InlineData(Channel.DutyCycle, "1", 1)]
    [InlineData(Channel.Lambda, "1", 1)]
    [InlineData(Channel.Lambda, "λ", 1)]
    [InlineData(Channel.BatteryVoltage, "mV", 1e-3)]
    [InlineData(Channel.Power, "BHP", 745.6999)]
    [InlineData(Channel.Power, "PS", 735.4988)]
    [InlineData(Channel.Torque, "lbf·ft", 1.355818)]
    [InlineData(Channel.Torque, "ft-lbs", 1.355818)]
    [InlineData(Channel.FuelVolumeFlow, "litres per hour", 1e-3 / 3600)]
    [InlineData(Channel.FuelVolumeFlow, "cm³/min", 1e-6 / 60)]
    [InlineData(Channel.FuelVolumeFlow, "US gal/h", 3.785412e-3 / 3600)]
    [InlineData(Channel.FuelMassFlow, "pounds per hour", 0.4535924 / 3600)]
    [InlineData(Channel.FuelMassFlow, "kg/h", 1 / 3600.0)]
    public void Unit_InASpellingOfLoggers_IsThatMuchInSi(Channel channel, string text, double si) =>
        Same(channel, text, WrittenUnit.QuantityOf(channel), si, 0);

    /// <summary>By definition 0 °C is 273.15 K and 0 °F is 459.67/1.8 K.</summary>
    [Theory]
    [InlineData("°C", 1, 273.15)]
    [InlineData("ºC", 1, 273.15)]
    [InlineData("˚C", 1, 273.15)]
    [InlineData("⁰C", 1, 273.15)]
    [InlineData("℃", 1, 273.15)]
    [InlineData("deg C", 1, 273.15)]
    [InlineData("Degs. C", 1, 273.15)]
    [InlineData("degree celsius", 1, 273.15)]
    [InlineData("degrees C", 1, 273.15)]
    [InlineData("℉", 1 / 1.8, 459.67 / 1.8)]
    [InlineData("Degrees Fahrenheit", 1 / 1.8, 459.67 / 1.8)]
    [InlineData("°K", 1, 0)]
    public void Temperature_InAnyDegreeSign_IsThatScale(string text, double scale, double offset) =>
        Same(Channel.FuelTemperature, text, UnitOf.Temperature, scale, offset);

    [Theory]
    [InlineData("kPa", null)]
    [InlineData("kPa a", PressureReference.Absolute)]
    [InlineData("kPaA", PressureReference.Absolute)]
    [InlineData("kPa abs", PressureReference.Absolute)]
    [InlineData("kPa (absolute)", PressureReference.Absolute)]
    [InlineData("absolute kPa", PressureReference.Absolute)]
    [InlineData("abs kPa", PressureReference.Absolute)]
    [InlineData("kPag", PressureReference.Gauge)]
    [InlineData("kPa gauge", PressureReference.Gauge)]
    [InlineData("gauge kPa", PressureReference.Gauge)]
    [InlineData("kPa gage", PressureReference.Gauge)]
    [InlineData("rel. kPa", PressureReference.Gauge)]
    [InlineData("kPa relative", PressureReference.Gauge)]
    public void Pressure_ThatSaysAgainstWhat_IsReadWithIt(string text, PressureReference? reference)
    {
        Assert.True(WrittenUnit.TryFind(Channel.RailGauge, text, out WrittenUnit unit));
        Assert.Equal((UnitOf.Pressure, 1000.0, reference), (unit.Of, unit.Unit.Scale, unit.Reference));
    }

    /// <summary>Only a pressure is gauge or absolute, and a letter before a unit is none of it.</summary>
    [Theory]
    [InlineData("V a")]
    [InlineData("Va")]
    [InlineData("kWg")]
    [InlineData("°C abs")]
    [InlineData("rel V")]
    [InlineData("abs %")]
    [InlineData("a kPa")]
    [InlineData("g kPa")]
    [InlineData("absolute")]
    [InlineData("gauge")]
    [InlineData("a")]
    [InlineData("g")]
    [InlineData("")]
    [InlineData("kPa abs abs")]
    [InlineData("degrees")]
    public void Text_ThatIsNoUnit_IsNotTakenForOne(string text)
    {
        foreach (Channel channel in Enum.GetValues<Channel>())
        {
            Assert.False(WrittenUnit.TryFind(channel, text, out WrittenUnit unit));
            Assert.Equal(default, unit);
        }
    }

    [Theory]
    [InlineData("abs", PressureReference.Absolute)]
    [InlineData("(Absolute)", PressureReference.Absolute)]
    [InlineData("gauge", PressureReference.Gauge)]
    [InlineData("Gage", PressureReference.Gauge)]
    [InlineData("rel.", PressureReference.Gauge)]
    [InlineData("relative", PressureReference.Gauge)]
    [InlineData("a", null)]
    [InlineData("g", null)]
    [InlineData("kPa", null)]
    [InlineData("", null)]
    public void Reference_BySomethingElseThanItsWord_IsNone(string text, PressureReference? reference) =>
        Assert.Equal(reference, WrittenUnit.ReferenceIn(text));

    /// <summary>A horsepower of 746 W and one of 745.7 W are one unit, the metric one of 735.5 W is not; 1 kgf/cm² is not 1 bar.</summary>
    [Theory]
    [InlineData("hp", PowerUnit.ElectricalHorsepower, true)]
    [InlineData("hp", PowerUnit.MechanicalHorsepower, true)]
    [InlineData("hp", PowerUnit.MetricHorsepower, false)]
    [InlineData("PS", PowerUnit.MechanicalHorsepower, false)]
    [InlineData("kW", PowerUnit.BoilerHorsepower, false)]
    public void Horsepower_OfTwoDefinitions_IsOneUnitWithinAThousandth(string row, PowerUnit mapped, bool isOne)
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed"), RunColumn.Power("Power", mapped)).WithUnitsRow(UnitsRow.Used);
        RecordedRun run = LogText.Read($"Speed,Power\nrpm,{row}\n3000,50\n", mapping);
        Assert.Equal(
            isOne
                ? []
                : [$"the units row says \"{row}\" and the mapping {mapped}; Power is left out until they agree. Correct whichever is wrong."],
            run.Problems.Select(problem => problem.Reason.ToString()));
    }

    [Theory]
    [InlineData("Lambda", "AFR", "the heading says \"AFR\", an air-fuel ratio, and the mapping lambda; Lambda is left out. Map the column as an air-fuel ratio, with what the instrument shows at lambda 1.")]
    [InlineData("Lambda", "lambda", null)]
    [InlineData("Ratio", "AFR", null)]
    [InlineData("Ratio", "1", null)]
    [InlineData("Ratio", "bank 1", null)]
    [InlineData("Ratio", "λ", "the heading says \"λ\", which is lambda, and the mapping an air-fuel ratio; Lambda is left out. Map the column as lambda.")]
    [InlineData("Ratio", "psi", "the heading says \"psi\", which is no unit of Lambda; Lambda is left out. Correct the heading or the mapping.")]
    [InlineData("Lambda", "psi", "the heading says \"psi\", which is no unit of Lambda; Lambda is left out. Correct the heading or the mapping.")]
    public void Heading_OfLambdaOrARatio_MustSayTheSame(string mapped, string text, string? words)
    {
        string heading = $"O2 ({text})";
        RunColumn column = mapped == "Lambda" ? RunColumn.Lambda(heading) : RunColumn.AirFuelRatio(heading, 14.7);
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute), column);
        Assert.Equal(words, LogText.Read($"Speed,{heading}\n0,12.1\n", mapping).Problems.SingleOrDefault()?.Reason.ToString());
    }

    /// <summary>The texts of a mapping file: case counts, blanks and one pair of brackets around a text do not.</summary>
    [Theory]
    [InlineData("kPa", "kPa")]
    [InlineData(" [kPa] ", "kPa")]
    [InlineData("( kPa )", "kPa")]
    [InlineData("[kPa)", null)]
    [InlineData("{kPa}", null)]
    [InlineData("[[kPa]]", null)]
    [InlineData("KPA", null)]
    [InlineData("[", null)]
    [InlineData("[]", null)]
    [InlineData("", null)]
    public void Text_OfAMappingFile_IsOneOfTheChannels(string text, string? found)
    {
        Assert.Equal(found is not null, ChannelUnits.TryFind(Channel.RailGauge, text, out ChannelUnit unit));
        Assert.Equal(found, unit.Text);
        Assert.Equal(found is null ? 0 : 1000, unit.Scale);
        Assert.False(ChannelUnits.TryFind(Channel.Time, text, out _));
    }

    /// <summary>A unit has the first text that is its own; one that no file can say has none.</summary>
    [Fact]
    public void Unit_OfCode_HasItsTextOrNone()
    {
        Assert.Equal("rev/min", ChannelUnits.TextOf(Channel.Speed, ChannelUnits.Of(RotationalSpeedUnit.RevolutionPerMinute)));
        Assert.Equal("K", ChannelUnits.TextOf(Channel.FuelTemperature, ChannelUnits.Of(TemperatureUnit.Kelvin)));
        Assert.Equal("°C", ChannelUnits.TextOf(Channel.FuelTemperature, ChannelUnits.Of(TemperatureUnit.DegreeCelsius)));
        Assert.Null(ChannelUnits.TextOf(Channel.FuelTemperature, ChannelUnits.Of(TemperatureUnit.DegreeRankine)));
        Assert.Null(ChannelUnits.TextOf(Channel.Speed, ChannelUnits.Of(RotationalSpeedUnit.DegreePerSecond)));
    }

    private static void Same(Channel channel, string text, UnitOf of, double scale, double offset)
    {
        Assert.True(WrittenUnit.TryFind(channel, text, out WrittenUnit unit));
        Assert.Equal(of, unit.Of);
        Assert.Equal(scale, unit.Unit.Scale, 2e-5 * scale);
        Assert.Equal(offset, unit.Unit.Offset, 1e-9);
        Assert.Null(unit.Reference);
    }
}
