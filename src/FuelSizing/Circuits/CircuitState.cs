using FuelSizing.Numerics;
using FuelSizing.Pumps;

namespace FuelSizing.Circuits;

/// <summary>A solved circuit, in SI numbers; pressures are gauge.</summary>
/// <remarks>It keeps the pumps that run and describes each where it runs only when somebody asks, so that a solver allocates nothing.</remarks>
internal readonly record struct CircuitState
{
    /// <summary>A state whose figures are given one by one.</summary>
    public CircuitState()
    {
    }

    /// <summary>Who governs the rail.</summary>
    public required RailState State { get; init; }

    /// <summary>In the rail, Pa.</summary>
    public required double RailGauge { get; init; }

    /// <summary>At the pump's inlet, Pa.</summary>
    public required double InletGauge { get; init; }

    /// <summary>At the pump's outlet, Pa.</summary>
    public required double OutletGauge { get; init; }

    /// <summary>Return line inlet, Pa.</summary>
    public required double ReturnGauge { get; init; }

    /// <summary>Through the pump, m³/s, whether or not its data covers that.</summary>
    public required double Flow { get; init; }

    /// <summary>Back to the tank, m³/s, whether or not the pump's data covers that.</summary>
    public required double ReturnFlow { get; init; }

    /// <summary>Voltage that the pumps' wiring is fed with, V: the supply's, or less where a controller slows the pump.</summary>
    public required double FedVoltage { get; init; }

    /// <summary>The pumps at that voltage.</summary>
    public required RunningPumps Running { get; init; }

    /// <summary>What the regulator holds at the returned flow, gauge, Pa, whatever the return line holds; not a number where it holds its set pressure at any flow.</summary>
    public double Held { get; init; } = double.NaN;

    /// <summary>The least that the pumps deliver with the rail at its set pressure, m³/s.</summary>
    public double MinimumAtSet { get; init; }

    /// <summary>The most that the pumps may deliver with the rail at its set pressure, m³/s: the same where data covers it.</summary>
    public double MaximumAtSet { get; init; }

    /// <summary>True if it was found by tangents, by which its pumps are described then.</summary>
    public bool IsByTangents { get; init; }

    /// <summary>Through the pump, m³/s; null where its data says nothing.</summary>
    public double? PumpFlow => State == RailState.NotCovered ? null : Flow;

    /// <summary>Back to the tank, m³/s; null where the pump's data says nothing.</summary>
    public double? Returned => State == RailState.NotCovered ? null : ReturnFlow;

    /// <summary>Each pump where it runs.</summary>
    public IReadOnlyList<PumpPoint> Pumps
    {
        get
        {
            List<PumpPoint> points = new(1);
            Describe(points);
            return points;
        }
    }

    /// <summary>Adds each pump where it runs.</summary>
    /// <param name="points">To add to.</param>
    public void Describe(List<PumpPoint> points)
    {
        double rise = OwnRise;
        if (!(IsByTangents && Running.TryDescribe(Flow, rise, points)))
        {
            Running.Describe(Flow, rise, points);
        }
    }

    /// <summary>Every pump, and every branch with lines of its own before its pumps, with the pressures before and behind it.</summary>
    public IReadOnlyList<PumpPlace> Places
    {
        get
        {
            List<PumpPlace> places = [];
            Running.Walk(Flow, OwnRise, InletGauge, OutletGauge, places);
            return places;
        }
    }

    /// <summary>Lowest pressure at a pump's inlet and highest at a pump's outlet, gauge, Pa: the circuit's own where no pump has lines of its own.</summary>
    public (double Inlet, double Outlet) AtPumps => Running.HasOwnLines
        ? PumpEnds.Of(Places, InletGauge, OutletGauge)
        : (InletGauge, OutletGauge);

    /// <summary>How far the pumps' flow at the pressures found is off the flow found, as a share of it.</summary>
    public double Residual
    {
        get
        {
            // Where nothing holds the pumps back, their flow is what it is.
            if (Flow >= Running.FreeFlow)
            {
                return 0;
            }

            // A hair to either side, since the pumps' curve may be upright there; wider than the one by which a table's end is widened.
            const double Beside = 2 * Curve.EndTolerance;
            double rise = Rise;
            double off = Math.Max(
                Running.FlowNear(rise * (1 + Beside), Flow) - Flow, Flow - Running.FlowNear(rise * (1 - Beside), Flow));
            return off > 0 ? off / Flow : 0;
        }
    }

    /// <summary>True if every number is the same; the pumps that run follow from the system's and the voltage they are fed with.</summary>
    public bool Equals(CircuitState other) => Numbers == other.Numbers;

    /// <inheritdoc/>
    public override int GetHashCode() => Numbers.GetHashCode();

    private (RailState State, double Rail, double Inlet, double Outlet, double Flow, double Returned, double Way, double Fed, double Minimum, double Maximum) Numbers =>
        (State, RailGauge, InletGauge, OutletGauge, Flow, ReturnFlow, ReturnGauge, FedVoltage, MinimumAtSet, MaximumAtSet);

    /// <summary>In the rail, Pa; that of a regulator at its set pressure where the pumps' data does not cover the point.</summary>
    /// <param name="set">The rail with the regulator at its set pressure, Pa.</param>
    public double RailOr(double set) => State == RailState.NotCovered ? set : RailGauge;

    /// <summary>Rise over all pumps together, Pa.</summary>
    public double PumpRise => OutletGauge - InletGauge;

    private double Rise => Math.Max(0, PumpRise);

    /// <summary>The pumps' rise by their own curve where they are at an end of it, Pa.</summary>
    private double OwnRise => Flow > 0 && Flow < Running.FreeFlow ? Rise : Running.RiseAt(Flow);

    /// <summary>What the pumps' data lacks at this state.</summary>
    /// <param name="ends">True if it matters where curves end.</param>
    public PumpCoverage Uncovered(bool ends) =>
        Running.IsFullyCovered(ends) ? PumpCoverage.Measured
            : (IsByTangents ? Running.UncoveredByTangents(Flow, OwnRise, ends) : null) ?? Running.UncoveredAt(Flow, OwnRise, ends);
}

/// <summary>Who governs the pressure in the rail.</summary>
public enum RailState
{
    /// <summary>Not known: the pump's data does not cover the point. Figures are those of the regulator's set pressure.</summary>
    NotCovered,

    /// <summary>The regulator: surplus fuel passes it.</summary>
    Regulated,

    /// <summary>The regulator barely: the returned flow is under the least at which it governs.</summary>
    AtRegulatorLimit,

    /// <summary>The return line: it passes the surplus only at a higher pressure than the regulator asks for.</summary>
    ReturnFloor,

    /// <summary>The pump at its lowest speed: an electronic returnless system cannot slow it further.</summary>
    PumpFloor,

    /// <summary>The pump: the regulator is shut and the pressure has fallen to where the pump meets the demand.</summary>
    Sagging,

    /// <summary>Nobody: the pump cannot bring the demand to the rail even against no pressure. The flows are what still gets there.</summary>
    Starved,
}

/// <summary>Pressures at the ends of pumps that have lines of their own.</summary>
internal static class PumpEnds
{
    /// <summary>Lowest pressure at a running pump's inlet and highest at a pump's outlet, gauge, Pa.</summary>
    /// <param name="places">Pumps and branches.</param>
    /// <param name="inlet">Before all of them, where none runs.</param>
    /// <param name="outlet">Behind all of them: the joint has no less.</param>
    public static (double Inlet, double Outlet) Of(IReadOnlyList<PumpPlace> places, double inlet, double outlet)
    {
        double lowest = double.PositiveInfinity;
        double highest = outlet;
        foreach (PumpPlace place in places)
        {
            if (place.Element is not (RunningBranch or StoppedPump))
            {
                (lowest, highest) = (Math.Min(lowest, place.Inlet), Math.Max(highest, place.Outlet));
            }
        }

        return (double.IsFinite(lowest) ? lowest : inlet, highest);
    }
}
