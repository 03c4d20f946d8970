using OxyPlot;
using OxyPlot.Annotations;

namespace FuelSizing.Interactive;

/// <summary>Upright lines across the plot with their labels above it.</summary>
internal sealed class FlagMarks(IReadOnlyList<Flag> flags, IReadOnlyList<FlagPlace> places) : Annotation
{
    public const double LaneHeight = 20;

    /// <summary>The labels stand outside the plot's border.</summary>
    public override OxyRect GetClippingRect() => PlotModel.PlotBounds;

    public override void Render(IRenderContext rc)
    {
        var area = PlotModel.PlotArea;
        for (int i = 0; i < flags.Count; i++)
        {
            double x = this.Transform(flags[i].Value, 0).X;
            double top = area.Top - ((places[i].Lane + 1) * LaneHeight) + 2;
            double[]? dash = flags[i].IsLimit ? null : [5, 3];
            rc.DrawLine([new ScreenPoint(x, area.Bottom), new ScreenPoint(x, top)], flags[i].Color, flags[i].Thickness, EdgeRenderingMode.PreferGeometricAccuracy, dash, LineJoin.Miter);
            rc.DrawText(
                new ScreenPoint(x + (places[i].ToTheRight ? FlagLayout.Gap : -FlagLayout.Gap), top),
                flags[i].Label,
                flags[i].Color,
                PlotStyle.Font,
                PlotStyle.FontSize,
                FontWeights.Bold,
                0,
                places[i].ToTheRight ? HorizontalAlignment.Left : HorizontalAlignment.Right,
                VerticalAlignment.Top,
                null);
        }
    }
}
