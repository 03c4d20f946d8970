using System.Collections;
using System.Reflection;
using System.Text.RegularExpressions;
using FuelSizing.Engines;
using FuelSizing.Tests.Equations;
using UnitsNet;

namespace FuelSizing.Tests.Sources;

/// <summary>The register of sources is complete: nothing unclassed, nothing anonymous, nothing left over, and the page is written from it.</summary>
public partial class RegisterTests
{
    /// <summary>Enough for a citation to be looked up: an author, a body or a standard, and a title or a number.</summary>
    [Fact]
    public void EveryWork_NamesItsAuthorOrBodyAndHowItWasObtained() => Assert.All(Works.All, row =>
    {
        Assert.NotEqual(Obtained.Unclassed, row.Source.Obtained);
        Assert.DoesNotMatch(Anonymous(), row.Source.Work);
        Assert.Matches(@"[A-Z]", row.Source.Work);
        if (row.Source.Obtained == Obtained.Transcribed)
        {
            Assert.Matches(Transcriber(), row.Source.How);
        }
    });

    [Fact]
    public void Source_WithoutAClass_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Source.Of(Obtained.Unclassed, "a work", "somehow", "nothing"));

    /// <summary>Ten digits or thirteen, the last of them the check digit.</summary>
    [Fact]
    public void EveryIsbn_HasItsCheckDigit()
    {
        string[] numbers =
        [
            .. Works.All.Select(row => row.Source.Work).Concat(Constants.All.Select(row => row.Source))
                .SelectMany(text => Isbn().Matches(text)).Select(match => match.Groups["number"].Value.Replace("-", "", StringComparison.Ordinal)).Distinct(),
        ];
        Assert.NotEmpty(numbers);
        Assert.All(numbers, number => Assert.Equal(0, number.Length == 13
            ? number.Select((digit, place) => (digit - '0') * (place % 2 == 0 ? 1 : 3)).Sum() % 10
            : number.Select((digit, place) => (digit == 'X' ? 10 : digit - '0') * (10 - place)).Sum() % 11));
    }

    [Fact]
    public void EveryConstant_OfTheFoldersWithPhysics_HasARow_AndEveryRowAConstant()
    {
        string[] there = [.. Declared().Distinct().Order(StringComparer.Ordinal)];
        string[] rows = [.. Constants.All.Select(row => row.Member).Order(StringComparer.Ordinal)];

        Assert.Equal(rows.Distinct(), rows);
        Assert.Empty(there.Except(rows));
        Assert.Empty(rows.Except(there));
        Assert.All(Constants.All, row => Assert.NotEqual(Obtained.Unclassed, row.Obtained));
    }

    [Fact]
    public void Constant_ThatNamesAWork_NamesOneOfTheRegister() => Assert.All(
        Constants.All.SelectMany(row => WorkName().Matches(row.Source)),
        match => Assert.Contains(match.Groups["name"].Value, Works.All.Select(row => row.Name)));

    /// <summary>A rule of thumb says so where it is documented.</summary>
    [Fact]
    public void EverySource_BesideAnEquation_IsClassed()
    {
        string[] sources = [.. EquationSources()];
        Assert.True(sources.Length > 40);
        Assert.All(sources, source => Assert.Contains(Constants.EquationSources, row => source.StartsWith(row.Begins, StringComparison.Ordinal)));
        Assert.All(
            Constants.EquationSources, row => Assert.Contains(sources, source => source.StartsWith(row.Begins, StringComparison.Ordinal)));
    }

    /// <summary>Engine data to fuel and pulse, a pump on a system, a pump with wiring: at least twenty exercises go through the public solver.</summary>
    [Fact]
    public void WholeCases_AreTwentyOrMore()
    {
        int cases = (
            from type in typeof(RegisterTests).Assembly.GetTypes()
            where type.Namespace == "FuelSizing.Tests.WholeCases"
            from method in type.GetMethods()
            where method.GetCustomAttribute<FactAttribute>() is not null
            select Math.Max(1, method.GetCustomAttributes<InlineDataAttribute>().Count())).Sum();
        Published.Row("7", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{cases}"));
        Assert.True(cases >= 20);
    }

    /// <summary>The page holds every row and its class; the rows are also what the page is written from.</summary>
    [Fact]
    public void Register_IsOnThePage()
    {
        string page = File.ReadAllText(Path.Combine(Root(), "docs", "validation.md"));
        string[][] works = [.. Works.All.Select(row => (string[])[Source.Word(row.Source.Obtained), row.Source.Work, row.Source.How, row.Source.IndependentOf])];
        string[][] constants = [.. Constants.All.Select(row => (string[])[Source.Word(row.Obtained), row.Member, Named(row.Source)])];
        string[][] laws = [.. Constants.EquationSources.Select(row => (string[])[Source.Word(row.Obtained), row.Begins, Links(row.Begins)])];
        (string[] Row, string Key)[] rows =
        [
            .. works.Zip(Works.All, (row, work) => (row, Anchors.OfWork(work.Name))),
            .. constants.Zip(Constants.All, (row, constant) => (row, Anchors.OfConstant(constant.Member))),
            .. laws.Zip(Constants.EquationSources, (row, law) => (row, Anchors.OfEquationSource(law.Begins))),
        ];
        Assert.Equal(rows.Length, rows.Select(row => row.Key).Distinct().Count());
        Array.ForEach(rows, row => Published.Row([row.Key.StartsWith("work", StringComparison.Ordinal) ? "4" : row.Key.StartsWith("constant", StringComparison.Ordinal) ? "5" : "6", .. row.Row, row.Key]));

        Assert.All(rows, row => Assert.Contains($"| <a id=\"{row.Key}\"></a>{string.Join(" | ", row.Row)} |", page, StringComparison.Ordinal));
    }

    // The equations whose source begins so: each with a whole source of its own on its page.
    private static string Links(string begins) => string.Join(", ", EquationText.All
        .Where(equation => ReferenceEquals(begins, Constants.EquationSources.First(row => equation.Source.StartsWith(row.Begins, StringComparison.Ordinal)).Begins))
        .Select(equation => $"[{equation.Name}](equations.md#{Anchors.OfEquation(equation.Name)})"));

    // "Works.Heywood" in the table of constants is that row's work.
    private static string Named(string source) =>
        WorkName().Replace(source, match => Works.All.Single(row => row.Name == match.Groups["name"].Value).Source.Work);

    private static IEnumerable<string> EquationSources() =>
        File.ReadLines(Path.Combine(Root(), "docs", "equations.md"))
            .Where(line => line.StartsWith("Source: ", StringComparison.Ordinal))
            .Select(line => line["Source: ".Length..]);

    /// <summary>Constants, and ready-made values and descriptions, that those folders declare.</summary>
    private static IEnumerable<string> Declared() =>
        from type in typeof(Engine).Assembly.GetTypes()
        where Constants.Folders.Any(folder => type.Namespace == $"FuelSizing.{folder}" || type.Namespace?.StartsWith($"FuelSizing.{folder}.", StringComparison.Ordinal) == true)
        where !type.IsEnum && !type.Name.Contains('<', StringComparison.Ordinal) && type.DeclaringType is null
        from field in type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly)
        where IsFigure(field)
        select $"{type.Name.Split('`')[0]}.{Plain(field.Name)}";

    private static bool IsFigure(FieldInfo field) =>
        field.FieldType == typeof(double)
        || typeof(IQuantity).IsAssignableFrom(field.FieldType)
        || (!field.IsLiteral && field.FieldType.Namespace is { } place && (IsPart(place, field.FieldType) || IsListOfFigures(field.FieldType)));

    // A description, such as Fuel.Petrol; what compares or draws descriptions is none.
    private static bool IsPart(string place, Type type) =>
        Constants.Folders.Any(folder => place == $"FuelSizing.{folder}") && !type.IsEnum && !type.IsGenericType;

    private static bool IsListOfFigures(Type type) =>
        typeof(IEnumerable).IsAssignableFrom(type) && type != typeof(string)
        && (type.IsArray ? [type.GetElementType()!] : type.GetGenericArguments()).Any(item =>
            item == typeof(double) || typeof(IQuantity).IsAssignableFrom(item) || item.FullName!.StartsWith("System.ValueTuple", StringComparison.Ordinal)
            || item.Namespace == "FuelSizing.Electrical");

    private static string Plain(string field) => field.StartsWith('<') ? field[1..field.IndexOf('>', StringComparison.Ordinal)] : field;

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "FuelSizing.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    }

    /// <summary>What hides where a number is from.</summary>
    [GeneratedRegex(@"(?i)companion example|textbook exercise|worked example of a|does not name|unknown|anonymous|personal page")]
    private static partial Regex Anonymous();

    /// <summary>Who transcribed it: a site, a repository, an agency.</summary>
    [GeneratedRegex(@"\.(com|edu|org)\b|\w+/\w+|agency|library|program")]
    private static partial Regex Transcriber();

    [GeneratedRegex(@"ISBN (?<number>[\dX-]+)", RegexOptions.ExplicitCapture)]
    private static partial Regex Isbn();

    [GeneratedRegex(@"Works\.(?<name>\w+)", RegexOptions.ExplicitCapture)]
    private static partial Regex WorkName();
}
