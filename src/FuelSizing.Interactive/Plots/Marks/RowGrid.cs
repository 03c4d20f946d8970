using OxyPlot;
using OxyPlot.Annotations;

namespace FuelSizing.Interactive;

/// <summary>Upright grid lines behind rows of bars, which leave out the rows' names.</summary>
/// <param name="texts">The names: from and to, in the unit of the upright axis, falling, and how far to the right they reach, in pixels.</param>
internal sealed class RowGrid(IReadOnlyList<(double From, double To, double Right)> texts) : Annotation
{
    public override void Render(IRenderContext rc)
    {
        OxyRect area = PlotModel.PlotArea;
        PlotModel.DefaultXAxis.GetTickValues(out _, out IList<double> ticks, out _);
        foreach (double x in ticks.Select(tick => PlotModel.DefaultXAxis.Transform(tick)).Where(x => x >= area.Left && x <= area.Right))
        {
            double from = area.Top;
            foreach (var text in texts.Where(text => x < text.Right))
            {
                Stroke(from, this.Transform(0, text.From).Y);
                from = this.Transform(0, text.To).Y;
            }

            Stroke(from, area.Bottom);
            void Stroke(double upper, double lower)
            {
                if (lower > upper)
                {
                    rc.DrawLine([new ScreenPoint(x, upper), new ScreenPoint(x, lower)], PlotStyle.Grid, 1, EdgeRenderingMode.PreferSharpness, null, LineJoin.Miter);
                }
            }
        }
    }
}
