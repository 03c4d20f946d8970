namespace FuelSizing.Notebooks.Tests;

/// <summary>What a cell asks for beyond C# and the library is refused by its cell and line, before any cell runs.</summary>
public class CellDirectiveTests
{
    public static TheoryData<string, int> Outside => new()
    {
        { "#r \"nuget:Newtonsoft.Json,13.0.3\"", 1 },
        { "var a = 1;\n#r \"nuget: UnitsNet, 5.75.1\"", 2 },
        { "#r \"nuget:FuelSizing.Interactive.Other\"", 1 },
        { "#r \"/tmp/library.dll\"", 1 },
        { "#r \"System.Net.Http\"", 1 },
        { "#r nuget:FuelSizing", 1 },
        { "#i \"nuget:https://example.invalid/index.json\"", 1 },
        { "#load \"more.csx\"", 1 },
        { "\n\n  #  load \"more.csx\"", 3 },
        { "#:package Other@1.0.0", 1 },
        { "#!bash\nls", 1 },
        { "var a = 1;\n#!pwsh\nls", 2 },
        { "#!import other.ipynb", 1 },
        { "#!connect signalr --kernel-name other", 1 },
        { "#!share --from other a", 1 },
        { "#!csharp --kernel-name other", 1 },
        { "#!time\n1", 1 },
        { "1\r\n#!time", 2 },
        { "1\u2028#!time", 2 },
        { "\uFEFF#r \"nuget:Other\"", 1 },
        { "\u00A0#!pwsh", 1 },

        // The kernel takes these for commands; the compiler would not.
        { "var text = \"\"\"\n#!pwsh\n\"\"\";", 2 },
        { "/*\n#r \"nuget:Other\"\n*/", 2 },
        { "#if false\n#r \"nuget:Other\"\n#endif", 2 },
    };

    [Theory]
    [MemberData(nameof(Outside))]
    public async Task Run_CellThatReachesOutside_IsRefusedByCellAndLineBeforeAnythingRuns(string code, int line)
    {
        using var notebook = InventedNotebook.OfCells(("markdown", "# Prose"), ("code", "Console.WriteLine(1);"), ("code", code));

        var run = await notebook.RunAsync();

        Assert.Equal(2, run.Code);
        Assert.StartsWith($"cell 3, line {line}: ", run.Error, StringComparison.Ordinal);
        Assert.Equal("", run.Output);
        Assert.Null(run.Report);
    }

    [Theory]
    [InlineData("#region Figures\n#if true\n#nullable enable\n#pragma warning disable\nConsole.WriteLine(6 * 7);\n#endif\n#endregion")]
    [InlineData("var marks = \"a #!pwsh #r #load\"; // #r \"nuget:Other\"\nConsole.WriteLine(6 * 7);")]
    [InlineData("#!csharp\nConsole.WriteLine(6 * 7);")]
    [InlineData("1.ToString();\n#!csharp\nConsole.WriteLine(6 * 7);")]
    public async Task Run_DirectiveOfTheCompilerOrTextThatOnlyLooksLikeOne_Runs(string code)
    {
        using var notebook = InventedNotebook.OfCells(("code", code));

        var run = await notebook.RunAsync();

        Assert.Equal("", run.Error);
        Assert.Contains("42", run.Report, StringComparison.Ordinal);
    }

    /// <summary>So that a cell built while the notebook runs finds nothing to restore with, either.</summary>
    [Fact]
    public async Task Run_PackageAskedForFromWithinACell_Fails()
    {
        using var notebook = InventedNotebook.OfCells(("code", """
            using Microsoft.DotNet.Interactive;
            using Microsoft.DotNet.Interactive.Commands;
            var asked = await Kernel.Root.SendAsync(new SubmitCode("#r \"nuget:Newtonsoft.Json,13.0.3\""));
            Console.WriteLine(string.Join(" ", asked.Events.Select(e => e.GetType().Name)));
            """));

        var run = await notebook.RunAsync();

        Assert.Contains("CommandFailed", run.Report, StringComparison.Ordinal);
    }
}
