using System.Globalization;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Legends;

namespace FuelSizing.Interactive;

/// <summary>The parts all plots share: axes, key, marked points.</summary>
internal sealed class PlotFrame
{
    private int _keyLines;

    public PlotFrame(PlotAxis x, PlotAxis y, (double Low, double High) xRange, (double Low, double High) yRange)
    {
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
        Model.Axes.Add(Axis(AxisPosition.Bottom, x, xRange, PlotStyle.Width - 120));
        Model.Axes.Add(Axis(AxisPosition.Left, y, yRange, PlotStyle.PlotHeight - 60));
    }

    public PlotModel Model { get; }

    public (double Low, double High) XRange { get; }

    public (double Low, double High) YRange { get; }

    public double Height => PlotStyle.PlotHeight + (_keyLines * PlotStyle.FontSize * 1.5);

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

    public static double Share(double value, (double Low, double High) range) => (value - range.Low) / (range.High - range.Low);

    private static LinearAxis Axis(AxisPosition position, PlotAxis axis, (double Low, double High) range, double titleRoom) => new()
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
        StringFormat = "#,0.######",
    };
}
