using CsCheck;
using FuelSizing.Files;
using FuelSizing.Injectors;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Tests.Files.Setups;

/// <summary>A value that is possible and not plausible is questioned where it is given, with the unit that was probably meant.</summary>
public class InputQuestionTests
{
    private static readonly string Wren = Page("wren-setup.json");

    private static readonly string Dunnock = Page("dunnock-setup.json");

    /// <summary>A value of a file, one that was mis-typed, and what the question says: the field, what was meant, its conversion.</summary>
    public static TheoryData<string, string, string, string, string> MisUnited { get; } = new()
    {
        { "wren", "\"static_flow\": \"950 mL/min\"", "\"static_flow\": \"24 mL/min\"", "injectors.injector.static_flow", "24 lb/h, that is 265" },
        { "wren", "\"static_flow\": \"950 mL/min\"", "\"static_flow\": \"7 mL/min\"", "injectors.injector.static_flow", "7 g/s, that is 614" },
        { "wren", "\"rated_differential\": \"300 kPa\"", "\"rated_differential\": \"43.5 bar\"", "injectors.injector.rated_differential", "43.5 psi, that is 299.9" },
        { "wren", "\"displacement\": \"2.4 L\"", "\"displacement\": \"2400 L\"", "engine.displacement", "2,400 cm³, that is 2.4 L" },
        { "wren", "\"displacement\": \"2.4 L\"", "\"displacement\": \"146 L\"", "engine.displacement", "146 in³, that is 2.39" },
        { "wren", "\"fuel_temperature\": \"30 °C\"", "\"fuel_temperature\": \"95 °C\"", "points.conditions.fuel_temperature", "95 °F, that is 35 °C" },
        { "wren", "\"boost\": \"0.7 bar\"", "\"boost\": \"8 bar\"", "points.boost", "8 psi, that is 55.1" },
        { "wren", "\"speed_limit\": \"7200 rpm\"", "\"speed_limit\": \"7.2 rpm\"", "engine.speed_limit", "7.2 × 1,000 rpm" },
        { "wren", "\"lambda\": 0.82", "\"lambda\": 12.2", "consumption.lambda", "an air-fuel ratio of 12.2" },
        { "dunnock", "\"known_boost\": \"0.41 bar\"", "\"known_boost\": \"6 bar\"", "boost_line.known_boost", "6 psi, that is 41.3" },
        { "dunnock", "\"known_boost\": \"0.41 bar\"", "\"known_boost\": \"2 kPa\"", "boost_line.known_boost", "2 psi, that is 13.7" },
        { "dunnock", "\"base\": \"300 kPa\"", "\"base\": \"43.5 kPa\"", "regulator.base", "43.5 psi, that is 299.9" },
        { "dunnock", "\"brake_specific_fuel_consumption\": \"309 g/kWh\"", "\"brake_specific_fuel_consumption\": \"0.5 g/kWh\"", "consumption.brake_specific_fuel_consumption", "0.5 lb/hp·h, that is 304" },
        { "dunnock", "\"maximum_compressor_speed\": \"62500 rpm\"", "\"maximum_compressor_speed\": \"1041 rpm\"", "boost_line.maximum_compressor_speed", "1,041 rev/s, that is 62" },
        { "dunnock", "\"pulse\": \"12.5 ms\"", "\"pulse\": \"0.0125 ms\"", "controller.pulses.pulse", "0.0125 s, that is 12.5 ms" },
    };

    [Theory]
    [MemberData(nameof(MisUnited))]
    public void Value_InAnotherUnitThanMeant_IsQuestioned(string file, string good, string bad, string field, string likely)
    {
        string text = file == "wren" ? Wren : Dunnock;
        Assert.Contains(good, text, StringComparison.Ordinal);
        int at = text.IndexOf(good, StringComparison.Ordinal);

        InputQuestion question = Assert.Single(Questions(text[..at] + bad + text[(at + good.Length)..]));

        Assert.Equal(field, question.Input);
        Assert.Equal(1 + text[..at].Count(letter => letter == '\n'), question.Line);
        Assert.Contains(question.Likely, one => one.StartsWith(likely, StringComparison.Ordinal));
        Assert.Contains(PlausibleRange.Source, $"{question}", StringComparison.Ordinal);
    }

    [Fact]
    public void Demos_RaiseNoQuestion()
    {
        Assert.Empty(Setup.Parse("wren.json", Wren).Questions);
        Assert.Empty(Setup.Parse("dunnock.json", Dunnock).Questions);
    }

    /// <summary>
    /// What the units that people use come to, by the definition of the pound; UnitsNet's pound an hour has seven figures. 24 lb/h of n-heptane (683.8 kg/m³) are 24 · 453.592 g / 60 min ÷ 0.6838 g/mL.
    /// </summary>
    [Theory]
    [InlineData("\"950 mL/min\"", "\"24 lb/h\"", 24 * 453.59237 / 60 / 0.6838)]
    [InlineData("\"950 mL/min\"", "\"24 lbs/hr\"", 24 * 453.59237 / 60 / 0.6838)]
    [InlineData("\"950 mL/min\"", "\"5 g/s\"", 5 * 60 / 0.6838)]
    [InlineData("\"950 mL/min\"", "\"410 cc/min\"", 410)]
    public void StaticFlow_ByMass_IsThatOfTheTestLiquid(string good, string bad, double millilitres)
    {
        InjectorSet injectors = Setup.Parse("wren.json", Wren.Replace($"\"static_flow\": {good}", $"\"static_flow\": {bad}", StringComparison.Ordinal)).System.Injectors;
        Assert.Equal(millilitres, injectors.Injector.StaticFlow.MillilitersPerMinute, 1e-6 * millilitres);
    }

    [Fact]
    public void StaticFlow_ByMassOnAnotherLiquid_IsThatOfIt()
    {
        string text = Wren.Replace("\"950 mL/min\"", "\"5 g/s\"", StringComparison.Ordinal).Replace("683.8 kg/m³", "750 kg/m³", StringComparison.Ordinal);
        Assert.Equal(5 * 60 / 0.75, Setup.Parse("wren.json", text).System.Injectors.Injector.StaticFlow.MillilitersPerMinute, 1e-9);
    }

    /// <summary>Every range is found by each of its names, and its limits are plausible.</summary>
    [Fact]
    public void Range_IsFoundByItsInputs() =>
        Assert.All(PlausibleRange.All, range => Assert.All(range.Inputs, input => Assert.Same(range, PlausibleRange.For($"some.{input}"))));

    [Fact]
    public void Range_LooksAtValuesOfItsKindOnly()
    {
        PlausibleRange flow = PlausibleRange.For("staticFlow")!;
        Assert.Null(flow.Question("staticFlow", Pressure.FromBars(3)));
        Assert.Null(flow.Question("staticFlow", 3));
        Assert.Null(PlausibleRange.For("sparks"));
        Assert.Null(flow.Question("staticFlow", VolumeFlow.FromMillilitersPerMinute(80)));
        Assert.NotNull(flow.Question("staticFlow", VolumeFlow.FromMillilitersPerMinute(79.9)));
        Assert.Null(flow.Question("staticFlow", VolumeFlow.FromLitersPerHour(22)));
    }

    /// <summary>Whatever is asked, what was likely meant is plausible itself, and so asks nothing more.</summary>
    [Fact]
    public void Likely_IsPlausibleItself() =>
        Gen.Select(Gen.OneOfConst("8 bar", "3 bar", "43.5 kPa", "0.6 kPa", "29.9 kPa"), Gen.OneOfConst("points.boost", "regulator.base", "atmosphere.pressure", "rail_ceiling"))
            .Sample((value, input) =>
            {
                IQuantity given = TypedQuantity.Read(value, PressureUnit.Kilopascal).Value!;
                if (PlausibleRange.For(input)!.Question(input, given) is { } question)
                {
                    Assert.All(question.Likely, likely =>
                    {
                        string typed = likely[..likely.IndexOf(',', StringComparison.Ordinal)];
                        Assert.Null(PlausibleRange.For(input)!.Question(input, TypedQuantity.Read(typed, PressureUnit.Kilopascal).Value!));
                    });
                }
            });

    private static IReadOnlyList<InputQuestion> Questions(string text)
    {
        try
        {
            return Setup.Parse("setup.json", text).Questions;
        }
        catch (SetupException refused)
        {
            Assert.All(refused.Questions, question => Assert.Contains($"{question}", refused.Message, StringComparison.Ordinal));
            return refused.Questions;
        }
    }

    private static string Page(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", name));
}
