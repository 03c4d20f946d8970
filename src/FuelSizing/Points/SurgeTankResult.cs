using FuelSizing.Circuits;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>A surge tank and its lift circuit at one operating point: what is lifted, drawn, and overflows.</summary>
/// <remarks>
/// Where the tank stays full, what is lifted is what is drawn and what overflows; where it does not, its level falls by what is missing. Where pump data ends, figures
/// have a lower and an upper bound, and those without are as results show them.
/// </remarks>
public sealed class SurgeTankResult
{
    private readonly SolvedLift _lift;

    internal SurgeTankResult(SurgeTank tank, SolvedLift lift)
    {
        (Tank, _lift) = (tank, lift);
        SolvedCircuit shown = IsFull && lift.Full is { } full ? full : lift.Filling;
        CircuitState state = shown.State;
        Pumps = [];
        Paths = [];
        if (state.State == RailState.NotCovered)
        {
            return;
        }

        Lifted = Flow(state.Flow);
        Overflow = Flow(IsFull ? state.ReturnFlow : 0);
        LiftInletGauge = Pressure.FromPascals(state.InletGauge);
        LiftOutletGauge = Pressure.FromPascals(state.OutletGauge);
        TankGauge = IsFull ? Pressure.FromPascals(lift.Joined.Balance.Pressure) : Pressure.Zero;
        Pumps = Array.AsReadOnly(Array.ConvertAll(shown.Pumps, pump => new PumpResult(pump)));
        Paths = PathResult.Of(shown.Task, state);
    }

    /// <summary>The tank and its lift circuit.</summary>
    public SurgeTank Tank { get; }

    /// <summary>True if more is lifted than drawn, so that the tank stays full and overflows.</summary>
    public bool IsFull => _lift.Joined.IsFull;

    /// <summary>True if it stays full whatever the pumps' data leave open.</summary>
    public bool IsSurelyFull => _lift.Joined.IsSurelyFull;

    /// <summary>Net draw of the main circuit; none where it is not known.</summary>
    public VolumeFlow? NetDraw => Flow(_lift.Joined.Balance.Drawn);

    /// <summary>Lower bound of the net draw that has to be sustained: all that the engine asks for; none where it is not known.</summary>
    public VolumeFlow? MinimumNetDraw => Flow(_lift.Joined.MinimumDraw);

    /// <summary>Upper bound of it; none where it is not known.</summary>
    public VolumeFlow? MaximumNetDraw => Flow(_lift.Joined.MaximumDraw);

    /// <summary>What the lift pump brings, against the pressure in the full tank where it stays full; none where its data does not cover that.</summary>
    public VolumeFlow? Lifted { get; }

    /// <summary>Lower bound of what it can bring with nothing that overflows; none where it is not known.</summary>
    public VolumeFlow? MinimumLifted => Flow(_lift.MinimumLifted);

    /// <summary>Upper bound of it; none where it is not known.</summary>
    public VolumeFlow? MaximumLifted => Flow(_lift.MaximumLifted);

    /// <summary>What runs back to the main tank by the overflow line; nothing where the tank is not full; none where it is not known.</summary>
    public VolumeFlow? Overflow { get; }

    /// <summary>In the surge tank, by its overflow line, over ambient pressure; none where it is not known.</summary>
    public Pressure? TankGauge { get; }

    /// <summary>Upper bound of it; none where it is not known.</summary>
    public Pressure? MaximumTankGauge => double.IsNaN(_lift.Joined.MaximumGauge) ? null : Pressure.FromPascals(_lift.Joined.MaximumGauge);

    /// <summary>At the lift pump's inlet; none where its data does not cover the point.</summary>
    public Pressure? LiftInletGauge { get; }

    /// <summary>At the lift pump's outlet; none where its data does not cover the point.</summary>
    public Pressure? LiftOutletGauge { get; }

    /// <summary>Each lift pump where it runs; none where their data does not cover that.</summary>
    public IReadOnlyList<PumpResult> Pumps { get; }

    /// <summary>Each line and filter of the lift circuit, in the order of flow: suction line, lift line, overflow line.</summary>
    public IReadOnlyList<PathResult> Paths { get; }

    /// <summary>Lifted and drawn.</summary>
    /// <returns>For instance <c>150 L/h lifted, 90 L/h drawn: stays full, 60 L/h overflow</c>.</returns>
    public override string ToString() => (Lifted, NetDraw) is ({ } lifted, { } draw)
        ? $"{Readable.PumpFlow(lifted)} lifted, {Readable.PumpFlow(draw)} drawn: {(IsFull ? $"stays full, {Readable.PumpFlow(Overflow!.Value)} overflow" : "does not stay full")}"
        : "not known: pump data does not cover the point";

    private static VolumeFlow? Flow(double flow) => double.IsFinite(flow) ? VolumeFlow.FromCubicMetersPerSecond(flow) : null;
}
