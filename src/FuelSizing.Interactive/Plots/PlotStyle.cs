using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>The look of every plot, in one place.</summary>
/// <remarks>
/// The design width is close to a phone's, so that shrinking a plot to a phone leaves its text readable.
/// Series differ by dash and by marker as well as by colour, and the map's colours rise steadily in lightness: both survive grey print.
/// </remarks>
internal static class PlotStyle
{
    public const double Width = 440;
    public const double PlotHeight = 300;
    public const double FontSize = 14;
    public const string Font = "Arial, Helvetica, 'Liberation Sans', sans-serif";
    public const double LineThickness = 2.2;
    public const double LimitThickness = 2.6;
    public const int MaximumLines = 6;
    public const int MaximumLimits = 4;
    public const int MaximumPoints = 12;

    /// <summary>A longer label of a limit would hide what is drawn, so it goes to the key.</summary>
    public const int LongestLimitLabel = 24;
    public const int MaximumBarKinds = 2;
    public const int MaximumBarRows = 16;
    public const double BarHatchSpacing = 6;

    /// <summary>Map bands aimed for: enough to read a value between contours, few enough to tell apart.</summary>
    public const int MapBands = 8;

    /// <summary>Least distance between two markers on a line, so that a dense series stays a line.</summary>
    public const int MarkerSpacing = 42;

    public static readonly OxyColor Ink = OxyColor.Parse(BlockStyle.Ink);
    public static readonly OxyColor Muted = OxyColor.Parse(BlockStyle.Muted);
    public static readonly OxyColor Grid = OxyColor.FromRgb(0xdf, 0xe3, 0xe8);
    public static readonly OxyColor Limit = OxyColor.FromRgb(0x9b, 0x2c, 0x0a);
    public static readonly OxyColor Reference = OxyColor.FromRgb(0x33, 0x3d, 0x48);
    public static readonly OxyColor Contour = OxyColor.FromRgb(0x33, 0x3d, 0x48);
    public static readonly OxyColor Hatch = OxyColor.FromRgb(0x9a, 0xa4, 0xae);

    private static readonly (OxyColor Color, LineStyle Dash, MarkerType Marker)[] Lines =
    [
        (OxyColor.FromRgb(0x0b, 0x4f, 0x9c), LineStyle.Solid, MarkerType.Circle),
        (OxyColor.FromRgb(0xb8, 0x46, 0x0a), LineStyle.Dash, MarkerType.Square),
        (OxyColor.FromRgb(0x00, 0x78, 0x5c), LineStyle.DashDot, MarkerType.Triangle),
        (OxyColor.FromRgb(0x7a, 0x3b, 0x8f), LineStyle.Dot, MarkerType.Diamond),
        (OxyColor.FromRgb(0x80, 0x66, 0x00), LineStyle.LongDash, MarkerType.Star),
        (OxyColor.FromRgb(0x44, 0x44, 0x44), LineStyle.LongDashDotDot, MarkerType.Cross),
    ];

    public static (OxyColor Color, LineStyle Dash, MarkerType Marker) ForLine(int index) => Lines[index % Lines.Length];

    private static readonly (OxyColor Fill, OxyColor Edge, bool Hatched)[] Bars =
    [
        (OxyColor.FromRgb(0x9c, 0xbf, 0xe3), Lines[0].Color, false),
        (OxyColors.White, Lines[1].Color, true),
    ];

    /// <summary>The look of bars: plain or hatched, so that they differ in grey too.</summary>
    public static (OxyColor Fill, OxyColor Edge, bool Hatched) ForBar(int index) => Bars[index % Bars.Length];

    /// <summary>Map colours from dark to light, without the darkest part in which contour lines would drown.</summary>
    public static OxyPalette MapPalette(int bands)
    {
        var full = OxyPalettes.Cividis(256).Colors;
        const int Darkest = 40;
        return new OxyPalette(Enumerable.Range(0, bands).Select(i =>
            full[Darkest + (int)Math.Round((255 - Darkest) * (i + 0.5) / bands)]));
    }
}
