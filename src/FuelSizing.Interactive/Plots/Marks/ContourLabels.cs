using FuelSizing.Quantities;
using OxyPlot;
using OxyPlot.Annotations;

namespace FuelSizing.Interactive;

/// <summary>Writes each contour's value on it once, upright, where there is most room.</summary>
internal sealed class ContourLabels(IReadOnlyList<double> xs, IReadOnlyList<double> ys, double[,] values, double[] levels, PointMarks marks, TextStyle style) : Annotation
{
    /// <summary>A label this far from everything else is free; further away is not better.</summary>
    private const double Room = 70;

    public override void Render(IRenderContext rc)
    {
        var area = PlotModel.PlotArea;
        var taken = marks.Taken.ToList();
        foreach (var (level, places) in Places())
        {
            string text = style.Number(level, "#,0.######");
            var size = rc.MeasureText(text, PlotStyle.Font, PlotStyle.FontSize, FontWeights.Normal);
            var inside = area.Deflate(new OxyThickness((size.Width / 2) + 3, (size.Height / 2) + 3, (size.Width / 2) + 3, (size.Height / 2) + 3));
            var free = places.Where(place => inside.Contains(place)).ToList();
            if (free.Count == 0)
            {
                continue;
            }

            var best = free.MaxBy(place => Clearance(place, area, taken));
            taken.Add(Around(best, size));
            rc.DrawText(best, text, PlotStyle.MapInk, PlotStyle.Font, PlotStyle.FontSize, FontWeights.Normal, 0, HorizontalAlignment.Center, VerticalAlignment.Middle, null);
        }
    }

    private static double Clearance(ScreenPoint place, OxyRect area, List<OxyRect> taken)
    {
        double nearest = taken.Select(box => Distance(place, box)).DefaultIfEmpty(Room).Min();
        double fromMiddle = Math.Abs(place.X - area.Center.X) + Math.Abs(place.Y - area.Center.Y);
        return Math.Min(nearest, Room) - (0.1 * fromMiddle);
    }

    private static double Distance(ScreenPoint place, OxyRect box) => double.Hypot(
        Math.Max(0, Math.Max(box.Left - place.X, place.X - box.Right)),
        Math.Max(0, Math.Max(box.Top - place.Y, place.Y - box.Bottom)));

    private static OxyRect Around(ScreenPoint middle, OxySize size) =>
        new(middle.X - (size.Width / 2), middle.Y - (size.Height / 2), size.Width, size.Height);

    private List<(double Level, List<ScreenPoint> Places)> Places()
    {
        var places = levels.ToDictionary(level => level, _ => new List<ScreenPoint>());
        Conrec.Contour(
            values,
            [.. xs],
            [.. ys],
            levels,
            (x1, y1, x2, y2, level) => places[level].Add(Screen((x1 + x2) / 2, (y1 + y2) / 2)));
        return [.. places.Select(pair => (pair.Key, pair.Value))];
    }

    private ScreenPoint Screen(double x, double y) => this.Transform(x, y);
}
