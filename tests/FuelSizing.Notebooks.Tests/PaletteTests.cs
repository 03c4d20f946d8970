using System.Globalization;
using System.Text.RegularExpressions;
using FuelSizing.Interactive;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The colours of pages can be read in the light and in the dark, and paper is white.</summary>
public partial class PaletteTests
{
    private static readonly Dictionary<string, string> Dark = Variable().Matches(Palette.InTheDark).ToDictionary(match => match.Groups["name"].Value, match => match.Groups["colour"].Value);

    public static TheoryData<CalloutKind> Kinds => [.. Enum.GetValues<CalloutKind>()];

    /// <summary>WCAG 2, success criterion 1.4.3: 4.5 for text.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Verdict_OnItsGround_CanBeRead(CalloutKind kind)
    {
        (_, _, string edge, string ground) = BlockStyle.For(kind);
        Assert.All((Func<string, string>[])[Light, InTheDark], of =>
        {
            Assert.InRange(Contrast(of(edge), of(ground)), 4.5, 21);
            Assert.InRange(Contrast(of(BlockStyle.Ink), of(ground)), 7, 21);
            Assert.InRange(Contrast(of(BlockStyle.Muted), of(BlockStyle.Ground)), 4.5, 21);
            Assert.InRange(Contrast(of(BlockStyle.Ink), of(Palette.Of(Palette.Wet))), 4.5, 21);
        });
    }

    [Fact]
    public void Dark_IsOfScreensAlone() => Assert.StartsWith("@media screen and (prefers-color-scheme:dark){", Palette.InTheDark, StringComparison.Ordinal);

    private static string Light(string colour) => colour.Split(',')[1].TrimEnd(')');

    private static string InTheDark(string colour) => Dark[colour["var(".Length..colour.IndexOf(',', StringComparison.Ordinal)]];

    // The ratio of relative luminances, each with 0.05 more: WCAG 2.
    private static double Contrast(string one, string other)
    {
        double[] both = [Luminance(one) + 0.05, Luminance(other) + 0.05];
        return both.Max() / both.Min();
    }

    private static double Luminance(string colour)
    {
        double Part(int at)
        {
            double share = int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
        }

        return (0.2126 * Part(1)) + (0.7152 * Part(3)) + (0.0722 * Part(5));
    }

    [GeneratedRegex("(?<name>--fs-[a-z-]+):(?<colour>#[0-9a-f]{6})", RegexOptions.ExplicitCapture)]
    private static partial Regex Variable();
}
