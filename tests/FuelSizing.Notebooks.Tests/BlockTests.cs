using System.Xml.Linq;
using FuelSizing.Interactive;
using Microsoft.DotNet.Interactive.Formatting;

namespace FuelSizing.Notebooks.Tests;

public class BlockTests
{
    private const string Hostile = "<script>alert(1)</script> & \"q\"";

    [Fact]
    public void Table_HostileTexts_AreEscapedInHtml()
    {
        string html = new Table(Hostile, [TableColumn.Text(Hostile)], [[Hostile]], Hostile).ToHtml();

        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.Equal(Hostile, XElement.Parse(html).Descendants("td").Single().Value);
    }

    [Fact]
    public void Table_PlainText_LinesUpNumbersToTheRight()
    {
        string text = new Table("Margins", [TableColumn.Text("Part"), TableColumn.Number("Margin")], [["pump", "21 %"], ["injectors", "-8 %"]]).ToPlainText();

        Assert.Equal(
            """
            Margins
            Part       Margin
            ---------  ------
            pump         21 %
            injectors    -8 %
            """.ReplaceLineEndings("\n"),
            text);
    }

    [Fact]
    public void Table_RowWithAMissingCell_IsRefusedByNumber()
    {
        var error = Assert.Throws<ArgumentException>(() => new Table("Margins", [TableColumn.Text("Part"), TableColumn.Number("Margin")], [["pump", "21 %"], ["rail"]]));

        Assert.Contains("rows[1]", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Table_WithoutColumns_IsRefused() =>
        Assert.Equal("columns", Assert.Throws<ArgumentException>(() => new Table("Margins", [], [["a"]])).ParamName);

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("a\u0000b")]
    [InlineData("\uffff")]
    public void Callout_TitleThatCannotBeShown_IsRefused(string title) =>
        Assert.Equal("title", Assert.Throws<ArgumentException>(() => Callout.Holds(title)).ParamName);

    [Fact]
    public void Callout_HalfACharacter_IsRefusedButAWholeOneIsNot()
    {
        // Built here: a lone surrogate does not survive the way a test's inline data travels.
        const string Whole = "\ud83d\ude97";

        Assert.Throws<ArgumentException>(() => Callout.Holds(Whole[..1]));
        Assert.Throws<ArgumentException>(() => Callout.Holds(Whole[1..]));
        Assert.Equal(Whole, Callout.Holds(Whole).Title);
    }

    [Fact]
    public void Callout_KindOutsideTheNamedOnes_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Callout((CalloutKind)9, "title"));

    [Theory]
    [InlineData(CalloutKind.Holds, "Holds", true)]
    [InlineData(CalloutKind.Fails, "Fails", true)]
    [InlineData(CalloutKind.CannotSay, "Cannot say", true)]
    [InlineData(CalloutKind.Caution, "Caution", false)]
    public void Callout_EveryKind_IsNamedInWordsInBothForms(CalloutKind kind, string word, bool verdict)
    {
        var callout = new Callout(kind, "the title", "a line");

        Assert.Equal($"{word}: the title\n  a line", callout.ToPlainText());
        Assert.Contains(word, XElement.Parse(callout.ToHtml()).Value, StringComparison.Ordinal);
        Assert.Equal(verdict, callout.IsVerdict);
    }

    [Fact]
    public void Register_CalledTwice_ShowsBlocksAsHtmlAndAsText()
    {
        FuelSizingExtension.Register();
        FuelSizingExtension.Register();
        var callout = Callout.Holds("the pump has the capacity");

        Assert.Equal(callout.ToHtml(), callout.ToDisplayString("text/html"));
        Assert.Equal(callout.ToPlainText(), callout.ToDisplayString("text/plain"));
        Assert.Equal(["text/html", "text/plain"], Formatter.GetPreferredMimeTypesFor(typeof(Callout)));
    }
}
