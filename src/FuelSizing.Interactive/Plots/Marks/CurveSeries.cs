using OxyPlot;
using OxyPlot.Series;

namespace FuelSizing.Interactive;

/// <summary>A line of a plot, or readings: how it is drawn on the plot and in the key.</summary>
/// <remarks>
/// A dashed line ends where its data ends, not where its last dash happens to: both ends carry a piece of full line. Readings are not drawn here but written
/// as one path (<see cref="ReadingMarks"/>); here they have their place in the key alone.
/// </remarks>
/// <param name="letter">Written beside the line and its entry in the key; none if the line needs none.</param>
/// <param name="dash">Strokes and gaps in pixels; empty of a full line.</param>
/// <param name="readings">The readings; none of a line.</param>
internal sealed class CurveSeries(string letter, double[] dash, ReadingMarks? readings = null) : LineSeries
{
    private const double EndPiece = 3;

    public string Letter => letter;

    public bool IsReadings => readings is not null;

    public override void Render(IRenderContext rc)
    {
        if (readings is not null)
        {
            return;
        }

        foreach (List<ScreenPoint> piece in Pieces())
        {
            if (piece.Count == 1)
            {
                // A lone value between two gaps has no length; a short level stroke shows it.
                Stroke(rc, [new(piece[0].X - EndPiece, piece[0].Y), new(piece[0].X + EndPiece, piece[0].Y)], []);
                continue;
            }

            Stroke(rc, piece, dash);
            if (dash.Length > 0)
            {
                Stroke(rc, [piece[0], Towards(piece[0], piece)], []);
                piece.Reverse();
                Stroke(rc, [piece[0], Towards(piece[0], piece)], []);
            }
        }
    }

    public override void RenderLegend(IRenderContext rc, OxyRect legendBox)
    {
        double middle = legendBox.Center.Y;
        if (readings is not null)
        {
            readings.KeyAt = new ScreenPoint(legendBox.Left + 18, middle);
            return;
        }

        Stroke(rc, [new(legendBox.Left, middle), new(legendBox.Right - (letter.Length > 0 ? 14 : 0), middle)], dash);
        if (letter.Length > 0)
        {
            rc.DrawText(new(legendBox.Right, middle), letter, PlotStyle.Ink, PlotStyle.Font, PlotStyle.FontSize, FontWeights.Bold, 0, HorizontalAlignment.Right, VerticalAlignment.Middle, null);
        }
    }

    /// <summary>The pieces between gaps, on the screen.</summary>
    private IEnumerable<List<ScreenPoint>> Pieces()
    {
        List<ScreenPoint> piece = [];
        foreach (DataPoint point in Points)
        {
            if (double.IsFinite(point.Y))
            {
                piece.Add(this.Transform(point.X, point.Y));
            }
            else if (piece.Count > 0)
            {
                yield return piece;
                piece = [];
            }
        }

        if (piece.Count > 0)
        {
            yield return piece;
        }
    }

    /// <summary>A point a little along the line from its end.</summary>
    private static ScreenPoint Towards(ScreenPoint end, List<ScreenPoint> piece)
    {
        ScreenPoint next = piece.Find(point => point.DistanceTo(end) > 0);
        double away = next.DistanceTo(end);
        double share = away > EndPiece ? EndPiece / away : 1;
        return piece.Exists(point => point.DistanceTo(end) > 0)
            ? new(end.X + (share * (next.X - end.X)), end.Y + (share * (next.Y - end.Y)))
            : new(end.X + EndPiece, end.Y);
    }

    private void Stroke(IRenderContext rc, List<ScreenPoint> points, double[] strokes) =>
        rc.DrawLine(points, Color, StrokeThickness, EdgeRenderingMode.PreferGeometricAccuracy, strokes.Length > 0 ? strokes : null, LineJoin.Round);
}
