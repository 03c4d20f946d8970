using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace FuelSizing.Files;

/// <summary>Writes a form as JSON schema (draft 2020-12): every field, its form, whether it must be given.</summary>
internal sealed class FormSchema
{
    /// <summary>The pattern of a number with its unit, as the reader takes it.</summary>
    private const string Quantity = @"^\s*[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?\s*[^\s0-9.,].*$";

    private readonly Queue<Form> _ahead = [];
    private readonly HashSet<string> _named = [];

    private FormSchema(Utf8JsonWriter json) => Json = json;

    /// <summary>Takes the schema.</summary>
    public Utf8JsonWriter Json { get; }

    /// <summary>The schema of a file.</summary>
    /// <param name="form">Its form.</param>
    /// <param name="version">The field that says what the file is.</param>
    /// <param name="number">The version of the form.</param>
    /// <param name="description">What the file is.</param>
    public static string Text(IRecordForm form, string version, int number, string description)
    {
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter json = new(buffer, new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
            json.WriteString("title", $"FuelSizing {version}, version {number}");
            json.WriteString("description", description);
            FormSchema schema = new(json);
            schema.Object(form, version, number);
            schema.Definitions();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan).Replace("\r\n", "\n", StringComparison.Ordinal) + "\n";
    }

    /// <summary>Refers to a form, which is defined once.</summary>
    public void Of(Form form)
    {
        if (_named.Add(form.Name))
        {
            _ahead.Enqueue(form);
        }

        Json.WriteString("$ref", $"#/$defs/{form.Name}");
    }

    /// <summary>Refers to a definition of a plain value, which is written once.</summary>
    public void Shared(string name) => Json.WriteString("$ref", $"#/$defs/{name}");

    /// <summary>One of a few texts.</summary>
    public void Words(IEnumerable<string> words)
    {
        Json.WriteStartArray("enum");
        foreach (string word in words)
        {
            Json.WriteStringValue(word);
        }

        Json.WriteEndArray();
    }

    private void Definitions()
    {
        Json.WriteStartObject("$defs");
        Json.WritePropertyName("name");
        Json.WriteRawValue("""{ "type": "string", "minLength": 1, "maxLength": 80 }""");
        Json.WriteStartObject("quantity");
        Json.WriteString("type", "string");
        Json.WriteString("pattern", Quantity);
        Json.WriteString("description", "A number with a decimal point, and its unit");
        Json.WriteEndObject();
        while (_ahead.TryDequeue(out Form? form))
        {
            Json.WriteStartObject(form.Name);
            Json.WriteString("description", form.Title);
            IReadOnlyList<IRecordForm> records = form.Records;
            if (records.Count == 1)
            {
                Object(records[0]);
            }
            else
            {
                Json.WriteStartArray("oneOf");
                foreach (IRecordForm record in records)
                {
                    Json.WriteStartObject();
                    Object(record);
                    Json.WriteEndObject();
                }

                Json.WriteEndArray();
            }

            Json.WriteEndObject();
        }

        Json.WriteEndObject();
    }

    private void Object(IRecordForm form, string? version = null, int number = 0)
    {
        Json.WriteString("type", "object");
        Json.WriteStartObject("properties");
        if (version is not null)
        {
            Json.WriteStartObject("$schema");
            Json.WriteString("type", "string");
            Json.WriteString("description", "Address of this schema, for editors");
            Json.WriteEndObject();
            Json.WriteStartObject(version);
            Json.WriteNumber("const", number);
            Json.WriteString("description", "Version of this form");
            Json.WriteEndObject();
        }

        foreach (Field field in form.Fields)
        {
            Json.WriteStartObject(field.Name);
            Json.WriteString("description", field.Description());
            field.Schema(this);
            Json.WriteEndObject();
        }

        Json.WriteEndObject();
        Json.WriteStartArray("required");
        foreach (string name in form.Fields.Where(field => !field.Optional).Select(field => field.Name).Prepend(version).OfType<string>())
        {
            Json.WriteStringValue(name);
        }

        Json.WriteEndArray();
        Json.WriteBoolean("additionalProperties", false);
        if (form.Condition is { } condition)
        {
            // Keywords as the form has them: a name and a value each.
            using JsonDocument keywords = JsonDocument.Parse($"{{ {condition} }}");
            foreach (JsonProperty keyword in keywords.RootElement.EnumerateObject())
            {
                keyword.WriteTo(Json);
            }
        }
    }
}
