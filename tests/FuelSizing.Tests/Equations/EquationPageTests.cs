using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;

namespace FuelSizing.Tests.Equations;

/// <summary>Every public equation has a handbook entry that is whole and right, and the pages made of them are up to date.</summary>
public partial class EquationPageTests
{
    /// <summary>Where the pages are written when somebody asks for them anew: <c>bash .ci/equations</c>.</summary>
    private static readonly string? Written = Environment.GetEnvironmentVariable("FUELSIZING_PAGES");

    /// <summary>Equations over lists, which <see cref="EquationsByHandTests"/> checks.</summary>
    private static readonly string[] OverLists = ["FuelMixing.ByShare"];

    public static TheoryData<string> Names => [.. EquationText.All.Select(equation => equation.Name)];

    public static TheoryData<string> OfNumbers => [.. EquationText.All.Select(equation => equation.Name).Except(OverLists)];

    [Fact]
    public void PublicEquations_AreMany_AndEachHasASubject()
    {
        Assert.InRange(EquationText.All.Count, 60, 200);
        Assert.Equal(EquationText.All.Select(equation => equation.Class).Distinct().Order(StringComparer.Ordinal), EquationPages.Classes.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Entry_OfEachEquation_IsWhole(string name)
    {
        EquationText equation = EquationText.All.Single(equation => equation.Name == name);
        Assert.EndsWith(".", equation.Summary, StringComparison.Ordinal);
        Assert.StartsWith("nothing is checked; ", equation.Outside, StringComparison.Ordinal);
        Assert.All((string[])[equation.Range, equation.Outside, equation.Source], text => Assert.EndsWith(".", text, StringComparison.Ordinal));

        // The example calls the equation itself, by the names of its arguments, and says what comes out, with its unit.
        string[] lines = equation.Example.Split('\n');
        Assert.StartsWith($"Real result = {name}<Real>(", lines[0], StringComparison.Ordinal);
        Assert.All(equation.Arguments, argument => Assert.Contains($"{argument.Argument}: ", lines[0], StringComparison.Ordinal));
        string[] result = lines[1].Split(' ');
        Assert.Equal(["//", "result", "="], result[..3]);
        Assert.True(double.TryParse(result[3], CultureInfo.InvariantCulture, out double value) && double.IsFinite(value));
        Assert.Equal(equation.Result.Unit is "1" or "any" || equation.Result.Unit.StartsWith("ln ", StringComparison.Ordinal) ? string.Empty : equation.Result.Unit, string.Join(' ', result[4..]));
        Assert.Equal(2, lines.Length);
    }

    /// <summary>The numbers of the example, put into the code, give what the example shows; that it also compiles is tested with the pages.</summary>
    [Theory]
    [MemberData(nameof(OfNumbers))]
    public void Example_OfEachEquation_GivesWhatItShows(string name)
    {
        string[] lines = EquationText.All.Single(equation => equation.Name == name).Example.Split('\n');
        double[] numbers = [.. Given().Matches(lines[0]).Select(match => double.Parse(match.Groups["number"].Value, CultureInfo.InvariantCulture))];
        double shown = double.Parse(lines[1].Split(' ')[3], CultureInfo.InvariantCulture);
        Assert.Equal(shown, EquationForms.All.Single(form => form.Name == name).Evaluate(numbers)[0], 5e-6 * Math.Abs(shown));
    }

    /// <summary>The formula, read and calculated by itself, gives what the code gives, wherever the table of dimensions samples it.</summary>
    [Theory]
    [MemberData(nameof(OfNumbers))]
    public void Formula_AsWritten_GivesWhatTheCodeGives(string name)
    {
        EquationText equation = EquationText.All.Single(equation => equation.Name == name);
        EquationForm form = EquationForms.All.Single(form => form.Name == name);
        Formula formula = new(equation.Formula);
        PCG chance = new(1, 1);
        for (int sample = 0; sample < 100; sample++)
        {
            double[] shares = Gen.Double.Unit.Array[form.Arguments.Length].Generate(chance, null, out Size _);
            double[] numbers = [.. form.Arguments.Zip(shares, (argument, share) => argument.Minimum + (share * (argument.Maximum - argument.Minimum)))];
            Dictionary<string, double> symbols = EquationText.Constants.ToDictionary(constant => constant.Symbol.Name, constant => constant.Value);
            foreach ((Symbol symbol, double number) in equation.Arguments.Zip(numbers))
            {
                symbols[symbol.Name] = number;
            }

            symbols[equation.Result.Name] = form.Evaluate(numbers)[0];
            (double left, double right) = formula.Sides(symbols);
            Assert.True(
                Math.Abs(left - right) <= 1e-10 * Math.Max(Math.Abs(left), Math.Abs(right)),
                $"{equation.Formula}: {left:R} and {right:R} at {string.Join(", ", numbers)}");
        }
    }

    [Theory]
    [MemberData(nameof(OfNumbers))]
    public void Formula_OfEachEquation_HasItsSymbolsAndNoOthers(string name)
    {
        EquationText equation = EquationText.All.Single(equation => equation.Name == name);
        string[] own = [.. equation.Arguments.Append(equation.Result).Select(symbol => symbol.Name)];
        IReadOnlySet<string> there = new Formula(equation.Formula).Symbols;
        Assert.Empty(own.Except(there));
        Assert.Empty(there.Except(own).Except(EquationText.Constants.Select(constant => constant.Symbol.Name)));
    }

    [Fact]
    public void Formula_ThatIsWrong_IsFound() =>
        Assert.Equal((4, 4.5), new Formula("a = b²/2").Sides(new Dictionary<string, double> { ["a"] = 4, ["b"] = 3 }));

    [Fact]
    public void Symbols_OfAllEquationsAndTheFurtherOnes_HaveOneMeaningEach_AndEachMeaningOneSymbol()
    {
        (string Name, string Meaning, string Unit)[] symbols =
        [
            .. EquationPages.Used().Select(use => use.Symbol).Concat(EquationText.Constants.Select(constant => constant.Symbol))
                .Concat(FurtherSymbols.All)
                .Select(symbol => (symbol.Name, symbol.Meaning, symbol.Unit)).Distinct(),
        ];
        Assert.Empty(symbols.GroupBy(symbol => symbol.Name).Where(group => group.Count() > 1).Select(group => string.Join(" | ", group)));
        Assert.Empty(FurtherSymbols.All.Select(symbol => symbol.Name).Intersect(EquationPages.Used().Select(use => use.Symbol.Name)));
        Assert.Equal(FurtherSymbols.All.Count, FurtherSymbols.All.Select(symbol => symbol.Name).Distinct().Count());
        Assert.Empty(symbols.GroupBy(symbol => symbol.Meaning).Where(group => group.Count() > 1).Select(group => string.Join(" | ", group)));
    }

    /// <summary>The glossary writes a quantity by the symbol of the list.</summary>
    [Fact]
    public void Glossary_WritesTheSymbolsOfTheList()
    {
        string[] symbols =
        [
            .. from line in File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "docs", "glossary.md"))
               where line.StartsWith("| ", StringComparison.Ordinal)
               from symbol in line.Split('|')[2].Split(',')
               select symbol.Trim(),
        ];
        Assert.InRange(symbols.Count(symbol => symbol is not ("–" or "symbol" or "---")), 20, 200);
        Assert.Empty(symbols.Except(["–", "symbol", "---"]).Except(SymbolList.Names));
    }

    [Fact]
    public void Pages_OfEquationsAndSymbols_AreWhatTheDocumentationSays()
    {
        Page("equations.md", EquationPages.Equations());
        Page("symbols.md", EquationPages.Symbols());
    }

    [GeneratedRegex(@": (?<number>-?[\d.]+(e-?\d+)?)", RegexOptions.ExplicitCapture)]
    private static partial Regex Given();

    private static void Page(string name, string text)
    {
        if (Written is not null)
        {
            File.WriteAllText(Path.Combine(Written, name), text);
            return;
        }

        string path = Path.Combine(AppContext.BaseDirectory, "docs", name);
        Assert.True(File.Exists(path), $"docs/{name} is not there: bash .ci/equations writes it.");
        Assert.True(File.ReadAllText(path) == text, $"docs/{name} is not what the documentation of the equations says: bash .ci/equations writes it anew.");
    }
}
