using CsCheck;
using FuelSizing.Files;
using FuelSizing.Fuels;
using FuelSizing.Points;
using FuelSizing.Systems;

namespace FuelSizing.Tests.Files.Setups;

/// <summary>A setup comes back from its file as it was, or each problem in the file is named by line and field.</summary>
public class SetupTests
{
    private static readonly string Good = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "wren-setup.json"));

    public static TheoryData<string, string, int, string> Mutated { get; } = new()
    {
        { "\"setup\": 1", "\"setup\": 2", 2, "setup" },
        { "\"setup\": 1,", string.Empty, 292, "setup" },
        { "\"layout\": \"return\"", "\"layout\": \"ring\"", 3, "layout" },
        { "\"layout\": \"return\"", "\"layout\": \"returnless\"", 100, "regulator" },
        { "\"layout\": \"return\",", "\"layout\": \"return\", \"sparks\": 4,", 3, "sparks" },
        { "\"layout\": \"return\",", "\"layout\": \"return\", \"sparks\": { \"gap\": \"1 mm\" },", 3, "sparks" },
        { "\"layout\": \"return\",", "\"layout\": \"return\", \"layout\": \"return\",", 3, "layout" },
        { "\"displacement\": \"2.4 L\"", "\"displacement\": \"2400\"", 6, "engine.displacement" },
        { "\"displacement\": \"2.4 L\"", "\"displacement\": \"2.4 kg\"", 6, "engine.displacement" },
        { "\"displacement\": \"2.4 L\"", "\"displacement\": \"2400 L\"", 6, "engine.displacement" },
        { "\"displacement\": \"2.4 L\"", "\"displacement\": 2.4", 6, "engine.displacement" },
        { "\"displacement\": \"2.4 L\"", "\"displacement\": null", 6, "engine.displacement" },
        { "\"displacement\": \"2.4 L\",", string.Empty, 4, "engine.displacement" },
        { "\"cylinders\": 4", "\"cylinders\": 4.5", 7, "engine.cylinders" },
        { "\"cylinders\": 4", "\"cylinders\": \"4\"", 7, "engine.cylinders" },
        { "\"cylinders\": 4", "\"cylinders\": 400", 7, "engine.cylinders" },
        { "\"speed\": \"3500 rpm\", \"efficiency\"", "\"speed\": \"1500 rpm\", \"efficiency\"", 20, "volumetric_efficiency" },
        { "\"efficiency\": \"94 %\"", "\"efficiency\": \"940 %\"", 20, "volumetric_efficiency.efficiency" },
        { "\"power\": \"68 kW\"", "\"power\": \"1e300 kW\"", 35, "power.curve.power" },
        { "\"power\": \"68 kW\"", "\"power\": \"-68 kW\"", 35, "power.curve.power" },
        { "\"share\": \"85 %\"", "\"share\": \"75 %\"", 49, "consumption.fuel.parts" },
        { "\"kind\": \"ethanol\"", "\"kind\": \"brandy\"", 67, "consumption.fuel.parts.fuel.kind" },
        { "\"kind\": \"ethanol\"", "\"kind\": \"ethanol\", \"name\": \"e\"", 67, "consumption.fuel.parts.fuel.name" },
        { "\"static_flow\": \"950 mL/min\"", "\"static_flow\": \"950 g/min\"", 80, "injectors.injector.static_flow" },
        { "\"time\": \"1.1 ms\"", "\"time\": \"9.1 ms\"", 92, "injectors.injector.dead_times.time" },
        { "\"gain\": 3", "\"gain\": 33", 102, "regulator.gain" },
        { "\"base\": \"300 kPa\"", "\"base\": \"30 kPa\"", 107, "regulator.in_series_with.base" },
        { "\"bypass\": \"check-valve\",", string.Empty, 111, "pump.bypass" },
        { "\"flow\": \"330 L/h\"", "\"flow\": \"530 L/h\"", 119, "pump.series.curve" },
        { "\"gauge\": \"10\"", "\"gauge\": \"ten\"", 145, "pump.series.parallel.feed.conductor.gauge" },
        { "\"gauge\": \"10\"", "\"gauge\": \"10\", \"metric\": \"4 mm²\"", 145, "pump.series.parallel.feed.conductor.gauge" },
        { "\"bore\": \"12 mm\"", "\"bore\": \"12 in\"", 198, "plumbing.suction.bore" },
        { "\"count\": 4 }", "\"count\": 400 }", 216, "plumbing.supply.fittings.count" },
        { "\"name\": \"cruise\"", "\"name\": \"full load\"", 266, "points.name" },
        { "\"boost\": \"-0.4 bar\"", "\"boost\": \"-4 bar\"", 268, "points.boost" },
    };

    [Fact]
    public void Demo_ReadAndWritten_IsTheSameText() => Assert.Equal(Good, Setup.Parse("wren.json", Good).ToJson());

    /// <summary>The law that matters: what is written and read back solves to the same bits.</summary>
    [Fact]
    public void AnySystem_WrittenAndReadBack_GivesTheSameResultsToTheLastBit() =>
        Gen.Int[0, int.MaxValue - 1].Sample(
            seed =>
            {
                // Assemblies inside assemblies take long to solve; the next test has them. So do pumps with lines of their own that share a feed, of which every eighth is solved.
                Setup setup = new SystemBuilder(seed, deepest: 1).Setup();
                Setup again = Setup.Parse("again.json", setup.ToJson());
                Assert.Equal(setup.System, again.System);
                if (!setup.System.Pump.HasOwnLines || seed % 8 == 0)
                {
                    Assert.Equal(ResultText.Of(setup), ResultText.Of(again));
                }
            },
            iter: 60);

    [Fact]
    public void AnySystem_WrittenReadAndWrittenAgain_IsTheSameText() =>
        Gen.Int[0, int.MaxValue - 1].Sample(
            seed =>
            {
                string text = new SystemBuilder(seed).Setup().ToJson();
                Assert.Equal(text, Setup.Parse("again.json", text).ToJson());
            },
            iter: 300);

    [Fact]
    public void File_WrittenAndRead_HoldsThePoints()
    {
        string file = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.json");
        try
        {
            Setup.Of(Wren.System(), ("full load", Wren.At(6800, 0.6)), ("idle", Wren.At(900, -0.6))).Write(file);
            Setup read = Setup.Read(file);

            Assert.Equal(["full load", "idle"], read.Points.Select(named => named.Name));
            Assert.Equal(Wren.At(6800, 0.6), read.Point("full load"));
            Assert.Equal(
                Wren.System().Solve(Wren.At(900, -0.6)).Limiting.ToString(),
                read.System.Solve(read.Point("idle")).Limiting.ToString());
            Assert.Contains("\"full load\", \"idle\"", Assert.Throws<ArgumentException>(() => read.Point("peak")).Message, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Theory]
    [MemberData(nameof(Mutated))]
    public void File_WithOneFault_NamesItsLineAndField(string good, string bad, int line, string field)
    {
        int at = Good.IndexOf(good, StringComparison.Ordinal);
        Assert.NotEqual(-1, at);
        string mutated = Good[..at] + bad + Good[(at + good.Length)..];

        IReadOnlyList<FileProblem> problems =
            Assert.Throws<SetupException>(() => Setup.Parse("wren.json", mutated)).Problems;

        Assert.Contains(("wren.json", line, field), problems.Select(problem => (problem.File, problem.Line, problem.Field)));
    }

    [Fact]
    public void File_WithManyFaults_NamesAllInTheirOrder()
    {
        string text = Good
            .Replace("\"2.4 L\"", "\"2.4\"", StringComparison.Ordinal)
            .Replace("\"950 mL/min\"", "\"950 kPa\"", StringComparison.Ordinal)
            .Replace("\"gain\": 3,", string.Empty, StringComparison.Ordinal)
            .Replace("\"suction_margin\"", "\"margin\"", StringComparison.Ordinal);

        SetupException refused = Assert.Throws<SetupException>(() => Setup.Parse("wren.json", text));

        Assert.Equal(
            ["engine.displacement", "injectors.injector.static_flow", "regulator.gain", "limits.margin"],
            refused.Problems.Select(problem => problem.Field));
        Assert.StartsWith("Nothing was read. wren.json, line 6, engine.displacement: was \"2.4\", which has no unit.", refused.Message, StringComparison.Ordinal);
        FileProblem problem = refused.Problems[0];
        Assert.Equal("file.no-unit", problem.Reason.Code);
        Assert.Equal("2.4", problem.Reason.Arguments[0].Value);
    }

    [Fact]
    public void Names_BlankOrTwice_AreRefused()
    {
        OperatingPoint point = Wren.At(3000, 0);
        Assert.Contains(
            "\"idle\" twice",
            Assert.Throws<ArgumentException>(() => Setup.Of(Wren.System(), ("idle", point), ("idle", point))).Message,
            StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Setup.Of(Wren.System(), (" ", point)));
        Assert.Throws<ArgumentException>(() => Setup.Of(Wren.System(), ("half \ud800 a character", point)));
    }

    [Fact]
    public void Atmosphere_ByAltitude_IsTheStandardOneThere()
    {
        string text = Setup.Of(Wren.System(), ("hill", Wren.At(3000, 0.2))).ToJson();
        string byAltitude = System.Text.RegularExpressions.Regex.Replace(
            text, "\"atmosphere\": \\{[^}]*\\}", "\"atmosphere\": { \"altitude\": \"600 m\" }");
        Assert.NotEqual(text, byAltitude);
        Assert.Equal(text, Setup.Parse("hill.json", byAltitude).ToJson());
    }

    /// <summary>What was given stays with a part, and is no part of it: equal parts stay equal.</summary>
    [Fact]
    public void Parts_GivenInAnotherWay_AreEqual()
    {
        Assert.Equal(ElementalComposition.OfMolecule(1, 4, 1), ElementalComposition.OfAtomRatios(4, 1));
        Assert.Equal(FuelBlend.EthanolInPetrol(Wren.Percent(10)), Fuel.E10);
    }
}
