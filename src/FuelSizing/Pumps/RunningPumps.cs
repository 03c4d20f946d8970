using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Pumps;

/// <summary>Pumps fed with one voltage: flow against pressure rise, and back, in SI numbers.</summary>
/// <remarks>
/// What depends on the voltage alone is worked out once, so that a solver may ask for flow and rise many times. Flow never
/// grows with rise, nor rise with flow.
/// </remarks>
internal abstract class RunningPumps
{
    /// <summary>The most that passes, m³/s: against no pressure rise.</summary>
    public abstract double FreeFlow { get; }

    /// <summary>The rise at which nothing passes any more, Pa.</summary>
    public abstract double Deadhead { get; }

    /// <summary>Delivered flow at a rise, m³/s.</summary>
    /// <param name="rise">Pa, not negative.</param>
    public abstract double FlowAt(double rise);

    /// <summary>Pressure rise at a flow, Pa; zero from the free flow on.</summary>
    /// <param name="flow">m³/s, not negative.</param>
    public abstract double RiseAt(double flow);

    /// <summary>Delivered flow at a rise, as <see cref="FlowAt"/>, where it is known to be near another, m³/s.</summary>
    /// <param name="rise">Pa, not negative.</param>
    /// <param name="guess">m³/s.</param>
    public double FlowNear(double rise, double guess) =>
        !GivesFlow && FreeFlow > 0
        && Bracket.TryNear(new OverRise(this, rise), Share.Of<Real>(guess, FreeFlow), out double share) && share <= 1
            ? FreeFlow * share
            : FlowAt(rise);

    /// <summary>Adds each pump where it runs when the whole passes a flow.</summary>
    /// <param name="flow">m³/s, 0 to <see cref="FreeFlow"/>.</param>
    /// <param name="points">To add to.</param>
    public void Describe(double flow, ICollection<PumpPoint> points) => Describe(flow, RiseAt(flow), points);

    /// <summary>Adds each pump where it runs when the whole passes a flow against a rise that go together.</summary>
    /// <param name="flow">m³/s, 0 to <see cref="FreeFlow"/>.</param>
    /// <param name="rise">Pa.</param>
    /// <param name="points">To add to.</param>
    public abstract void Describe(double flow, double rise, ICollection<PumpPoint> points);

    /// <summary>True if <see cref="UncoveredAt"/> is known to be nothing at every flow, without looking.</summary>
    /// <param name="ends">True if it matters where curves end.</param>
    public abstract bool IsFullyCovered(bool ends);

    /// <summary>What of <see cref="PumpCoverage.NotCovered"/> holds where the whole passes a flow against a rise.</summary>
    /// <param name="flow">m³/s, 0 to <see cref="FreeFlow"/>.</param>
    /// <param name="rise">Pa.</param>
    /// <param name="ends">True if it matters where curves end; else <see cref="PumpCoverage.PressureAbove"/> is left out.</param>
    public abstract PumpCoverage UncoveredAt(double flow, double rise, bool ends);

    /// <summary>True if flow follows from rise without a search, so that a solver does well to look for the rise.</summary>
    public abstract bool GivesFlow { get; }

    /// <summary>The flow at which the rise is so much, by share of the free flow.</summary>
    protected double FlowByRise(double rise) => FreeFlow * Bracket.Of(new OverRise(this, rise), 0, 1);

    /// <summary>The rise at which so much flows, by share of the deadhead.</summary>
    protected double RiseByFlow(double flow) => RiseByFlow(flow, 0, Deadhead);

    /// <summary>The same between two rises, Pa.</summary>
    protected double RiseByFlow(double flow, double minimum, double maximum) =>
        Deadhead * Bracket.Of(new OverFlow(this, flow), Share.Of<Real>(minimum, Deadhead), Share.Of<Real>(maximum, Deadhead));

    private readonly struct OverFlow(RunningPumps pumps, double flow) : IFalling
    {
        public double At(double x) => Share.Of<Real>(pumps.FlowAt(x * pumps.Deadhead) - flow, pumps.FreeFlow);
    }

    private readonly struct OverRise(RunningPumps pumps, double rise) : IFalling
    {
        public double At(double x) => Share.Of<Real>(pumps.RiseAt(x * pumps.FreeFlow) - rise, pumps.Deadhead);
    }
}
