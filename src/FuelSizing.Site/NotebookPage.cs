using System.Text.RegularExpressions;
using FuelSizing.Interactive;

namespace FuelSizing.Site;

/// <summary>A notebook's report as the site has it: the name of an equation beside a line of a working leads to its entry in the index.</summary>
/// <remarks>A report by itself is one file beside no other, so there it is a name.</remarks>
internal sealed partial class NotebookPage
{
    private readonly List<string> _left = [];

    private NotebookPage(string html, IReadOnlySet<string> anchors) => Html = Law().Replace(html, match =>
    {
        string name = match.Groups["name"].Value;
        string anchor = name.Replace('.', '-').ToLowerInvariant();
        if (!anchors.Contains(anchor))
        {
            _left.Add(name);
            return match.Value;
        }

        Links++;
        return $"<a class=\"{WorkingBlock.LawClass}\" href=\"../equations.html#{anchor}\">{name}</a>";
    });

    /// <summary>The page.</summary>
    public string Html { get; }

    /// <summary>Names that lead to the index.</summary>
    public int Links { get; private set; }

    /// <summary>Names that the index does not have.</summary>
    public IReadOnlyList<string> Left => _left;

    /// <summary>Links the equations of a report.</summary>
    /// <param name="html">The report.</param>
    /// <param name="anchors">Of the index of equations.</param>
    public static NotebookPage Of(string html, IReadOnlySet<string> anchors) => new(html, anchors);

    /// <summary>The anchors of a page.</summary>
    /// <param name="html">The page.</param>
    public static IReadOnlySet<string> AnchorsOf(string html) => Id().Matches(html).Select(match => match.Groups["id"].Value).ToHashSet();

    [GeneratedRegex($"""<span class="{WorkingBlock.LawClass}">(?<name>[^<]*)</span>""", RegexOptions.ExplicitCapture)]
    private static partial Regex Law();

    [GeneratedRegex("""\bid="(?<id>[^"]*)"[ >]""", RegexOptions.ExplicitCapture)]
    private static partial Regex Id();
}
