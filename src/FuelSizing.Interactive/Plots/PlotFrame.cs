using System.Globalization;
using FuelSizing.Quantities;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Legends;
using OxyPlot.Series;

namespace FuelSizing.Interactive;

/// <summary>The parts all plots share: axes, key, marked points.</summary>
internal sealed class PlotFrame
{
    /// <summary>Room for the numbers and the title of a vertical axis, where it must be known before the plot is laid out.</summary>
    private const double AxisRoom = 62;
    private const double EdgeRoom = 16;

    private readonly double _height;
    private int _keyLines;

    public PlotFrame(PlotAxis x, PlotAxis y, (double Low, double High) xRange, (double Low, double High) yRange, TextStyle style)
        : this(xRange, yRange, PlotStyle.PlotHeight)
    {
        Model.Axes.Add(Axis(AxisPosition.Bottom, x, xRange, PlotStyle.Width - 120, style));
        Model.Axes.Add(Axis(AxisPosition.Left, y, yRange, PlotStyle.PlotHeight - 60, style));
    }

    private PlotFrame((double Low, double High) xRange, (double Low, double High) yRange, double height)
    {
        _height = height;
        XRange = xRange;
        YRange = yRange;
        Model = new PlotModel
        {
            Culture = CultureInfo.InvariantCulture,
            DefaultFont = PlotStyle.Font,
            DefaultFontSize = PlotStyle.FontSize,
            Background = OxyColors.White,
            TextColor = PlotStyle.Ink,
            PlotAreaBorderColor = PlotStyle.Muted,
            PlotAreaBorderThickness = new OxyThickness(1),
            Padding = new OxyThickness(4, 6, 14, 4),
        };
    }

    public PlotModel Model { get; }

    public (double Low, double High) XRange { get; }

    public (double Low, double High) YRange { get; }

    public double Height => _height + (_keyLines * PlotStyle.FontSize * 1.5);

    /// <summary>A frame without a vertical axis, for rows that carry their own names.</summary>
    /// <param name="x">The horizontal axis.</param>
    /// <param name="xRange">Its range.</param>
    /// <param name="height">Of all rows, in pixels; they lie between 0 and minus this.</param>
    /// <param name="style">Of its numbers.</param>
    public static PlotFrame OfRows(PlotAxis x, (double Low, double High) xRange, double height, TextStyle style)
    {
        const double Numbers = 42;
        var axis = Axis(AxisPosition.Bottom, x, xRange, PlotStyle.Width - 60, style);
        var frame = new PlotFrame(xRange, (-height, 0), height + Numbers + (PlotText.LineCount(axis.Title) * PlotStyle.FontSize * 1.3));
        frame.Model.Axes.Add(axis);
        frame.Model.Axes.Add(new LinearAxis { Position = AxisPosition.Left, Minimum = -height, Maximum = 0, IsAxisVisible = false });
        return frame;
    }

    /// <summary>Stands upright lines on the plot, each with its label on a pole above it, or in the key if it is long.</summary>
    /// <returns>The height that the labels take above the plot.</returns>
    public double AddFlags(IReadOnlyList<Flag> flags)
    {
        foreach (Flag flag in flags.Where(flag => flag.Label.Length > PlotStyle.LongestLimitLabel))
        {
            Model.Series.Add(new LineSeries
            {
                Title = KeyText(flag.Label),
                Color = flag.Color,
                StrokeThickness = flag.Thickness,
                LineStyle = flag.IsLimit ? LineStyle.Solid : LineStyle.Dash,
            });
        }

        flags = [.. flags.Select(flag => flag.Label.Length > PlotStyle.LongestLimitLabel ? flag with { Label = "" } : flag)];
        double left = Model.Axes.Any(axis => axis.Position == AxisPosition.Left && axis.IsAxisVisible) ? AxisRoom : EdgeRoom;
        var places = FlagLayout.Of(
            [.. flags.Select(flag => (left + (Share(flag.Value, XRange) * (PlotStyle.Width - left - EdgeRoom)), flag.Label))]);
        double room = places.Count == 0 ? 6 : (FlagMarks.LaneHeight * (places.Max(place => place.Lane) + 1)) + 4;
        Model.Padding = new OxyThickness(0, 4, 0, 4);
        Model.PlotMargins = new OxyThickness(left, room, EdgeRoom, double.NaN);
        Model.Annotations.Add(new FlagMarks(flags, places));
        return room;
    }

    /// <summary>The range of some values with a margin, so that marks at the edge are not cut.</summary>
    public static (double Low, double High) Padded(IEnumerable<double> values, double share)
    {
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        foreach (double value in values.Where(double.IsFinite))
        {
            low = Math.Min(low, value);
            high = Math.Max(high, value);
        }

        double span = high - low;
        double pad = span > 0 ? span * share : Math.Max(Math.Abs(low) * 0.1, 1);
        return (low - pad, high + pad);
    }

    /// <summary>Breaks a key entry to the plot's width and makes room for it.</summary>
    public string KeyText(string text)
    {
        string wrapped = PlotText.Wrap(text, PlotStyle.Width - 100);
        _keyLines += PlotText.LineCount(wrapped);
        return wrapped;
    }

    public void AddKey() => Model.Legends.Add(new Legend
    {
        LegendPlacement = LegendPlacement.Outside,
        LegendPosition = LegendPosition.TopLeft,
        LegendOrientation = LegendOrientation.Vertical,
        AllowUseFullExtent = true,
        LegendSymbolLength = 46,
        LegendSymbolMargin = 8,
        LegendPadding = 0,
        LegendMargin = 2,
        LegendLineSpacing = 6,
        LegendFontSize = PlotStyle.FontSize,
        LegendTextColor = PlotStyle.Ink,
    });

    /// <summary>Marks and names points.</summary>
    public PointMarks AddPoints(IReadOnlyList<PlotPoint> points)
    {
        var marks = new PointMarks(points);
        Model.Annotations.Add(marks);
        return marks;
    }

    public static TextAnnotation Label(string text, DataPoint at, ScreenVector offset, HorizontalAlignment horizontal, VerticalAlignment vertical, OxyColor color) => new()
    {
        Text = text,
        TextPosition = at,
        Offset = offset,
        TextHorizontalAlignment = horizontal,
        TextVerticalAlignment = vertical,
        TextColor = color,
        FontWeight = FontWeights.Bold,
        Stroke = OxyColors.Undefined,
        Background = OxyColors.Undefined,
        Padding = new OxyThickness(0),
        ClipByXAxis = false,
        ClipByYAxis = false,
    };

    /// <summary>Whether a value lies near enough to a range to be drawn with it; one far off would squeeze all else together.</summary>
    public static bool IsNear(double value, (double Low, double High) range) => Share(value, range) is > -1 and < 2;

    public static double Share(double value, (double Low, double High) range) => (value - range.Low) / (range.High - range.Low);

    /// <summary>A number on an axis, with the sign that all other text has.</summary>
    public static Func<double, string> AxisNumber(TextStyle style) => value => style.Number(value, "#,0.######");

    private static LinearAxis Axis(AxisPosition position, PlotAxis axis, (double Low, double High) range, double titleRoom, TextStyle style) => new()
    {
        Position = position,
        Title = PlotText.Wrap(axis.Title, titleRoom),
        TitleFontSize = PlotStyle.FontSize,
        AxisTitleDistance = 6,
        Minimum = range.Low,
        Maximum = range.High,
        MajorGridlineStyle = LineStyle.Solid,
        MajorGridlineColor = PlotStyle.Grid,
        MajorGridlineThickness = 1,
        MinorTickSize = 0,
        MajorTickSize = 5,
        IntervalLength = position == AxisPosition.Left ? 34 : 60,
        TickStyle = TickStyle.Outside,
        TicklineColor = PlotStyle.Muted,
        AxislineColor = PlotStyle.Muted,
        LabelFormatter = AxisNumber(style),
    };
}
