using System.Globalization;
using CsCheck;
using FuelSizing.Bench;
using FuelSizing.Controllers;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using nietras.SeparatedValues;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Tests.Bench;

/// <summary>Figures as comma-separated values, read back by a library that knows nothing of them.</summary>
public class FigureListTests
{
    private static readonly Temperature Warm = Temperature.FromDegreesCelsius(35);

    /// <summary>Every figure is in the text, with its unit, interval and conditions, to nine decimals.</summary>
    [Fact]
    public void Csv_ReadBack_HoldsEveryFigure()
    {
        ControllerFigures figures = ControllerFiguresTests.From(
            [ControllerFiguresTests.Fit(300, 12, 1.2), ControllerFiguresTests.Fit(300, 14, 0.9)], [Wren.Kpa(300), Wren.Kpa(380)]);
        Dictionary<string, string>[] rows = Rows(figures.ToCsv());
        FlowFigure flow = figures.ReferenceFlow;
        foreach ((string unit, double value, double low) in new[]
        {
            ("mL/min", flow.Flow!.Value.MillilitersPerMinute, flow.MinimumFlow!.Value.MillilitersPerMinute),
            ("g/s", flow.MassFlow!.Value.GramsPerSecond, flow.MinimumMassFlow!.Value.GramsPerSecond),
            ("lb/h", flow.MassFlow.Value.PoundsPerHour, flow.MinimumMassFlow.Value.PoundsPerHour),
        })
        {
            Dictionary<string, string> row = rows.Single(row => row["quantity"] == "flow" && row["unit"] == unit && row["differential [kPa]"] == "300");
            Assert.Equal(value, Number(row["value"]), 1e-9);
            Assert.Equal(low, Number(row["minimum"]), 1e-9);
        }

        Assert.Equal(
            figures.DeadTimes.Select(time => (time.Time?.Milliseconds, time.Minimum?.Milliseconds, time.Basis.ToString())),
            rows.Where(row => row["quantity"] == "dead time").Select(row => (NumberOrNone(row["value"]), NumberOrNone(row["minimum"]), row["basis"])),
            (one, other) => Near(one.Item1, other.Item1) && Near(one.Item2, other.Item2) && one.Item3 == other.Item3);
        Assert.Equal(figures.ShortPulses.Count, rows.Count(row => row["quantity"] == "added to a short pulse"));
        Assert.Equal(figures.FuelErrors.Count, rows.Count(row => row["quantity"] == "fuel error without pressure correction"));
        Assert.Equal(figures.Notes.Select(note => note.ToString()), rows.Where(row => row["quantity"] == "note").Select(row => row["basis"]));
        Assert.All(rows, row => Assert.Equal(("injector on the bench", "petrol", "35"), (row["injector"], row["fuel"], row["fuel_temperature [degC]"])));
    }

    /// <summary>Microseconds and psi are the same figures; the culture of the thread does not matter.</summary>
    [Fact]
    public void Csv_InOtherUnits_AndCultures_IsTheSame()
    {
        ControllerFigures figures = ControllerFigures.Of(Wren.InjectorOf(360), Fuel.E85, Warm, [Wren.Kpa(300)]);
        string csv = figures.ToCsv();
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            (comma.NumberFormat.NumberDecimalSeparator, comma.NumberFormat.NegativeSign) = (",", "~");
            CultureInfo.CurrentCulture = comma;
            Assert.Equal(csv, figures.ToCsv());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Dictionary<string, string>[] rows = Rows(figures.ToCsv(DurationUnit.Microsecond, PressureUnit.PoundForcePerSquareInch, figures.ScaledTo(VolumeFlow.FromMillilitersPerMinute(200), TargetLambda.Of((Wren.Percent(40), 1), (Wren.Percent(80), 0.88)))));
        Assert.Equal(
            Rows(csv).Where(row => row["quantity"] == "dead time").Select(row => Number(row["value"]) * 1000),
            rows.Where(row => row["quantity"] == "dead time").Select(row => Number(row["value"])),
            (one, other) => Math.Abs(one - other) < 1e-6);

        // 1 psi is 6.894757293168 kPa.
        Assert.Equal(300 / 6.894757293168, Number(rows.First(row => row["quantity"] == "flow")["differential [psi]"]), 1e-8);
        Assert.Equal(200, Number(rows.Single(row => row["quantity"] == "scaled flow" && row["unit"] == "mL/min")["value"]), 1e-8);
        Assert.Equal(2, rows.Count(row => row["quantity"] == "lambda error, load axis not scaled"));
        Assert.Contains(rows, row => row["basis"].Contains("knock", StringComparison.Ordinal));
        Refused.OutOfRange("time", () => figures.ToCsv(DurationUnit.Second));
        Refused.OutOfRange("pressure", () => figures.ToCsv(pressure: PressureUnit.Atmosphere));
        Assert.Throws<ArgumentException>("scaling", () => figures.ToCsv(scaling: ControllerFigures.Of(Wren.InjectorOf(360), Fuel.E85, Warm, [Wren.Kpa(300)]).ScaledTo(VolumeFlow.FromMillilitersPerMinute(200))));
    }

    /// <summary>Names with commas, quotes and separators of lines come back whole; one that begins like a formula has an apostrophe before it, behind any separator too.</summary>
    [Theory]
    [InlineData("a, \"b\"", "a, \"b\"")]
    [InlineData("a\u2028b", "a\u2028b")]
    [InlineData(" spaced ", " spaced ")]
    [InlineData("=HYPERLINK(\"x\")", "'=HYPERLINK(\"x\")")]
    [InlineData("+1+cmd", "'+1+cmd")]
    [InlineData("-1+cmd", "'-1+cmd")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData(" =1+1", " '=1+1")]
    [InlineData("\uFF1D1+1", "'\uFF1D1+1")]
    [InlineData("a;=1+1", "a;'=1+1")]
    [InlineData("a,\"=1+1\"", "a,\"'=1+1\"")]
    [InlineData("injector A-1 (0.5 = half)", "injector A-1 (0.5 = half)")]
    [InlineData("-12", "-12")]
    public void Csv_OfAnyName_ComesBack_AndRunsNothing(string name, string expected)
    {
        Injector injector = Injector.Of(name, VolumeFlow.FromMillilitersPerMinute(360), Wren.Kpa(300), TestFluid.Heptane, Wren.DeadTime, Wren.Ms(1.6), Wren.Kpa(550));
        string csv = ControllerFigures.Of(injector, Fuel.Petrol, Warm, [Wren.Kpa(300)]).ToCsv();
        Dictionary<string, string>[] rows = Rows(csv);
        Assert.All(rows, row => Assert.Equal(expected, row["injector"]));
        Assert.EndsWith("\r\n", csv, StringComparison.Ordinal);
        Assert.Equal(rows.Length + 1, csv.Split("\r\n").Length - 1);
    }

    /// <summary>Of any text no cell begins like a formula, however it is split, and an RFC 4180 reader has as many cells in each line.</summary>
    [Fact]
    public void Csv_OfRandomNames_RunsNothing() => Gen.String[Gen.Char["=+-@,;\"' |aB1"], 1, 40].Where(name => !string.IsNullOrWhiteSpace(name)).Sample(name =>
    {
        Injector injector = Injector.Of(name, VolumeFlow.FromMillilitersPerMinute(360), Wren.Kpa(300), TestFluid.Heptane, Wren.DeadTime, Wren.Ms(1.6), Wren.Kpa(550));
        Dictionary<string, string>[] rows = Rows(ControllerFigures.Of(injector, Fuel.Petrol, Warm, [Wren.Kpa(300)]).ToCsv());
        string read = rows[0]["injector"];
        Assert.All(rows, row => Assert.Equal(read, row["injector"]));
        Assert.All(
            read.Split(',', ';', '|'),
            piece => Assert.True(piece.TrimStart(' ', '"', '\'') is not ['=' or '+' or '-' or '@', ..] || piece.Contains('\'', StringComparison.Ordinal) || double.TryParse(read, NumberStyles.Float, CultureInfo.InvariantCulture, out _), $"{name}: {read}"));
        Assert.Equal(name.Replace("'", string.Empty, StringComparison.Ordinal), read.Replace("'", string.Empty, StringComparison.Ordinal));
    });

    private static Dictionary<string, string>[] Rows(string csv)
    {
        using SepReader reader = Sep.New(',').Reader(options => options with { Unescape = true }).FromText(csv);
        List<Dictionary<string, string>> rows = [];
        foreach (SepReader.Row row in reader)
        {
            Dictionary<string, string> cells = [];
            foreach (string name in reader.Header.ColNames)
            {
                cells[name] = row[name].ToString();
            }

            rows.Add(cells);
        }

        return [.. rows];
    }

    private static double Number(string cell) => double.Parse(cell, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static double? NumberOrNone(string cell) => cell.Length == 0 ? null : Number(cell);

    private static bool Near(double? one, double? other) => one is null ? other is null : Math.Abs(one.Value - other!.Value) < 1e-8;
}
