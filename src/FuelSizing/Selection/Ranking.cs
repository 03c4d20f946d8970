using FuelSizing.Checks;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Selection;

/// <summary>Every combination of candidate parts, judged over every stage of a plan, best first.</summary>
/// <remarks>
/// <para>Each combination gets the verdict that <see cref="SystemSolver.Solve"/> gives at every point of every stage. A pump
/// and a regulator are solved once for all injectors, for no injector has a part in the circuit; so tens of thousands of
/// combinations take a second.</para>
/// <para>Order: those that serve before those that cannot be judged before those that fail. Among those that serve the
/// cheapest comes first, then the one with more in reserve; among the others the one that misses least.</para>
/// </remarks>
/// <example>
/// <code>
/// Ranking ranking = Ranking.Of([now, later], CandidateParts.Of(catalogue.Injectors));
/// Console.WriteLine(ranking.Headline);
/// </code>
/// </example>
public sealed class Ranking : IReadable
{
    // As many as a reader compares.
    private const int Nearest = 3;

    private Ranking(
        IReadOnlyList<Stage> plan,
        CandidateParts parts,
        IReadOnlyList<Combination> combinations,
        IReadOnlyList<LeftOut> leftOut,
        bool isComplete)
    {
        (Plan, Parts, LeftOut, IsComplete) = (plan, parts, leftOut, isComplete);
        Combinations = [.. combinations.Order(BestFirst.Order)];
        Serving = [.. Combinations.TakeWhile(combination => Urgency.IsHolding(combination.Outcome))];
        Pareto = ParetoSet.Of(Serving);
        Headline = Head();
        Verdict = Judge();
    }

    /// <summary>The stages.</summary>
    public IReadOnlyList<Stage> Plan { get; }

    /// <summary>What there was to choose from.</summary>
    public CandidateParts Parts { get; }

    /// <summary>All combinations that were judged, best first.</summary>
    public IReadOnlyList<Combination> Combinations { get; }

    /// <summary>Those that serve every stage, best first.</summary>
    public IReadOnlyList<Combination> Serving { get; }

    /// <summary>
    /// Those that serve and that no other beats at once in cost (where all have one), turndown at idle and reserve; the
    /// cheapest first.
    /// </summary>
    public IReadOnlyList<Combination> Pareto { get; }

    /// <summary>The first that is adequate; none if none is.</summary>
    public Combination? Best => Serving.Count > 0 ? Serving[0] : null;

    /// <summary>Candidates that do not fit a stage's layout, or cannot be chosen (<see cref="Candidate{T}.LeftOut"/>), with the reason.</summary>
    public IReadOnlyList<LeftOut> LeftOut { get; }

    /// <summary>False if the ranking was stopped before all combinations were judged.</summary>
    public bool IsComplete { get; }

    /// <summary>The answer in words.</summary>
    public Statement Headline { get; }

    /// <summary>
    /// Whether any combination is adequate, with the margins of the first; if none is, with the reasons of those that come
    /// nearest. While not all were judged, it cannot be said that none is adequate.
    /// </summary>
    public Verdict Verdict { get; }

    /// <summary>Judges and orders every combination.</summary>
    /// <param name="plan">One stage or more, up to 100; the parts must serve them all.</param>
    /// <param name="parts">What to choose from.</param>
    /// <param name="threads">The most threads that work at once, 1 to 256; the machine's processors if not given.</param>
    /// <param name="progress">Told of the share that is done.</param>
    /// <param name="cancellation">Stops the work; what was judged by then is ranked.</param>
    /// <returns>The ranking: the same on any number of threads.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are no stages, or too many, or the threads are outside their range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped before a combination was judged.</exception>
    public static Ranking Of(
        IReadOnlyList<Stage> plan,
        CandidateParts parts,
        int? threads = null,
        IProgress<Ratio>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(parts);
        Guard.Count(plan.Count, 1, 100, "Give the stages that the parts must serve.", nameof(plan));
        foreach (Stage stage in plan)
        {
            ArgumentNullException.ThrowIfNull(stage, nameof(plan));
        }

        int maximum = Guard.Count(
            threads ?? Math.Min(256, Environment.ProcessorCount),
            1,
            256,
            "Give the number of processor cores, or fewer.",
            nameof(threads));
        List<LeftOut> leftOut = [];
        CombinationJudge judge = new(
            [.. plan], Choosable(parts.Injectors, leftOut), Choosable(parts.Pumps, leftOut), Fitting(plan, parts.Regulators, leftOut));
        IReadOnlyList<Combination>?[] judged = judge.All(maximum, progress, cancellation);
        if (cancellation.IsCancellationRequested && Array.TrueForAll(judged, combinations => combinations is null))
        {
            throw new OperationCanceledException("The work was stopped before a combination was judged.", cancellation);
        }

        return new(
            [.. plan],
            parts,
            [.. judged.SelectMany(combinations => combinations ?? [])],
            leftOut.AsReadOnly(),
            judged.All(combinations => combinations is not null));
    }

    /// <summary>How many combinations are adequate, and the best, as a code with its arguments.</summary>
    public Statement Text
    {
        get
        {
            Statement? first = Best is { } best ? Statement.Of("ranking.best", $"; best: {best}") : null;
            return Statement.Of("ranking.serving", $"{Serving.Count} of {Combinations.Count} combinations are adequate{first}");
        }
    }

    /// <summary>How many combinations are adequate, and the best.</summary>
    /// <returns>For instance <c>6 of 24 combinations are adequate; best: injector B, pump R</c>.</returns>
    public override string ToString() => Text.ToString();

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The regulators that fit every stage; one that is none where each stage keeps its own.</summary>
    private Statement Head()
    {
        Statement over = Plan.Count == 1
            ? Statement.Of("ranking.one-stage", $"{Plan[0].Name}")
            : Statement.Of("ranking.all-stages", $"all {Plan.Count} stages");
        Statement? found = Best is { } best ? Statement.Of("ranking.first", $": first comes {best}{NotJudgedOf(best)}")
            : Combinations.Count > 0
                ? Statement.Of("ranking.nearest", $". Nearest comes {Combinations[0]}, but {Combinations[0].Explain()}")
                : null;
        return IsComplete
            ? Statement.Of(
                "ranking.complete", $"{Serving.Count} of {Combinations.Count} combinations are adequate for {over}{found}.")
            : Statement.Of(
                "ranking.stopped",
                $"{Serving.Count} of {Combinations.Count} combinations are adequate for {over}{found}; stopped before all were judged.");
    }

    private static Statement? NotJudgedOf(Combination best) =>
        best.Outcome == Outcome.HoldsAsFarAsJudged
            ? Statement.Of("ranking.not-judged", $"; not judged: {Verdict.Open(best.NotJudged):;}")
            : null;

    private Verdict Judge() => new(
        Best is { Outcome: var found } ? found
            : !IsComplete || Combinations.Any(combination => combination.Outcome == Outcome.CannotSay) ? Outcome.CannotSay
            : Outcome.Fails,
        Headline,
        Best is { } best
            ? [.. best.SolveMargins().Select(margin => Statement.Of("ranking.margin", $"{margin.Stage.Name}: {margin.Limit}"))]
            : [.. Combinations.Take(Nearest).Select(combination => Statement.Of("ranking.reason", $"{combination}: {combination.Explain()}"))],
        Best?.NotJudged);

    /// <summary>Those of a list that can be chosen; one that is none where each stage keeps its own.</summary>
    private static Candidate<T>?[] Choosable<T>(IReadOnlyList<Candidate<T>> candidates, List<LeftOut> leftOut)
        where T : notnull
    {
        foreach (Candidate<T> candidate in candidates)
        {
            if (candidate.LeftOut is { } reason)
            {
                leftOut.Add(new(candidate.Name, reason));
            }
        }

        Candidate<T>?[] own = [null];
        return candidates.Count == 0 ? own : [.. candidates.Where(candidate => candidate.LeftOut is null)];
    }

    private static Candidate<PressureRegulator>?[] Fitting(
        IReadOnlyList<Stage> plan, IReadOnlyList<Candidate<PressureRegulator>> regulators, List<LeftOut> leftOut)
    {
        if (regulators.Count == 0)
        {
            return [null];
        }

        List<Candidate<PressureRegulator>> fitting = [];
        foreach (Candidate<PressureRegulator> regulator in regulators)
        {
            if (regulator.LeftOut is { } reason)
            {
                leftOut.Add(new(regulator.Name, reason));
                continue;
            }

            Statement? misfit = plan.Select(stage => FuelSystem.Misfit(stage.System.Layout, regulator.Part, stage.System.Plumbing)).FirstOrDefault(found => found is not null);
            if (misfit is null)
            {
                fitting.Add(regulator);
            }
            else
            {
                leftOut.Add(new(regulator.Name, Statement.Of("ranking.regulator-left-out", $"the regulator is {regulator.Part.Text}; {misfit}")));
            }
        }

        return [.. fitting];
    }
}
