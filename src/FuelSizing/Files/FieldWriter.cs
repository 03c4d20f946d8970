using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace FuelSizing.Files;

/// <summary>Writes fields as JSON, such that reading gives the same values to the last bit.</summary>
internal sealed class FieldWriter
{
    // Files are read by people and by this library, not by a browser: signs such as ° and ³ stay as they are.
    private static readonly JavaScriptEncoder Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;

    private const int Indent = 2;

    private static readonly string Layout = "\n" + new string(' ', Indent);

    private readonly Utf8JsonWriter _json;

    private FieldWriter(Utf8JsonWriter json) => _json = json;

    /// <summary>The text of an object.</summary>
    /// <param name="write">Writes its fields.</param>
    public static string Text(Action<FieldWriter> write) => Object(write) + "\n";

    /// <summary>A text; nothing where there is none.</summary>
    public void Text(string field, string? value)
    {
        if (value is not null)
        {
            _json.WriteString(field, value);
        }
    }

    /// <summary>A plain number; nothing where there is none.</summary>
    public void Number(string field, double? value)
    {
        if (value is { } given)
        {
            _json.WriteNumber(field, given);
        }
    }

    /// <summary>A whole number; nothing where there is none.</summary>
    public void Count(string field, int? value)
    {
        if (value is { } given)
        {
            _json.WriteNumber(field, given);
        }
    }

    /// <summary>True or false; nothing where it is not known.</summary>
    public void Truth(string field, bool? value)
    {
        if (value is { } given)
        {
            _json.WriteBoolean(field, given);
        }
    }

    /// <summary>A quantity with its unit; nothing where there is none.</summary>
    public void Quantity<T>(string field, T? value, Measure<T> measure)
        where T : struct
    {
        if (value is { } given)
        {
            _json.WriteString(field, measure.Text(given));
        }
    }

    /// <summary>A part of the part.</summary>
    public void Part(string field, Action<FieldWriter> write)
    {
        _json.WriteStartObject(field);
        write(this);
        _json.WriteEndObject();
    }

    /// <summary>A list of parts; nothing where it is empty.</summary>
    public void List<T>(string field, IReadOnlyCollection<T> parts, Action<FieldWriter, T> write)
    {
        if (parts.Count == 0)
        {
            return;
        }

        _json.WriteStartArray(field);
        foreach (T part in parts)
        {
            _json.WriteStartObject();
            write(this, part);
            _json.WriteEndObject();
        }

        _json.WriteEndArray();
    }

    /// <summary>A table, a line for each row.</summary>
    public void Table<T>(string field, IEnumerable<T> rows, Action<FieldWriter, T> write)
    {
        _json.WriteStartArray(field);
        string indent = "\n" + new string(' ', Indent * _json.CurrentDepth);
        foreach (T row in rows)
        {
            // A line feed inside a text is always written as an escape, so each one here is only layout.
            string lines = Object(fields => write(fields, row));
            _json.WriteRawValue(indent + lines.Replace(Layout, " ", StringComparison.Ordinal).Replace("\n", " ", StringComparison.Ordinal));
        }

        _json.WriteEndArray();
    }

    private static string Object(Action<FieldWriter> write)
    {
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter json = new(buffer, new() { Indented = true, Encoder = Encoder }))
        {
            json.WriteStartObject();
            write(new(json));
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan).Replace("\r\n", "\n", StringComparison.Ordinal);
    }
}
