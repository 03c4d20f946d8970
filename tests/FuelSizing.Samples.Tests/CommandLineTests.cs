using System.Text.Json;
using FuelSizing.Data;
using FuelSizing.Files;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using Json.Schema;

namespace FuelSizing.Samples.Tests;

/// <summary>The two samples that run on a command line.</summary>
public sealed class CommandLineTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fuelsizing-samples-");

    private static string Wren => Sample.Docs("wren-setup.json");

    [Fact]
    public void Library_SweepsASetup_SaysTheVerdict_AndKeepsTheResult()
    {
        string kept = Path.Combine(_folder.FullName, "result.json");
        (int code, string output, string error) = Sample.Run("library", "Library", Wren, kept);

        Assert.Equal((0, string.Empty), (code, error));
        string text = File.ReadAllText(kept);
        ResultData result = ResultData.Parse("result.json", text);
        Assert.True(JsonSchema.FromText(File.ReadAllText(Sample.Docs("result.schema.json"))).Evaluate(JsonDocument.Parse(text).RootElement).IsValid);
        Assert.Equal(text, result.ToJson());
        Assert.Equal(4 * 3, result.Sweep!.Results.Count);
        Assert.StartsWith(result.Sweep.Verdict.Headline.Text, output, StringComparison.Ordinal);
        Assert.Contains("not judged: mixture", output, StringComparison.Ordinal);
        Assert.EndsWith($"{Cautions.OneLine}{Environment.NewLine}", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--si")]
    [InlineData("--us")]
    public void Native_PrintsEveryMargin_InTheUnitsAskedFor(string option)
    {
        (int code, string output, string error) = Sample.Run("native", "Native", Wren, option, "--point", "full load");

        // Not everything was judged.
        Assert.Equal((5, string.Empty), (code, error));
        TextStyle style = option == "--us" ? TextStyle.UsCustomary : TextStyle.Metric;
        Setup setup = Setup.Read(Wren);
        OperatingResult result = setup.System.Solve(setup.Point("full load"));
        Assert.StartsWith($"full load: {result.In(style)}", output, StringComparison.Ordinal);
        Assert.All(result.Margins, margin => Assert.Contains($"  {margin.In(style)}{Environment.NewLine}", output, StringComparison.Ordinal));
        Assert.Null(UnitWords.Foreign(output, option[2..]));
        Assert.Contains(Cautions.OneLine, output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"950 mL/min\"", "\"500 mL/min\"", 3, "")]
    [InlineData("\"950 mL/min\"", "\"24 mL/min\"", 6, "24 lb/h")]
    [InlineData("\"950 mL/min\"", "\"950\"", 2, "line 80, injectors.injector.static_flow")]
    [InlineData("\"full load\"", "\"full throttle\"", 2, "\"full load\"")]
    public void Native_SaysWhatCameOfIt_ByItsExitCode(string found, string put, int expected, string words)
    {
        string file = Path.Combine(_folder.FullName, "changed.json");
        File.WriteAllText(file, File.ReadAllText(Wren).Replace(found, put, StringComparison.Ordinal));
        (int code, _, string error) = Sample.Run("native", "Native", file, "--point", "full load");
        Assert.True(expected == code, error);
        Assert.Contains(words, error, StringComparison.Ordinal);
    }

    [Fact]
    public void Native_WithoutASetup_SaysHowItIsUsed()
    {
        (int code, string output, string error) = Sample.Run("native", "Native", "--metric", Wren);
        Assert.Equal((2, string.Empty), (code, output));
        Assert.StartsWith("usage:", error, StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
