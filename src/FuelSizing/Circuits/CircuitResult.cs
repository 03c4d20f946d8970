using FuelSizing.Equations;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Circuits;

/// <summary>Every pressure, flow, voltage and current of the circuit at one operating point.</summary>
/// <remarks>Pressures are gauge: over the ambient pressure, to which the tank is vented.</remarks>
public sealed class CircuitResult
{
    // No pump or line of a vehicle passes more.
    private static readonly VolumeFlow MaximumFlow = VolumeFlow.FromLitersPerHour(10_000);

    private readonly CircuitState _state;
    private readonly CircuitTask _task;

    internal CircuitResult(in CircuitTask task, in CircuitState state, PumpPoint[] pumps)
    {
        (_task, _state) = (task, state);
        (Pumps, Paths, Branches) = ([], [], []);
        MaximumKnownFlow = VolumeFlow.FromCubicMetersPerSecond(
            Math.Min(MaximumFlow.CubicMetersPerSecond, task.Plumbing.MaximumKnownFlow(task.Injected)));
        if (state.State == RailState.NotCovered)
        {
            return;
        }

        Pumps = Array.AsReadOnly(Array.ConvertAll(pumps, pump => new PumpResult(pump)));
        Paths = PathResult.Of(task, state);
        Branches = task.Pump.HasOwnLines ? BranchResult.Of(task, state) : [];
        HeatToTank = Heat();
    }

    /// <summary>What the engine asks for.</summary>
    public VolumeFlow InjectedFlow => VolumeFlow.FromCubicMetersPerSecond(_task.Injected);

    /// <summary>Through the pumps; none where their data does not cover the point.</summary>
    public VolumeFlow? PumpFlow => Flow(_state.PumpFlow);

    /// <summary>
    /// What reaches the injectors: pump flow less returned flow. The injected flow, or less where the rail is starved; none where the pumps' data
    /// does not cover the point.
    /// </summary>
    public VolumeFlow? DeliveredFlow => Flow(_state.PumpFlow - _state.Returned);

    /// <summary>Back to the tank; none where the pumps' data does not cover the point.</summary>
    public VolumeFlow? ReturnedFlow => Flow(_state.Returned);

    /// <summary>At the pump's inlet, or where the suction lines of <see cref="Branches"/> begin; none where the pumps' data does not cover the point.</summary>
    public Pressure? InletGauge => Known(_state.InletGauge);

    /// <summary>At the pump's outlet, or at the joint where <see cref="Branches"/> end; none where the pumps' data does not cover the point.</summary>
    public Pressure? OutletGauge => Known(_state.OutletGauge);

    /// <summary>In the rail.</summary>
    public Pressure RailGauge => Pressure.FromPascals(_state.RailOr(_task.RailAsSet));

    /// <summary>
    /// Where the return line begins: the pressure at which it passes the returned flow; none where the pumps' data does not cover the point.
    /// </summary>
    public Pressure? ReturnGauge => Known(_state.ReturnGauge);

    /// <summary>
    /// How far the solution is off: flow of the pumps at the pressures found against the flow found, as a share of it. The
    /// other laws (flows in and out of each node, pressures round each loop) hold by the way the result is put together.
    /// </summary>
    /// <returns>A share of the flow found. The pumps are asked for it once more, so it is a method.</returns>
    public Ratio Residual() => Ratio.FromDecimalFractions(_state.Residual);

    /// <summary>Each pump where it runs; none where their data does not cover the point.</summary>
    public IReadOnlyList<PumpResult> Pumps { get; }

    /// <summary>
    /// Each line and filter that the pumps share, in the order of flow: suction, what leads to a regulator before the rail, supply, return; none where the pumps' data
    /// does not cover the point.
    /// </summary>
    public IReadOnlyList<PathResult> Paths { get; }

    /// <summary>Each branch with lines of its own (<see cref="PumpBranch"/>); none where the pumps' data does not cover the point.</summary>
    public IReadOnlyList<BranchResult> Branches { get; }

    /// <summary>
    /// Heat that comes back to the tank: the pumps' electrical power times the share of their flow that returns; none comes back where nothing
    /// returns. Heat that the fuel picks up at the engine is not in it. None where a pump's current is not known.
    /// </summary>
    public Power? HeatToTank { get; }

    /// <summary>Maximum flow through the pumps at which every filter's loss is known; 10,000 L/h without filters.</summary>
    public VolumeFlow MaximumKnownFlow { get; }

    /// <summary>
    /// The system curve: pressure rise that the circuit asks of the pumps to pass a flow, at this point's injected flow and
    /// set pressure: losses up to the regulator + the higher of its set pressure and the pressure that the return line takes.
    /// </summary>
    /// <param name="flow">Through the pumps, 0 to <see cref="MaximumKnownFlow"/>.</param>
    /// <returns>The pressure rise.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is outside its range.</exception>
    public Pressure PressureAsked(VolumeFlow flow) =>
        Pressure.FromPascals(_task.RiseToPass(
            Guard.Between(
                flow,
                VolumeFlow.Zero,
                MaximumKnownFlow,
                "A filter's loss is known no further than three times its rated flow.",
                nameof(flow)).CubicMetersPerSecond));

    /// <summary>Flow and pressure in the rail.</summary>
    /// <returns>For instance <c>54 L/h injected, rail 360 kPa</c>.</returns>
    public override string ToString() =>
        $"{Readable.PumpFlow(InjectedFlow)} injected, rail {Readable.Of(RailGauge)}";

    private Power? Heat()
    {
        Real electrical = 0;
        foreach (PumpResult pump in Pumps)
        {
            if (pump.ElectricalWatts is not { } watts)
            {
                return null;
            }

            electrical += watts;
        }

        // Over all pumps together: in parallel they share what returns.
        return _state.Flow > 0 ? Power.FromWatts(PumpHeat.ToTank<Real>(electrical, _state.ReturnFlow, _state.Flow).Value) : null;
    }

    private static VolumeFlow? Flow(double? flow) => flow is { } f ? VolumeFlow.FromCubicMetersPerSecond(f) : null;

    private Pressure? Known(double pascals) =>
        _state.State == RailState.NotCovered ? null : Pressure.FromPascals(pascals);
}

/// <summary>One line or filter at its flow.</summary>
public sealed class PathResult
{
    /// <summary>Every line and filter of a solved circuit, in the order of flow.</summary>
    internal static IReadOnlyList<PathResult> Of(CircuitTask task, in CircuitState state) =>
        Array.AsReadOnly(task.Flows(state)
            .Select(path => new PathResult(path.Part, path.Flow, task.Density, task.KinematicViscosity))
            .ToArray());

    internal PathResult(IFlowLoss part, double flow, double density, double kinematicViscosity)
    {
        Name = part.Name;
        Flow = VolumeFlow.FromCubicMetersPerSecond(flow);
        Real loss = part.LossPascals(flow, density, kinematicViscosity);
        PressureLoss = Pressure.FromPascals((loss + part.ElevationPascals(density)).Value);
    }

    /// <summary>The part's name.</summary>
    public string Name { get; }

    /// <summary>Flow through it.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Pressure lost in it, height included.</summary>
    public Pressure PressureLoss { get; }

    /// <summary>Name, flow and pressure loss.</summary>
    /// <returns>For instance <c>filter: 4.2 kPa at 63 L/h</c>.</returns>
    public override string ToString() =>
        $"{Name}: {Readable.PressureLoss(PressureLoss)} at {Readable.PumpFlow(Flow)}";
}

/// <summary>One branch with lines of its own, where it runs.</summary>
public sealed class BranchResult
{
    private BranchResult(CircuitTask task, in PumpPlace place, double inlet, double outlet)
    {
        Branch = ((RunningBranch)place.Element).Branch;
        double own = place.Flow;
        PathResult Part(IFlowLoss part) => new(part, own, task.Density, task.KinematicViscosity);
        Flow = VolumeFlow.FromCubicMetersPerSecond(own);
        Suction = Array.AsReadOnly(Branch.Suction.Select(Part).ToArray());
        Discharge = own > 0 ? Array.AsReadOnly(Branch.Discharge.Select(Part).ToArray()) : [];
        (InletGauge, OutletGauge) = (Pressure.FromPascals(inlet), Pressure.FromPascals(outlet));
        JointGauge = Pressure.FromPascals(place.Outlet);
    }

    /// <summary>Which.</summary>
    public PumpBranch Branch { get; }

    /// <summary>Flow through it; none where it is shut: its pumps are off, or do not lift its check valve against the others.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Lowest pressure at the inlet of its pumps, behind its own suction.</summary>
    public Pressure InletGauge { get; }

    /// <summary>Highest pressure at the outlet of its pumps, before its own discharge: against a shut valve all that they give.</summary>
    public Pressure OutletGauge { get; }

    /// <summary>At the joint with the other branches.</summary>
    public Pressure JointGauge { get; }

    /// <summary>Its parts before its pumps.</summary>
    public IReadOnlyList<PathResult> Suction { get; }

    /// <summary>Its parts behind its pumps; none where it is shut.</summary>
    public IReadOnlyList<PathResult> Discharge { get; }

    /// <summary>True where nothing flows through it.</summary>
    public bool IsShut => Flow <= VolumeFlow.Zero;

    /// <summary>Name, flow and pressures.</summary>
    /// <returns>For instance <c>pump R: 96 L/h, 342 kPa at the pump, 330 kPa at the joint</c>.</returns>
    public override string ToString() => IsShut
        ? $"{Branch.Name}: shut, {Readable.Of(OutletGauge)} at the pump, {Readable.Of(JointGauge)} at the joint"
        : $"{Branch.Name}: {Readable.PumpFlow(Flow)}, {Readable.Of(OutletGauge)} at the pump, {Readable.Of(JointGauge)} at the joint";

    /// <summary>Every branch of a solved circuit.</summary>
    internal static IReadOnlyList<BranchResult> Of(in CircuitTask task, in CircuitState state)
    {
        IReadOnlyList<PumpPlace> places = state.Places;
        List<BranchResult> branches = [];
        for (int at = 0; at < places.Count; at++)
        {
            if (places[at].Element is RunningBranch branch)
            {
                // Behind a branch come its pumps, and branches within it.
                PumpPlace[] inside = [.. places.Skip(at + 1).Where(place => place.Element is not RunningBranch).Take(branch.Branch.Pumps.Count)];
                (double inlet, double outlet) = PumpEnds.Of(inside, places[at].Inlet, inside.Max(place => place.Outlet));
                branches.Add(new(task, places[at], inlet, outlet));
            }
        }

        return branches.AsReadOnly();
    }
}

/// <summary>One pump where it runs.</summary>
public sealed class PumpResult
{
    private readonly PumpPoint _point;

    internal PumpResult(in PumpPoint point) => _point = point;

    /// <summary>Which pump.</summary>
    public Pump Pump => _point.Pump;

    /// <summary>Flow through it.</summary>
    public VolumeFlow Flow => VolumeFlow.FromCubicMetersPerSecond(_point.Flow);

    /// <summary>Pressure that it adds.</summary>
    public Pressure PressureRise => Pressure.FromPascals(_point.Rise);

    /// <summary>False where it is switched off.</summary>
    public bool IsRunning => !_point.IsStopped;

    /// <summary>Voltage at its motor.</summary>
    public ElectricPotential Voltage => ElectricPotential.FromVolts(_point.Voltage);

    /// <summary>Voltage that its feed, or its own part of it, is given: the supply's, that at the splice, a share or what a resistor leaves of it where it runs slowly, none where it is off.</summary>
    public ElectricPotential SourceVoltage => ElectricPotential.FromVolts(_point.Given);

    /// <summary>Voltage lost in the part of its feed that it shares with other pumps; zero where it shares none, or is off.</summary>
    public ElectricPotential SharedDrop => ElectricPotential.FromVolts(_point.SharedDrop);

    /// <summary>Voltage lost in its feed, the shared part included.</summary>
    public ElectricPotential FeedDrop => ElectricPotential.FromVolts(_point.FeedDrop);

    /// <summary>Current that it draws; none where it was not measured.</summary>
    public ElectricCurrent? Current => _point.Current is { } amperes ? ElectricCurrent.FromAmperes(amperes) : null;

    /// <summary>
    /// Current in its feed: the same, or what its converter draws for it; none where it was not measured.
    /// </summary>
    public ElectricCurrent? FeedCurrent => _point.FeedCurrent is { } amperes ? ElectricCurrent.FromAmperes(amperes) : null;

    /// <summary>True if its curve was carried to this voltage by the affinity laws.</summary>
    public bool IsEstimate => _point.Coverage.HasFlag(PumpCoverage.Scaled);

    /// <summary>Name, flow, pressure rise and voltage.</summary>
    /// <returns>For instance <c>pump R: 190 L/h against 330 kPa at 13.5 V</c>.</returns>
    public override string ToString() => IsRunning
        ? $"{Pump.Name}: {Readable.PumpFlow(Flow)} against {Readable.Of(PressureRise)} at {Readable.Of(Voltage)}"
        : $"{Pump.Name}: off";

    internal double? ElectricalWatts =>
        _point.Current is { } amperes ? PumpHeat.Electrical<Real>(_point.Voltage, amperes) : null;
}
