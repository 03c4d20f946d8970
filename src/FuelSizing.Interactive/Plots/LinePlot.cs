using System.Globalization;
using System.Xml.Linq;
using FuelSizing.Quantities;
using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>Curves over one variable, with limit lines and marked points.</summary>
/// <remarks>
/// Immutable: each <c>With…</c> method answers a new plot. Only readings have marks (<see cref="PlotLine.Measured"/>); computed lines differ by dash, colour
/// and a letter at their end, and are drawn to their last point. A browser shows the values where the pointer rests.
/// </remarks>
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
    private readonly TextStyle _style = TextStyle.Metric;
    private readonly (double Low, double High)? _range;

    /// <summary>Creates a plot.</summary>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="x">The horizontal axis.</param>
    /// <param name="y">The vertical axis.</param>
    /// <param name="lines">1 to 6 series; more could not be told apart.</param>
    /// <exception cref="ArgumentException">The title is empty, or there are no series or more than six.</exception>
    public LinePlot(string title, PlotAxis x, PlotAxis y, IReadOnlyList<PlotLine> lines)
    {
        Title = Require.Text(title, nameof(title));
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        (X, Y) = (x, y);
        Lines = Array.AsReadOnly(Require.Some(lines, PlotStyle.MaximumLines, nameof(lines)));
        (Limits, Points) = ([], []);
    }

    private LinePlot(LinePlot from, TextStyle? style = null, (double Low, double High)? range = null)
    {
        (Title, X, Y, Lines, Limits, Points, Note) = (from.Title, from.X, from.Y, from.Lines, from.Limits, from.Points, from.Note);
        (_style, _range) = (style ?? from._style, range ?? from._range);
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
    public IReadOnlyList<PlotLimit> Limits { get; private init; }

    /// <summary>Marked points.</summary>
    public IReadOnlyList<PlotPoint> Points { get; private init; }

    /// <summary>A remark below the plot, or <see langword="null"/>.</summary>
    public string? Note { get; private init; }

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
        new(this) { Points = Array.AsReadOnly(Require.Some([.. Points, new PlotPoint(label, x, y)], PlotStyle.MaximumPoints, nameof(Points))) };

    /// <summary>Answers this plot with a remark below it.</summary>
    /// <param name="note">The remark; not empty.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentException">The remark is empty, too long, or cannot be written as XML.</exception>
    public LinePlot WithNote(string note) => new(this) { Note = Require.Text(note, nameof(note)) };

    /// <summary>Answers this plot with a horizontal axis that reaches at least so far: plots shown one below the other then share one axis.</summary>
    /// <param name="low">Where it begins at the latest, in the unit of the x axis; finite.</param>
    /// <param name="high">Where it ends at the earliest; finite, and not below <paramref name="low"/>.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An end is not finite, or the axis would end before it begins.</exception>
    public LinePlot WithRange(double low, double high)
    {
        Require.Finite(low, nameof(low));
        Require.Finite(high, nameof(high));
        return high >= low
            ? new(this, range: (low, high))
            : throw new ArgumentOutOfRangeException(
                nameof(high),
                high,
                string.Create(CultureInfo.InvariantCulture, $"high is {high} {X.Unit}, below low, {low} {X.Unit}. Give the lower end first."));
    }

    /// <summary>Answers this plot with its numbers written in a style's culture.</summary>
    /// <param name="style">Whose separators to use; the axes' units stay.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentNullException">There is no style.</exception>
    public LinePlot With(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return new(this, style);
    }

    /// <summary>Draws the plot.</summary>
    /// <returns>A self-contained SVG element that scales to the width it is given. The title is in it for assistive technology, not drawn.</returns>
    public string ToSvg() => Svg().ToString(SaveOptions.DisableFormatting);

    /// <inheritdoc/>
    public string ToHtml() => Figure.Html(Title, Svg(), Notes(), Data(), _style);

    /// <summary>Writes the data behind the plot as comma-separated values (RFC 4180): every point of every series, also where not all are drawn.</summary>
    /// <returns>
    /// A line of headings with the units, then a line a point. Series over the same positions are columns beside one another; others stand one below the
    /// other, each line with its series. Numbers have a decimal point whatever the style, and up to eight digits; a gap is an empty field.
    /// </returns>
    public string ToCsv() => Data().ToCsv();

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', [Title, .. Description(), .. Note is null ? Array.Empty<string>() : [Note]]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    private LinePlot With(PlotLimit limit) =>
        new(this) { Limits = Array.AsReadOnly(Require.Some([.. Limits, limit], PlotStyle.MaximumLimits, nameof(Limits))) };

    private XElement Svg()
    {
        IEnumerable<double> across = Lines.SelectMany(line => line.X).Concat(Points.Select(point => point.X));
        var frame = new PlotFrame(
            X,
            Y,
            PlotFrame.Padded(_range is { } range ? across.Append(range.Low).Append(range.High) : across, 0.03),
            PlotFrame.Padded(Lines.SelectMany(line => line.Y).Concat(Points.Select(point => point.Y)).Concat(Limits.Select(limit => limit.Value)), 0.08),
            _style);

        // A letter costs a look at the key; what stands alone needs none.
        int computed = Lines.Count(line => !line.IsMeasured) + Limits.Count;
        int lettered = 0;
        string[] letters = [.. Lines.Select(line => line.IsMeasured).Concat(Limits.Select(_ => false)).Select(measured => measured || computed < 2 ? "" : $"{(char)('A' + lettered++)}")];
        List<CurveSeries> limits = [.. Limits.Select((limit, i) => LimitSeries(limit, letters[Lines.Count + i]))];
        foreach (var (series, limit) in limits.Zip(Limits))
        {
            series.Points.Add(new DataPoint(frame.XRange.Low, limit.Value));
            series.Points.Add(new DataPoint(frame.XRange.High, limit.Value));
            frame.Model.Series.Add(series);
        }

        List<ReadingMarks> readings = [];
        for (int i = 0; i < Lines.Count; i++)
        {
            PlotLine line = Lines[i];
            OxyColor color = PlotStyle.ForLine(i).Color;
            var (_, dash, thickness) = PlotStyle.ForLine(i - readings.Count);
            IReadOnlyList<int> drawn = PlotThinning.Of(line.Y);
            if (line.IsMeasured)
            {
                readings.Add(new ReadingMarks([.. drawn.Where(place => double.IsFinite(line.Y[place])).Select(place => (line.X[place], line.Y[place]))], color, readings.Count));
            }

            var series = new CurveSeries(letters[i], dash, line.IsMeasured ? readings[^1] : null)
            {
                Title = frame.KeyText(line.IsMeasured ? $"{line.Name} (readings)" : line.Name),
                Color = color,
                StrokeThickness = thickness,
            };
            series.Points.AddRange(drawn.Select(place => new DataPoint(line.X[place], line.Y[place])));
            frame.Model.Series.Add(series);
        }

        // Limits lie under the lines, but stand below them in the key.
        for (int i = 0; i < Limits.Count; i++)
        {
            CurveSeries entry = LimitSeries(Limits[i], letters[Lines.Count + i]);
            entry.Title = frame.KeyText(Limits[i].Label);
            frame.Model.Series.Add(entry);
        }

        frame.Model.Annotations.Add(new LineLetters());
        frame.AddPoints(Points, PlotStyle.Ink);
        frame.AddKey();
        return SvgDocument.Render(
            frame.Model,
            frame.Height,
            Title,
            string.Join(' ', Description()),
            model => [.. readings.SelectMany(marks => marks.Paths(model)), PlotHover.Group(Values(model, frame.XRange))]);
    }

    private static CurveSeries LimitSeries(PlotLimit limit, string letter) => new(letter, limit.IsReference ? PlotStyle.ReferenceDash : [])
    {
        Color = limit.IsReference ? PlotStyle.Ink : PlotStyle.Limit,
        StrokeThickness = limit.IsReference ? 1.4 : PlotStyle.LimitThickness,
    };

    /// <summary>Upright strips with what every series has there, and the marked points.</summary>
    private IEnumerable<XElement> Values(PlotModel model, (double Low, double High) across)
    {
        OxyRect area = model.PlotArea;
        var strips = PlotHover.StripsOver(Lines.SelectMany(line => line.X), across.Low, across.High);
        foreach (var (from, middle, to) in strips)
        {
            string[] values = [.. Lines.Select(line => (line.Name, Value: Reading(line, from, middle, to))).Where(one => one.Value is not null).Select(one => $"{one.Name}: {one.Value}")];
            if (values.Length > 0)
            {
                double left = model.DefaultXAxis.Transform(from);
                yield return PlotHover.Area(
                    new OxyRect(left, area.Top, model.DefaultXAxis.Transform(to) - left, area.Height),
                    string.Join('\n', [$"{X.Label} {Figured(middle, X)}", .. values]));
            }
        }

        foreach (PlotPoint point in Points)
        {
            yield return PlotHover.Area(
                new OxyRect(model.DefaultXAxis.Transform(point.X) - 8, model.DefaultYAxis.Transform(point.Y) - 8, 16, 16),
                $"{point.Label}: {Figured(point.Y, Y)} at {Figured(point.X, X)}");
        }
    }

    /// <summary>What a series has at a strip: a line's value at its middle, the range of readings within it.</summary>
    private string? Reading(PlotLine line, double from, double middle, double to)
    {
        if (!line.IsMeasured && line.X.Zip(line.X.Skip(1)).All(pair => pair.First < pair.Second))
        {
            int after = line.X.TakeWhile(place => place < middle).Count();
            if (after == line.X.Count || (after == 0 && line.X[0] > middle))
            {
                return null;
            }

            double value = line.X[after] == middle
                ? line.Y[after]
                : line.Y[after - 1] + ((line.Y[after] - line.Y[after - 1]) * (middle - line.X[after - 1]) / (line.X[after] - line.X[after - 1]));
            return double.IsNaN(value) ? null : Figured(value, Y);
        }

        double[] within = [.. line.X.Zip(line.Y).Where(point => point.First >= from && point.First <= to && double.IsFinite(point.Second)).Select(point => point.Second)];
        return within.Length == 0 ? null
            : within.Min() == within.Max() ? Figured(within[0], Y)
            : $"{PlotData.Figure(within.Min(), _style)} to {Figured(within.Max(), Y)}";
    }

    private string Figured(double value, PlotAxis axis) => axis.Figure(PlotData.Figure(value, _style));

    private PlotData Data()
    {
        if (Points.Count == 0 && Lines.All(line => line.X.SequenceEqual(Lines[0].X)))
        {
            return new(
            [
                PlotColumn.Of(X.Title, Lines[0].X),
                .. Lines.Select(line => PlotColumn.Of(Y.Heading(line.IsMeasured ? $"{line.Name}, measured" : line.Name), line.Y)),
                .. Limits.Select(limit => PlotColumn.Of(Y.Heading(limit.Label), [.. Enumerable.Repeat(limit.Value, Lines[0].X.Count)])),
            ]);
        }

        (string Name, string Kind, double X, double Y)[] rows =
        [
            .. Lines.SelectMany(line => line.X.Zip(line.Y, (x, y) => (line.Name, line.IsMeasured ? "measured" : "computed", x, y))),
            .. Limits.Select(limit => (limit.Label, limit.IsReference ? "aimed at" : "limit", double.NaN, limit.Value)),
            .. Points.Select(point => (point.Label, "marked", point.X, point.Y)),
        ];
        return new(
        [
            PlotColumn.Of("Series", [.. rows.Select(row => row.Name)]),
            PlotColumn.Of("Kind", [.. rows.Select(row => row.Kind)]),
            PlotColumn.Of(X.Title, [.. rows.Select(row => row.X)]),
            PlotColumn.Of(Y.Title, [.. rows.Select(row => row.Y)]),
        ]);
    }

    private IEnumerable<string> Notes()
    {
        foreach (PlotLine line in Lines.Where(line => PlotThinning.Of(line.Y) is var drawn && drawn.Count < line.Y.Count))
        {
            yield return $"Of {_style.Count(line.Y.Count)} points of \"{line.Name}\" the lowest and the highest of each of {_style.Count(PlotThinning.Stretches)} stretches are drawn, the first and the last.";
        }

        if (Note is not null)
        {
            yield return Note;
        }
    }

    private IEnumerable<string> Description()
    {
        yield return $"{Y.Title} against {X.Title}.";
        foreach (var line in Lines)
        {
            var finite = line.X.Zip(line.Y).Where(point => double.IsFinite(point.Second)).ToArray();
            yield return $"{line.Name}{(line.IsMeasured ? ", measured" : "")}: from {Y.Figure(_style.Number(finite[0].Second, "G4"))} at {X.Figure(_style.Number(finite[0].First, "G5"))} to {Y.Figure(_style.Number(finite[^1].Second, "G4"))} at {X.Figure(_style.Number(finite[^1].First, "G5"))}; least {_style.Number(finite.Min(p => p.Second), "G4")}, greatest {Y.Figure(_style.Number(finite.Max(p => p.Second), "G4"))}.";
        }

        foreach (var limit in Limits)
        {
            yield return $"{(limit.IsReference ? "Aimed at" : "Limit")}, {limit.Label}: {Y.Figure(_style.Number(limit.Value, "G4"))}.";
        }

        foreach (var point in Points)
        {
            yield return $"Marked, {point.Label}: {Y.Figure(_style.Number(point.Y, "G4"))} at {X.Figure(_style.Number(point.X, "G5"))}.";
        }
    }
}
