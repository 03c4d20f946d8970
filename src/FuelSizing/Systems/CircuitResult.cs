using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Every pressure, flow, voltage and current of the circuit at one operating point.</summary>
/// <remarks>Pressures are gauge: over the outside air, which the tank breathes.</remarks>
public sealed record CircuitResult
{
    // No pump or line of a vehicle passes more.
    private static readonly VolumeFlow MaximumFlow = VolumeFlow.FromLitersPerHour(10_000);

    private readonly CircuitState _state;
    private readonly CircuitTask _task;

    internal CircuitResult(OperatingResult result)
    {
        SolvedCircuit circuit = result.Solved.Circuit;
        (_state, _task) = (circuit.State, circuit.Task);
        (InjectedFlow, PumpFlow, ReturnedFlow) = (result.InjectedFlow, result.PumpFlow, result.ReturnedFlow);
        RailGauge = result.RailGauge;
        (Pumps, Paths) = ([], []);
        if (_state.State == RailState.NotCovered)
        {
            return;
        }

        Pumps = [.. _state.Pumps.Select(point => new PumpResult(point, _state.FedVoltage))];
        Paths = [.. _task.Flows(_state).Select(way => new PathResult(way.Part, way.Flow, _task.Density, _task.KinematicViscosity))];
    }

    /// <summary>Into the engine.</summary>
    public VolumeFlow InjectedFlow { get; }

    /// <summary>Through the pumps; none where their data says nothing.</summary>
    public VolumeFlow? PumpFlow { get; }

    /// <summary>Back to the tank; none where the pumps' data says nothing.</summary>
    public VolumeFlow? ReturnedFlow { get; }

    /// <summary>At the pump's inlet; none where the pumps' data says nothing.</summary>
    public Pressure? InletGauge => Known(_state.InletGauge);

    /// <summary>At the pump's outlet; none where the pumps' data says nothing.</summary>
    public Pressure? OutletGauge => Known(_state.OutletGauge);

    /// <summary>In the rail.</summary>
    public Pressure RailGauge { get; }

    /// <summary>
    /// Where the way back to the tank begins: what it takes to pass the returned flow; none where the pumps' data says nothing.
    /// </summary>
    public Pressure? ReturnGauge => Known(_state.ReturnGauge);

    /// <summary>
    /// How far the solution is off: flow of the pumps at the pressures found against the flow found, as a share of it. The
    /// other laws (flows in and out of each node, pressures round each loop) hold by the way the result is put together.
    /// </summary>
    public Ratio Residual => Ratio.FromDecimalFractions(_state.Residual);

    /// <summary>Each pump where it runs; none where their data says nothing.</summary>
    public IReadOnlyList<PumpResult> Pumps { get; }

    /// <summary>
    /// Each line and filter, in the order of flow: to the pump, to the rail, back; none where the pumps' data says nothing.
    /// </summary>
    public IReadOnlyList<PathResult> Paths { get; }

    /// <summary>
    /// Heat that the pumps leave in the fuel of the tank: electrical power less the work on the injected fuel. None where a
    /// pump's current is not known.
    /// </summary>
    public Power? HeatToTank
    {
        get
        {
            if (Pumps.Count == 0)
            {
                return null;
            }

            Real electrical = 0;
            foreach (PumpResult pump in Pumps)
            {
                if (pump.ElectricalWatts is not { } watts)
                {
                    return null;
                }

                electrical += watts;
            }

            // Over all pumps together: in parallel they share the injected fuel.
            return Power.FromWatts(PumpHeat.ToTank<Real>(
                electrical, _state.PumpRise, InjectedFlow.CubicMetersPerSecond).Value);
        }
    }

    /// <summary>The most flow through the pumps at which every filter's loss is known; 10,000 L/h without filters.</summary>
    public VolumeFlow MaximumKnownFlow => new IEnumerable<VolumeFlow>[]
    {
        [MaximumFlow],
        _task.Plumbing.Suction.Concat(_task.Plumbing.Supply).OfType<Filter>().Select(filter => filter.MaximumFlow),
        _task.Plumbing.Back.OfType<Filter>().Select(filter => filter.MaximumFlow + InjectedFlow),
    }.SelectMany(flows => flows).Min();

    /// <summary>
    /// The system curve: pressure rise that the circuit asks of the pumps to pass a flow, at this point's injected flow and
    /// set pressure: losses up to the regulator + the higher of its set pressure and what the way back takes.
    /// </summary>
    /// <param name="flow">Through the pumps, 0 to <see cref="MaximumKnownFlow"/>.</param>
    /// <returns>The pressure rise.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is outside its range.</exception>
    public Pressure PressureAsked(VolumeFlow flow) =>
        Pressure.FromPascals(CircuitSolver.Asked(
            _task,
            Guard.Between(
                flow,
                VolumeFlow.Zero,
                MaximumKnownFlow,
                "A filter's loss is known no further than three times its rated flow.",
                nameof(flow)).CubicMetersPerSecond));

    private Pressure? Known(double pascals) =>
        _state.State == RailState.NotCovered ? null : Pressure.FromPascals(pascals);
}
