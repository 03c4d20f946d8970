namespace FuelSizing.Pumps;

/// <summary>A pump that gets no voltage: it passes nothing, and its check valve keeps fuel from running back.</summary>
/// <param name="pump">Which.</param>
internal sealed class StoppedPump(Pump pump) : RunningPumps
{
    /// <inheritdoc/>
    public override double FreeFlow => 0;

    /// <inheritdoc/>
    public override double Deadhead => 0;

    /// <inheritdoc/>
    public override bool GivesFlow => true;

    /// <inheritdoc/>
    public override int Guesses => 0;

    /// <inheritdoc/>
    public override bool TryTangent(double rise, Span<double> guesses, out PumpTangent tangent)
    {
        tangent = PumpTangent.Shut;
        return true;
    }

    /// <inheritdoc/>
    public override bool TryList(double given, ICollection<Pump> pumps) => true;

    /// <inheritdoc/>
    public override double FlowAt(double rise) => 0;

    /// <inheritdoc/>
    public override double RiseAt(double flow) => 0;

    /// <inheritdoc/>
    public override void Describe(double flow, double rise, ICollection<PumpPoint> points) =>
        points.Add(new(pump, 0, 0, 0, 0, 0, 0, 0, PumpCoverage.Measured));

    /// <inheritdoc/>
    public override bool IsFullyCovered(bool ends) => true;

    /// <inheritdoc/>
    public override PumpCoverage UncoveredAt(double flow, double rise, bool ends) => PumpCoverage.Measured;
}
