using FuelSizing.Quantities;
using FuelSizing.Selection;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Plots of combinations of parts that were ranked.</summary>
public static class SelectionPlots
{
    // More rows than these are compared in a table.
    private const int MaximumRows = 10;

    /// <summary>Turndown at idle and reserve of the combinations that no other beats, the cheapest first.</summary>
    /// <param name="ranking">The ranking; at least one combination is adequate.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot, a row a combination, up to ten.</returns>
    /// <exception cref="ArgumentException">No combination is adequate.</exception>
    public static BarPlot Pareto(Ranking ranking, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        style ??= Units.Current;
        if (ranking.Pareto.Count == 0)
        {
            throw new ArgumentException("ranking has no combination that is adequate. See its headline for the reason.", nameof(ranking));
        }

        var plot = new BarPlot(
            "Margins of the Pareto-optimal combinations",
            new PlotAxis("Margin", "%"),
            ["turndown at idle", "reserve of all else"],
            [.. ranking.Pareto.Take(MaximumRows).Select(one => new PlotBarRow(Label(one, style), [.. Bar(0, one.Turndown), .. Bar(1, one.Reserve)]))]);
        plot = plot.With(style);
        return ranking.Pareto.Count <= MaximumRows
            ? plot
            : plot.WithNote($"The first {style.Count(MaximumRows)} of {style.Count(ranking.Pareto.Count)}.");
    }

    private static string Label(Combination one, TextStyle style) =>
        one.Cost is { } cost and > 0 ? $"{one} ({PartText.Cost(cost, style)})" : $"{one}";

    private static PlotBar[] Bar(int kind, Ratio? reserve) => reserve is { } share ? [new PlotBar(kind, 0, share.Percent)] : [];
}
