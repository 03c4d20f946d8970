using FuelSizing.Equations;

namespace FuelSizing.Pumps;

/// <summary>Pumps in parallel behind check valves, fed with one voltage.</summary>
internal sealed class RunningParallel : RunningPumps
{
    private readonly RunningPumps[] _branches;
    private readonly bool _givesFlow;

    /// <summary>Works out what depends on the voltage alone.</summary>
    /// <param name="branches">Side by side.</param>
    public RunningParallel(RunningPumps[] branches)
    {
        _branches = branches;
        _givesFlow = Array.TrueForAll(branches, branch => branch.GivesFlow);
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
        // On either side of the rise: a branch at its relief valve passes anything between the two.
        const double Beside = 1e-9;
        double low = FlowAt(rise * (1 + Beside));
        double high = FlowAt(rise * (1 - Beside));
        foreach (RunningPumps branch in _branches)
        {
            double above = branch.FlowAt(rise * (1 + Beside));
            double below = branch.FlowAt(rise * (1 - Beside));

            // A branch that is itself pumps in series finds its flow by iteration: the two may cross by a rounding.
            double own = high > low
                ? Math.Clamp(
                    StraightLine.Through<Real>(low, above, high, below, flow), Math.Min(above, below), Math.Max(above, below))
                : above;

            // A branch that is shut, or that nothing holds back, has a rise of its own.
            branch.Describe(own, own > 0 && own < branch.FreeFlow ? rise : branch.RiseAt(own), points);
        }
    }
}
