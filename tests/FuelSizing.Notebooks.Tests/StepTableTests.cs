using System.Globalization;
using System.Text.RegularExpressions;
using FuelSizing.Interactive;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;
using FuelSizing.Workings;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The step table shows the working's own lines: no formula in it is typed by hand.</summary>
public sealed partial class StepTableTests
{
    public static TheoryData<string> Cases => [.. WorkingCases.Names];

    /// <summary>Line by line: name, symbol, figure, unit, and the equation's own text or where the figure was read.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void EachLine_OfTheStepTable_IsThatOfTheWorking(string name)
    {
        OperatingResult result = WorkingCases.Solve(name);
        Working working = result.Working;

        Table table = SizingTables.Steps(result);

        WorkingStep[] lines =
        [
            .. working.Given.Where(given => table.Rows.Any(row => row[1] == given.Symbol)),
            .. working.Steps.Where(step => !step.IsIntermediate),
        ];
        Assert.Equal(lines.Select(line => line.Symbol), table.Rows.Select(row => row[1]));
        Assert.All(lines.Zip(table.Rows), pair =>
        {
            (WorkingStep line, IReadOnlyList<string> row) = pair;
            Assert.Equal(line.Name, row[0], ignoreCase: true);
            Assert.Equal(line.Readable, $"{row[2]} {row[3]}".TrimEnd(' ', '–'));
            Assert.Equal(line.Equation is null ? line.Source : $"{line.Equation}; {line.Source}", row[4]);
        });
    }

    /// <summary>What the engine's cycle is made of, and each figure down to the duty cycle and the pump, stands in the table.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Symbols_OfTheStepTable_LeadFromBoostToThePump(string name)
    {
        string[] symbols = [.. SizingTables.Steps(WorkingCases.Solve(name)).Rows.Select(row => row[1])];

        Assert.Superset(
            new HashSet<string>(["n", "k", "i", "N", "p_b", "p_3", "ṁ_a", "P", "ṁ_1", "ṁ_2", "e_f", "ṁ_f", "Q_f", "p_s", "p_r", "Δp", "Q_s", "t_c", "t_d", "t", "D", "Q_p", "Q_ret"]),
            new HashSet<string>(symbols));
        Assert.Equal(symbols.Length, symbols.Distinct().Count());
    }

    /// <summary>
    /// The figures as shown, put into the formulas by hand, with revolutions and injections a cycle as the engine has them; each
    /// agrees within what the shown figures leave open.
    /// </summary>
    [Fact]
    public void TwoStroke_WithTwoInjectionsFilterAndLines_IsRightLineByLine()
    {
        OperatingResult result = WorkingCases.Solve(WorkingCases.TwoStroke);
        Dictionary<string, IReadOnlyList<string>> rows = SizingTables.Steps(result).Rows.ToDictionary(row => row[1]);
        double Of(string symbol) => double.Parse(rows[symbol][2].Replace('−', '-'), NumberStyles.Float | NumberStyles.AllowThousands, CultureInfo.InvariantCulture);
        void Is(double byHand, string symbol, double open) => Assert.True(
            Math.Abs(byHand - Of(symbol)) <= open, $"{symbol}: {byHand.ToString(CultureInfo.InvariantCulture)} by hand, {string.Join(" | ", rows[symbol])}");

        Is(5200, "n", 0);
        Is(1, "k", 0);
        Is(2, "i", 0);
        Is(2, "N", 0);
        Is(Of("p_0") + (100 * Of("p_b")), "p_3", 1);
        Is(Of("p_3") * 1000 / (287.05287 * (Of("T_3") + 273.15)), "ρ_3", 0.01);
        Is(Of("η_v") / 100 * Of("ρ_3") * 1.3 * Of("n") / 60 / Of("k"), "ṁ_a", 0.2);
        Is(Of("P") * 315 / 3600, "ṁ_1", 0.1);
        Is(100 * ((Of("ṁ_1") / Of("ṁ_2")) - 1), "e_f", 1);
        Is(Math.Max(Of("ṁ_1"), Of("ṁ_2")), "ṁ_f", 0.05);
        Is(Of("ṁ_f") / Of("ρ") * 3600, "Q_f", 0.7);
        Is(300 + (100 * Of("p_b")), "p_s", 1);
        Is(Math.Max(Of("p_s"), Of("Δp_ret")), "p_r", 1);
        Is(Of("Δp_F,2") + Of("Δp_l,3"), "Δp_sup", 0.15);
        Is(Of("p_r") + Of("Δp_sup"), "p_po", 1);
        Is(Of("Δp_suc") + Of("Δp_sup") + Of("p_r"), "Δp_sys", 1);
        Is(Of("Δp_sys"), "Δp_p", 0);
        Is(Of("Q_p") - Of("Q_f"), "Q_ret", 1);
        Is(Of("p_r") + Of("p_0") - Of("p_3"), "Δp", 1.5);
        Is(820 * Math.Sqrt(Of("Δp") / 300 * 683.8 / Of("ρ")), "Q_s", 3);
        Is(1000 * 60 * Of("k") / (Of("n") * Of("i")), "t_c", 0.005);
        Is(Of("t_d") + (Of("Q_f") / 3.6 / Of("N") / (Of("Q_s") / 60) * Of("t_c")), "t", 0.06);
        Is(100 * Of("t") / Of("t_c"), "D", 0.3);

        // The pump is read where it stands, over the rail by filter, line and height, and against its inlet.
        Assert.True(Of("p_po") - Of("p_r") >= 10, $"{Of("p_po")} over {Of("p_r")}");
        Assert.Contains($"at {rows["Q_p"][2]} {rows["Q_p"][3]}", rows["Δp_p"][4], StringComparison.Ordinal);
        string text = SizingTables.Steps(result).ToPlainText();
        Assert.DoesNotContain("n/2", text, StringComparison.Ordinal);
        Assert.DoesNotContain("one working cycle", text, StringComparison.Ordinal);
        Assert.DoesNotContain("at the rail pressure", text, StringComparison.Ordinal);
    }

    /// <summary>The package that shows results holds no formula of its own: what it shows comes out of workings.</summary>
    [Fact]
    public void Sources_OfThePackage_HoldNoFormulaTypedByHand()
    {
        string folder = Repository.PathOf("src", "FuelSizing.Interactive");
        string[] files = Directory.GetFiles(folder, "*.cs", SearchOption.AllDirectories);
        string[] typed =
        [
            .. files
                .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
                // It sets formulas of workings, and has the signs of all of them.
                .Where(file => Path.GetFileName(file) != "Formula.cs")
                .SelectMany(file => Text().Matches(File.ReadAllText(file)).Select(text => (File: Path.GetFileName(file), Text: text.Value)))
                // The heading of a column in the field's own words is no formula.
                .Where(text => Formula().IsMatch(text.Text) && text.Text != "\"Measured − predicted\"")
                .Select(text => $"{text.File}: {text.Text}"),
        ];

        Assert.True(files.Length > 50, $"{files.Length} files");
        Assert.True(typed.Length == 0, string.Join('\n', typed));

        // The search finds what such texts looked like.
        Assert.All(
            ["\"p_r + p_0 − p\"", "\"η_v · p/(R · T_3) · V · n/2\"", "\"t ÷ T\"", "\"Q_r · √(Δp/Δp_r)\"", "\"V − ΔV\"", "\"1/(b · H_u)\"", "\"4 Q/(π · D²)\""],
            (string text) => Assert.Matches(Formula(), text));
    }

    [GeneratedRegex("(?<!//[^\n]*)\"(?:[^\"\\\\\n]|\\\\.)*\"", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Text();

    // A root, a fraction sign, a product between spaces, a difference of symbols, a sum of symbols, a quotient with brackets.
    [GeneratedRegex(@"√|÷| · |[\w)] − [\wΔ(]|\w_\w+ \+ |[\w)]/\(\w ?[·\w]", RegexOptions.CultureInvariant)]
    private static partial Regex Formula();
}
