using OxyPlot;
using OxyPlot.Annotations;

namespace FuelSizing.Interactive;

/// <summary>The names of a bar plot's rows, and the whiskers of its bars, over everything else.</summary>
/// <param name="names">Broken to the plot's width, each with the height at which its row starts.</param>
/// <param name="whiskers">Ends in the unit of the axis, and their height.</param>
internal sealed class BarRowMarks(IReadOnlyList<(string Text, double Top)> names, IReadOnlyList<(double Minimum, double Maximum, double Height)> whiskers) : Annotation
{
    /// <summary>Of a name from the plot's left edge.</summary>
    public const double Inset = 0;

    private const double WhiskerEnd = 4;

    public override OxyRect GetClippingRect() => PlotModel.PlotBounds;

    public override void Render(IRenderContext rc)
    {
        foreach (var (minimum, maximum, height) in whiskers)
        {
            var from = this.Transform(minimum, height);
            var to = this.Transform(maximum, height);
            Stroke(rc, from, to);
            Stroke(rc, new ScreenPoint(from.X, from.Y - WhiskerEnd), new ScreenPoint(from.X, from.Y + WhiskerEnd));
            Stroke(rc, new ScreenPoint(to.X, to.Y - WhiskerEnd), new ScreenPoint(to.X, to.Y + WhiskerEnd));
        }

        foreach (var (text, start) in names)
        {
            double top = this.Transform(0, start).Y;
            rc.DrawText(new ScreenPoint(PlotModel.PlotArea.Left + Inset, top), text, PlotStyle.Ink, PlotStyle.Font, PlotStyle.FontSize, FontWeights.Normal, 0, HorizontalAlignment.Left, VerticalAlignment.Top, null);
        }
    }

    private static void Stroke(IRenderContext rc, ScreenPoint from, ScreenPoint to) =>
        rc.DrawLine([from, to], PlotStyle.Ink, 1.6, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
}
