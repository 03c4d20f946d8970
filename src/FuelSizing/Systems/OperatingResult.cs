using FuelSizing.Engines;
using UnitsNet;

namespace FuelSizing.Systems;

using Pressure = UnitsNet.Pressure;

/// <summary>One solved operating point: every intermediate, each margin, the part that limits.</summary>
public sealed record OperatingResult
{
    private readonly SolvedPoint _solved;

    internal OperatingResult(FuelSystem system, in SolvedPoint solved) => (System, _solved) = (system, solved);

    /// <summary>The system that was solved.</summary>
    public FuelSystem System { get; }

    /// <summary>Where it was solved.</summary>
    public OperatingPoint Point => Solved.Demand.Point;

    /// <summary>Fuel demand, with every step from boost to fuel.</summary>
    public FuelDemand Demand => Solved.Demand.Demand;

    /// <summary>Density of the fuel at its temperature.</summary>
    public Density FuelDensity => Density.FromKilogramsPerCubicMeter(Solved.Demand.Density);

    /// <summary>Fuel injected, by volume.</summary>
    public VolumeFlow InjectedFlow => VolumeFlow.FromCubicMetersPerSecond(Solved.Demand.Injected);

    /// <summary>Gauge pressure that the regulator asks for.</summary>
    public Pressure RailSetGauge => Pressure.FromPascals(Solved.Circuit.RailSet);

    /// <summary>Gauge pressure in the rail: as set, or lower where the pump cannot keep it.</summary>
    public Pressure RailGauge => Pressure.FromPascals(Solved.Circuit.Rail);

    /// <summary>Who governs the rail.</summary>
    public RailState RailState => Solved.Circuit.State.State;

    /// <summary>Across the injector: rail gauge + ambient − manifold absolute.</summary>
    public Pressure InjectorDifferential => Pressure.FromPascals(Solved.Actual.Differential);

    /// <summary>Static flow of one injector at that pressure on this fuel.</summary>
    public VolumeFlow StaticFlow => VolumeFlow.FromCubicMetersPerSecond(Solved.Actual.StaticFlow);

    /// <summary>Time between the starts of two injections.</summary>
    public Duration AvailableTime => Duration.FromSeconds(Solved.Actual.AvailableTime);

    /// <summary>Dead time; none where the table does not cover the point.</summary>
    public Duration? DeadTime => Seconds(Solved.Actual.DeadTime);

    /// <summary>Commanded pulse: dead time + fuel per pulse ÷ static flow; none where it cannot be said.</summary>
    public Duration? Pulse => Seconds(Solved.Actual.Pulse);

    /// <summary>Pulse ÷ available time, at full demand; none where it cannot be said.</summary>
    public Ratio? DutyCycle => Solved.Actual.DutyCycle is { } duty ? Ratio.FromDecimalFractions(duty) : null;

    /// <summary>What the pumps deliver; none where their curves say nothing.</summary>
    public VolumeFlow? PumpFlow => Flow(Solved.Circuit.State.PumpFlow);

    /// <summary>What goes back to the tank: delivered less injected; none where the pump's curve says nothing.</summary>
    public VolumeFlow? ReturnedFlow => Flow(Solved.Circuit.State.Returned);

    /// <summary>Every pressure, flow, voltage and current of the circuit.</summary>
    public CircuitResult Circuit => new(this);

    /// <summary>How each part stands.</summary>
    public IReadOnlyList<Margin> Margins => [.. Checks.Select(check => new Margin(this, check))];

    /// <summary>The part that limits here: a failing one before one that cannot be judged before the tightest.</summary>
    public Limit Limiting => new(new(this, Checks.Order(TightestFirst.Order).First()), Point);

    /// <summary>The worst outcome of all parts.</summary>
    public Outcome Outcome => Checks.Max(check => check.Outcome);

    /// <summary>How the result came about, line by line; reckoned when it is asked for.</summary>
    public Working Working => WorkingWriter.Of(this);

    /// <summary>What a careful reader should know about these numbers.</summary>
    public IReadOnlyList<string> Notes => [.. ResultNotes.Of(this).Select(note => note.Text)];

    internal ref readonly SolvedPoint Solved => ref _solved;

    /// <summary>How each part stands, in numbers.</summary>
    internal IReadOnlyList<Check> Checks
    {
        get
        {
            List<Check> checks = [];
            InjectorChecks.Add(checks, System, Solved.Demand.Injected, Solved.Judged);
            CircuitChecks.Add(checks, System, Solved.Demand, Solved.Circuit);
            return checks;
        }
    }

    internal double InjectedPerSecond => Solved.Demand.Injected;

    internal double? DeadTimeSeconds => Solved.Actual.DeadTime;

    internal double WantedPerSecond => Solved.Circuit.Wanted;

    internal double WantedRisePascals => CircuitSolver.RiseToDeliver(Solved.Circuit.Task, Solved.Circuit.Wanted);

    internal double MostAtSetPerSecond => Solved.Circuit.State.MostAtSet;

    internal IReadOnlyList<Pumps.PumpPoint> PumpPoints => Solved.Circuit.State.Pumps;

    private static Duration? Seconds(double? seconds) => seconds is { } s ? Duration.FromSeconds(s) : null;

    private static VolumeFlow? Flow(double? flow) =>
        flow is { } f ? VolumeFlow.FromCubicMetersPerSecond(f) : null;
}
