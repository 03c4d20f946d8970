using FuelSizing.Files;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Selection;
using UnitsNet;

namespace FuelSizing.Tests.Files.Catalogues;

/// <summary>A catalogue is read whole, or each problem in it is named by file, line and field.</summary>
public class CatalogueTests
{
    public static TheoryData<string, string, int, string> Mutated { get; } = new()
    {
        { "injector A,360,", "injector A,36x,", 2, "injectors.static_flow" },
        { "injector A,360,", "injector A,,", 2, "injectors.static_flow" },
        { "injector A,360,", "injector A,36000,", 2, "injectors.static_flow" },
        { "injector A,360,", "injector A,-360,", 2, "injectors.static_flow" },
        { "injector A,360,", "injector A,NaN,", 2, "injectors.static_flow" },
        { "injector A,360,", "injector A,1e999,", 2, "injectors.static_flow" },
        { "injector A,360,", "injector A,360 mL/min,", 2, "injectors.static_flow" },
        { "injector A,360,", ",360,", 2, "injectors.name" },
        { "static_flow [mL/min]", "static_flow", 2, "injectors.static_flow" },
        { "static_flow [mL/min]", "static_flow [kPa]", 2, "injectors.static_flow" },
        { "static_flow [mL/min]", "flow_static [mL/min]", 2, "injectors.flow_static" },
        { "static_flow [mL/min]", "cost", 1, "cost" },
        { "static_flow [mL/min]", "Static Flow!", 1, "column 2" },
        { "injectors 1", "injectors 2", 1, "column 1" },
        { "injectors 1", "rockets 1", 1, "column 1" },
        { "550,160,8,300,2.4", "550,160,8,1e308,2.4", 2, "injectors.dead_times.differential" },
        { "550,160,8,300,2.4", "550,160,8,300", 2, "column 11" },
        { "550,160,8,300,2.4", "550,160,8,300,2.4,9", 2, "column 12" },
        { "550,160,8,300,2.4", "550,-1,8,300,2.4", 2, "injectors.cost" },
        { "550,160,8,300,2.4", "550,160,8,300,-2.4", 2, "injectors.dead_times.time" },
        { "550,160,8,300,2.4", "200,160,8,300,2.4", 2, "injectors.maximum_differential" },
        { "injector A,,,,,,,,16,300,0.7", "injector A,,,,,,,,16,300,1.7", 4, "injectors.dead_times" },
        { "injector A,,,,,,,,16,300,0.7", "injector A,,,,,,,,16,,0.7", 4, "injectors.dead_times.differential" },
        { "injector A,,,,,,,,16,500,0.8", "injector A,,,,,,,,15,500,0.8", 7, "injectors.dead_times.voltage" },
        { "injector A,,,,,,,,16,500,0.8", "injector A,380,,,,,,,16,500,0.8", 7, "injectors.static_flow" },
        { ",test oil,770 kg/m³", ",test oil,", 8, "injectors.test_density" },
        { ",test oil,770 kg/m³", ",,770 kg/m³", 8, "injectors.test_fluid" },
        { ",test oil,770 kg/m³", ",test oil,77 kg/m³", 8, "injectors.test_density" },
        { "\"injector B, \"\"short\"\"\",640", "\"injector B, \"short\"\",640", 8, "name" },
        { "\"injector B, \"\"short\"\"\",640", "injector A,640", 8, "injectors.static_flow" },
    };

    public static TheoryData<string, string, int, string> MutatedJson { get; } = new()
    {
        { "\"360 mL/min\"", "360", 5, "injectors.static_flow" },
        { "\"360 mL/min\"", "null", 5, "injectors.static_flow" },
        { "\"360 mL/min\"", "[1, 2]", 5, "injectors.static_flow" },
        { "\"360 mL/min\"", "\"360 mL/min\", \"static_flow\": \"370 mL/min\"", 5, "injectors.static_flow" },
        { "\"360 mL/min\"", "\"360 mL/min", 5, "byte 58" },
        { "\"catalogue\": 1,", string.Empty, 49, "catalogue" },
        { "\"catalogue\": 1,", "\"catalogue\": 7,", 2, "catalogue" },
        { "\"catalogue\": 1,", "\"catalogue\": 1, \"sparks\": [],", 2, "sparks" },
        { "\"catalogue\": 1,", "\"catalogue\": 1, \"\\u0000\": [],", 2, "(blank)" },
        { "\"8 V\", \"differential\": \"300 kPa\", \"time\": \"2.4 ms\"", "\"8 V\", \"differential\": \"300 kPa\", \"thyme\": \"2.4 ms\"", 8, "injectors.dead_times.thyme" },
        { "\"flow\": \"60 L/h\"", "\"flow\": \"600 L/h\"", 36, "pumps.curve" },
        { "\"kind\": \"fixed\"", "\"kind\": \"mixed\"", 43, "regulators.kind" },
        { "\"gain\": 6", "\"gain\": 60", 45, "regulators.gain" },
        { "\"gain\": 6, ", string.Empty, 45, "regulators.gain" },
        { "\"minimum_voltage\": \"6 V\"", "\"minimum_voltage\": \"60 V\"", 47, "regulators.minimum_voltage" },
        { "\"in_series_with\": \"regulator M\"", "\"in_series_with\": \"regulator Z\"", 46, "regulators.in_series_with" },
        { "\"in_series_with\": \"regulator M\"", "\"in_series_with\": \"unit S\"", 46, "regulators.in_series_with" },
        { "\"kind\": \"fixed\", \"base\": \"300 kPa\"", "\"kind\": \"fixed\", \"base\": \"300 kPa\", \"gain\": 3", 43, "regulators.gain" },
        { "\"unit R\"", "\"unit S\"", 46, "regulators.name" },
    };

    [Fact]
    public void Files_OfBothForms_GiveTheSameParts()
    {
        string folder = Directory.CreateTempSubdirectory("shelf").FullName;
        string Written(string name, string text)
        {
            string path = Path.Combine(folder, name);
            File.WriteAllText(path, text, new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
            return path;
        }

        try
        {
            Catalogue spreadsheet = Catalogue.Read(
                Written("i.csv", ShelfFiles.Injectors), Written("p.csv", ShelfFiles.Pumps), Written("r.csv", ShelfFiles.Regulators));
            Catalogue json = Catalogue.Read(Written("all.json", ShelfFiles.Json));

            foreach (Catalogue catalogue in new[] { spreadsheet, json })
            {
                Candidate<Injector> a = catalogue.Injectors[0];
                Assert.Equal(("injector A", 160m), (a.Name, a.Cost));
                Assert.Equal(360, a.Part.StaticFlow.MillilitersPerMinute, 9);
                Assert.Equal(300, a.Part.RatedDifferential.Kilopascals, 9);
                Assert.Equal(TestFluid.Heptane, a.Part.TestFluid);
                Assert.Equal(1.6, a.Part.MinimumLinearPulse.Milliseconds, 9);
                Assert.Equal(550, a.Part.MaximumDifferential.Kilopascals, 9);
                Assert.Equal(1.2, a.Part.DeadTime.At(Wren.Volt(12), Wren.Kpa(400)).Milliseconds, 9);
                Candidate<Injector> b = catalogue.Injectors[1];
                Assert.Equal(("injector B, \"short\"", 240.5m), (b.Name, b.Cost));
                Assert.Equal(("test oil", 770.0), (b.Part.TestFluid.Name, b.Part.TestFluid.Density.KilogramsPerCubicMeter));
                Assert.Equal(640, b.Part.StaticFlow.MillilitersPerMinute, 9);
                Assert.Equal(1.5, b.Part.MinimumLinearPulse.Milliseconds, 9);
                Assert.True(b.Part.DeadTime.IgnoresPressure);
                Assert.Equal(2, catalogue.Injectors.Count);

                Pump p = catalogue.Pumps[0].Part;
                Assert.Equal(0.9, p.Condition.DecimalFractions, 12);
                Assert.Equal(7, p.Curves[0].CurrentAt(Wren.Kpa(300)).Amperes, 9);
                Assert.Equal(165, p.Curves[0].FlowAt(Wren.Kpa(300)).LitersPerHour, 9);
                Pump q = catalogue.Pumps[1].Part;
                Assert.Equal(Pressure.FromKilopascals(700), q.Relief);
                Assert.Equal([12, 13.5], q.Curves.Select(curve => curve.Voltage.Volts));
                Assert.Null(catalogue.Pumps[1].Cost);

                Assert.Equal(
                    [
                        Fixed.At(Wren.Kpa(300)),
                        ManifoldReferenced.From(Wren.Kpa(300), VolumeFlow.FromLitersPerHour(15)),
                        RisingRate.From(Wren.Kpa(300), 6, Pressure.FromBars(0.1), Wren.Kpa(700)),
                        RegulatorSeries.Of(
                            ManifoldReferenced.From(Wren.Kpa(300), VolumeFlow.FromLitersPerHour(15)),
                            RisingRate.From(Pressure.Zero, 8, Pressure.FromBars(0.05))),
                        ElectronicReturnless.Holding(Wren.Kpa(350), true, Wren.Volt(6)),
                    ],
                    catalogue.Regulators.Select(regulator => regulator.Part));
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [MemberData(nameof(Mutated))]
    public void Csv_WithOneFault_NamesItsLineAndField(string good, string bad, int line, string field) =>
        OneFault("shelf.csv", ShelfFiles.Injectors, good, bad, line, field);

    [Theory]
    [MemberData(nameof(MutatedJson))]
    public void Json_WithOneFault_NamesItsLineAndField(string good, string bad, int line, string field) =>
        OneFault("shelf.json", ShelfFiles.Json, good, bad, line, field);

    [Fact]
    public void Csv_WithManyFaults_NamesAllInTheirOrder()
    {
        string text = ShelfFiles.Injectors.Replace("A,360", "A,x", StringComparison.Ordinal).Replace(",640,", ",y,", StringComparison.Ordinal);

        CatalogueException refused = Assert.Throws<CatalogueException>(() => Catalogue.Parse("shelf.csv", text));

        Assert.Equal([2, 8], refused.Problems.Select(problem => problem.Line));
    }

    [Fact]
    public void File_ThatIsNotUtf8_NamesTheLine()
    {
        string path = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.csv");
        File.WriteAllBytes(path, [.. "pumps 1\npump "u8, 0xE9, .. "\n"u8]);
        try
        {
            FileProblem problem = Assert.Single(Assert.Throws<CatalogueException>(() => Catalogue.Read(path)).Problems);
            Assert.Equal((path, 2), (problem.File, problem.Line));
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void Csv_OfNothing_SaysWhatTheFirstCellIs() =>
        Assert.Contains("injectors 1", Assert.Throws<CatalogueException>(() => Catalogue.Parse("e.csv", string.Empty)).Message, StringComparison.Ordinal);

    [Fact]
    public void Csv_WithSemicolons_SaysSo() =>
        Assert.Contains("commas", Assert.Throws<CatalogueException>(() => Catalogue.Parse("e.csv", "pumps 1;cost")).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("parts.txt")]
    [InlineData("parts")]
    public void Name_WithAnotherEnding_IsRefused(string name) =>
        Assert.Throws<ArgumentException>(() => Catalogue.Parse(name, string.Empty));

    private static void OneFault(string file, string text, string good, string bad, int line, string field)
    {
        int at = text.IndexOf(good, StringComparison.Ordinal);
        string mutated = text[..at] + bad + text[(at + good.Length)..];

        IReadOnlyList<FileProblem> problems =
            Assert.Throws<CatalogueException>(() => Catalogue.Parse(file, mutated)).Problems;

        Assert.Contains((file, line, field), problems.Select(problem => (problem.File, problem.Line, problem.Field)));
    }
}
