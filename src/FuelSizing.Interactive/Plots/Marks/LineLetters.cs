using OxyPlot;
using OxyPlot.Annotations;

namespace FuelSizing.Interactive;

/// <summary>Each line's letter at its right end: beside the plot where the line reaches its edge, else next to the line's last point.</summary>
/// <remarks>Lines that lie on one another are then still told apart, in grey and without markers.</remarks>
internal sealed class LineLetters : Annotation
{
    private const double Apart = 14;
    private const double NearEdge = 24;

    private readonly List<OxyRect> _taken = [];

    /// <summary>The room that letters inside the plot take.</summary>
    public IReadOnlyList<OxyRect> Taken => _taken;

    public override OxyRect GetClippingRect() => PlotModel.PlotBounds;

    public override void Render(IRenderContext rc)
    {
        _taken.Clear();
        OxyRect area = PlotModel.PlotArea;
        List<(string Letter, double Y)> beside = [];
        foreach (CurveSeries series in PlotModel.Series.OfType<CurveSeries>().Where(series => series.Letter.Length > 0 && !series.IsReadings))
        {
            int last = series.Points.FindLastIndex(point => double.IsFinite(point.Y));
            if (last < 0)
            {
                continue;
            }

            ScreenPoint end = this.Transform(series.Points[last].X, series.Points[last].Y);
            ScreenPoint rightmost = series.Points.Where(point => double.IsFinite(point.Y)).Select(point => this.Transform(point.X, point.Y)).MaxBy(point => point.X);
            end = rightmost.X > end.X ? rightmost : end;
            if (end.X > area.Right - NearEdge)
            {
                beside.Add((series.Letter, end.Y));
                continue;
            }

            OxyRect box = new(end.X + 4, end.Y - (Apart / 2), 11, Apart);
            while (_taken.Exists(other => other.Left < box.Right && box.Left < other.Right && other.Top < box.Bottom && box.Top < other.Bottom))
            {
                box = new(box.Left + 12, box.Top, box.Width, box.Height);
            }

            _taken.Add(box);
            Write(rc, series.Letter, box.Left, end.Y);
        }

        double[] places = Spread([.. beside.Select(one => one.Y)], area.Top + (Apart / 2), area.Bottom - (Apart / 2));
        for (int i = 0; i < beside.Count; i++)
        {
            Write(rc, beside[i].Letter, area.Right + 6, places[i]);
        }
    }

    /// <summary>Moves places apart until no two are nearer than a letter's height, each as little as may be.</summary>
    internal static double[] Spread(double[] wanted, double top, double bottom)
    {
        double[] places = [.. wanted.Select(place => Math.Clamp(place, top, Math.Max(top, bottom)))];
        int[] order = [.. Enumerable.Range(0, wanted.Length).OrderBy(i => wanted[i])];
        for (int round = 0; round < 60; round++)
        {
            for (int k = 0; k + 1 < order.Length; k++)
            {
                double lack = Apart - (places[order[k + 1]] - places[order[k]]);
                if (lack > 0)
                {
                    places[order[k]] = Math.Max(top, places[order[k]] - (lack / 2));
                    places[order[k + 1]] = Math.Min(Math.Max(bottom, top), places[order[k + 1]] + (lack / 2));
                }
            }
        }

        return places;
    }

    private static void Write(IRenderContext rc, string letter, double left, double middle) =>
        rc.DrawText(new(left, middle), letter, PlotStyle.Ink, PlotStyle.Font, PlotStyle.FontSize, FontWeights.Bold, 0, HorizontalAlignment.Left, VerticalAlignment.Middle, null);
}
