using System.Text.Json;
using System.Text.RegularExpressions;

namespace FuelSizing.Notebooks.Tests;

public class InputSettingTests
{
    private const string Inputs = """
        using FuelSizing.Engines;
        using FuelSizing.Fuels;
        using UnitsNet;
        var boost = Pressure.FromBars(0.6);      // gauge
        var cylinders = 4;
        double lambda = 1;
        var idle = -0.5;
        var speed = RotationalSpeed.FromRevolutionsPerMinute(7200);
        var fuel = Fuel.Petrol;
        var cycle = EngineCycle.FourStroke;
        var log = "wren.csv";
        var boosted = true;
        double[] table = [1, 2];
        var sum = 1 + 2;
        """;

    private static readonly IReadOnlyList<NotebookCell> Cells =
        [new(1, false, "# Title", true), new(2, true, Inputs, true), new(3, true, "var boost2 = 1;")];

    [Theory]
    [InlineData("boost=0.9", "var boost = Pressure.FromBars(0.9);      // gauge", "Pressure.FromBars(0.6)", "Pressure.FromBars(0.9)")]
    [InlineData("boost=-1", "var boost = Pressure.FromBars(-1.0);      // gauge", "Pressure.FromBars(0.6)", "Pressure.FromBars(-1.0)")]
    [InlineData("cylinders=6", "var cylinders = 6;", "4", "6")]
    [InlineData("lambda=0.82", "double lambda = 0.82;", "1", "0.82")]
    [InlineData("idle=1e-3", "var idle = 0.001;", "-0.5", "0.001")]
    [InlineData("idle=2", "var idle = 2.0;", "-0.5", "2.0")]
    [InlineData("speed=6900.5", "FromRevolutionsPerMinute(6900.5);", "RotationalSpeed.FromRevolutionsPerMinute(7200)", "RotationalSpeed.FromRevolutionsPerMinute(6900.5)")]
    [InlineData("fuel=E85", "var fuel = Fuel.E85;", "Fuel.Petrol", "Fuel.E85")]
    [InlineData("cycle=TwoStroke", "var cycle = EngineCycle.TwoStroke;", "EngineCycle.FourStroke", "EngineCycle.TwoStroke")]
    [InlineData("log=my = own.csv", "var log = \"my = own.csv\";", "\"wren.csv\"", "\"my = own.csv\"")]
    [InlineData("log=", "var log = \"\";", "\"wren.csv\"", "\"\"")]
    [InlineData("log=C:\\runs\\a\".csv", "var log = \"C:\\\\runs\\\\a\\\".csv\";", "\"wren.csv\"", "\"C:\\\\runs\\\\a\\\".csv\"")]
    [InlineData("boost=8psi", "var boost = Pressure.FromPoundsForcePerSquareInch(8.0);", "Pressure.FromBars(0.6)", "Pressure.FromPoundsForcePerSquareInch(8.0)")]
    [InlineData("boost=55 kPa", "var boost = Pressure.FromKilopascals(55.0);", "Pressure.FromBars(0.6)", "Pressure.FromKilopascals(55.0)")]
    [InlineData("boost=0.55bar", "var boost = Pressure.FromBars(0.55);", "Pressure.FromBars(0.6)", "Pressure.FromBars(0.55)")]
    [InlineData("speed=6900rpm", "FromRevolutionsPerMinute(6900.0);", "RotationalSpeed.FromRevolutionsPerMinute(7200)", "RotationalSpeed.FromRevolutionsPerMinute(6900.0)")]
    [InlineData("table=[3, 4.5]", "double[] table = [3.0, 4.5];", "[1, 2]", "[3.0, 4.5]")]
    [InlineData("table[1]=5", "double[] table = [1, 5.0];", "2", "5.0")]
    [InlineData("boosted=false", "var boosted = false;", "true", "false")]
    public void Value_OfTheLiteralsKind_TakesItsPlace(string setting, string line, string was, string now)
    {
        var (cells, changed, _) = InputsCell.Apply(Cells, InputSetting.Parse([setting]));
        Assert.Contains(line, cells[1].Text, StringComparison.Ordinal);
        ChangedInput only = Assert.Single(changed);
        Assert.Equal((was, now), (only.Was, only.Is));
        Assert.Equal([Cells[0], Cells[2]], [cells[0], cells[2]]);

        // No other line moved.
        string[] lines = cells[1].Text.Split('\n'), before = Inputs.ReplaceLineEndings("\n").Split('\n');
        Assert.Equal(before.Length, lines.Length);
        Assert.Single(lines.Zip(before), pair => pair.First != pair.Second);
    }

    [Theory]
    [InlineData("boost=much", "expected a number with a decimal point")]
    [InlineData("boost=0,9", "expected a number with a decimal point")]
    [InlineData("boost=NaN", "expected a number with a decimal point")]
    [InlineData("boost=1e999", "expected a number with a decimal point")]
    [InlineData("boost=", "expected a number with a decimal point")]
    [InlineData("cylinders=4.5", "expected a whole number")]
    [InlineData("cylinders=99999999999", "expected a whole number")]
    [InlineData("fuel=Milk", "expected one of ")]
    [InlineData("fuel=petrol", "Petrol")]
    [InlineData("cycle=0", "FourStroke")]
    [InlineData("boosted=yes", "expected one of true, false")]
    [InlineData("table=3", "expected a table as the cell has it")]
    [InlineData("table[2]=3", "Rows are counted from [0]: table[0] to table[1].")]
    [InlineData("table=[3, four]", "\"four\" is no number")]
    [InlineData("table=[3, 4", "is missing at character 6")]
    [InlineData("sum=3", "cannot be set from the command line")]
    [InlineData("Boost=1", "no such input. It has boost, cylinders, lambda, idle, speed, fuel, cycle, log, boosted, table. Did you mean boost")]
    [InlineData("boost2=1", "no such input")]
    [InlineData("boost", "expected name=value")]
    [InlineData("=1", "expected name=value")]
    [InlineData("", "expected name=value")]
    public void Value_OfAnotherKindOrName_IsRefused(string setting, string reason) =>
        Assert.Contains(
            reason,
            Assert.Throws<NotebookException>(() => InputsCell.Apply(Cells, InputSetting.Parse([setting]))).Message,
            StringComparison.Ordinal);

    /// <summary>The parser takes minutes over a hundred thousand commas.</summary>
    [Fact]
    public void Cell_OfAMonstrousLength_IsNotLookedThrough() =>
        Assert.Contains(
            "too many to look for inputs in",
            Assert.Throws<NotebookException>(() => InputsCell.Apply(
                [new(1, true, "var a = 1; s" + new string(',', 100_000), true)], InputSetting.Parse(["a=2"]))).Message,
            StringComparison.Ordinal);

    [Fact]
    public void Name_GivenTwice_IsRefused() =>
        Assert.Throws<NotebookException>(() => InputSetting.Parse(["boost=1", "boost=2"]));

    [Fact]
    public void Notebook_WithoutACellOfInputs_TakesNoSettings()
    {
        IReadOnlyList<NotebookCell> cells = [Cells[0], Cells[2]];
        Assert.Contains(
            "this notebook has none", Assert.Throws<NotebookException>(() => InputsCell.Apply(cells, InputSetting.Parse(["boost=1"]))).Message, StringComparison.Ordinal);
        Assert.Same(cells, InputsCell.Apply(cells, []).Cells);
    }

    /// <summary>A few inputs first, the others in a cell below: both are set, each in its own cell.</summary>
    [Fact]
    public void Inputs_OfTwoCells_AreSetWhereTheyStand()
    {
        IReadOnlyList<NotebookCell> cells = [new(1, true, "var boost = 0.6;", true), new(2, false, "## Others", true), new(3, true, "var cylinders = 4;\nvar lambda = 0.82;", true)];

        var (written, changed, _) = InputsCell.Apply(cells, InputSetting.Parse(["lambda=0.85", "boost=0.9"]));

        Assert.Equal(["var boost = 0.9;", "## Others", "var cylinders = 4;\nvar lambda = 0.85;"], written.Select(cell => cell.Text));
        Assert.Equal(["lambda", "boost"], changed.Select(change => change.Name));
        Assert.Equal(["boost"], InputsCell.First(cells));
        Assert.Contains(
            "cells 1 and 3 have no such input. They have boost, cylinders, lambda. Did you mean lambda?",
            Assert.Throws<NotebookException>(() => InputsCell.Apply(cells, InputSetting.Parse(["lamda=1"]))).Message,
            StringComparison.Ordinal);
    }

    /// <summary>A setup file takes the place of what follows its name in its cell, and of cells marked so; other cells of inputs stay the notebook's.</summary>
    [Theory]
    [InlineData("gain", false)]
    [InlineData("boost", true)]
    [InlineData("tolerance", false)]
    [InlineData("cylinders", true)]
    public void Inputs_BesideASetupFile_AreSetWhereItDoesNotHoldThem(string name, bool isRefused)
    {
        IReadOnlyList<NotebookCell> cells =
        [
            new(1, true, "var gain = 4;\nvar setupFile = \"car.json\";\nvar boost = 6;", true),
            new(2, true, "var tolerance = 3;", true),
            new(3, true, "var cylinders = 4;", true, true),
        ];
        IReadOnlyList<InputSetting> setting = InputSetting.Parse([$"{name}=5"]);

        Assert.Equal("car.json", InputsCell.SetupOf(cells, setting));
        if (isRefused)
        {
            Assert.Contains("comes from the file", Assert.Throws<NotebookException>(() => InputsCell.Apply(cells, setting)).Message, StringComparison.Ordinal);
        }
        else
        {
            Assert.Equal("5", Assert.Single(InputsCell.Apply(cells, setting).Changed).Is);
        }
    }

    /// <summary>Values that would be code if they were ever read as such.</summary>
    private static readonly string[] Hostile =
    [
        "0); System.Environment.Exit(77); (",
        "1;System.Environment.Exit(77)",
        "\"; System.Environment.Exit(77); \"",
        "\"\"\"; System.Environment.Exit(77); \"\"\"",
        "x\nSystem.Environment.Exit(77);//",
        "x\r\n\u0085\u2028\u2029System.Environment.Exit(77);//",
        "{System.Environment.Exit(77)}",
        "\\\"; System.Environment.Exit(77); //",
        "\\",
        "Petrol; System.Environment.Exit(77)",
        "Petrol/*",
        "1/*",
        "\0\u001B[31m",
        "@file",
    ];

    [Fact]
    public void Value_ThatLooksLikeCode_IsRefusedWhereTheInputIsNoText()
    {
        foreach (string value in Hostile)
        {
            foreach (string name in new[] { "boost", "cylinders", "lambda", "idle", "speed", "fuel", "cycle", "boosted" })
            {
                Assert.Throws<NotebookException>(() => InputsCell.Apply(Cells, InputSetting.Parse([$"{name}={value}"])));
            }
        }
    }

    [Fact]
    public async Task Value_ThatLooksLikeCode_IsATextWhereTheInputIsOne()
    {
        string declared = string.Concat(Hostile.Select((_, i) => $"var t{i} = \"\";\n"));
        string shown = string.Concat(Hostile.Select((_, i) => $"Console.WriteLine(\"<\" + string.Join(' ', t{i}.Select(c => (int)c)) + \">\");\n"));
        using var notebook = Marked(declared + shown);
        ProgramRun run = await notebook.RunAsync([.. Hostile.SelectMany((value, i) => new[] { "--set", $"t{i}={value}" })]);
        Assert.Equal(("", 0), (run.Error, run.Code));
        foreach (string value in Hostile)
        {
            Assert.Contains($"&lt;{string.Join(' ', value.Select(c => (int)c))}&gt;", run.Report, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Run_WithInputsSet_SaysSoAndUsesThem()
    {
        using var notebook = Marked("var boost = 0.6;\nvar name = \"<Wren>\";\nConsole.WriteLine($\"{name} at {boost * 10}\");");
        ProgramRun run = await notebook.RunAsync("--set", "boost=0.9", "--set", "name=@<Lark>");
        Assert.Equal(("", 0), (run.Error, run.Code));
        Assert.Contains("set boost = 0.9 (in the notebook: 0.6)", run.Output, StringComparison.Ordinal);
        Assert.Contains("Inputs set for this run:", run.Report, StringComparison.Ordinal);
        Assert.Contains("<li>boost = 0.9 (in the notebook: 0.6)</li>", run.Report, StringComparison.Ordinal);
        Assert.Contains("@&lt;Lark&gt; at 9", run.Report, StringComparison.Ordinal);
        Assert.DoesNotContain("<Lark>", run.Report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_OfAnotherLog_ReadsIt()
    {
        string path = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.csv");
        try
        {
            await File.WriteAllTextAsync(path, "Speed\n3000\n3100\n");
            using var notebook = Marked($"""
                {InventedNotebook.Load}
                using FuelSizing.Engines;
                using FuelSizing.Logs;
                using UnitsNet.Units;
                var log = "wren.csv";
                RunReader.Read(log, RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute)), Atmosphere.Standard).Account.ToString()
                """);
            ProgramRun run = await notebook.RunAsync("--set", $"log={path}");
            Assert.Equal(("", 0), (run.Error, run.Code));
            Assert.Contains("2 rows: 2 used, 0 refused", run.Report, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public async Task Run_WithoutInputsSet_GivesNothingForThem()
    {
        using var notebook = Marked("var boost = 0.6;");
        Assert.DoesNotContain("Inputs set", (await notebook.RunAsync()).Report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_WithARefusedInput_RunsNothing()
    {
        using var notebook = Marked("var boost = 0.6;");
        ProgramRun run = await notebook.RunAsync("--set", "bost=0.9");
        Assert.Equal(2, run.Code);
        Assert.Contains("no such input. It has boost.", run.Error, StringComparison.Ordinal);
        Assert.Null(run.Report);
    }

    public static TheoryData<string> Notebooks => WorkedExampleTests.Notebooks;

    /// <summary>Every notebook of the tree has cells of inputs that can be set.</summary>
    [Theory]
    [MemberData(nameof(Notebooks))]
    public void Notebook_OfTheTree_TakesSettings(string name)
    {
        var (_, changed, questions) = InputsCell.Apply(
            NotebookReader.Read(new FileInfo(Repository.PathOf("notebooks", name))), InputSetting.Parse(["coolerEffectiveness=60", "cylinders=4"]));
        Assert.Equal("Ratio.FromPercent(60.0)", changed[0].Is);
        Assert.Empty(questions);
    }

    /// <summary>The notebook's first code cell holds ten inputs at most, those of its exercises among them, and no other.</summary>
    [Theory]
    [MemberData(nameof(Notebooks))]
    public void Notebook_OfTheTree_BeginsWithTheTenInputsThatMatter(string name)
    {
        IReadOnlyList<NotebookCell> cells = NotebookReader.Read(new FileInfo(Repository.PathOf("notebooks", name)));

        IReadOnlyList<string> first = InputsCell.First(cells);

        NotebookCell[] code = [.. cells.Where(cell => cell.IsCode)];
        Assert.True(code[0].IsInputs && code[1].IsInputs, "The first two code cells are those of inputs.");
        Assert.InRange(first.Count, 5, 10);
        Assert.Empty(NotebookExercise.Of(name).SelectMany(exercise => exercise.Settings).Select(setting => setting.Split('=', '.', '[')[0]).Except(first));

        // What the parser took for inputs is all that is declared: one name at each beginning of a line that declares one.
        Assert.Equal(first, Regex.Matches(code[0].Text, @"^(var|\w+(\[\])+|\(.*\)\[\]) (?<name>\w+) =", RegexOptions.Multiline | RegexOptions.ExplicitCapture).Select(match => match.Groups["name"].Value));
    }

    /// <summary>A notebook of one cell, marked by a tag.</summary>
    private static InventedNotebook Marked(string code) => InventedNotebook.OfText(MarkedText(code));

    /// <summary>The text of a notebook of one cell, marked by a tag.</summary>
    internal static string MarkedText(string code) => JsonSerializer.Serialize(new
    {
        cells = new[]
        {
            new { cell_type = "code", id = "c0", execution_count = (int?)null, metadata = new { tags = new[] { "inputs" } }, outputs = Array.Empty<object>(), source = code },
        },
        metadata = new { kernelspec = new { display_name = "C#", language = "C#", name = "C#" }, language_info = new { name = "C#" } },
        nbformat = 4,
        nbformat_minor = 5,
    });
}
