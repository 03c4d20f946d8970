using System.Xml.Linq;
using FuelSizing.Files;
using FuelSizing.Interactive;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The blanks for tests at the bench: what is printed is what the file asks for, in its order.</summary>
public class BenchSheetTests
{
    public static TheoryData<BenchTestKind> Kinds { get; } = [.. Enum.GetValues<BenchTestKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Sheet_HasABlankForEveryColumnOfTheFile(BenchTestKind kind)
    {
        BenchSheet sheet = new(kind, "Injector C");
        XElement page = Parsed(sheet);
        XElement form = page.Descendants("table").Single(table => (string?)table.Attribute("class") == "form");
        BenchColumn[] readings = [.. BenchColumn.Of(kind).Where(column => column.IsReading)];
        Assert.Equal(readings.Length, form.Descendants("th").Count());
        foreach ((XElement head, BenchColumn column) in form.Descendants("th").Zip(readings))
        {
            Assert.Contains(column.Name.Replace('_', ' '), head.Value, StringComparison.Ordinal);
            Assert.Contains(column.Unit ?? string.Empty, head.Value, StringComparison.Ordinal);
        }

        Assert.All(form.Element("tbody")!.Elements("tr"), row => Assert.All(row.Elements("td"), cell => Assert.Equal("blank", (string?)cell.Attribute("class"))));
        foreach (BenchColumn column in BenchColumn.Of(kind).Where(column => !column.IsReading))
        {
            Assert.Contains(column.Meaning.Replace('_', ' '), page.Value, StringComparison.Ordinal);
        }

        Assert.Contains("Before you begin", page.Value, StringComparison.Ordinal);
        Assert.Matches("Local codes (and a licensed practi[ct]\\w+ )?take precedence", sheet.ToPlainText());
        Assert.Matches("fire|Fire|burns|ignit", sheet.ToPlainText());
    }

    /// <summary>For <c>.ci/sheet</c>, which prints it: it must fit one page of either paper.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Sheet_IsWrittenForThePrinter(BenchTestKind kind)
    {
        string page = new BenchSheet(kind, "Injector C of the hill-climb car, out of the box, on the club's bench, second try after cleaning").ToDocument();
        Assert.StartsWith("<!DOCTYPE html>", page, StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable(SizingSheetTests.FolderVariable) is { Length: > 0 } folder)
        {
            File.WriteAllText(Path.Combine(folder, $"bench-{kind}.html"), page);
        }
    }

    [Fact]
    public void Sheet_WithAHostileTitle_EscapesIt() =>
        Assert.DoesNotContain("<script", new BenchSheet(BenchTestKind.PulseTest, "<script>alert(1)</script>").ToDocument(), StringComparison.OrdinalIgnoreCase);

    [Fact]
    public void Sheet_OfNoKind_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new BenchSheet((BenchTestKind)99, "Injector C"));
        Assert.Throws<ArgumentException>(() => new BenchSheet(BenchTestKind.PulseTest, " "));
    }

    private static XElement Parsed(BenchSheet sheet) => XElement.Parse(sheet.ToDocument()["<!DOCTYPE html>\n".Length..]);
}
