using System.Globalization;
using System.Text;
using CsCheck;
using FuelSizing.Logs;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Tests.Logs;

/// <summary>Tables that are known are written out in every manner a mapping allows, and must read back as they were.</summary>
public class RunReaderOracleTests
{
    /// <summary>The columns that may be written: what the number means in SI is said by UnitsNet, not by the reader.</summary>
    private static readonly Written[] Columns =
    [
        new("Speed", RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute), 0, 9000, n => RotationalSpeed.FromRevolutionsPerMinute(n).RevolutionsPerSecond),
        new("MAP", RunColumn.ManifoldAbsolute("MAP", PressureUnit.PoundForcePerSquareInch), 2, 70, n => UnitsNet.Pressure.FromPoundsForcePerSquareInch(n).Pascals),
        new("Rail", RunColumn.RailGauge("Rail", PressureUnit.Bar), -0.5, 9, n => UnitsNet.Pressure.FromBars(n).Pascals),
        new("Pulse", RunColumn.InjectorPulse("Pulse", DurationUnit.Microsecond), 0, 40_000, n => Duration.FromMicroseconds(n).Seconds),
        new("Duty", RunColumn.DutyCycle("Duty", RatioUnit.Percent), 0, 120, n => Ratio.FromPercent(n).DecimalFractions),
        new("AFR", RunColumn.AirFuelRatio("AFR", 14.7), 9, 22, n => n / 14.7),
        new("Volts", RunColumn.BatteryVoltage("Volts", ElectricPotentialUnit.Millivolt), 6000, 16_000, n => ElectricPotential.FromMillivolts(n).Volts),
        new("Power", RunColumn.Power("Power", PowerUnit.MetricHorsepower), -20, 900, n => (double)Power.FromMetricHorsepower(n).Watts),
        new("Torque", RunColumn.Torque("Torque", TorqueUnit.PoundForceFoot), -50, 900, n => Torque.FromPoundForceFeet(n).NewtonMeters),
        new("Fuel", RunColumn.FuelTemperature("Fuel", TemperatureUnit.DegreeFahrenheit), -20, 180, n => Temperature.FromDegreesFahrenheit(n).Kelvins),
        new("Flow", RunColumn.FuelVolumeFlow("Flow", VolumeFlowUnit.UsGallonPerHour), 0, 200, n => VolumeFlow.FromUsGallonsPerHour(n).CubicMetersPerSecond),
        new("Mass", RunColumn.FuelMassFlow("Mass", MassFlowUnit.PoundPerHour), 0, 500, n => MassFlow.FromPoundsPerHour(n).KilogramsPerSecond),
    ];

    private static readonly Gen<Table> Tables =
        from rows in Gen.Int[0, 30]
        from picked in Gen.Shuffle(Enumerable.Range(1, Columns.Length - 1).ToArray(), 0, Columns.Length - 1)
        from speedAt in Gen.Int[0, picked.Length]
        from timed in Gen.Bool
        from separator in Gen.OneOfConst(CellSeparator.Comma, CellSeparator.Semicolon, CellSeparator.Tab)
        from comma in Gen.Bool
        from lineEnd in Gen.OneOfConst("\n", "\r\n", "\r")
        from format in Gen.OneOfConst("R", "F3", "E9", "0.##")
        from units in Gen.Bool
        from above in Gen.Int[0, 2]
        from quoting in Gen.Int[0, 2]
        from blanks in Gen.Bool
        from seed in Gen.Int
        select new Table(rows, [.. picked[..speedAt], 0, .. picked[speedAt..]], timed, separator, comma && separator != CellSeparator.Comma, lineEnd, format, units, above, quoting, blanks, seed);

    [Fact]
    public void Table_WrittenInAnyDialect_ReadsBackEqual() => Tables.Sample(Check, iter: 2000);

    private static void Check(Table table)
    {
        var random = new Random(table.Seed);
        (string text, List<double[]> expected) = Write(table, random);
        RunMapping mapping = RunMapping.Of(
            [.. table.Columns.Select(c => Columns[c].Column), .. table.Timed ? new[] { RunColumn.Time("Time", DurationUnit.Millisecond) } : []])
            .Written(table.Separator, table.DecimalComma ? DecimalMark.Comma : DecimalMark.Point)
            .WithHeadingLine(1 + table.LinesAbove)
            .WithUnitsRow(table.Units ? UnitsRow.Skipped : UnitsRow.None);

        using RunReader reader = RunReader.Open(new MemoryStream(Encoding.UTF8.GetBytes(text)), mapping, LogText.Air);
        int index = 0;
        foreach (RunRow row in reader.Rows())
        {
            double[] wanted = expected[index];
            Assert.Equal(2 + table.LinesAbove + (table.Units ? 1 : 0) + index, row.Line);
            for (int i = 0; i < table.Columns.Length; i++)
            {
                Near(wanted[i], row[Columns[table.Columns[i]].Column.Channel]);
            }

            Near(table.Timed ? index * 0.01 : double.NaN, row[Channel.Time]);
            index++;
        }

        Assert.Equal(expected.Count, index);
        Assert.Empty(reader.Problems);
    }

    private static (string Text, List<double[]> Expected) Write(Table table, Random random)
    {
        char separator = table.Separator switch
        {
            CellSeparator.Comma => ',',
            CellSeparator.Semicolon => ';',
            _ => '\t',
        };
        var numbers = (NumberFormatInfo)NumberFormatInfo.InvariantInfo.Clone();
        numbers.NumberDecimalSeparator = table.DecimalComma ? "," : ".";
        StringBuilder text = new();
        for (int i = 0; i < table.LinesAbove; i++)
        {
            text.Append("recorded on the hill").Append(table.LineEnd);
        }

        // A column that is not mapped stands in the middle, its text holding the separator.
        string[] headings = [.. table.Columns.Select(c => Columns[c].Heading), "Note", .. table.Timed ? new[] { "Time" } : []];
        text.AppendJoin(separator, headings.Select(Quoted)).Append(table.LineEnd);
        if (table.Units)
        {
            text.AppendJoin(separator, headings.Select(_ => "?")).Append(table.LineEnd);
        }

        List<double[]> expected = [];
        for (int row = 0; row < table.Rows; row++)
        {
            double[] wanted = new double[table.Columns.Length];
            List<string> cells = [];
            for (int i = 0; i < wanted.Length; i++)
            {
                Written column = Columns[table.Columns[i]];
                bool blank = table.Blanks && column.Column.Channel != Channel.Speed && random.Next(4) == 0;
                string cell = (column.Minimum + (random.NextDouble() * (column.Maximum - column.Minimum))).ToString(table.Format, numbers);
                cells.Add(Quoted(blank ? new string(' ', random.Next(3)) : cell));
                wanted[i] = blank ? double.NaN : column.ToSi(double.Parse(cell, NumberStyles.Float, numbers));
            }

            cells.Add(table.Quoting == 0 ? "smooth" : $"\"wet{separator} 5\"\" of rain\"");
            if (table.Timed)
            {
                cells.Add(Quoted((row * 10).ToString(numbers)));
            }

            text.AppendJoin(separator, cells).Append(table.LineEnd);
            expected.Add(wanted);
        }

        return (text.ToString(), expected);

        string Quoted(string cell) => table.Quoting == 2 && random.Next(2) == 0 ? $"\"{cell}\"" : cell;
    }

    /// <summary>Equal but for the rounding of one multiplication and one addition.</summary>
    private static void Near(double wanted, double read) =>
        Assert.True(
            double.IsNaN(wanted) ? double.IsNaN(read) : Math.Abs(read - wanted) <= 1e-13 * Math.Max(Math.Abs(wanted), 1),
            $"wanted {wanted:R}, read {read:R}");

    private sealed record Written(string Heading, RunColumn Column, double Minimum, double Maximum, Func<double, double> ToSi);

    private sealed record Table(
        int Rows,
        int[] Columns,
        bool Timed,
        CellSeparator Separator,
        bool DecimalComma,
        string LineEnd,
        string Format,
        bool Units,
        int LinesAbove,
        int Quoting,
        bool Blanks,
        int Seed);
}
