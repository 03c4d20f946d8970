using System.Text.Json.Serialization;

namespace FuelSizing.Data;

/// <summary>A plain record of a result: numbers in SI, words and lists, equal to the last bit or not at all.</summary>
public abstract record DataRecord
{
    private protected DataRecord()
    {
    }

    /// <summary>What the record holds, in one line.</summary>
    private protected abstract string InOneLine { get; }

    /// <summary>What the record holds.</summary>
    /// <returns>One line.</returns>
    public sealed override string ToString() => InOneLine;
}

/// <summary>A record with numbers that may be not known: they are null, and <see cref="NotKnown"/> says why.</summary>
public abstract record PartlyKnownData : DataRecord
{
    private protected PartlyKnownData()
    {
    }

    /// <summary>Which of the record's own numbers are null, and why; none where all are known.</summary>
    [JsonPropertyOrder(1)]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DataList<NotKnownData>? NotKnown { get; init; }
}

/// <summary>Why some numbers of a record are null.</summary>
public sealed record NotKnownData : DataRecord
{
    /// <summary>The numbers, by their names in the file.</summary>
    public required DataList<string> Fields { get; init; }

    /// <summary>Why they are not known, or do not apply.</summary>
    public required StatementData Reason { get; init; }

    private protected override string InOneLine => $"{string.Join(", ", Fields)}: {Reason.Text}";
}
