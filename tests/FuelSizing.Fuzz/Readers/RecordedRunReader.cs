using FuelSizing.Engines;
using FuelSizing.Fuzz.Mutating;
using FuelSizing.Logs;
using UnitsNet.Units;

namespace FuelSizing.Fuzz.Readers;

/// <summary>Recorded runs, each read with three mappings. No row is missing from the account.</summary>
internal sealed class RecordedRunReader : FuzzedReader
{
    private static readonly string[] Cells =
    [
        "Time", "Speed", "Boost", "Rail", "Lambda", "Fuel", "Mass", "[s]", "rpm", "rev/min", "bar", "kPa", "psi", "°C", "°F", "g/s", "kg/h", "1", "0.00", "3000", "350", "0.85",
        "3,5e2", "\"0.03\"", "\"a\"\"b\"", "ms",
    ];

    private static readonly RunMapping[] Mappings =
    [
        RunMapping.Of(
            RunColumn.Time("Time", DurationUnit.Second),
            RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute),
            RunColumn.Boost("Boost", PressureUnit.Bar),
            RunColumn.RailGauge("Rail", PressureUnit.Kilopascal),
            RunColumn.Lambda("Lambda")),
        RunMapping.Of(
            RunColumn.Time("Time"), RunColumn.Speed("Speed"), RunColumn.RailAbsolute("Rail"), RunColumn.FuelTemperature("Fuel"), RunColumn.FuelMassFlow("Mass"))
            .Written(CellSeparator.Semicolon, DecimalMark.Comma).WithHeadingLine(2).WithUnitsRow(UnitsRow.Used),
        RunMapping.Of(RunColumn.Speed(ColumnPlace.Numbered(2), RotationalSpeedUnit.RevolutionPerMinute), RunColumn.Lambda("Lambda"))
            .Written(CellSeparator.Tab, DecimalMark.Point).WithUnitsRow(UnitsRow.Skipped),
    ];

    public override string Name => "run";

    public override string Ending => ".csv";

    public override string[] Words => Cells;

    public override Func<string, int, int, string>[] Edits => new TableEdits(Cells).All;

    public override Reading Read(byte[] input)
    {
        string? path = Characters(input) is null ? Holding(input) : null;
        HashSet<string> kinds = [];
        bool accepted = false;
        foreach (RunMapping mapping in Mappings)
        {
            try
            {
                using RunReader reader = path is null
                    ? RunReader.Open(new StringReader(Characters(input)!), mapping, Atmosphere.Standard)
                    : RunReader.Open(path, mapping, Atmosphere.Standard);
                Account(reader, kinds);
                accepted = true;
            }
            catch (RunFileException refused)
            {
                Placed(refused.Problem);
                kinds.Add($"refused: {refused.Problem.Reason.Code}");
            }
        }

        return new(accepted, [.. kinds]);
    }

    private static void Account(RunReader reader, HashSet<string> kinds)
    {
        long rows = 0;
        double last = double.NegativeInfinity;
        bool timed = reader.Channels.Contains(Channel.Time);
        foreach (RunRow row in reader.Rows())
        {
            rows++;
            if (timed)
            {
                BrokenPromiseException.Unless(row.Time is { } time && time.Seconds > last, "Time rises.");
                last = row.Time!.Value.Seconds;
            }

            BrokenPromiseException.Unless(double.IsFinite(row.Speed.RevolutionsPerMinute), "A row has a speed.");
        }

        RunAccount account = reader.Account;
        long refused = 0;
        foreach (RunProblem problem in reader.Problems)
        {
            Placed(problem);
            refused += problem.Effect == ProblemEffect.RowRefused ? 1 : 0;
            if (kinds.Count < 12)
            {
                kinds.Add(problem.Reason.Code);
            }
        }

        BrokenPromiseException.Unless(account.RowsUsed == rows, "Rows used are those that were given.");
        BrokenPromiseException.Unless(account.Problems > reader.Problems.Count || refused == account.RowsRefused, "Each row that is refused has its problem.");
        kinds.Add($"read: {string.Join(' ', reader.Channels.Order())}, rows {Math.Min(rows, 2)}");
    }

    private static void Placed(RunProblem problem)
    {
        BrokenPromiseException.Unless(problem.Line >= 1 && problem.Column >= 1, "A problem has a place.");
        BrokenPromiseException.Unless(!problem.ToString().Any(char.IsControl), "A problem has words, on one line.");
    }
}
