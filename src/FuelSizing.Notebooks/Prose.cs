using System.Text.RegularExpressions;
using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace FuelSizing.Notebooks;

/// <summary>Turns a notebook's Markdown into HTML that loads nothing and runs nothing.</summary>
internal static partial class Prose
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables()
        .UseEmphasisExtras()
        .DisableHtml()
        .Build();

    public static string ToHtml(string markdown)
    {
        var document = Markdown.Parse(markdown, Pipeline);
        foreach (var link in document.Descendants<LinkInline>().ToList())
        {
            if (link.IsImage && !(link.Url?.StartsWith("data:image/", StringComparison.OrdinalIgnoreCase) ?? false))
            {
                // The report is one file: a picture elsewhere would be missing, so its alternative text replaces it.
                link.ReplaceBy(new LiteralInline($"[picture: {Words(link)}]"));
            }
            else if (!link.IsImage && !IsPlainLink(link.Url))
            {
                link.Url = "";
            }
        }

        // An address between angle brackets may have any scheme.
        foreach (var link in document.Descendants<AutolinkInline>().Where(link => !link.IsEmail && !IsPlainLink(link.Url)).ToList())
        {
            link.ReplaceBy(new LiteralInline(link.Url));
        }

        return Folding(document.ToHtml(Pipeline));
    }

    /// <summary>The first heading of the first level, or <see langword="null"/>.</summary>
    public static string? Heading(string markdown) =>
        Markdown.Parse(markdown, Pipeline).OfType<HeadingBlock>().FirstOrDefault(heading => heading.Level == 1) is { Inline: { } inline }
            ? string.Concat(inline.Descendants<Inline>().Select(Literal))
            : null;

    /// <summary>
    /// The one element that a notebook's text may have: a folded answer, whose marks stand in paragraphs of their own. They come escaped like all else, and only in pairs become marks again.
    /// </summary>
    private static string Folding(string html)
    {
        const string End = "<p>&lt;/details&gt;</p>";
        return Folded().Count(html) == html.Split(End).Length - 1
            ? Folded().Replace(html, "<details><summary>${what}</summary>").Replace(End, "</details>", StringComparison.Ordinal)
            : html;
    }

    [GeneratedRegex("<p>&lt;details&gt;\\s*&lt;summary&gt;(?<what>[^<&]*)&lt;/summary&gt;</p>", RegexOptions.ExplicitCapture)]
    private static partial Regex Folded();

    private static string Words(LinkInline link) => string.Concat(link.Descendants<Inline>().Select(Literal));

    private static string Literal(Inline inline) => inline switch
    {
        LiteralInline literal => literal.Content.ToString(),
        CodeInline code => code.Content,
        LineBreakInline => " ",
        _ => "",
    };

    private static bool IsPlainLink(string? url) =>
        url is not null
        && (url.StartsWith('#') || (Uri.TryCreate(url, UriKind.Absolute, out var absolute) ? absolute.Scheme is "https" or "http" or "mailto" : !url.Contains(':')));
}
