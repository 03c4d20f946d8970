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

    /// <summary>Room for a column of digits: each is 556 thousandths of the size wide (Adobe's metrics of Helvetica, whose widths Arial has), and the cell's padding is 16 px.</summary>
    [Theory]
    [InlineData(6)]
    [InlineData(20)]
    public void Table_OfDigits_IsGivenTheirWidth(int digits)
    {
        int width = TableWidth.Of([TableColumn.Number("n"), TableColumn.Number("n")], [[new string('8', digits), "1"], ["3", new string('4', digits)]]);
        double drawn = 2 * ((digits * 0.556 * 15) + 16);
        Assert.InRange(width, drawn, 1.1 * drawn);
    }

    /// <summary>A comparison whose last row is a sentence is a table on a desk all the same: the sentence breaks. A column of sentences is wide enough to be read.</summary>
    [Fact]
    public void Table_WithOneSentenceAmongFigures_IsNoWiderForIt()
    {
        string sentence = string.Join(' ', Enumerable.Repeat("delivers", 12));
        TableColumn[] columns = [TableColumn.Text("Figure"), TableColumn.Text("one"), TableColumn.Text("two"), TableColumn.Text("three")];
        IReadOnlyList<string>[] figures = [.. Enumerable.Range(0, 6).Select(row => (IReadOnlyList<string>)[$"figure {row}", "300 kPa", "81.1 %", "360 kPa"])];

        Assert.InRange(TableWidth.Of(columns, [.. figures, ["at most", sentence, sentence, sentence]]), 1, 680);
        Assert.InRange(TableWidth.Of(columns, [["at most", sentence, sentence, sentence]]), 3 * 34 * 0.556 * 15, 1200);
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

    /// <summary>A headline that begins with the word of its kind is not read twice.</summary>
    [Fact]
    public void Callout_WhoseTitleSaysItself_SaysTheWordOnce()
    {
        var callout = Callout.HoldsAsFarAsJudged("Holds as far as judged over 0.00 bar to 0.60 bar.");

        Assert.Equal("◑ Holds as far as judged over 0.00 bar to 0.60 bar.", XElement.Parse(callout.ToHtml()).Value.Replace('\u00A0', ' '));
        Assert.Equal("Holds as far as judged over 0.00 bar to 0.60 bar.", callout.Line);
        Assert.Equal("Fails: Does not hold: pump.", Callout.Fails("Does not hold: pump.").Line);
        Assert.Equal("Holds: Holdsworth", Callout.Holds("Holdsworth").Line);
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
