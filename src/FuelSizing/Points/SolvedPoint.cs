using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>One operating point of a fuel system, solved: every number on the path from boost to duty cycle.</summary>
/// <remarks>
/// The circuit and the injection are computed once, when the point is solved, and so is the mixture where a check reads it; what else there is when it is first
/// asked for, once too, on any thread. A property only puts its unit to it.
/// </remarks>
public class SolvedPoint
{
    private readonly PointDemand _demand;
    private readonly SolvedCircuit _circuit;
    private readonly Injection _actual;
    private readonly Injection _judged;
    private readonly Asked _asked = new();

    private protected SolvedPoint(
        OperatingPoint point, SystemParts parts, in PointDemand demand, in SolvedCircuit circuit, (Injection Actual, Injection Judged) injection)
    {
        (Point, Parts) = (point, parts);
        (_demand, _circuit) = (demand, circuit);
        (_actual, _judged) = injection;
    }

    /// <summary>The parts of the system that was solved.</summary>
    public SystemParts Parts { get; }

    /// <summary>Where it was solved.</summary>
    public OperatingPoint Point { get; }

    /// <summary>Fuel demand, with every step from boost to fuel.</summary>
    public FuelDemand Demand => _asked.Fuel ?? Once(ref _asked.Fuel, _demand.Demand);

    /// <summary>Every pressure, flow, voltage and current of the circuit.</summary>
    public CircuitResult Circuit => _asked.Flows ?? Once(ref _asked.Flows, new(_circuit.Task, _circuit.State, _circuit.Pumps));

    /// <summary>Density of the fuel at its temperature.</summary>
    public Density FuelDensity => Density.FromKilogramsPerCubicMeter(_demand.Density);

    /// <summary>Fuel injected, by volume.</summary>
    public VolumeFlow InjectedFlow => VolumeFlow.FromCubicMetersPerSecond(_demand.Injected);

    /// <summary>Gauge pressure that the regulator asks for.</summary>
    public Pressure RailSetGauge => Pressure.FromPascals(_circuit.RailSet);

    /// <summary>Gauge pressure in the rail: as set, or lower where the pump cannot hold it.</summary>
    public Pressure RailGauge => Pressure.FromPascals(_circuit.Rail);

    /// <summary>What determines the rail pressure.</summary>
    public RailState RailState => _circuit.State.State;

    /// <summary>Across the injector: rail gauge + ambient − manifold absolute.</summary>
    public Pressure InjectorDifferential => Pressure.FromPascals(_actual.Differential);

    /// <summary>The least that is injected, as a share of the demand: without evaporation in the charge, where a share of it is stated.</summary>
    internal double MinimumInjectedShare => Engines.FuelDemand.ShareWithoutEvaporation(SolvedDemand.Chain, SolvedDemand.Basis);

    /// <summary>The same of what the main fuel's own evaporation adds, by which the mixture is judged.</summary>
    internal double MainInjectedShare => Engines.FuelDemand.ShareWithoutEvaporation(SolvedDemand.Alone.Chain, SolvedDemand.Basis);

    /// <summary>
    /// Static flow of one injector at that pressure on this fuel; none below the injector's <see cref="Injectors.Injector.MinimumDifferential"/>.
    /// </summary>
    public VolumeFlow? StaticFlow => double.IsNaN(_actual.StaticFlow) ? null : VolumeFlow.FromCubicMetersPerSecond(_actual.StaticFlow);

    /// <summary>Time between the starts of two injections.</summary>
    public Duration AvailableTime => Duration.FromSeconds(_actual.AvailableTime);

    /// <summary>Dead time; none where the table does not cover the point.</summary>
    public Duration? DeadTime => Seconds(_actual.DeadTime);

    /// <summary>Commanded pulse: dead time + fuel per pulse ÷ static flow; none where it cannot be said.</summary>
    public Duration? Pulse => Seconds(_actual.Pulse);

    /// <summary>Pulse ÷ available time, at full demand; none where it cannot be said.</summary>
    public Ratio? DutyCycle => _actual.DutyCycle is { } duty ? Ratio.FromDecimalFractions(duty) : null;

    /// <summary>
    /// The mixture that the engine gets from its controller, by the flow that is really injected. Pulse, duty cycle and flows beside it are
    /// those that the engine needs.
    /// </summary>
    public DeliveredMixture Mixture => Mixed.Delivered;

    /// <summary>
    /// The surge tank that the pumps draw from, and its lift circuit; none where they draw from the main tank. Other figures of this result are those with the surge
    /// tank at ambient pressure, as while it is not full; checks look at both.
    /// </summary>
    public SurgeTankResult? SurgeTank => _asked.SurgeTank ?? (_circuit.Lift is { } lift ? Once(ref _asked.SurgeTank, new(Parts.SurgeTank!, lift)) : null);

    /// <summary>
    /// The secondary set of injectors and its share of the fuel; none where one set injects all of it. Static flow, available time, dead time, pulse and
    /// duty cycle of this result are those of the primary set.
    /// </summary>
    public SecondaryInjection? SecondaryInjection =>
        _asked.Secondary ?? (_actual.Secondary is { } secondary ? Once(ref _asked.Secondary, new(Parts.StagedInjectors!, secondary)) : null);

    /// <summary>Fuel that the primary set injects, by volume: all of it where there is no secondary set; none where the split is not known.</summary>
    public VolumeFlow? PrimaryFlow => SecondaryInjection is null ? InjectedFlow
        : double.IsNaN(_actual.Injected) ? null
        : VolumeFlow.FromCubicMetersPerSecond(_actual.Injected);

    /// <summary>
    /// The second stream of fuel, and the mixture with it and without it; none where the system has none. <see cref="Mixture"/> is that of the main fuel alone.
    /// </summary>
    public SecondStreamResult? SecondStream => _demand.Stream is null ? null : Mixed.Stream;

    /// <summary>What the pumps deliver; none where their curves give no data.</summary>
    public VolumeFlow? PumpFlow => Circuit.PumpFlow;

    /// <summary>What goes back to the tank: delivered less injected; none where the pumps' curves give no data.</summary>
    public VolumeFlow? ReturnedFlow => Circuit.ReturnedFlow;

    /// <summary>Speed, boost and rail pressure.</summary>
    /// <returns>For instance <c>6,800 rev/min, 0.60 bar: rail 360 kPa</c>.</returns>
    public override string ToString() =>
        $"{Point}: rail {Readable.Of(RailGauge)}";

    /// <summary>What the engine asks for, in SI numbers.</summary>
    internal ref readonly PointDemand SolvedDemand => ref _demand;

    /// <summary>Pumps, lines and regulator, in SI numbers.</summary>
    internal ref readonly SolvedCircuit SolvedCircuit => ref _circuit;

    /// <summary>The mixture, in SI numbers.</summary>
    internal ref readonly SolvedMixture SolvedMixture => ref Mixed.Solved;

    /// <summary>Injection at the pressure in the rail.</summary>
    internal ref readonly Injection Actual => ref _actual;

    /// <summary>Injection at the pressure at which injectors are judged: as set where the rail sags, else as it is.</summary>
    internal ref readonly Injection Judged => ref _judged;

    private PointMixture Mixed => _asked.Mixture ?? Once(ref _asked.Mixture, new(Parts, _demand, _circuit, (_actual, _judged)));

    /// <summary>What is kept, or what was made now: threads that meet here make the same, and the first is kept.</summary>
    internal static T Once<T>(ref T? kept, T made)
        where T : class => Interlocked.CompareExchange(ref kept, made, null) ?? made;

    private static Duration? Seconds(double? seconds) => seconds is { } s ? Duration.FromSeconds(s) : null;

    // What has been asked for.
    private sealed class Asked
    {
        public PointMixture? Mixture;
        public FuelDemand? Fuel;
        public CircuitResult? Flows;
        public SecondaryInjection? Secondary;
        public SurgeTankResult? SurgeTank;
    }
}

/// <summary>The mixture of a solved point: in numbers, with the second stream that it may have, and with its causes when these are asked for.</summary>
internal sealed class PointMixture
{
    private readonly SystemParts _parts;
    private readonly PointDemand _demand;
    private readonly SolvedMixture _solved;
    private readonly SecondaryState? _secondary;
    private DeliveredMixture? _delivered;

    public PointMixture(SystemParts parts, in PointDemand demand, in SolvedCircuit circuit, (Injection Actual, Injection Judged) injection)
    {
        _parts = parts;
        _demand = parts.Controller.IsIdeal ? demand : demand.Alone;
        _solved = MixtureSolver.In(parts, demand, circuit, injection);
        _secondary = injection.Actual.Secondary;
        Stream = demand.Stream is { } stream ? new(parts, stream, _solved) : null;
    }

    /// <summary>In SI numbers.</summary>
    public ref readonly SolvedMixture Solved => ref _solved;

    /// <summary>The second stream, and the mixture with it; none where the system has none.</summary>
    public SecondStreamResult? Stream { get; }

    /// <summary>With units, and causes.</summary>
    public DeliveredMixture Delivered => _delivered ?? SolvedPoint.Once(ref _delivered, new(_parts, _demand, _solved, _secondary, Stream));
}
