using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FuelSizing.Checks;
using FuelSizing.Files;
using FuelSizing.Interactive;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Selection;
using FuelSizing.Systems;
using FuelSizing.Workings;
using Microsoft.DotNet.Interactive.Formatting;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Whatever a cell ends in, a reader sees a table and not a heap of properties.</summary>
public sealed partial class ShownTypeTests
{
    // Types that are no value to look at.
    private static readonly Dictionary<Type, string> Excused = new()
    {
        [typeof(SolvedPoint)] = "the numbers of an OperatingResult, which is shown",
        [typeof(SystemParts)] = "the parts of a FuelSystem, which is shown",
        [typeof(RemedyTask)] = "what a check is given to work out a remedy from",
        [typeof(Part)] = "a name; margins and standings are shown with it",
        [typeof(CheckReading<FuelSizing.Numerics.Real>)] = "the numbers of a margin, which is shown",
        [typeof(RunReader)] = "reads a file once, row by row: showing it would read it; RecordedRun is shown",
        [typeof(PointBatch)] = "solves spans of numbers and holds no result",
        [typeof(PointInputs)] = "a ref struct, which no cell can end in",
        [typeof(PointOutputs)] = "a ref struct, which no cell can end in",
        [typeof(DisplayUnit<>)] = "a unit to write in, not a figure",
        [typeof(FuelSizing.Numerics.Real)] = "a plain number of an equation, in SI",
        [typeof(FuelSizing.Numerics.Divisor<>)] = "a plain number of an equation, in SI",
        [typeof(FigureUnits)] = "units to write in, not figures",
        [typeof(TextStyle)] = "how to write, not what",
        [typeof(StatementArgument)] = "a part of a statement, which is shown",
        [typeof(StatementText)] = "what the compiler makes of an interpolated string",
    };

    public ShownTypeTests() => FuelSizingExtension.Register();

    [Fact]
    public void EveryPublicType_IsShown_OrExcusedByName()
    {
        HashSet<Type> shown = Registered();

        Type[] missing = [.. Public().Where(type => !shown.Contains(type))];

        Assert.True(missing.Length == 0, $"Not shown, nor excused with a reason: {string.Join(", ", missing.Select(Name))}");
        Assert.True(Public().Count() > 100, "Hardly any types were found: does the search still see them?");
    }

    [Fact]
    public void EveryListThatThePublicTypesHandOut_IsShown()
    {
        HashSet<Type> shown = Registered();

        Type[] missing =
        [
            .. Signatures()
                .Where(type => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
                .Select(type => type.GetGenericArguments()[0])
                .Where(type => type.Assembly == typeof(FuelSystem).Assembly && !type.IsEnum && !type.ContainsGenericParameters)

                // Checks have no figures of their own, what is readable writes itself, and a remedy's points are handed to checks alone.
                .Where(type => !type.IsInterface && !Excused.ContainsKey(type))
                .Distinct()
                .Where(type => !shown.Contains(typeof(IEnumerable<>).MakeGenericType(type))),
        ];

        Assert.True(missing.Length == 0, $"Lists not shown: {string.Join(", ", missing.Select(Name))}");
    }

    [Fact]
    public void EveryExcuse_IsOfAPublicTypeThatIsNotShown() =>
        Assert.All(Excused.Keys, type => Assert.True(type.IsPublic && !Registered().Contains(type)));

    [Fact]
    public void EveryShownType_HasASpecimen()
    {
        IReadOnlyDictionary<Type, List<object>> specimens = Specimens.Collect();

        Type[] missing = [.. Public().Where(type => !specimens.ContainsKey(type))];

        Assert.True(missing.Length == 0, $"No specimen of: {string.Join(", ", missing.Select(Name))}");
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public Task EverySpecimen_ShowsItselfInBothForms_InTheUnitsChosen_WithItsTextEscaped(bool us) => Cell.RunAsync(() =>
    {
        Units.Use(us ? TextStyle.UsCustomary : TextStyle.Metric);
        int hostile = 0;
        foreach (object specimen in Specimens.Collect().Where(kind => !Excused.ContainsKey(kind.Key)).SelectMany(kind => kind.Value))
        {
            string html = specimen.ToDisplayString(HtmlFormatter.MimeType);
            string text = specimen.ToDisplayString(PlainTextFormatter.MimeType);
            string name = Name(specimen.GetType());

            Assert.True(html.StartsWith("<div", StringComparison.Ordinal) && html.EndsWith("</div>", StringComparison.Ordinal), $"{name}: {html}");
            XElement page = XElement.Parse(html);
            Assert.DoesNotContain(page.DescendantsAndSelf(), element => element.Name == "b");
            Assert.DoesNotContain("FuelSizing.", text, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
            hostile += text.Contains(Specimens.Hostile, StringComparison.Ordinal) ? 1 : 0;
            string[] cells = [.. page.Descendants().Where(element => element.Name == "td" || element.Name == "th" || element.Name == "p").Select(element => element.Value.Replace('\u00A0', ' '))];
            Assert.All(cells.Where(cell => cell.Length > 0 && specimen is not Verdict), cell => Assert.True(text.Contains(cell, StringComparison.Ordinal), $"{name}: {cell} is not in the plain text"));

            // A working is in SI as well as in display units; what is wrong with a file is told in the file's own units; and why a
            // candidate was left out is the words of the exception that it met.
            if (us && specimen is not (Working or WorkingStep or FileProblem or InputQuestion or PlausibleRange or RunProblem or RecordedRun or LeftOut))
            {
                Assert.All(cells, cell => Assert.False(Metric().IsMatch(cell), $"{name}: {cell}"));
            }
        }

        Assert.True(hostile > 15, $"The hostile name was seen {hostile} times only: is it still in the specimens?");
    });

    [Fact]
    public void Facts_ShowOnlyTheColumnsThatApply()
    {
        var table = new Facts("T", [new("Flow", "Q", "12.5 US gal/h"), new("Known", "", "cannot say")]).Table();

        Assert.Equal(["Name", "Symbol", "Value", "Unit"], table.Columns.Select(column => column.Header));
        Assert.Equal(["Flow", "Q", "12.5", "US gal/h"], table.Rows[0]);
        Assert.Equal(["Known", "", "cannot say", ""], table.Rows[1]);
    }

    [Theory]
    [InlineData("−3 %", "−3", "%")]
    [InlineData("±1.2 kPa", "±1.2", "kPa")]
    [InlineData("1,200", "1,200", "")]
    [InlineData("over +500 %", "over +500 %", "")]
    [InlineData("", "", "")]
    public void Fact_PartsNumberFromUnit(string figure, string value, string unit)
    {
        var fact = new Fact("x", "", figure);

        Assert.Equal((value, unit), (fact.Value, fact.Unit));
    }

    [Fact]
    public void List_OfNothing_SaysSo() => Assert.Contains("none", Array.Empty<Margin>().ToDisplayString(PlainTextFormatter.MimeType), StringComparison.Ordinal);

    [Fact]
    public void List_OfMany_ShowsTheFirstAndSaysSo()
    {
        var table = Facts.List(Enumerable.Range(1, 200).Select(number => new Facts($"thing {number}", [Fact.Words("Number", $"{number}")])), TextStyle.Metric);

        Assert.Equal(60, table.Rows.Count);
        Assert.Equal("The first 60.", table.Note);
    }

    [Theory]
    [InlineData("a\u0001b", "a\uFFFDb")]
    [InlineData("  ", "–")]
    [InlineData("", "–")]
    public void VisibleText_OfWhatNoPageCanHold_IsReplaced(string text, string seen) => Assert.Equal(seen, VisibleText.Of(text));

    [Fact]
    public void VisibleText_OfHalfACharacter_IsReplaced() => Assert.Equal("a\uFFFD", VisibleText.Of($"a{'\uD800'}"));

    [Fact]
    public void VisibleText_OfALongText_IsCut() => Assert.Equal(601, VisibleText.Of(new string('x', 10_000)).Length);

    [Theory]
    [InlineData("duty cycle 81.1 % of at most 85.0 %", "duty cycle 81.1_% of at most 85.0_%")]
    [InlineData("at 6,800 rev/min, 0.60 bar", "at 6,800_rev/min, 0.60_bar")]
    [InlineData("(AWG 18 with insulation for 105 °C: 20.0 A × 77 %)", "(AWG 18 with insulation for 105_°C: 20.0_A × 77_%)")]
    [InlineData("2 kPa, 3 W/m, 4 US gal/h, 0.4 lb/(hp·h), 5 mm², 6 mm × 4.0 m", "2_kPa, 3_W/m, 4_US gal/h, 0.4_lb/(hp·h), 5_mm², 6_mm × 4.0_m")]
    [InlineData("2 pumps, 3 A4 pages, 5 more", "2 pumps, 3 A4 pages, 5 more")]
    public void VisibleText_OnAPage_IsNotBrokenBetweenNumberAndUnit(string text, string page) =>
        Assert.Equal(page.Replace('_', '\u00A0'), VisibleText.Unbroken(text));

    /// <summary>The tables' symbols are the working's: the same symbol stands for the same figure.</summary>
    [Fact]
    public void SymbolsOfTheSteps_AreThoseOfTheWorking()
    {
        OperatingResult result = SizingSheetTests.Sweep().Results[7];
        Dictionary<string, string> working = result.Working.Given.Concat(result.Working.Steps).ToDictionary(step => step.Symbol, step => step.Readable);
        Table steps = SizingTables.Steps(result);

        string[][] shared = [.. steps.Rows.Where(row => working.ContainsKey(row[1])).Select(row => (string[])[row[1], $"{row[2]} {row[3]}".TrimEnd()])];

        Assert.True(shared.Length >= 14, $"{shared.Length} symbols are shared only.");
        Assert.All(shared.Where(row => row[0] != "r"), row => Assert.Equal(working[row[0]], row[1]));
        Assert.Equal(double.Parse(working["r"], System.Globalization.CultureInfo.InvariantCulture), double.Parse(shared.Single(row => row[0] == "r")[1], System.Globalization.CultureInfo.InvariantCulture), 2);
    }

    /// <summary>Types of which a cell may end in a value: generic ones as the library's own members close them.</summary>
    private static IEnumerable<Type> Public() => typeof(FuelSystem).Assembly.GetExportedTypes()
        .Where(type => !type.IsEnum && !type.IsAbstract && !type.IsSubclassOf(typeof(Exception)) && !type.ContainsGenericParameters)
        .Concat(Signatures().Where(type => type.IsConstructedGenericType && type.Assembly == typeof(FuelSystem).Assembly && !type.ContainsGenericParameters))

        // Records of results for files: what they are made from is shown.
        .Where(type => type.Namespace != typeof(FuelSizing.Data.ResultData).Namespace)
        .Where(type => !Excused.ContainsKey(type) && !(type.IsGenericType && Excused.ContainsKey(type.GetGenericTypeDefinition())))
        .Distinct();

    /// <summary>Every type that a public property or method hands out or takes, and what stands between its angle brackets.</summary>
    private static IEnumerable<Type> Signatures()
    {
        const BindingFlags Any = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        return typeof(FuelSystem).Assembly.GetExportedTypes()
            .SelectMany(type => type.GetProperties(Any).Select(property => property.PropertyType)
                .Concat(type.GetMethods(Any).SelectMany(method => method.GetParameters().Select(parameter => parameter.ParameterType).Append(method.ReturnType))))
            .SelectMany(Parts)
            .Distinct();
    }

    private static IEnumerable<Type> Parts(Type type) =>
        [type, .. type.HasElementType ? Parts(type.GetElementType()!) : [], .. type.IsGenericType ? type.GetGenericArguments().SelectMany(Parts) : []];

    private static HashSet<Type> Registered()
    {
        ILookup<Type, string> ours = Formatter.RegisteredFormatters(includeDefaults: false).ToLookup(formatter => formatter.Type, formatter => formatter.MimeType);
        return [.. ours.Where(kinds => kinds.Contains(HtmlFormatter.MimeType) && kinds.Contains(PlainTextFormatter.MimeType)).Select(kinds => kinds.Key)];
    }

    private static string Name(Type type) => type.IsGenericType ? $"{type.Name}[{string.Join(", ", type.GetGenericArguments().Select(Name))}]" : type.Name;

    [GeneratedRegex(@"(^|[0-9(] ?)(kPa|bar|L/h|g/s|kW|°C|kg/m³|g/kWh|m|m/s|N·m|MJ/kg)(?![\w/²³·])", RegexOptions.CultureInvariant)]
    private static partial Regex Metric();
}
