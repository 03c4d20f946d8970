using FuelSizing.Numerics;

namespace FuelSizing.Pumps;

/// <summary>Pumps in parallel behind check valves, fed with one voltage.</summary>
internal sealed class RunningParallel : RunningPumps
{
    private readonly RunningPumps[] _branches;
    private readonly bool _givesFlow;
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
        FreeFlow = FlowAt(0);
        Deadhead = branches.Max(branch => branch.Deadhead);
    }

    /// <inheritdoc/>
    public override double FreeFlow { get; }

    /// <inheritdoc/>
    public override double Deadhead { get; }

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
