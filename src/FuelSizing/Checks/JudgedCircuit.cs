using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>Which circuit a check judges: the main one, or the lift circuit of a surge tank. Both are held to the same rules.</summary>
internal abstract class JudgedCircuit
{
    /// <summary>From tank or surge tank to the rail.</summary>
    public static JudgedCircuit Main { get; } = new MainCircuit();

    /// <summary>From the main tank to the surge tank.</summary>
    public static JudgedCircuit Lift { get; } = new LiftedCircuit();

    /// <summary>Its pumps; none where the system has no such circuit.</summary>
    public abstract PumpAssembly? PumpsOf(SystemParts parts);

    /// <summary>Its lines; none where the system has no such circuit.</summary>
    public abstract Plumbing? LinesOf(SystemParts parts);

    /// <summary>True if a part in it, shared or of a branch, has a loss that is known up to a flow only.</summary>
    public virtual bool HasFilter(SystemParts parts) => LinesOf(parts)?.HasFilter == true;

    /// <summary>True if there is a filter in it, shared or of a branch.</summary>
    public virtual bool IsFiltered(SystemParts parts) => LinesOf(parts)?.IsFiltered == true;

    /// <summary>Temperature of the fuel at its pumps' inlet.</summary>
    public abstract Temperature InletTemperatureOf(Conditions conditions);

    /// <summary>The same parts with each feed of its pumps exchanged for another.</summary>
    public abstract SystemParts Rewired(SystemParts parts, Func<Feed, Feed> exchange);

    /// <summary>Every state in which it is judged, solved; at least one.</summary>
    public abstract IReadOnlyList<SolvedCircuit> StatesOf(in SolvedCircuit circuit);

    /// <summary>The filter, or part of one's own, nearest to the end of its data.</summary>
    public abstract Lines.ILimitedLoss FilterOf(in SolvedCircuit circuit);

    // What is generic is not virtual: to look up a generic method at run time takes longer than to read the figures.
    private protected abstract bool IsLift { get; }

    /// <summary>Its figures among those of a point.</summary>
    public CircuitFigures<T> Read<T>(in PointValues<T> at)
        where T : struct, IReal<T> => IsLift
        ? new(at.Lift.Minimum, at.Lift.Maximum, at.Lift.VapourPressure, at.Lift.FilterMaximum, at.Lift.WireAmpacity, at.Lift.FuseRating, at.Lift.RelayRating)
        : new(at.Minimum, at.Maximum, at.VapourPressure, at.FilterMaximum, at.WireAmpacity, at.FuseRating, at.RelayRating);

    /// <summary>The state that words speak of: the one in which a feed takes most.</summary>
    public SolvedCircuit Of(SolvedPoint point)
    {
        IReadOnlyList<SolvedCircuit> states = StatesOf(point.SolvedCircuit);
        SolvedCircuit most = states[0];
        for (int state = 1; state < states.Count; state++)
        {
            int fed = most.LowestFed;
            most = fed >= 0 && states[state].FeedDropOf(fed)?.Maximum > most.FeedDropOf(fed)?.Maximum ? states[state] : most;
        }

        return most;
    }

    private sealed class MainCircuit : JudgedCircuit
    {
        public override PumpAssembly PumpsOf(SystemParts parts) => parts.Pump;

        public override Plumbing LinesOf(SystemParts parts) => parts.Plumbing;

        public override bool HasFilter(SystemParts parts) => parts.HasFilter;

        public override bool IsFiltered(SystemParts parts) => parts.IsFiltered;

        public override Temperature InletTemperatureOf(Conditions conditions) => conditions.InletTemperature;

        public override SystemParts Rewired(SystemParts parts, Func<Feed, Feed> exchange) => parts.With(parts.Pump.Rewired(exchange));

        public override IReadOnlyList<SolvedCircuit> StatesOf(in SolvedCircuit circuit) =>
            circuit.Lift?.MainFull is { } full ? [circuit, full] : [circuit];

        public override Lines.ILimitedLoss FilterOf(in SolvedCircuit circuit) => CircuitReading.FilterOf(circuit).Filter;

        private protected override bool IsLift => false;
    }

    private sealed class LiftedCircuit : JudgedCircuit
    {
        public override PumpAssembly? PumpsOf(SystemParts parts) => parts.SurgeTank?.LiftPump;

        public override Plumbing? LinesOf(SystemParts parts) => parts.SurgeTank?.Plumbing;

        public override Temperature InletTemperatureOf(Conditions conditions) => conditions.TankTemperature;

        public override SystemParts Rewired(SystemParts parts, Func<Feed, Feed> exchange) =>
            parts.With(parts.SurgeTank?.With(parts.SurgeTank.LiftPump.Rewired(exchange)));

        public override IReadOnlyList<SolvedCircuit> StatesOf(in SolvedCircuit circuit) =>
            circuit.Lift!.Full is { } full ? [circuit.Lift.Filling, full] : [circuit.Lift.Filling];

        public override Lines.ILimitedLoss FilterOf(in SolvedCircuit circuit) => LiftReading.FilterOf(circuit.Lift!)!.Value.Filter;

        private protected override bool IsLift => true;
    }
}

/// <summary>Figures of one circuit that a check may read.</summary>
/// <param name="Minimum">The least that they can be.</param>
/// <param name="Maximum">The most.</param>
/// <param name="VapourPressure">Of the fuel at the inlet, absolute, Pa.</param>
/// <param name="FilterMaximum">Largest flow at which the loss is known of the filter nearest to that, m³/s.</param>
/// <param name="WireAmpacity">Of the wire nearest to it, A.</param>
/// <param name="FuseRating">Of the fuse that is loaded most for it, A.</param>
/// <param name="RelayRating">Of the relay that is loaded most for it, A.</param>
internal readonly record struct CircuitFigures<T>(
    CircuitValues<T> Minimum, CircuitValues<T> Maximum, T VapourPressure, T FilterMaximum, T WireAmpacity, T FuseRating, T RelayRating)
    where T : struct, IReal<T>;
