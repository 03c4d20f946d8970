using OxyPlot;
using OxyPlot.Annotations;

namespace FuelSizing.Interactive;

/// <summary>Upright lines across the plot with their labels above it.</summary>
/// <param name="flags">The lines.</param>
/// <param name="places">Of their labels.</param>
/// <param name="broken">Texts that a line must not strike through: from and to, in the unit of the upright axis, falling, and how far to the right they reach, in pixels.</param>
internal sealed class FlagMarks(IReadOnlyList<Flag> flags, IReadOnlyList<FlagPlace> places, IReadOnlyList<(double From, double To, double Right)> broken) : Annotation
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
            double from = top;
            foreach (var text in broken.Where(text => x < text.Right))
            {
                Stroke(from, this.Transform(0, text.From).Y);
                from = this.Transform(0, text.To).Y;
            }

            Stroke(from, area.Bottom);
            void Stroke(double upper, double lower)
            {
                if (lower > upper)
                {
                    rc.DrawLine([new ScreenPoint(x, lower), new ScreenPoint(x, upper)], flags[i].Color, flags[i].Thickness, EdgeRenderingMode.PreferGeometricAccuracy, dash, LineJoin.Miter);
                }
            }

            rc.DrawText(
                new ScreenPoint(x + (places[i].ToTheRight ? FlagLayout.Gap : -FlagLayout.Gap), top),
                flags[i].Label,
                PlotStyle.Ink,
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
