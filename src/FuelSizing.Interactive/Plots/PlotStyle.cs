using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>The look of every plot, in one place.</summary>
/// <remarks>
/// The design width is close to a phone's, so that shrinking a plot to a phone leaves its text readable. A plot has no ground of its own and its ink is the
/// page's: it is dark in a dark page, whatever makes that dark. The colours of its lines stand out from white and from black alike (contrast 3.6 and more).
/// Lines differ by dash and letter as well as by colour, readings by shape, and the map's colours fall steadily in lightness: all survive grey print.
/// </remarks>
internal static class PlotStyle
{
    public const double Width = 440;
    public const double PlotHeight = 290;
    public const double FontSize = 14;
    public const double LineHeight = 17;
    public const string Font = "Arial, Helvetica, 'Liberation Sans', sans-serif";
    public const double LineThickness = 2.2;
    public const double LimitThickness = 3.2;
    public const int MaximumLines = 6;
    public const int MaximumLimits = 4;
    public const int MaximumPoints = 12;

    /// <summary>A longer label on a pole would hide what is drawn, so it goes to the key.</summary>
    public const int LongestLimitLabel = 24;
    public const int MaximumBarKinds = 2;
    public const int MaximumBarRows = 16;
    public const double BarHatchSpacing = 6;

    /// <summary>Map bands aimed for: enough to read a value between contours, few enough to tell apart.</summary>
    public const int MapBands = 8;

    /// <summary>What stands for the page's own ink until the drawing is written.</summary>
    public static readonly OxyColor Ink = OxyColor.FromRgb(1, 2, 3);

    /// <summary>The page's ink, thinned for lines that only carry the eye.</summary>
    public static readonly OxyColor Grid = OxyColor.FromRgb(1, 2, 4);

    /// <summary>Ink on a map, whose ground is the map's own.</summary>
    public static readonly OxyColor MapInk = OxyColor.FromRgb(0x14, 0x20, 0x28);
    public static readonly OxyColor Limit = OxyColor.FromRgb(0xd2, 0x45, 0x2a);
    public static readonly OxyColor Hatch = OxyColor.FromRgb(0x7b, 0x84, 0x90);

    /// <summary>Strokes and gaps in pixels. Gaps are wide, so that one line under another shows through.</summary>
    private static readonly (OxyColor Color, double[] Dash, double Thickness)[] Lines =
    [
        (OxyColor.FromRgb(0x2b, 0x7f, 0xc4), [], 2.8),
        (OxyColor.FromRgb(0xc9, 0x6a, 0x1b), [9, 5], LineThickness),
        (OxyColor.FromRgb(0x1f, 0x90, 0x68), [10, 4, 2.5, 4], LineThickness),
        (OxyColor.FromRgb(0x9b, 0x62, 0xc0), [2.5, 4], LineThickness),
        (OxyColor.FromRgb(0x8f, 0x7d, 0x12), [17, 6], LineThickness),
        (OxyColor.FromRgb(0x7b, 0x84, 0x90), [13, 4, 2.5, 4, 2.5, 4], LineThickness),
    ];

    public static readonly double[] ReferenceDash = [6, 4];

    public static (OxyColor Color, double[] Dash, double Thickness) ForLine(int index) => Lines[index % Lines.Length];

    private static readonly (OxyColor Fill, OxyColor Edge, bool Hatched)[] Bars =
    [
        (OxyColor.FromAColor(0x60, Lines[0].Color), Lines[0].Color, false),
        (OxyColors.Undefined, Lines[1].Color, true),
    ];

    /// <summary>The look of bars: plain or hatched, so that they differ in grey too.</summary>
    public static (OxyColor Fill, OxyColor Edge, bool Hatched) ForBar(int index) => Bars[index % Bars.Length];

    /// <summary>Map colours from light to dark, without the darkest part in which contour lines would drown.</summary>
    public static OxyPalette MapPalette(int bands) => new(Enumerable.Range(0, bands).Select(band =>
    {
        double place = (band + 0.5) / bands * (Ramp.Length - 1);
        int from = Math.Min((int)place, Ramp.Length - 2);
        return OxyColor.Interpolate(Ramp[from], Ramp[from + 1], place - from);
    }));

    private static readonly OxyColor[] Ramp =
    [
        OxyColor.FromRgb(0xf4, 0xf1, 0xe4),
        OxyColor.FromRgb(0xc9, 0xdf, 0xcf),
        OxyColor.FromRgb(0x8f, 0xc2, 0xc0),
        OxyColor.FromRgb(0x56, 0x9c, 0xb0),
        OxyColor.FromRgb(0x4a, 0x78, 0x9a),
    ];
}
