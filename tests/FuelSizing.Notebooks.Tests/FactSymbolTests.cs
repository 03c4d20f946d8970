using System.Text.RegularExpressions;
using System.Xml.Linq;
using FuelSizing.Interactive;
using FuelSizing.Tests.Systems;
using Microsoft.DotNet.Interactive.Formatting;

namespace FuelSizing.Notebooks.Tests;

/// <summary>What is shown of a thing has the symbols of docs/symbols.md, and no others.</summary>
public sealed partial class FactSymbolTests
{
    private static readonly HashSet<string> Listed =
        [.. File.ReadLines(Repository.PathOf("docs", "symbols.md")).Select(line => Row().Match(line)).Where(row => row.Success).Select(row => row.Groups["symbol"].Value)];

    public FactSymbolTests() => FuelSizingExtension.Register();

    /// <summary>Every shown type, as a reader sees it. A line of a working alone may be that of a part, and has its number.</summary>
    [Fact]
    public Task Symbols_OfEverySpecimen_AreThoseOfTheList() => Cell.RunAsync(() =>
    {
        List<string> seen = [];
        foreach (object specimen in Specimens.Collect().SelectMany(kind => kind.Value))
        {
            string html = specimen.ToDisplayString(HtmlFormatter.MimeType);
            if (!html.StartsWith("<div", StringComparison.Ordinal))
            {
                continue;
            }

            string[] symbols = [.. Column(XElement.Parse(html))];
            seen.AddRange(symbols);
            Assert.All(symbols, symbol => Assert.True(Has(symbol), $"{specimen.GetType().Name} shows {symbol}, which is not in docs/symbols.md"));
        }

        Assert.InRange(seen.Distinct().Count(), 80, 300);
    });

    [Fact]
    public void Symbols_OfTheStepTables_AreThoseOfTheList() =>
        Assert.All(WorkingCases.Names, name => Assert.DoesNotContain(SizingTables.Steps(WorkingCases.Solve(name)).Rows, row => !Has(row[1])));

    /// <summary>Lines that no specimen has are found in the source: a word in quotes that stands between others is a symbol.</summary>
    [Fact]
    public void Symbols_InTheSourceOfWhatIsShown_AreThoseOfTheList()
    {
        (string File, string Symbol)[] symbols =
        [
            .. from file in Directory.GetFiles(Repository.PathOf("src", "FuelSizing.Interactive", "Shown"), "*.cs").Append(Repository.PathOf("src", "FuelSizing.Interactive", "Results", "RunText.cs"))
               from match in Between().Matches(File.ReadAllText(file))
               select (Path.GetFileName(file), match.Groups["symbol"].Value),
        ];

        Assert.InRange(symbols.Length, 150, 400);
        Assert.Empty(symbols.Where(one => !Listed.Contains(one.Symbol)).Select(one => $"{one.File}: {one.Symbol}"));
    }

    [Fact]
    public void Symbol_ThatTheListDoesNotHave_IsFound()
    {
        Assert.InRange(Listed.Count, 150, 400);
        Assert.All((string[])["V", "L", "z", "U", "Δp_x,1"], symbol => Assert.False(Has(symbol)));
        Assert.Equal("V", Between().Match("new(\"Displacement\", \"V\", style.Of(engine.Displacement))").Groups["symbol"].Value);
        Assert.Equal(["V"], Column(XElement.Parse(new Facts("T", [new("Displacement", "V", "1.3 L")]).Table().ToHtml())));
    }

    private static bool Has(string symbol) => Listed.Contains(symbol) || Listed.Contains(Number().Replace(symbol, string.Empty));

    /// <summary>What stands under the heading "Symbol", where there is one.</summary>
    private static IEnumerable<string> Column(XElement page) =>
        from table in page.DescendantsAndSelf("table")
        let place = table.Descendants("th").Select(head => head.Value).ToList().IndexOf("Symbol")
        where place >= 0
        from row in table.Descendants("tr")
        let cells = row.Elements("td").ToArray()
        where cells.Length > place && cells[place].Value is not ("" or "–")
        select cells[place].Value;

    [GeneratedRegex(@"^\| `(?<symbol>[^`]+)` \|", RegexOptions.ExplicitCapture)]
    private static partial Regex Row();

    [GeneratedRegex(@"(?<=, )""(?<symbol>[^""\s–]{1,10})""(?=, )|\b(Answer<[\w.]+>\(|Iso1585 \? |"" : )""(?<symbol>[^""\s–]{1,10})""(?=, s)|\bAnswer<[\w.]+>\(""(?<symbol>[^""\s–]{1,10})""(?=\))", RegexOptions.ExplicitCapture)]
    private static partial Regex Between();

    [GeneratedRegex(@"(?<=^[^_,]+)_[1-9]\d*$|(?<=_[^,]+),[1-9]\d*$")]
    private static partial Regex Number();
}
