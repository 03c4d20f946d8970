using FuelSizing.Checks;
using FuelSizing.Quantities;
using FuelSizing.Selection;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Tables of combinations of parts that were ranked.</summary>
public static class SelectionTables
{
    private const string Unknown = "–";
    private const int MaximumRows = 1_000;

    /// <summary>The best combinations of a ranking, and why those that do not serve fail.</summary>
    /// <param name="ranking">The ranking; at least one combination was judged.</param>
    /// <param name="maximum">The most combinations to show, 1 to 1,000.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a combination, best first.</returns>
    /// <exception cref="ArgumentException">Nothing was judged.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside its range.</exception>
    public static Table Best(Ranking ranking, int maximum = 12, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        if (maximum is < 1 or > MaximumRows)
        {
            throw new ArgumentOutOfRangeException(nameof(maximum), maximum, $"maximum is {maximum}; it must be between 1 and {MaximumRows}. A longer table is a list to search, not to read.");
        }

        style ??= Units.Current;
        return Of(PartText.Say(ranking.Headline, style), [.. ranking.Combinations.Take(maximum)], nameof(ranking), style);
    }

    /// <summary>The combinations that no other beats in cost, turndown and reserve at once.</summary>
    /// <param name="ranking">The ranking; at least one combination is adequate.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a combination, the cheapest first.</returns>
    /// <exception cref="ArgumentException">No combination is adequate.</exception>
    public static Table Pareto(Ranking ranking, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        style ??= Units.Current;
        return Of(
            "Pareto-optimal: no other is at least as good in cost, turndown and reserve, and better in one",
            ranking.Pareto,
            nameof(ranking),
            style);
    }

    /// <summary>How each part of a combination stands, over every stage of the plan.</summary>
    /// <param name="combination">The combination.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a part, the most urgent first.</returns>
    /// <exception cref="ArgumentNullException">There is no combination.</exception>
    public static Table Margins(Combination combination, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(combination);
        style ??= Units.Current;
        return new Table(
            $"How each part stands: {Named(combination)}",
            [
                TableColumn.Text("Part"),
                TableColumn.Text("Finding"),
                TableColumn.Number("Margin"),
                TableColumn.Text("In stage"),
                TableColumn.Text("At its tightest"),
            ],
            [.. combination.SolveMargins().Select(margin => (IReadOnlyList<string>)
            [
                margin.Limit.Part.Name,
                SizingTables.Word(margin.Limit.Margin.Outcome),
                ReserveOf(margin.Limit.Margin.Reserve, style),
                margin.Stage.Name,
                SizingTables.Finding(margin.Limit, style),
            ])]);
    }

    private static Table Of(string title, IReadOnlyList<Combination> combinations, string name, TextStyle style)
    {
        if (combinations.Count == 0)
        {
            throw new ArgumentException($"{name} has no combination to show. See its headline for the reason.", name);
        }

        Combination first = combinations[0];
        (string Head, Func<Combination, string> Cell, bool IsNumber)[] columns =
        [
            .. Column("Injectors", first.Injectors is not null, one => one.Injectors!.Name),
            .. Column("Pump", first.Pump is not null, one => one.Pump!.Name),
            .. Column("Regulator", first.Regulator is not null, one => one.Regulator!.Name),
            .. Column("Cost", combinations.Any(one => one.Cost > 0), one => PartText.Cost(one.Cost, style), isNumber: true),
            .. Column("Turndown at idle", true, one => ReserveOf(one.Turndown, style), isNumber: true),
            .. Column("Reserve", true, one => ReserveOf(one.Reserve, style), isNumber: true),
            .. Column("Tightest margin", true, one => $"{one.WeakestPart.Name}, {one.WeakestStage.Name}"),
            .. Column(
                "Limit exceeded",
                combinations.Any(one => one.Outcome is Outcome.Fails or Outcome.CannotSay),
                one => one.Outcome is Outcome.Holds or Outcome.HoldsAsFarAsJudged ? "none" : PartText.Say(one.SolveWeakest(), style)),
        ];
        return new Table(
            title,
            [.. columns.Select(column => column.IsNumber ? TableColumn.Number(column.Head) : TableColumn.Text(column.Head))],
            [.. combinations.Select(one => (IReadOnlyList<string>)[.. columns.Select(column => column.Cell(one))])],
            "Turndown: the share by which the shortest pulse width exceeds the minimum linear pulse width. Reserve: the tightest margin of all other limits.");
    }

    private static (string Head, Func<Combination, string> Cell, bool IsNumber)[] Column(
        string head, bool shown, Func<Combination, string> cell, bool isNumber = false) =>
        shown ? [(head, cell, isNumber)] : [];

    private static string Named(Combination combination) =>
        combination.ToString() is { Length: > 0 } parts ? parts : "parts as fitted";

    private static string ReserveOf(Ratio? reserve, TextStyle style) => reserve is { } share ? style.Change(share) : Unknown;
}
