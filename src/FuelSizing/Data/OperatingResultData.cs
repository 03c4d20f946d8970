using System.Text.Json.Serialization;
using FuelSizing.Checks;
using FuelSizing.Systems;

namespace FuelSizing.Data;

/// <summary>One solved operating point: every intermediate, each check, what was not judged.</summary>
public sealed record OperatingResultData : DataRecord
{
    /// <summary>Where it was solved.</summary>
    public required PointData Point { get; init; }

    /// <summary>The worst outcome of all checks; where they hold and something was not judged and not waived, that it holds as far as judged.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>Code of the limiting component.</summary>
    public required string Limiting { get; init; }

    /// <summary>Outcome and limiting component in words.</summary>
    public required string Text { get; init; }

    /// <summary>What the engine asks for.</summary>
    public required DemandData Demand { get; init; }

    /// <summary>Pumps, lines and regulator.</summary>
    public required CircuitData Circuit { get; init; }

    /// <summary>What the injectors have to do.</summary>
    public required InjectionData Injection { get; init; }

    /// <summary>The mixture that the engine gets from its controller.</summary>
    public required MixtureData Mixture { get; init; }

    /// <summary>The second stream; none where the system has none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SecondStreamData? SecondStream { get; init; }

    /// <summary>The surge tank; none where the pumps draw from the main tank.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SurgeTankData? SurgeTank { get; init; }

    /// <summary>How each check came out, in the order of the system's checks.</summary>
    public required DataList<CheckData> Checks { get; init; }

    /// <summary>What no check judged, waived or not; none among the results of a sweep or a pull, whose verdict has the list once for all.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DataList<NotJudgedData>? NotJudged { get; init; }

    /// <summary>What a careful reader should know about these numbers.</summary>
    public required DataList<StatementData> Notes { get; init; }

    /// <summary>The same point as boost falls, where a switched pump still runs; the checks above are the worse of both.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public OperatingResultData? Falling { get; init; }

    private protected override string InOneLine => Text;

    /// <summary>A result as data.</summary>
    /// <param name="result">The result.</param>
    /// <param name="isOneOfMany">True among the results of a sweep.</param>
    internal static OperatingResultData Of(OperatingResult result, bool isOneOfMany = false) => new()
    {
        Point = PointData.Of(result.Point),
        Outcome = result.Outcome,
        Limiting = result.Limiting.Part.Code,
        Text = result.ToString(),
        Demand = DemandData.Of(result.Demand),
        Circuit = CircuitData.Of(result),
        Injection = InjectionData.Of(result),
        Mixture = MixtureData.Of(result.Mixture),
        SecondStream = result.SecondStream is { } stream ? SecondStreamData.Of(stream) : null,
        SurgeTank = result.SurgeTank is { } tank ? SurgeTankData.Of(tank) : null,
        Checks = [.. result.Margins.Select(margin => CheckData.Of(margin, isOneOfMany))],
        NotJudged = isOneOfMany ? null : NotJudgedData.OfAll(result.NotJudged),
        Notes = StatementData.OfAll(result.Notes),
        Falling = result.Falling is { } falling ? Of(falling, isOneOfMany: true) : null,
    };
}
