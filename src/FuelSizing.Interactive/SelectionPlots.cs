using System.Globalization;
using FuelSizing.Equations;
using FuelSizing.Selection;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Plots of combinations of parts that were ranked.</summary>
public static class SelectionPlots
{
    // More rows than these are compared in a table.
    private const int MaximumRows = 10;

    /// <summary>Turndown at idle and reserve of the combinations that no other beats, the cheapest first.</summary>
    /// <param name="ranking">The ranking; at least one combination serves.</param>
    /// <returns>The plot, a row a combination, up to ten.</returns>
    /// <exception cref="ArgumentException">No combination serves.</exception>
    public static BarPlot Pareto(Ranking ranking)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        if (ranking.Pareto.Count == 0)
        {
            throw new ArgumentException("ranking has no combination that serves. See its headline for the reason.", nameof(ranking));
        }

        var plot = new BarPlot(
            "Margins of the Pareto-optimal combinations",
            new PlotAxis("Margin", "%"),
            ["turndown at idle", "reserve of all else"],
            [.. ranking.Pareto.Take(MaximumRows).Select(one => new PlotBarRow(Label(one), [.. Bar(0, one.Turndown), .. Bar(1, one.Reserve)]))]);
        return ranking.Pareto.Count <= MaximumRows
            ? plot
            : plot.WithNote(string.Create(CultureInfo.InvariantCulture, $"The first {MaximumRows} of {ranking.Pareto.Count}."));
    }

    private static string Label(Combination one) =>
        one.Cost is { } cost and > 0 ? string.Create(CultureInfo.InvariantCulture, $"{one} ({cost:N0})") : $"{one}";

    private static PlotBar[] Bar(int kind, Ratio? reserve) => reserve is { } share ? [new PlotBar(kind, 0, share.Percent)] : [];
}
