using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Data;
using FuelSizing.Files;
using FuelSizing.Findings;
using FuelSizing.Selection;
using FuelSizing.Systems;
using FuelSizing.Tests.Findings;
using FuelSizing.Tests.Selection;
using FuelSizing.Uncertainty;
using Json.Schema;

namespace FuelSizing.Tests.Data;

/// <summary>Results written as data: what comes back is what was written, and says what the result says.</summary>
public class ResultDataTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "result.schema.json")));

    public static TheoryData<string> Names => [.. Cases.Results.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Result_WrittenAndRead_IsTheSame_OfTheSchema_AndSmall(string name)
    {
        OperatingResult result = Cases.Results[name]();
        string text = ComesBack(ResultData.Of(result));
        Assert.InRange(Encoding.UTF8.GetByteCount(text), 2_000, name.EndsWith("random", StringComparison.Ordinal) ? 60_000 : 30_000);
        Fits(text);
        NullsAreExplained(JsonNode.Parse(text)!);
        Agrees(result, JsonNode.Parse(text)!["operating_result"]!);
    }

    [Fact]
    public void Verdict_Sweep_Pull_AndWorking_WrittenAndRead_AreTheSame_OfTheSchema()
    {
        SweepResult sweep = Cases.Sweep(2, 2);
        OperatingResult result = Wren.System().Solve(Wren.At(6800, 0.6));
        foreach (ResultData data in new[] { ResultData.Of(sweep), ResultData.Of(sweep.Verdict), ResultData.Of(Cases.Pull()), ResultData.Of(result.Working) })
        {
            string text = ComesBack(data);
            Fits(text);
            NullsAreExplained(JsonNode.Parse(text)!);
        }

        Assert.Equal($"{sweep.Verdict}", ResultData.Of(sweep).Sweep!.Verdict.Headline.Text);
        Assert.Equal(sweep.Results.Count, ResultData.Of(sweep).Sweep!.Results.Count);
        WorkingData working = ResultData.Of(result.Working).Working!;
        Assert.Equal(
            result.Working.Given.Concat(result.Working.Steps).Select(step => (step.Symbol, step.Kind, step.Equation, step.Law)),
            working.Given.Concat(working.Steps).Select(step => (step.Symbol, step.Kind, step.Equation, step.Law)));

        // Written and read back, an equation's name is a name of the index; a figure that is given has none in the text.
        string written = ResultData.Of(result.Working).ToJson();
        WorkingData read = ResultData.Parse("working", written).Working!;
        Assert.Contains(read.Steps, step => step is { Symbol: "Q_s", Law: "InjectorFlow.Static" });
        Assert.All(read.Given, given => Assert.Null(given.Law));
        Assert.Equal(working.Steps.Count(step => step.Law is not null), written.Split("\"law\":").Length - 1);
        Assert.Contains(working.Steps, step => step.Unit == "kg/s" && step.Value == result.Demand.MassFlow.KilogramsPerSecond);
        Assert.Contains(working.Steps, step => step.Unit == "Pa" && step.Value == result.RailGauge.Pascals);
        Assert.Contains(working.Steps, step => step.Unit is null && step.Value == result.DutyCycle!.Value.DecimalFractions);
    }

    [Fact]
    public void Ranking_MonteCarlo_AndFindings_WrittenAndRead_AreTheSame_OfTheSchema()
    {
        Ranking ranking = Ranking.Of([Shelf.Petrol], CandidateParts.Of([Shelf.Injector(360, 160), Shelf.Injector(900, null)], [Shelf.Pump(2.5, 300)]));
        MonteCarloResult drawn = UncertainSystem.Of(
            Wren.System(), Wren.At(6800, 0.6), UncertainInput.InjectorFlowFactor(Distribution.Uniform(Wren.Percent(90), Wren.Percent(100)))).MonteCarlo(Sampling.Of(64));
        RunFindings findings = RunFindings.Of(PulledWren.Plan, ExactRun.Of(PulledWren.Plan));
        foreach (ResultData data in new[] { ResultData.Of(ranking), ResultData.Of(drawn), ResultData.Of(findings) })
        {
            string text = ComesBack(data);
            Fits(text);
            NullsAreExplained(JsonNode.Parse(text)!);
        }

        CombinationData[] combinations = [.. ResultData.Of(ranking).Ranking!.Combinations];
        Assert.Equal(ranking.Combinations.Select(one => (one.Injectors?.Name, one.Outcome, (double?)one.Cost, one.Reserve?.DecimalFractions)), combinations.Select(one => (one.Injectors, one.Outcome, one.CostInOwnMoney, one.MarginShare)));
        MonteCarloData shares = ResultData.Of(drawn).MonteCarlo!;
        Assert.Equal(drawn.All.Holding, shares.All.Holding);
        Assert.Equal(64, shares.All.Holding + shares.All.Failing + shares.All.CannotSay);
        Assert.Equal(drawn.DutyCycle.Percentile(Wren.Percent(95))?.DecimalFractions, shares.DutyCycle.Percentile95);
        FindingsData found = ResultData.Of(findings).Findings!;
        Assert.Equal((findings.Fault, findings.Faults.Count, $"{findings.Verdict}"), (found.Fault, found.Faults.Count, found.Verdict.Headline.Text));
    }

    /// <summary>Of the bare car, and of the one of the docs, whose wiring, lines and filter are described.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Sweep_Of14By7Points_IsUnderAMegabyte_AndComesBack(bool whole)
    {
        FuelSystem system = whole ? Setup.Read(Path.Combine(AppContext.BaseDirectory, "docs", "wren-setup.json")).System : Wren.System();
        string text = ComesBack(ResultData.Of(Cases.Sweep(14, 7, system)));
        Assert.InRange(Encoding.UTF8.GetByteCount(text), 400_000, 1_000_000);
    }

    /// <summary>Every kind of part, every way to give it: the numbers of the text are those of the result, none is without bound, and each null has its reason.</summary>
    [Fact]
    public void AnyResult_WrittenAndRead_IsTheSame_AndSaysWhatTheResultSays() => Gen.Int[0, 100_000].Sample(
        seed =>
        {
            foreach (OperatingResult result in Cases.Random(seed))
            {
                string text = ComesBack(ResultData.Of(result));
                JsonNode json = JsonNode.Parse(text)!;
                NullsAreExplained(json);
                Agrees(result, json["operating_result"]!);
            }
        },
        iter: 40);

    [Fact]
    public void AnyResult_Written_FitsTheSchema() =>
        Assert.All(Enumerable.Range(0, 6).SelectMany(seed => Cases.Random(seed).Take(1)), result => Fits(ResultData.Of(result).ToJson()));

    [Fact]
    public void Lists_OfTheSame_AreEqual_AndOneDigitMakesADifference()
    {
        string text = ResultData.Of(Wren.System().Solve(Wren.At(6800, 0.6))).ToJson();
        ResultData one = ResultData.Parse("one", text);
        ResultData other = ResultData.Parse("other", text);
        Assert.Equal(one, other);
        Assert.Equal(one.GetHashCode(), other.GetHashCode());
        CheckData first = one.OperatingResult!.Checks[0];
        CheckData moved = first with { Used = Math.BitIncrement(first.Used!.Value) };
        Assert.NotEqual(one, one with { OperatingResult = one.OperatingResult with { Checks = [moved, .. one.OperatingResult.Checks.Skip(1)] } });
        Assert.Equal(one, one with { OperatingResult = one.OperatingResult with { Checks = [first, .. one.OperatingResult.Checks.Skip(1)] } });
    }

    /// <summary>The tests run without culture data, so a decimal comma and a true minus sign are given by hand.</summary>
    [Fact]
    public void Culture_OfTheThread_ChangesNothing()
    {
        OperatingResult result = Wren.System().Solve(Wren.At(6800, 0.6));
        string text = ResultData.Of(result).ToJson();
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo other = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            other.NumberFormat.NumberDecimalSeparator = ",";
            other.NumberFormat.NumberGroupSeparator = ".";
            other.NumberFormat.NegativeSign = "−";
            CultureInfo.CurrentCulture = other;
            Assert.Equal(text, ResultData.Of(result).ToJson());
            Assert.Equal(ResultData.Parse("text", text), ResultData.Of(result));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Threads_AtOnce_WriteAndReadTheSame()
    {
        OperatingResult result = Wren.System().Solve(Wren.At(6800, 0.6));
        string alone = ResultData.Of(result).ToJson();
        string[] together = new string[64];
        Parallel.For(0, together.Length, at => together[at] = ResultData.Parse("text", ResultData.Of(result).ToJson()).ToJson());
        Assert.All(together, text => Assert.Equal(alone, text));
    }

    [Fact]
    public void File_WrittenAndRead_IsTheSame()
    {
        string file = Path.GetTempFileName();
        try
        {
            ResultData data = ResultData.Of(Wren.System().Solve(Wren.At(6800, 0.6)));
            data.Write(file);
            Assert.Equal(data, ResultData.Read(file));
            File.WriteAllBytes(file, [0xff, 0xfe, 0x00]);
            Assert.Throws<ResultDataException>(() => ResultData.Read(file));
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Theory]
    [InlineData("\"result\":1", "\"result\":2", "result", "must be 1")]
    [InlineData("\"result\":1", "\"result\":\"1\"", "result", "must be 1")]
    [InlineData("\"result\":1,", "", "result", "is missing")]
    [InlineData("\"kind\":\"operating-result\"", "\"kind\":\"sweep\"", "kind", "must be the one record")]
    [InlineData("\"kind\":\"operating-result\"", "\"kind\":\"none\"", "kind", "must be the one record")]
    [InlineData("\"outcome\":\"fails\"", "\"outcome\":\"holds, fails\"", "operating_result.outcome", "not of the form")]
    [InlineData("\"outcome\":\"fails\"", "\"outcome\":1", "operating_result.outcome", "not of the form")]
    [InlineData("\"outcome\":\"fails\"", "\"outcome\":\"holds\",\"outcome\":\"fails\"", "outcome", "twice")]
    [InlineData("\"outcome\":\"fails\"", "\"outcome\":null", "outcome", "must not be null")]
    [InlineData("\"checks\":[", "\"checks\":[null,", "checks", "must not be null")]
    [InlineData("\"pressure_ratio\":", "\"pressure_ratio\":1e999,\"x\":", "pressure_ratio", "too large")]
    [InlineData("\"pressure_ratio\":", "\"pressure_ratio\":NaN,\"x\":", "the text", "not of the form")]
    [InlineData("\"pressure_ratio\":", "\"pressure_ratio\":null,\"x\":", "pressure_ratio", "must not be null")]
    [InlineData("\"pressure_ratio\":", "\"pressure_ration\":", "demand", "not of the form")]
    [InlineData("\"limiting\":\"", "\"limiting\":\"\\ud800", "limiting", "not of the form")]
    public void Text_ThatIsWrong_IsRefused_WithItsPlace(string good, string bad, string field, string words)
    {
        string text = ResultData.Of(Wren.System().Solve(Wren.At(6800, 0.6))).ToJson();
        int at = text.IndexOf(good, StringComparison.Ordinal);
        Assert.True(at >= 0, good);
        ResultDataException refused = Assert.Throws<ResultDataException>(() => ResultData.Parse("full-load.json", $"\n\n{text[..at]}{bad}{text[(at + good.Length)..]}"));
        FileProblem problem = refused.Problems[0];
        Assert.Equal("full-load.json", problem.File);
        Assert.InRange(problem.Line, 1, 3);
        Assert.Contains(field, problem.Field, StringComparison.Ordinal);
        Assert.Contains(words, $"{problem.Reason}", StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("1")]
    [InlineData("{}")]
    [InlineData("{ \"result\": 1 }")]
    [InlineData("{ \"setup\": 1 }")]
    public void Text_OfSomethingElse_IsRefused(string text) => Assert.NotEmpty(Assert.Throws<ResultDataException>(() => ResultData.Parse("other.json", text)).Problems);

    [Fact]
    public void Text_CutOffAnywhere_IsRefused()
    {
        string text = ResultData.Of(Wren.System().Solve(Wren.At(6800, 0.6)).Working).ToJson();
        for (int length = 0; length < text.Length; length += 97)
        {
            Assert.Throws<ResultDataException>(() => ResultData.Parse("cut.json", text[..length]));
        }
    }

    /// <summary>Every public record of the folder is written somewhere, and no name stands for a number that may be null in one record and for words in another.</summary>
    [Fact]
    public void EveryPublicRecord_IsOfTheForm()
    {
        Type[] records = [.. typeof(ResultData).Assembly.GetExportedTypes().Where(type => typeof(DataRecord).IsAssignableFrom(type) && !type.IsAbstract)];
        Assert.True(records.Length > 20, $"{records.Length} records");
        Assert.All(records, type => Assert.NotNull(ResultText.Options.GetTypeInfo(type)));
        PropertyInfo[] properties = [.. records.SelectMany(type => type.GetProperties()).Where(property => property.DeclaringType != typeof(object))];
        ILookup<string, Type> kinds = properties.ToLookup(property => property.Name, property => property.PropertyType);
        Assert.Empty(kinds.Where(kind => kind.Contains(typeof(double?)) && kind.Any(type => !type.IsValueType)).Select(kind => kind.Key));
        Assert.All(properties, property => Assert.True(
            property.PropertyType == typeof(string) || property.PropertyType == typeof(double) || property.PropertyType == typeof(double?) || property.PropertyType == typeof(int)
                || property.PropertyType == typeof(bool) || property.PropertyType.IsEnum || typeof(DataRecord).IsAssignableFrom(property.PropertyType) || property.PropertyType.Name == "DataList`1",
            $"{property.DeclaringType!.Name}.{property.Name} is a {property.PropertyType.Name}"));
    }

    /// <summary>A number's name ends in its unit, or in what it is where it has none.</summary>
    [Fact]
    public void EveryNumber_SaysItsUnit()
    {
        string[] endings =
        [
            "Pascals", "Kelvins", "Volts", "Amperes", "Watts", "Seconds", "CubicMetersPerSecond", "KilogramsPerSecond", "KilogramsPerCubicMeter", "RevolutionsPerSecond",
            "Share", "Ratio", "Factor", "Lambda", "LambdaIfStopped",

            // Of no unit, and of whatever money a catalogue is written in.
            "Evidence", "Probability", "Bits", "CostInOwnMoney",
        ];
        string[] withUnitBeside = ["CheckData", "RemedyData", "ArgumentData", "WorkingStepData", "SpreadData"];
        Assert.Empty(
            from type in typeof(ResultData).Assembly.GetExportedTypes()
            where typeof(DataRecord).IsAssignableFrom(type)
            from property in type.GetProperties()
            where property.PropertyType == typeof(double) || property.PropertyType == typeof(double?)
            where !Array.Exists(endings, ending => property.Name.EndsWith(ending, StringComparison.Ordinal))
            where !withUnitBeside.Contains(type.Name) || type.GetProperty("Unit") is null
            select $"{type.Name}.{property.Name}");
    }

    private static string ComesBack(ResultData data)
    {
        string text = data.ToJson();
        Assert.DoesNotContain('\n', text);
        ResultData read = ResultData.Parse("text", text);
        Assert.Equal(data, read);
        Assert.Equal(data.GetHashCode(), read.GetHashCode());
        Assert.Equal(text, read.ToJson());
        Assert.StartsWith("{\"result\":1,\"kind\":\"", text, StringComparison.Ordinal);
        return text;
    }

    private static void Fits(string text) =>
        Assert.True(Schema.Evaluate(JsonDocument.Parse(text).RootElement, new EvaluationOptions { OutputFormat = OutputFormat.Flag }).IsValid, text.Length > 400 ? text[..400] : text);

    /// <summary>Every null is of a number that the record says is not known, and every number that it says so of is null.</summary>
    private static void NullsAreExplained(JsonNode node)
    {
        if (node is JsonObject record)
        {
            string[] nulls = [.. record.Where(field => field.Value is null).Select(field => field.Key).Order()];
            string[] told = [.. (record["not_known"]?.AsArray() ?? []).SelectMany(gap => gap!["fields"]!.AsArray()).Select(field => field!.GetValue<string>()).Order()];
            Assert.Equal(told, nulls);
        }

        IEnumerable<JsonNode?> inner = node switch { JsonObject holder => holder.Select(field => field.Value), JsonArray list => list, _ => [] };
        foreach (JsonNode one in inner.OfType<JsonNode>())
        {
            NullsAreExplained(one);
        }
    }

    /// <summary>Numbers of the text, parsed by the runtime's own reader, against the result's own properties, to the last bit.</summary>
    private static void Agrees(OperatingResult result, JsonNode json)
    {
        JsonNode point = json["point"]!, demand = json["demand"]!, circuit = json["circuit"]!, injection = json["injection"]!, mixture = json["mixture"]!;
        Same(result.Point.Speed.RevolutionsPerSecond, point["speed_revolutions_per_second"]);
        Same(result.Point.Boost.Pascals, point["boost_gauge_pascals"]);
        Same(result.Demand.MassFlow.KilogramsPerSecond, demand["fuel_kilograms_per_second"]);
        Same(result.Demand.AirMassFlow.KilogramsPerSecond, demand["air_kilograms_per_second"]);
        Same((double)result.Demand.BrakePower.Watts, demand["brake_watts"]);
        Same(result.RailGauge.Pascals, circuit["rail_gauge_pascals"]);
        Same(result.PumpFlow?.CubicMetersPerSecond, circuit["pump_flow_cubic_meters_per_second"]);
        Same(result.ReturnedFlow?.CubicMetersPerSecond, circuit["returned_cubic_meters_per_second"]);
        Same(result.Circuit.InletGauge?.Pascals, circuit["inlet_gauge_pascals"]);
        Same((double?)result.Circuit.HeatToTank?.Watts, circuit["heat_to_tank_watts"]);
        Assert.Equal(result.Circuit.Pumps.Count, circuit["pumps"]!.AsArray().Count);
        Assert.Equal(result.Circuit.Paths.Count, circuit["paths"]!.AsArray().Count);
        Same(result.InjectedFlow.CubicMetersPerSecond, injection["injected_cubic_meters_per_second"]);
        Same(result.InjectorDifferential.Pascals, injection["differential_pascals"]);
        Same(result.StaticFlow?.CubicMetersPerSecond, injection["static_flow_cubic_meters_per_second"]);
        Same(result.DeadTime?.Seconds, injection["dead_time_seconds"]);
        Same(result.Pulse?.Seconds, injection["pulse_seconds"]);
        Same(result.DutyCycle?.DecimalFractions, injection["duty_cycle_share"]);
        Same(result.SecondaryInjection?.Pulse?.Seconds, injection["secondary"]?["pulse_seconds"]);
        Same(Finite(result.Mixture.Lambda), mixture["lambda"]);
        Same(Finite(result.Mixture.MaximumLambda), mixture["maximum_lambda"]);
        Same(result.Mixture.CommandedPulse?.Seconds, mixture["commanded_pulse_seconds"]);
        Same(result.SecondStream?.Flow?.CubicMetersPerSecond, json["second_stream"]?["flow_cubic_meters_per_second"]);
        Same(Finite(result.SecondStream?.Lambda), json["second_stream"]?["lambda"]);
        Same(result.SurgeTank?.Lifted?.CubicMetersPerSecond, json["surge_tank"]?["lifted_cubic_meters_per_second"]);
        Same(result.SurgeTank?.MinimumLifted?.CubicMetersPerSecond, json["surge_tank"]?["minimum_lifted_cubic_meters_per_second"]);
        Assert.Equal(Words(result.Outcome), json["outcome"]!.GetValue<string>());
        Assert.Equal(result.Margins.Count, json["checks"]!.AsArray().Count);
        foreach ((Margin margin, JsonNode? check) in result.Margins.Zip(json["checks"]!.AsArray()))
        {
            Assert.Equal(margin.Part.Code, check!["part"]!.GetValue<string>());
            Assert.Equal(Words(margin.Outcome), check["outcome"]!.GetValue<string>());
            Assert.Equal(margin.Explanation, check["finding"]!["text"]!.GetValue<string>());
            Same(margin.Reserve?.DecimalFractions, check["margin_share"]);
            Assert.Equal(margin.Used is null, check["used"] is null);
            Assert.Equal(margin.Allowed is null, check["allowed"] is null);
        }

        Assert.Equal(result.NotJudged.Select(open => open.Part.Code), json["not_judged"]!.AsArray().Select(open => open!["part"]!.GetValue<string>()));
        Assert.Equal(result.Point.ToString(), point["text"]!.GetValue<string>());
        Assert.Equal(result.Notes.Select(note => note.ToString()), json["notes"]!.AsArray().Select(note => note!["text"]!.GetValue<string>()));
        Assert.Equal(result.Falling is null, json["falling"] is null);
    }

    private static double? Finite(double? value) => value is { } known && double.IsFinite(known) ? known : null;

    private static string Words(Outcome outcome) => outcome switch
    {
        Outcome.CannotSay => "cannot-say",
        Outcome.Holds => "holds",
        Outcome.Fails => "fails",
        _ => "holds-as-far-as-judged",
    };

    private static void Same(double? expected, JsonNode? actual) => Assert.Equal(
        expected is { } value ? BitConverter.DoubleToInt64Bits(value) : default(long?),
        actual is null ? default(long?) : BitConverter.DoubleToInt64Bits(double.Parse(actual.ToJsonString(), NumberStyles.Float, CultureInfo.InvariantCulture)));
}
