using FuelSizing.Numerics;

namespace FuelSizing.Pumps;

/// <summary>Pumps fed with one voltage: flow against pressure rise, and back, in SI numbers.</summary>
/// <remarks>
/// What depends on the voltage alone is worked out once, so that a solver may ask for flow and rise many times. Flow never
/// grows with rise, nor rise with flow.
/// </remarks>
internal abstract class RunningPumps
{
    /// <summary>The maximum that passes, m³/s: against no pressure rise.</summary>
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
        && Secant.TryNear(new OverRise(this, rise), guess / FreeFlow, out double share) && share <= 1
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

    /// <summary>Adds each pump as <see cref="Describe(double, double, ICollection{PumpPoint})"/> does, by tangents; false, and none added, where a branch is shut or stands at an end of its curve.</summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="rise">Pa.</param>
    /// <param name="points">To add to.</param>
    public bool TryDescribe(double flow, double rise, List<PumpPoint> points)
    {
        int before = points.Count;
        PumpNotes notes = new() { Points = points };
        if (TryNote(flow, rise, ref notes))
        {
            return true;
        }

        points.RemoveRange(before, points.Count - before);
        return false;
    }

    /// <summary>What <see cref="UncoveredAt"/> says, by tangents; none where a branch is shut or stands at an end of its curve.</summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="rise">Pa.</param>
    /// <param name="ends">True if it matters where curves end.</param>
    public PumpCoverage? UncoveredByTangents(double flow, double rise, bool ends)
    {
        PumpNotes notes = new() { Ends = ends };
        return TryNote(flow, rise, ref notes) ? notes.Uncovered : null;
    }

    private bool TryNote(double flow, double rise, ref PumpNotes notes)
    {
        // Of the flow: the rise was found no nearer.
        const double Near = 1e-10;
        if (Guesses is < 0 or > MaximumGuesses || !(flow > 0 && flow < FreeFlow))
        {
            return false;
        }

        Span<double> guesses = stackalloc double[Guesses];
        return PumpTangent.TrySettle(this, rise, guesses, out PumpTangent tangent)
            && Math.Abs(tangent.Flow - flow) <= Near * flow
            && TryNote(flow, rise, guesses, ref notes);
    }

    /// <summary>Notes each pump where it runs, with guesses that are settled.</summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="rise">Pa.</param>
    /// <param name="guesses">Settled guesses.</param>
    /// <param name="notes">What is noted.</param>
    public virtual bool TryNote(double flow, double rise, Span<double> guesses, ref PumpNotes notes) => false;

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

    /// <summary>More guesses than a search by tangents has room for.</summary>
    public const int MaximumGuesses = 64;

    /// <summary>Stands for what is worked out when somebody asks for it.</summary>
    protected const int Unasked = int.MinValue;

    /// <summary>How many numbers <see cref="TryTangent"/> has to guess; below zero where it finds nothing.</summary>
    public virtual int Guesses => -1;

    /// <summary>True if tangents are much the faster: where a flow takes a search within a search, or bounds lie beside each other.</summary>
    public virtual bool IsNested => false;

    /// <summary>True if a rise takes a search.</summary>
    public virtual bool IsRiseSearched => true;

    /// <summary>Guesses to begin with.</summary>
    /// <param name="rise">Pa.</param>
    /// <param name="guesses">To write to.</param>
    public virtual void Guess(double rise, Span<double> guesses)
    {
    }

    /// <summary>Delivered flow at a rise and its slope, to the first order in what the guesses are off by; false where curves end or jump, which is to be searched for.</summary>
    /// <param name="rise">Pa, not negative.</param>
    /// <param name="guesses">Guesses, which are corrected.</param>
    /// <param name="tangent">What is delivered.</param>
    public virtual bool TryTangent(double rise, Span<double> guesses, out PumpTangent tangent)
    {
        tangent = default;
        return false;
    }

    /// <summary>True if settled guesses are those that a search of each alone would find, where it has to choose between several.</summary>
    /// <param name="rise">Pa.</param>
    /// <param name="guesses">Settled guesses.</param>
    public virtual bool IsConfirmed(double rise, ReadOnlySpan<double> guesses) => true;

    /// <summary>Adds the pumps that run, where all are in parallel and given the same; false where some are in series, or slowed.</summary>
    /// <param name="given">Voltage that their feeds are given, V.</param>
    /// <param name="pumps">To add to.</param>
    public virtual bool TryList(double given, ICollection<Pump> pumps) => false;

    /// <summary>True if a pump among them has lines of its own.</summary>
    public virtual bool HasOwnLines => false;

    /// <summary>Adds each pump, and each branch with lines of its own before its pumps, with the pressures before and behind it.</summary>
    /// <param name="flow">Through the whole, m³/s.</param>
    /// <param name="rise">Over the whole, Pa.</param>
    /// <param name="inlet">Before the whole, gauge, Pa.</param>
    /// <param name="outlet">Behind it, gauge, Pa.</param>
    /// <param name="places">To add to; pumps are in the order of <see cref="Describe(double, double, ICollection{PumpPoint})"/>.</param>
    public virtual void Walk(double flow, double rise, double inlet, double outlet, ICollection<PumpPlace> places) =>
        places.Add(new(this, flow, inlet, outlet));

    /// <summary>The flow at which the rise is so much, by share of the free flow.</summary>
    protected double FlowByRise(double rise) => FreeFlow * Bracket.Of(new OverRise(this, rise), 0, 1);

    /// <summary>The rise at which so much flows, by share of the deadhead.</summary>
    protected double RiseByFlow(double flow) => RiseByFlow(flow, 0, Deadhead);

    /// <summary>The same between two rises, Pa.</summary>
    protected double RiseByFlow(double flow, double minimum, double maximum) =>
        Deadhead * Bracket.Of(new OverFlow(this, flow), minimum / Deadhead, maximum / Deadhead);

    private readonly struct OverFlow(RunningPumps pumps, double flow) : IFalling
    {
        public double At(double x) => (pumps.FlowAt(x * pumps.Deadhead) - flow) / pumps.FreeFlow;
    }

    private readonly struct OverRise(RunningPumps pumps, double rise) : IFalling
    {
        public double At(double x) => (pumps.RiseAt(x * pumps.FreeFlow) - rise) / pumps.Deadhead;
    }
}

/// <summary>Pumps in parallel with check valves, fed with one voltage.</summary>
internal sealed class RunningParallel : RunningPumps
{
    private readonly RunningPumps[] _branches;
    private readonly bool _givesFlow;
    private double _freeFlow = double.NaN;
    private double _deadhead = double.NaN;
    private int _guesses = Unasked;
    private int _nested = Unasked;
    private readonly bool _begins;
    private readonly bool _covered;

    /// <summary>Works out what depends on the voltage alone.</summary>
    /// <param name="branches">Side by side.</param>
    public RunningParallel(RunningPumps[] branches)
    {
        _branches = branches;
        _givesFlow = Array.TrueForAll(branches, branch => branch.GivesFlow);
        _begins = Array.TrueForAll(branches, branch => branch.IsFullyCovered(ends: false));
        _covered = Array.TrueForAll(branches, branch => branch.IsFullyCovered(ends: true));
    }

    /// <inheritdoc/>
    public override double FreeFlow => double.IsNaN(_freeFlow) ? _freeFlow = FlowAt(0) : _freeFlow;

    /// <inheritdoc/>
    public override bool TryList(double given, ICollection<Pump> pumps) => Array.TrueForAll(_branches, branch => branch.TryList(given, pumps));

    /// <inheritdoc/>
    public override double Deadhead => double.IsNaN(_deadhead) ? _deadhead = _branches.Max(branch => branch.Deadhead) : _deadhead;

    /// <inheritdoc/>
    public override double FlowAt(double rise)
    {
        Real flow = 0;
        foreach (RunningPumps branch in _branches)
        {
            flow += branch.FlowAt(rise);
        }

        return flow;
    }

    /// <inheritdoc/>
    public override double RiseAt(double flow) =>
        flow >= FreeFlow || Deadhead <= 0 ? 0 : RiseByFlow(flow);

    /// <inheritdoc/>
    public override bool GivesFlow => _givesFlow;

    /// <inheritdoc/>
    public override int Guesses => _guesses != Unasked ? _guesses
        : _guesses = Array.TrueForAll(_branches, branch => branch.Guesses >= 0) ? _branches.Sum(branch => branch.Guesses) : -1;

    /// <inheritdoc/>
    public override bool IsNested => (_nested != Unasked ? _nested : _nested = Array.Exists(_branches, branch => branch.IsNested) ? 1 : 0) == 1;

    /// <inheritdoc/>
    public override void Guess(double rise, Span<double> guesses)
    {
        foreach (RunningPumps branch in _branches)
        {
            branch.Guess(rise, guesses[..branch.Guesses]);
            guesses = guesses[branch.Guesses..];
        }
    }

    /// <inheritdoc/>
    public override bool TryTangent(double rise, Span<double> guesses, out PumpTangent tangent)
    {
        (double flow, double byRise, double moved) = (0, 0, 0);
        foreach (RunningPumps branch in _branches)
        {
            int own = branch.Guesses;
            if (!branch.TryTangent(rise, guesses[..own], out tangent))
            {
                return false;
            }

            (flow, byRise, moved) = (flow + tangent.Flow, byRise + tangent.ByRise, Math.Max(moved, tangent.Moved));
            guesses = guesses[own..];
        }

        tangent = new(flow, byRise, moved);
        return true;
    }

    /// <inheritdoc/>
    public override bool IsConfirmed(double rise, ReadOnlySpan<double> guesses)
    {
        foreach (RunningPumps branch in _branches)
        {
            if (!branch.IsConfirmed(rise, guesses[..branch.Guesses]))
            {
                return false;
            }

            guesses = guesses[branch.Guesses..];
        }

        return true;
    }

    /// <inheritdoc/>
    public override bool TryNote(double flow, double rise, Span<double> guesses, ref PumpNotes notes)
    {
        foreach (RunningPumps branch in _branches)
        {
            int own = branch.Guesses;
            if (branch.FreeFlow <= 0)
            {
                notes.Note(branch, rise);
            }
            else if (!branch.TryTangent(rise, guesses[..own], out PumpTangent tangent)
                || !(tangent.Flow > 0 && tangent.Flow < branch.FreeFlow && tangent.ByRise < 0)
                || !branch.TryNote(tangent.Flow, rise, guesses[..own], ref notes))
            {
                return false;
            }

            guesses = guesses[own..];
        }

        return true;
    }

    /// <inheritdoc/>
    public override void Describe(double flow, double rise, ICollection<PumpPoint> points)
    {
        Sharing sharing = new(this, flow, rise);
        foreach (RunningPumps branch in _branches)
        {
            (double own, double over) = sharing.Of(branch);
            branch.Describe(own, over, points);
        }
    }

    /// <inheritdoc/>
    public override bool HasOwnLines => Array.Exists(_branches, branch => branch.HasOwnLines);

    /// <inheritdoc/>
    public override void Walk(double flow, double rise, double inlet, double outlet, ICollection<PumpPlace> places)
    {
        Sharing sharing = new(this, flow, rise);
        foreach (RunningPumps branch in _branches)
        {
            (double own, double over) = sharing.Of(branch);
            branch.Walk(own, over, inlet, outlet, places);
        }
    }

    /// <inheritdoc/>
    public override PumpCoverage UncoveredAt(double flow, double rise, bool ends)
    {
        if (IsFullyCovered(ends))
        {
            return PumpCoverage.Measured;
        }

        PumpCoverage uncovered = PumpCoverage.Measured;
        Sharing sharing = new(this, flow, rise);
        foreach (RunningPumps branch in _branches)
        {
            (double own, double over) = sharing.Of(branch);
            uncovered |= branch.UncoveredAt(own, over, ends);
        }

        return uncovered;
    }

    /// <inheritdoc/>
    public override bool IsFullyCovered(bool ends) => ends ? _covered : _begins;

    /// <summary>How branches share a flow against a rise.</summary>
    private readonly struct Sharing
    {
        // On either side of the rise: a branch at its relief valve, or its curve's end, passes anything between the two.
        private const double Beside = 2 * Curve.EndTolerance;

        private readonly double _flow;
        private readonly double _rise;
        private readonly double _low;
        private readonly double _high;

        public Sharing(RunningParallel all, double flow, double rise)
        {
            (_flow, _rise) = (flow, rise);
            (_low, _high) = (all.FlowAt(rise * (1 + Beside)), all.FlowAt(rise * (1 - Beside)));
        }

        /// <summary>Flow and rise of a branch.</summary>
        public (double Own, double Rise) Of(RunningPumps branch)
        {
            double above = branch.FlowAt(_rise * (1 + Beside));
            double below = branch.FlowAt(_rise * (1 - Beside));

            // A branch that is itself pumps in series finds its flow by iteration: the two may cross by a rounding.
            double own = _high > _low
                ? Math.Clamp(
                    StraightLine.Through<Real>(_low, above, _high, below, _flow), Math.Min(above, below), Math.Max(above, below))
                : above;

            // A branch that is shut, or that nothing holds back, has a rise of its own.
            return (own, own > 0 && own < branch.FreeFlow ? _rise : branch.RiseAt(own));
        }
    }
}

/// <summary>Pumps in series, fed with one voltage.</summary>
internal sealed class RunningSeries : RunningPumps
{
    private readonly RunningPumps[] _stages;
    private int _guesses = Unasked;
    private readonly bool _begins;
    private readonly bool _covered;

    /// <summary>Works out what depends on the voltage alone.</summary>
    /// <param name="stages">From tank to rail.</param>
    /// <param name="bypass">What a stage does when more flows than it can pass.</param>
    public RunningSeries(RunningPumps[] stages, SeriesBypass bypass)
    {
        _stages = stages;
        _begins = Array.TrueForAll(stages, stage => stage.IsFullyCovered(ends: false));
        _covered = Array.TrueForAll(stages, stage => stage.IsFullyCovered(ends: true));
        FreeFlow = bypass == SeriesBypass.CheckValve
            ? stages.Max(stage => stage.FreeFlow)
            : stages.Min(stage => stage.FreeFlow);
        Deadhead = FreeFlow > 0 ? RiseAt(0) : 0;
    }

    /// <summary>From tank to rail.</summary>
    public IReadOnlyList<RunningPumps> Stages => _stages;

    /// <inheritdoc/>
    public override double FreeFlow { get; }

    /// <inheritdoc/>
    public override double Deadhead { get; }

    /// <inheritdoc/>
    public override double FlowAt(double rise) =>
        rise >= Deadhead ? 0 : FlowByRise(rise);

    /// <inheritdoc/>
    public override double RiseAt(double flow)
    {
        Real rise = 0;
        foreach (RunningPumps stage in _stages)
        {
            rise += RiseOf(stage, flow);
        }

        return rise;
    }

    /// <inheritdoc/>
    public override bool GivesFlow => false;

    /// <inheritdoc/>
    public override int Guesses => _guesses != Unasked ? _guesses
        : _guesses = Array.TrueForAll(_stages, stage => stage.Guesses >= 0) ? _stages.Sum(stage => stage.Guesses + 1) : -1;

    /// <inheritdoc/>
    public override bool IsNested => true;

    /// <summary>The rise of each stage, then its own guesses.</summary>
    /// <inheritdoc/>
    public override void Guess(double rise, Span<double> guesses)
    {
        double all = 0;
        foreach (RunningPumps stage in _stages)
        {
            all += stage.Deadhead;
        }

        foreach (RunningPumps stage in _stages)
        {
            guesses[0] = rise * stage.Deadhead / all;
            stage.Guess(guesses[0], guesses.Slice(1, stage.Guesses));
            guesses = guesses[(1 + stage.Guesses)..];
        }
    }

    /// <summary>By the flow that is the same through all, to the first order in the rise of each.</summary>
    /// <inheritdoc/>
    public override bool TryTangent(double rise, Span<double> guesses, out PumpTangent tangent)
    {
        Span<double> flows = stackalloc double[_stages.Length];
        Span<double> slopes = stackalloc double[_stages.Length];
        (double left, double byFlow, double moved) = (rise, 0, 0);
        Span<double> rest = guesses;
        for (int at = 0; at < _stages.Length; at++)
        {
            int own = _stages[at].Guesses;
            if (!_stages[at].TryTangent(rest[0], rest.Slice(1, own), out tangent) || !(tangent.ByRise < 0))
            {
                return false;
            }

            (flows[at], slopes[at]) = (tangent.Flow, tangent.ByRise);
            left += (tangent.Flow / tangent.ByRise) - rest[0];
            byFlow += 1 / tangent.ByRise;
            moved = Math.Max(moved, tangent.Moved);
            rest = rest[(1 + own)..];
        }

        // A stage that would have to be pushed is bypassed, or holds the others up.
        double flow = left / byFlow;
        for (int at = 0; at < _stages.Length; at++)
        {
            double move = (flow - flows[at]) / slopes[at];
            guesses[0] += move;
            if (!(guesses[0] > 0))
            {
                tangent = default;
                return false;
            }

            moved = Math.Max(moved, Math.Abs(move) / Deadhead);
            guesses = guesses[(1 + _stages[at].Guesses)..];
        }

        tangent = new(flow, 1 / byFlow, moved);
        return true;
    }

    /// <inheritdoc/>
    public override bool IsConfirmed(double rise, ReadOnlySpan<double> guesses)
    {
        foreach (RunningPumps stage in _stages)
        {
            if (!stage.IsConfirmed(guesses[0], guesses.Slice(1, stage.Guesses)))
            {
                return false;
            }

            guesses = guesses[(1 + stage.Guesses)..];
        }

        return true;
    }

    /// <inheritdoc/>
    public override bool TryNote(double flow, double rise, Span<double> guesses, ref PumpNotes notes)
    {
        foreach (RunningPumps stage in _stages)
        {
            if (!stage.TryNote(flow, guesses[0], guesses.Slice(1, stage.Guesses), ref notes))
            {
                return false;
            }

            guesses = guesses[(1 + stage.Guesses)..];
        }

        return true;
    }

    /// <inheritdoc/>
    public override void Describe(double flow, double rise, ICollection<PumpPoint> points)
    {
        foreach (RunningPumps stage in _stages)
        {
            double own = Math.Min(flow, stage.FreeFlow);
            stage.Describe(own, RiseOf(stage, own), points);
        }
    }

    /// <inheritdoc/>
    public override bool HasOwnLines => Array.Exists(_stages, stage => stage.HasOwnLines);

    /// <inheritdoc/>
    public override void Walk(double flow, double rise, double inlet, double outlet, ICollection<PumpPlace> places)
    {
        Real before = inlet;
        foreach (RunningPumps stage in _stages)
        {
            double own = Math.Min(flow, stage.FreeFlow);
            double over = RiseOf(stage, own);
            stage.Walk(own, over, before, before + over, places);
            before += over;
        }
    }

    /// <inheritdoc/>
    public override PumpCoverage UncoveredAt(double flow, double rise, bool ends)
    {
        PumpCoverage uncovered = PumpCoverage.Measured;
        if (IsFullyCovered(ends))
        {
            return uncovered;
        }

        foreach (RunningPumps stage in _stages)
        {
            double own = Math.Min(flow, stage.FreeFlow);
            uncovered |= stage.UncoveredAt(own, RiseOf(stage, own), ends);
        }

        return uncovered;
    }

    /// <inheritdoc/>
    public override bool IsFullyCovered(bool ends) => ends ? _covered : _begins;

    // Wiring, or lines, make a search of it.
    private static double RiseOf(RunningPumps stage, double flow) =>
        stage.IsRiseSearched && flow > 0 && flow < stage.FreeFlow && PumpTangent.TryRise(stage, flow, out double rise) ? rise : stage.RiseAt(flow);
}

/// <summary>A pump, or a branch with lines of its own, with the pressures before and behind it.</summary>
/// <param name="Element">Which.</param>
/// <param name="Flow">Through it, m³/s.</param>
/// <param name="Inlet">Gauge, Pa.</param>
/// <param name="Outlet">Gauge, Pa.</param>
internal readonly record struct PumpPlace(RunningPumps Element, double Flow, double Inlet, double Outlet);

/// <summary>What is known of a pump's curve at the point where it runs.</summary>
[Flags]
internal enum PumpCoverage
{
    /// <summary>A measured curve covers it.</summary>
    Measured = 0,

    /// <summary>The affinity laws carried a measured curve to this voltage.</summary>
    Scaled = 1,

    /// <summary>The voltage is over that of every curve; the highest one was used, than which the pump delivers no less.</summary>
    VoltageAbove = 2,

    /// <summary>The voltage is too far under that of every curve.</summary>
    VoltageBelow = 4,

    /// <summary>The curve ends before this pressure above zero flow.</summary>
    PressureAbove = 8,

    /// <summary>The curve begins only at a higher pressure.</summary>
    PressureBelow = 16,

    /// <summary>Data that does not cover this point.</summary>
    NotCovered = VoltageBelow | PressureAbove | PressureBelow,
}

/// <summary>One pump where it runs, in SI numbers.</summary>
/// <param name="Pump">Which.</param>
/// <param name="Flow">m³/s.</param>
/// <param name="Rise">Pa.</param>
/// <param name="Given">Voltage that its feed is given, V; zero where it is switched off.</param>
/// <param name="Voltage">At the motor, V.</param>
/// <param name="Current">A; null where it was not measured.</param>
/// <param name="MinimumCurrent">The least that the curves allow at that rise and voltage, A.</param>
/// <param name="MaximumCurrent">The most, A; the same where the voltage was measured.</param>
/// <param name="Coverage">What is known of the curve there.</param>
internal readonly record struct PumpPoint(
    Pump Pump,
    double Flow,
    double Rise,
    double Given,
    double Voltage,
    double? Current,
    double? MinimumCurrent,
    double? MaximumCurrent,
    PumpCoverage Coverage)
{
    /// <summary>True where it is switched off.</summary>
    public bool IsStopped => Given == 0;

    /// <summary>Voltage that the part of its feed takes which it shares with other pumps, V.</summary>
    public double SharedDrop { get; init; }

    /// <summary>Voltage that its feed takes, the shared part included, V.</summary>
    public double FeedDrop => SharedDrop != 0 ? Given - Voltage + SharedDrop : Pump.Converter is null || IsStopped
        ? Given - Voltage
        : Given - Pump.FeedEndOf(Given, Voltage, Current ?? double.NaN).Voltage;

    /// <summary>Current in its feed: the motor's own, or what its converter draws, A; none where it was not measured.</summary>
    public double? FeedCurrent => InFeed(Current);

    /// <summary>The least of it that the curves allow, A.</summary>
    public double? MinimumFeedCurrent => InFeed(MinimumCurrent);

    /// <summary>The most of it, A.</summary>
    public double? MaximumFeedCurrent => InFeed(MaximumCurrent);

    private double? InFeed(double? current) => Pump.Converter is null || IsStopped || current is not { } amperes
        ? current
        : Pump.FeedEndOf(Given, Voltage, amperes).Current;
}
