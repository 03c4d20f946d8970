using System.Xml.Linq;
using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>Horizontal bars in named rows, with upright lines for a limit and for a base value.</summary>
/// <remarks>
/// Immutable: each <c>With…</c> method answers a new plot. Kinds of bars differ by hatching as well as by colour. Each row's
/// name stands above its bars, so that long names take no room from them. Bars of a row that lie over one another get a lane
/// each.
/// </remarks>
/// <example>
/// <code>
/// var plot = new BarPlot(
///     "What moves the duty cycle",
///     new PlotAxis("Duty cycle", "%"),
///     ["input low", "input high"],
///     [new PlotBarRow("BSFC, 299 to 331 g/kWh", new PlotBar(0, 82, 78), new PlotBar(1, 82, 86))])
///     .WithBase("as described 82", 82)
///     .WithLimit("limit 85 %", 85);
/// Console.WriteLine(plot.ToPlainText());
/// </code>
/// </example>
public sealed class BarPlot : IDisplayBlock
{
    private readonly TextStyle _style = TextStyle.Metric;
    private const double BarsHeight = 24;
    private const double LineHeight = 18;
    private const double Between = 7;

    /// <summary>Creates a plot.</summary>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="x">What the bars measure.</param>
    /// <param name="kinds">The kinds of bars, as the key names them; 1 or 2.</param>
    /// <param name="rows">1 to 16 rows, top to bottom.</param>
    /// <exception cref="ArgumentException">A text is empty, too long, or cannot be written as XML; there are too few or too many kinds or rows; a bar is of no kind; or there is no bar at all.</exception>
    public BarPlot(string title, PlotAxis x, IReadOnlyList<string> kinds, IReadOnlyList<PlotBarRow> rows)
    {
        ArgumentNullException.ThrowIfNull(x);
        Title = Require.Text(title, nameof(title));
        X = x;
        Kinds = Array.AsReadOnly([.. Require.Some(kinds, PlotStyle.MaximumBarKinds, nameof(kinds)).Select(kind => Require.Text(kind, nameof(kinds)))]);
        Rows = Array.AsReadOnly(Require.Some(rows, PlotStyle.MaximumBarRows, nameof(rows)));
        if (!Rows.Any(row => row.Bars.Count > 0))
        {
            throw new ArgumentException("rows holds no bar, so there is nothing to draw. Show a callout instead.", nameof(rows));
        }

        foreach (PlotBarRow row in Rows)
        {
            if (row.Bars.Any(bar => bar.Kind >= Kinds.Count))
            {
                throw new ArgumentException($"rows has a bar of kind {row.Bars.Max(bar => bar.Kind)} in '{row.Label}', but there are {Kinds.Count} kind(s). Count kinds from 0.", nameof(rows));
            }
        }
    }

    private BarPlot(BarPlot from, PlotLimit? start, PlotLimit? limit, string? note, TextStyle? style = null)
    {
        _style = style ?? from._style;
        (Title, X, Kinds, Rows) = (from.Title, from.X, from.Kinds, from.Rows);
        (Base, Limit, Note) = (start, limit, note);
    }

    /// <summary>What the plot shows.</summary>
    public string Title { get; }

    /// <summary>What the bars measure.</summary>
    public PlotAxis X { get; }

    /// <summary>The kinds of bars.</summary>
    public IReadOnlyList<string> Kinds { get; }

    /// <summary>The rows, top to bottom.</summary>
    public IReadOnlyList<PlotBarRow> Rows { get; }

    /// <summary>The value that the bars start from, or <see langword="null"/>.</summary>
    public PlotLimit? Base { get; }

    /// <summary>The limit, or <see langword="null"/>.</summary>
    public PlotLimit? Limit { get; }

    /// <summary>A remark below the plot, or <see langword="null"/>.</summary>
    public string? Note { get; }

    /// <summary>Answers this plot with a marked base value, in place of any earlier one.</summary>
    /// <param name="label">What it is; not empty, and short, for it stands above the plot.</param>
    /// <param name="value">The value in the unit of the axis; finite.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentException">The label is empty, too long, or cannot be written as XML.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public BarPlot WithBase(string label, double value) => new(this, new PlotLimit(label, value), Limit, Note);

    /// <summary>Answers this plot with a limit, in place of any earlier one. One far from every bar is told below the plot instead.</summary>
    /// <param name="label">What is limited; not empty, and short, for it stands above the plot.</param>
    /// <param name="value">The limit in the unit of the axis; finite.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentException">The label is empty, too long, or cannot be written as XML.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public BarPlot WithLimit(string label, double value) => new(this, Base, new PlotLimit(label, value), Note);

    /// <summary>Answers this plot with a remark below it.</summary>
    /// <param name="note">The remark; not empty.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentException">The remark is empty, too long, or cannot be written as XML.</exception>
    public BarPlot WithNote(string note) => new(this, Base, Limit, Require.Text(note, nameof(note)));

    /// <summary>Answers this plot with its numbers written in a style's culture.</summary>
    /// <param name="style">Whose separators to use; the axes' units stay.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentNullException">There is no style.</exception>
    public BarPlot With(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return new(this, Base, Limit, Note, style);
    }

    /// <summary>Draws the plot.</summary>
    /// <returns>A self-contained SVG element that scales to the width it is given. The title is in it for assistive technology, not drawn.</returns>
    public string ToSvg() => Svg().ToString(SaveOptions.DisableFormatting);

    /// <inheritdoc/>
    public string ToHtml() => Figure.Html(Title, Svg(), Notes(), Data(), _style);

    /// <summary>Writes the data behind the plot as comma-separated values (RFC 4180).</summary>
    /// <returns>A line of headings with the unit, then a line a bar. Numbers have a decimal point whatever the style, and up to eight digits.</returns>
    public string ToCsv() => Data().ToCsv();

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', [Title, .. Description(), .. Note is null ? Array.Empty<string>() : [Note]]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    private (double Low, double High) BarRange() => PlotFrame.Padded(
        Rows.SelectMany(row => row.Bars)
            .SelectMany(bar => (double[])[bar.From, bar.To, bar.Interval?.Minimum ?? bar.To, bar.Interval?.Maximum ?? bar.To])
            .Concat(Base is null ? [] : [Base.Value]),
        0);

    private XElement Svg()
    {
        var bars = BarRange();
        bool near = Limit is not null && PlotFrame.IsNear(Limit.Value, bars);
        var range = PlotFrame.Padded([bars.Low, bars.High, near ? Limit!.Value : bars.Low], 0.04);
        (string Text, double Top)[] names = [.. Names()];
        var frame = PlotFrame.OfRows(X, range, BarsHeight + Between - BarsTop(names[^1]), _style);
        var placed = Place(names).ToArray();
        for (int kind = 0; kind < Kinds.Count; kind++)
        {
            frame.Model.Series.Add(new BoxSeries([.. placed.Where(one => one.Bar.Kind == kind).Select(one => (one.Bar.Left, one.Bar.Right, one.Bottom, one.Top))], kind)
            {
                Title = frame.KeyText(Kinds[kind]),
            });
        }

        (double From, double To, double Right)[] texts =
        [
            .. names.Select(name => (
                name.Top + 2,
                BarsTop(name) + 1,
                frame.LeftRoom + BarRowMarks.Inset + PlotText.WidthOf(name.Text) + 4)),
        ];
        double room = frame.AddFlags(
        [
            .. Base is null ? Array.Empty<Flag>() : [new Flag(Base.Label, Base.Value, false)],
            .. near ? [new Flag(Limit!.Label, Limit.Value, true)] : Array.Empty<Flag>(),
        ], texts);
        frame.Model.Annotations.Add(new RowGrid(texts) { Layer = OxyPlot.Annotations.AnnotationLayer.BelowSeries });
        frame.Model.Annotations.Add(new BarRowMarks(
            names,
            [.. placed.Where(one => one.Bar.Interval is not null).Select(one => (one.Bar.Interval!.Value.Minimum, one.Bar.Interval.Value.Maximum, (one.Bottom + one.Top) / 2))]));
        frame.AddKey();
        return SvgDocument.Render(frame.Model, frame.Height + room, Title, string.Join(' ', Description()), model => [PlotHover.Group(placed.Select(one =>
        {
            double left = model.DefaultXAxis.Transform(one.Bar.Left);
            double top = model.DefaultYAxis.Transform(one.Top);
            return PlotHover.Area(
                new OxyPlot.OxyRect(left, top, model.DefaultXAxis.Transform(one.Bar.Right) - left, model.DefaultYAxis.Transform(one.Bottom) - top),
                $"{one.Row}\n{BarText(one.Bar)}");
        }))]);
    }

    /// <summary>The names of the rows, broken to the plot's width, and where each starts: pixels, falling from 0 at the plot's top.</summary>
    private IEnumerable<(string Text, double Top)> Names()
    {
        double top = -Between;
        foreach (PlotBarRow row in Rows)
        {
            var name = (PlotText.Wrap(row.Label, PlotStyle.Width - 60), top);
            yield return name;
            top = BarsTop(name) - BarsHeight - Between;
        }
    }

    private static double BarsTop((string Text, double Top) name) => name.Top - (PlotText.LineCount(name.Text) * LineHeight) - 2;

    /// <summary>Bottom and top of each bar, on the scale of the names.</summary>
    private IEnumerable<(string Row, PlotBar Bar, double Bottom, double Top)> Place((string Text, double Top)[] names)
    {
        for (int row = 0; row < Rows.Count; row++)
        {
            var bars = Rows[row].Bars;
            bool over = bars.Count > 1 && Math.Min(bars[0].Right, bars[1].Right) > Math.Max(bars[0].Left, bars[1].Left);
            for (int bar = 0; bar < bars.Count; bar++)
            {
                double top = BarsTop(names[row]) - (over ? bar * BarsHeight / 2 : 0);
                yield return (Rows[row].Label, bars[bar], top - (over ? BarsHeight / 2 : BarsHeight), top);
            }
        }
    }

    private string BarText(PlotBar bar) =>
        $"{Kinds[bar.Kind]} from {_style.Number(bar.From, "G4")} to {X.Figure(_style.Number(bar.To, "G4"))}"
        + (bar.Interval is { } range ? $" ({_style.Number(range.Minimum, "G4")} to {_style.Number(range.Maximum, "G4")})" : "");

    private PlotData Data()
    {
        (string Row, PlotBar? Bar)[] bars = [.. Rows.SelectMany(row => row.Bars.Count == 0 ? [(row.Label, (PlotBar?)null)] : row.Bars.Select(bar => (row.Label, (PlotBar?)bar)))];
        double[] Column(Func<PlotBar, double> figure) => [.. bars.Select(one => one.Bar is { } bar ? figure(bar) : double.NaN)];
        return new(
        [
            PlotColumn.Of("Row", [.. bars.Select(one => one.Row)]),
            PlotColumn.Of("Bar", [.. bars.Select(one => one.Bar is { } bar ? Kinds[bar.Kind] : "none")]),
            PlotColumn.Of(X.Heading("From"), Column(bar => bar.From)),
            PlotColumn.Of(X.Heading("To"), Column(bar => bar.To)),
            .. bars.Any(one => one.Bar?.Interval is not null)
                ? (PlotColumn[])
                [
                    PlotColumn.Of(X.Heading("Interval from"), Column(bar => bar.Interval?.Minimum ?? double.NaN)),
                    PlotColumn.Of(X.Heading("Interval to"), Column(bar => bar.Interval?.Maximum ?? double.NaN)),
                ]
                : [],
        ]);
    }

    private IEnumerable<string> Notes()
    {
        if (Limit is { } limit && !PlotFrame.IsNear(limit.Value, BarRange()))
        {
            yield return $"{limit.Label}: far {(limit.Value > BarRange().High ? "above" : "below")} every value shown.";
        }

        if (Note is not null)
        {
            yield return Note;
        }
    }

    private IEnumerable<string> Description()
    {
        yield return $"{X.Title}, a row of bars each.";
        foreach (PlotBarRow row in Rows)
        {
            string bars = string.Join(", ", row.Bars.Select(BarText));
            yield return $"{row.Label}: {(row.Bars.Count == 0 ? "no bar" : bars)}.";
        }

        if (Base is { } start)
        {
            yield return $"Base, {start.Label}: {X.Figure(_style.Number(start.Value, "G4"))}.";
        }

        if (Limit is { } limit)
        {
            yield return $"Limit, {limit.Label}: {X.Figure(_style.Number(limit.Value, "G4"))}.";
        }
    }
}
