using System.Diagnostics.CodeAnalysis;
using System.Text;
using System.Text.Json.Serialization;
using FuelSizing.Files;
using FuelSizing.Findings;
using FuelSizing.Selection;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using FuelSizing.Workings;

namespace FuelSizing.Data;

/// <summary>What a <see cref="ResultData"/> holds.</summary>
public enum ResultKind
{
    /// <summary>Nothing that is known; no file holds it.</summary>
    None,

    /// <summary>One operating point.</summary>
    OperatingResult,

    /// <summary>A verdict alone.</summary>
    Verdict,

    /// <summary>A grid of speed and boost.</summary>
    Sweep,

    /// <summary>A pull along a boost line.</summary>
    LineSweep,

    /// <summary>How one operating point came about.</summary>
    Working,

    /// <summary>Combinations of parts, best first.</summary>
    Ranking,

    /// <summary>What many draws of uncertain inputs gave.</summary>
    MonteCarlo,

    /// <summary>A recorded run compared with its plan.</summary>
    Findings,
}

/// <summary>A result as plain data in SI, to be kept in a file, compared, or handed to another program.</summary>
/// <remarks>
/// <para>
/// The form is JSON; <c>docs/results-as-data.md</c> describes it, with an example and a schema. Written and read back it is equal to the last bit. A number that is not
/// known is null, and the record that holds it says why; there is no other null, and never a number without bound.
/// </para>
/// <para>Data is what was found, not a description: a result cannot be made from it. The system that gave it is kept by a <see cref="Setup"/>.</para>
/// </remarks>
/// <example>
/// <code>
/// ResultData kept = ResultData.Of(system.Solve(point));
/// kept.Write("full-load.json");
/// double? margin = ResultData.Read("full-load.json").OperatingResult!.Checks[0].MarginShare;
/// </code>
/// </example>
public sealed record ResultData : DataRecord
{
    /// <summary>The version of the form that this release writes and reads.</summary>
    public const int Version = 1;

    /// <summary>The version of the form.</summary>
    [JsonPropertyOrder(-1)]
    public required int Result { get; init; }

    /// <summary>Which of the records below it holds.</summary>
    public required ResultKind Kind { get; init; }

    /// <summary>The cautions that go with every result.</summary>
    public required DataList<string> Cautions { get; init; }

    /// <summary>One operating point.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public OperatingResultData? OperatingResult { get; init; }

    /// <summary>A verdict alone.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public VerdictData? Verdict { get; init; }

    /// <summary>A grid of speed and boost.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SweepData? Sweep { get; init; }

    /// <summary>A pull along a boost line.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LineSweepData? LineSweep { get; init; }

    /// <summary>How one operating point came about.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public WorkingData? Working { get; init; }

    /// <summary>Combinations of parts, best first.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public RankingData? Ranking { get; init; }

    /// <summary>What many draws of uncertain inputs gave.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public MonteCarloData? MonteCarlo { get; init; }

    /// <summary>A recorded run compared with its plan.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public FindingsData? Findings { get; init; }

    private protected override string InOneLine => Held is [var one] ? $"{one.Held}" : FormattableString.Invariant($"records: {Held.Length}");

    /// <summary>Every record that is held, with what it is; a file holds one.</summary>
    internal (ResultKind Kind, DataRecord Held)[] Held =>
    [
        .. new (ResultKind Kind, DataRecord? Held)[]
        {
            (ResultKind.OperatingResult, OperatingResult),
            (ResultKind.Verdict, Verdict),
            (ResultKind.Sweep, Sweep),
            (ResultKind.LineSweep, LineSweep),
            (ResultKind.Working, Working),
            (ResultKind.Ranking, Ranking),
            (ResultKind.MonteCarlo, MonteCarlo),
            (ResultKind.Findings, Findings),
        }.Where(one => one.Held is not null).Select(one => (one.Kind, one.Held!)),
    ];

    /// <summary>A solved operating point as data.</summary>
    /// <param name="result">The result.</param>
    /// <returns>The data.</returns>
    public static ResultData Of(OperatingResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return New(ResultKind.OperatingResult) with { OperatingResult = OperatingResultData.Of(result) };
    }

    /// <summary>A verdict as data.</summary>
    /// <param name="verdict">The verdict, of a sweep, a ranking or a recorded run.</param>
    /// <returns>The data.</returns>
    public static ResultData Of(Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        return New(ResultKind.Verdict) with { Verdict = VerdictData.Of(verdict) };
    }

    /// <summary>A sweep as data.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <returns>The data.</returns>
    public static ResultData Of(SweepResult sweep)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        return New(ResultKind.Sweep) with { Sweep = SweepData.Of(sweep) };
    }

    /// <summary>A pull along a boost line as data.</summary>
    /// <param name="pull">The pull.</param>
    /// <returns>The data.</returns>
    public static ResultData Of(LineSweepResult pull)
    {
        ArgumentNullException.ThrowIfNull(pull);
        return New(ResultKind.LineSweep) with { LineSweep = LineSweepData.Of(pull) };
    }

    /// <summary>A working as data.</summary>
    /// <param name="working">The working of an operating point.</param>
    /// <returns>The data.</returns>
    public static ResultData Of(Working working)
    {
        ArgumentNullException.ThrowIfNull(working);
        return New(ResultKind.Working) with { Working = WorkingData.Of(working) };
    }

    /// <summary>A ranking as data.</summary>
    /// <param name="ranking">The ranking.</param>
    /// <returns>The data.</returns>
    public static ResultData Of(Ranking ranking)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        return New(ResultKind.Ranking) with { Ranking = RankingData.Of(ranking) };
    }

    /// <summary>What a Monte Carlo run gave, as data.</summary>
    /// <param name="result">The result.</param>
    /// <returns>The data.</returns>
    public static ResultData Of(MonteCarloResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return New(ResultKind.MonteCarlo) with { MonteCarlo = MonteCarloData.Of(result) };
    }

    /// <summary>What a recorded run shows, as data.</summary>
    /// <param name="findings">The findings.</param>
    /// <returns>The data.</returns>
    public static ResultData Of(RunFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return New(ResultKind.Findings) with { Findings = FindingsData.Of(findings) };
    }

    /// <summary>Reads a file.</summary>
    /// <param name="file">JSON in UTF-8, up to 64 MB.</param>
    /// <returns>The data.</returns>
    /// <exception cref="ResultDataException">Anything in it is wrong, or it is of another version.</exception>
    /// <exception cref="IOException">It cannot be opened.</exception>
    public static ResultData Read(string file)
    {
        ArgumentNullException.ThrowIfNull(file);
        ProblemList problems = new();
        return FileText.Of(file, problems) is { } text ? ResultText.Read(text) : throw new ResultDataException(problems.Found);
    }

    /// <summary>Reads a file's text.</summary>
    /// <param name="name">By which problems call it.</param>
    /// <param name="text">Everything in it.</param>
    /// <returns>The data.</returns>
    /// <exception cref="ResultDataException">Anything in it is wrong, or it is of another version.</exception>
    public static ResultData Parse(string name, string text)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(text);
        return ResultText.Read(new FileText(name, text));
    }

    /// <summary>Reads a file's text if nothing in it is wrong.</summary>
    /// <param name="name">By which problems call it.</param>
    /// <param name="text">Everything in it.</param>
    /// <param name="data">What was read; none where something is wrong.</param>
    /// <param name="problems">Each problem by file, line and field; empty where it was read.</param>
    /// <returns>True if it was read.</returns>
    public static bool TryParse(string name, string text, [NotNullWhen(true)] out ResultData? data, out IReadOnlyList<FileProblem> problems) =>
        TriedFile.Read(() => Parse(name, text), out data, out problems);

    /// <summary>Reads a stream to its end, and leaves it open.</summary>
    /// <param name="stream">UTF-8, up to 64 MB.</param>
    /// <param name="name">By which problems call it.</param>
    /// <returns>What was read.</returns>
    /// <exception cref="ResultDataException">Anything in it is wrong.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static ResultData Read(Stream stream, string name) =>
        StreamedFile.Read(stream, name, (text, _) => ResultText.Read(text), problems => new ResultDataException(problems.Found));

    /// <summary>The same without waiting for the stream.</summary>
    /// <param name="stream">UTF-8, up to 64 MB.</param>
    /// <param name="name">By which problems call it.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>What was read.</returns>
    /// <exception cref="ResultDataException">Anything in it is wrong.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Task<ResultData> ReadAsync(Stream stream, string name, CancellationToken cancellation = default) =>
        StreamedFile.ReadAsync(stream, name, (text, _) => ResultText.Read(text), problems => new ResultDataException(problems.Found), cancellation);

    /// <summary>The data as text, as a file holds it.</summary>
    /// <returns>JSON on one line.</returns>
    public string ToJson() => ResultText.Of(this);

    /// <summary>Writes it to a file, in place of what was there.</summary>
    /// <param name="file">The file.</param>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Write(string file)
    {
        ArgumentNullException.ThrowIfNull(file);
        File.WriteAllText(file, ToJson(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
    }

    /// <summary>Writes it to a stream, which is left open.</summary>
    /// <param name="stream">The stream.</param>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Write(Stream stream) => StreamedFile.Write(stream, ToJson());

    /// <summary>The same without waiting for the stream.</summary>
    /// <param name="stream">The stream.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <returns>The work.</returns>
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public Task WriteAsync(Stream stream, CancellationToken cancellation = default) =>
        StreamedFile.WriteAsync(stream, ToJson(), cancellation);

    private static ResultData New(ResultKind kind) => new() { Result = Version, Kind = kind, Cautions = [.. FuelSizing.Cautions.Lines] };
}

/// <summary>Data of a result could not be read; nothing of it was kept.</summary>
public sealed class ResultDataException : FileException
{
    internal ResultDataException(IReadOnlyList<FileProblem> problems)
        : base(problems)
    {
    }
}
