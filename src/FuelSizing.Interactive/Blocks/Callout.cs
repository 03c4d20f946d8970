using System.Xml.Linq;

namespace FuelSizing.Interactive;

/// <summary>A titled block for a verdict or a caution.</summary>
/// <remarks>The kind is written as a word and a sign as well as a colour, so it survives grey print and colour blindness.</remarks>
/// <example>
/// <code>
/// var verdict = Callout.Fails("The injectors are limiting", "Duty cycle 93 % at 6,800 rev/min, over the 85 % limit.");
/// Console.WriteLine(verdict.ToPlainText());
/// </code>
/// </example>
public sealed class Callout : IDisplayBlock
{
    /// <summary>Creates a callout.</summary>
    /// <param name="kind">What it says.</param>
    /// <param name="title">The statement in one line; not empty.</param>
    /// <param name="lines">Body lines, each a paragraph; may be empty.</param>
    /// <exception cref="ArgumentException">A text is empty, too long, or cannot be written as XML.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="kind"/> is not one of the named kinds.</exception>
    public Callout(CalloutKind kind, string title, params IReadOnlyList<string> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        if (!Enum.IsDefined(kind))
        {
            throw new ArgumentOutOfRangeException(nameof(kind), kind, $"kind must be one of {string.Join(", ", Enum.GetNames<CalloutKind>())}.");
        }

        Kind = kind;
        Title = Require.Text(title, nameof(title));
        Lines = Array.AsReadOnly([.. lines.Select((line, i) => Require.Text(line, $"{nameof(lines)}[{i}]"))]);
    }

    /// <summary>What the callout says.</summary>
    public CalloutKind Kind { get; }

    /// <summary>The statement in one line.</summary>
    public string Title { get; }

    /// <summary>Body lines, each a paragraph.</summary>
    public IReadOnlyList<string> Lines { get; }

    /// <summary>Whether the callout answers the notebook's question, rather than warning beside it.</summary>
    public bool IsVerdict => Kind != CalloutKind.Caution;

    /// <summary>Word and statement in one line, the word once.</summary>
    internal string Line => SaysItself ? Title : $"{BlockStyle.For(Kind).Word}: {Title}";

    // "Holds as far as judged" before "Holds as far as judged over …" would be read twice.
    private bool SaysItself => Title.StartsWith($"{BlockStyle.For(Kind).Word} ", StringComparison.Ordinal);

    /// <summary>Creates a callout that says every limit checked is kept.</summary>
    /// <param name="title">The statement in one line; not empty.</param>
    /// <param name="lines">Body lines, each a paragraph.</param>
    /// <returns>The callout.</returns>
    /// <exception cref="ArgumentException">A text is empty, too long, or cannot be written as XML.</exception>
    public static Callout Holds(string title, params IReadOnlyList<string> lines) => new(CalloutKind.Holds, title, lines);

    /// <summary>Creates a callout that says every limit judged is kept, and something was not judged.</summary>
    /// <param name="title">The statement in one line, which names what was not judged; not empty.</param>
    /// <param name="lines">Body lines, each a paragraph.</param>
    /// <returns>The callout.</returns>
    /// <exception cref="ArgumentException">A text is empty, too long, or cannot be written as XML.</exception>
    public static Callout HoldsAsFarAsJudged(string title, params IReadOnlyList<string> lines) => new(CalloutKind.HoldsAsFarAsJudged, title, lines);

    /// <summary>Creates a callout that says a limit is passed.</summary>
    /// <param name="title">The statement in one line; not empty.</param>
    /// <param name="lines">Body lines, each a paragraph.</param>
    /// <returns>The callout.</returns>
    /// <exception cref="ArgumentException">A text is empty, too long, or cannot be written as XML.</exception>
    public static Callout Fails(string title, params IReadOnlyList<string> lines) => new(CalloutKind.Fails, title, lines);

    /// <summary>Creates a callout that says the inputs do not allow an answer.</summary>
    /// <param name="title">The statement in one line; not empty.</param>
    /// <param name="lines">Body lines, each a paragraph.</param>
    /// <returns>The callout.</returns>
    /// <exception cref="ArgumentException">A text is empty, too long, or cannot be written as XML.</exception>
    public static Callout CannotSay(string title, params IReadOnlyList<string> lines) => new(CalloutKind.CannotSay, title, lines);

    /// <summary>Creates a callout that warns beside the answer.</summary>
    /// <param name="title">The warning in one line; not empty.</param>
    /// <param name="lines">Body lines, each a paragraph.</param>
    /// <returns>The callout.</returns>
    /// <exception cref="ArgumentException">A text is empty, too long, or cannot be written as XML.</exception>
    public static Callout Caution(string title, params IReadOnlyList<string> lines) => new(CalloutKind.Caution, title, lines);

    /// <inheritdoc/>
    public string ToHtml()
    {
        var (word, sign, edge, ground) = BlockStyle.For(Kind);
        return new XElement("div",
            new XAttribute("role", "note"),
            new XAttribute("style", BlockStyle.CalloutBox(edge, ground)),
            new XElement("p",
                new XAttribute("style", BlockStyle.CalloutTitle),
                new XElement("span", new XAttribute("style", BlockStyle.CalloutWord(edge)), $"{sign} {word}"),
                VisibleText.Unbroken(SaysItself ? Title[word.Length..] : $" {Title}")),
            Lines.Select(line => new XElement("p", new XAttribute("style", BlockStyle.CalloutLine), VisibleText.Unbroken(line))))
            .ToString(SaveOptions.DisableFormatting);
    }

    /// <inheritdoc/>
    public string ToPlainText() =>
        string.Join('\n', [$"{BlockStyle.For(Kind).Word}: {Title}", .. Lines.Select(line => $"  {line}")]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();
}
