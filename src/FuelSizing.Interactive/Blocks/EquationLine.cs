using System.Xml.Linq;

namespace FuelSizing.Interactive;

/// <summary>Sets an equation, as the index of equations writes it in one line of text, as MathML between words.</summary>
/// <remarks>
/// Formulas (<see cref="Formula"/>) with signs of equality and inequality between them; <c>a if x &lt; y; b otherwise</c>; and <c>with s = … and t = …</c> behind it. The words
/// stay words. Put together with spaces and words, the texts beside the formulas are the line that was given.
/// </remarks>
internal static class EquationLine
{
    private static readonly string[] _words = [" with ", " and ", " if ", " otherwise", "; "];
    private static readonly string[] _relations = [" = ", " < ", " ≤ ", " > ", " ≥ "];

    /// <summary>Sets an equation, or a symbol by itself.</summary>
    /// <param name="text">As the index writes it.</param>
    /// <param name="set">Elements <c>math</c>, and text between them.</param>
    /// <returns>Whether all of it was read as formulas.</returns>
    public static bool TrySet(string text, out IReadOnlyList<XNode> set)
    {
        List<XNode> nodes = [];
        set = nodes;
        bool isRead = text.Length > 0;
        int from = 0;
        int at = 0;
        int depth = 0;
        while (at <= text.Length)
        {
            depth += at == text.Length ? 0 : text[at] switch { '(' => 1, ')' => -1, _ => 0 };
            string? word = depth == 0 ? Array.Find(_words, word => Begins(word, at)) : null;
            string? relation = depth == 0 ? Array.Find(_relations, sign => Begins(sign, at)) : null;
            if (at < text.Length && word is null && relation is null)
            {
                at++;
                continue;
            }

            if (at > from)
            {
                isRead &= Formula.TrySet(text[from..at], out IReadOnlyList<XElement> pieces);
                foreach (XElement piece in pieces)
                {
                    Separate();
                    nodes.Add(piece);
                }
            }

            if (word is not null)
            {
                nodes.Add(new XText(word));
            }

            // The sign is part of what follows it.
            from = word is not null ? at + word.Length : at + 1;
            at = word is not null ? from : at + Math.Max(1, relation?.Length ?? 1);
        }

        return isRead;

        bool Begins(string word, int place) => text.AsSpan(place).StartsWith(word, StringComparison.Ordinal);

        // A line can break there.
        void Separate()
        {
            if (nodes is [.., XElement])
            {
                nodes.Add(new XText(" "));
            }
        }
    }
}
