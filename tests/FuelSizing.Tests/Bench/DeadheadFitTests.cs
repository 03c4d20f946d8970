using FuelSizing.Bench;
using UnitsNet;

namespace FuelSizing.Tests.Bench;

/// <summary>The pressure of a pump with its outlet shut, and whether a relief valve sets it.</summary>
public class DeadheadFitTests
{
    /// <summary>Three readings at one voltage: mean and Student's t(2) = 4.3027 (NIST/SEMATECH e-Handbook, table of Student's t: 4.303); one voltage does not tell a relief valve.</summary>
    [Fact]
    public void Interval_OfThreeReadings_IsStudents()
    {
        DeadheadFit fit = DeadheadFit.Of(Test(0.5, (13.5, 680, false), (13.5, 690, false), (13.5, 700, false)));
        DeadheadPoint point = Assert.Single(fit.Points);
        Assert.Equal(690, point.PressureRise!.Value.Kilopascals, 1e-9);
        Assert.Equal(690 - (4.30265272975 * 10 / Math.Sqrt(3)), point.MinimumPressureRise.Kilopascals, 1e-5);
        Assert.Equal(690 + (4.30265272975 * 10 / Math.Sqrt(3)), point.MaximumPressureRise!.Value.Kilopascals, 1e-5);
        Assert.Null(fit.IsReliefValve);
        Assert.Equal("bench.deadhead", fit.Text.Code);
    }

    /// <summary>The same at 11 and 14 V is a relief valve, in proportion to voltage it is none, and readings that scatter too much leave it open.</summary>
    [Theory]
    [InlineData(690, 2, true, "bench.deadhead-relief")]
    [InlineData(878, 2, false, "bench.deadhead-own")]
    [InlineData(780, 120, null, "bench.deadhead")]
    public void Voltages_TellARelief(double kilopascalsAt14, double apart, bool? isRelief, string code)
    {
        DeadheadFit fit = DeadheadFit.Of(Test(
            1,
            [
                (14, kilopascalsAt14 - apart, false), (11, 690, false), (14, kilopascalsAt14, false), (11, 690 - apart, false), (11, 690 + apart, false), (14, kilopascalsAt14 + apart, false),
            ]));
        Assert.Equal([11.0, 14], fit.Points.Select(point => Math.Round(point.Voltage.Volts, 9)));
        Assert.Equal(isRelief, fit.IsReliefValve);
        Assert.Equal(code, fit.Text.Code);
    }

    /// <summary>Where the gauge ended there is a lower bound, under its end by what the gauge may be off, and no upper one.</summary>
    [Fact]
    public void GaugeThatEnds_LeavesALowerBound()
    {
        DeadheadFit fit = DeadheadFit.Of(Test(4, (12, 700, false), (12, 702, false), (12, 698, false), (13.5, 1000, true)));
        Assert.NotNull(fit.Points[0].PressureRise);
        Assert.Null(fit.Points[1].PressureRise);
        Assert.Null(fit.Points[1].MaximumPressureRise);
        Assert.Equal(1000 - (1.959963984540054 * 4), fit.Points[1].MinimumPressureRise.Kilopascals, 1e-6);
        Assert.Equal("bench.deadhead-beyond", fit.Text.Code);
        Assert.Null(fit.IsReliefValve);

        // All of them at the end of the gauge.
        Assert.Null(DeadheadFit.Of(Test(4, (12, 1000, true), (13.5, 1000, true), (13.5, 1000, true))).Points[0].PressureRise);
    }

    /// <summary>Readings that all agree are as sure as the gauge.</summary>
    [Fact]
    public void Readings_ThatAllAgree_AreAsSureAsTheGauge()
    {
        DeadheadPoint point = DeadheadFit.Of(Test(3, (13.5, 690, false), (13.5, 690, false), (13.5, 690, false))).Points[0];
        Assert.Equal(1.959963984540054 * 3 / Math.Sqrt(3), point.MaximumPressureRise!.Value.Kilopascals - 690, 1e-6);
    }

    [Fact]
    public void Voltage_ReadTwice_IsRefused()
    {
        Assert.Contains(
            "has 2 at 12.0 V",
            Assert.Throws<ArgumentException>(() => Test(1, (12, 690, false), (12, 691, false), (13.5, 700, false), (13.5, 700, false), (13.5, 700, false))).Message,
            StringComparison.Ordinal);
        Refused.OutOfRange("readings", () => Test(1, (12, 690, false), (12, 691, false)));
    }

    private static DeadheadTest Test(double gauge, params (double Volts, double Kilopascals, bool IsEnd)[] readings) => DeadheadTest.Of(
        "pump S",
        GaugeAccuracy.Of(Wren.Kpa(gauge), Pressure.Zero, Ratio.Zero),
        [.. readings.Select(reading => DeadheadReading.Of(Wren.Volt(reading.Volts), Wren.Kpa(reading.Kilopascals), reading.IsEnd))]);
}
