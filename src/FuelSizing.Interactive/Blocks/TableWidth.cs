using System.Globalization;

namespace FuelSizing.Interactive;

/// <summary>How much room a table takes side by side, and how it is stacked where a page has less: a line a cell, with the column's name before it, under the row's first cell as its heading.</summary>
/// <remarks>
/// The width is that of the box the table is in, whatever the window, the paper or the notebook's margins: a container query. It is made for the table's own width,
/// so that a narrow table stays a table on a phone.
/// </remarks>
internal static class TableWidth
{
    /// <summary>Less than a phone's page has: a table that needs no more is never stacked, px.</summary>
    public const int AlwaysThere = 330;

    /// <summary>A cell of more characters stands under its column's name, not beside it.</summary>
    public const int LongestBeside = 26;

    // A cell that is read as a sentence, and more of them in one column than not, gets a column wide enough to be read.
    private const int Sentence = 60;

    // Tables are set at 15 px. The ruler allows for a font that runs a sixth wider, in which a plot's texts would collide; a table scrolls there, so a little is enough.
    private const double Scale = 15 / PlotStyle.FontSize / PlotRuler.WiderFont * 1.03;
    private const int Padding = 18;

    // Words that may be the widest: one of few letters less may hold wider ones.
    private const int FewLetters = 4;

    private static readonly double Digit = Scale * PlotText.WidthOf("0");

    /// <summary>Room for every column at its narrowest, px.</summary>
    public static int Of(IReadOnlyList<TableColumn> columns, IReadOnlyList<IReadOnlyList<string>> rows) =>
        (int)Math.Ceiling(columns.Select((column, place) => Of(column, [.. rows.Select(row => row[place])], columns.Count)).Sum());

    /// <summary>The class that a table of a width has.</summary>
    public static string ClassOf(int width) => string.Create(CultureInfo.InvariantCulture, $"fs-under-{width}");

    /// <summary>The style that stacks a table where there is less room than it needs.</summary>
    public static string StackedUnder(int width)
    {
        string of = ClassOf(width);
        return string.Create(CultureInfo.InvariantCulture, $"@container (max-width:{width}px){{")
            + $".{of},.{of} tbody,.{of} tr{{display:block}}"
            + $".{of} thead{{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}}"
            + $".{of} tr{{padding:6px 0;border-bottom:1px solid {BlockStyle.Muted};break-inside:avoid}}"
            + $".{of} td{{display:flex;justify-content:space-between;gap:0 14px;padding:2px 0!important;border:0!important;min-width:0!important;white-space:normal!important;text-align:right!important;overflow-wrap:anywhere}}"
            + $".{of} td::before{{content:attr(data-of);color:{BlockStyle.Muted};text-align:left;flex:0 1 auto}}"
            + $".{of} td:not([data-of])::before{{content:none}}"
            + $".{of} td:first-child{{justify-content:flex-start;text-align:left!important;font-weight:bold!important}}"
            + $".{of} td[data-long]{{display:block;text-align:left!important}}"
            + $".{of} td[data-long]::before{{display:block}}"
            + $".{of} td:empty{{display:none}}}}";
    }

    /// <summary>Characters by which a column is laid out: those of its longest cell, but for a sentence among short cells, which may break.</summary>
    public static int LongestOf(IReadOnlyList<string> cells) =>
        cells.Max(cell => cell.Length) is var longest && 2 * cells.Count(cell => cell.Length > Sentence) >= cells.Count ? longest : Math.Min(longest, Sentence);

    private static double Of(TableColumn column, string[] cells, int columns)
    {
        int longest = LongestOf(cells);
        double heading = Widest(column.Header.Split(' '), OxyPlot.FontWeights.Bold);
        double words = Widest(cells.SelectMany(cell => cell.Split(' ')), OxyPlot.FontWeights.Normal);
        double body = column.Alignment == CellAlignment.Number || longest <= 12 ? Widest(cells, OxyPlot.FontWeights.Normal)
            : Digit * (longest > Sentence && columns > 3 ? 34 : longest > 24 ? 18 : 12);
        return Padding + Math.Max(heading, Math.Max(body, words));
    }

    private static double Widest(IEnumerable<string> texts, double weight)
    {
        string[] all = [.. texts.Distinct()];
        int most = all.Max(text => text.Length);
        return Scale * all.Where(text => text.Length >= most - FewLetters).Max(text => PlotText.WidthOf(text, weight));
    }
}
