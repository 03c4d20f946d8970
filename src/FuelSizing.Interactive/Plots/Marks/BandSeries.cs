using OxyPlot;
using OxyPlot.Series;

namespace FuelSizing.Interactive;

/// <summary>Fills the areas between contour levels on a grid that need not be even, and hatches cells without values.</summary>
/// <remarks>The plot library's own heat map assumes an even grid and embeds a bitmap.</remarks>
internal sealed class BandSeries(IReadOnlyList<double> xs, IReadOnlyList<double> ys, double[,] values, double[] levels, OxyPalette palette) : XYAxisSeries
{
    private const double HatchSpacing = 8;

    public override void Render(IRenderContext rc)
    {
        // Band by band, so that one band's polygons follow one another and can be joined into one path.
        for (int band = 0; band < palette.Colors.Count; band++)
        {
            foreach (var polygon in BandPolygons(band))
            {
                rc.DrawPolygon([.. polygon.Select(p => this.Transform(p.X, p.Y))], palette.Colors[band], OxyColors.Undefined, 0, EdgeRenderingMode.PreferSpeed, null, LineJoin.Miter);
            }
        }

        foreach (var (i, j) in Cells().Where(cell => !IsCovered(cell.I, cell.J)))
        {
            var a = this.Transform(xs[i], ys[j]);
            var b = this.Transform(xs[i + 1], ys[j + 1]);
            Hatching.Draw(rc, new OxyRect(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Abs(b.X - a.X), Math.Abs(b.Y - a.Y)), PlotStyle.Hatch, HatchSpacing);
        }
    }

    public override void RenderLegend(IRenderContext rc, OxyRect legendBox)
    {
        var box = legendBox.Deflate(new OxyThickness(4, 2, 4, 2));
        rc.DrawRectangle(box, OxyColors.Undefined, PlotStyle.Hatch, 1, EdgeRenderingMode.PreferGeometricAccuracy);
        Hatching.Draw(rc, box, PlotStyle.Hatch, HatchSpacing);
    }

    protected override void UpdateMaxMin()
    {
        base.UpdateMaxMin();
        (MinX, MaxX, MinY, MaxY) = (xs[0], xs[^1], ys[0], ys[^1]);
    }

    protected override void UpdateData()
    {
    }

    private IEnumerable<(int I, int J)> Cells() =>
        from j in Enumerable.Range(0, ys.Count - 1)
        from i in Enumerable.Range(0, xs.Count - 1)
        select (i, j);

    private bool IsCovered(int i, int j) =>
        double.IsFinite(values[i, j]) && double.IsFinite(values[i + 1, j]) && double.IsFinite(values[i, j + 1]) && double.IsFinite(values[i + 1, j + 1]);

    private bool IsWithin(int i, int j, double low, double high)
    {
        // A NaN corner fails both comparisons, so an uncovered cell is never within.
        bool Fits(double value) => value >= low && value <= high;
        return Fits(values[i, j]) && Fits(values[i + 1, j]) && Fits(values[i, j + 1]) && Fits(values[i + 1, j + 1]);
    }

    private IEnumerable<IReadOnlyList<(double X, double Y, double Z)>> BandPolygons(int band)
    {
        double low = levels[band];
        double high = levels[band + 1];
        foreach (var (i, j) in Cells().Where(cell => IsCovered(cell.I, cell.J)))
        {
            if (IsWithin(i, j, low, high))
            {
                // Neighbours wholly in the band become one rectangle, drawn at the first of them.
                if (i == 0 || !IsWithin(i - 1, j, low, high))
                {
                    int end = i + 1;
                    while (end < xs.Count - 1 && IsWithin(end, j, low, high))
                    {
                        end++;
                    }

                    yield return [(xs[i], ys[j], low), (xs[end], ys[j], low), (xs[end], ys[j + 1], low), (xs[i], ys[j + 1], low)];
                }

                continue;
            }

            (double X, double Y, double Z) Corner(int di, int dj) => (xs[i + di], ys[j + dj], values[i + di, j + dj]);
            var corners = new[] { Corner(0, 0), Corner(1, 0), Corner(1, 1), Corner(0, 1) };
            if (corners.All(p => p.Z <= low) || corners.All(p => p.Z >= high))
            {
                continue;
            }

            // Four triangles about the mean, as the contour lines take it, so that fill and line agree.
            var middle = (X: (xs[i] + xs[i + 1]) / 2, Y: (ys[j] + ys[j + 1]) / 2, Z: corners.Average(p => p.Z));
            for (int side = 0; side < 4; side++)
            {
                var polygon = Clip(Clip([corners[side], corners[(side + 1) % 4], middle], low, keepAbove: true), high, keepAbove: false);
                if (polygon.Count > 2)
                {
                    yield return polygon;
                }
            }
        }
    }

    /// <summary>Cuts a polygon at a level of Z and keeps one side.</summary>
    private static List<(double X, double Y, double Z)> Clip(List<(double X, double Y, double Z)> polygon, double level, bool keepAbove)
    {
        var kept = new List<(double X, double Y, double Z)>(polygon.Count + 1);
        for (int k = 0; k < polygon.Count; k++)
        {
            var a = polygon[k];
            var b = polygon[(k + 1) % polygon.Count];
            bool aIn = keepAbove ? a.Z >= level : a.Z <= level;
            bool bIn = keepAbove ? b.Z >= level : b.Z <= level;
            if (aIn)
            {
                kept.Add(a);
            }

            if (aIn != bIn)
            {
                double t = (level - a.Z) / (b.Z - a.Z);
                kept.Add((a.X + (t * (b.X - a.X)), a.Y + (t * (b.Y - a.Y)), level));
            }
        }

        return kept;
    }
}
