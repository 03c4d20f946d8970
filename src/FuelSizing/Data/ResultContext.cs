using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Workings;

namespace FuelSizing.Data;

/// <summary>The form of data as JSON, written when the library is built: nothing is looked up by reflection.</summary>
[JsonSourceGenerationOptions(
    GenerationMode = JsonSourceGenerationMode.Metadata,
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    Converters =
    [
        typeof(WordConverter<ResultKind>),
        typeof(WordConverter<Outcome>),
        typeof(WordConverter<LimitDirection>),
        typeof(WordConverter<RailState>),
        typeof(WordConverter<DemandBasis>),
        typeof(WordConverter<MixtureCauseKind>),
        typeof(WordConverter<WorkingSource>),
        typeof(WordConverter<RunFault>),
        typeof(WordConverter<Channel>),
        typeof(DataListConverter<string>),
        typeof(DataListConverter<double>),
        typeof(DataListConverter<NotKnownData>),
        typeof(DataListConverter<StatementData>),
        typeof(DataListConverter<ArgumentData>),
        typeof(DataListConverter<PumpData>),
        typeof(DataListConverter<PathData>),
        typeof(DataListConverter<BranchData>),
        typeof(DataListConverter<MixtureCauseData>),
        typeof(DataListConverter<CheckData>),
        typeof(DataListConverter<NotJudgedData>),
        typeof(DataListConverter<RemedyData>),
        typeof(DataListConverter<ReasonData>),
        typeof(DataListConverter<OperatingResultData>),
        typeof(DataListConverter<WorkingStepData>),
        typeof(DataListConverter<CombinationData>),
        typeof(DataListConverter<LeftOutData>),
        typeof(DataListConverter<PartChanceData>),
        typeof(DataListConverter<MixtureSpreadData>),
        typeof(DataListConverter<FaultData>),
        typeof(DataListConverter<NextTestData>),
        typeof(DataListConverter<FindingData>),
        typeof(DataListConverter<Channel>),
    ])]
[JsonSerializable(typeof(ResultData))]
internal sealed partial class ResultContext : JsonSerializerContext
{
}

/// <summary>What a list holds, for a program that walks the form.</summary>
internal interface IDataListConverter
{
    /// <summary>The type of its entries.</summary>
    Type Item { get; }
}

/// <summary>Writes and reads a list.</summary>
/// <typeparam name="T">What it holds.</typeparam>
internal sealed class DataListConverter<T> : JsonConverter<DataList<T>>, IDataListConverter
{
    /// <inheritdoc/>
    public Type Item => typeof(T);

    /// <inheritdoc/>
    public override DataList<T> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.StartArray)
        {
            throw new JsonException();
        }

        JsonTypeInfo<T> form = (JsonTypeInfo<T>)options.GetTypeInfo(typeof(T));
        List<T> items = [];
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            items.Add(JsonSerializer.Deserialize(ref reader, form) ?? throw new JsonException());
        }

        return new([.. items]);
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, DataList<T> value, JsonSerializerOptions options)
    {
        JsonTypeInfo<T> form = (JsonTypeInfo<T>)options.GetTypeInfo(typeof(T));
        writer.WriteStartArray();
        foreach (T item in value)
        {
            JsonSerializer.Serialize(writer, item, form);
        }

        writer.WriteEndArray();
    }
}

/// <summary>Writes and reads a member of an enumeration as its words joined by hyphens: <c>holds-as-far-as-judged</c>.</summary>
/// <typeparam name="T">The enumeration.</typeparam>
internal sealed class WordConverter<T> : JsonConverter<T>
    where T : struct, Enum
{
    // The library's own converter takes "holds, fails" for the sum of two members: here a word is one of the list, or refused.
    private static readonly Dictionary<string, T> ByWord = Enum.GetValues<T>().ToDictionary(Word);

    /// <summary>Every word, in the order of the members.</summary>
    public static IEnumerable<string> Words => Enum.GetValues<T>().Select(Word);

    /// <inheritdoc/>
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.String && ByWord.TryGetValue(reader.GetString()!, out T member) ? member : throw new JsonException();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(Word(value));

    private static string Word(T member) => JsonNamingPolicy.KebabCaseLower.ConvertName(member.ToString());
}
