using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using FuelSizing.Files;
using FuelSizing.Quantities;

namespace FuelSizing.Data;

/// <summary>Writes and reads data of results as JSON (RFC 8259).</summary>
internal static class ResultText
{
    private const string VersionField = "result";

    // Not escaped beyond what JSON asks: a file is no page, and "m³/s" is to be read by people too.
    internal static JsonSerializerOptions Options { get; } = Made();

    private static readonly JsonTypeInfo<ResultData> Form = (JsonTypeInfo<ResultData>)Options.GetTypeInfo(typeof(ResultData));

    // Null stands for a number that is not known, and for nothing else; a name stands for a number in every record or in none.
    private static readonly HashSet<string> MayBeNull = Nullable();

    /// <summary>The text of data.</summary>
    public static string Of(ResultData data) => JsonSerializer.Serialize(data, Form);

    /// <summary>The data of a text.</summary>
    /// <exception cref="ResultDataException">Anything in it is wrong.</exception>
    public static ResultData Read(in FileText text)
    {
        ProblemList problems = new();
        byte[] bytes = Encoding.UTF8.GetBytes(text.Text);
        try
        {
            Look(text.Name, bytes, problems);
            if (!problems.Any)
            {
                ResultData data = JsonSerializer.Deserialize(bytes, Form) ?? throw new JsonException();
                if (data.Held is not [var one] || one.Kind != data.Kind)
                {
                    problems.Add(text.Name, 1, "kind", Statement.Of("data.kind-differs", $"must be the one record that the file holds. Write the file anew with ResultData."));
                }
                else
                {
                    return data;
                }
            }
        }
        catch (JsonException broken)
        {
            string field = broken.Path is { Length: > 2 } path ? path[2..] : "the text";
            problems.Add(
                text.Name,
                (int)(broken.LineNumber ?? 0) + 1,
                $"{field}, byte {((broken.BytePositionInLine ?? 0) + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}",
                Statement.Of("data.not-of-the-form", $"is not of the form, or the text is not JSON from here on: a field is missing, unknown, or of another type. Compare it with result.schema.json."));
        }

        throw new ResultDataException(problems.Found);
    }

    /// <summary>What the serializer lets pass: another version, a field given twice, null for what is no number, a number without bound.</summary>
    private static void Look(string file, byte[] bytes, ProblemList problems)
    {
        Utf8JsonReader reader = new(bytes, new JsonReaderOptions { MaxDepth = Options.MaxDepth });
        Stack<HashSet<string>> seen = [];
        string field = string.Empty;
        bool versioned = false;
        int line = 1;
        int counted = 0;
        while (reader.Read())
        {
            int here = (int)reader.TokenStartIndex;
            line += bytes.AsSpan(counted..here).Count((byte)'\n');
            counted = here;
            switch (reader.TokenType)
            {
                case JsonTokenType.StartObject:
                    seen.Push([]);
                    break;
                case JsonTokenType.EndObject:
                    seen.Pop();
                    break;
                case JsonTokenType.PropertyName:
                    field = Name(reader);
                    if (!seen.Peek().Add(field))
                    {
                        problems.Add(file, line, field, Statement.Of("file.given-twice", $"is given twice. Take one out."));
                    }

                    break;
                case JsonTokenType.Null when !MayBeNull.Contains(field):
                    problems.Add(file, line, field, Statement.Of("data.null", $"must not be null: only a number that is not known is. Leave the field out where it has no value."));
                    break;
                case JsonTokenType.Number when !reader.TryGetDouble(out double number) || !double.IsFinite(number):
                    problems.Add(file, line, field, Statement.Of("data.number-too-large", $"is a number that is too large to be kept."));
                    break;
                default:
                    break;
            }

            if (field == VersionField && seen.Count == 1 && reader.TokenType is not JsonTokenType.PropertyName && !versioned)
            {
                versioned = true;
                if (reader.TokenType != JsonTokenType.Number || !reader.TryGetInt32(out int version) || version != ResultData.Version)
                {
                    problems.Add(
                        file, line, field, Statement.Of("file.other-version", $"must be {ResultData.Version:ordinal}, the one version of the form that this release reads."));
                }
            }
        }

        if (!versioned && !problems.Any)
        {
            problems.Add(
                file, 1, VersionField, Statement.Of("file.version-missing", $"is missing. Give the version of the form, {ResultData.Version:ordinal}."));
        }
    }

    // A text may hold half of a surrogate pair, which is no character at all.
    private static string Name(in Utf8JsonReader reader)
    {
        try
        {
            return reader.GetString()!;
        }
        catch (InvalidOperationException half)
        {
            throw new JsonException("half of a character", half);
        }
    }

    private static JsonSerializerOptions Made()
    {
        JsonSerializerOptions options = new(ResultContext.Default.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        options.MakeReadOnly();
        return options;
    }

    private static HashSet<string> Nullable()
    {
        HashSet<string> names = [];
        Queue<Type> ahead = new([typeof(ResultData)]);
        HashSet<Type> seen = [typeof(ResultData)];
        while (ahead.TryDequeue(out Type? type))
        {
            JsonTypeInfo form = Options.GetTypeInfo(type);
            IEnumerable<Type> inner = form.Kind == JsonTypeInfoKind.Object ? form.Properties.Select(property => property.PropertyType)
                : form.Converter is IDataListConverter list ? [list.Item]
                : [];
            foreach (Type one in inner)
            {
                if (seen.Add(one))
                {
                    ahead.Enqueue(one);
                }
            }

            names.UnionWith(form.Properties.Where(property => property.PropertyType == typeof(double?)).Select(property => property.Name));
        }

        return names;
    }
}
