using System.Text;
using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>Measures and breaks text so that none is cut off in a plot.</summary>
internal static class PlotText
{
    [ThreadStatic]
    private static PlotRuler? _ruler;

    // One for each thread: making it takes longer than measuring a line.
    private static PlotRuler Ruler => _ruler ??= new PlotRuler();

    /// <summary>Width of a line in pixels, with room for a wider font.</summary>
    public static double WidthOf(string text, double fontWeight = FontWeights.Normal) =>
        Ruler.MeasureText(text, PlotStyle.Font, PlotStyle.FontSize, fontWeight).Width;

    /// <summary>Breaks a text into lines no wider than a width, between words where it can, then after a hyphen.</summary>
    public static string Wrap(string text, double width, double fontWeight = FontWeights.Normal)
    {
        double Measure(string part) => WidthOf(part, fontWeight);
        var lines = new List<string>();
        var line = new StringBuilder();
        foreach (string word in text.Split((char[])[' ', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries).SelectMany(word => Pieces(word, width, Measure)))
        {
            if (line.Length > 0 && Measure($"{line} {word}") > width)
            {
                lines.Add(line.ToString());
                line.Clear();
            }

            line.Append(line.Length > 0 ? " " : "").Append(word);
        }

        lines.Add(line.ToString());
        return string.Join('\n', lines);
    }

    public static int LineCount(string text) => text.Count(c => c == '\n') + 1;

    private static IEnumerable<string> Pieces(string word, double width, Func<string, double> measure)
    {
        while (word.Length > 1 && measure(word) > width)
        {
            int length = word.Length - 1;
            while (length > 1 && (measure(word[..length]) > width || char.IsLowSurrogate(word[length])))
            {
                length--;
            }

            // After a hyphen, where one stands in what fits: a word broken elsewhere is read as another.
            int hyphen = word.LastIndexOf('-', length - 1, length);
            length = hyphen > 0 ? hyphen + 1 : length;
            yield return word[..length];
            word = word[length..];
        }

        yield return word;
    }
}
