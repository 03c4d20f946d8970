using FuelSizing.Checks;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Selection;

/// <summary>Judges combinations by the numbers that the forward solver gives, each circuit solved once for all injectors.</summary>
internal sealed class CombinationJudge
{
    private readonly Stage[] _plan;
    private readonly Candidate<Injector>?[] _injectors;
    private readonly Candidate<PumpAssembly>?[] _pumps;
    private readonly Candidate<PressureRegulator>?[] _regulators;
    private readonly InjectorSet[][] _withInjectors;
    private readonly int _injectorCount;

    /// <summary>Prepares the judging.</summary>
    /// <param name="plan">The stages.</param>
    /// <param name="injectors">Those that can be chosen; one that is none where each stage keeps its own.</param>
    /// <param name="pumps">The same of pumps.</param>
    /// <param name="regulators">Those of the regulators that fit every stage; one that is none where each keeps its own.</param>
    public CombinationJudge(
        Stage[] plan, Candidate<Injector>?[] injectors, Candidate<PumpAssembly>?[] pumps, Candidate<PressureRegulator>?[] regulators)
    {
        (_plan, _injectors, _pumps, _regulators) = (plan, injectors, pumps, regulators);
        _withInjectors = Array.ConvertAll(_injectors, injector => Array.ConvertAll(plan, stage => With(stage.System, injector)));
        _injectorCount = plan.Max(stage => stage.System.Injectors.Count);
    }

    /// <summary>All combinations by pump and regulator; null for those that were not reached when the work was stopped.</summary>
    public IReadOnlyList<Combination>?[] All(int threads, IProgress<Ratio>? progress, CancellationToken cancellation)
    {
        IReadOnlyList<Combination>?[] judged = new IReadOnlyList<Combination>?[_pumps.Length * _regulators.Length];
        object gate = new();
        int done = 0;
        Parallel.For(0, judged.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, pair =>
        {
            if (cancellation.IsCancellationRequested)
            {
                return;
            }

            judged[pair] = Pair(_pumps[pair / _regulators.Length], _regulators[pair % _regulators.Length]);
            if (progress is not null)
            {
                // Reports never go back.
                lock (gate)
                {
                    done++;
                    progress.Report(Ratio.FromDecimalFractions((double)done / judged.Length));
                }
            }
        });
        return judged;
    }

    private static InjectorSet With(FuelSystem system, Candidate<Injector>? injector) =>
        injector is null
            ? system.Injectors
            : InjectorSet.Of(injector.Part, system.Injectors.Count, system.Injectors.InjectionsPerCycle);

    /// <summary>A pump and a regulator with every injector.</summary>
    private Combination[] Pair(Candidate<PumpAssembly>? pump, Candidate<PressureRegulator>? regulator)
    {
        FuelSystem[] systems = new FuelSystem[_plan.Length];
        ICheck[][] asking = new ICheck[_plan.Length][];
        (SystemParts Parts, SolvedCircuit Circuit, PointValues<Real> Values)[][][] states = new (SystemParts, SolvedCircuit, PointValues<Real>)[_plan.Length][][];
        for (int stage = 0; stage < _plan.Length; stage++)
        {
            FuelSystem system = _plan[stage].System;
            system = pump is null ? system : system.With(pump.Part);
            system = regulator is null ? system : system.With(regulator.Part);
            (systems[stage], asking[stage]) = (system, system.AskingForInjectors);
            IReadOnlyList<PointDemand> demands = _plan[stage].Demands;
            states[stage] = [.. demands.Select(demand => StatesAt(system.Parts, demand))];
        }

        Combination[] combinations = new Combination[_injectors.Length];
        for (int injector = 0; injector < combinations.Length; injector++)
        {
            WorstSoFar worst = new();
            List<NotJudged> notJudged = [];
            for (int stage = 0; stage < _plan.Length; stage++)
            {
                FuelSystem system = systems[stage].Injecting(_withInjectors[injector][stage], asking[stage]);
                notJudged.AddRange(system.NotJudged.Where(open => !notJudged.Exists(other => other.Part == open.Part && (other.Waiver is null || open.Waiver is not null))));
                IReadOnlyList<PointDemand> demands = _plan[stage].Demands;
                for (int point = 0; point < demands.Count; point++)
                {
                    foreach ((SystemParts pumped, SolvedCircuit circuit, PointValues<Real> values) in states[stage][point])
                    {
                        SystemParts parts = pumped.IsFalling ? system.Parts.FallingAt(demands[point].Point.BoostPascals)! : system.Parts;
                        worst.Take(system, parts, PointReading.With(parts, values, demands[point], circuit, parts.InjectionAt(demands[point], circuit)), stage, point);
                    }
                }
            }

            combinations[injector] = new(
                _plan, _injectors[injector], pump, regulator, Cost(_injectors[injector], pump, regulator), worst, notJudged.AsReadOnly());
        }

        return combinations;
    }

    /// <summary>The circuit at a point, and as boost falls where a switched pump makes it another.</summary>
    private static (SystemParts Parts, SolvedCircuit Circuit, PointValues<Real> Values)[] StatesAt(SystemParts parts, PointDemand demand)
    {
        SolvedCircuit circuit = parts.CircuitAt(demand);
        (SystemParts, SolvedCircuit, PointValues<Real>)[] state = [(parts, circuit, PointReading.Of(parts, demand, circuit, default(Injection)))];
        return parts.FallingAt(demand.Point.BoostPascals) is { } falling ? [.. state, .. StatesAt(falling, demand)] : state;
    }

    private decimal? Cost(
        Candidate<Injector>? injector, Candidate<PumpAssembly>? pump, Candidate<PressureRegulator>? regulator) =>
        Of(injector) * _injectorCount + Of(pump) + Of(regulator);

    // What a stage keeps costs nothing.
    private static decimal? Of<T>(Candidate<T>? candidate)
        where T : notnull => candidate is null ? 0 : candidate.Cost;
}
