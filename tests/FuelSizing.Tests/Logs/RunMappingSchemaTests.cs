using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using FuelSizing.Files;
using FuelSizing.Logs;
using Json.Schema;

namespace FuelSizing.Tests.Logs;

/// <summary>The published schema takes and refuses the same mapping files as the reader, so that what an editor says is true.</summary>
public class RunMappingSchemaTests
{
    private static readonly Lazy<JsonSchema> Schema = new(() => JsonSchema.FromText(File.ReadAllText(SchemaPath())));

    private static readonly Gen<JsonNode?> Nodes = Gen.OneOf(
        Gen.OneOfConst("comma", "semicolon", "tab", "point", "none", "skip", "use", "gauge", "absolute", "rpm", "rev/min", "kPa", "AFR", "lambda", "s", "%", "1", "", " ", "Speed")
            .Select(text => (JsonNode?)JsonValue.Create(text)),
        Gen.OneOfConst(-1, 0, 1, 2, 5, 14.7, 20, 21, 1000, 1001).Select(number => (JsonNode?)(number % 1 == 0 ? JsonValue.Create((int)number) : JsonValue.Create(number))),
        Gen.Const((JsonNode?)null),
        Gen.Const(() => (JsonNode?)new JsonArray()),
        Gen.Const(() => (JsonNode?)new JsonObject()));

    private static readonly Gen<string> Fields = Gen.OneOf(
        Gen.OneOfConst("mapping", "separator", "decimal_mark", "heading_line", "units_row", "channels", "column", "unit", "reference", "stoichiometric", "other"),
        Gen.OneOfConst([.. MappingForm.ChannelNames.Keys]));

    private static readonly Gen<JsonObject> Mappings =
        from separator in Gen.OneOfConst([.. MappingForm.Separator.Words])
        from decimalMark in Gen.OneOfConst([.. MappingForm.Decimals.Words])
        from unitsRow in Gen.OneOfConst([.. MappingForm.Units.Words])
        from channels in Gen.Shuffle(MappingForm.ChannelNames.Keys.Where(name => name != "speed").ToArray(), 0, 4)
        from units in Gen.Int[0, 3].Array[5]
        from withUnits in Gen.Int[0, 5]
        select new JsonObject
        {
            ["mapping"] = 1,
            ["separator"] = separator,
            ["decimal_mark"] = decimalMark,
            ["units_row"] = unitsRow,
            ["channels"] = new JsonObject(channels.Append("speed").Select((name, i) => KeyValuePair.Create(name, (JsonNode?)Column(name, units[i], withUnits != i)))),
        };

    [Fact]
    public void Schema_OfAnyMapping_SaysWhatTheReaderSays()
    {
        int taken = 0, refused = 0;
        Gen.Select(Mappings, Gen.Select(Gen.Int, Gen.Int[0, 2], Fields, Nodes).Array[0, 2])
            .Sample(
                (mapping, changes) =>
                {
                    foreach (var (at, kind, field, node) in changes)
                    {
                        Change(mapping, at, kind, field, node);
                    }

                    string json = mapping.ToJsonString();
                    bool reader = IsTaken(json);
                    Interlocked.Increment(ref reader ? ref taken : ref refused);
                    using var document = JsonDocument.Parse(json);
                    Assert.Equal(reader, Schema.Value.Evaluate(document.RootElement).IsValid);
                },
                iter: 5000);
        Assert.True(taken > 500 && refused > 500, $"{taken} taken, {refused} refused: one of the answers is hardly tried");
    }

    [Fact]
    public void Schema_OfEachChannel_ListsTheReadersUnits()
    {
        JsonNode forms = JsonNode.Parse(File.ReadAllText(SchemaPath()))!["$defs"]!;
        Assert.Equal(MappingForm.ChannelNames.Keys, forms["channels"]!["properties"]!.AsObject().Select(channel => channel.Key));
        foreach ((string name, Channel channel) in MappingForm.ChannelNames)
        {
            IEnumerable<string> units = channel == Channel.Lambda ? ChannelUnits.Texts(channel).Append(MappingForm.AirFuelRatio) : ChannelUnits.Texts(channel);
            Assert.Equal(units, forms[name]!["properties"]!["unit"]!["enum"]!.AsArray().Select(unit => (string)unit!));
        }
    }

    private static bool IsTaken(string json)
    {
        try
        {
            RunMappingFile.Parse("mapping.json", json);
            return true;
        }
        catch (RunMappingException)
        {
            return false;
        }
    }

    private static JsonObject Column(string name, int unit, bool withUnit)
    {
        Channel channel = MappingForm.ChannelNames[name];
        JsonObject column = new() { ["column"] = unit == 0 ? 3 : "Heading" };
        string[] units = [.. ChannelUnits.Texts(channel)];
        if (withUnit)
        {
            column["unit"] = units[unit % units.Length];
        }

        if (channel is Channel.ManifoldAbsolute or Channel.RailGauge)
        {
            column["reference"] = "gauge";
        }

        if (channel == Channel.Lambda && unit == 3)
        {
            (column["unit"], column["stoichiometric"]) = (MappingForm.AirFuelRatio, 14.7);
        }

        return column;
    }

    /// <summary>Puts, replaces or takes away a field in some object of the mapping.</summary>
    private static void Change(JsonObject mapping, int at, int kind, string field, JsonNode? node)
    {
        List<JsonObject> objects = [mapping];
        for (int i = 0; i < objects.Count; i++)
        {
            objects.AddRange(objects[i].Select(pair => pair.Value).OfType<JsonObject>());
        }

        JsonObject chosen = objects[(int)((uint)at % (uint)objects.Count)];
        string[] own = [.. chosen.Select(pair => pair.Key)];
        string name = kind == 0 || own.Length == 0 ? field : own[(int)((uint)(at / 7) % (uint)own.Length)];
        if (kind == 2)
        {
            chosen.Remove(name);
        }
        else
        {
            chosen[name] = node?.DeepClone();
        }
    }

    private static string SchemaPath()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "FuelSizing.sln")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder!.FullName, "docs", "recorded-run-mapping.schema.json");
    }
}
