using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>Diagonal strokes, which tell an area apart without colour.</summary>
internal static class Hatching
{
    /// <summary>Strokes at even distance over the whole picture, cut to one rectangle.</summary>
    public static void Draw(IRenderContext rc, OxyRect box, OxyColor color, double spacing)
    {
        for (double sum = Math.Ceiling((box.Left + box.Top) / spacing) * spacing; sum < box.Right + box.Bottom; sum += spacing)
        {
            double fromX = Math.Max(box.Left, sum - box.Bottom);
            double toX = Math.Min(box.Right, sum - box.Top);
            if (toX > fromX)
            {
                rc.DrawLine([new ScreenPoint(fromX, sum - fromX), new ScreenPoint(toX, sum - toX)], color, 1, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
            }
        }
    }
}
