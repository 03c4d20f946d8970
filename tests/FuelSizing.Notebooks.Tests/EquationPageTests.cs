using System.Net;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FuelSizing.Interactive;
using FuelSizing.Site;
using FuelSizing.Tests.Systems;
using FuelSizing.Workings;
using Markdig;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Every equation of the index, and every symbol, stands on the site as MathML, with the text that the page in the repository has.</summary>
public partial class EquationPageTests
{
    private static readonly string[] Texts = [.. File.ReadLines(Repository.PathOf("docs", "equations.md")).Where(line => line.Length > 3 && line[0] == '`' && line[^1] == '`' && line[1] != '`').Select(line => line[1..^1])];

    [Fact]
    public void Page_OfEquations_LeavesNoneAsText()
    {
        string markdown = File.ReadAllText(Repository.PathOf("docs", "equations.md"));
        EquationPage page = EquationPage.Of(Html(markdown));

        Assert.Empty(page.Left);
        Assert.InRange(Texts.Length, 100, 400);
        Assert.Equal(Texts.Length, page.Equations);
        Assert.Equal(Texts.Length, IndexLine().Count(markdown));
        Assert.Equal(Texts.Length, IndexFormula().Count(page.Html));

        // In code that is no block only the text beside a formula, and a name of the library, is left.
        Assert.Equal(Texts.Length, TextBeside().Count(page.Html));
        Assert.Equal(["FuelSizing.Equations"], PlainCode().Matches(page.Html).Select(match => match.Groups["text"].Value).Distinct());
    }

    [Fact]
    public void Page_OfSymbols_LeavesNoneAsText()
    {
        string markdown = File.ReadAllText(Repository.PathOf("docs", "symbols.md"));
        EquationPage page = EquationPage.Of(Html(markdown));

        Assert.Empty(page.Left);
        Assert.True(page.Parts >= SymbolRow().Count(markdown));
        Assert.DoesNotMatch(PlainCode(), page.Html);
    }

    /// <summary>The texts beside the pieces, put together, are the equation as the repository's page writes it.</summary>
    [Fact]
    public void Equations_AsTheyAreSet_SayWhatTheTextSays() => Assert.All(Texts, text => Assert.Equal(text, Said(text)));

    [Theory]
    [InlineData("x = ((a_xy/b)/(c/d))/(1 + 1/(1 + k_vP/2))")]
    [InlineData("1/√f_T = 2 · log10(3.7/κ)")]
    [InlineData("t_o = max(0; t − t_d) if t < t_c; t_c otherwise")]
    [InlineData("Q = (a + b)² + c^(−0.8422)")]
    [InlineData("(a_1 + b_1 + c_1 + d_1 + e_1 + f_1 + g_1)³ ≥ 2")]
    [InlineData("Δp_f,2")]
    public void Equation_OfEachKind_IsSet(string text) => Assert.Equal(text, Said(text));

    [Theory]
    [InlineData("x = a +")]
    [InlineData("x = log(a)")]
    [InlineData("x = a * b")]
    [InlineData("x := a")]
    [InlineData("x = a if b <")]
    [InlineData("")]
    public void Equation_ThatIsNone_IsSaidToBeLeft(string text)
    {
        Assert.False(EquationLine.TrySet(text, out _));
        if (text.Length > 0)
        {
            EquationPage page = EquationPage.Of($"<p><code>{WebUtility.HtmlEncode(text)}</code></p>");
            Assert.Contains(text, page.Left);
            Assert.Equal(0, page.Equations);
        }
    }

    /// <summary>A subscript of two letters is one, and a fraction in a fraction has its bars.</summary>
    [Fact]
    public void Equation_IsSetAsAnEngineerWritesIt()
    {
        Assert.True(EquationLine.TrySet("x = (a_SL/b)/(c/d)", out IReadOnlyList<XNode> set));
        XElement[] math = [.. set.OfType<XElement>()];

        Assert.Equal(3, math.SelectMany(part => part.DescendantsAndSelf("mfrac")).Count());
        Assert.Contains(math.SelectMany(part => part.Descendants("mrow")), row => row.Attribute("displaystyle")?.Value == "true");
        Assert.Equal("SL", Assert.Single(math.SelectMany(part => part.Descendants("msub"))).Elements().Last().Value);
    }

    /// <summary>Brackets are as tall as the fraction that they hold, and a raised fraction stays in its line.</summary>
    [Fact]
    public void Brackets_AroundAFraction_AreAsTall()
    {
        Assert.True(EquationLine.TrySet("(p_r/p_d)^(1/γ)", out IReadOnlyList<XNode> set));
        XElement power = Assert.Single(set.OfType<XElement>()).Descendants("msup").Single();

        Assert.All(power.Elements().First().Descendants("mo"), bracket => Assert.Null(bracket.Attribute("stretchy")));
        Assert.Empty(power.Elements().Last().Descendants("mfrac"));
        Assert.Equal("1/γ", power.Elements().Last().Value);
    }

    [Fact]
    public void Fractions_ThatAreMultiplied_StandBesideEachOther()
    {
        Assert.True(EquationLine.TrySet("Q_r · √(Δp/Δp_r · ρ_r/ρ)", out IReadOnlyList<XNode> set));
        XElement root = Assert.Single(set.OfType<XElement>().SelectMany(part => part.Descendants("msqrt")));

        Assert.Equal(2, root.Descendants("mfrac").Count());
        Assert.Empty(root.Descendants("mfrac").SelectMany(part => part.Descendants("mfrac")));
    }

    /// <summary>On the site a line of a working leads to its equation; a name that the index does not have is said.</summary>
    [Fact]
    public void Working_OnTheSite_LeadsToItsEquations()
    {
        Working working = WorkingCases.Solve(WorkingCases.TwoStroke).Working;
        string report = new WorkingBlock(working).ToHtml();
        HashSet<string> anchors = [.. IndexAnchor().Matches(File.ReadAllText(Repository.PathOf("docs", "equations.md"))).Select(match => match.Groups["anchor"].Value)];
        NotebookPage page = NotebookPage.Of(report, anchors);

        Assert.Empty(page.Left);

        // Lines that matter most stand twice.
        Assert.Equal(working.Steps.Concat(working.Main).Count(step => step.Law is not null), page.Links);
        Assert.Contains("""<a class="fuel-equation" href="../equations.html#injectorflow-static">InjectorFlow.Static</a>""", page.Html, StringComparison.Ordinal);

        NotebookPage without = NotebookPage.Of(report, anchors.Where(anchor => anchor != "injectorflow-static").ToHashSet());
        Assert.Equal(["InjectorFlow.Static"], without.Left.Distinct());
        Assert.Equal(["cell-1", "b"], NotebookPage.AnchorsOf("""<section id="cell-1" class="prose"><h3 id="b">b</h3>"""));
    }

    private static string Said(string text)
    {
        Assert.True(EquationLine.TrySet(text, out IReadOnlyList<XNode> set), text);
        return string.Concat(set.Select(node => node is XElement math ? math.Attribute("alttext")!.Value : ((XText)node).Value));
    }

    private static string Html(string markdown) => Markdown.ToHtml(markdown, new MarkdownPipelineBuilder().UsePipeTables().Build());

    [GeneratedRegex(@"(?m)^  - \[.*\]\(#(?<anchor>.*)\): `", RegexOptions.ExplicitCapture)]
    private static partial Regex IndexAnchor();

    [GeneratedRegex(@"(?m)^  - \[.*\]\(#.*\): `")]
    private static partial Regex IndexLine();

    [GeneratedRegex("""<li><a href="#[^"]*">[^<]*</a>: <span class="formula"><math""")]
    private static partial Regex IndexFormula();

    [GeneratedRegex("""<p class="equation"><math.*</p>\n<p class="equation-text">As text: <code class="text">[^<]*</code></p>""")]
    private static partial Regex TextBeside();

    [GeneratedRegex("<code>(?<text>[^<]*)</code>", RegexOptions.ExplicitCapture)]
    private static partial Regex PlainCode();

    [GeneratedRegex(@"(?m)^\| `")]
    private static partial Regex SymbolRow();
}
