using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FuelSizing.Files;
using FuelSizing.Systems;
using Json.Schema;

namespace FuelSizing.Tests.Files.Setups;

/// <summary>The page about setups shows a sample that is read, and its schema and the reader agree on every field.</summary>
public class SetupPageTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(Page("setup.schema.json"));

    private static string Sample =>
        Regex.Match(Page("setups.md"), @"^```json\n(.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline).Groups[1].Value;

    /// <summary>The page's files, and systems with the other kinds of every part.</summary>
    public static TheoryData<string, string> Files { get; } = new()
    {
        { "page", Sample },
        { "demo", Page("wren-setup.json") },
        { "random 278", new SystemBuilder(278).Setup().ToJson() },
        { "random 2877", new SystemBuilder(2877).Setup().ToJson() },
        { "random 94", new SystemBuilder(94).Setup().ToJson() },
        { "random: measured line", BoostLineSetupTests.Of("measured").ToJson() },
        { "random: held line", BoostLineSetupTests.Of("held").ToJson() },
        { "random: centrifugal line", BoostLineSetupTests.Of("centrifugal").ToJson() },
        { "random: displacement line", BoostLineSetupTests.Of("displacement").ToJson() },
    };

    [Fact]
    public void Sample_OfThePage_IsTheReadmesSystem()
    {
        Setup setup = Setup.Parse("wren.json", Sample);
        Assert.Equal(
            "injectors: duty cycle 127.0 % over the 85.0 % limit (common practice, no source) at 6,800 rev/min, 0.60 bar",
            setup.System.Solve(setup.Point("full load")).Limiting.ToString());
    }

    [Fact]
    public void Message_OfThePage_IsWhatTheReaderSays()
    {
        SetupException refused = Assert.Throws<SetupException>(
            () => Setup.Parse("wren.json", Sample.Replace("\"360 mL/min\"", "\"360\"", StringComparison.Ordinal)));
        Assert.Contains(Assert.Single(refused.Problems).ToString(), Page("setups.md"), StringComparison.Ordinal);
    }

    [Fact]
    public void AnySystem_Written_FitsTheSchema() =>
        Assert.All(Enumerable.Range(0, 50), seed => Assert.True(Fits(JsonNode.Parse(new SystemBuilder(seed).Setup().ToJson())!), $"seed {seed}"));

    [Theory]
    [MemberData(nameof(Files))]
    public void EveryField_TakenOutMisspeltOrOfAnotherForm_IsJudgedByReaderAndSchemaAlike(string name, string text)
    {
        Assert.True(Fits(JsonNode.Parse(text)!), name);
        int tried = 0;
        foreach (string path in Fields(JsonNode.Parse(text)!).Select(node => node.GetPath()).ToArray())
        {
            // The page's files get every fault, the others enough to show that their kinds of part are known to both.
            foreach ((string how, Func<JsonNode, JsonNode?>? other) in name.StartsWith("random", StringComparison.Ordinal) ? Mutates[..2] : Mutates)
            {
                JsonNode mutated = JsonNode.Parse(text)!;
                JsonNode field = Fields(mutated).Single(node => node.GetPath() == path);
                JsonObject holder = field.Parent!.AsObject();
                string key = field.GetPropertyName();
                holder.Remove(key);
                if (other is not null)
                {
                    holder.Add(how == "misspelt" ? $"{key}_" : key, other(field));
                }

                Assert.Equal((path, how, Fits(mutated)), (path, how, IsRead(mutated.ToJsonString())));
                tried++;
            }
        }

        Assert.InRange(tried, 100, 2000);
    }

    private static (string How, Func<JsonNode, JsonNode?>? Other)[] Mutates { get; } =
    [
        ("taken out", null),
        ("another form", value => value.GetValueKind() switch
        {
            JsonValueKind.String => JsonValue.Create(7),
            JsonValueKind.Number => JsonValue.Create("7"),
            JsonValueKind.True or JsonValueKind.False => JsonValue.Create("true"),
            JsonValueKind.Object => new JsonArray(),
            _ => new JsonObject(),
        }),
        ("misspelt", value => value.DeepClone()),
        ("null", _ => null),
        ("a list", value => value is JsonArray ? JsonValue.Create("none") : new JsonArray(new JsonObject())),
        ("without its unit", value => IsQuantity(value) ? JsonValue.Create("7.5") : value.DeepClone()),
    ];

    private static bool IsQuantity(JsonNode value) =>
        value.GetValueKind() == JsonValueKind.String && Regex.IsMatch(value.GetValue<string>(), "^-?[0-9][0-9.E+-]* ");

    private static bool Fits(JsonNode node) => Schema.Evaluate(JsonSerializer.SerializeToElement(node)).IsValid;

    private static bool IsRead(string text)
    {
        try
        {
            Setup.Parse("setup.json", text);
            return true;
        }
        catch (SetupException)
        {
            return false;
        }
    }

    private static IEnumerable<JsonNode> Fields(JsonNode node) => node switch
    {
        JsonObject holder => holder.SelectMany(field => Fields(field.Value!).Prepend(field.Value!)),

        // The rows of a table are alike; the first and the last stand for the others.
        JsonArray { Count: > 2 } list => Fields(list[0]!).Concat(Fields(list[^1]!)),
        JsonArray list => list.SelectMany(element => Fields(element!)),
        _ => [],
    };

    private static string Page(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", name));
}
