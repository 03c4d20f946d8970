using FuelSizing.Engines;
using FuelSizing.Files;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Files.Setups;

/// <summary>A setup carries its boost line, of every kind, and the pull along it.</summary>
public class BoostLineSetupTests
{
    private static readonly FuelSystem Belted = FuelSystem.Return(
        Dunnock.Demand(), Wren.System().Injectors, Wren.System().Regulator, Wren.System().Pump);

    /// <summary>Each kind, with everything that it may have.</summary>
    public static TheoryData<string> Kinds { get; } = [.. Lines.Keys];

    /// <summary>A line of the file, another in its place, the field that is named, and what is said of it.</summary>
    public static TheoryData<string, string, string, string, string> Faults { get; } = new()
    {
        { "measured", "\"speed\": \"2000 rpm\"", "\"speed\": \"7000 rpm\"", "boost_line.points", "rising at point 3" },
        { "measured", "\"boost\": \"0.5 bar\"", "\"boost\": \"5 bar\"", "boost_line.points.boost", "between −0.95 bar and 4 bar" },
        { "measured", "\"boost\": \"0.5 bar\"", "\"boost\": \"0.5\"", "boost_line.points.boost", "has no unit" },
        { "held", "\"from\": \"2500 rpm\"", "\"from\": \"6900 rpm\"", "boost_line.to", "above 6,900 rev/min" },
        { "held", "\"threshold\": \"1800 rpm\"", "\"threshold\": \"2600 rpm\"", "boost_line.threshold", "below 2,500 rev/min" },
        { "held", "\"boost\": \"0.4 bar\"", "\"boost\": \"-0.4 bar\"", "boost_line.boost", "between 0 bar and 4 bar" },
        { "held", "\"kind\": \"held\"", "\"kind\": \"wished\"", "boost_line.kind", "measured, held, centrifugal, displacement" },
        { "centrifugal", "\"drive_ratio\": 8.5", "\"drive_ratio\": 85", "boost_line.drive_ratio", "between 0.2 and 20" },
        { "centrifugal", "\"known_drive_ratio\": 8", "\"known_drive_ratio\": 0.1", "boost_line.known_drive_ratio", "between 0.2 and 20" },
        { "centrifugal", "\"known_boost\": \"0.41 bar\"", "\"known_boost\": \"0 bar\"", "boost_line.known_boost", "between 0.01 bar and 4 bar" },
        { "centrifugal", "\"known_boost\": \"0.41 bar\",", "\"known_boost\": \"0.41 bar\", \"compressor_pulley\": \"-60 %\",", "boost_line.compressor_pulley", "−50" },
        { "centrifugal", "\"known_boost\": \"0.41 bar\",", "\"known_boost\": \"0.41 bar\", \"crank_pulley\": \"140 %\",", "boost_line.crank_pulley", "100" },
        { "centrifugal", "\"maximum_compressor_speed\": \"62500 rpm\"", "\"maximum_compressor_speed\": \"625 rpm\"", "boost_line.maximum_compressor_speed", "1,000 rev/min" },
        { "displacement", "\"displacement_per_revolution\": \"0.9 L\"", "\"displacement_per_revolution\": \"0.9 kg\"", "boost_line.displacement_per_revolution", "does not fit" },
        { "displacement", "\"volumetric_efficiency\": \"85 %\"", "\"volumetric_efficiency\": \"850 %\"", "boost_line.volumetric_efficiency", "between 20" },
        { "held", "\"slowest\": \"3000 rpm\"", "\"slowest\": \"6300 rpm\"", "pull.fastest", "over the slowest speed" },
    };

    private static Dictionary<string, BoostLine> Lines => new()
    {
        ["measured"] = MeasuredBoost.Of((Wren.Rpm(1000), Pressure.FromBars(0.1)), (Wren.Rpm(2000), Pressure.FromBars(0.3)), (Wren.Rpm(6600), Pressure.FromBars(0.5))),
        ["held"] = HeldBoost.Of(Pressure.FromBars(0.4), Wren.Rpm(2500), Wren.Rpm(6600), Wren.Rpm(1800)),
        ["centrifugal"] = CentrifugalBoost.From(8, Wren.Rpm(5900), Pressure.FromBars(0.41), Atmosphere.Standard)
            .WithDriveRatio(8.5).WithMaximumCompressorSpeed(Wren.Rpm(62500)),
        ["displacement"] = DisplacementBoost.Of(2.1, Volume.FromLiters(0.9), Ratio.FromPercent(85)).WithMaximumCompressorSpeed(Wren.Rpm(15000)),
    };

    [Fact]
    public void Dunnock_ReadAndWritten_IsTheSameText()
    {
        string text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "dunnock-setup.json"));
        Assert.Equal(text, Setup.Parse("dunnock.json", text).ToJson());
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Line_WrittenAndReadBack_IsTheSameAndGivesTheSameBoost(string kind)
    {
        Setup setup = Of(kind);
        Setup read = Setup.Parse("dunnock.json", setup.ToJson());

        Assert.Equal(setup, read);
        Assert.Equal(setup.ToJson(), read.ToJson());
        Assert.Equal(setup.Pull().Results.SelectMany(ResultText.Of), read.Pull().Results.SelectMany(ResultText.Of));
        Assert.Equal($"{setup.Pull().Verdict}", $"{read.Pull().Verdict}");
    }

    /// <summary>A pulley may be stated as the change that it is; the file written again has the ratio.</summary>
    [Fact]
    public void Pulley_StatedAsAChange_IsTheLinesOwn()
    {
        string text = Of("centrifugal").ToJson();
        string smaller = text.Replace("\"drive_ratio\": 8.5", "\"drive_ratio\": 8.5, \"compressor_pulley\": \"-12 %\", \"crank_pulley\": \"5 %\"", StringComparison.Ordinal);

        BeltDrivenBoost expected = ((BeltDrivenBoost)Lines["centrifugal"]).WithCompressorPulley(Wren.Percent(-12)).WithCrankPulley(Wren.Percent(5));
        Assert.Equal(expected, Setup.Parse("dunnock.json", smaller).BoostLine);
        Assert.NotEqual(expected, Setup.Parse("dunnock.json", text).BoostLine);
    }

    [Theory]
    [MemberData(nameof(Faults))]
    public void Line_WithOneFault_IsRefusedByField(string kind, string good, string bad, string field, string said)
    {
        string text = Of(kind).ToJson();
        Assert.Contains(good, text, StringComparison.Ordinal);

        IReadOnlyList<FileProblem> problems =
            Assert.Throws<SetupException>(() => Setup.Parse("dunnock.json", text.Replace(good, bad, StringComparison.Ordinal))).Problems;

        Assert.Contains(problems, problem => problem.Field == field && $"{problem.Reason}".Contains(said, StringComparison.Ordinal));
    }

    [Fact]
    public void Pull_WithoutALine_IsRefused()
    {
        Setup plain = Setup.Of(Belted);
        Assert.Contains("no boost line", Assert.Throws<InvalidOperationException>(() => plain.WithPull(Wren.Rpm(3000), Wren.Rpm(6000))).Message, StringComparison.Ordinal);
        Assert.Contains("no boost line", Assert.Throws<InvalidOperationException>(() => plain.Pull()).Message, StringComparison.Ordinal);
        Assert.Contains("no pull", Assert.Throws<InvalidOperationException>(() => plain.With(Lines["held"]).Pull()).Message, StringComparison.Ordinal);

        string text = plain.ToJson().Replace("\"setup\": 1,", "\"setup\": 1, \"pull\": { \"slowest\": \"3000 rpm\", \"fastest\": \"6000 rpm\" },", StringComparison.Ordinal);
        FileProblem problem = Assert.Single(Assert.Throws<SetupException>(() => Setup.Parse("dunnock.json", text)).Problems);
        Assert.Equal("pull", problem.Field);
        Assert.Equal("file.pull-without-line", problem.Reason.Code);
    }

    [Fact]
    public void Line_OfAnEngineWithoutItsCompressor_IsRefused() =>
        Assert.Contains("belt", Assert.Throws<ArgumentException>(() => Setup.Of(Wren.System()).With(Lines["displacement"])).Message, StringComparison.Ordinal);

    [Fact]
    public void Line_OfATurbochargedEngineOnABelt_IsRefusedByField()
    {
        string turbocharged = System.Text.RegularExpressions.Regex.Replace(
            Of("displacement").ToJson(), "\"belt-driven\"|,\\s*\"drive_efficiency\": \"[^\"]*\"", match => match.Value[0] == ',' ? string.Empty : "\"turbocharged\"");
        FileProblem problem = Assert.Single(Assert.Throws<SetupException>(() => Setup.Parse("dunnock.json", turbocharged)).Problems);
        Assert.Equal("boost_line", problem.Field);
        Assert.Contains("it must be belt-driven", $"{problem.Reason}", StringComparison.Ordinal);
    }

    /// <summary>A setup of the invented car with a line of a kind.</summary>
    internal static Setup Of(string kind) => Setup.Of(Belted).With(Lines[kind]).WithPull(Wren.Rpm(3000), Wren.Rpm(6300));
}
