namespace FuelSizing.Notebooks.Tests;

/// <summary>A notebook's text may fold an answer, and may bring no other element into a report.</summary>
public class ProseTests
{
    private const string Answer = "<details>\n<summary>Answer</summary>\n\nIt is **1.4 ms**.\n\n</details>";

    [Fact]
    public void Answer_IsFolded() =>
        Assert.Matches("^<details><summary>Answer</summary>\\s*<p>It is <strong>1.4 ms</strong>.</p>\\s*</details>\\s*$", Prose.ToHtml(Answer));

    /// <summary>Marks without their other end, with attributes, or around elements stay words.</summary>
    [Theory]
    [InlineData("<details>\n<summary>Answer</summary>\n\nno end")]
    [InlineData("no begin\n\n</details>")]
    [InlineData("<details open>\n<summary>Answer</summary>\n\nopen\n\n</details>")]
    [InlineData("<details>\n<summary><b>bold</b></summary>\n\ntext\n\n</details>")]
    [InlineData("<details ontoggle=\"alert(1)\">\n<summary>Answer</summary>\n\ntext\n\n</details>")]
    public void Marks_OfAnyOtherForm_StayWords(string markdown) => Assert.DoesNotContain("<details", Prose.ToHtml(markdown), StringComparison.Ordinal);

    [Fact]
    public void Answer_WithAnElementInIt_HasItAsWords()
    {
        string html = Prose.ToHtml("<details>\n<summary>Answer</summary>\n\n<script>alert(1)</script>\n\n</details>");

        Assert.Contains("<details>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
    }
}
