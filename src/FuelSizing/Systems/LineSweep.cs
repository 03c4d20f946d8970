using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Solves a fuel system along a boost line, and judges it there: no point is looked at that the engine cannot reach.</summary>
public static class LineSweep
{
    // Speeds that are shown where the caller gives the ends alone.
    private const int DefaultSpeeds = 13;

    /// <summary>Solves a pull from one speed to another along a boost line: evenly spaced speeds, and what lies between them.</summary>
    /// <param name="system">The system.</param>
    /// <param name="line">The boost at each speed.</param>
    /// <param name="slowest">Lowest speed, that the line and the engine's tables cover.</param>
    /// <param name="fastest">Highest speed.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature; <see cref="Conditions.Default"/> if not given.</param>
    /// <param name="cancellation">Stops the work, which has no result before its end.</param>
    /// <returns>The results, the tightest place of each check, and the first limit reached as speed rises.</returns>
    /// <exception cref="ArgumentException">The engine cannot have such a line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range, or not under the next.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    /// <example>
    /// <code>
    /// LineSweepResult pull = system.Pull(
    ///     HeldBoost.Of(Pressure.FromBars(0.6), RotationalSpeed.FromRevolutionsPerMinute(3000), RotationalSpeed.FromRevolutionsPerMinute(6800)),
    ///     RotationalSpeed.FromRevolutionsPerMinute(3000),
    ///     RotationalSpeed.FromRevolutionsPerMinute(6800));
    /// Console.WriteLine(pull.Verdict);
    /// </code>
    /// </example>
    public static LineSweepResult Pull(
        this FuelSystem system, BoostLine line, RotationalSpeed slowest, RotationalSpeed fastest, Conditions? conditions = null, CancellationToken cancellation = default)
    {
        (double from, double to) = RequireRising(slowest, fastest);
        return system.Sweep(
            line,
            [
                slowest,
                .. Enumerable.Range(1, DefaultSpeeds - 2).Select(step =>
                    RotationalSpeed.FromRevolutionsPerMinute(60 * (from + ((to - from) * step / (DefaultSpeeds - 1))))),
                fastest,
            ],
            conditions,
            cancellation);
    }

    /// <summary>The ends of a line, rev/s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range, or not under the next.</exception>
    internal static (double From, double To) RequireRising(RotationalSpeed slowest, RotationalSpeed fastest)
    {
        double from = EngineSpeed.Within(slowest, nameof(slowest));
        double to = EngineSpeed.Within(fastest, nameof(fastest));
        return from < to
            ? (from, to)
            : throw Guard.OutOfRange(
                nameof(fastest), Readable.Of(fastest), $"over the slowest speed, {Readable.Of(slowest)}", "Give the ends of the line in rising order.");
    }

    /// <summary>Solves the given speeds along a boost line, and looks between them.</summary>
    /// <param name="system">The system.</param>
    /// <param name="line">The boost at each speed.</param>
    /// <param name="speeds">Two or more, rising, that the line and the engine's tables cover.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature; <see cref="Conditions.Default"/> if not given.</param>
    /// <param name="cancellation">Stops the work, which has no result before its end.</param>
    /// <returns>The results, the tightest place of each check, and the first limit reached as speed rises.</returns>
    /// <exception cref="ArgumentException">The engine cannot have such a line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range, or the list does not rise.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static LineSweepResult Sweep(
        this FuelSystem system,
        BoostLine line,
        IReadOnlyList<RotationalSpeed> speeds,
        Conditions? conditions = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(speeds);
        Guard.Count(speeds.Count, 2, 10_000, "Give the ends of the line at least.", nameof(speeds));
        Guard.Rising([.. speeds.Select(speed => EngineSpeed.Within(speed, nameof(speeds)))], nameof(speeds));
        Conditions all = conditions ?? Conditions.Default;
        FuelSystem judged = system.JudgedBy(new CompressorSpeedCheck(line));
        OperatingPoint[] own = [.. speeds.Select(speed => OperatingPoint.At(speed, line.At(speed, system.Demand, all.Atmosphere), all))];
        RangeSearch search = RangeSearch.Along(judged, line, own, cancellation);
        PartStanding[] standings =
        [
            .. Enumerable.Range(0, judged.Applicable.Length)
                .Select(check =>
                {
                    cancellation.ThrowIfCancellationRequested();
                    return new PartStanding(
                        new(TightestPlace.Of(check, search)),
                        double.IsFinite(search.FailsFrom(check)) ? FirstFailing.Along(check, search) : null,
                        search.IsOpen(check));
                })
                .OrderBy(standing => standing.LimitReachedAt?.Speed.RevolutionsPerSecond ?? double.PositiveInfinity)
                .ThenBy(standing => standing.Tightest.Margin, Urgency.Order),
        ];
        return new(
            judged,
            line,
            search.Own,
            standings,
            Verdict.Along(judged, standings, own[0], own[^1]),
            Remedies(Array.FindAll(standings, standing => standing.Outcome == Outcome.Fails), search),
            search.Count,
            () => LineExtremeSearch.Of(search, judged.Parts, own[0].Speed.RevolutionsPerMinute, own[^1].Speed.RevolutionsPerMinute));
    }

    private static Func<IReadOnlyList<Remedy>> Remedies(PartStanding[] failing, RangeSearch search)
    {
        IReadOnlyList<OperatingResult> results = failing.Length == 0 ? [] : search.Results();
        return () => [.. failing.Select(standing => standing.RemedyAmong(results)).OfType<Remedy>()];
    }
}

/// <summary>A fuel system along a boost line: the first limit reached as speed rises, and where each margin is tightest.</summary>
public sealed class LineSweepResult : IReadable
{
    // Looked for when they are asked for: a verdict does not need them.
    private readonly Lazy<LineExtremes> _extremes;
    private readonly Lazy<IReadOnlyList<Remedy>> _remedies;

    internal LineSweepResult(
        FuelSystem system,
        BoostLine line,
        SolvedGrid results,
        PartStanding[] standings,
        Verdict verdict,
        Func<IReadOnlyList<Remedy>> remedies,
        int pointsSolved,
        Func<LineExtremes> extremes)
    {
        (System, Line, Results) = (system, line, results);
        (Standings, Verdict, PointsSolved) = (Array.AsReadOnly(standings), verdict, pointsSolved);
        (_extremes, _remedies) = (new(extremes), new(remedies));
    }

    /// <summary>The system that was swept, with a check of the compressor's speed.</summary>
    public FuelSystem System { get; }

    /// <summary>The boost at each speed.</summary>
    public BoostLine Line { get; }

    /// <summary>The results, speeds rising; each is written out when it is first asked for.</summary>
    public IReadOnlyList<OperatingResult> Results { get; }

    /// <summary>How each check came out, the first limit reached as speed rises before the others.</summary>
    public IReadOnlyList<PartStanding> Standings { get; }

    /// <summary>The limiting component: the first limit reached; if none is, the tightest margin.</summary>
    public PartStanding Limiting => Standings[0];

    /// <summary>The answer in words.</summary>
    public Verdict Verdict { get; }

    /// <summary>What would remedy each failing check; empty if none fails. Worked out when they are first asked for.</summary>
    public IReadOnlyList<Remedy> Remedies => _remedies.Value;

    /// <summary>What a careful reader should know about these numbers, each subject once, at its worst.</summary>
    public IReadOnlyList<Statement> Notes =>
    [
        .. ResultNotes.NeverActs(System.Regulator, [.. Results.Select(result => result.Point.Boost)]) is { } idle ? new[] { idle } : [],
        .. Results
            .SelectMany(result => ResultNotes.Of(result))
            .GroupBy(note => note.Subject)
            .Select(notes => notes.MaxBy(note => note.Weight)!.Text),
    ];

    /// <summary>How many points were solved: the speeds asked for, and those between them at which the margins were looked for.</summary>
    public int PointsSolved { get; }

    /// <summary>
    /// Where along the line the mixture can be leanest (<see cref="DeliveredMixture.MaximumLambda"/>), between the points shown too, of all that was
    /// solved and is known; none where it is known nowhere.
    /// </summary>
    public OperatingResult? Leanest => _extremes.Value.Leanest;

    /// <summary>Where along the line the rail stands lowest, with the flow that is injected.</summary>
    internal OperatingResult LowestRail => _extremes.Value.LowestRail;

    /// <summary>Where along the line the rail stands highest.</summary>
    internal OperatingResult HighestRail => _extremes.Value.HighestRail;

    /// <summary>Where along the line most is drawn from the surge tank; none without one.</summary>
    internal OperatingResult? LargestDraw => _extremes.Value.LargestDraw;

    /// <summary>Where along the line least is left to refill the surge tank; none without one.</summary>
    internal OperatingResult? SmallestSurplus => _extremes.Value.SmallestSurplus;

    /// <inheritdoc/>
    public string In(TextStyle style) => Verdict.In(style);

    /// <summary>The verdict's headline.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
