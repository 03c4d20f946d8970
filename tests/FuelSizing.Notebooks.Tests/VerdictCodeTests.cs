namespace FuelSizing.Notebooks.Tests;

/// <summary>Console verdicts, the caution that goes with them, and the exit code that follows them if asked.</summary>
public class VerdictCodeTests
{
    private const string Holds = """Callout.Holds("all is well")""";

    [Theory]
    [InlineData("""Callout.Holds("all is well")""", 0)]
    [InlineData("""Callout.Fails("the pump is too small")""", 3)]
    [InlineData("""Callout.HoldsAsFarAsJudged("not judged: mixture")""", 5)]
    [InlineData("""Callout.CannotSay("the curve ends")""", 4)]
    [InlineData("""Callout.Caution("hot")""", 4)]
    [InlineData("1 + 1", 4)]
    public async Task Code_WhereAskedFor_FollowsTheLastVerdict(string last, int code)
    {
        using var notebook = InventedNotebook.OfCells(("code", InventedNotebook.Load + "\n" + (code == 4 ? "1" : Holds)), ("code", last));

        Assert.Equal(code, (await notebook.RunAsync("--follow-verdict")).Code);
        Assert.Equal(0, (await notebook.RunAsync()).Code);
    }

    [Fact]
    public async Task Code_OfACellThatFails_IsNotTheVerdicts()
    {
        using var notebook = InventedNotebook.OfCells(("code", InventedNotebook.Load + "\n" + Holds), ("code", "throw new Exception(\"no\");"));

        Assert.Equal(1, (await notebook.RunAsync("--follow-verdict")).Code);
    }

    [Fact]
    public async Task Console_WithAVerdict_CarriesTheCaution()
    {
        using var notebook = InventedNotebook.OfCells(("code", InventedNotebook.Load + "\n" + Holds));

        string output = (await notebook.RunAsync()).Output;

        Assert.True(output.IndexOf("Holds: all is well", StringComparison.Ordinal) < output.IndexOf(Cautions.OneLine, StringComparison.Ordinal), output);
    }

    [Fact]
    public async Task Console_WithNothingJudged_CarriesNoCaution()
    {
        using var notebook = InventedNotebook.OfCells(("code", "1 + 1"));

        Assert.DoesNotContain("Caution", (await notebook.RunAsync()).Output, StringComparison.Ordinal);
    }
}
