using System.Globalization;
using CsCheck;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Tests.Quantities;

/// <summary>A figure that is fitted by is rounded to the side that serves, and one that breaks a limit is told from it.</summary>
public class FigureRoundingTests
{
    private static readonly TextStyle[] Styles = [TextStyle.Metric, TextStyle.UsCustomary];

    [Fact]
    public void Minimum_InWords_IsRoundedUp()
    {
        VolumeFlow flow = VolumeFlow.FromMillilitersPerMinute(420.04);
        Assert.Equal("421 mL/min", Statement.Of("a", $"{flow:injector-flow:up}").ToString());
        Assert.Equal("420 mL/min", Statement.Of("a", $"{flow:injector-flow:down}").ToString());
        Assert.Equal("421 mL/min", TextStyle.Metric.Write(flow, "injector-flow:up"));
        Assert.Equal("0.58 bar", Statement.Of("a", $"{Pressure.FromBars(0.579999):boost:up}").ToString());
        Assert.Equal("−0.57 bar", Statement.Of("a", $"{Pressure.FromBars(-0.579999):boost:up}").ToString());
        Assert.Equal("1.24", Statement.Of("a", $"{1.2301:0.00:up}").ToString());
        Assert.Equal("2.32 mm²", Statement.Of("a", $"{Area.FromSquareMillimeters(2.3101):area:up}").ToString());
        Assert.Equal("1,235 L/h", Statement.Of("a", $"{VolumeFlow.FromLitersPerHour(1234.1):pump-flow:up}").ToString());
    }

    /// <summary>What is a printed number already stays: 1.1 bar times ten is over 11 in binary, and 0.57 times a hundred under 57.</summary>
    [Fact]
    public void Figure_ThatNeedsNoRounding_IsLeftAlone() => Gen.Int[0, 2000].Sample(hundredths =>
    {
        Pressure boost = Pressure.FromBars(hundredths / 100.0);
        string written = (hundredths / 100.0).ToString("0.00", CultureInfo.InvariantCulture) + " bar";
        Assert.Equal((written, written), (Statement.Of("a", $"{boost:boost:up}").ToString(), Statement.Of("a", $"{boost:boost:down}").ToString()));
    });

    /// <summary>Read back, a figure is on its side, and one unit of its last digit towards the figure is not.</summary>
    [Fact]
    public void Figure_ReadBack_IsOnItsSideByLessThanOneUnit() => Gen.Select(Gen.Double[-7, 7], Gen.Bool, Gen.Int[0, 1]).Sample((digits, up, place) =>
    {
        TextStyle style = Styles[place];
        VolumeFlow flow = VolumeFlow.FromCubicMetersPerSecond(Math.Pow(10, digits) * 1e-6);
        DisplayUnit<VolumeFlow> unit = style.Units.PumpFlow;
        string text = style.Write(flow, up ? "pump-flow:up" : "pump-flow:down");
        string number = text[..text.IndexOf(' ', StringComparison.Ordinal)];
        double printed = double.Parse(number, NumberStyles.Number, CultureInfo.InvariantCulture);
        double step = number.Contains('.', StringComparison.Ordinal) ? 0.1 : 1;
        double read = unit.Quantity(printed).CubicMetersPerSecond;
        double beyond = unit.Quantity(printed + (up ? -step : step)).CubicMetersPerSecond;
        Assert.True(up ? read >= flow.CubicMetersPerSecond && beyond < flow.CubicMetersPerSecond : read <= flow.CubicMetersPerSecond && beyond > flow.CubicMetersPerSecond, text);
    });

    /// <summary>Where the range that holds is narrower than a unit of the last digit, digits are added until a number lies in it.</summary>
    [Fact]
    public void EndsOfANarrowRange_InWords_LieInIt() => Gen.Select(Gen.Double[1, 2000], Gen.Double[-9, 2]).Sample((from, digits) =>
    {
        (Pressure low, Pressure high) = (Pressure.FromKilopascals(from), Pressure.FromKilopascals(from + Math.Pow(10, digits)));
        double Read(Pressure end, Pressure other) => double.Parse(
            Statement.Of("a", $"{end.Towards(other):pressure}").ToString().Split(' ')[0], NumberStyles.Number, CultureInfo.InvariantCulture);
        Assert.InRange(Read(low, high), low.Kilopascals, high.Kilopascals);
        Assert.InRange(Read(high, low), low.Kilopascals, high.Kilopascals);
    });

    /// <summary>85.0 % is not over 85.0 %.</summary>
    [Fact]
    public void Figure_ThatBreaksALimit_IsToldFromIt()
    {
        static string Over(double used, double limit) => Statement.Of(
            "a", $"{Ratio.FromPercent(used).ApartFrom(Ratio.FromPercent(limit)):duty-cycle} over {Ratio.FromPercent(limit).ApartFrom(Ratio.FromPercent(used)):duty-cycle}").ToString();
        Assert.Equal("85.0004 % over 85.0 %", Over(85.0004, 85));
        Assert.Equal("93.1 % over 85.0 %", Over(93.1, 85));
        Assert.Equal("84.98 % over 84.96 %", Over(84.98, 84.96));
        Assert.Equal("85.0 % over 85.0 %", Over(85, 85));
        Gen.Select(Gen.Double[1, 100], Gen.Double[-8, 1]).Sample((limit, digits) =>
        {
            string[] words = Over(limit + Math.Pow(10, digits), limit).Split(" over ");
            double Read(string text) => double.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture);
            Assert.True(Read(words[0]) > Read(words[1]), string.Join(" over ", words));
        });
    }

    [Fact]
    public void Statements_WithOtherRounding_AreNotTheSame()
    {
        Pressure boost = Pressure.FromBars(0.5);
        Statement plain = Statement.Of("a", $"{boost:boost}");
        Statement up = Statement.Of("a", $"{boost:boost:up}");
        Assert.NotEqual(plain, up);
        Assert.Equal(up, Statement.Of("a", $"{Pressure.FromKilopascals(50):boost:up}"));
        Assert.NotEqual(Statement.Of("a", $"{boost.Towards(Pressure.FromBars(1)):boost}"), up);
        Assert.Equal(
            Statement.Of("a", $"{boost.Towards(Pressure.FromBars(1)):boost}"), Statement.Of("a", $"{boost.Towards(Pressure.FromKilopascals(100)):boost}"));
    }

    /// <summary>A user's own unit may have any format: what its digits cannot be counted of is written in full rather than on the wrong side.</summary>
    [Fact]
    public void Figure_InAUsersOwnFormat_IsNeverOnTheWrongSide()
    {
        foreach ((string format, string written) in ((string, string)[])[("0.0#", "2.35 at"), ("G3", "2.341 at"), ("F1", "2.4 at"), ("0 '≈'", "3 ≈ at")])
        {
            TextStyle style = TextStyle.Metric.With(
                FigureUnits.Metric with { Pressure = DisplayUnit.Of("at", format, pressure => pressure.Bars, number => Pressure.FromBars(number)) });
            Assert.Equal(written, style.Write(Pressure.FromBars(2.341), "pressure:up"));
        }
    }
}
