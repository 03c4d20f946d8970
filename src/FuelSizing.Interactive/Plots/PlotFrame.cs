using System.Globalization;
using FuelSizing.Quantities;
using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Legends;
using OxyPlot.Series;

namespace FuelSizing.Interactive;

/// <summary>The parts all plots share: axes, key, marked points.</summary>
internal sealed class PlotFrame
{
    /// <summary>Room to the right of the plot, for the end of a number or the letters of lines.</summary>
    public const double RightRoom = 22;

    /// <summary>Plots of numbers up to six characters have one left edge: stacked, their axes line up.</summary>
    private const double LeftRoomAtLeast = 60;
    private const double LeftRoomOfRows = 12;

    private readonly double _height;
    private double _keyLines;

    public PlotFrame(PlotAxis x, PlotAxis y, (double Low, double High) xRange, (double Low, double High) yRange, TextStyle style)
        : this(xRange, yRange, PlotStyle.PlotHeight)
    {
        double step = NiceScale.Step(yRange.High - yRange.Low, (int)((PlotStyle.PlotHeight - 60) / 34));
        ValueTitle = PlotText.Wrap(y.Title, PlotStyle.Width - 20);
        TitleRoom = (PlotText.LineCount(ValueTitle) * PlotStyle.LineHeight) + 13;
        LeftRoom = Math.Max(LeftRoomAtLeast, WidestNumber(yRange, step, style) + 12);
        Model.Axes.Add(Axis(AxisPosition.Bottom, x, xRange, PlotStyle.Width - 120, style));
        LinearAxis upright = Axis(AxisPosition.Left, y, yRange, 0, style);
        upright.Title = null;
        upright.MajorStep = step;
        upright.TickStyle = TickStyle.None;
        upright.MajorTickSize = 0;
        Model.Axes.Add(upright);
        Model.Axes[0].MajorGridlineStyle = LineStyle.None;
        Model.PlotMargins = new OxyThickness(LeftRoom, TitleRoom, RightRoom, double.NaN);
        Model.Annotations.Add(new ValueTitleMark(ValueTitle, 11));
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
            Background = OxyColors.Undefined,
            TextColor = PlotStyle.Ink,
            PlotAreaBorderColor = PlotStyle.Ink,
            PlotAreaBorderThickness = new OxyThickness(0, 0, 0, 1.4),
            Padding = new OxyThickness(0, 4, 0, 4),
        };
    }

    public PlotModel Model { get; }

    public (double Low, double High) XRange { get; }

    public (double Low, double High) YRange { get; }

    /// <summary>What the upright axis measures, which stands above it and reads without turning one's head.</summary>
    public string ValueTitle { get; } = "";

    public double TitleRoom { get; }

    public double LeftRoom { get; private init; }

    public double Height => _height + TitleRoom + _keyLines;

    /// <summary>A frame without a vertical axis, for rows that carry their own names.</summary>
    /// <param name="x">The horizontal axis.</param>
    /// <param name="xRange">Its range.</param>
    /// <param name="height">Of all rows, in pixels; they lie between 0 and minus this.</param>
    /// <param name="style">Of its numbers.</param>
    public static PlotFrame OfRows(PlotAxis x, (double Low, double High) xRange, double height, TextStyle style)
    {
        const double Numbers = 42;
        var axis = Axis(AxisPosition.Bottom, x, xRange, PlotStyle.Width - 60, style);
        axis.MajorGridlineStyle = LineStyle.None;
        var frame = new PlotFrame(xRange, (-height, 0), height + Numbers + (PlotText.LineCount(axis.Title) * PlotStyle.FontSize * 1.3)) { LeftRoom = LeftRoomOfRows };
        frame.Model.Axes.Add(axis);
        frame.Model.Axes.Add(new LinearAxis { Position = AxisPosition.Left, Minimum = -height, Maximum = 0, IsAxisVisible = false });
        return frame;
    }

    /// <summary>Stands upright lines on the plot, each with its label on a pole above it, or in the key if it is long.</summary>
    /// <param name="flags">The lines.</param>
    /// <param name="broken">Where a line would strike through a text: from and to, in the unit of the upright axis, falling, and how far to the right it reaches, in pixels.</param>
    /// <returns>The height that the labels take above the plot.</returns>
    public double AddFlags(IReadOnlyList<Flag> flags, IReadOnlyList<(double From, double To, double Right)>? broken = null)
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
        var places = FlagLayout.Of(
            [.. flags.Select(flag => (LeftRoom + (Share(flag.Value, XRange) * (PlotStyle.Width - LeftRoom - RightRoom)), flag.Label))]);
        double room = places.Count == 0 ? 6 : (FlagMarks.LaneHeight * (places.Max(place => place.Lane) + 1)) + 4;
        Model.PlotMargins = new OxyThickness(LeftRoom, room + TitleRoom, RightRoom, double.NaN);
        foreach (ValueTitleMark title in Model.Annotations.OfType<ValueTitleMark>())
        {
            title.Above = room + 4;
        }

        Model.Annotations.Add(new FlagMarks(flags, places, broken ?? []));
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
        _keyLines += (PlotText.LineCount(wrapped) * PlotStyle.LineHeight) + 4;
        return wrapped;
    }

    public void AddKey() => Model.Legends.Add(new Legend
    {
        LegendPlacement = LegendPlacement.Outside,
        LegendPosition = LegendPosition.TopLeft,
        LegendOrientation = LegendOrientation.Vertical,
        AllowUseFullExtent = true,
        LegendSymbolLength = 52,
        LegendSymbolMargin = 8,
        LegendPadding = 0,
        LegendMargin = 2,
        LegendLineSpacing = 4,
        LegendFontSize = PlotStyle.FontSize,
        LegendTextColor = PlotStyle.Ink,
    });

    /// <summary>Marks and names points.</summary>
    public PointMarks AddPoints(IReadOnlyList<PlotPoint> points, OxyColor ink)
    {
        var marks = new PointMarks(points, ink);
        Model.Annotations.Add(marks);
        return marks;
    }

    /// <summary>Whether a value lies near enough to a range to be drawn with it; one far off would squeeze all else together.</summary>
    public static bool IsNear(double value, (double Low, double High) range) => Share(value, range) is > -1 and < 2;

    public static double Share(double value, (double Low, double High) range) => (value - range.Low) / (range.High - range.Low);

    /// <summary>A number on an axis, with the sign that all other text has.</summary>
    public static Func<double, string> AxisNumber(TextStyle style) => value => style.Number(value, "#,0.######");

    private static double WidestNumber((double Low, double High) range, double step, TextStyle style)
    {
        var number = AxisNumber(style);
        double widest = 0;
        for (double at = Math.Ceiling(range.Low / step); at <= range.High / step; at++)
        {
            widest = Math.Max(widest, PlotText.WidthOf(number(at * step)));
        }

        return widest;
    }

    private static LinearAxis Axis(AxisPosition position, PlotAxis axis, (double Low, double High) range, double titleRoom, TextStyle style) => new()
    {
        Position = position,
        Title = titleRoom > 0 ? PlotText.Wrap(axis.Title, titleRoom) : null,
        TitleFontSize = PlotStyle.FontSize,
        AxisTitleDistance = 6,
        Minimum = range.Low,
        Maximum = range.High,
        MajorGridlineStyle = LineStyle.Solid,
        MajorGridlineColor = PlotStyle.Grid,
        MajorGridlineThickness = 1,
        MinorTickSize = 0,
        MajorTickSize = 5,
        IntervalLength = 60,
        TickStyle = TickStyle.Outside,
        TicklineColor = PlotStyle.Ink,
        AxislineColor = PlotStyle.Ink,
        LabelFormatter = AxisNumber(style),
    };
}
