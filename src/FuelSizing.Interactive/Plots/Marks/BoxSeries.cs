using OxyPlot;
using OxyPlot.Series;

namespace FuelSizing.Interactive;

/// <summary>Rectangles of one look: the bars of a histogram or of named rows.</summary>
/// <param name="boxes">Sides in the units of the axes.</param>
/// <param name="look">Place in the styles for bars.</param>
internal sealed class BoxSeries(IReadOnlyList<(double Left, double Right, double Bottom, double Top)> boxes, int look) : XYAxisSeries
{
    public override void Render(IRenderContext rc)
    {
        foreach (var (left, right, bottom, top) in boxes)
        {
            var a = this.Transform(left, bottom);
            var b = this.Transform(right, top);
            Draw(rc, new OxyRect(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Abs(b.X - a.X), Math.Abs(b.Y - a.Y)));
        }
    }

    public override void RenderLegend(IRenderContext rc, OxyRect legendBox) => Draw(rc, legendBox.Deflate(new OxyThickness(4, 2, 4, 2)));

    protected override void UpdateMaxMin()
    {
        base.UpdateMaxMin();
        if (boxes.Count > 0)
        {
            (MinX, MaxX) = (boxes.Min(box => box.Left), boxes.Max(box => box.Right));
            (MinY, MaxY) = (boxes.Min(box => box.Bottom), boxes.Max(box => box.Top));
        }
    }

    protected override void UpdateData()
    {
    }

    private void Draw(IRenderContext rc, OxyRect box)
    {
        var (fill, edge, hatched) = PlotStyle.ForBar(look);
        rc.DrawRectangle(box, fill, OxyColors.Undefined, 0, EdgeRenderingMode.PreferGeometricAccuracy);
        if (hatched)
        {
            Hatching.Draw(rc, box, edge, PlotStyle.BarHatchSpacing);
        }

        rc.DrawRectangle(box, OxyColors.Undefined, edge, 1.2, EdgeRenderingMode.PreferGeometricAccuracy);
    }
}
