using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>One solved operating point: every intermediate, each margin, the part that limits.</summary>
public sealed record OperatingResult
{
    // Plain numbers, all in this one object; what has a type of its own is made when it is asked for.
    private readonly PointDemand _demand;
    private readonly double _set;
    private readonly CircuitState _state;
    private readonly Injection _actual;

    internal OperatingResult(
        FuelSystem system, in PointDemand demand, double set, in CircuitState state, in Injection actual)
    {
        System = system;
        _demand = demand;
        _set = set;
        _state = state;
        _actual = actual;
    }

    /// <summary>The system that was solved.</summary>
    public FuelSystem System { get; }

    /// <summary>Where it was solved.</summary>
    public OperatingPoint Point => _demand.Point;

    /// <summary>Fuel demand, with every step from boost to fuel.</summary>
    public FuelDemand Demand => _demand.Demand;

    /// <summary>Density of the fuel at its temperature.</summary>
    public Density FuelDensity => Density.FromKilogramsPerCubicMeter(_demand.Density);

    /// <summary>Fuel injected, by volume.</summary>
    public VolumeFlow InjectedFlow => VolumeFlow.FromCubicMetersPerSecond(_demand.Injected);

    /// <summary>Gauge pressure that the regulator asks for.</summary>
    public Pressure RailSetGauge => Pressure.FromPascals(_set);

    /// <summary>Gauge pressure in the rail: as set, or lower where the pump cannot keep it.</summary>
    public Pressure RailGauge => Pressure.FromPascals(RailPascals);

    /// <summary>Who governs the rail.</summary>
    public RailState RailState => _state.State;

    /// <summary>Across the injector: rail gauge + ambient − manifold absolute.</summary>
    public Pressure InjectorDifferential => Pressure.FromPascals(_actual.Differential);

    /// <summary>Static flow of one injector at that pressure on this fuel.</summary>
    public VolumeFlow StaticFlow => VolumeFlow.FromCubicMetersPerSecond(_actual.StaticFlow);

    /// <summary>Time between the starts of two injections.</summary>
    public Duration AvailableTime => Duration.FromSeconds(_actual.AvailableTime);

    /// <summary>Dead time; none where the table does not cover the point.</summary>
    public Duration? DeadTime => Seconds(_actual.DeadTime);

    /// <summary>Commanded pulse: dead time + fuel per pulse ÷ static flow; none where it cannot be said.</summary>
    public Duration? Pulse => Seconds(_actual.Pulse);

    /// <summary>Pulse ÷ available time, at full demand; none where it cannot be said.</summary>
    public Ratio? DutyCycle => _actual.DutyCycle is { } duty ? Ratio.FromDecimalFractions(duty) : null;

    /// <summary>What the pumps deliver; none where their curves say nothing.</summary>
    public VolumeFlow? PumpFlow => Flow(_state.PumpFlow);

    /// <summary>What goes back to the tank: delivered less injected; none where the pump's curve says nothing.</summary>
    public VolumeFlow? ReturnedFlow => Flow(_state.Returned);

    /// <summary>Every pressure, flow, voltage and current of the circuit.</summary>
    public CircuitResult Circuit => new(this);

    /// <summary>How each part stands.</summary>
    public IReadOnlyList<Margin> Margins => [.. Checks.Select(check => new Margin(this, check))];

    /// <summary>The part that limits here: a failing one before one that cannot be judged before the tightest.</summary>
    public Limit Limiting => new(new(this, Checks.Min(TightestFirst.Order)), Point);

    /// <summary>The worst outcome of all parts.</summary>
    public Outcome Outcome => Checks.Max(check => check.Outcome);

    /// <summary>How the result came about, line by line; reckoned when it is asked for.</summary>
    public Working Working => WorkingWriter.Of(this);

    /// <summary>What a careful reader should know about these numbers.</summary>
    public IReadOnlyList<string> Notes => [.. ResultNotes.Of(this).Select(note => note.Text)];

    /// <summary>Everything in SI numbers.</summary>
    internal SolvedPoint Solved
    {
        get
        {
            SolvedCircuit circuit = System.CircuitOf(_demand, _state);
            return new(_demand, circuit, _actual, System.Judged(_demand, circuit, _actual));
        }
    }

    internal double RailPascals => _state.RailOr(_set);

    /// <summary>How each part stands, in numbers.</summary>
    internal IReadOnlyList<Check> Checks
    {
        get
        {
            SolvedPoint solved = Solved;
            List<Check> checks = [];
            InjectorChecks.Add(checks, System, _demand.Injected, solved.Judged);
            CircuitChecks.Add(checks, System, _demand, solved.Circuit);
            return checks;
        }
    }

    internal double InjectedPerSecond => _demand.Injected;

    internal double? DeadTimeSeconds => _actual.DeadTime;

    internal double WantedPerSecond => System.WantedAt(_demand);

    internal double WantedRisePascals => CircuitSolver.RiseToDeliver(System.TaskAt(_demand), WantedPerSecond);

    internal double MaximumAtSetPerSecond => _state.MaximumAtSet;

    internal IReadOnlyList<Pumps.PumpPoint> PumpPoints => _state.Pumps;

    private static Duration? Seconds(double? seconds) => seconds is { } s ? Duration.FromSeconds(s) : null;

    private static VolumeFlow? Flow(double? flow) =>
        flow is { } f ? VolumeFlow.FromCubicMetersPerSecond(f) : null;
}
