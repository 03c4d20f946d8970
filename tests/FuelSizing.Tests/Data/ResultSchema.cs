using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FuelSizing.Data;

namespace FuelSizing.Tests.Data;

/// <summary>The JSON schema (draft 2020-12) of data of results: what the runtime's exporter makes of the form, with the documentation's words, each record once.</summary>
internal static class ResultSchema
{
    private static readonly JsonSerializerOptions Written = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly XElement[] Members = [.. XDocument.Load(Path.Combine(AppContext.BaseDirectory, "FuelSizing.xml")).Descendants("member")];

    public static string Text()
    {
        SortedDictionary<string, JsonNode> records = new(StringComparer.Ordinal);
        JsonObject root = FormOf(typeof(ResultData), records);
        root["properties"]!["result"] = new JsonObject { ["const"] = ResultData.Version, ["description"] = Describe(typeof(ResultData), nameof(ResultData.Result)) };

        // What "kind" says is there, and nothing else is.
        string[] holding = [.. ResultText.Options.GetTypeInfo(typeof(ResultData)).Properties.Where(property => !property.IsRequired && typeof(DataRecord).IsAssignableFrom(property.PropertyType)).Select(property => property.Name)];
        root["oneOf"] = new JsonArray([.. holding.Select(name => new JsonObject
        {
            ["properties"] = new JsonObject { ["kind"] = new JsonObject { ["const"] = name.Replace('_', '-') } },
            ["required"] = new JsonArray(name),
        })]);
        root["maxProperties"] = 4;
        JsonObject schema = new()
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = $"FuelSizing result, version {ResultData.Version}",
        };
        foreach ((string key, JsonNode? node) in root.ToArray())
        {
            root.Remove(key);
            schema[key] = node;
        }

        schema["$defs"] = new JsonObject(records.Select(record => new KeyValuePair<string, JsonNode?>(record.Key, record.Value)));
        return schema.ToJsonString(Written).Replace("\r\n", "\n", StringComparison.Ordinal) + "\n";
    }

    private static JsonObject FormOf(Type type, SortedDictionary<string, JsonNode> records)
    {
        JsonSchemaExporterOptions options = new() { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = (context, node) => Transform(context, node, type, records) };
        return ResultText.Options.GetJsonSchemaAsNode(type, options).AsObject();
    }

    private static JsonNode Transform(JsonSchemaExporterContext context, JsonNode node, Type root, SortedDictionary<string, JsonNode> records)
    {
        Type type = context.TypeInfo.Type;
        JsonNode made = context.TypeInfo.Converter is IDataListConverter list ? new JsonObject { ["type"] = "array", ["items"] = Reference(list.Item, records) }
            : type.IsEnum ? new JsonObject { ["enum"] = new JsonArray([.. Enum.GetNames(type).Select(name => JsonValue.Create(JsonNamingPolicy.KebabCaseLower.ConvertName(name)))]) }
            : typeof(DataRecord).IsAssignableFrom(type) && (type != root || context.Path.Length > 0) ? Reference(type, records)
            : Plain(node, type);
        if (context.PropertyInfo is { AttributeProvider: MemberInfo member } && made is JsonObject property)
        {
            property["description"] = Describe(member.DeclaringType!, member.Name);
        }
        else if (type == root && context.Path.Length == 0 && made is JsonObject record)
        {
            record.Insert(0, "description", Describe(type, null));
            record["additionalProperties"] = false;
        }

        return made;
    }

    private static JsonObject Reference(Type type, SortedDictionary<string, JsonNode> records)
    {
        if (type == typeof(double) || type == typeof(string))
        {
            return new JsonObject { ["type"] = type == typeof(double) ? "number" : "string" };
        }

        if (!records.ContainsKey(type.Name))
        {
            // Named before it is made: a record may hold another of its kind.
            records[type.Name] = new JsonObject();
            records[type.Name] = FormOf(type, records);
        }

        return new JsonObject { ["$ref"] = $"#/$defs/{type.Name}" };
    }

    // Null stands for a number that is not known, and for nothing else.
    private static JsonNode Plain(JsonNode node, Type type)
    {
        if (node is JsonObject { } form && form["type"] is JsonArray kinds && Nullable.GetUnderlyingType(type) is null)
        {
            form["type"] = kinds.Select(kind => kind!.GetValue<string>()).Single(kind => kind != "null");
        }

        return node;
    }

    // A property is called as the file calls it.
    private static string Named(string reference) => reference.StartsWith("P:", StringComparison.Ordinal)
        ? JsonNamingPolicy.SnakeCaseLower.ConvertName(reference.Split('.')[^1])
        : reference.Split('.')[^1];

    private static string Describe(Type type, string? property)
    {
        string id = property is null ? $"T:{type.FullName}" : $"P:{type.FullName}.{property}";
        XElement summary = Members.Single(member => member.Attribute("name")!.Value == id).Element("summary")!;
        string words = string.Concat(summary.Nodes().Select(node => node is XElement { Name.LocalName: "see" } see ? Named(see.Attribute("cref")!.Value) : node is XElement element ? element.Value : $"{node}"));
        return Regex.Replace(System.Net.WebUtility.HtmlDecode(words), @"\s+", " ").Trim();
    }
}
