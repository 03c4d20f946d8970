using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using FuelSizing.Data;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Samples;

/// <summary>The answer: sentences in the units that were asked for, and the result as the library's own data, which is in SI whatever they are.</summary>
internal static class Answer
{
    private static readonly JsonWriterOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static IResult Of(OperatingResult result, TextStyle style) =>
        Of(result, result.Margins, [], result.NotJudged, result.Notes, ResultData.Of(result), style);

    public static IResult Of(SweepResult sweep, TextStyle style) =>
        Of(sweep, sweep.Verdict.Reasons, sweep.Remedies, sweep.Verdict.NotJudged, sweep.Notes, ResultData.Of(sweep), style);

    private static IResult Of(
        IReadable headline,
        IEnumerable<IReadable> margins,
        IEnumerable<IReadable> changes,
        IEnumerable<IReadable> notJudged,
        IEnumerable<IReadable> notes,
        ResultData data,
        TextStyle style)
    {
        ArrayBufferWriter<byte> text = new();
        using (Utf8JsonWriter json = new(text, Readable))
        {
            json.WriteStartObject();
            json.WriteString("headline", headline.In(style));
            Write(json, "margins", margins, style);
            Write(json, "required_changes", changes, style);

            // "Holds as far as judged" is not "holds": what was not judged belongs beside the headline, and the caution beside both.
            Write(json, "not_judged", notJudged, style);
            Write(json, "notes", notes, style);
            json.WriteString("caution", Cautions.OneLine);
            json.WritePropertyName("result");
            json.WriteRawValue(data.ToJson());
            json.WriteEndObject();
        }

        return Results.Bytes(text.WrittenMemory, "application/json");
    }

    private static void Write(Utf8JsonWriter json, string name, IEnumerable<IReadable> sentences, TextStyle style)
    {
        json.WriteStartArray(name);
        foreach (IReadable sentence in sentences)
        {
            json.WriteStringValue(sentence.In(style));
        }

        json.WriteEndArray();
    }
}
