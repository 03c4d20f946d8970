using FuelSizing.Engines;
using UnitsNet;

namespace FuelSizing.Systems;

using Pressure = UnitsNet.Pressure;

/// <summary>One solved operating point: every intermediate, each margin, the part that limits.</summary>
public sealed record OperatingResult
{
    private readonly SolvedPoint _solved;

    internal OperatingResult(FuelSystem system, OperatingPoint point, FuelDemand demand, in SolvedPoint solved) =>
        (System, Point, Demand, _solved) = (system, point, demand, solved);

    /// <summary>The system that was solved.</summary>
    public FuelSystem System { get; }

    /// <summary>Where it was solved.</summary>
    public OperatingPoint Point { get; }

    /// <summary>Fuel demand, with every step from boost to fuel.</summary>
    public FuelDemand Demand { get; }

    /// <summary>Density of the fuel at its temperature.</summary>
    public Density FuelDensity => Density.FromKilogramsPerCubicMeter(_solved.FuelDensity);

    /// <summary>Fuel injected, by volume.</summary>
    public VolumeFlow InjectedFlow => VolumeFlow.FromCubicMetersPerSecond(_solved.Injected);

    /// <summary>Gauge pressure that the regulator asks for.</summary>
    public Pressure RailSetGauge => Pressure.FromPascals(_solved.RailSet);

    /// <summary>Gauge pressure in the rail: as set, or lower where the pump cannot keep it.</summary>
    public Pressure RailGauge => Pressure.FromPascals(_solved.Rail);

    /// <summary>Who governs the rail.</summary>
    public RailState RailState => _solved.Circuit.State;

    /// <summary>Across the injector: rail gauge + ambient − manifold absolute.</summary>
    public Pressure InjectorDifferential => Pressure.FromPascals(_solved.Actual.Differential);

    /// <summary>Static flow of one injector at that pressure on this fuel.</summary>
    public VolumeFlow StaticFlow => VolumeFlow.FromCubicMetersPerSecond(_solved.Actual.StaticFlow);

    /// <summary>Time between the starts of two injections.</summary>
    public Duration AvailableTime => Duration.FromSeconds(_solved.Actual.AvailableTime);

    /// <summary>Dead time; none where the table does not cover the point.</summary>
    public Duration? DeadTime => Seconds(_solved.Actual.DeadTime);

    /// <summary>Commanded pulse: dead time + fuel per pulse ÷ static flow; none where it cannot be said.</summary>
    public Duration? Pulse => Seconds(_solved.Actual.Pulse);

    /// <summary>Pulse ÷ available time, at full demand; none where it cannot be said.</summary>
    public Ratio? DutyCycle => _solved.Actual.DutyCycle is { } duty ? Ratio.FromDecimalFractions(duty) : null;

    /// <summary>What the pumps deliver; none where their curves say nothing.</summary>
    public VolumeFlow? PumpFlow => Flow(_solved.Circuit.PumpFlow);

    /// <summary>What goes back to the tank: delivered less injected; none where the pump's curve says nothing.</summary>
    public VolumeFlow? ReturnedFlow => Flow(_solved.Circuit.Returned);

    /// <summary>Every pressure, flow, voltage and current of the circuit.</summary>
    public CircuitResult Circuit => new(this, _solved);

    /// <summary>How each part stands.</summary>
    public IReadOnlyList<Margin> Margins => MarginChecks.Of(System, Point, _solved);

    /// <summary>The part that limits here: a failing one before one that cannot be judged before the tightest.</summary>
    public Limit Limiting => new(Margins.OrderBy(m => m, TightestFirst.Order).First(), Point);

    /// <summary>The worst outcome of all parts.</summary>
    public Outcome Outcome => Margins.Max(margin => margin.Outcome);

    /// <summary>What a careful reader should know about these numbers.</summary>
    public IReadOnlyList<string> Notes => [.. ResultNotes.Of(this).Select(note => note.Text)];

    internal double InjectedPerSecond => _solved.Injected;

    internal double? DeadTimeSeconds => _solved.Actual.DeadTime;

    internal double WantedPerSecond => _solved.Wanted;

    internal double WantedRisePascals => CircuitSolver.RiseToDeliver(_solved.Task, _solved.Wanted);

    internal double MostAtSetPerSecond => _solved.Circuit.MostAtSet;

    internal IReadOnlyList<Pumps.PumpPoint> PumpPoints => _solved.Circuit.Pumps;

    private static Duration? Seconds(double? seconds) => seconds is { } s ? Duration.FromSeconds(s) : null;

    private static VolumeFlow? Flow(double? flow) =>
        flow is { } f ? VolumeFlow.FromCubicMetersPerSecond(f) : null;
}
