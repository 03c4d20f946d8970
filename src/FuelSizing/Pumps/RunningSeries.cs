using FuelSizing.Numerics;

namespace FuelSizing.Pumps;

/// <summary>Pumps in series, fed with one voltage.</summary>
internal sealed class RunningSeries : RunningPumps
{
    private readonly RunningPumps[] _stages;
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
            rise += stage.RiseAt(flow);
        }

        return rise;
    }

    /// <inheritdoc/>
    public override bool GivesFlow => false;

    /// <inheritdoc/>
    public override void Describe(double flow, double rise, ICollection<PumpPoint> points)
    {
        foreach (RunningPumps stage in _stages)
        {
            stage.Describe(Math.Min(flow, stage.FreeFlow), points);
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
            uncovered |= stage.UncoveredAt(own, stage.RiseAt(own), ends);
        }

        return uncovered;
    }

    /// <inheritdoc/>
    public override bool IsFullyCovered(bool ends) => ends ? _covered : _begins;
}
