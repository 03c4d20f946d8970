using System.Text.RegularExpressions;
using FuelSizing.Interactive;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The page of hazards names checks; each of them must be there.</summary>
public partial class SafetyPageTests
{
    private static string[] Hazards { get; } =
    [
        .. File.ReadAllLines(Repository.PathOf("docs", "safety.md"))
            .Where(line => line.StartsWith('|'))
            .Skip(2),
    ];

    [Fact]
    public void EveryHazard_HasItsHarmItsCheckAndWhatStaysWithThePractitioner() => Assert.All(Hazards, hazard =>
    {
        string[] cells = hazard.Trim('|').Split('|', StringSplitOptions.TrimEntries);
        Assert.Equal(4, cells.Length);
        Assert.All(cells, Assert.NotEmpty);
        Assert.Matches(Type(), cells[2]);
    });

    /// <summary>Words, then a colon and the tests; a promise without a test is none.</summary>
    [Fact]
    public void EveryPromise_NamesTheTestsThatTryIt()
    {
        string[] promises = [.. Hazards.SelectMany(hazard => hazard.Trim('|').Split('|')[2].Split("<br>", StringSplitOptions.TrimEntries))];

        Assert.True(promises.Length > 2 * Hazards.Length);
        Assert.All(promises, promise => Assert.Matches(Promise(), promise));
    }

    [Fact]
    public void EveryTypeNamed_IsOneOfTheLibrarys()
    {
        string[] named = [.. Hazards.SelectMany(hazard => Type().Matches(hazard)).Select(match => match.Groups["name"].Value).Distinct()];
        Type[] there = [.. typeof(Cautions).Assembly.GetExportedTypes(), .. typeof(FuelSizingExtension).Assembly.GetExportedTypes()];

        Assert.NotEmpty(named);
        Assert.Empty(named.Except(there.Select(type => type.FullName)));
    }

    [Fact]
    public void EveryTestNamed_IsATestOfThisRepository()
    {
        string[] named = [.. Hazards.SelectMany(hazard => Test().Matches(hazard)).Select(match => match.Groups["name"].Value).Distinct()];
        HashSet<string> there =
        [
            .. from file in Directory.GetFiles(Repository.PathOf("tests"), "*Tests.cs", SearchOption.AllDirectories)
               from method in Method().Matches(File.ReadAllText(file))
               select $"{Path.GetFileNameWithoutExtension(file)}.{method.Groups["name"].Value}",
        ];

        Assert.True(named.Length > Hazards.Length);
        Assert.Empty(named.Except(there));
    }

    /// <summary>Whoever starts at the front page, or at the cautions, finds the hazards.</summary>
    [Theory]
    [InlineData("README.md", "docs/safety.md")]
    [InlineData("docs/index.md", "safety.md")]
    [InlineData("docs/toc.yml", "safety.md")]
    public void Page_IsLinked(string page, string link) =>
        Assert.Contains(link, File.ReadAllText(Repository.PathOf(page.Split('/'))), StringComparison.Ordinal);

    [GeneratedRegex(@"\]\(xref:(?<name>[\w.]+)\)", RegexOptions.ExplicitCapture)]
    private static partial Regex Type();

    [GeneratedRegex(@"`(?<name>\w+Tests\.\w+)`", RegexOptions.ExplicitCapture)]
    private static partial Regex Test();

    [GeneratedRegex(@"^[^`;]{10,}: `\w+Tests\.\w+`(, `\w+Tests\.\w+`)*$")]
    private static partial Regex Promise();

    /// <summary>A method that the attributes just above it mark as a test.</summary>
    [GeneratedRegex(@"\[(Fact|Theory)(\(DisplayName = ""[^""]*""\))?\](?:\s*\[InlineData\([^\r\n]*\)\])*[^{}=]*?\bpublic\s+(async\s+Task|void)\s+(?<name>\w+)\(", RegexOptions.ExplicitCapture)]
    private static partial Regex Method();
}
