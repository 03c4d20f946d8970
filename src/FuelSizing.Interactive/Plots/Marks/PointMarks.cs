using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Series;

namespace FuelSizing.Interactive;

/// <summary>Marks points and writes each label on the side where it covers least.</summary>
/// <param name="points">The points.</param>
/// <param name="inkColor">Of marks and labels.</param>
internal sealed class PointMarks(IReadOnlyList<PlotPoint> points, OxyColor inkColor) : Annotation
{
    private const double MarkRadius = 6;
    private const double Gap = 9;

    // A label farther from its mark than this would not be taken for its own.
    private static readonly double[] Further = [0, 10, 20];

    // A line is hidden by a label on it; one that runs along it within a marker's reach only looks crowded.
    private const double Around = 4;

    private readonly List<OxyRect> _taken = [];

    /// <summary>The room marks and labels take, once drawn; what is written later keeps clear of it.</summary>
    public IReadOnlyList<OxyRect> Taken => _taken;

    /// <summary>A mark on the border of the plot is drawn whole.</summary>
    public override OxyRect GetClippingRect() => PlotModel.PlotBounds;

    public override void Render(IRenderContext rc)
    {
        _taken.Clear();
        _taken.AddRange(PlotModel.Annotations.OfType<LineLetters>().SelectMany(letters => letters.Taken));
        var marks = points.Select(point => this.Transform(point.X, point.Y)).ToArray();
        _taken.AddRange(marks.Select(mark => new OxyRect(mark.X - MarkRadius, mark.Y - MarkRadius, 2 * MarkRadius, 2 * MarkRadius)));
        var ink = Ink().ToList();
        for (int i = 0; i < marks.Length; i++)
        {
            rc.DrawCircle(marks[i], MarkRadius, OxyColors.Undefined, inkColor, 2.4, EdgeRenderingMode.PreferGeometricAccuracy);
            var (text, box, side, _) = Candidates(rc, points[i].Label, marks[i]).MinBy(candidate => Cost(candidate.Box, ink) + candidate.Apart);
            _taken.Add(box);
            rc.DrawText(
                new ScreenPoint(side == HorizontalAlignment.Left ? box.Left : box.Right, box.Top),
                text,
                inkColor,
                PlotStyle.Font,
                PlotStyle.FontSize,
                FontWeights.Bold,
                0,
                side,
                VerticalAlignment.Top,
                null);
        }
    }

    /// <summary>The label at each corner of the mark, near it or, which costs a little, somewhat off; broken to the room on that side.</summary>
    private IEnumerable<(string Text, OxyRect Box, HorizontalAlignment Side, double Apart)> Candidates(IRenderContext rc, string label, ScreenPoint mark)
    {
        var area = PlotModel.PlotArea;
        foreach (var side in (HorizontalAlignment[])(mark.X > area.Center.X ? [HorizontalAlignment.Right, HorizontalAlignment.Left] : [HorizontalAlignment.Left, HorizontalAlignment.Right]))
        {
            bool toTheRight = side == HorizontalAlignment.Left;
            double room = Math.Max(toTheRight ? area.Right - mark.X - Gap : mark.X - Gap - area.Left, 40);
            string text = PlotText.Wrap(label, room, FontWeights.Bold);
            var size = rc.MeasureText(text, PlotStyle.Font, PlotStyle.FontSize, FontWeights.Bold);
            double left = toTheRight ? mark.X + Gap : mark.X - Gap - size.Width;
            foreach (double apart in Further)
            {
                yield return (text, new OxyRect(left, mark.Y - Gap - apart - size.Height + 4, size.Width, size.Height), side, apart);
                yield return (text, new OxyRect(left, mark.Y + Gap + apart - 4, size.Width, size.Height), side, apart);
            }
        }
    }

    /// <summary>How much a label here would hide, in square pixels; leaving the plot costs most.</summary>
    private double Cost(OxyRect box, List<ScreenPoint> ink)
    {
        double outside = (box.Width * box.Height) - Overlap(box, PlotModel.PlotArea);

        // Whole numbers, so that rounding does not decide between equal places.
        return Math.Round(
            (8 * outside)
            + (4 * _taken.Sum(other => Overlap(box, other)))
            + (20 * ink.Count(box.Contains))
            + (5 * ink.Count(box.Inflate(new OxyThickness(Around)).Contains)));
    }

    private static double Overlap(OxyRect a, OxyRect b) =>
        Math.Max(0, Math.Min(a.Right, b.Right) - Math.Max(a.Left, b.Left)) * Math.Max(0, Math.Min(a.Bottom, b.Bottom) - Math.Max(a.Top, b.Top));

    /// <summary>Points along every line drawn, a few pixels apart.</summary>
    private IEnumerable<ScreenPoint> Ink()
    {
        const double Step = 5;
        var segments = PlotModel.Series.OfType<LineSeries>()
            .SelectMany(series => series.Points.Zip(series.Points.Skip(1)))
            .Where(pair => double.IsFinite(pair.First.Y) && double.IsFinite(pair.Second.Y))
            .Select(pair => (From: this.Transform(pair.First.X, pair.First.Y), To: this.Transform(pair.Second.X, pair.Second.Y)));
        foreach (var (from, to) in segments)
        {
            int steps = (int)Math.Ceiling(from.DistanceTo(to) / Step) + 1;
            for (int k = 0; k < steps; k++)
            {
                double t = (double)k / steps;
                yield return new ScreenPoint(from.X + (t * (to.X - from.X)), from.Y + (t * (to.Y - from.Y)));
            }
        }
    }
}
