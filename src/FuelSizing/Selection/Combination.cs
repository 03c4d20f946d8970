using FuelSizing.Checks;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Selection;

/// <summary>One choice of injectors, pump and regulator, judged over every stage of a plan.</summary>
public sealed class Combination : IReadable
{
    private readonly IReadOnlyList<Stage> _plan;
    private readonly WorstSoFar _worst;

    internal Combination(
        IReadOnlyList<Stage> plan,
        Candidate<Injector>? injectors,
        Candidate<PumpAssembly>? pump,
        Candidate<PressureRegulator>? regulator,
        decimal? cost,
        in WorstSoFar worst,
        IReadOnlyList<NotJudged> notJudged)
    {
        (_plan, Injectors, Pump, Regulator) = (plan, injectors, pump, regulator);
        (Cost, _worst, NotJudged) = (cost, worst, notJudged);
        Outcome = worst.Weakest.Outcome == Outcome.Holds && notJudged.Any(open => open.Waiver is null)
            ? Outcome.HoldsAsFarAsJudged
            : worst.Weakest.Outcome;
    }

    /// <summary>The injectors; none where each stage keeps its own.</summary>
    public Candidate<Injector>? Injectors { get; }

    /// <summary>The pump or pumps; none where each stage keeps its own.</summary>
    public Candidate<PumpAssembly>? Pump { get; }

    /// <summary>The regulator; none where each stage keeps its own.</summary>
    public Candidate<PressureRegulator>? Regulator { get; }

    /// <summary>
    /// What all of it costs: injectors times their number, pumps, regulator; none where the cost of one is not known.
    /// </summary>
    public decimal? Cost { get; }

    /// <summary>Whether every limit is kept at every point of every stage.</summary>
    public Outcome Outcome { get; }

    /// <summary>What no check judged in some stage, waived or not, each part once.</summary>
    public IReadOnlyList<NotJudged> NotJudged { get; }

    /// <summary>
    /// Turndown at idle: how much longer the shortest pulse is than the minimum linear one, as a share of it. None where it
    /// cannot be said.
    /// </summary>
    public Ratio? Turndown => Share(_worst.Turndown);

    /// <summary>The smallest margin of every other limit; none where nothing has one.</summary>
    public Ratio? Reserve => Share(_worst.Reserve);

    /// <summary>The stage with the tightest margin.</summary>
    public Stage WeakestStage => _plan[_worst.Stage];

    /// <summary>The part with the tightest margin, or whose limit is exceeded by most.</summary>
    public Part WeakestPart => _worst.Weakest.Part;

    /// <summary>Solves the point with the tightest margin once more, for its figures and words.</summary>
    /// <returns>The tightest margin, or the limit that is exceeded, and where.</returns>
    public Limit SolveWeakest()
    {
        OperatingResult result = SystemIn(WeakestStage).Solve(WeakestStage.Points[_worst.Point]);
        return new(result.Margins.First(margin => margin.Part == _worst.Weakest.Part));
    }

    /// <summary>Solves the point that is worst once more, to say why the combination is not adequate.</summary>
    /// <returns>The limit that is exceeded, and where; none if all hold.</returns>
    public Statement? Explain() => Urgency.IsHolding(Outcome) ? null : Statement.Of("ranking.weakest", $"{WeakestStage.Name}: {SolveWeakest()}");

    /// <summary>Solves every point of the plan once more.</summary>
    /// <returns>The worst margin of each part over all stages, the most urgent first.</returns>
    public IReadOnlyList<(Stage Stage, Limit Limit)> SolveMargins() =>
    [
        .. from stage in _plan
           from result in Solve(stage)
           from margin in result.Margins
           let limit = new Limit(margin)
           group (stage, limit) by limit.Part into part
           let worst = part.OrderBy(place => place.limit.Margin, Urgency.Order).First()
           orderby Urgency.Rank(worst.limit.Margin.Outcome) descending, worst.limit.Margin.Share ?? double.PositiveInfinity
           select worst,
    ];

    internal Judgement WeakestCheck => _worst.Weakest;

    internal double TurndownShare => _worst.Turndown;

    internal double ReserveShare => _worst.Reserve;

    /// <summary>A stage's system with the chosen parts in it.</summary>
    /// <param name="stage">A stage of the plan.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">The stage is not of the plan.</exception>
    public FuelSystem SystemIn(Stage stage)
    {
        ArgumentNullException.ThrowIfNull(stage);
        if (!_plan.Any(own => ReferenceEquals(own, stage)))
        {
            throw new ArgumentException($"stage was {stage.Name}, which is not in the plan that was ranked.", nameof(stage));
        }

        FuelSystem system = stage.System;
        system = Injectors is { } injectors
            ? system.With(InjectorSet.Of(injectors.Part, system.Injectors.Count, system.Injectors.InjectionsPerCycle))
            : system;
        system = Pump is { } pump ? system.With(pump.Part) : system;
        return Regulator is { } regulator ? system.With(regulator.Part) : system;
    }

    /// <summary>The stage's points, solved forward with the chosen parts.</summary>
    /// <param name="stage">A stage of the plan.</param>
    /// <returns>A result for each point, in their order.</returns>
    /// <exception cref="ArgumentException">The stage is not of the plan.</exception>
    public IReadOnlyList<OperatingResult> Solve(Stage stage)
    {
        FuelSystem system = SystemIn(stage);
        return [.. stage.Points.Select(system.Solve)];
    }

    /// <summary>The names of the parts that were chosen, as a code with its arguments.</summary>
    public Statement Text
    {
        get
        {
            string?[] names = [Injectors?.Name, Pump?.Name, Regulator?.Name];
            Statement[] parts = [.. names.OfType<string>().Select(name => Statement.Of("ranking.part", $"{name}"))];
            return Statement.Of("ranking.combination", $"{parts:,}");
        }
    }

    /// <summary>The parts in words.</summary>
    /// <returns>Injectors, pump, regulator.</returns>
    public override string ToString() => Text.ToString();

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    private static Ratio? Share(double reserve) =>
        double.IsPositiveInfinity(reserve) ? null : Ratio.FromDecimalFractions(reserve);
}
