using System.Text.RegularExpressions;
using FuelSizing.Tests.Equations;
using FuelSizing.Workings;

namespace FuelSizing.Tests.Systems;

/// <summary>A working's line names the equation of the index that it is an instance of, and that equation gives the line's value.</summary>
public partial class WorkingLawTests
{
    // The same quantity under another symbol: a side of an equation that a solver solves, a part's own, or the rail's beside the regulator's.
    private static readonly string[] OtherSymbols =
    [
        "Y_L", "Y_R", "x", "w", "p_held", "p_r", "p_reg", "p_s1", "p_s2", "ΔV_w", "ΔV_c", "P_Rw", "P_Rc", "R", "V_m", "V_R", "Δp_d", "Q_cap", "Q_h", "λ_e", "t_k", "ρ_m", "ρ_3",
    ];

    public static TheoryData<string> Cases => [.. WorkingCases.Names];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Laws_OfEachWorking_AreOfTheIndexAndGiveTheSameQuantity(string name)
    {
        Working working = WorkingCases.Solve(name).Working;
        WorkingStep[] lines = [.. working.Steps.Where(step => step.Law is not null)];

        Assert.InRange(lines.Length, 15, 150);
        Assert.All(working.Given, line => Assert.Null(line.Law));
        Assert.All(lines, line =>
        {
            EquationText law = Assert.Single(EquationText.All, law => law.Name == line.Law);
            Assert.True(
                line.Law == "ChargeCooling.AirGain" || OtherSymbols.Append(law.Result.Name).Any(symbol => Unmarked(line.Symbol, symbol) == symbol), $"{line} is no {law.Formula}");
        });
    }

    /// <summary>Where all symbols of the law have lines of their own, the law as the index writes it gives the line's value.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Laws_WhoseSymbolsHaveLines_GiveTheLinesValue(string name)
    {
        Working working = WorkingCases.Solve(name).Working;
        Dictionary<string, double> constants = EquationText.Constants.ToDictionary(constant => constant.Symbol.Name, constant => constant.Value);
        Dictionary<string, double> known = [];
        int compared = 0;
        foreach (WorkingStep line in working.Given.Concat(working.Steps).Where(line => line.Si is not null))
        {
            if (line.Law is not null && EquationText.All.Single(law => law.Name == line.Law) is var law && Unmarked(line.Symbol, law.Result.Name) == law.Result.Name)
            {
                string mark = line.Symbol[law.Result.Name.Length..].TrimStart('_', ',');
                string[] there = [.. SymbolList.In(line.Equation!)];
                Formula formula = new(law.Formula);

                // A line may stand for several laws at once, or lack what is not there.
                Dictionary<string, string> written = formula.Symbols.Where(symbol => symbol != law.Result.Name && !constants.ContainsKey(symbol))
                    .ToDictionary(symbol => symbol, symbol => Array.Find((string[])[Derivation.Marked(symbol, mark), symbol], there.Contains) ?? string.Empty);
                if (there.All(written.ContainsValue) && written.Values.All(known.ContainsKey))
                {
                    Dictionary<string, double> symbols = written.ToDictionary(pair => pair.Key, pair => known[pair.Value]).Concat(constants).ToDictionary();
                    symbols[law.Result.Name] = line.Si!.Value;
                    (double left, double right) = formula.Sides(symbols);
                    Assert.True(Math.Abs(left - right) <= 1e-9 * Math.Abs(left), $"{line}: {law.Formula} gives {right:R}");
                    compared++;
                }
            }

            known[line.Symbol] = line.Si!.Value;
        }

        Assert.True(compared > 5, $"{compared}");
    }

    /// <summary>Branches that no case takes are found in the source: a line that calls an equation of the index names it, and a name is one of the index.</summary>
    [Fact]
    public void Laws_InTheSourceOfEachWorking_AreNamed()
    {
        string[] index = [.. EquationText.All.Select(law => law.Name)];
        int named = 0;
        foreach (string text in WorkingSymbolTests.Sources())
        {
            foreach (Match begin in Step().Matches(text))
            {
                int end = begin.Index + begin.Length;
                for (int depth = 1; depth > 0; end++)
                {
                    depth += text[end] switch { '(' => 1, ')' => -1, _ => 0 };
                }

                string line = text[begin.Index..end];
                string[] called = [.. Called().Matches(line).Select(call => call.Groups["name"].Value).Where(index.Contains)];
                string[] laws = [.. Law().Matches(line).Select(law => law.Groups["name"].Value)];
                Assert.True(called.Length == 0 || laws.Any(called.Contains), line);
                named += laws.Length;
            }

            Assert.All(Law().Matches(text), law => Assert.Contains(law.Groups["name"].Value, index));
        }

        Assert.InRange(named, 40, 120);
    }

    private static string Unmarked(string symbol, string law) =>
        symbol.StartsWith(law, StringComparison.Ordinal) && Mark().IsMatch(symbol[law.Length..]) ? law : symbol;

    [GeneratedRegex(@"\b_?to\.Step\(")]
    private static partial Regex Step();

    [GeneratedRegex(@"\b(?<name>[A-Z]\w+\.[A-Z]\w+)(<\w+>)?\(", RegexOptions.ExplicitCapture)]
    private static partial Regex Called();

    // In a choice of two the second stands behind a colon.
    [GeneratedRegex(@"law: [^""\n]*""(?<name>[A-Z]\w+\.[A-Z]\w+)""", RegexOptions.ExplicitCapture)]
    private static partial Regex Law();

    [GeneratedRegex("^([_,]?[0-9]*)$", RegexOptions.ExplicitCapture)]
    private static partial Regex Mark();
}
