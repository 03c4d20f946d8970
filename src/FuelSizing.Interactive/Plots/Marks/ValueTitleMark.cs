using OxyPlot;
using OxyPlot.Annotations;

namespace FuelSizing.Interactive;

/// <summary>What the upright axis measures, written level above it.</summary>
internal sealed class ValueTitleMark(string title, double above) : Annotation
{
    /// <summary>How far over the plot it ends, in pixels.</summary>
    public double Above { get; set; } = above;

    public override OxyRect GetClippingRect() => PlotModel.PlotBounds;

    public override void Render(IRenderContext rc)
    {
        string[] lines = title.Split('\n');
        for (int line = 0; line < lines.Length; line++)
        {
            rc.DrawText(
                new ScreenPoint(4, PlotModel.PlotArea.Top - Above - ((lines.Length - 1 - line) * PlotStyle.LineHeight)),
                lines[line],
                PlotStyle.Ink,
                PlotStyle.Font,
                PlotStyle.FontSize,
                FontWeights.Normal,
                0,
                HorizontalAlignment.Left,
                VerticalAlignment.Bottom,
                null);
        }
    }
}
