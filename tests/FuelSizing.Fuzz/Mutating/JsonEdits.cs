using System.Globalization;
using System.Text;
using System.Text.Json;

namespace FuelSizing.Fuzz.Mutating;

/// <summary>Edits that know where the values and the fields of a JSON text stand; the text need not be right to its end.</summary>
internal sealed class JsonEdits
{
    private static readonly string[] Values =
    [
        "null", "true", "\"\"", "\" \"", "{}", "[]", "[[]]", "0", "-1", "1e999", "-0", "1e-400", "99999999999999999999999", "2147483648", "0.5", "1.0", "\"\\ud800\"",
        "\"\\u0000\"", "\"NaN\"", "NaN", "\"1e999 kPa\"", "\"300\"", "\"kPa\"", "\"-1 kPa\"", "\"0 %\"", "\"1 per unit\"", "\"300 kPa\"", "[1,2,3]", "{\"name\":\"x\"}",
    ];

    private readonly string[] _words;

    /// <summary>Edits with the words of one reader.</summary>
    public JsonEdits(string[] words) => _words = words;

    /// <summary>The edits, each given a text, a place in it and a figure.</summary>
    public Func<string, int, int, string>[] All =>
    [
        (text, at, _) => Changed(text, at, members: true, (_, _, _) => string.Empty),
        (text, at, _) => Changed(text, at, members: false, (_, _, _) => string.Empty),
        (text, at, figure) => Changed(text, at, members: false, (_, _, _) => Pick(Values, figure, at)),
        (text, at, figure) => Changed(text, at, members: false, (_, _, _) => $"\"{Pick(_words, figure, at)}\""),
        (text, at, figure) => Changed(text, at, members: false, (_, _, others) => Pick(others, figure, at)),
        (text, at, figure) => Changed(text, at, members: true, (own, _, others) => $"{own}, {Pick(others, figure, at)}"),
        (text, at, _) => Changed(text, at, members: true, (own, _, _) => $"{own}, {own}"),
        (text, at, figure) => Changed(text, at, members: true, (own, name, _) => $"\"{Pick(_words, figure, at)}\"{own[name..]}"),
        (text, at, figure) => Changed(text, at, members: false, (own, _, _) => figure % 2 == 0 ? $"[{own}, {own}]" : $"{{\"{Pick(_words, figure, at)}\": {own}}}"),
        (text, at, figure) => Changed(text, at, members: false, (own, _, _) => Figure(own, Pick(Scraps.Numbers, figure, at))),
        (text, at, figure) => Changed(text, at, members: false, (own, _, _) => Figure(own, ((at * 7) + figure).ToString(CultureInfo.InvariantCulture))),
        (text, at, figure) => Changed(text, at, members: false, (own, _, _) => Nudged(own, 0.7 + (figure / 100.0))),
        (text, at, figure) => Changed(text, at, members: false, (own, _, _) => Nudged(own, Math.Pow(10, (figure - 30) / 10.0))),
        (text, at, figure) => Changed(text, at, members: true, (own, _, _) => $"{new string(figure % 2 == 0 ? ' ' : '\n', figure % 5)}{own} "),
        (text, at, figure) => Changed(text, at, members: false, (own, _, _) => own.LastIndexOf(' ') is > 0 and var space ? $"{own[..space]} {Pick(_words, figure, at)}\"" : own),
    ];

    /// <summary>The text without one of its fields or values, in the order in which they begin; none past the last.</summary>
    public static string? Without(string text, int piece)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        (List<Range> values, List<(Range Span, int Name)> members) = Found(bytes);
        Range[] spans = [.. members.Select(member => member.Span).Concat(values).OrderBy(span => span.Start.Value)];
        return piece < spans.Length ? Replaced(bytes, spans[piece], string.Empty) : null;
    }

    private static string Pick(string[] from, int figure, int at) =>
        from.Length == 0 ? string.Empty : from[(int)((uint)((figure * 31) + at) % (uint)from.Length)];

    /// <summary>The number at the head of a value, or of a text, made larger or smaller.</summary>
    private static string Nudged(string own, double factor) =>
        double.TryParse(own.Trim('"').Split(' ')[0], CultureInfo.InvariantCulture, out double number)
            ? Figure(own, (number * factor).ToString(CultureInfo.InvariantCulture))
            : own;

    /// <summary>The number at the head of a value, or of a text, written otherwise.</summary>
    private static string Figure(string own, string number)
    {
        int start = own.StartsWith('"') ? 1 : 0;
        int end = start;
        while (end < own.Length && (char.IsAsciiDigit(own[end]) || own[end] is '.' or '-' or '+' or 'e' or 'E'))
        {
            end++;
        }

        return own[..start] + number + own[end..];
    }

    /// <summary>Changes the value or the field nearest to a place; the change is given its text, where its name ends, and all others of its kind.</summary>
    private static string Changed(string text, int at, bool members, Func<string, int, string[], string> change)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        (List<Range> Values, List<(Range Span, int Name)> Members) found = Found(bytes);
        string Slice(Range span) => Encoding.UTF8.GetString(bytes.AsSpan()[span]);
        Range[] spans = members ? [.. found.Members.Select(member => member.Span)] : [.. found.Values];
        if (spans.Length == 0)
        {
            return text;
        }

        int nearest = 0;
        for (int i = 1; i < spans.Length; i++)
        {
            nearest = Math.Abs(spans[i].Start.Value - at) < Math.Abs(spans[nearest].Start.Value - at) ? i : nearest;
        }

        // Others near enough to be the same edit's for the same figure, and few, for each is copied.
        string[] others = [.. spans.Where((_, place) => place % 7 == at % 7).Take(12).Select(Slice)];
        Range span = spans[nearest];
        string changed = change(Slice(span), members ? Encoding.UTF8.GetCharCount(bytes, span.Start.Value, found.Members[nearest].Name) : 0, others);
        return Replaced(bytes, span, changed);
    }

    private static string Replaced(byte[] bytes, Range span, string changed)
    {
        string after = Encoding.UTF8.GetString(bytes.AsSpan(span.End.Value));
        string before = Encoding.UTF8.GetString(bytes.AsSpan(0, span.Start.Value));

        // What is taken out takes a comma with it, so that the rest stays JSON.
        return changed.Length == 0 && after.TrimStart().StartsWith(',')
            ? before + after[(after.IndexOf(',') + 1)..]
            : changed.Length == 0 && before.TrimEnd().EndsWith(',')
                ? before[..before.LastIndexOf(',')] + after
                : before + changed + after;
    }

    private static (List<Range> Values, List<(Range Span, int Name)> Members) Found(byte[] bytes)
    {
        List<Range> values = [];
        List<(Range, int)> members = [];
        Stack<(int Start, int Name, int NameEnd)> open = new();
        (int Start, int End) name = (-1, 0);
        Utf8JsonReader reader = new(bytes, new JsonReaderOptions { MaxDepth = 100 });
        try
        {
            while (reader.Read())
            {
                int start = (int)reader.TokenStartIndex;
                int end = (int)reader.BytesConsumed;
                switch (reader.TokenType)
                {
                    case JsonTokenType.PropertyName:
                        name = (start, start + reader.ValueSpan.Length + 2);
                        continue;
                    case JsonTokenType.StartObject or JsonTokenType.StartArray:
                        open.Push((start, name.Start, name.End));
                        name = (-1, 0);
                        continue;
                    case JsonTokenType.EndObject or JsonTokenType.EndArray:
                        (start, int began, int ended) = open.Pop();
                        name = (began, ended);
                        break;
                }

                values.Add(start..end);
                if (name.Start >= 0)
                {
                    members.Add((name.Start..end, name.End - name.Start));
                    name = (-1, 0);
                }
            }
        }
        catch (JsonException)
        {
            // What was found up to there is edited.
        }

        return (values, members);
    }
}
