using System.Text.RegularExpressions;
using FuelSizing.Electrical;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Tests.Equations;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>Workings write their quantities by the symbols of docs/symbols.md, and by no others.</summary>
public partial class WorkingSymbolTests
{
    public static TheoryData<string> Cases => [.. WorkingCases.Names];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Symbols_OfEachWayAWorkingCanGo_AreThoseOfTheList(string name) => AreListed(WorkingCases.Solve(name).Working, 30);

    /// <summary>A line alone has no number: its symbols are the list's own.</summary>
    [Theory]
    [InlineData(8)]
    [InlineData(45)]
    [InlineData(300)]
    public void Symbols_OfALineAlone_AreThoseOfTheListUnmarked(double litersPerHour)
    {
        var line = Line.Of("supply", Length.FromMillimeters(6.5), Length.FromMeters(4), Roughness.DrawnTube, [Fitting.Bend90], Length.FromMeters(0.4));
        Working working = line.PressureLoss(VolumeFlow.FromLitersPerHour(litersPerHour), Fuel.Petrol, Temperature.FromDegreesCelsius(30)).Working;
        AreListed(working, 12);
        Assert.Empty(working.Given.Concat(working.Steps).Select(step => step.Symbol).Except(SymbolList.Names));
    }

    [Fact]
    public void Symbols_OfAFeed_AreThoseOfTheList() => AreListed(
        Feed.Of("feed", Conductor.Awg(14), Length.FromMeters(4), Length.FromMeters(4), Temperature.FromDegreesCelsius(60), Contact.DefaultRelay)
            .VoltageAtMotor(Wren.Volt(13.5), ElectricCurrent.FromAmperes(9)).Working,
        12);

    /// <summary>Branches that no case of the tests takes are found in the source.</summary>
    [Fact]
    public void Symbols_InTheSourceOfEachWorking_AreThoseOfTheList()
    {
        Match[] lines = [.. Sources().SelectMany(text => Written().Matches(text))];
        string[] symbols = [.. lines.Select(line => line.Groups["symbol"].Value).Distinct()];
        string[] ofParts = [.. lines.Where(line => line.Groups["marked"].Success).Select(line => line.Groups["symbol"].Value).Distinct()];

        Assert.InRange(symbols.Length, 70, 200);
        Assert.DoesNotContain(symbols, symbol => !SymbolList.Has(symbol));

        // With the number of a part behind it none becomes another quantity's symbol.
        Assert.InRange(ofParts.Length, 15, 50);
        Assert.Empty(ofParts.SelectMany(SymbolList.MistakenFor));
    }

    /// <summary>The search sees a symbol that is not in the list, and one that could be taken for another quantity's.</summary>
    [Fact]
    public void Symbol_ThatTheListDoesNotHave_IsFound()
    {
        Assert.All((string[])["V", "L", "z", "Δp_x,1", "U_1", "Δp_f1"], symbol => Assert.False(SymbolList.Has(symbol)));
        Assert.All((string[])["V_d", "d_2", "Δp_f,12", "R′"], symbol => Assert.True(SymbolList.Has(symbol)));
        Assert.Contains("T_1", SymbolList.MistakenFor("T"));
        Assert.Equal(["p_3", "Δp_c", "r", "R′", "Δp_f,2"], SymbolList.In("max(1; (p_3 + Δp_c)/r) − 1.2·10^5 · R′/Δp_f,2"));
    }

    /// <summary>The text of each file that writes lines of workings.</summary>
    internal static IEnumerable<string> Sources() =>
        from file in Directory.GetFiles(Library(), "*.cs", SearchOption.AllDirectories)
        where !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
        let text = File.ReadAllText(file)
        where text.Contains("Derivation", StringComparison.Ordinal)
        select text;

    private static void AreListed(Working working, int minimum)
    {
        string[] symbols = [.. working.Given.Concat(working.Steps).Select(step => step.Symbol)];
        string[] inFormulas = [.. working.Steps.Where(step => step.Equation is not null).SelectMany(step => SymbolList.In(step.Equation!))];
        Assert.InRange(symbols.Length, minimum, 400);
        Assert.Equal(symbols.Length, symbols.Distinct().Count());
        Assert.Empty(symbols.Concat(inFormulas).Where(symbol => !SymbolList.Has(symbol)).Distinct());
    }

    private static string Library()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "FuelSizing.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return Path.Combine(folder ?? throw new InvalidOperationException("The tests run outside the repository."), "src", "FuelSizing");
    }

    // What Known and Of write is a part's: its number comes behind it.
    [GeneratedRegex(@"\b(Given|Table|Step|Solved|NotKnown|Equal|(?<marked>Known)|Ohms|Path)\(\s*(\$?""[^""\n]*""|Name),\s*(?<marked>Of\()?""(?<symbol>[^""]*)""", RegexOptions.ExplicitCapture)]
    private static partial Regex Written();
}
