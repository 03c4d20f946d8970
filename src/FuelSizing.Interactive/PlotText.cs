using System.Text;
using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>Measures and breaks text so that none is cut off in a plot.</summary>
internal static class PlotText
{
    /// <summary>Room for a reader's font that runs wider than the one measured with.</summary>
    private const double Allowance = 1.08;

    public static double Width(string text, double fontSize = PlotStyle.FontSize)
    {
        var ruler = new PdfRenderContext(PlotStyle.Width, PlotStyle.PlotHeight, OxyColors.White);
        return ruler.MeasureText(text, "Arial", fontSize, FontWeights.Normal).Width * Allowance;
    }

    /// <summary>Breaks a text into lines no wider than a width, between words where it can.</summary>
    public static string Wrap(string text, double width, double fontSize = PlotStyle.FontSize)
    {
        var lines = new List<string>();
        var line = new StringBuilder();
        foreach (string word in text.Split((char[])[' ', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries).SelectMany(word => Pieces(word, width, fontSize)))
        {
            if (line.Length > 0 && Width($"{line} {word}", fontSize) > width)
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

    private static IEnumerable<string> Pieces(string word, double width, double fontSize)
    {
        while (word.Length > 1 && Width(word, fontSize) > width)
        {
            int length = word.Length - 1;
            while (length > 1 && (Width(word[..length], fontSize) > width || char.IsLowSurrogate(word[length])))
            {
                length--;
            }

            yield return word[..length];
            word = word[length..];
        }

        yield return word;
    }
}
