using System.Globalization;
using System.Xml.Linq;
using FuelSizing.Quantities;
using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace FuelSizing.Interactive;

/// <summary>A value over two variables as a banded colour map with labelled contours and one emphasised limit.</summary>
/// <remarks>
/// Immutable: each <c>With…</c> method answers a new plot. The colours fall steadily in lightness, so the map prints in grey.
/// A cell of the grid with a NaN corner is hatched and named as not covered; nothing is interpolated across it.
/// </remarks>
/// <example>
/// <code>
/// var map = new MapPlot(
///     "Duty cycle",
///     new PlotAxis("Engine speed", "rev/min"),
///     new PlotAxis("Boost", "bar"),
///     new PlotAxis("Duty cycle", "%"),
///     [2000, 4000, 6000],
///     [0, 0.5],
///     new double[,] { { 20, 30 }, { 42, 63 }, { 64, 95 } })
///     .WithLimit("limit 85 %", 85);
/// Console.WriteLine(map.ToPlainText());
/// </code>
/// </example>
public sealed class MapPlot : IDisplayBlock
{
    private readonly TextStyle _style = TextStyle.Metric;
    private const int MaximumGridPoints = 201;

    private readonly double[,] _values;

    /// <summary>Creates a map.</summary>
    /// <param name="title">What the map shows; not empty.</param>
    /// <param name="x">The horizontal axis.</param>
    /// <param name="y">The vertical axis.</param>
    /// <param name="value">What the colours measure.</param>
    /// <param name="xs">2 to 201 grid positions along x, rising.</param>
    /// <param name="ys">2 to 201 grid positions along y, rising.</param>
    /// <param name="values">The value at each grid point, <c>values[i, j]</c> at <c>xs[i]</c> and <c>ys[j]</c>; NaN where there is none.</param>
    /// <exception cref="ArgumentException">A text is empty, a grid does not rise, the sizes differ, or no cell is covered.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite, or a value is infinite.</exception>
    public MapPlot(string title, PlotAxis x, PlotAxis y, PlotAxis value, IReadOnlyList<double> xs, IReadOnlyList<double> ys, double[,] values)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(values);
        Title = Require.Text(title, nameof(title));
        (X, Y, Value) = (x, y, value);
        Xs = Array.AsReadOnly(Grid(xs, nameof(xs)));
        Ys = Array.AsReadOnly(Grid(ys, nameof(ys)));
        if (values.GetLength(0) != Xs.Count || values.GetLength(1) != Ys.Count)
        {
            throw new ArgumentException(
                $"values is {values.GetLength(0)} by {values.GetLength(1)}, but the grid is {Xs.Count} by {Ys.Count}. Give values[i, j] for each xs[i] and ys[j].",
                nameof(values));
        }

        foreach (double item in values)
        {
            if (double.IsInfinity(item))
            {
                throw new ArgumentOutOfRangeException(nameof(values), item, "values must be finite, or NaN where there is no value.");
            }
        }

        _values = (double[,])values.Clone();
        if (CoveredCells() == 0)
        {
            throw new ArgumentException("values has no cell with four finite corners, so there is nothing to colour. Check the grid, or show a callout instead.", nameof(values));
        }

        Points = [];
    }

    private MapPlot(MapPlot from, PlotLimit? limit, IReadOnlyList<PlotPoint> points, string? note, TextStyle? style = null)
    {
        _style = style ?? from._style;
        (Title, X, Y, Value, Xs, Ys, _values) = (from.Title, from.X, from.Y, from.Value, from.Xs, from.Ys, from._values);
        (Limit, Points, Note) = (limit, points, note);
    }

    /// <summary>What the map shows.</summary>
    public string Title { get; }

    /// <summary>The horizontal axis.</summary>
    public PlotAxis X { get; }

    /// <summary>The vertical axis.</summary>
    public PlotAxis Y { get; }

    /// <summary>What the colours measure.</summary>
    public PlotAxis Value { get; }

    /// <summary>Grid positions along x.</summary>
    public IReadOnlyList<double> Xs { get; }

    /// <summary>Grid positions along y.</summary>
    public IReadOnlyList<double> Ys { get; }

    /// <summary>The emphasised limit, or <see langword="null"/>.</summary>
    public PlotLimit? Limit { get; }

    /// <summary>Marked points.</summary>
    public IReadOnlyList<PlotPoint> Points { get; }

    /// <summary>A remark below the map, or <see langword="null"/>.</summary>
    public string? Note { get; }

    /// <summary>The value at a grid point.</summary>
    /// <param name="i">Index along x.</param>
    /// <param name="j">Index along y.</param>
    /// <returns>The value, or NaN where there is none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An index is outside the grid.</exception>
    public double At(int i, int j)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(i);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(i, Xs.Count);
        ArgumentOutOfRangeException.ThrowIfNegative(j);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(j, Ys.Count);
        return _values[i, j];
    }

    /// <summary>Answers this map with an emphasised contour at a limit, in place of any earlier one.</summary>
    /// <param name="label">What is limited; not empty.</param>
    /// <param name="value">The limit in the unit of the colours; finite.</param>
    /// <returns>The new map.</returns>
    /// <exception cref="ArgumentException">The label is empty, too long, or cannot be written as XML.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public MapPlot WithLimit(string label, double value) => new(this, new PlotLimit(label, value), Points, Note);

    /// <summary>Answers this map with one more marked point inside the grid; at most 12.</summary>
    /// <param name="label">Its name beside the mark; not empty.</param>
    /// <param name="x">Position in the unit of the x axis, inside the grid.</param>
    /// <param name="y">Position in the unit of the y axis, inside the grid.</param>
    /// <returns>The new map.</returns>
    /// <exception cref="ArgumentException">The label is empty, or the map already has twelve points.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position is outside the grid.</exception>
    public MapPlot WithPoint(string label, double x, double y)
    {
        Inside(x, Xs, nameof(x));
        Inside(y, Ys, nameof(y));
        return new(this, Limit, Array.AsReadOnly(Require.Some([.. Points, new PlotPoint(label, x, y)], PlotStyle.MaximumPoints, nameof(Points))), Note);
    }

    /// <summary>Answers this map with a remark below it.</summary>
    /// <param name="note">The remark; not empty.</param>
    /// <returns>The new map.</returns>
    /// <exception cref="ArgumentException">The remark is empty, too long, or cannot be written as XML.</exception>
    public MapPlot WithNote(string note) => new(this, Limit, Points, Require.Text(note, nameof(note)));

    /// <summary>Answers this map with its numbers written in a style's culture.</summary>
    /// <param name="style">Whose separators to use; the axes' units stay.</param>
    /// <returns>The new map.</returns>
    /// <exception cref="ArgumentNullException">There is no style.</exception>
    public MapPlot With(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return new(this, Limit, Points, Note, style);
    }

    /// <summary>Draws the map.</summary>
    /// <returns>A self-contained SVG element that scales to the width it is given. The title is in it for assistive technology, not drawn.</returns>
    public string ToSvg() => Svg().ToString(SaveOptions.DisableFormatting);

    /// <inheritdoc/>
    public string ToHtml() => Figure.Html(Title, Svg(), Notes(), Data(), _style);

    /// <summary>Writes the data behind the map as comma-separated values (RFC 4180).</summary>
    /// <returns>
    /// A line of headings with the units, then a line a position along x, with a column a position along y. Numbers have a decimal point whatever the style,
    /// and up to eight digits; where there is no value, the field is empty.
    /// </returns>
    public string ToCsv() => Data().ToCsv();

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', [Title, .. Description(), .. Note is null ? Array.Empty<string>() : [Note]]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    private static double[] Grid(IReadOnlyList<double> positions, string argument)
    {
        double[] own = Require.Ascending(positions, argument);
        return own.Length <= MaximumGridPoints
            ? own
            : throw new ArgumentException($"{argument} has {own.Length} positions; at most {MaximumGridPoints} can be seen. Take a coarser grid.", argument);
    }

    private static void Inside(double position, IReadOnlyList<double> grid, string argument)
    {
        if (!(position >= grid[0] && position <= grid[^1]))
        {
            throw new ArgumentOutOfRangeException(
                argument,
                position,
                $"{argument} must lie on the map, from {grid[0]} to {grid[^1]}. Widen the grid or leave the point out.");
        }
    }

    private bool IsCovered(int i, int j) =>
        double.IsFinite(_values[i, j]) && double.IsFinite(_values[i + 1, j]) && double.IsFinite(_values[i, j + 1]) && double.IsFinite(_values[i + 1, j + 1]);

    private int CoveredCells() =>
        Enumerable.Range(0, Xs.Count - 1).Sum(i => Enumerable.Range(0, Ys.Count - 1).Count(j => IsCovered(i, j)));

    private bool IsPartial => CoveredCells() < (Xs.Count - 1) * (Ys.Count - 1);

    /// <summary>The least and the greatest value that is drawn.</summary>
    private (double Low, double High) DrawnRange()
    {
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        for (int i = 0; i < Xs.Count - 1; i++)
        {
            for (int j = 0; j < Ys.Count - 1; j++)
            {
                if (!IsCovered(i, j))
                {
                    continue;
                }

                foreach (double corner in (ReadOnlySpan<double>)[_values[i, j], _values[i + 1, j], _values[i, j + 1], _values[i + 1, j + 1]])
                {
                    low = Math.Min(low, corner);
                    high = Math.Max(high, corner);
                }
            }
        }

        return (low, high);
    }

    private XElement Svg()
    {
        var (low, high) = DrawnRange();
        double[] levels = NiceScale.Levels(low, high, PlotStyle.MapBands);
        var frame = new PlotFrame(X, Y, (Xs[0], Xs[^1]), (Ys[0], Ys[^1]), _style);
        var palette = PlotStyle.MapPalette(levels.Length - 1);
        frame.Model.PlotMargins = new OxyThickness(frame.LeftRoom, double.NaN, PlotFrame.RightRoom, double.NaN);
        frame.Model.PlotAreaBorderThickness = new OxyThickness(0);
        frame.Model.Axes.Add(new LinearColorAxis
        {
            Position = AxisPosition.Top,
            Title = PlotText.Wrap(Value.Title, PlotStyle.Width - 100),
            TitleColor = PlotStyle.Ink,
            TextColor = PlotStyle.Ink,
            TitleFontSize = PlotStyle.FontSize,
            AxisTitleDistance = 4,
            AxisDistance = frame.TitleRoom + 2,
            Palette = palette,
            Minimum = levels[0],
            Maximum = levels[^1],
            MajorStep = (levels[1] - levels[0]) * (levels.Length > 8 ? 2 : 1),
            MinorTickSize = 0,
            MajorTickSize = 12,
            TicklineColor = PlotStyle.Ink,
            LabelFormatter = PlotFrame.AxisNumber(_style),
        });

        frame.Model.Series.Add(new BandSeries(Xs, Ys, _values, levels, palette) { Title = IsPartial ? frame.KeyText("not covered") : null });
        double[] inner = levels[1..^1];
        if (inner.Length > 0)
        {
            frame.Model.Series.Add(Contours(inner, PlotStyle.MapInk, 0.8));
        }

        if (Limit is { } limit && limit.Value > low && limit.Value < high)
        {
            // White under the limit line parts it from the map's own contours on any colour.
            frame.Model.Series.Add(Contours([limit.Value], OxyColors.White, PlotStyle.LimitThickness + 3));
            frame.Model.Series.Add(Contours([limit.Value], PlotStyle.Limit, PlotStyle.LimitThickness + 0.6));
            frame.Model.Series.Add(new LineSeries { Title = frame.KeyText(limit.Label), Color = PlotStyle.Limit, StrokeThickness = PlotStyle.LimitThickness + 0.6 });
        }

        var marks = frame.AddPoints(Points, PlotStyle.MapInk);
        if (inner.Length > 0)
        {
            frame.Model.Annotations.Add(new ContourLabels(Xs, Ys, _values, inner, marks, _style));
        }

        frame.AddKey();
        return SvgDocument.Render(frame.Model, frame.Height + 60, Title, string.Join(' ', Description()), model => [PlotHover.Group(Places(model))]);
    }

    /// <summary>Areas around grid points, of a fine grid around evenly picked ones, with the value there.</summary>
    private IEnumerable<XElement> Places(PlotModel model)
    {
        const int AtMost = 11;
        int[] columns = PlotData.Picked(Xs.Count, AtMost);
        int[] rows = PlotData.Picked(Ys.Count, AtMost);
        for (int column = 0; column < columns.Length; column++)
        {
            var (left, right) = Around([.. columns.Select(i => model.DefaultXAxis.Transform(Xs[i]))], column);
            for (int row = 0; row < rows.Length; row++)
            {
                var (bottom, top) = Around([.. rows.Select(j => model.DefaultYAxis.Transform(Ys[j]))], row);
                double value = _values[columns[column], rows[row]];
                yield return PlotHover.Area(
                    new OxyRect(left, top, right - left, bottom - top),
                    $"{Figured(Xs[columns[column]], X)}, {Figured(Ys[rows[row]], Y)}: {(double.IsNaN(value) ? "not covered" : Figured(value, Value))}");
            }
        }

        foreach (PlotPoint point in Points)
        {
            yield return PlotHover.Area(
                new OxyRect(model.DefaultXAxis.Transform(point.X) - 8, model.DefaultYAxis.Transform(point.Y) - 8, 16, 16),
                $"{point.Label}: {Figured(point.X, X)}, {Figured(point.Y, Y)}");
        }

        static (double From, double To) Around(double[] places, int place) => (
            place == 0 ? places[0] : (places[place - 1] + places[place]) / 2,
            place == places.Length - 1 ? places[^1] : (places[place] + places[place + 1]) / 2);
    }

    private string Figured(double value, PlotAxis axis) => axis.Figure(PlotData.Figure(value, _style));

    private PlotData Data() => new(
    [
        PlotColumn.Of(X.Title, Xs),
        .. Ys.Select((y, j) => PlotColumn.Of(
            $"{Value.Title} at {Y.Figure(y.ToString("G8", CultureInfo.InvariantCulture))}",
            [.. Enumerable.Range(0, Xs.Count).Select(i => _values[i, j])])),
    ]);

    private ContourSeries Contours(double[] levels, OxyColor color, double thickness) => new()
    {
        ColumnCoordinates = [.. Xs],
        RowCoordinates = [.. Ys],
        Data = _values,
        ContourLevels = levels,
        Color = color,
        StrokeThickness = thickness,
        LineStyle = LineStyle.Solid,
    };

    private IEnumerable<string> Notes()
    {
        if (Limit is { } limit)
        {
            var (low, high) = DrawnRange();
            if (limit.Value >= high)
            {
                yield return $"{limit.Label}: above every value shown.";
            }
            else if (limit.Value <= low)
            {
                yield return $"{limit.Label}: below every value shown.";
            }
        }

        if (Note is not null)
        {
            yield return Note;
        }
    }

    private IEnumerable<string> Description()
    {
        var (low, high) = DrawnRange();
        yield return $"{Value.Title} over {X.Title} and {Y.Title}.";
        yield return $"Values from {_style.Number(low, "G4")} to {Value.Figure(_style.Number(high, "G4"))}, for {_style.Number(Xs[0], "G5")} to {X.Figure(_style.Number(Xs[^1], "G5"))} and {_style.Number(Ys[0], "G5")} to {Y.Figure(_style.Number(Ys[^1], "G5"))}.";
        if (IsPartial)
        {
            int cells = (Xs.Count - 1) * (Ys.Count - 1);
            yield return $"Not covered: {cells - CoveredCells()} of {cells} cells.";
        }

        if (Limit is { } limit)
        {
            string place = limit.Value >= high ? "above every value shown" : limit.Value <= low ? "below every value shown" : "crosses the map";
            yield return $"Limit, {limit.Label}: {Value.Figure(_style.Number(limit.Value, "G4"))}, {place}.";
        }

        foreach (var point in Points)
        {
            yield return $"Marked, {point.Label}: {X.Figure(_style.Number(point.X, "G5"))}, {Y.Figure(_style.Number(point.Y, "G4"))}.";
        }
    }
}
