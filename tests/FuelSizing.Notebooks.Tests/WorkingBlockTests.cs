using System.Xml.Linq;
using FuelSizing.Electrical;
using FuelSizing.Interactive;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using FuelSizing.Tests;
using FuelSizing.Tests.Systems;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>A working on a page: formulas set as MathML that say what the text says, the lines that matter most first, all of them below.</summary>
public class WorkingBlockTests
{
    public static TheoryData<string> Cases => [.. WorkingCases.Names];

    /// <summary>Whichever way a working goes: every formula is read as one, and its pieces put together are the line.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Formulas_OfEveryWorking_AreSetAndSayWhatTheTextSays(string name)
    {
        Working working = WorkingCases.Solve(name).Working;
        string[] formulas = [.. working.Given.Concat(working.Steps).SelectMany(step => (string?[])[step.Symbol, step.Equation, step.Numbers]).OfType<string>()];

        Assert.True(formulas.Length > 60, $"{formulas.Length} formulas");
        Assert.All(formulas, IsSet);
    }

    [Theory]
    [InlineData("max(0; Δp)/Δp_r")]
    [InlineData("T_0 · (1 + (r^0.28571 − 1)/η_c)")]
    [InlineData("(−0.86859) · ln(8.3333·10^−4/3.7 + 2.51/(9186.1 · √(0.032796)))")]
    [InlineData("2·10^5 + (−1136.7)")]
    [InlineData("(a_1 + b_1 + c_1 + d_1 + e_1 + f_1)^(2 · x)")]
    [InlineData("√(a_1 + b_1 + c_1 + d_1 + e_1 + f_1 + g_1)")]
    [InlineData("∞")]
    public void Formula_OfEachKind_IsSet(string text) => IsSet(text);

    /// <summary>A quotient is a fraction, a power is raised, what stands below is below; a long part stays in the line, where it can break.</summary>
    [Fact]
    public void Formula_IsSetAsAnEngineerWritesIt()
    {
        XElement fraction = Assert.Single(Formula.Set("p_3/(R_a · T_3)"));
        Assert.Equal(["mfrac"], fraction.Element("mrow")!.Elements().Select(part => part.Name.LocalName));
        Assert.Equal("p3", fraction.Descendants("mfrac").Single().Elements().First().Value);
        Assert.DoesNotContain("(", fraction.Value, StringComparison.Ordinal);
        Assert.Equal("f,2", Formula.Set("Δp_f,2").Single().Descendants("mtext").Single().Value);
        Assert.Equal(["10", "−7"], Formula.Set("1.25·10^−7").Single().Descendants("msup").Single().Elements().Select(part => part.Value));
        Assert.Empty(Formula.Set("(a_1 + b_1 + c_1 + d_1 + e_1 + f_1 + g_1)/h_1").SelectMany(math => math.Descendants("mfrac")));
        Assert.Equal(["p_0", "+ p_b"], Formula.Set("p_0 + p_b").Select(Text));
    }

    [Theory]
    [InlineData("a +")]
    [InlineData("<b>a</b>")]
    [InlineData("max(a")]
    [InlineData("")]
    public void Formula_ThatIsNone_StaysText(string text)
    {
        IReadOnlyList<XElement> set = Formula.Set(text);

        Assert.Equal(text, Assert.Single(set).Value);
        Assert.Equal("mtext", Assert.Single(set[0].Element("mrow")!.Elements()).Name.LocalName);
    }

    /// <summary>Five lines of an operating point are there at a glance, and every line is folded below them; the plain text has the same.</summary>
    [Fact]
    public void Block_OfAPoint_ShowsFiveLinesAndFoldsTheRest()
    {
        OperatingResult result = WorkingCases.Solve(WorkingCases.TwoStroke);
        Working working = result.Working;
        WorkingBlock block = SizingTables.Working(result, TextStyle.Metric);
        XElement page = XElement.Parse(block.ToHtml());

        Assert.Equal(["ṁ_f", "p_r", "Δp", "Q_s", "D"], working.Main.Select(step => step.Symbol));
        Assert.Equal(5, page.Elements("ol").Single().Elements("li").Count());
        Assert.Equal(working.Given.Count + working.Steps.Count, page.Element("details")!.Descendants("li").Count());
        string text = block.ToPlainText();
        Assert.All(working.Given.Concat(working.Steps), step => Assert.Contains(step.ToString(), text, StringComparison.Ordinal));
    }

    /// <summary>The working of a feed is short: nothing is folded.</summary>
    [Fact]
    public void Block_OfAShortWorking_FoldsNothing()
    {
        Working working = Feed.Of("feed", Conductor.Awg(14), Length.FromMeters(4), Length.FromMeters(4), Temperature.FromDegreesCelsius(60), Contact.DefaultRelay)
            .VoltageAtMotor(Wren.Volt(13.5), ElectricCurrent.FromAmperes(9)).Working;
        XElement page = XElement.Parse(SizingTables.Working(working, TextStyle.Metric).ToHtml());

        Assert.Empty(page.Descendants("details"));
        Assert.Equal(working.Given.Count + working.Steps.Count, page.Descendants("li").Count());
    }

    /// <summary>The reader of a page who follows its figures finds a wrong one.</summary>
    [Fact]
    public void Page_WithWrongFigures_IsNotFollowed()
    {
        string page = SizingTables.Working(WorkingCases.Solve(WorkingCases.TwoStroke), TextStyle.Metric).ToHtml();
        PageWorking.FollowSome(page, "as it is");

        // The first digit of every value is another.
        string wrong = System.Text.RegularExpressions.Regex.Replace(page, "(?<=alttext=\"= )[1-8](?=[0-9.]*\")", digit => $"{(char)(digit.Value[0] + 1)}");
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => PageWorking.FollowSome(wrong, "as it is"));
    }

    private static void IsSet(string text)
    {
        IReadOnlyList<XElement> set = Formula.Set(text);

        Assert.Equal(text, string.Join(' ', set.Select(Text)));
        Assert.DoesNotContain(set, math => math.Element("mrow")!.Elements().FirstOrDefault() is { Name.LocalName: "mtext" });
    }

    private static string Text(XElement math) => math.Attribute("alttext")!.Value;
}
