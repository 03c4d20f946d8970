using System.Collections.Immutable;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Solves a fuel system over a range of speed and boost, and judges it there.</summary>
public static class SystemSweep
{
    /// <summary>Solves every pair of a speed and a boost.</summary>
    /// <param name="system">The system.</param>
    /// <param name="speeds">One or more, rising, within the engine's tables and limit.</param>
    /// <param name="boosts">One or more, rising.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature; <see cref="Conditions.Default"/> if not given.</param>
    /// <param name="progress">Told the share that is done, boost by boost; looking between its points comes last.</param>
    /// <param name="cancellation">Stops the work; the boosts done until then are in the result.</param>
    /// <returns>
    /// The results, the tightest place of each check, and the first limit reached; of the first so many boosts where the
    /// sweep was stopped.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A list is empty or out of order, or the engine's tables do not cover a point.</exception>
    /// <exception cref="OperationCanceledException">The sweep was stopped before a boost was done.</exception>
    public static SweepResult Sweep(
        this FuelSystem system,
        IReadOnlyList<RotationalSpeed> speeds,
        IReadOnlyList<Pressure> boosts,
        Conditions? conditions = null,
        IProgress<Ratio>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(speeds);
        ArgumentNullException.ThrowIfNull(boosts);
        Rising(speeds, EngineSpeed.Within, Readable.Of, nameof(speeds));
        Rising(boosts, ManifoldPressure.Within, Readable.Boost, nameof(boosts));
        Conditions all = conditions ?? Conditions.Default;
        double[] sets = [.. boosts.Select(boost => system.Regulator.SetPascals(boost.Pascals))];
        CircuitTable? table = CircuitTable.Of(
            system.Parts.TaskAt(system.Parts.DemandAt(OperatingPoint.At(speeds[0], boosts[0], all))), sets.Min(), sets.Max(), speeds.Count * boosts.Count);
        ImmutableArray<RotationalSpeed> across = [.. speeds];
        ImmutableArray<Pressure> up = [.. boosts];
        using RangeSearch search = RangeSearch.Over(
            system, table, across, up, all, done => progress?.Report(Ratio.FromDecimalFractions((double)done / (up.Length + 1))), cancellation)
            ?? throw new OperationCanceledException("The sweep was stopped before a boost was done.", cancellation);
        SweepResult sweep = Judge(system, across, [.. up.Take(search.Own.Count / across.Length)], search, up[^1], cancellation);
        if (sweep.IsComplete)
        {
            progress?.Report(Ratio.FromPercent(100));
        }

        return sweep;
    }

    private static SweepResult Judge(
        FuelSystem system,
        ImmutableArray<RotationalSpeed> speeds,
        ImmutableArray<Pressure> boosts,
        RangeSearch search,
        Pressure last,
        CancellationToken cancellation)
    {
        PartStanding[] standings =
        [
            .. Enumerable.Range(0, system.Applicable.Length)
                .Select(check => Stand(check, search, boosts[0].Pascals))
                .OrderBy(standing => standing.LimitReachedAt?.Boost.Pascals ?? double.PositiveInfinity)
                .ThenBy(standing => standing.Tightest.Margin, Urgency.Order),
        ];
        bool isSolved = boosts[^1].Pascals == last.Pascals;
        PartStanding[] failing = Array.FindAll(standings, standing => standing.Outcome == Outcome.Fails);
        bool isStopped = failing.Length > 0 && cancellation.IsCancellationRequested;
        return new(
            system,
            speeds,
            boosts,
            search.Own,
            standings,
            Verdict.Of(system, standings, speeds, boosts, isSolved ? null : last),
            Remedies(standings[0], boosts[0], isStopped || failing.Length == 0 ? null : search.Results(), failing),
            search.Count,
            isSolved && !isStopped ? null : last);
    }

    private static PartStanding Stand(int check, RangeSearch search, double lowest)
    {
        Margin tightest = TightestPlace.Of(check, search);
        return new(
            new(tightest),
            double.IsFinite(search.FailsFrom(check)) ? FirstFailing.Of(check, search, lowest) : null,
            search.IsOpen(check));
    }

    // What remedies a check may be worked out from every point: it is when somebody asks for it.
    private static Func<IReadOnlyList<Remedy>> Remedies(PartStanding first, Pressure lowest, IReadOnlyList<OperatingResult>? results, PartStanding[] failing) => () =>
    [
        .. results is null ? [] : failing.Select(standing => standing.RemedyAmong(results)).OfType<Remedy>(),
        .. first.LimitReachedAt is { } limit && limit.Boost > lowest
            ? new[]
            {
                Remedy.Of(
                    first.Part, limit.Boost, Statement.Of("boost.less", $"Or, with the parts as they are, no more than {limit.Boost:boost:down} of boost.")),
            }
            : [],
    ];

    private static void Rising<T, TChecked>(
        IReadOnlyList<T> values, Func<T, string, TChecked> check, Func<T, string> text, string name)
        where T : struct, IComparable<T>
    {
        Guard.Count(values.Count, 1, 10_000, "Give at least one.", name);
        for (int i = 0; i < values.Count; i++)
        {
            check(values[i], name);
            if (i > 0 && values[i].CompareTo(values[i - 1]) <= 0)
            {
                throw Guard.OutOfRange(
                    name, text(values[i]), $"over the {text(values[i - 1])} before it", "Sort the list and give each value once.");
            }
        }
    }
}
