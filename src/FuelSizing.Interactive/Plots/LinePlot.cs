using System.Xml.Linq;
using FuelSizing.Quantities;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Series;

namespace FuelSizing.Interactive;

/// <summary>Curves over one variable, with limit lines and marked points.</summary>
/// <remarks>Immutable: each <c>With…</c> method answers a new plot. Series differ by dash and marker as well as colour.</remarks>
/// <example>
/// <code>
/// var plot = new LinePlot(
///     "Duty cycle up the range",
///     new PlotAxis("Engine speed", "rev/min"),
///     new PlotAxis("Duty cycle", "%"),
///     [new PlotLine("0.6 bar boost", [2000, 4000, 6000], [24, 51, 82])])
///     .WithLimit("limit 85 %", 85);
/// Console.WriteLine(plot.ToPlainText());
/// </code>
/// </example>
public sealed class LinePlot : IDisplayBlock
{
    private readonly TextStyle _style;

    /// <summary>Creates a plot.</summary>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="x">The horizontal axis.</param>
    /// <param name="y">The vertical axis.</param>
    /// <param name="lines">1 to 6 series; more could not be told apart.</param>
    /// <exception cref="ArgumentException">The title is empty, or there are no series or more than six.</exception>
    public LinePlot(string title, PlotAxis x, PlotAxis y, IReadOnlyList<PlotLine> lines)
        : this(Require.Text(title, nameof(title)), x, y, Array.AsReadOnly(Require.Some(lines, PlotStyle.MaximumLines, nameof(lines))), [], [], null, TextStyle.Metric)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
    }

    private LinePlot(string title, PlotAxis x, PlotAxis y, IReadOnlyList<PlotLine> lines, IReadOnlyList<PlotLimit> limits, IReadOnlyList<PlotPoint> points, string? note, TextStyle style)
    {
        (Title, X, Y, Lines, Limits, Points, Note, _style) = (title, x, y, lines, limits, points, note, style);
    }

    /// <summary>What the plot shows.</summary>
    public string Title { get; }

    /// <summary>The horizontal axis.</summary>
    public PlotAxis X { get; }

    /// <summary>The vertical axis.</summary>
    public PlotAxis Y { get; }

    /// <summary>The series.</summary>
    public IReadOnlyList<PlotLine> Lines { get; }

    /// <summary>Horizontal limit lines.</summary>
    public IReadOnlyList<PlotLimit> Limits { get; }

    /// <summary>Marked points.</summary>
    public IReadOnlyList<PlotPoint> Points { get; }

    /// <summary>A remark below the plot, or <see langword="null"/>.</summary>
    public string? Note { get; }

    /// <summary>Answers this plot with one more horizontal limit line; at most 4.</summary>
    /// <param name="label">What is limited; not empty.</param>
    /// <param name="value">The limit in the unit of the y axis; finite.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentException">The label is empty, or the plot already has four limits.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public LinePlot WithLimit(string label, double value) => With(new PlotLimit(label, value));

    /// <summary>Answers this plot with one more horizontal line that is aimed at; at most 4 of these and of limits together.</summary>
    /// <param name="label">What is aimed at; not empty.</param>
    /// <param name="value">The figure in the unit of the y axis; finite.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentException">The label is empty, or the plot already has four such lines.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public LinePlot WithReference(string label, double value) => With(new PlotLimit(label, value) { IsReference = true });

    /// <summary>Answers this plot with one more marked point; at most 12.</summary>
    /// <param name="label">Its name beside the mark; not empty.</param>
    /// <param name="x">Position in the unit of the x axis; finite.</param>
    /// <param name="y">Position in the unit of the y axis; finite.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentException">The label is empty, or the plot already has twelve points.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    public LinePlot WithPoint(string label, double x, double y) =>
        new(Title, X, Y, Lines, Limits, Array.AsReadOnly(Require.Some([.. Points, new PlotPoint(label, x, y)], PlotStyle.MaximumPoints, nameof(Points))), Note, _style);

    /// <summary>Answers this plot with a remark below it.</summary>
    /// <param name="note">The remark; not empty.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentException">The remark is empty, too long, or cannot be written as XML.</exception>
    public LinePlot WithNote(string note) => new(Title, X, Y, Lines, Limits, Points, Require.Text(note, nameof(note)), _style);

    /// <summary>Answers this plot with its numbers written in a style's culture.</summary>
    /// <param name="style">Whose separators to use; the axes' units stay.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentNullException">There is no style.</exception>
    public LinePlot With(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return new(Title, X, Y, Lines, Limits, Points, Note, style);
    }

    /// <summary>Draws the plot.</summary>
    /// <returns>A self-contained SVG element that scales to the width it is given. The title is in it for assistive technology, not drawn.</returns>
    public string ToSvg() => Svg().ToString(SaveOptions.DisableFormatting);

    /// <inheritdoc/>
    public string ToHtml() => Figure.Html(Title, Svg(), Note is null ? [] : [Note]);

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', [Title, .. Description(), .. Note is null ? Array.Empty<string>() : [Note]]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    private LinePlot With(PlotLimit limit) =>
        new(Title, X, Y, Lines, Array.AsReadOnly(Require.Some([.. Limits, limit], PlotStyle.MaximumLimits, nameof(Limits))), Points, Note, _style);

    private XElement Svg()
    {
        var frame = new PlotFrame(
            X,
            Y,
            PlotFrame.Padded(Lines.SelectMany(line => line.X).Concat(Points.Select(point => point.X)), 0.03),
            PlotFrame.Padded(Lines.SelectMany(line => line.Y).Concat(Points.Select(point => point.Y)).Concat(Limits.Select(limit => limit.Value)), 0.08),
            _style);

        for (int i = 0; i < Limits.Count; i++)
        {
            AddLimit(frame, Limits[i], i);
        }

        for (int i = 0; i < Lines.Count; i++)
        {
            var (color, dash, marker) = PlotStyle.ForLine(i);
            var series = new LineSeries
            {
                Title = frame.KeyText(Lines[i].Name),
                Color = color,
                LineStyle = dash,
                StrokeThickness = PlotStyle.LineThickness,
                MarkerType = marker,
                MarkerSize = 4.5,
                MarkerFill = marker is MarkerType.Star or MarkerType.Cross ? OxyColors.Undefined : color,
                MarkerStroke = marker is MarkerType.Star or MarkerType.Cross ? color : OxyColors.White,
                MarkerStrokeThickness = marker is MarkerType.Star or MarkerType.Cross ? 1.8 : 1,
                MarkerResolution = PlotStyle.MarkerSpacing,
            };
            series.Points.AddRange(Lines[i].X.Zip(Lines[i].Y, (x, y) => new DataPoint(x, y)));
            frame.Model.Series.Add(series);
        }

        frame.AddPoints(Points);
        frame.AddKey();
        return SvgDocument.Render(frame.Model, frame.Height, Title, string.Join(' ', Description()));
    }

    private static void AddLimit(PlotFrame frame, PlotLimit limit, int index)
    {
        OxyColor color = limit.IsReference ? PlotStyle.Reference : PlotStyle.Limit;
        LineStyle line = limit.IsReference ? LineStyle.LongDash : LineStyle.Solid;
        frame.Model.Annotations.Add(new LineAnnotation
        {
            Type = LineAnnotationType.Horizontal,
            Y = limit.Value,
            Color = color,
            StrokeThickness = PlotStyle.LimitThickness,
            LineStyle = line,
            Layer = AnnotationLayer.BelowSeries,
        });

        if (limit.IsReference || limit.Label.Length > PlotStyle.LongestLimitLabel)
        {
            frame.Model.Series.Add(new LineSeries { Title = frame.KeyText(limit.Label), Color = color, LineStyle = line, StrokeThickness = PlotStyle.LimitThickness });
            return;
        }

        // Alternate ends keep the labels of two close limits apart.
        bool left = index % 2 == 0;
        bool top = PlotFrame.Share(limit.Value, frame.YRange) > 0.9;
        frame.Model.Annotations.Add(PlotFrame.Label(
            PlotText.Wrap(limit.Label, PlotStyle.Width - 130, FontWeights.Bold),
            new DataPoint(left ? frame.XRange.Low : frame.XRange.High, limit.Value),
            new ScreenVector(left ? 6 : -6, top ? 5 : -4),
            left ? HorizontalAlignment.Left : HorizontalAlignment.Right,
            top ? VerticalAlignment.Top : VerticalAlignment.Bottom,
            PlotStyle.Limit));
    }

    private IEnumerable<string> Description()
    {
        yield return $"{Y.Title} against {X.Title}.";
        foreach (var line in Lines)
        {
            var finite = line.X.Zip(line.Y).Where(point => double.IsFinite(point.Second)).ToArray();
            yield return $"{line.Name}: from {_style.Number(finite[0].Second, "G4")} {Y.Unit} at {_style.Number(finite[0].First, "G5")} {X.Unit} to {_style.Number(finite[^1].Second, "G4")} {Y.Unit} at {_style.Number(finite[^1].First, "G5")} {X.Unit}; least {_style.Number(finite.Min(p => p.Second), "G4")}, greatest {_style.Number(finite.Max(p => p.Second), "G4")} {Y.Unit}.";
        }

        foreach (var limit in Limits)
        {
            yield return $"{(limit.IsReference ? "Aimed at" : "Limit")}, {limit.Label}: {_style.Number(limit.Value, "G4")} {Y.Unit}.";
        }

        foreach (var point in Points)
        {
            yield return $"Marked, {point.Label}: {_style.Number(point.Y, "G4")} {Y.Unit} at {_style.Number(point.X, "G5")} {X.Unit}.";
        }
    }
}
