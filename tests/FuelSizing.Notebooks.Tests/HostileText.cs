namespace FuelSizing.Notebooks.Tests;

/// <summary>Texts that leave a mark on the page if a browser runs them, each with a place in a page where it would run unescaped.</summary>
/// <remarks>Each is short enough for the name of a part. The mark goes on the topmost page, so it is seen from within a frame too.</remarks>
internal static class HostileText
{
    private const string Mark = "top.document.documentElement.title+='!'";

    /// <summary>The text, and a piece of HTML with <c>{0}</c> where the text stands.</summary>
    public static IReadOnlyList<(string Text, string Place)> All { get; } =
    [
        ($"<script>{Mark}</script>", "<p>{0}</p>"),
        ($"<img src=x onerror=\"{Mark}\">", "<p>{0}</p>"),
        ($"<svg onload={Mark}>", "<p>{0}</p>"),
        ($"\"><img src=x onerror={Mark}>", "<img alt=\"{0}\">"),
        ($"'><img src=x onerror={Mark}>", "<img alt='{0}'>"),
        ($"\" onerror=\"{Mark}\" x=\"", "<img alt=\"{0}\" src=x>"),
        ($"</style><script>{Mark}</script>", "<style>{0}</style>"),
        ($"</title><script>{Mark}</script>", "<title>{0}</title>"),
        ($"]]><script>{Mark}</script>", "<svg><desc><![CDATA[{0}]]></desc></svg>"),
        ($"--><script>{Mark}</script>", "<!--{0}-->"),
        ($"</pre></svg><script>{Mark}</script>", "<svg><text><pre>{0}</pre></text></svg>"),
        ($"javascript:{Mark}", "<a href=\"{0}\">a link</a>"),
    ];

    /// <summary>Markdown by which a notebook's prose would run something.</summary>
    public static IReadOnlyList<string> Markdown { get; } =
    [
        .. All.Select(one => one.Text),
        .. All.Select(one => string.Format(System.Globalization.CultureInfo.InvariantCulture, one.Place, one.Text)),
        $"[a link](javascript:{Mark})",
        $"[a link](JaVaScRiPt:{Mark})",
        $"[a link](java&#115;cript:{Mark})",
        $"[a link](<&#9;javascript:{Mark}>)",
        $"[a link](<java\tscript:{Mark}>)",
        $"[a link](data:text/html,<script>{Mark.Replace(" ", "", StringComparison.Ordinal)}</script>)",
        $"[a link][there]\n\n[there]: javascript:{Mark}",
        $"<javascript:{Mark}>",
        $"![a picture](javascript:{Mark})",
        $"![a picture](x\"onerror=\"{Mark})",
        $"![\"onerror=\"{Mark}](data:image/png,x)",
        $"![a picture](data:image/svg+xml,<svg/onload={Mark}>)",
        $"| head |\n| --- |\n| <script>{Mark}</script> |",
        $"```\"><script>{Mark}</script>\n<script>{Mark}</script>\n```",
        $"`<script>{Mark}</script>` and ~~<script>{Mark}</script>~~",
        $"    <script>{Mark}</script>",
        $"<div onclick=\"{Mark}\" onmouseover=\"{Mark}\" style=\"animation:x 1s\" onanimationstart=\"{Mark}\">\n\n*prose*\n\n</div>",
        $"<iframe srcdoc=\"<script>{Mark}</script>\"></iframe>",
        $"<meta http-equiv=\"refresh\" content=\"0;url=javascript:{Mark}\">",
    ];
}
