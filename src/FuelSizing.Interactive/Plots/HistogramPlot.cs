using System.Xml.Linq;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How samples of one value are distributed: a histogram, with a limit and marks as upright lines.</summary>
/// <remarks>
/// Immutable: each <c>With…</c> method answers a new plot. No bar reaches over the limit; those beyond it are hatched, and
/// their share is written in the key.
/// </remarks>
/// <example>
/// <code>
/// var plot = new HistogramPlot("Duty cycle", new PlotAxis("Duty cycle", "%"), [81, 82.5, 83, 83.2, 84, 86])
///     .WithUpperLimit("limit 85 %", 85)
///     .WithMark("median", 83.1);
/// Console.WriteLine(plot.ToPlainText());
/// </code>
/// </example>
public sealed class HistogramPlot : IDisplayBlock
{
    private readonly TextStyle _style = TextStyle.Metric;
    private readonly double[] _sorted;
    private readonly bool _limitIsUpper;

    /// <summary>Creates a plot.</summary>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="x">What was sampled.</param>
    /// <param name="values">The samples, in any order; at least one, each finite.</param>
    /// <exception cref="ArgumentException">The title is empty, too long, or cannot be written as XML; or there are no samples.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A sample is not finite.</exception>
    public HistogramPlot(string title, PlotAxis x, IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(values);
        Title = Require.Text(title, nameof(title));
        X = x;
        if (values.Count == 0)
        {
            throw new ArgumentException("values is empty, so there is nothing to draw. Show a callout instead.", nameof(values));
        }

        _sorted = [.. values.Select(value => Require.Finite(value, nameof(values))).Order()];
        Marks = [];
    }

    private HistogramPlot(HistogramPlot from, PlotLimit? limit, bool limitIsUpper, IReadOnlyList<PlotLimit> marks, string? note, TextStyle? style = null)
    {
        _style = style ?? from._style;
        (Title, X, _sorted) = (from.Title, from.X, from._sorted);
        (Limit, _limitIsUpper, Marks, Note) = (limit, limitIsUpper, marks, note);
    }

    /// <summary>What the plot shows.</summary>
    public string Title { get; }

    /// <summary>What was sampled.</summary>
    public PlotAxis X { get; }

    /// <summary>How many samples.</summary>
    public int Samples => _sorted.Length;

    /// <summary>The limit, or <see langword="null"/>.</summary>
    public PlotLimit? Limit { get; }

    /// <summary>Marked values, such as percentiles.</summary>
    public IReadOnlyList<PlotLimit> Marks { get; }

    /// <summary>A remark below the plot, or <see langword="null"/>.</summary>
    public string? Note { get; }

    /// <summary>Share of the samples beyond the limit; a sample on it is not beyond. Zero without a limit.</summary>
    public Ratio Beyond => Ratio.FromDecimalFractions(Limit is null ? 0 : (double)_sorted.Count(IsBeyond) / Samples);

    /// <summary>Answers this plot with a limit that values must not be over, in place of any earlier limit.</summary>
    /// <param name="label">What is limited; not empty, and short, for it stands above the plot.</param>
    /// <param name="value">The limit in the unit of the axis; finite.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentException">The label is empty, too long, or cannot be written as XML.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public HistogramPlot WithUpperLimit(string label, double value) => new(this, new PlotLimit(label, value), true, Marks, Note);

    /// <summary>Answers this plot with a limit that values must not be under, in place of any earlier limit.</summary>
    /// <param name="label">What is limited; not empty, and short, for it stands above the plot.</param>
    /// <param name="value">The limit in the unit of the axis; finite.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentException">The label is empty, too long, or cannot be written as XML.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public HistogramPlot WithLowerLimit(string label, double value) => new(this, new PlotLimit(label, value), false, Marks, Note);

    /// <summary>Answers this plot with one more marked value; at most 4.</summary>
    /// <param name="label">What it is; not empty, and short, for it stands above the plot.</param>
    /// <param name="value">The value in the unit of the axis; finite.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentException">The label is empty, or the plot already has four marks.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public HistogramPlot WithMark(string label, double value) =>
        new(this, Limit, _limitIsUpper, Array.AsReadOnly(Require.Some([.. Marks, new PlotLimit(label, value)], PlotStyle.MaximumLimits, nameof(Marks))), Note);

    /// <summary>Answers this plot with a remark below it.</summary>
    /// <param name="note">The remark; not empty.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentException">The remark is empty, too long, or cannot be written as XML.</exception>
    public HistogramPlot WithNote(string note) => new(this, Limit, _limitIsUpper, Marks, Require.Text(note, nameof(note)));

    /// <summary>Answers this plot with its numbers written in a style's culture.</summary>
    /// <param name="style">Whose separators to use; the axes' units stay.</param>
    /// <returns>The new plot.</returns>
    /// <exception cref="ArgumentNullException">There is no style.</exception>
    public HistogramPlot With(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return new(this, Limit, _limitIsUpper, Marks, Note, style);
    }

    /// <summary>Draws the plot.</summary>
    /// <returns>A self-contained SVG element that scales to the width it is given. The title is in it for assistive technology, not drawn.</returns>
    public string ToSvg() => Svg().ToString(SaveOptions.DisableFormatting);

    /// <inheritdoc/>
    public string ToHtml() => Figure.Html(Title, Svg(), Notes(), Data(), _style);

    /// <summary>Writes the data behind the plot as comma-separated values (RFC 4180).</summary>
    /// <returns>A line of headings with the units, then a line a bar: its ends, its samples and their share. Numbers have a decimal point whatever the style, and up to eight digits.</returns>
    public string ToCsv() => Data().ToCsv();

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', [Title, .. Description(), .. Note is null ? Array.Empty<string>() : [Note]]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    private bool IsBeyond(double value) => _limitIsUpper ? value > Limit!.Value : value < Limit!.Value;

    private bool LimitIsNear => Limit is not null && PlotFrame.IsNear(Limit.Value, PlotFrame.Padded(_sorted, 0));

    private string Side => _limitIsUpper ? "over" : "under";

    private XElement Svg()
    {
        (double From, double To, double Share)[] bars = [.. Bins.All.Select(bin => (bin.From, bin.To, 100.0 * bin.Samples / Samples))];
        var range = PlotFrame.Padded(
            [bars[0].From, bars[^1].To, .. Marks.Select(mark => mark.Value), .. LimitIsNear ? [Limit!.Value] : Array.Empty<double>()], 0.04);
        var frame = new PlotFrame(X, new PlotAxis("Share of samples", "%"), range, (0, bars.Max(bar => bar.Share) * 1.08), _style);
        BoxSeries Bars(bool beyond, int look, string? name) => new(
            [.. bars.Where(bar => bar.Share > 0 && beyond == (LimitIsNear && IsBeyond((bar.From + bar.To) / 2))).Select(bar => (bar.From, bar.To, 0.0, bar.Share))], look)
        {
            Title = name is null ? null : frame.KeyText(name),
        };
        if (LimitIsNear)
        {
            frame.Model.Series.Add(Bars(false, 0, "within the limit"));
            frame.Model.Series.Add(Bars(true, 1, $"{Side} the limit: {_style.Chance(Beyond)} of the samples"));
        }
        else
        {
            frame.Model.Series.Add(Bars(false, 0, null));
        }

        double room = frame.AddFlags(
        [
            .. Marks.Select(mark => new Flag(mark.Label, mark.Value, false)),
            .. LimitIsNear ? [new Flag(Limit!.Label, Limit.Value, true)] : Array.Empty<Flag>(),
        ]);
        frame.AddKey();
        return SvgDocument.Render(frame.Model, frame.Height + room, Title, string.Join(' ', Description()), model => [PlotHover.Group(bars.Select(bar =>
        {
            double left = model.DefaultXAxis.Transform(bar.From);
            return PlotHover.Area(
                new OxyPlot.OxyRect(left, model.PlotArea.Top, model.DefaultXAxis.Transform(bar.To) - left, model.PlotArea.Height),
                $"{PlotData.Figure(bar.From, _style)} to {X.Figure(PlotData.Figure(bar.To, _style))}: {PlotData.Figure(bar.Share, _style)} % of the samples");
        }))]);
    }

    private HistogramBins Bins => new(_sorted, LimitIsNear ? Limit!.Value : null, _limitIsUpper);

    private PlotData Data()
    {
        (double From, double To, int Samples)[] bins = [.. Bins.All];
        return new(
        [
            PlotColumn.Of(X.Heading($"{X.Label} from"), [.. bins.Select(bin => bin.From)]),
            PlotColumn.Of(X.Heading($"{X.Label} to"), [.. bins.Select(bin => bin.To)]),
            PlotColumn.Of("Samples", [.. bins.Select(bin => (double)bin.Samples)]),
            PlotColumn.Of("Share of samples (%)", [.. bins.Select(bin => 100.0 * bin.Samples / Samples)]),
        ]);
    }

    private IEnumerable<string> Notes()
    {
        if (Limit is { } limit && !LimitIsNear)
        {
            yield return $"{limit.Label}: far {(limit.Value > _sorted[^1] ? "above" : "below")} every value shown.";
        }

        if (Note is not null)
        {
            yield return Note;
        }
    }

    private IEnumerable<string> Description()
    {
        yield return $"Share of {_style.Count(Samples)} samples over {X.Title}, from {_style.Number(_sorted[0], "G4")} to {_style.Number(_sorted[^1], "G4")}.";
        foreach (PlotLimit mark in Marks)
        {
            yield return $"Marked, {mark.Label}: {X.Figure(_style.Number(mark.Value, "G4"))}.";
        }

        if (Limit is { } limit)
        {
            yield return $"Limit, {limit.Label}: {X.Figure(_style.Number(limit.Value, "G4"))}; {_style.Chance(Beyond)} of the samples are {Side} it.";
        }
    }
}
