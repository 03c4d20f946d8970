using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>Measures text for layout, with room for a reader's font that runs wider than the one the metrics are for.</summary>
/// <remarks>
/// Only the reader's machine knows the font it draws with. The common replacements for Arial run up to a sixth wider,
/// so a layout with exact Arial widths lets texts collide there.
/// </remarks>
internal sealed class PlotRuler : RenderContextBase
{
    /// <summary>How much wider than Arial a text is taken to be.</summary>
    public const double WiderFont = 1.15;

    /// <summary>The metrics answer in points for a size in pixels.</summary>
    private const double PixelsPerPoint = 4.0 / 3;

    private const double WidthAllowance = WiderFont * PixelsPerPoint;
    private const double HeightAllowance = 1.05 * PixelsPerPoint;

    private readonly PdfRenderContext _metrics = new(PlotStyle.Width, PlotStyle.PlotHeight, OxyColors.White);

    public override int ClipCount => 0;

    public override OxySize MeasureText(string text, string fontFamily, double fontSize, double fontWeight)
    {
        if (string.IsNullOrEmpty(text))
        {
            return OxySize.Empty;
        }

        // The metrics know neither line feeds nor letters beyond Latin-1; those are taken as wide.
        string known = new([.. text.Select(c => c > '\u00ff' ? 'M' : c)]);
        var sizes = known.Split('\n').Select(line => _metrics.MeasureText(line, "Arial", fontSize, fontWeight)).ToArray();
        return new OxySize(sizes.Max(size => size.Width) * WidthAllowance, sizes.Length * sizes.Max(size => size.Height) * HeightAllowance);
    }

    public override void DrawLine(IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[] dashArray, LineJoin lineJoin) => throw OnlyMeasures();

    public override void DrawPolygon(IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[] dashArray, LineJoin lineJoin) => throw OnlyMeasures();

    public override void DrawText(ScreenPoint p, string text, OxyColor c, string fontFamily, double fontSize, double fontWeight, double rotate, HorizontalAlignment halign, VerticalAlignment valign, OxySize? maxSize) => throw OnlyMeasures();

    public override void PushClip(OxyRect clippingRectangle) => throw OnlyMeasures();

    public override void PopClip() => throw OnlyMeasures();

    private static NotSupportedException OnlyMeasures() => new("This context measures text; it does not draw.");
}
