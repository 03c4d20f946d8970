using System.Globalization;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Tests.Quantities;

/// <summary>Reasons, notes, remedies and findings: a code with arguments, put in words in whichever style is asked for.</summary>
public class StatementTests
{
    private static readonly CultureInfo Comma = Separators(decimals: ",", groups: ".");

    private static readonly VolumeFlow Flow = VolumeFlow.FromLitersPerHour(118);

    private static readonly Pressure Rail = Pressure.FromKilopascals(360);

    private static Statement Pump(Pressure rail) =>
        Statement.Of("pump.delivers-too-little", $"delivers {Flow:pump-flow} at {rail} in the rail, {VolumeFlow.FromLitersPerHour(1250):pump-flow} wanted");

    [Fact]
    public void In_EachStyle_HasItsUnitsAndSeparators()
    {
        Assert.Equal("delivers 118 L/h at 360 kPa in the rail, 1,250 L/h wanted", Pump(Rail).ToString());
        Assert.Equal("delivers 31.2 US gal/h at 52.2 psi in the rail, 330.2 US gal/h wanted", Pump(Rail).In(TextStyle.UsCustomary));
        Assert.Equal("delivers 31,2 US gal/h at 52,2 psi in the rail, 330,2 US gal/h wanted", Pump(Rail).In(TextStyle.UsCustomary.With(Comma)));
        Assert.Equal("delivers 118 L/h at 360 kPa in the rail, 1.250 L/h wanted", Pump(Rail).In(TextStyle.Metric.With(Comma)));
    }

    [Fact]
    public void In_OneUnitReplaced_ChangesThatKindAlone()
    {
        DisplayUnit<Pressure> bar = DisplayUnit.Of("bar", "N2", p => p.Bars, value => Pressure.FromBars(value));
        TextStyle mine = TextStyle.Metric.With(FigureUnits.Metric with { Pressure = bar });
        Assert.Equal("delivers 118 L/h at 3.60 bar in the rail, 1,250 L/h wanted", Pump(Rail).In(mine));
    }

    [Fact]
    public void Arguments_OfAStatement_AreTypedAndInTheOrderOfTheWords()
    {
        Statement inner = Statement.Of("inner", $"inner words");
        Statement statement = Statement.Of(
            "all.kinds",
            $"{Rail:boost}, {"pump A"}, {12_000}, {12_000:ordinal}, {1.25:0.0}, {Wren.Percent(93.14):duty-cycle}, {inner}, {(Statement?)null}, {new[] { inner, inner }:, or}, {40m}");
        Assert.Equal("3.60 bar, pump A, 12,000, 12000, 1.3, 93.1 %, inner words, , inner words, or inner words, 40", statement.ToString());
        Assert.Equal(
            ["boost", "name", "count", "ordinal", "number", "duty-cycle", "statement", "statement", "list", "cost"],
            statement.Arguments.Select(argument => argument.Kind));
        Assert.Equal(Rail, Assert.IsType<Pressure>(statement.Arguments[0].Value));
        Assert.Equal(12_000L, statement.Arguments[2].Value);
        Assert.Same(inner, statement.Arguments[6].Value);
    }

    [Fact]
    public void Equals_TheSameSizesInOtherUnits_IsTrue()
    {
        Assert.Equal(Pump(Rail), Pump(Pressure.FromBars(3.6)));
        Assert.Equal(Pump(Rail).GetHashCode(), Pump(Pressure.FromBars(3.6)).GetHashCode());
        Assert.NotEqual(Pump(Rail), Pump(Pressure.FromKilopascals(360.001)));
        Assert.NotEqual(Statement.Of("a", $"words"), Statement.Of("b", $"words"));
        Assert.NotEqual(Statement.Of("a", $"{Rail}"), Statement.Of("a", $"{Rail:boost}"));
    }

    [Fact]
    public void Of_AKindThatIsNotTheQuantitys_IsRefusedWithThoseThatAre() =>
        Assert.Contains(
            "Pressure is written as pressure, boost, pressure-loss, pressure-change, pressure-offset",
            Assert.Throws<ArgumentException>(() => Statement.Of("a", $"{Rail:pump-flow}")).Message,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("")]
    [InlineData("Pump")]
    [InlineData("pump too weak")]
    [InlineData("pump..weak")]
    [InlineData("-pump")]
    [InlineData("pump-")]
    public void Of_ACodeThatIsNone_IsRefused(string code) =>
        Assert.Throws<ArgumentException>(() => Statement.Of(code, $"words"));

    [Theory]
    [InlineData(-0.0004, "0.0 kPa")]
    [InlineData(-3400, "−3.4 kPa")]
    [InlineData(3400, "+3.4 kPa")]
    public void Text_OfAChange_HasATrueMinusSignAndNoneAtZero(double pascals, string text) =>
        Assert.Equal(text, TextStyle.Metric.PressureChange(Pressure.FromPascals(pascals)));

    [Fact]
    public void Text_InACultureThatWritesNegativesInBrackets_HasAMinusSign()
    {
        CultureInfo brackets = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        brackets.NumberFormat.NumberNegativePattern = 0;
        brackets.NumberFormat.NegativeSign = "minus";
        Assert.Equal("−0.65 bar", TextStyle.Metric.With(brackets).Boost(Wren.Kpa(-65)));
    }

    [Fact]
    public void Style_AfterItsCultureChanged_WritesAsBefore()
    {
        CultureInfo culture = Separators(decimals: ",", groups: ".");
        TextStyle style = TextStyle.Metric.With(culture);
        culture.NumberFormat.NumberDecimalSeparator = "|";
        Assert.Equal("13,5 V", style.Of(Wren.Volt(13.5)));
        Assert.Equal(TextStyle.Metric.With(Comma), style);
        Assert.NotEqual(TextStyle.Metric, style);
    }

    private static CultureInfo Separators(string decimals, string groups)
    {
        CultureInfo culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (culture.NumberFormat.NumberDecimalSeparator, culture.NumberFormat.NumberGroupSeparator) = (decimals, groups);
        return culture;
    }
}
