using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>An arrangement of pumps as pieces of a diagram, with what each does where it runs.</summary>
/// <param name="all">The arrangement.</param>
/// <param name="results">Each pump where it runs, in the order of the arrangement; none in a description, or where data does not cover the point.</param>
/// <param name="branches">Each branch with lines of its own, in the same order; none in a description.</param>
/// <param name="isSolved">True in a result.</param>
/// <param name="filter">The filter of the circuit that is judged; none where there is none.</param>
/// <param name="marks">Of the result.</param>
/// <param name="kinds">Which checks judge pump, feed, wire, fuse and converter.</param>
/// <param name="style">Units and culture.</param>
internal sealed class DiagramPumps(
    PumpAssembly all,
    IReadOnlyList<PumpResult> results,
    IReadOnlyList<BranchResult> branches,
    bool isSolved,
    IFlowLoss? filter,
    DiagramMarks marks,
    DiagramPumps.Judged kinds,
    TextStyle style)
{
    // Flows of a solver settle to far less than this.
    private const double Same = 1e-6;

    private readonly List<DiagramPart> _parts = [];
    private int _next;
    private int _nextBranch;

    /// <summary>Every part, in the order of flow.</summary>
    public IReadOnlyList<DiagramPart> Parts => _parts;

    /// <summary>The pieces.</summary>
    public DiagramBlock Block() => Of(all).Block;

    private (DiagramBlock Block, VolumeFlow? Through) Of(PumpAssembly pumps)
    {
        switch (pumps)
        {
            case PumpSeries series:
                (DiagramBlock Block, VolumeFlow? Through, int End)[] stages = new (DiagramBlock, VolumeFlow?, int)[series.Stages.Count];
                for (int stage = 0; stage < stages.Length; stage++)
                {
                    (DiagramBlock block, VolumeFlow? through) = Of(series.Stages[stage]);
                    stages[stage] = (block, through, _parts.Count);
                }

                // At least one stage passes all by itself.
                VolumeFlow? whole = Largest(stages.Select(stage => stage.Through));
                if (series.Bypass == SeriesBypass.CheckValve)
                {
                    for (int stage = stages.Length - 1; stage >= 0; stage--)
                    {
                        DiagramPart valve = Bypass(whole - stages[stage].Through, whole);
                        _parts.Insert(stages[stage].End, valve);
                        stages[stage].Block = new BypassBlock(stages[stage].Block, valve);
                    }
                }

                return (new StackBlock([.. stages.Select(stage => stage.Block)]), whole);
            case PumpParallel parallel:
                List<(DiagramBlock, DiagramPart?)> members = [];
                VolumeFlow? sum = VolumeFlow.Zero;
                foreach (PumpAssembly branch in parallel.Branches)
                {
                    (DiagramBlock block, VolumeFlow? through) = Of(branch);
                    sum += through;
                    if (branch is PumpBranch own && own.Discharge.Any(part => part is CheckValve))
                    {
                        // It has its own.
                        members.Add((block, null));
                        continue;
                    }

                    DiagramPart valve = new(DiagramSymbol.CheckValve, State("check valve", through, "shut"), [], "keeps fuel from running back");
                    _parts.Add(valve);
                    members.Add((block, valve));
                }

                return (new ParallelBlock(members), sum);
            case PumpBranch branch:
                return Lined(branch);
            default:
                return Leaf(pumps);
        }
    }

    /// <summary>Every branch with lines of its own, in the order in which results have them.</summary>
    public static IEnumerable<PumpBranch> BranchesOf(PumpAssembly pumps) => pumps switch
    {
        PumpSeries series => series.Stages.SelectMany(BranchesOf),
        PumpParallel parallel => parallel.Branches.SelectMany(BranchesOf),
        PumpBranch branch => [.. branch.Suction.Count + branch.Discharge.Count > 0 ? [branch] : Array.Empty<PumpBranch>(), .. BranchesOf(branch.Pump)],
        _ => [],
    };

    private (DiagramBlock Block, VolumeFlow? Through) Lined(PumpBranch branch)
    {
        if (branch.Suction.Count + branch.Discharge.Count == 0)
        {
            return Of(branch.Pump);
        }

        BranchResult? result = _nextBranch < branches.Count ? branches[_nextBranch] : null;
        _nextBranch++;
        List<DiagramBlock> blocks = [];
        Add(branch.Suction, result?.Suction ?? [], $"own suction of {branch.Name}");
        (DiagramBlock block, VolumeFlow? through) = Of(branch.Pump);
        blocks.Add(block);
        Add(branch.Discharge, result?.Discharge ?? [], $"own line of {branch.Name}, to the joint");
        return (new StackBlock(blocks), through);

        void Add(IReadOnlyList<IFlowLoss> path, IReadOnlyList<PathResult> paths, string where)
        {
            for (int at = 0; at < path.Count; at++)
            {
                DiagramPart part = DiagramPath.PartOf(
                    path[at],
                    at < paths.Count ? paths[at] : null,
                    isSolved,
                    where,
                    ReferenceEquals(path[at], filter) ? marks.Take(kinds.Filter) : [],
                    style,
                    result is not null ? "shut: nothing flows" : CircuitText.Unknown);
                _parts.Add(part);
                blocks.Add(new PartBlock(part));
            }
        }
    }

    private DiagramPart Bypass(VolumeFlow? past, VolumeFlow? whole)
    {
        bool isOpen = past is { } flow && whole is { } all && flow > all * Same;
        return new(
            DiagramSymbol.CheckValve,
            past is null ? "bypass check valve" : isOpen ? "bypass check valve open" : "bypass check valve shut",
            isOpen ? [$"{style.PumpFlow(past!.Value)} past the pump"] : [],
            isOpen ? $"{style.PumpFlow(past!.Value)} flows past the stage before it" : "leads past the stage before it");
    }

    private static string State(string name, VolumeFlow? through, string none) => through is not { } flow ? name
        : flow > VolumeFlow.Zero ? $"{name} open" : $"{name} {none}";

    private (DiagramBlock Block, VolumeFlow? Through) Leaf(PumpAssembly assembly)
    {
        SwitchedPump? switched = assembly as SwitchedPump;
        Pump pump = switched?.Pump ?? (Pump)assembly;
        PumpResult? result = _next < results.Count ? results[_next] : null;
        _next++;
        List<string> lines = [];
        List<string> state = [];
        if (switched is not null)
        {
            lines.Add($"switched, from {style.Boost(switched.On)} on");
            state.Add($"at full speed from {style.Boost(switched.On)} on as boost rises, until then {switched.LowSpeed.In(style)}");
        }

        if (result is not null)
        {
            lines.AddRange(result.IsRunning
                ? [$"{style.PumpFlow(result.Flow)}, +{style.Of(result.PressureRise)}", Motor(result)]
                : ["off"]);
            state.Add(result.IsRunning
                ? $"{style.PumpFlow(result.Flow)} against {style.Of(result.PressureRise)}, {CircuitText.Electrical(result, style)}"
                : "off");
        }
        else if (isSolved)
        {
            lines.Add(CircuitText.Unknown);
            state.Add(CircuitText.Unknown);
        }
        else
        {
            PumpCurve curve = pump.Curves[^1];
            string rated = $"{style.PumpFlow(curve.FlowAt(curve.MinimumPressure))} at {style.Of(curve.MinimumPressure)}, {style.Of(curve.Voltage)}";
            lines.Add(rated);
            state.Add(rated);
        }

        bool isOnly = all.Pumps.Count == 1;
        List<DiagramPart> own =
        [
            new(DiagramSymbol.Pump, pump.Name, lines, string.Join("; ", state)) { Marks = isOnly ? marks.Take(kinds.Pump) : [] },
        ];
        if (pump.Feed is { } feed)
        {
            string lost = result is null ? $"{feed.Conductor}, {style.Of(feed.LoopResistance)}" : $"{style.VoltageDrop(result.FeedDrop)} lost";
            own.Add(new(DiagramSymbol.Feed, feed.Name, [lost], $"electrical feed, {feed.Conductor}, {style.Of(feed.LoopResistance)}{(result is null ? string.Empty : $", {lost}")}")
            {
                Marks = all.Pumps.Count(other => other.Feed is not null) == 1 ? marks.Take(kinds.Feed, kinds.Wire, kinds.Fuse) : [],
            });
        }

        if (pump.Converter is { } converter)
        {
            own.Add(new(
                DiagramSymbol.Converter,
                converter.Name,
                [converter.Output is { } volts ? $"holds {style.Of(volts)}" : $"× {style.Number(converter.Multiple!.Value, "0.###")}"],
                $"voltage converter, {converter.In(style)}")
            {
                Marks = all.Pumps.Count(other => other.Converter is not null) == 1 ? marks.Take(kinds.Converter) : [],
            });
        }

        _parts.AddRange(own);
        return (new PartBlock(own[0], [.. own.Skip(1)]), result is null ? null : result.IsRunning ? result.Flow : VolumeFlow.Zero);
    }

    private string Motor(PumpResult result) =>
        $"{style.Of(result.Voltage)}{(result.Current is { } current ? $", {style.Of(current)}" : string.Empty)}{(result.IsEstimate ? ", an estimate" : string.Empty)}";

    private static VolumeFlow? Largest(IEnumerable<VolumeFlow?> flows)
    {
        VolumeFlow? largest = VolumeFlow.Zero;
        foreach (VolumeFlow? flow in flows)
        {
            largest = flow is { } known && largest is { } before ? known > before ? known : before : null;
        }

        return largest;
    }

    /// <summary>Which checks judge the pumps of a circuit and their wiring.</summary>
    /// <param name="Pump">What they deliver.</param>
    /// <param name="Feed">Voltage drop.</param>
    /// <param name="Wire">Ampacity.</param>
    /// <param name="Fuse">Fuse.</param>
    /// <param name="Converter">Converter.</param>
    /// <param name="Filter">Filter.</param>
    internal sealed record Judged(Part Pump, Part Feed, Part Wire, Part Fuse, Part Converter, Part Filter)
    {
        public static Judged Main { get; } = new(Part.Pump, Part.Feed, Part.Wire, Part.Fuse, Part.Converter, Part.Filter);

        public static Judged Lift { get; } = new(Part.LiftPump, Part.LiftFeed, Part.LiftWire, Part.LiftFuse, Part.Converter, Part.LiftFilter);

        public Part[] All => [Pump, Feed, Wire, Fuse, .. this == Main ? new[] { Converter } : []];
    }
}
