using System.Globalization;

namespace FuelSizing.Fuzz.Mutating;

/// <summary>Edits that know the lines and cells of a table.</summary>
internal sealed class TableEdits
{
    private readonly string[] _words;

    /// <summary>Edits with the words of one reader.</summary>
    public TableEdits(string[] words) => _words = words;

    /// <summary>The edits, each given a text, a place in it and a figure.</summary>
    public Func<string, int, int, string>[] All =>
    [
        (text, at, figure) => Lines(text, at, figure, (lines, line, other) => (lines[line], lines[other]) = (lines[other], lines[line])),
        (text, at, figure) => Lines(text, at, figure, (lines, line, other) => lines.Insert(other, lines[line])),
        (text, at, figure) => Lines(text, at, figure, (lines, line, _) => lines.RemoveAt(line)),
        (text, at, figure) => Cells(text, at, figure, (cells, cell, other) => (cells[cell], cells[other]) = (cells[other], cells[cell])),
        (text, at, figure) => Cells(text, at, figure, (cells, cell, other) => cells.Insert(other, cells[cell])),
        (text, at, figure) => Cells(text, at, figure, (cells, cell, _) => cells.RemoveAt(cell)),
        (text, at, figure) => Cells(text, at, figure, (cells, cell, _) => cells[cell] = string.Empty),
        (text, at, figure) => Cells(text, at, figure, (cells, cell, _) => cells[cell] = Scraps.Numbers[(at + figure) % Scraps.Numbers.Length]),
        (text, at, figure) => Cells(text, at, figure, (cells, cell, _) => cells[cell] = _words[(at + figure) % _words.Length]),
        (text, at, figure) => Cells(text, at, figure, (cells, cell, _) => cells[cell] = $"{(at * 7) + figure}"),
        (text, at, figure) => Cells(text, at, figure, (cells, cell, _) => cells[cell] = Nudged(cells[cell], 0.7 + (figure / 100.0))),
        (text, at, figure) => Cells(text, at, figure, (cells, cell, _) => cells[cell] = Nudged(cells[cell], Math.Pow(10, (figure - 30) / 10.0))),
        (text, at, figure) => Cells(text, at, figure, (cells, cell, _) => cells[cell] = $" {cells[cell]} "),
        (text, at, figure) => Cells(text, at, figure, (cells, cell, _) => cells[cell] = figure % 3 == 0 ? $"\"{cells[cell]}\n\"" : $"\"{cells[cell]}\""),
        (text, _, figure) => Column(text, figure, (cells, cell) => cells.Insert(cell, cells[cell])),
        (text, _, figure) => Column(text, figure, (cells, cell) => cells.RemoveAt(cell)),
        (text, _, figure) => text.Replace(",", figure % 2 == 0 ? ";" : "\t", StringComparison.Ordinal),
        (text, _, figure) => text.Replace("\n", figure % 2 == 0 ? "\r\n" : "\r", StringComparison.Ordinal),
    ];

    private static string Nudged(string cell, double factor) =>
        double.TryParse(cell, CultureInfo.InvariantCulture, out double number) ? (number * factor).ToString(CultureInfo.InvariantCulture) : cell;

    private static string Lines(string text, int at, int figure, Action<List<string>, int, int> change)
    {
        List<string> lines = [.. text.Split('\n')];
        int line = text.AsSpan(0, at).Count('\n');
        change(lines, line, (line + figure) % lines.Count);
        return string.Join('\n', lines);
    }

    private static string Cells(string text, int at, int figure, Action<List<string>, int, int> change)
    {
        int start = text.AsSpan(0, at).LastIndexOf('\n') + 1;
        int end = text.IndexOf('\n', at) is >= 0 and var found ? found : text.Length;
        char separator = Separator(text);
        List<string> cells = [.. text[start..end].Split(separator)];
        change(cells, figure % cells.Count, (figure * 7) % cells.Count);
        return text[..start] + string.Join(separator, cells) + text[end..];
    }

    private static string Column(string text, int figure, Action<List<string>, int> change)
    {
        char separator = Separator(text);
        return string.Join('\n', text.Split('\n').Select(line =>
        {
            List<string> cells = [.. line.Split(separator)];
            if (figure % 12 < cells.Count)
            {
                change(cells, figure % 12);
            }

            return string.Join(separator, cells);
        }));
    }

    private static char Separator(string text) => text.Contains(';') ? ';' : text.Contains('\t') ? '\t' : ',';
}
