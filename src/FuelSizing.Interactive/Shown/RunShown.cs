using FuelSizing.Logs;
using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>How recorded runs, and how they are read, are shown.</summary>
internal static class RunShown
{
    // The first of many problems tell what is wrong with a file.
    private const int MaximumProblems = 10;

    public static void Register()
    {
        Shown.By<RecordedRun>((run, style) => new(
            $"Recorded run: {run.Name}",
            [
                .. Of(run.Account, style),
                Fact.Words("Channels", RunText.Names(run.Channels)),
                new("Ambient air", "p_0", style.Of(run.Atmosphere.Pressure), style.Of(run.Atmosphere.Temperature)),
                .. run.Problems.Take(MaximumProblems).Select(problem => Fact.Words("Problem", PartText.Say(problem, style))),
            ],
            run.Problems.Count > MaximumProblems ? $"The first {MaximumProblems} problems." : null));
        Shown.By<RunAccount>((account, style) => new("What became of the rows", Of(account, style)));
        Shown.By<RunRow>((row, style) => row == default
            ? new("A row that was never filled", [Fact.Words("Row", "holds nothing")])
            : new($"Line {style.Count(row.Line)} of a run", RunText.Of(row, style)));
        Shown.By<RunProblem>((problem, style) => new(
            "Problem in a log",
            [
                new("Line", "", style.Count(problem.Line)),
                new("Column", "", style.Count(problem.Column), problem.Field),
                Fact.Words("Problem", PartText.Say(problem.Reason, style)),
                Fact.Words("So", problem.Effect switch
                {
                    ProblemEffect.RowRefused => "the row was refused",
                    ProblemEffect.ValueLeftOut => "the value was left out",
                    ProblemEffect.ChannelLeftOut => "the channel was left out",
                    _ => "the file was refused",
                }),
            ]));
        Shown.By<RunProgress>((progress, style) => new(
            "Reading a log",
            [new("Rows so far", "", style.Count(progress.Rows)), new("Share of the file", "", CircuitText.Known(progress.Share, style.Of))]));
        Shown.By<RunMapping>((mapping, style) => new(
            "How a log is read",
            [
                .. mapping.Columns.Select(column => Fact.Words(Capital(RunText.Name(column.Channel)), Place(column))),
                Fact.Words("Cells parted by", mapping.Separator switch
                {
                    CellSeparator.Semicolon => "semicolon",
                    CellSeparator.Tab => "tab",
                    _ => "comma",
                }),
                Fact.Words("Decimal mark", mapping.DecimalMark == DecimalMark.Comma ? "comma" : "point"),
                Fact.Words("Heading", $"on line {style.Count(mapping.HeadingLine)}"),
                Fact.Words("Row of units", mapping.UnitsRow switch
                {
                    UnitsRow.Skipped => "passed over",
                    UnitsRow.Used => "used",
                    _ => "none",
                }),
            ]));
        Shown.By<RunColumn>((column, style) => new("A column of a log", [Fact.Words(Capital(RunText.Name(column.Channel)), Place(column))]));
        Shown.By<ColumnPlace>((place, style) => new("A column of a log", [Fact.Words("Column", $"{place}")]));
    }

    private static Fact[] Of(RunAccount account, TextStyle style) =>
    [
        new("Rows", "", style.Count(account.Rows)),
        new("Used", "", style.Count(account.RowsUsed)),
        new("Refused", "", style.Count(account.RowsRefused)),
        new("Values left out", "", style.Count(account.ValuesLeftOut)),
        new("Problems", "", style.Count(account.Problems)),
    ];

    private static string Place(RunColumn column) => column.Reference switch
    {
        PressureReference.Gauge => $"{column.Place}, gauge",
        PressureReference.Absolute => $"{column.Place}, absolute",
        _ => $"{column.Place}",
    };

    private static string Capital(string text) => $"{char.ToUpperInvariant(text[0])}{text[1..]}";
}
