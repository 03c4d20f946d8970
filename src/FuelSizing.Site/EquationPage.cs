using System.Net;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FuelSizing.Interactive;

namespace FuelSizing.Site;

/// <summary>A page of equations or symbols as the site has it: what Markdown writes as text is set as MathML.</summary>
/// <remarks>
/// The Markdown itself stays text, for whoever reads it in the repository. On the site an equation stands as a formula with that text below it, to be copied or read where
/// a browser sets no formulas; a symbol and a line of the index stand as formulas alone, with their text beside them (<c>alttext</c>).
/// </remarks>
internal sealed partial class EquationPage
{
    private const string Style =
        "<style>.formula math,.equation math{font-size:1.1em}.equation{line-height:2.1;margin-bottom:0;overflow-wrap:anywhere}.equation-text{font-size:.8em;overflow-wrap:anywhere}"
        + "li:has(.formula){padding:.15em 0;overflow-wrap:anywhere}@media (max-width:560px){article table,article table :is(tbody,tr){display:block}"
        + "article table thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}article table tr{padding:4px 0;border-bottom:1px solid}article table td{display:block;border:0;padding:0 0 0 12px;overflow-wrap:anywhere}"
        + "article table td:first-child{padding-left:0}}</style>";

    private readonly List<string> _left = [];

    private EquationPage(string html) =>
        Html = Inline().Replace(Alone().Replace(html, Equation), Part).Replace("</head>", $"{Style}</head>", StringComparison.Ordinal);

    /// <summary>The page.</summary>
    public string Html { get; }

    /// <summary>Equations that stand by themselves.</summary>
    public int Equations { get; private set; }

    /// <summary>Formulas and symbols in lists, tables and sentences.</summary>
    public int Parts { get; private set; }

    /// <summary>What could not be read as a formula, and is no name of the library.</summary>
    public IReadOnlyList<string> Left => _left;

    /// <summary>Sets the formulas of a page.</summary>
    /// <param name="html">As the builder of the site makes it from Markdown.</param>
    public static EquationPage Of(string html) => new(html);

    private string Equation(Match match)
    {
        if (Set(match) is not { } set)
        {
            return match.Value;
        }

        Equations++;

        // Not seen by the second pass, which looks for code without attributes.
        return $"<p class=\"equation\">{set}</p>\n<p class=\"equation-text\">As text: <code class=\"text\">{match.Groups["text"].Value}</code></p>";
    }

    private string Part(Match match)
    {
        if (Set(match) is not { } set)
        {
            return match.Value;
        }

        Parts++;
        return $"<span class=\"formula\">{set}</span>";
    }

    private string? Set(Match match)
    {
        string text = WebUtility.HtmlDecode(match.Groups["text"].Value);
        if (Name().IsMatch(text))
        {
            return null;
        }

        if (!EquationLine.TrySet(text, out IReadOnlyList<XNode> set))
        {
            _left.Add(text);
            return null;
        }

        return string.Concat(set.Select(node => node.ToString(SaveOptions.DisableFormatting)));
    }

    [GeneratedRegex("<p><code>(?<text>[^<]*)</code></p>", RegexOptions.ExplicitCapture)]
    private static partial Regex Alone();

    [GeneratedRegex("<code>(?<text>[^<]*)</code>", RegexOptions.ExplicitCapture)]
    private static partial Regex Inline();

    // FuelSizing.Equations is no quantity.
    [GeneratedRegex(@"^[A-Z]\w*(\.[A-Z]\w*)+$", RegexOptions.ExplicitCapture)]
    private static partial Regex Name();
}
